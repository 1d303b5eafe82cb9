//! Table, figure and JSON of an uncertainty and of a sample.

use std::path::Path;

use axlebow_report::json::study_document;
use axlebow_report::plot::study_figure;
use axlebow_report::{ModelCard, table};
use axlebow_study::{Study, StudyOutcome};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::figures::keep;

fn coarse(name: &str) -> (StudyOutcome, ModelCard) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    let bytes = std::fs::read(folder.join(name)).unwrap();
    let study = Study::from_bytes(&bytes, name, &folder).unwrap().coarse(64);
    let (name, hash) = (study.base.name.clone(), study.base.hash.clone());
    let system = UnitSystem::Si;
    (
        study.run(&|_, _| ()),
        ModelCard {
            name,
            hash,
            system,
            invented: study.base.invented,
            typical: vec![],
            invented_inputs: vec![],
            settings: vec![],
            assumed: vec![],
        },
    )
}

#[test]
fn the_table_of_an_uncertainty_fits_and_the_document_has_its_numbers() {
    let (outcome, card) = coarse("trailer-uncertainty.toml");
    let text = table::study(&outcome, &card).text();
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    let document: Value = serde_json::from_str(&study_document(&outcome, &card)).unwrap();
    let told = &document["uncertainty"]["variants"][0];
    let own = &outcome.uncertainty.as_ref().unwrap().variants[0];
    assert_eq!(told["designs"], 128);
    for (entry, result) in told["results"].as_array().unwrap().iter().zip(&own.results) {
        assert_eq!(entry["key"], result.measure.key());
        assert_eq!(entry["mean"]["value"], result.mean.value);
        assert_eq!(entry["percentiles"][2]["share"], 0.95);
        assert_eq!(entry["variance_indices"][0]["path"], "tube.wall");
    }
    assert_eq!(document["rows"].as_array().unwrap().len(), 64 * 7);
    assert!(document["rows"][0]["meets_limits"].is_boolean());
    let derived = document["quantities"].as_array().unwrap().last().unwrap().clone();
    assert_eq!((&derived["of"], &derived["name"]), (&"derived".into(), &"camber-of-allowed".into()));
}

#[test]
fn figures_of_an_uncertainty_and_of_a_sample_are_drawn() {
    for (name, words) in [
        ("trailer-uncertainty.toml", ["share of the variance", "limit"]),
        ("tube-and-seat-sample.toml", ["meets every limit", "152.4 mm"]),
    ] {
        let (outcome, card) = coarse(name);
        let picture = study_figure(&outcome, &card).unwrap();
        words.iter().for_each(|words| assert!(picture.text().contains(words), "{name}: {words}"));
        assert!(picture.text().contains("invented"));
        keep(name.trim_end_matches(".toml"), &picture);
    }
}

#[test]
fn the_table_of_a_sample_names_choices_and_says_what_meets_the_limits() {
    let (outcome, card) = coarse("tube-and-seat-sample.toml");
    let text = table::study(&outcome, &card).text();
    assert!(text.contains("127 mm") && text.contains("of 64 designs meet every limit"), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    let document: Value = serde_json::from_str(&study_document(&outcome, &card)).unwrap();
    assert_eq!(document["varied"][0]["choices"], serde_json::json!(["127 mm", "152.4 mm"]));
    let met = outcome.rows.iter().filter(|row| outcome.meets(row)).count();
    assert_eq!(outcome.ranked().len(), met, "only what meets the limits is ranked");
}
