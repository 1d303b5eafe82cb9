//! What a newcomer types in the first ten minutes, and what comes back.

use std::path::Path;
use std::process::Command;

use crate::program::{program, root};

/// Where the text is kept that comes back; `AXLEBOW_REWRITE=1` writes it anew.
const EXPECTED: &str = "crates/cli/tests/all/ten_minutes.txt";

#[test]
fn a_newcomer_has_answers_for_two_axles_in_ten_minutes() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let printed = played(folder.path());
    let path = root().join(EXPECTED);
    if std::env::var_os("AXLEBOW_REWRITE").is_some() {
        std::fs::write(&path, &printed).expect("the text is written");
    }
    let expected = std::fs::read_to_string(&path).expect("the text");
    let lines = printed.lines().zip(expected.lines()).enumerate();
    for (number, (own, kept)) in lines {
        assert_eq!(own, kept, "line {} of {EXPECTED}", number + 1);
    }
    assert_eq!(printed.lines().count(), expected.lines().count());
    for file in ["own-drive.toml", "own-trailer.toml", "both.svg", "both.html"] {
        assert!(folder.path().join(file).is_file(), "{file}");
    }
}

/// What the script prints in a folder.
fn played(folder: &Path) -> String {
    let mut script = Command::new(root().join("scripts/ten-minutes"));
    let run = script.arg(folder).env("AXLEBOW", program()).output().expect("the script runs");
    let text = String::from_utf8(run.stdout).expect("axlebow speaks UTF-8");
    assert!(run.status.success(), "{text}{}", String::from_utf8_lossy(&run.stderr));
    text
}
