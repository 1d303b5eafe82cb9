//! Paybacks on the command line.

use crate::program::{axlebow, axlebow_in, root};

fn study(name: &str) -> String {
    root().join("studies").join(format!("{name}.toml")).display().to_string()
}

#[test]
fn a_payback_says_whether_it_pays_in_the_currency_of_the_file() {
    let folder = tempfile::TempDir::new().expect("a folder");
    for name in ["heavier-housing-pays", "trailer-angle-pays"] {
        let run = axlebow_in(
            folder.path(),
            &["study", &study(name), "--plot", "p.svg", "--csv", "p.csv", "--plain-csv", "--page", "p.html"],
        );
        assert_eq!(run.code, 0, "{}", run.err);
        let told = run.out.split_ascii_whitespace().collect::<Vec<_>>().join(" ");
        let all = [
            "USD",
            "pay",
            "breaks even",
            "left inner",
            "net present value",
            "of 100\u{a0}000 draws from the ranges",
        ];
        assert!(all.iter().all(|words| told.contains(words)), "{told}");
        assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
        let file = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect("a file");
        assert!(file("p.csv").lines().any(|line| line.starts_with("tires.removal_distance,USD,")));
        assert!(file("p.svg").contains("Net present value by each input alone, USD"));
        assert!(file("p.html").contains("Demonstration data, invented"));
        let has_cautions = run.out.contains("Before anybody welds");
        assert_eq!(has_cautions, name.contains("angle"), "cautions stand where somebody may weld");
    }
}

#[test]
fn a_payback_that_costs_more_than_it_brings_says_so_plainly() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let text = std::fs::read_to_string(study("trailer-angle-pays")).expect("a demo study");
    let models = root().join("models").display().to_string();
    let text = text.replace("../models", &models).replace("\"165 USD\"", "\"9165 USD\"");
    std::fs::write(folder.path().join("dear.toml"), text).expect("a folder");
    let run = axlebow_in(folder.path(), &["study", "dear"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("The angle on top does not pay"), "{}", run.out);
}

#[test]
fn options_of_designs_are_refused() {
    let study = study("trailer-angle-pays");
    for option in ["--dry-run", "--show"] {
        let value: &[&str] = if option == "--show" { &["camber-change"] } else { &[] };
        let run = axlebow(&[&["study", study.as_str(), option], value].concat());
        assert_eq!(run.code, 2, "{option}");
        assert!(run.err.contains("a payback compares two axles"), "{}", run.err);
    }
}

#[test]
fn a_fleet_of_zero_is_underlined() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let text = std::fs::read_to_string(study("trailer-angle-pays")).expect("a demo study");
    std::fs::write(folder.path().join("none.toml"), text.replace("vehicles = 36", "vehicles = 0"))
        .expect("a folder");
    let run = axlebow_in(folder.path(), &["study", "none.toml"]);
    assert_eq!(run.code, 2);
    assert!(
        run.err.contains("`fleet.vehicles` is 0") && run.err.contains("a whole number from 1"),
        "{}",
        run.err
    );
}
