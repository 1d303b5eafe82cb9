//! Names and paths that would steer a terminal or run as a formula.

use std::fs;

use tempfile::TempDir;

use crate::program::{Run, axlebow, axlebow_in, demo};

/// Escape sequence that would empty the screen.
const CLEAR: &str = "\u{1b}[2J";

#[track_caller]
fn steers_nothing(run: &Run) {
    let steers = |letter: char| letter.is_control() && letter != '\n';
    assert!(!run.out.contains(steers) && !run.err.contains(steers), "{:?}{:?}", run.out, run.err);
}

#[test]
fn names_that_steer_a_terminal_are_refused() {
    let named = |of: &str, path: &str| {
        let run = axlebow(&["flex", &demo(of), "--set", &format!("{path}=a{CLEAR}b")]);
        assert_eq!(run.code, 2, "{path}: {}", run.err);
        assert!(run.err.contains("holds the control character U+001B"), "{path}: {}", run.err);
        steers_nothing(&run);
    };
    named("trailer-152-thin-dual", "name");
    named("trailer-152-thin-dual", "combination[0].name");
    named("trailer-152-thin-dual-angle", "stiffener[0].name");
}

#[test]
fn paths_do_not_steer_a_terminal() {
    let folder = TempDir::new().expect("a folder");
    let at = |name: &str| format!("{name}{CLEAR}");
    let run = axlebow_in(folder.path(), &["flex", &at("none.toml")]);
    assert!(run.code == 2 && run.err.contains("none.toml\\u{1b}[2J"), "{}", run.err);
    steers_nothing(&run);
    fs::create_dir(folder.path().join(at("to"))).expect("a folder");
    let picture = format!("{}/axle.svg", at("to"));
    let run = axlebow_in(folder.path(), &["flex", &demo("trailer-152-thin-dual"), "--plot", &picture]);
    assert!(run.code == 0 && run.err.contains("wrote to\\u{1b}[2J/axle.svg"), "{}", run.err);
    steers_nothing(&run);
}

#[test]
fn names_are_no_formulas_of_a_spreadsheet() {
    let folder = TempDir::new().expect("a folder");
    let text = format!(
        "name = \"s\"\nkind = \"sweep\"\nmodel = {:?}\ncase = \"rated-load\"\n[[vary]]\nname = \"tube\"\n\
         [[vary.choice]]\nname = \"=1+1\"\nchange = {{ \"tube.wall\" = \"9 mm\" }}\n\
         [[vary.choice]]\nname = \"-8 mm\"\nchange = {{ \"tube.wall\" = \"8 mm\" }}\n",
        demo("trailer-127-thick-dual")
    );
    fs::write(folder.path().join("s.toml"), text).expect("it is written");
    let run = axlebow_in(folder.path(), &["study", "s.toml", "--csv", "s.csv"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let csv = fs::read_to_string(folder.path().join("s.csv")).expect("the table");
    for wanted in [",'=1+1,", ",'-8 mm,"] {
        assert!(csv.contains(wanted), "{wanted:?} is not in {csv}");
    }
}
