//! Searches on the command line.

use serde_json::Value;

use crate::program::{axlebow, axlebow_in, root};

fn study(name: &str) -> String {
    root().join(format!("studies/{name}.toml")).display().to_string()
}

#[test]
fn the_lightest_tube_is_told_with_what_binds_and_what_stands_behind_it() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let run = axlebow_in(
        folder.path(),
        &["study", &study("lightest-tube"), "--plot", "s.svg", "--csv", "s.csv", "--plain-csv"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    for words in ["Least axle mass within the limits", "active", "the end of its range", "came to this goal"]
    {
        assert!(run.out.contains(words), "{words}\n{}", run.out);
    }
    let text = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect("a file");
    assert!(text("s.svg").contains("axle mass against camber change"));
    assert!(
        text("s.csv").starts_with("variant,tube.od (m),tube.wall (m),axle_mass_kg")
            && text("s.csv").lines().count() > 10
    );
}

#[test]
fn a_catalogue_is_proven_and_its_document_is_whole() {
    let run = axlebow(&["study", &study("stiffener-catalogue"), "--json"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let document: Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!((&document["schema"], &document["goal"]), (&"axlebow/search/2".into(), &"cost".into()));
    assert_eq!(
        (&document["proof"]["by"], &document["proof"]["combinations"]),
        (&"every-combination".into(), &135.into())
    );
    assert!(document["best"]["choices"]["size"].is_string() && document["nearest"].is_null());
    assert!(document["limits"][0]["active"] == true && document["limits"][0]["goal_without"].is_number());
    let costs: Vec<f64> = document["front"]
        .as_array()
        .expect("designs")
        .iter()
        .filter_map(|design| design["results"]["cost"].as_f64())
        .collect();
    assert!(costs.len() >= 5 && costs.windows(2).all(|pair| pair[0] <= pair[1]), "{costs:?}");
}

#[test]
fn a_limit_that_nothing_meets_is_named_with_the_nearest_design() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let text = std::fs::read_to_string(study("lightest-tube")).expect("the study");
    let models = root().join("models").display().to_string();
    let text = text.replace("0.36 deg", "0.05 deg").replace("../models", &models);
    std::fs::write(folder.path().join("s.toml"), text).expect("written");
    let run = axlebow_in(folder.path(), &["study", "s.toml"]);
    assert_eq!(run.code, 1, "{}", run.err);
    for words in ["No design meets every limit", "misses camber-change within 0.05 deg", "Nearest design"] {
        assert!(run.out.contains(words), "{words}\n{}", run.out);
    }
}
