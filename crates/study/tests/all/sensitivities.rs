//! Derivatives by the adjoint against differences of whole solutions, over every demo model, and every number of
//! them, and over axles of chance near them.

use std::path::{Path, PathBuf};

use axlebow_axle::{CaseReadings, LoadCase, Side, Sides, StaticDesign};
use axlebow_model::{Document, MODEL, Model, NumberKey, read_bytes};
use axlebow_study::{SensitivityOutcome, SlopeBy, sensitivities};
use axlebow_units::{Kind, UnitSystem};
use rand_chacha::ChaCha12Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Share of a number by which whole solutions stand apart.
const SHARE: f64 = 1e-3;
/// Share of a reading, for a change of a number by itself, that differences of whole solutions cannot tell from nothing: those
/// whose tires turn with the load are iterated and repeat to 6e-10 of a reading, a thousandth of this by their step.
const ROUNDING: f64 = 6e-7;

fn models() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<PathBuf> =
        files.filter(|file| file.extension().is_some_and(|end| end == "toml")).collect();
    files.sort();
    files
}

fn demo(name: &str) -> Document {
    let path = models().into_iter().find(|path| path.file_stem().unwrap() == name).unwrap();
    document(&path)
}

fn document(path: &Path) -> Document {
    read_bytes(&std::fs::read(path).unwrap(), "model", &MODEL).unwrap()
}

fn found(document: &Document, case: &str) -> SensitivityOutcome {
    among(document, case, |_| true)
}

fn among(document: &Document, case: &str, wanted: impl Fn(&str) -> bool) -> SensitivityOutcome {
    let model = Model::of(document).unwrap();
    let keys = document.numbers().into_iter().filter(|key| wanted(&key.path)).collect();
    sensitivities(document, (&model.axle, load_case(&model, case)), keys).unwrap()
}

fn load_case<'m>(model: &'m Model, name: &str) -> &'m LoadCase {
    model.cases.iter().find(|case| case.name == name).unwrap()
}

/// Readings of a whole solution; none where there is no such axle.
fn solved(document: &Document, case: &str, (path, value): (&str, f64)) -> Option<CaseReadings> {
    let mut document = document.clone();
    document.set_number(path, value).ok()?;
    let model = Model::of(&document).ok()?;
    let solved = StaticDesign::of(&model.axle).ok()?.case(load_case(&model, case)).ok()?;
    Some(CaseReadings {
        camber_change: Sides::each(|side| solved.wheels.of(side).camber_change),
        bow: solved.bow,
        peak_stress: solved.peak_stress,
        axle_mass: model.axle.mass(),
    })
}

fn values(readings: &CaseReadings) -> [f64; 5] {
    let CaseReadings { camber_change, bow, peak_stress, axle_mass } = *readings;
    [camber_change.left, camber_change.right, bow, axle_mass, peak_stress]
}

fn size(key: &NumberKey) -> f64 {
    match key.kind {
        _ if key.value != 0.0 => key.value.abs(),
        Kind::RotationalFlexibility => 1e-6,
        _ => 0.1,
    }
}

/// Holds every derivative against the central difference of fourth order of whole solutions, where the number can go to
/// both sides; gives back how many were held.
fn hold(document: &Document, case: &str, wanted: impl Fn(&str) -> bool) -> usize {
    let outcome = among(document, case, wanted);
    let own = values(&outcome.own);
    let mut held = 0;
    for key in outcome.keys.iter().filter(|key| key.by == SlopeBy::Adjoint) {
        let (at, step) = (key.key.value, SHARE * size(&key.key));
        let reading = |steps: f64| solved(document, case, (&key.key.path, at + steps * step));
        let all: Option<Vec<_>> = [-2.0, -1.0, 1.0, 2.0].into_iter().map(reading).collect();
        let Some([a, b, c, d]) = all.as_deref() else { continue };
        let whole = c.plus(b, -1.0).times(8.0).plus(d, -1.0).plus(a, 1.0).times(1.0 / (12.0 * step));
        let [near, far] = [c.plus(b, -1.0).times(0.5 / step), d.plus(a, -1.0).times(0.25 / step)];
        // Stations that meet within the steps bend the whole solutions' way.
        let smooth = |i: usize| {
            let (near, far) = (values(&near)[i], values(&far)[i]);
            (near - far).abs() < 1e-4 * near.abs() + 10.0 * ROUNDING * (own[i] / size(&key.key)).abs()
        };
        if !(0..4).all(smooth) {
            continue;
        }
        let [forth, back] = [c.plus(&outcome.own, -1.0), outcome.own.plus(b, -1.0)].map(|d| values(&d)[4]);
        // A camber change may come out near nothing, and rounds like that of the other side all the same.
        let camber = own[0].abs().max(own[1].abs());
        let scale = [camber, camber, own[2], own[3], own[4]];
        for (i, (slope, whole)) in values(&key.slope).into_iter().zip(values(&whole)).enumerate() {
            let rounding = ROUNDING * (scale[i] / size(&key.key)).abs();
            // The greatest of two equal stresses has a kink where one rises as the other falls.
            if i == 4 && (forth - back).abs() > 0.5 * (forth.abs() + back.abs()).max(rounding * step) {
                continue;
            }
            let close = (slope - whole).abs() <= 1e-6 * whole.abs() + rounding;
            assert!(close, "{case} {} reading {i}: {slope:e} is not {whole:e}", key.key.path);
        }
        held += 1;
    }
    held
}

#[test]
fn every_number_of_every_demo_model_has_the_derivative_of_the_whole_solution() {
    let mut held = 0;
    for path in models() {
        let document = document(&path);
        let model = Model::of(&document).unwrap();
        if model.axle.seats.left.wall.is_shell() {
            continue;
        }
        for case in ["rated-load", "one-wheel-raised", "side-load", "braking"] {
            held += hold(&document, case, |_| true);
        }
    }
    assert!(held > 2400, "{held}");
}

#[test]
fn axles_of_chance_have_the_derivatives_of_whole_solutions() {
    let mut chance = ChaCha12Rng::seed_from_u64(7);
    for name in
        ["trailer-152-thin-dual-angle-part", "drive-housing-9.5-wide-base-outset", "trailer-127-thick-dual"]
    {
        for _ in 0..3 {
            let mut document = demo(name);
            for key in document.numbers() {
                let share = f64::from(chance.next_u32()) / f64::from(u32::MAX);
                let mut changed = document.clone();
                let set = changed.set_number(&key.path, key.value * (0.97 + 0.06 * share));
                if set.is_ok() && Model::of(&changed).is_ok() {
                    document = changed;
                }
            }
            for case in ["rated-load", "one-wheel-raised", "side-load"] {
                assert!(hold(&document, case, |_| true) > 25, "{name} {case}");
            }
        }
    }
}

#[test]
fn shells_of_the_wall_have_their_part_in_derivatives() {
    let document = demo("trailer-152-thin-dual-shell");
    let keys = ["tube.wall", "seat[both].width"];
    assert_eq!(hold(&document, "rated-load", |path| keys.contains(&path)), keys.len());
}

/// At axles of chance, where meshes of whole solutions change within the steps: over 4 % of a number a change of mesh is about
/// a hundredth of what the number does.
#[test]
fn shells_of_chance_have_the_derivatives_of_whole_solutions_each_with_its_own_mesh() {
    let mut chance = ChaCha12Rng::seed_from_u64(11);
    let mut between =
        |low: f64, high: f64| low + (high - low) * f64::from(chance.next_u32()) / f64::from(u32::MAX);
    for number in 0..3 {
        let mut document = demo("trailer-152-thin-dual-shell");
        let (od, breadth) =
            if number == 0 { (0.151, 0.1) } else { (between(0.13, 0.17), between(0.09, 0.14)) };
        document.set_number("tube.od", od).unwrap();
        document.set_number("seat[both].bracket_breadth", breadth).unwrap();
        if number > 0 {
            document.set_number("tube.wall", between(0.007, 0.012)).unwrap();
            document.set_number("seat[both].width", between(0.07, 0.13)).unwrap();
        }
        let outcome = among(&document, "rated-load", |path| path == "tube.wall");
        let key = &outcome.keys[0];
        let at = |share: f64| {
            let value = key.key.value * (1.0 + share);
            solved(&document, "rated-load", ("tube.wall", value)).unwrap().camber_change.left
        };
        let whole = (at(0.02) - at(-0.02)) / (0.04 * key.key.value);
        let own = key.slope.camber_change.left;
        assert!((own / whole - 1.0).abs() < 0.03, "{od} {breadth}: {own} per m is not {whole}");
    }
}

/// With a side force that lifts a tire, derivatives are those with that tire off the road.
#[test]
fn a_lifted_tire_has_no_say() {
    let mut document = demo("trailer-127-thick-dual");
    document.set("loads.side_force_ratio", "0.45").unwrap();
    let model = Model::of(&document).unwrap();
    let case = load_case(&model, "side-load");
    let wheels = StaticDesign::of(&model.axle).unwrap().case(case).unwrap().wheels;
    assert!(Side::BOTH.iter().any(|side| wheels.of(*side).contacts.iter().any(|tire| tire.off_road)));
    assert!(hold(&document, "side-load", |_| true) > 20);
}

#[test]
fn endplay_takes_whole_solutions() {
    let outcome = found(&demo("trailer-152-thin-dual-loose"), "rated-load");
    assert!(outcome.keys.iter().all(|key| key.by == SlopeBy::Solutions));
    let endplay = outcome.keys.iter().find(|key| key.key.path.ends_with("endplay")).unwrap();
    // The load acts nearer the inner bearing, whose thrust opens it: the hub tilts by the radial play over 110 mm, top
    // outward. That moves load from the inner to the outer tire, which takes less than a tenth off.
    let tilt = 15_f64.to_radians().tan() / 0.11;
    let slope = endplay.slope;
    assert!(
        (0.9 * tilt..1.1 * tilt).contains(&slope.camber_change.left),
        "{} {tilt}",
        slope.camber_change.left
    );
    assert_eq!(slope.axle_mass, 0.0);
}

/// −∂θ/∂ln k of a part is that part of the camber change (unit-load theorem), where each wheel has one tire, whose load no
/// stiffness moves.
#[test]
fn slopes_by_stiffness_are_the_parts_of_the_camber_change() {
    let mut document = demo("trailer-152-thin-wide-base-outset");
    document.set("wheel_end[0].bearing_radial_stiffness", "1.6e6 N/mm").unwrap();
    let model = Model::of(&document).unwrap();
    let outcome = found(&document, "rated-load");
    let split = StaticDesign::of(&model.axle).unwrap().case(&model.cases[0]).unwrap().wheels.left.split;
    let by_share = |path: &str| {
        let key = outcome.keys.iter().find(|key| key.key.path == path).unwrap();
        -key.slope.camber_change.left * key.key.value
    };
    let bearing = by_share("wheel_end[both].bearing_radial_stiffness");
    assert!((bearing / split.bearing - 1.0).abs() < 1e-6, "{bearing} {}", split.bearing);
    let disc = -by_share("wheel[both].disc_flexibility");
    assert!((disc / split.disc - 1.0).abs() < 1e-6, "{disc} {}", split.disc);
    let wall = -by_share("seat[both].wall_flexibility");
    assert!((wall / split.wall - 1.0).abs() < 1e-6, "{wall} {}", split.wall);
    let elastic = by_share("material.elastic_modulus");
    assert!((elastic / (split.bending + split.shear) - 1.0).abs() < 1e-6, "{elastic}");
}

#[test]
fn steps_are_those_that_one_can_picture() {
    let outcome = found(&demo("trailer-152-thin-dual"), "rated-load");
    let key = |path: &str| outcome.keys.iter().find(|key| key.key.path == path).unwrap();
    assert_eq!(key("tube.wall").step(UnitSystem::Si), 1e-3);
    assert_eq!(key("tube.wall").step(UnitSystem::Us), 0.0625 * 0.0254);
    assert_eq!(key("loads.rated_load").step(UnitSystem::Si), 1e3);
    assert_eq!(key("material.elastic_modulus").step(UnitSystem::Us), 2e9);
    assert!(key("tube.wall").camber_per_mass(&outcome.own).unwrap() > 0.0);
    assert_eq!(key("loads.rated_load").camber_per_mass(&outcome.own), None);
    assert!(outcome.without_effect.iter().any(|path| path == "wheel[both].tire_damping"));
}

/// A preload is at the end of its range and moves nothing that stands: no rounding may be taken for an effect.
#[test]
fn a_number_at_its_bound_that_moves_nothing_has_no_effect() {
    let outcome = among(&demo("trailer-152-thin-dual"), "rated-load", |path| path.contains("preload"));
    assert!(outcome.keys.is_empty(), "{:?}", outcome.keys);
    assert_eq!(outcome.without_effect.len(), 1);
}
