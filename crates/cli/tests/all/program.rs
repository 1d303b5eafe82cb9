//! The built `axlebow` and a folder to run it in.

use std::path::Path;
use std::process::Command;

use tempfile::TempDir;

/// The program under test.
pub fn program() -> &'static Path {
    Path::new(env!("CARGO_BIN_EXE_axlebow"))
}

/// The project's root.
pub fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// Path of a demo model.
pub fn demo(name: &str) -> String {
    root().join("models").join(format!("{name}.toml")).display().to_string()
}

/// What a run printed and how it ended.
pub struct Run {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// Runs `axlebow` in an empty folder of its own.
pub fn axlebow(arguments: &[&str]) -> Run {
    axlebow_in(TempDir::new().expect("a folder").path(), arguments)
}

/// Runs `axlebow` in a folder.
pub fn axlebow_in(folder: &Path, arguments: &[&str]) -> Run {
    run_of(Command::new(program()).args(arguments).current_dir(folder))
}

/// Runs `axlebow` in a folder with answers on its standard input.
pub fn axlebow_told(folder: &Path, arguments: &[&str], answers: &str) -> Run {
    std::fs::write(folder.join("answers.txt"), answers).expect("the answers are written");
    let answers = std::fs::File::open(folder.join("answers.txt")).expect("the answers");
    run_of(Command::new(program()).args(arguments).current_dir(folder).stdin(answers))
}

fn run_of(command: &mut Command) -> Run {
    let output = command.output().expect("axlebow runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("axlebow speaks UTF-8");
    Run { code: output.status.code().unwrap_or(-1), out: text(output.stdout), err: text(output.stderr) }
}

/// Runs `axlebow` on so many threads.
pub fn axlebow_on_threads(threads: &str, arguments: &[&str]) -> Run {
    let mut command = Command::new(program());
    run_of(command.args(arguments).env("RAYON_NUM_THREADS", threads))
}

/// Runs `axlebow` with a folder for what it keeps.
pub fn axlebow_keeping(folder: &Path, arguments: &[&str]) -> Run {
    let mut command = Command::new(program());
    run_of(command.args(arguments).env("AXLEBOW_CACHE", folder))
}

/// Runs `axlebow` on a file with the given text.
pub fn on_text(command: &str, text: &[u8]) -> Run {
    let folder = TempDir::new().expect("a folder");
    std::fs::write(folder.path().join("file.toml"), text).expect("the file is written");
    axlebow_in(folder.path(), &[command, "file.toml"])
}

/// A good model file with one line changed.
pub fn changed(from: &str, to: &str) -> Vec<u8> {
    let text = std::fs::read_to_string(demo("trailer-127-thick-dual")).expect("the demo model");
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1).into_bytes()
}
