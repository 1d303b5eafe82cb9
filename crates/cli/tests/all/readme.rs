//! What the pages for readers show is what happens.

use crate::program::{axlebow_in, root};

/// Every line of a `console` block that starts with `$ axlebow` runs; those of one block share a folder.
fn run_commands(page: &str) -> usize {
    let text = std::fs::read_to_string(root().join(page)).expect("a page");
    let blocks = text.split("```console\n").skip(1).filter_map(|rest| rest.split("```").next());
    blocks.map(run_block).sum()
}

fn run_block(block: &str) -> usize {
    let folder = tempfile::TempDir::new().expect("a folder");
    for shared in ["models", "studies"] {
        std::os::unix::fs::symlink(root().join(shared), folder.path().join(shared)).expect("a link");
    }
    let commands = block.lines().filter_map(|line| line.strip_prefix("$ axlebow "));
    let run = |command: &str| {
        let run = axlebow_in(folder.path(), &words(command));
        assert_eq!(run.code, 0, "axlebow {command}\n{}", run.err);
    };
    commands.map(run).count()
}

#[test]
fn every_command_of_the_readme_runs() {
    assert!(run_commands("README.md") >= 18);
}

#[test]
fn every_command_of_the_page_on_models_runs() {
    assert!(run_commands("models/README.md") >= 20);
}

#[test]
fn every_command_of_the_page_on_studies_runs() {
    assert!(run_commands("studies/README.md") >= 10);
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
