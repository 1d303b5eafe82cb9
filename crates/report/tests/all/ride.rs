//! A ride as table, document, histories and picture.

use std::f64::consts::TAU;

use axlebow_axle::{
    BasisComparison, CamberSplit, RideBasis, RideHistory, RideMethod, RideOutcome, RideWheel, Sides,
    StationPeak, StopHits, USUAL_SCHEME, Warning,
};
use axlebow_report::json::{ride_document, ride_schema};
use axlebow_report::plot::ride_figure;
use axlebow_report::{BesideRide, ReportError, csv, table};
use axlebow_study::{DrawnRide, DrawnRides};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::figures::keep;
use crate::made_up::card;

const SPEED: f64 = 20.0;
const STEP: f64 = 1e-3;

/// Histories of a wheel that leaves the road twice, and of one that does not.
fn history(samples: usize) -> RideHistory {
    let time: Vec<f64> = (0..samples).map(|i| STEP * i as f64).collect();
    let decay = |rate: f64| time.iter().map(move |t| (TAU * 3.0 * t).sin() * (-rate * t).exp());
    let load = |size: f64| decay(1.0).map(|part| (45e3 + size * part).max(0.0)).collect();
    let camber = |size: f64| decay(0.5).map(|part| -0.005 + size * part).collect();
    let bump = |t: &f64| if *t < 0.05 { 0.03 * (TAU * 10.0 * t).sin() } else { 0.0 };
    RideHistory {
        distance: time.iter().map(|t| SPEED * t - 1.0).collect(),
        road: Sides { left: time.iter().map(bump).collect(), right: vec![0.0; samples] },
        load: Sides { left: load(6e4), right: load(2e4) },
        camber: Sides { left: camber(0.004), right: camber(-0.001) },
        roll: decay(1.0).map(|part| 0.01 * part).collect(),
        stress: decay(0.5).map(|part| -2e8 - 5e7 * part).collect(),
        time,
        ..RideHistory::default()
    }
}

fn wheel(load_at_rest: f64) -> RideWheel {
    RideWheel {
        load_at_rest,
        largest_load: 99.5e3,
        smallest_load: 0.0,
        dynamic_load_factor: 2.211,
        dynamic_load_coefficient: 0.31,
        time_off_road: 0.123,
        camber_at_rest: -0.005,
        camber_peak: -0.0085,
        camber_peak_split: CamberSplit { bending: -0.0085, ..CamberSplit::default() },
        camber_peak_to_peak: 0.0077,
        camber_rms: 0.0021,
        dominant_frequency: Some(38.5),
        cups_per_turn: Some(5.93),
        cup_spacing: Some(0.519),
        roughness_index: None,
    }
}

pub fn outcome() -> RideOutcome {
    let still = RideWheel { dominant_frequency: None, cups_per_turn: None, cup_spacing: None, ..wheel(45e3) };
    let peak = |name: &str, y, stress| StationPeak { name: name.to_owned(), y, stress, time: 0.0835 };
    RideOutcome {
        name: "half-sine bump under the left wheels".to_owned(),
        speed: SPEED,
        tire_radius: 0.49,
        wheels: Sides { left: wheel(45e3), right: still },
        stations: vec![peak("left-seat", 0.48, -2.48e8), peak("right-seat", -0.48, 2.2e8)],
        history: history(2001),
        run_in: 0.0,
        method: RideMethod {
            basis: RideBasis::Full,
            unknowns: 116,
            modes_up_to: None,
            scheme: USUAL_SCHEME,
            step: STEP,
        },
        parts: 2012,
        iterations: 4100,
        contact_changes: 4,
        stops: Sides { left: Some(StopHits { count: 3, largest_force: 18.5e3 }), right: None },
        energy_drift: 1.3e-4,
        partial: None,
        warnings: Vec::new(),
    }
}

/// The ride with the stress of each station kept.
pub fn with_stresses(mut outcome: RideOutcome) -> RideOutcome {
    let stress = &outcome.history.stress;
    let halved = stress.iter().map(|stress| 0.5 * stress).collect();
    outcome.history.stresses = vec![stress.clone(), halved];
    outcome
}

fn alone_as_json(outcome: &RideOutcome, system: UnitSystem) -> String {
    ride_document(outcome, BesideRide::default(), &card(system))
}

fn alone_as_table(outcome: &RideOutcome, system: UnitSystem) -> String {
    table::ride(outcome, BesideRide::default(), &card(system)).text()
}

pub fn samples_as_csv(outcome: &RideOutcome) -> String {
    let mut text = Vec::new();
    csv::write_ride(outcome, &mut text).unwrap();
    String::from_utf8(text).unwrap()
}

fn partial() -> RideOutcome {
    let why = "the equations stopped converging at 0.2999 s, at the left tire; try a shorter time step";
    RideOutcome { history: history(300), partial: Some(why.to_owned()), ..outcome() }
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
    let text = alone_as_json(&outcome(), UnitSystem::Us);
    assert!(text.ends_with("}\n"));
    let mut other: Value = serde_json::from_str(&alone_as_json(&outcome(), UnitSystem::Si)).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    assert_ne!(document["answer"], other["answer"]);
    other["answer"] = document["answer"].clone();
    assert_eq!(document, other);
    let solver = [
        "method",
        "comparison",
        "draws",
        "steps",
        "iterations",
        "contact_changes",
        "energy_drift",
        "complete",
        "partial",
    ];
    let about = [
        "schema",
        "model",
        "road",
        "program",
        "answer",
        "cautions",
        "speed_m_per_s",
        "wheels",
        "bump_stops",
        "run_in_s",
        "stations",
        "camber_spectrum",
        "refinement",
        "assumed",
        "warnings",
    ];
    let mut expected = [about.as_slice(), solver.as_slice()].concat();
    expected.sort_unstable();
    assert_eq!(keys(&document), expected);
    assert_eq!(document["schema"], "axlebow/ride/2");
    assert_eq!(document["speed_m_per_s"], SPEED);
    let loads = ["load_at_rest_n", "largest_load_n", "smallest_load_n", "time_off_road_s"];
    let ratios = ["dynamic_load_factor", "dynamic_load_coefficient", "cups_per_turn", "cup_spacing_m"];
    let camber = [
        "camber_at_rest_rad",
        "camber_peak_rad",
        "camber_peak_split",
        "camber_peak_to_peak_rad",
        "camber_rms_rad",
    ];
    let mut expected = [&loads[..], &ratios, &camber, &["camber_frequency_hz", "roughness_index"]].concat();
    expected.sort_unstable();
    assert_eq!(keys(&document["wheels"]["left"]), expected);
    assert_eq!(document["wheels"]["left"]["largest_load_n"], 99.5e3);
    assert!(document["wheels"]["right"]["cups_per_turn"].is_null());
    assert_eq!(keys(&document["stations"][0]), sorted(["name", "y_m", "stress_pa", "time_s"]));
    assert_eq!(document["stations"][1]["stress_pa"], 2.2e8);
    assert_eq!(document["bump_stops"]["left"]["hits"], 3);
    assert_eq!(document["bump_stops"]["left"]["largest_force_n"], 18.5e3);
    assert!(document["bump_stops"]["right"].is_null());
}

#[test]
fn bump_stops_have_rows_where_there_are_any() {
    let text = alone_as_table(&outcome(), UnitSystem::Si);
    let row = |name: &str| text.lines().find(|line| line.contains(name)).map(str::to_owned);
    let words = |line: String| line.split_whitespace().rev().take(2).map(str::to_owned).collect::<Vec<_>>();
    assert_eq!(words(row("bump stop, hits").unwrap()), ["-", "3"]);
    assert_eq!(words(row("bump stop, largest force, kN").unwrap()), ["-", "18.50"]);
    let without = alone_as_table(&RideOutcome { stops: Sides::default(), ..outcome() }, UnitSystem::Si);
    assert!(!without.contains("bump stop"));
}

#[test]
fn document_says_whether_the_ride_is_complete() {
    let document = |outcome| serde_json::from_str::<Value>(&alone_as_json(&outcome, UnitSystem::Si)).unwrap();
    let whole = document(outcome());
    assert!(whole["partial"].is_null());
    assert_eq!(whole["complete"], true);
    let part = document(partial());
    assert_eq!(part["complete"], false);
    assert!(part["partial"].as_str().unwrap().contains("stopped converging"));
    let mut odd = outcome();
    odd.wheels.left.dynamic_load_factor = f64::INFINITY;
    assert!(document(odd)["wheels"]["left"]["dynamic_load_factor"].is_null());
}

#[test]
fn schema_describes_the_document() {
    let schema: Value = serde_json::from_str(&ride_schema()).unwrap();
    assert_eq!(schema["properties"]["speed_m_per_s"]["description"], "Speed, m/s.");
    let document: Value = serde_json::from_str(&alone_as_json(&outcome(), UnitSystem::Si)).unwrap();
    assert_eq!(keys(&schema["properties"]), keys(&document));
}

#[test]
fn table_says_loads_camber_cups_and_stress() {
    let text = alone_as_table(&outcome(), UnitSystem::Si);
    let line = |name: &str| {
        let found = text.lines().find(|line| line.starts_with(name)).unwrap_or_else(|| panic!("{name}"));
        found[name.len()..].split_whitespace().map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(line("Road: half-sine bump under the left wheels. Speed: 72 km/h."), [""; 0]);
    assert_eq!(line("largest load, kN"), ["99.50", "99.50"]);
    assert_eq!(line("time off the road, ms"), ["123", "123"]);
    assert_eq!(line("camber change, peak, deg"), ["-0.487", "-0.487"]);
    assert_eq!(line("frequency that dominates camber, Hz"), ["38.50", "-"]);
    assert_eq!(line("cups that it prints per turn"), ["5.9", "-"]);
    assert_eq!(line("left-seat"), ["480.0", "-248.0", "0.084"]);
    assert!(text.contains("Demonstration data, invented."));
    assert!(text.contains("2012 steps and parts of steps, 4100 Newton iterations"));
    assert!(text.contains("energy drift 0.00013"));
    assert!(text.contains("are defaults (--json lists them)."));
    assert!(!text.contains("PARTIAL"));
}

#[test]
fn table_is_loud_about_a_partial_ride_and_keeps_its_width() {
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let text = alone_as_table(&partial(), system);
        assert!(text.contains("Warning: PARTIAL RIDE, the equations stopped converging at 0.2999 s"));
        assert!(text.contains("0.299 s only"));
        assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    }
}

#[test]
fn roughness_and_doubts_are_shown_where_there_are_any() {
    let mut rough = outcome();
    rough.wheels.left.roughness_index = Some(4.36e-3);
    rough.warnings =
        vec![Warning { text: "the step is coarse".to_owned(), advice: "give a shorter one".to_owned() }];
    let (si, us) = (alone_as_table(&rough, UnitSystem::Si), alone_as_table(&rough, UnitSystem::Us));
    let line = |text: &str| {
        let line = text.lines().find(|line| line.starts_with("international roughness index")).unwrap();
        line.split_whitespace().map(str::to_owned).collect::<Vec<_>>()[6..].to_vec()
    };
    assert_eq!(line(&si), ["m/km", "4.36", "-"]);
    // 63.36 in/mi to 1 m/km, from the lengths of the mile and the inch.
    assert_eq!(line(&us), ["in/mi", "276", "-"]);
    assert!(si.ends_with("Warning: the step is coarse; give a shorter one.\n"), "{si}");
    assert!(!alone_as_table(&outcome(), UnitSystem::Si).contains("roughness"));
    let document: Value = serde_json::from_str(&alone_as_json(&rough, UnitSystem::Si)).unwrap();
    assert_eq!(document["wheels"]["left"]["roughness_index"], 4.36e-3);
    assert_eq!(document["warnings"][0]["advice"], "give a shorter one");
}

#[test]
fn histories_have_a_line_for_each_sample_at_full_precision() {
    let outcome = outcome();
    let text = samples_as_csv(&outcome);
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(lines.len(), 1 + 2001 + 1);
    assert_eq!(
        lines[0],
        "time_s,distance_m,left_road_m,right_road_m,left_load_n,right_load_n,left_camber_change_rad,\
         right_camber_change_rad,roll_rad,stress_pa"
    );
    let cells: Vec<f64> = lines[1 + 777].split(',').map(|cell| cell.parse().unwrap()).collect();
    let history = &outcome.history;
    assert_eq!(cells.len(), 10);
    assert_eq!([cells[0], cells[1]], [history.time[777], history.distance[777]]);
    assert_eq!([cells[4], cells[7]], [history.load.left[777], history.camber.right[777]]);
    assert_eq!([cells[8], cells[9]], [history.roll[777], history.stress[777]]);
}

#[test]
fn stresses_of_stations_follow_where_they_were_kept() {
    let text = samples_as_csv(&with_stresses(outcome()));
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert!(lines[0].ends_with(",stress_pa,stress_left_seat_pa,stress_right_seat_pa"), "{}", lines[0]);
    assert!(lines[1].ends_with(",-200000000.0,-200000000.0,-100000000.0"), "{}", lines[1]);
}

#[test]
fn the_documents_spectrum_sums_to_the_square_of_the_rms() {
    let document: Value = serde_json::from_str(&alone_as_json(&outcome(), UnitSystem::Si)).unwrap();
    let spectrum = &document["camber_spectrum"];
    let column = |key: &str| {
        let values = spectrum[key].as_array().unwrap().iter();
        values.map(|value| value.as_f64().unwrap()).collect::<Vec<_>>()
    };
    let (width, left) = (column("width_hz"), column("left_rad2_per_hz"));
    assert!(width.len() == column("frequency_hz").len() && width.len() < 400);
    let sum: f64 = width.iter().zip(&left).map(|(width, density)| width * density).sum();
    let camber = &outcome().history.camber.left;
    let mean = camber.iter().sum::<f64>() / camber.len() as f64;
    let square = camber.iter().map(|camber| (camber - mean).powi(2)).sum::<f64>() / camber.len() as f64;
    assert!((sum / square - 1.0).abs() < 1e-9, "{sum} {square}");
    let short = RideOutcome { history: history(9), ..outcome() };
    let document: Value = serde_json::from_str(&alone_as_json(&short, UnitSystem::Si)).unwrap();
    assert!(document["camber_spectrum"].is_null());
}

#[test]
fn a_history_that_ends_early_leaves_its_cells_empty() {
    let mut outcome = outcome();
    outcome.history.roll.truncate(1);
    assert!(samples_as_csv(&outcome).split("\r\n").nth(2).unwrap().contains(",,-200"));
}

#[test]
fn a_history_that_ends_early_says_so_in_its_last_line() {
    let text = samples_as_csv(&partial());
    let last = text.lines().last().unwrap();
    assert!(last.starts_with("# partial: the equations stopped converging at 0.2999 s"), "{last}");
    assert!(!samples_as_csv(&outcome()).contains('#'));
}

#[test]
fn a_comparison_of_bases_has_a_row_for_each_result() {
    let reduced =
        RideMethod { basis: RideBasis::Reduced, unknowns: 10, modes_up_to: Some(150.0), ..outcome().method };
    let other = RideOutcome { method: reduced, ..outcome() };
    let comparison = BasisComparison::of(&outcome(), &other);
    let beside = BesideRide { comparison: Some(&comparison), ..BesideRide::default() };
    let text = table::ride(&outcome(), beside, &card(UnitSystem::Si)).text();
    for words in ["camber change, peak to peak, deg", "largest load, kN", "10 shapes", "150 Hz", "0.0000"] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    let json = ride_document(&outcome(), beside, &card(UnitSystem::Si));
    let document: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(document["comparison"]["largest_load_n"]["difference"], 0.0);
    assert_eq!(document["comparison"]["reduced"]["modes_up_to_hz"], 150.0);
}

/// Mean 0.3 of 0.2, 0.3 and 0.4 with s = 0.1 and t of two degrees of freedom, 4.303 (any table of Student's t).
#[test]
fn means_over_random_roads_come_first_with_their_interval() {
    let ride = |coefficient: f64| {
        let mut outcome = outcome();
        outcome.wheels.left.dynamic_load_coefficient = coefficient;
        DrawnRide::from(&outcome)
    };
    assert_eq!(DrawnRides::of(&[ride(0.3)]), None);
    let draws = DrawnRides::of(&[0.2, 0.3, 0.4].map(ride)).unwrap();
    let beside = BesideRide { draws: Some(&draws), ..BesideRide::default() };
    let text = table::ride(&outcome(), beside, &card(UnitSystem::Us)).text();
    for words in ["Mean of 3 random roads", "0.300 (0.052 to 0.548)", "95 of 100 cases", "of the first road"]
    {
        assert!(text.contains(words), "{words}\n{text}");
    }
    assert!(text.find("Mean of 3") < text.find("load at rest"));
    assert!(text.is_ascii() && text.lines().all(|line| line.chars().count() <= 100), "{text}");
    let json: Value =
        serde_json::from_str(&ride_document(&outcome(), beside, &card(UnitSystem::Si))).unwrap();
    let entry = &json["draws"]["wheels"]["left"]["dynamic_load_coefficient"];
    assert!((entry["value"].as_f64().unwrap() - 0.3).abs() < 1e-12);
    assert!((entry["interval"][0].as_f64().unwrap() - (0.3 - 4.302_653 * 0.1 / 3.0_f64.sqrt())).abs() < 1e-6);
    assert_eq!(json["draws"]["count"], 3);
}

#[test]
fn ride_figures_are_drawn() {
    for (name, outcome, system) in [
        ("ride", outcome(), UnitSystem::Si),
        ("ride-us", outcome(), UnitSystem::Us),
        ("ride-partial", partial(), UnitSystem::Si),
    ] {
        let svg = ride_figure(&outcome, None, &card(system)).unwrap();
        assert_eq!(svg, ride_figure(&outcome, None, &card(system)).unwrap());
        keep(name, &svg);
    }
}

#[test]
fn the_figure_shades_where_a_wheel_is_off_the_road() {
    let figure = |outcome: &RideOutcome| {
        let svg = ride_figure(outcome, None, &card(UnitSystem::Si)).unwrap();
        svg.text().matches("fill-opacity=\"0.22\"").count()
    };
    let mut outcome = outcome();
    let two_for_the_legend = 2;
    let loads = &outcome.history.load.left;
    let left = loads.windows(2).filter(|pair| pair[0] > 0.0 && pair[1] <= 0.0).count();
    assert!(left > 0);
    assert_eq!(figure(&outcome), two_for_the_legend + left);
    outcome.history.load.left = outcome.history.load.right.clone();
    assert_eq!(figure(&outcome), 0);
}

#[test]
fn the_figure_says_what_was_driven_and_that_it_is_partial() {
    let text = ride_figure(&partial(), None, &card(UnitSystem::Us)).unwrap().text().to_owned();
    for part in [
        "<title>Round-tube trailer axle: half-sine bump under the left wheels at 44.739 mph</title>",
        "Partial ride: the equations stopped converging",
        "Distance along the road, ft",
        "Demonstration data, invented.",
    ] {
        assert!(text.contains(part), "{part} is missing");
    }
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let refused = |change: &dyn Fn(&mut RideHistory)| {
        let mut changed = outcome();
        change(&mut changed.history);
        ride_figure(&changed, None, &card(UnitSystem::Si)).unwrap_err()
    };
    assert!(matches!(refused(&|h| *h = RideHistory::default()), ReportError::Empty { .. }));
    let not_drawable = |error| matches!(error, ReportError::NotDrawable { .. });
    assert!(not_drawable(refused(&|h| h.distance[3] = f64::NAN)));
    assert!(not_drawable(refused(&|h| h.load.right[3] = f64::INFINITY)));
    assert!(not_drawable(refused(&|h| h.stress[3] = f64::NAN)));
}

#[test]
fn a_single_sample_and_unequal_histories_are_drawn() {
    let one = RideOutcome { history: history(1), ..outcome() };
    assert!(ride_figure(&one, None, &card(UnitSystem::Si)).is_ok());
    let mut odd = outcome();
    odd.history.camber.left.clear();
    odd.history.stress.clear();
    assert!(ride_figure(&odd, None, &card(UnitSystem::Si)).is_ok());
}
