//! What the README shows is what happens.

use crate::program::{axlebow_in, root};

/// Every line of a `console` block that starts with `$ axlebow` runs in the project's folder.
#[test]
fn every_command_of_the_readme_runs() {
    let text = std::fs::read_to_string(root().join("README.md")).expect("the README");
    let commands = text.lines().filter_map(|line| line.strip_prefix("$ axlebow "));
    let mut count = 0;
    for command in commands {
        let folder = tempfile::TempDir::new().expect("a folder");
        for shared in ["models", "studies"] {
            std::os::unix::fs::symlink(root().join(shared), folder.path().join(shared)).expect("a link");
        }
        std::fs::create_dir(folder.path().join("out")).expect("a folder");
        let run = axlebow_in(folder.path(), &words(command));
        assert_eq!(run.code, 0, "axlebow {command}\n{}", run.err);
        count += 1;
    }
    assert!(count >= 6, "the README shows {count} commands");
}

/// Words of a command line; double quotes hold blanks together.
fn words(command: &str) -> Vec<&str> {
    let mut quoted = false;
    let parts = command.split(|c: char| {
        quoted ^= c == '"';
        c == ' ' && !quoted
    });
    parts.filter(|word| !word.is_empty()).map(|word| word.trim_matches('"')).collect()
}
