//! Removed tires calibrate wear: what a model has made is found again.

use std::path::Path;

use approx::assert_relative_eq;
use axlebow_axle::{Side, TireSlot, standard_cases, tires};
use axlebow_model::{Document, MODEL, Model, ReadQuantity, Reading, ReadingSheet, read_bytes};
use axlebow_study::{FitError, FitOutcome, fit, usual_unknowns};

const SEVERITY: &str = "running.severity";
const ABRASION: &str = "running.abrasion";

fn bytes(name: &str) -> Vec<u8> {
    std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models").join(name)).unwrap()
}

fn document() -> Document {
    read_bytes(&bytes("trailer-152-thin-dual.toml"), "model", &MODEL).unwrap()
}

fn demo() -> Vec<Reading> {
    let model = Model::of(&document()).unwrap();
    let sheet = bytes("removals/trailer-152-thin.csv");
    ReadingSheet::of_removals(&sheet, "removals", &model).unwrap().readings
}

/// The demo's removals, what was left of them as a model with other values has it, by its own tire faces.
fn made(truth: &[(&str, f64)]) -> Vec<Reading> {
    let mut document = document();
    truth.iter().for_each(|(path, value)| document.set_number(path, *value).unwrap());
    let axle = Model::of(&document).unwrap().axle;
    let faces = tires(&axle, &standard_cases(&axle)).unwrap();
    let mut taken = demo();
    for reading in &mut taken {
        let ReadQuantity::TreadDepth(rib) = &reading.quantity else { panic!("{reading:?}") };
        let case = faces.cases.iter().find(|case| case.name == reading.load.name).unwrap();
        let tire = usize::from(rib.tire == TireSlot::Inner);
        let worn = &case.wheels.of(rib.side).worn;
        // By hand: K w L/(2π R) off a tread of 16 mm.
        let wear = worn.tires[tire].ribs[rib.rib].wear * axle.running.abrasion.unwrap();
        reading.value = 0.016 - wear * rib.distance / (std::f64::consts::TAU * worn.radius);
    }
    taken
}

fn fitted(readings: &[Reading]) -> FitOutcome {
    fit(&document(), readings, &usual_unknowns(&document(), readings)).unwrap()
}

#[test]
fn severity_and_abrasion_that_made_removals_are_found_again() {
    let truth = [(SEVERITY, 1.37), (ABRASION, 2.2e-11)];
    let outcome = fitted(&made(&truth));
    assert_eq!(outcome.unknowns.len(), 2);
    for (own, (path, value)) in outcome.unknowns.iter().zip(truth) {
        assert_eq!(own.unknown.path, path);
        assert_relative_eq!(own.value, value, max_relative = 1e-6);
        let [low, high] = own.interval.unwrap();
        assert!(low < value && value < high);
    }
    assert!(outcome.estimate.converged && outcome.estimate.doubt().is_none(), "{outcome:?}");
}

/// Ribs that stand upright wear by severity and abrasion as a product of powers: only where a wheel leans is one told from
/// the other, as a lean wears what driving does not ask for.
#[test]
fn one_rib_does_not_tell_severity_from_abrasion() {
    let mut one = made(&[(SEVERITY, 1.37), (ABRASION, 2.2e-11)]);
    one.truncate(1);
    let paths = [SEVERITY, ABRASION].map(str::to_owned);
    let refused = fit(&document(), &one, &paths).unwrap_err();
    assert_eq!(refused, FitError::TooFew { readings: 1, unknowns: 2 });
    let alone = fit(&document(), &one, &paths[1..]).unwrap();
    assert!((0.5e-11..1e-10).contains(&alone.unknowns[0].value), "{:?}", alone.unknowns);
}

#[test]
fn the_demo_calibrates_wear_and_its_tires_lose_what_was_read() {
    let outcome = fitted(&demo());
    assert!(outcome.estimate.doubt().is_none(), "{:?}", outcome.estimate.warnings);
    assert!(outcome.unknowns.iter().all(|own| own.interval.is_some()), "{:?}", outcome.unknowns);
    let values: Vec<(String, f64)> =
        outcome.unknowns.iter().map(|own| (own.unknown.path.clone(), own.value)).collect();
    let text = document().rewritten(&values).unwrap();
    let axle = Model::from_bytes(text.as_bytes(), "fitted").unwrap().axle;
    let face = &tires(&axle, &standard_cases(&axle)[..1]).unwrap().cases[0].wheels;
    let rate = face.of(Side::Left).worn.tires[1].ribs[0].worn_per_distance.unwrap();
    let own =
        outcome.readings.iter().find(|own| own.reading.quantity.of() == "left inner tire, rib 1").unwrap();
    let ReadQuantity::TreadDepth(rib) = &own.reading.quantity else { panic!("{own:?}") };
    // Six digits are written.
    assert_relative_eq!(0.016 - rate * rib.distance, own.fitted, max_relative = 1e-4);
}
