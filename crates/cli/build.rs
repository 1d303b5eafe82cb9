//! What `axlebow --version` says of the build: the commit, where there is one, and the versions of the libraries that calculate.

use std::path::Path;
use std::process::Command;

/// The libraries that calculate and draw.
const LIBRARIES: [&str; 8] = ["nalgebra", "faer", "plotters", "serde", "clap", "rayon", "resvg", "parquet"];

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let commit = commit(&root).unwrap_or_else(|| "unknown".to_owned());
    let lock = std::fs::read_to_string(root.join("Cargo.lock")).unwrap_or_default();
    let libraries: Vec<String> = LIBRARIES.iter().filter_map(|name| version(&lock, name)).collect();
    println!("cargo::rustc-env=AXLEBOW_COMMIT={commit}");
    let features = if std::env::var_os("CARGO_FEATURE_PARQUET").is_some() { "parquet" } else { "none" };
    println!("cargo::rustc-env=AXLEBOW_FEATURES={features}");
    println!("cargo::rustc-env=AXLEBOW_LIBRARIES={}", libraries.join(", "));
    println!("cargo::rerun-if-changed=../../Cargo.lock");
    println!("cargo::rerun-if-changed=build.rs");
    if root.join(".git/HEAD").exists() {
        println!("cargo::rerun-if-changed=../../.git/HEAD");
    }
}

fn commit(root: &Path) -> Option<String> {
    let told =
        Command::new("git").args(["rev-parse", "--short=12", "HEAD"]).current_dir(root).output().ok()?;
    let text = String::from_utf8(told.stdout).ok()?;
    (told.status.success() && !text.trim().is_empty()).then(|| text.trim().to_owned())
}

/// Name and version of a library, as the lock file has it.
fn version(lock: &str, name: &str) -> Option<String> {
    let (_, after) = lock.split_once(&format!("name = \"{name}\"\nversion = \""))?;
    Some(format!("{name} {}", after.split('"').next()?))
}
