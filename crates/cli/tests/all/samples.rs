//! Samples, uncertainties and their sizes on the command line.

use crate::program::{axlebow, axlebow_in, root};

fn study(name: &str) -> String {
    root().join("studies").join(format!("{name}.toml")).display().to_string()
}

/// A study file beside the models, with a piece of a demo study replaced.
fn changed(folder: &std::path::Path, name: &str, (old, new): (&str, &str)) -> String {
    let text = std::fs::read_to_string(study(name)).expect("a demo study");
    assert!(text.contains(old), "{old}");
    let models = root().join("models").display().to_string();
    let text = text.replacen(old, new, 1).replace("../models", &models);
    std::fs::write(folder.join("study.toml"), text).expect("a folder");
    "study.toml".to_owned()
}

#[test]
fn an_uncertainty_says_where_results_lie_and_whose_fault_that_is() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let run = axlebow_in(
        folder.path(),
        &["study", &study("trailer-uncertainty"), "--plot", "u.svg", "--csv", "u.csv", "--plain-csv"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    for words in ["Share of variance", "tube wall", "met by", "95 %", "independent samples differ"] {
        assert!(run.out.contains(words), "{words}: {}", run.out);
    }
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let csv = std::fs::read_to_string(folder.path().join("u.csv")).expect("a CSV file");
    assert_eq!(csv.lines().count(), 1 + 1024 * 7);
    assert!(
        std::fs::read_to_string(folder.path().join("u.svg"))
            .expect("a picture")
            .contains("share of the variance")
    );
}

#[test]
fn the_json_of_an_uncertainty_has_intervals_and_indices() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let file = changed(folder.path(), "trailer-uncertainty", ("designs = 1024", "designs = 64"));
    let run = axlebow_in(folder.path(), &["study", &file, "--json"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    let settings = document["model"]["settings"].as_array().expect("settings");
    assert!(settings.contains(&"sample: 64 rows of Sobol's sequence, seed 1".into()), "{settings:?}");
    let told = &document["uncertainty"]["variants"][0];
    assert_eq!((&told["designs"], &told["failed"]), (&128.into(), &0.into()));
    let camber = &told["results"][0];
    assert_eq!(camber["key"], "camber_change_rad");
    let [low, high] = [0, 1].map(|end| camber["mean"]["interval"][end].as_f64().expect("a number"));
    assert!(low < camber["mean"]["value"].as_f64().expect("a number") && low < high);
    assert_eq!(camber["variance_indices"].as_array().map(Vec::len), Some(5));
    assert_eq!(told["limits"].as_array().map(Vec::len), Some(2));
}

#[test]
fn a_sample_marks_what_meets_its_limits() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let run = axlebow_in(
        folder.path(),
        &["study", &study("tube-and-seat-sample"), "--csv", "s.csv", "--plain-csv"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    let csv = std::fs::read_to_string(folder.path().join("s.csv")).expect("a CSV file");
    let lines: Vec<&str> = csv.lines().collect();
    assert!(lines[0].ends_with(",meets_limits,reason") && lines[1].contains(",152.4 mm,"), "{}", lines[1]);
    assert_eq!(lines.iter().filter(|line| line.ends_with(",yes,")).count(), 63);
    for words in ["designs meet every limit", "camber per", "152.4 mm", "Ranked by camber room"] {
        assert!(run.out.contains(words), "{words}: {}", run.out);
    }
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
}

#[test]
fn a_dry_run_tells_the_size_and_runs_nothing() {
    let run = axlebow(&["study", &study("trailer-uncertainty"), "--dry-run"]);
    assert_eq!(run.code, 0, "{}", run.err);
    for words in [
        "7168 designs",
        "Sobol's sequence (seed 1)",
        "designs for the indices",
        "as CSV",
        "normal, 9 mm ± 0.25 mm",
    ] {
        assert!(run.out.contains(words), "{words}: {}", run.out);
    }
}

#[test]
fn more_than_ten_million_designs_are_asked_about() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let file = changed(folder.path(), "tube-and-seat-sample", ("designs = 400", "designs = 20000000"));
    let run = axlebow_in(folder.path(), &["study", &file]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("20000000 designs") && run.err.contains("--large"), "{}", run.err);
    let run = axlebow_in(folder.path(), &["study", &file, "--dry-run"]);
    assert_eq!(run.code, 0, "{}", run.err);
}

#[test]
fn a_fault_of_an_expression_is_underlined_where_it_stands() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let file = changed(folder.path(), "tube-and-seat-sample", ("(0.009 / wall)", "(0.009 / wal)"));
    let run = axlebow_in(folder.path(), &["study", &file]);
    assert_eq!(run.code, 2);
    assert!(
        run.err.contains("no number is named `wal`") && run.err.contains("did you mean `wall`?"),
        "{}",
        run.err
    );
    assert!(run.err.contains("^^^\n") || run.err.contains("^^^ "), "{}", run.err);
}
