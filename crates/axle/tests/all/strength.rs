//! Strength checks of a whole axle.

use crate::example::{self, axle, bar, steel, tube};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, Body, Fixing, Side, Spindle, SpindleStep, StrengthAsk, StrengthRules, flex, standard_cases,
    strength,
};

fn with_yield(strength: f64) -> Axle {
    let material = steel().with_yield(strength).unwrap();
    let steps = vec![
        SpindleStep { length: 0.09, profile: bar(0.09) },
        SpindleStep { length: 0.12, profile: bar(0.07) },
    ];
    let spindle = Spindle { material: material.clone(), steps };
    Axle { body: Body::trailer_tube(tube(0.127, 0.0127), 1.6, material, &spindle).unwrap(), ..axle() }
}

const ASK: StrengthAsk = StrengthAsk {
    safety_factor: 1.5,
    rules: StrengthRules::Aisc,
    electrode_strength: 482.633e6,
    kept_beside_weld: None,
};

#[test]
fn the_fibre_stress_checked_is_that_of_flex_and_its_limit_is_yield_over_the_factor() {
    let axle = with_yield(350e6);
    let cases = standard_cases(&axle);
    let (checked, flexed) = (strength(&axle, &cases, ASK).unwrap(), flex(&axle, &cases).unwrap());
    for (case, own) in checked.cases.iter().zip(&flexed.cases) {
        let fibre = |name: &str| {
            let of = |placed: &&axlebow_axle::PlacedCheck| {
                placed.place == name && placed.check.what == "fibre stress"
            };
            case.checks.iter().find(of).unwrap().check.clone()
        };
        for name in ["left-seat", "centre", "right-tube-end"] {
            let station = own.stations.iter().find(|station| station.name == name).unwrap();
            assert_relative_eq!(fibre(name).value, station.stress.abs(), max_relative = 1e-9);
            assert_relative_eq!(fibre(name).limit, 350e6 / 1.5, max_relative = 1e-12);
        }
    }
    assert!(checked.walls.iter().any(|wall| wall.check.value == 10.0));
}

/// Fibre and equivalent stress of the same section grow with the load, so that the factor at which the axle just
/// holds is that of the check that governs.
#[test]
fn the_governing_check_says_how_far_the_safety_factor_may_rise() {
    let axle = with_yield(350e6);
    let cases = &standard_cases(&axle)[..1];
    let used = strength(&axle, cases, ASK).unwrap().greatest_use().unwrap();
    let at =
        |factor: f64| strength(&axle, cases, StrengthAsk { safety_factor: factor, ..ASK }).unwrap().holds();
    assert!(at(1.5 / used * 0.999) && !at(1.5 / used * 1.001), "{used}");
}

#[test]
fn steel_beside_the_weld_of_a_seat_is_allowed_less_where_it_is_strong() {
    let mut axle = with_yield(520e6);
    for side in Side::BOTH {
        axle.seats.of_mut(side).fixing = Fixing::Welded;
    }
    let checked = strength(&axle, &standard_cases(&axle)[..1], ASK).unwrap();
    let limit =
        |name: &str| checked.cases[0].checks.iter().find(|placed| placed.place == name).unwrap().check.limit;
    assert_relative_eq!(limit("left-seat"), 0.6 * 520e6 / 1.5, max_relative = 1e-12);
    assert_relative_eq!(limit("centre"), 520e6 / 1.5, max_relative = 1e-12);
    assert_eq!(checked.assumptions.len(), 2);
}

#[test]
fn without_a_yield_strength_nothing_is_checked_and_that_is_said() {
    let axle = axle();
    let checked = strength(&axle, &standard_cases(&axle)[..1], ASK).unwrap();
    assert!(checked.cases[0].checks.is_empty() && checked.walls.is_empty());
    let said: Vec<_> = checked.warnings.iter().map(|warning| warning.text.as_str()).collect();
    assert!(said.iter().any(|text| text.contains("the tube is not given")), "{said:?}");
    let refused = strength(&axle, &standard_cases(&axle)[..1], StrengthAsk { safety_factor: 0.5, ..ASK });
    assert!(refused.unwrap_err().to_string().contains("1 to 20"));
}

/// Throat stress is the peak force per length over the throat, leg/√2.
#[test]
fn the_weld_of_a_stiffener_is_checked_where_its_force_peaks() {
    let mut axle = with_yield(350e6);
    axle.stiffeners = vec![example::stiffening::tent()];
    let axle = axle.checked().unwrap();
    let cases = &standard_cases(&axle)[..1];
    let peak = flex(&axle, cases).unwrap().cases[0].stiffening.as_ref().unwrap().stiffeners[0].peak;
    let leg = axle.stiffeners[0].weld.leg;
    let checked = strength(&axle, cases, ASK).unwrap();
    let weld =
        checked.cases[0].checks.iter().find(|placed| placed.check.what == "weld throat stress").unwrap();
    assert_relative_eq!(weld.check.value, peak.magnitude() / (leg / 2.0_f64.sqrt()), max_relative = 1e-12);
    assert_eq!(weld.y, Some(peak.y));
    let en = strength(&axle, cases, StrengthAsk { rules: StrengthRules::En, ..ASK }).unwrap();
    assert!(en.cases[0].checks.iter().any(|placed| placed.check.what == "weld equivalent stress"));
}
