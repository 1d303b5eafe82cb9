//! `axlebow fit --removals`, and what a calibrated model tells.

use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, demo, root};

fn removals() -> String {
    root().join("models/removals/trailer-152-thin.csv").display().to_string()
}

/// Removals write a model from which `tire` has millimeters and `growth` kilometers, which the model before has not.
#[test]
fn removals_give_wear_a_depth() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual");
    let run = axlebow_in(folder.path(), &["fit", &model, "--removals", &removals(), "-o", "calibrated.toml"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("running.severity") && run.out.contains("running.abrasion"), "{}", run.out);
    assert!(run.out.contains("left inner tire, rib 1"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let tire = |model: &str| axlebow_in(folder.path(), &["tire", model, "--case", "rated-load"]);
    let (before, after) = (tire(&model), tire("calibrated.toml"));
    assert!(!before.out.contains("10 000 km"), "{}", before.out);
    let words = after.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("In 10 000 km the inner shoulder of the left inner tire loses"), "{words}");
    assert!(after.out.contains("worn in"), "{}", after.out);
    let quick = ["--steps", "1", "--counts", "1..2"];
    let grown = axlebow_in(folder.path(), &[&["growth", "calibrated.toml"], &quick[..]].concat());
    assert!(grown.out.contains("e-fold in 5") && grown.out.contains("km"), "{}", grown.out);
}

#[test]
fn a_fit_without_readings_and_removals_is_refused() {
    let run = axlebow(&["fit", &demo("trailer-152-thin-dual")]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("--readings"), "{}", run.err);
}
