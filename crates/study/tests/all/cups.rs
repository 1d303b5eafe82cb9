//! Waves of wear that grow, as results of studies.

use std::path::Path;

use approx::assert_relative_eq;
use axlebow_axle::{GrowthOptions, HeldSpeed, growth, standard_cases};
use axlebow_model::{MODEL, Model, read_bytes};
use axlebow_study::{Row, Study, StudyOutcome};

const SWEEP: &str = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-152-thin-dual.toml"
case = "rated-load"
show = ["cup-amplification", "cup-count"]
[[vary]]
path = "running.held_speed"
values = ["80 km/h", "100 km/h"]
[[vary]]
path = "seat[0].damping"
values = ["2 kN s/m", "40 kN s/m"]
[[derived]]
name = "growth-per-mm"
as = "ln(cup_amplification)"
[[limit]]
of = "cup-amplification"
most = "1.32"
"#;

/// What makes a search of it, on a model whose wear has a depth.
const CALIBRATED: &str = r#"[search]
least = "cup-amplification"
[[variant]]
name = "calibrated"
change = { "running.abrasion" = "0.03 mm3/(N m)" }
[[derived]]"#;

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies")
}

fn run(text: &str) -> StudyOutcome {
    let study = Study::from_bytes(text.as_bytes(), "study.toml", &folder());
    study.unwrap_or_else(|problems| panic!("{problems}")).run(&|_, _| ())
}

fn value(outcome: &StudyOutcome, row: &Row, name: &str) -> f64 {
    let measure = outcome.measures.iter().find(|own| own.name == name).unwrap();
    row.value(measure).unwrap_or(f64::NAN)
}

/// Speed and damping of a study are those of `axlebow growth`, whose winner is what the study tells.
#[test]
fn a_sweep_of_speed_by_damping_tells_the_wave_that_wins() {
    let outcome = run(SWEEP);
    let model = std::fs::read(folder().join("../models/trailer-152-thin-dual.toml")).unwrap();
    let mut document = read_bytes(&model, "model", &MODEL).unwrap();
    document.set("seat[0].damping", "2 kN s/m").unwrap();
    let axle = Model::of(&document).unwrap().axle;
    let held = HeldSpeed { mean: 100.0 / 3.6, deviation: 4.0 / 3.6 };
    let options = GrowthOptions::over(held, standard_cases(&axle).swap_remove(0), [1, 12]);
    let expected = growth(&axle, &options).unwrap();
    let wheel = expected.wheels.of(expected.worst());
    let row = outcome.rows.iter().find(|row| row.values == [held.mean, 2e3]).unwrap();
    let of = |name| value(&outcome, row, name);
    let winner = wheel.winner();
    assert_relative_eq!(of("cup-amplification"), winner.wave.amplification(1e-3), max_relative = 1e-9);
    assert_relative_eq!(
        of("cup-amplification-hub-held"),
        (1e-3 * winner.hub_held).exp(),
        max_relative = 1e-9
    );
    assert_relative_eq!(of("growth-per-mm"), 1e-3 * winner.wave.rate, max_relative = 1e-9);
    assert_relative_eq!(of("cup-worn-for-e-fold"), 1.0 / winner.wave.rate, max_relative = 1e-9);
    assert_eq!(of("cup-count"), f64::from(winner.count));
    assert_relative_eq!(of("cup-frequency"), winner.frequency, max_relative = 1e-9);
    assert_relative_eq!(of("critical-camber"), wheel.critical_camber().unwrap(), epsilon = 1e-12);
    assert_relative_eq!(of("camber-margin"), wheel.camber_margin().unwrap(), max_relative = 1e-9);
    // No removals have calibrated the demo, and the damping that would end growth was not asked for.
    assert!(of("distance-for-e-fold").is_nan());
    assert!(outcome.measures.iter().all(|own| own.name != "cup-threshold-damping"));
    let damped = outcome.rows.iter().find(|row| row.values == [held.mean, 40e3]).unwrap();
    assert!(value(&outcome, damped, "cup-amplification") < of("cup-amplification"));
    assert!(outcome.meets(damped) || !outcome.meets(row));
}

/// A calibrated model has distances, and a search may look for the damping that grows least.
#[test]
fn growth_may_be_an_objective_and_has_a_distance_where_wear_has_a_depth() {
    let search = SWEEP
        .replace("kind = \"sweep\"", "kind = \"search\"")
        .replace("[[derived]]", CALIBRATED)
        .replace("show = [", "show = [\"distance-for-e-fold\", ");
    let study = Study::from_bytes(search.as_bytes(), "study.toml", &folder());
    let outcome = study.unwrap_or_else(|problems| panic!("{problems}")).search(&|_, _| ()).unwrap();
    let best = outcome.best.as_ref().unwrap();
    assert_eq!(best.values[1], 40e3);
    let measure = outcome.measures.iter().find(|own| own.name == "distance-for-e-fold").unwrap();
    let distance = best.value(measure).unwrap();
    assert!((1e6..1e9).contains(&distance), "{distance} m");
}

/// The damping that ends growth costs much, and is there where it is asked for: tires that grow waves by themselves have none.
#[test]
fn the_damping_that_ends_growth_is_told_where_it_is_asked_for() {
    let text = SWEEP
        .replace("show = [", "show = [\"cup-threshold-damping\", ")
        .replace("\"80 km/h\", ", "")
        .replace(", \"40 kN s/m\"", "");
    let outcome = run(&text);
    assert!(value(&outcome, &outcome.rows[0], "cup-threshold-damping").is_nan());
    assert!(value(&outcome, &outcome.rows[0], "cup-amplification") > 1.0);
}
