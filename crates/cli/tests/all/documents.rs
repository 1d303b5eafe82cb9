//! Every JSON document meets the schema that the same program prints for its tag.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{Run, axlebow, axlebow_in, demo, root};

/// Schemas by their names; the program is asked for each once.
static SCHEMAS: Mutex<BTreeMap<String, Value>> = Mutex::new(BTreeMap::new());

fn schema(name: &str) -> Value {
    let mut known = SCHEMAS.lock().unwrap_or_else(PoisonError::into_inner);
    let made = || {
        let run = axlebow(&["schema", name]);
        assert_eq!(run.code, 0, "{name}: {}", run.err);
        serde_json::from_str(&run.out).expect("a schema is JSON")
    };
    known.entry(name.to_owned()).or_insert_with(made).clone()
}

/// Holds what a run printed against the schema that its tag names; gives the document.
fn assert_meets_schema(run: &Run, what: &str) -> Value {
    let document: Value = serde_json::from_str(&run.out)
        .unwrap_or_else(|error| panic!("{what}: {error}\n{}{}", run.out, run.err));
    let tag = document["schema"].as_str().unwrap_or_else(|| panic!("{what}: no tag"));
    let [program, name, version] = tag.split('/').collect::<Vec<_>>()[..] else { panic!("{what}: {tag}") };
    assert!(program == "axlebow" && version.parse::<u32>().is_ok(), "{what}: {tag}");
    let validator = jsonschema::validator_for(&schema(name)).expect("a schema");
    let faults: Vec<String> = validator
        .iter_errors(&document)
        .map(|fault| format!("{fault} at {}", fault.instance_path()))
        .collect();
    assert!(answer(&document).ends_with('.'), "{what}: no answer");
    assert!(faults.is_empty(), "{what} against the schema {name}: {faults:#?}");
    document
}

/// Holds each run against its schema, and the text of the same run against the answer of its document.
fn assert_all(runs: &[&[&str]]) {
    for arguments in runs {
        let what = arguments.join(" ");
        let document = assert_meets_schema(&axlebow(arguments), &what);
        let plain: Vec<&str> = arguments.iter().copied().filter(|word| *word != "--json").collect();
        let text = axlebow(&plain).out;
        assert!(words(&text).contains(&answer(&document)), "{what}: {}\n{text}", answer(&document));
    }
}

/// The sentences of a document's answer.
fn answer(document: &Value) -> String {
    let sentences = document["answer"].as_array().expect("an answer");
    sentences.iter().map(|sentence| sentence.as_str().expect("a sentence")).collect::<Vec<_>>().join(" ")
}

/// The words of a text, with one blank between them.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Names of the files of a folder that end in `.toml`.
fn files(folder: &str) -> Vec<String> {
    let entries = std::fs::read_dir(root().join(folder)).expect("a folder");
    let mut names: Vec<String> = entries
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "toml"))
        .map(|path| path.display().to_string())
        .collect();
    names.sort();
    names
}

#[test]
fn every_model_under_load_meets_its_schemas() {
    for model in files("models") {
        for command in ["flex", "section"] {
            let run = axlebow(&[command, &model, "--json"]);
            assert_eq!(run.code, 0, "{command} {model}: {}", run.err);
            assert_meets_schema(&run, &format!("{command} {model}"));
        }
    }
}

#[test]
fn every_model_checked_and_shaken_meets_its_schemas() {
    for model in files("models") {
        for command in ["strength", "modes", "tire"] {
            let case: &[&str] = if command == "modes" { &[] } else { &["--case", "rated-load"] };
            let run = axlebow(&[&[command, model.as_str(), "--json"], case].concat());
            assert_meets_schema(&run, &format!("{command} {model}"));
        }
    }
}

#[test]
fn every_study_meets_its_schema() {
    for study in files("studies") {
        let run = axlebow(&["study", &study, "--coarse", "2", "--json"]);
        assert_eq!(run.code, 0, "{study}: {}", run.err);
        let document = assert_meets_schema(&run, &study);
        assert!(document["warnings"].is_array(), "{study}");
        assert_eq!(document["model"]["invented"], true, "{study}");
        let rows = document["rows"].as_array().map_or(&[][..], Vec::as_slice);
        assert!(rows.iter().all(|row| row["reason"].is_null()), "{study}: {rows:?}");
    }
}

#[test]
fn beams_meet_their_schema() {
    let [loaded, free] = ["overhung-axle-shear", "modes-free"]
        .map(|name| root().join(format!("studies/textbook/{name}.toml")).display().to_string());
    assert_all(&[
        &["beam", &loaded, "--element", "two-node", "--elements", "1,2", "--json"],
        &["beam", &free, "--json"],
    ]);
}

#[test]
fn rides_and_what_is_told_of_them_meet_their_schemas() {
    let (axle, road) = (demo("trailer-152-thin-dual"), root().join("models/roads"));
    let road = |name: &str| road.join(format!("{name}.toml")).display().to_string();
    let (bump, washboard) = (road("one-wheel-bump"), road("washboard"));
    assert_all(&[
        &["ride", &axle, "--over", &bump, "--json"],
        &["ride", &axle, "--over", &bump, "--full", "--reduced", "--json"],
        &["tire", &axle, "--over", &washboard, "--json"],
        &["causes", &axle, "--over", &bump, "--json"],
        &["response", &axle, "--points", "40", "--json"],
        &["cups", &axle, "--count", "5", "--speed", "90 km/h", "--over", &washboard, "--json"],
        &["cups", "--count", "5", "--speed", "90 km/h", "--tire-radius", "490 mm", "--json"],
    ]);
}

#[test]
fn the_other_commands_meet_their_schemas() {
    let (thin, stiffened) = (demo("trailer-152-thin-dual"), demo("trailer-152-thin-dual-angle"));
    assert_all(&[
        &["flex", &thin, "--sensitivities", "--json"],
        &["flex", &thin, "--case", "rated-load", "--against", &stiffened, "--json"],
        &["flex", &thin, "--set", "wheel_end[0].endplay=0.3 mm", "--json"],
        &["section", &stiffened, "--case", "rated-load", "--json"],
        &["causes", &stiffened, "--json"],
        &["remedies", &stiffened, "--over", "haversine-bump", "--json"],
        &["tire", &thin, &stiffened, "--json"],
        &["growth", &thin, "--steps", "2", "--counts", "1..3", "--json"],
        &["growth", &thin, &stiffened, "--steps", "2", "--counts", "1..3", "--json"],
        &["explain", &demo("cases/thin-tube-inner-shoulder"), "--json"],
        &["rating", &thin, "--case", "rated-load", "--points", "3", "--json"],
        &["textbook", "--json"],
    ]);
    let line_haul = root().join("models/duties/line-haul.toml").display().to_string();
    assert_all(&[&["life", &thin, "--duty", &line_haul, "--json"]]);
    let folder = TempDir::new().expect("a folder");
    let sheet = root().join("models/readings/trailer-152-thin.csv").display().to_string();
    let fit = ["fit", &thin, "--readings", &sheet, "-o", "fitted.toml", "--json"];
    assert_meets_schema(&axlebow_in(folder.path(), &fit), "fit");
}
