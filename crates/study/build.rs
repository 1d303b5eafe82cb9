//! Tells builds apart: hashes of the code that results come from, with the compiler and its settings.

use std::collections::BTreeSet;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

fn main() {
    // All that a study's results come from, and all that a table of seats does.
    println!("cargo:rustc-env=AXLEBOW_BUILD={:016x}", build("study"));
    println!("cargo:rustc-env=AXLEBOW_WALL_BUILD={:016x}", build("wall"));
}

/// Hash of a crate's code, of all that it builds on, and of what turns it into a program.
fn build(name: &str) -> u64 {
    let mut hasher = DefaultHasher::new();
    let mut crates = BTreeSet::new();
    add_crates(name, &mut crates);
    for name in &crates {
        let folder = folder_of(name).join("src");
        println!("cargo:rerun-if-changed={}", folder.display());
        for path in files(&folder) {
            path.strip_prefix(&folder).expect("a file of the folder").hash(&mut hasher);
            read(&path).hash(&mut hasher);
        }
    }
    let lock = folder_of("..").join("Cargo.lock");
    println!("cargo:rerun-if-changed={}", lock.display());
    read(&lock).hash(&mut hasher);
    for variable in ["TARGET", "OPT_LEVEL", "CARGO_ENCODED_RUSTFLAGS", "CARGO_CFG_TARGET_FEATURE"] {
        env::var_os(variable).hash(&mut hasher);
    }
    let compiler = env::var_os("RUSTC").expect("cargo names the compiler");
    Command::new(compiler).arg("-vV").output().expect("the compiler runs").stdout.hash(&mut hasher);
    hasher.finish()
}

/// A crate and all of ours that it builds on.
fn add_crates(name: &str, crates: &mut BTreeSet<String>) {
    if !crates.insert(name.to_owned()) {
        return;
    }
    let manifest = read(&folder_of(name).join("Cargo.toml"));
    let manifest = String::from_utf8(manifest).expect("a manifest is text");
    let own = manifest.split("[dev-dependencies]").next().unwrap_or_default();
    for dependency in own.lines().filter_map(|line| line.strip_prefix("axlebow-")) {
        let name = dependency.split([' ', '.', '=']).next().unwrap_or_default();
        add_crates(name, crates);
    }
}

fn folder_of(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

fn read(path: &Path) -> Vec<u8> {
    fs::read(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// All files under a folder, in order.
fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.expect("an entry").path()).collect();
    paths.sort();
    paths.into_iter().flat_map(|path| if path.is_dir() { files(&path) } else { vec![path] }).collect()
}
