//! Answers in the frequency domain as table, document, columns and picture.

use axlebow_axle::{
    Input, RandomAnswer, RandomOutcome, Resonance, ResponseOutcome, Sides, StationResponse, TransferFunction,
    Warning,
};
use axlebow_report::json::{response_document, response_schema};
use axlebow_report::plot::response_figure;
use axlebow_report::{ReportError, csv, table};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::figures::keep;
use crate::made_up::card;

fn frequencies() -> Vec<f64> {
    (0..300).map(|i| 0.5 * (f64::from(i) * 120_f64.ln() / 299.0).exp()).collect()
}

/// Two resonances.
fn transfer(size: f64) -> TransferFunction {
    let one = |f: f64, own: f64, damping: f64| {
        let r = f / own;
        let (a, b) = (1.0 - r * r, 2.0 * damping * r);
        [a / (a * a + b * b), -b / (a * a + b * b)]
    };
    let values = frequencies().into_iter().map(|f| {
        let ([a, b], [c, d]) = (one(f, 13.0, 0.15), one(f, 40.0, 0.03));
        [size * (a + 0.4 * c), size * (b + 0.4 * d)]
    });
    let peak = |frequency, gain, mode: &str| Resonance {
        frequency,
        gain: size * gain,
        mode: Some((mode.to_owned(), frequency * 1.02)),
    };
    let resonances = vec![peak(12.8, 3.6, "wheel hop"), peak(40.0, 6.7, "vertical bow")];
    TransferFunction { values: values.collect(), resonances }
}

fn random(rms: f64) -> RandomAnswer {
    let density =
        frequencies().into_iter().map(|f| rms * rms / (1.0 + f.powi(4)) / (0.5 + (f - 13.0).powi(2)));
    RandomAnswer { rms, crossing_rate: 9.87, dominant_frequency: Some(12.9), density: density.collect() }
}

pub fn outcome(right: f64) -> ResponseOutcome {
    let station = |name: &str, y| StationResponse {
        name: name.to_owned(),
        y,
        at_rest: -1.2e8,
        transfer: transfer(2e9),
    };
    ResponseOutcome {
        input: Input::Left,
        load_at_rest: Sides { left: 45e3, right: 44e3 },
        frequencies: frequencies(),
        camber: Sides { left: transfer(0.3), right: transfer(0.3 * right) },
        load: Sides { left: transfer(1e6), right: transfer(1e6 * right) },
        stress: vec![station("left-seat", 0.48), station("left-tube-end", 0.8)],
        modes: Vec::new(),
        random: Some(RandomOutcome {
            name: "class C road".to_owned(),
            speed: 25.0,
            tire_radius: 0.49,
            frequencies: frequencies(),
            camber: Sides { left: random(2e-3), right: random(2e-3 * right) },
            load: Sides { left: random(5e3), right: random(5e3 * right) },
            stress: vec![random(1e7), random(8e6)],
        }),
        warnings: vec![Warning { text: "a tire would leave the road".to_owned(), advice: "ride".to_owned() }],
    }
}

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value.as_object().unwrap().keys().map(String::as_str).collect();
    keys.sort_unstable();
    keys
}

#[test]
fn table_names_resonances_and_root_mean_squares() {
    let text = table::response(&outcome(0.5), &card(UnitSystem::Si)).text();
    for part in [
        "where the road rises under the left wheel only",
        "vertical bow",
        "deg/mm",
        "kN/mm",
        "MPa/mm",
        "Over class C road at 90 km/h",
        "0.115 deg",
        "Dynamic load coefficient (rms over load at rest): left 0.111, right 0.057.",
        "1.6 a turn, 1938.0 mm apart",
        "Warning: a tire would leave the road; ride.",
    ] {
        assert!(text.contains(part), "{part} is missing\n{text}");
    }
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let text = table::response(&outcome(0.5), &card(system)).text();
        assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    }
}

#[test]
fn wheels_that_answer_alike_share_a_row() {
    let text = table::response(&outcome(1.0), &card(UnitSystem::Si)).text();
    assert!(text.contains("each wheel") && !text.contains("right wheel"), "{text}");
}

#[test]
fn document_and_schema_have_the_same_fields() {
    let text = response_document(&outcome(0.5), &card(UnitSystem::Us));
    let other = response_document(&outcome(0.5), &card(UnitSystem::Si));
    let mut other: Value = serde_json::from_str(&other).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    other["answer"] = document["answer"].clone();
    assert_eq!(document, other);
    let schema: Value = serde_json::from_str(&response_schema()).unwrap();
    assert_eq!(keys(&schema["properties"]), keys(&document));
    assert_eq!(document["schema"], "axlebow/response/2");
    assert_eq!(document["load_n_per_m"]["right"]["resonances"][0]["gain"], 0.5e6 * 3.6);
    assert_eq!(document["random"]["camber"]["left"]["rms"], 2e-3);
    assert_eq!(document["camber_rad_per_m"]["left"]["real"].as_array().unwrap().len(), 300);
}

#[test]
fn columns_have_a_line_for_each_frequency() {
    let text = csv::response(&outcome(0.5));
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(lines.len(), 1 + 300 + 1);
    assert!(lines[0].starts_with("frequency_hz,left_camber_change_rad_per_m_real,"));
    assert!(lines[0].ends_with("left_tube_end_stress_pa_per_m_imaginary"));
    let cells: Vec<f64> = lines[78].split(',').map(|cell| cell.parse().unwrap()).collect();
    assert_eq!(cells.len(), 13);
    assert_eq!([cells[0], cells[5]], [frequencies()[77], outcome(0.5).load.left.values[77][0]]);
}

#[test]
fn response_figures_are_drawn() {
    let plain = ResponseOutcome { random: None, ..outcome(1.0) };
    for (name, outcome, system) in [
        ("response", outcome(0.5), UnitSystem::Si),
        ("response-us", outcome(1.0), UnitSystem::Us),
        ("response-plain", plain, UnitSystem::Si),
    ] {
        let svg = response_figure(&outcome, &card(system)).unwrap();
        assert!(svg.text().contains("wheel hop (13.1)") && svg.text().contains("Frequency, Hz"));
        keep(name, &svg);
    }
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let mut odd = outcome(1.0);
    odd.load.left.values[3] = [f64::NAN, 0.0];
    let refused = response_figure(&odd, &card(UnitSystem::Si));
    assert!(matches!(refused, Err(ReportError::NotDrawable { .. })));
    odd.frequencies.clear();
    assert!(matches!(response_figure(&odd, &card(UnitSystem::Si)), Err(ReportError::Empty { .. })));
}
