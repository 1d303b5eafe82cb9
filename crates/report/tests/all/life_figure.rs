//! The picture of a life.

use axlebow_axle::{BearingLife, DamageShares, DetailLife, LifeOutcome, NotMade};
use axlebow_report::plot::life_figure;
use axlebow_strength::{DETAILS, Reliability};
use axlebow_units::UnitSystem;

use crate::figures::keep;
use crate::made_up::card;

fn detail(name: &str, years: [f64; 3]) -> DetailLife {
    DetailLife {
        name: name.to_owned(),
        y: 0.4,
        detail: &DETAILS[0],
        geometry: String::new(),
        greatest_range: 100e6,
        years,
        shares: DamageShares::default(),
        spectral_ratio: None,
    }
}

fn life(details: Vec<DetailLife>) -> LifeOutcome {
    let text = |own: &str| own.to_owned();
    LifeOutcome {
        duty: text("line haul"),
        distance: 160e6,
        scatter: 0.2,
        mean_stress: axlebow_strength::MeanStress::Ignored,
        details,
        bearings: vec![BearingLife {
            place: text("left bearing"),
            y: 1.0,
            mean_load: 1e4,
            distance: 1e9,
            years: 20.0,
        }],
        reliability: Reliability::Ninety,
        not_made: vec![NotMade {
            place: text("seat"),
            what: text("hot spot"),
            reason: text("none"),
            advice: text("ask"),
        }],
        warnings: Vec::new(),
    }
}

/// Discs, bands and rings, by their left ends or centers.
fn places(svg: &str, element: &str, attribute: &str) -> Vec<f64> {
    let value = |own: &str| -> f64 {
        own.split_once(&format!(r#"{attribute}=""#)).unwrap().1.split('"').next().unwrap().parse().unwrap()
    };
    svg.split(element).skip(1).map(value).collect()
}

/// The axis runs from 0.5 to 200 years over 480 units from 450 on: equal ratios are equally long.
#[test]
fn lives_stand_on_a_logarithmic_axis_and_the_first_to_crack_is_named() {
    let details = vec![
        detail("weld at the seat", [0.5, 1.0, 5.0]),
        detail("spindle fillet", [20.0, 50.0, 180.0]),
        detail("plain tube", [f64::INFINITY; 3]),
    ];
    let svg = life_figure(&life(details), &card(UnitSystem::Si)).unwrap();
    keep("life", &svg);
    let at = |years: f64| 450.0 + 480.0 * (years / 0.5).ln() / 400.0_f64.ln();
    let close = |found: &[f64], years: &[f64]| {
        assert_eq!(found.len(), years.len(), "{found:?}");
        found
            .iter()
            .zip(years)
            .for_each(|(own, years)| assert!((own - at(*years)).abs() < 0.006, "{own}, {years}"));
    };
    close(&places(svg.text(), "<circle", "cx"), &[1.0, 50.0, 20.0]);
    let bands: Vec<&str> =
        svg.text().split("<rect").filter(|own| own.contains("fill-opacity=\"0.28\"")).collect();
    assert_eq!(bands.len(), 2);
    close(
        &bands.iter().map(|own| places(&format!("<rect{own}"), "<rect", " x")[0]).collect::<Vec<_>>(),
        &[0.5, 20.0],
    );
    let width = places(&format!("<rect{}", bands[0]), "<rect", "width")[0];
    assert!((width - (at(5.0) - at(0.5))).abs() < 0.006, "{width}");
    for words in [
        "First to crack is the weld at the seat: half of such details after 1.0 years",
        "0.5 to 5.0",
        "&gt; 1000",
        "Not made",
    ] {
        assert!(svg.text().contains(words), "{words} is missing");
    }
}

#[test]
fn a_life_without_a_crack_says_so_and_no_number_is_refused() {
    let own = card(UnitSystem::Si);
    let svg = life_figure(&life(vec![detail("tube", [f64::INFINITY; 3])]), &own).unwrap();
    assert!(svg.text().contains("No detail is expected to crack"));
    assert!(life_figure(&life(vec![detail("tube", [f64::NAN; 3])]), &own).is_err());
}
