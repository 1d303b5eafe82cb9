//! Natural modes as table, document and picture.

use axlebow_axle::{ModeMesh, ModeOutcome, ModesOutcome, Motion, ShapePoint, Sides, Strain};
use axlebow_report::json::{modes_document, modes_schema};
use axlebow_report::plot::modes_figure;
use axlebow_report::{ReportError, table};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::figures::keep;
use crate::made_up::{HUB, card};

/// A mode whose axle line moves by `motion` at each place.
fn mode(name: &str, frequency: f64, motion: impl Fn(f64) -> [f64; 6]) -> ModeOutcome {
    let places = [HUB, 0.8, 0.48, 0.0, -0.48, -0.8, -HUB];
    ModeOutcome {
        name: name.to_owned(),
        frequency,
        damping_ratio: 0.0756,
        modal_mass: 512.0,
        residual: 3.2e-12,
        strain: Strain { beam: 0.6, seats: 0.2, bearings: 0.15, tires: 0.05, rest_of_vehicle: 0.0 },
        motion: Motion { vertical: 0.9, fore_aft: 0.1, ..Motion::default() },
        shape: places.map(|y| ShapePoint { y, motion: motion(y) }).into(),
        camber: Sides { left: 2.0, right: -2.0 },
        body: [0.0, 0.0],
    }
}

pub fn outcome() -> ModesOutcome {
    let bounce = ModeOutcome {
        motion: Motion { body: 1.0, ..Motion::default() },
        strain: Strain { seats: 0.7, tires: 0.1, rest_of_vehicle: 0.2, ..Strain::default() },
        body: [-1.0, 0.0],
        ..mode("body bounce", 1.334, |_| [0.05, 0.0, -0.2, 0.0, 0.0, 0.0])
    };
    let bow = mode("vertical bow", 40.7149, |y| [0.0, 0.0, 1.0 - 3.0 * y * y, -6.0 * y, 0.0, 0.0]);
    let yaw = mode("axle yaw", 24.056, |y| [-y, 0.0, 0.1, 0.0, 0.0, 1.0]);
    let shake = ModeOutcome {
        motion: Motion { lateral: 1.0, ..Motion::default() },
        ..mode("lateral shake", 14.0, |_| [0.0, 1.0, 0.0, 0.0, 0.0, 0.0])
    };
    let rock = ModeOutcome {
        motion: Motion { twist: 1.0, ..Motion::default() },
        modal_mass: 1e28,
        ..mode("seat rock", 79.67, |y| [y, 0.0, y, 0.0, 1.5e14, 0.0])
    };
    let modes = vec![bounce, shake, yaw, bow, rock];
    let mesh = ModeMesh { longest_element: 0.1101, change: 2.34e-4 };
    ModesOutcome { sprung_mass: 8449.0, modes, limit: 84.39, found_below: 5, counted_below: 5, mesh }
}

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value.as_object().unwrap().keys().map(String::as_str).collect();
    keys.sort_unstable();
    keys
}

fn sorted<const N: usize>(mut keys: [&str; N]) -> Vec<&str> {
    keys.sort_unstable();
    keys.to_vec()
}

#[test]
fn document_has_exactly_the_stated_fields_in_si() {
    let text = modes_document(&outcome(), &card(UnitSystem::Us));
    assert_eq!(text, modes_document(&outcome(), &card(UnitSystem::Us)));
    let document: Value = serde_json::from_str(&text).unwrap();
    let about = [
        "schema",
        "program",
        "answer",
        "model",
        "sprung_mass_kg",
        "modes",
        "assumed",
        "warnings",
        "cautions",
    ];
    let count =
        ["counted_below", "found_below", "limit_hz", "complete", "longest_element_m", "change_by_halving"];
    let mut expected = [about.as_slice(), count.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(&document), expected);
    assert_eq!(document["schema"], "axlebow/modes/2");
    assert_eq!(document["complete"], true);
    let mode = &document["modes"][3];
    let numbers = ["name", "frequency_hz", "damping_ratio", "modal_mass_kg", "residual"];
    let groups = ["strain", "motion", "camber_rad_per_m", "body_heave_m", "body_roll_rad", "shape"];
    let mut expected = [numbers.as_slice(), groups.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(mode), expected);
    assert_eq!(keys(&mode["strain"]), sorted(["beam", "seats", "bearings", "tires", "rest_of_vehicle"]));
    assert_eq!(keys(&mode["motion"]), sorted(["vertical", "longitudinal", "lateral", "twist", "body"]));
    let point = ["y_m", "ux_m", "uy_m", "uz_m", "rx_rad", "ry_rad", "rz_rad"];
    assert_eq!(keys(&mode["shape"][0]), sorted(point));
    assert_eq!(mode["camber_rad_per_m"], serde_json::json!({ "left": 2.0, "right": -2.0 }));
    assert_eq!(mode["shape"][0]["rx_rad"], -6.0 * HUB);
}

#[test]
fn schema_describes_the_document() {
    let schema: Value = serde_json::from_str(&modes_schema()).unwrap();
    let document: Value = serde_json::from_str(&modes_document(&outcome(), &card(UnitSystem::Si))).unwrap();
    assert_eq!(keys(&schema["properties"]), keys(&document));
    assert_eq!(
        schema["properties"]["limit_hz"]["description"],
        "Frequency below which modes were counted, Hz."
    );
}

#[test]
fn table_fits_and_says_energies_camber_and_completeness() {
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let text = table::modes(&outcome(), &card(system)).text();
        println!("{text}");
        assert!(text.is_ascii() && text.lines().all(|line| line.chars().count() <= 100));
    }
    let text = table::modes(&outcome(), &card(UnitSystem::Si)).text();
    let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
    // 2 rad/m are 0.1146 degrees for a millimeter.
    for words in [
        "Sturm check: no missing modes; 5 modes below 84.39 Hz, all found.",
        "worst mode: 3e-12.",
        "the longest is 110.1 mm, the last halving moved none by more than 0.023 %.",
        "in the rest of the vehicle, which resists roll, less what the sprung weight gives back: body bounce 20.0 %.",
        "Demonstration data, invented.",
        "are defaults (--json lists them).",
    ] {
        assert!(joined.contains(words), "`{words}` is missing in\n{text}");
    }
    let cells = |name: &str| -> Vec<&str> {
        let line = text.lines().rfind(|line| line.starts_with(name)).unwrap();
        line[name.len()..].split_whitespace().collect()
    };
    assert_eq!(
        cells("vertical bow"),
        ["40.71", "7.6", "512.0", "60.0", "20.0", "15.0", "5.0", "0.1146", "-0.1146"]
    );
    assert_eq!(cells("seat rock"), ["79.67", "7.6", "-", "60.0", "20.0", "15.0", "5.0", "-", "-"]);
}

#[test]
fn a_missed_mode_is_a_warning() {
    let missed = ModesOutcome { counted_below: 6, ..outcome() };
    let text = table::modes(&missed, &card(UnitSystem::Si)).text();
    assert!(text.contains("Warning: Sturm check: 6 modes below 84.39 Hz, 5 found, 1 missed;"), "{text}");
    let document: Value = serde_json::from_str(&modes_document(&missed, &card(UnitSystem::Si))).unwrap();
    assert_eq!(document["complete"], false);
    let mesh = ModeMesh { longest_element: 0.01, change: 0.02 };
    let coarse = table::modes(&ModesOutcome { mesh, ..outcome() }, &card(UnitSystem::Si)).text();
    assert!(coarse.contains("Warning: with elements of 10.0 mm the last halving still moved"), "{coarse}");
    let surplus = ModesOutcome { counted_below: 4, ..outcome() };
    assert!(table::modes(&surplus, &card(UnitSystem::Si)).text().contains("5 found, 1 too many;"));
}

#[test]
fn modes_are_drawn_with_what_moves() {
    let svg = modes_figure(&outcome(), &card(UnitSystem::Si)).unwrap();
    assert_eq!(svg, modes_figure(&outcome(), &card(UnitSystem::Si)).unwrap());
    for words in ["40.71 Hz, damping 7.6 %", "dotted: rotation", "dotted: lateral", "vehicle body, vertical"]
    {
        assert!(svg.text().contains(words), "{words} is missing");
    }
    keep("modes", &svg);
    let mut one = outcome();
    one.modes.truncate(1);
    let svg = modes_figure(&one, &card(UnitSystem::Us)).unwrap();
    assert!(!svg.text().contains("dotted"));
    keep("modes-one-us", &svg);
}

#[test]
fn no_more_than_twelve_modes_are_drawn() {
    let mut many = outcome();
    many.modes = many.modes.iter().cycle().take(20).cloned().collect();
    let text = modes_figure(&many, &card(UnitSystem::Si)).unwrap().text().to_owned();
    assert!(text.contains("the first 12 of 20"));
    assert_eq!(text.matches("damping 7.6 %").count(), 12);
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let refused = |change: &dyn Fn(&mut ModesOutcome)| {
        let mut changed = outcome();
        change(&mut changed);
        modes_figure(&changed, &card(UnitSystem::Si)).unwrap_err()
    };
    assert!(matches!(refused(&|o| o.modes.clear()), ReportError::Empty { .. }));
    assert!(matches!(refused(&|o| o.modes[1].shape.clear()), ReportError::Empty { .. }));
    let not_drawable = |error| matches!(error, ReportError::NotDrawable { .. });
    assert!(not_drawable(refused(&|o| o.modes[0].shape[2].motion[2] = f64::NAN)));
    assert!(not_drawable(refused(&|o| o.modes[0].frequency = f64::INFINITY)));
    let mut still = outcome();
    still.modes = vec![mode("nothing", 1.0, |_| [0.0; 6])];
    assert!(modes_figure(&still, &card(UnitSystem::Si)).is_ok());
}
