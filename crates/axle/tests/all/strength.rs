//! Strength checks of a whole axle.

use crate::example::stiffening::tent;
use crate::example::{self, axle, bar, steel, tube};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, Body, CheckedPart, Fixing, Orientation, PlacedCheck, SeatStress, Side, Spindle, SpindleStep,
    Stiffener, StiffenerEnd, StiffenerWeld, StrengthOptions, StrengthRules, WeldPattern, WeldRemedy, flex,
    standard_cases, strength, weld_bands,
};
use axlebow_sections::Shape;
use axlebow_sections::shape::{Angle, Flat};
use axlebow_strength::{Check, Kind, MeanStress, Reliability, Verdict};

fn with_yield(strength: f64) -> Axle {
    let material = steel().with_yield(strength).unwrap();
    let steps = vec![
        SpindleStep { length: 0.09, profile: bar(0.09), fillet: None },
        SpindleStep { length: 0.12, profile: bar(0.07), fillet: None },
    ];
    let spindle = Spindle { material: material.clone(), steps };
    Axle { body: Body::trailer_tube(tube(0.127, 0.0127), 1.6, material, &spindle).unwrap(), ..axle() }
}

const ASK: StrengthOptions = StrengthOptions {
    safety_factor: 1.5,
    rules: StrengthRules::Aisc,
    electrode_strength: 482.633e6,
    haz_strength_factor: None,
    bearing_distance: None,
    bearing_reliability: Reliability::Ninety,
    mean_stress: MeanStress::Ignored,
    seat_stress: SeatStress::Nominal,
};

#[test]
fn the_fiber_stress_checked_is_that_of_flex_and_its_limit_is_yield_over_the_factor() {
    let axle = with_yield(350e6);
    let cases = standard_cases(&axle);
    let (checked, flexed) = (strength(&axle, &cases, ASK).unwrap(), flex(&axle, &cases).unwrap());
    for (case, own) in checked.cases.iter().zip(&flexed.cases) {
        let fiber = |name: &str| {
            let of = |placed: &&axlebow_axle::PlacedCheck| {
                placed.place == name && placed.check.what == "fiber stress"
            };
            case.checks.iter().find(of).unwrap().check.clone()
        };
        for name in ["left-seat", "center", "right-tube-end"] {
            let station = own.stations.iter().find(|station| station.name == name).unwrap();
            assert_relative_eq!(fiber(name).value, station.stress.abs(), max_relative = 1e-9);
            assert_relative_eq!(fiber(name).limit, 350e6 / 1.5, max_relative = 1e-12);
        }
    }
    assert!(checked.walls.iter().any(|wall| wall.check.value == 10.0));
}

/// Under braking the moments up and fore-aft, both shear forces and the torque act together; each point of the edge of a
/// tube has its own share of them: s = (M_z x - M_x z)/I, tau = T R/J + (V_x cos a - V_z sin a) 2 (R³ - r³)/(3 · 2 t I).
#[test]
fn equivalent_stress_is_that_of_the_worst_point_and_not_of_several() {
    let axle = with_yield(350e6);
    let braking: Vec<_> = standard_cases(&axle).into_iter().filter(|case| case.name == "braking").collect();
    let checked = strength(&axle, &braking, ASK).unwrap();
    let own = flex(&axle, &braking).unwrap();
    let station = own.cases[0].stations.iter().find(|station| station.name == "left-seat").unwrap();
    let value = |what: &str| {
        let mut all = checked.cases[0].checks.iter();
        all.find(|placed| placed.place == "left-seat" && placed.check.what == what).unwrap().check.value
    };
    let (outer, inner) = (0.0635_f64, 0.0508_f64);
    let second = 0.25 * std::f64::consts::PI * (outer.powi(4) - inner.powi(4));
    let first = 2.0 / 3.0 * (outer.powi(3) - inner.powi(3));
    let force = station.resultants;
    let at = |number: u32| {
        let (sine, cosine) = (f64::from(number) * std::f64::consts::TAU / 1e5).sin_cos();
        let normal = outer * (force.moment_z * sine - force.moment_x * cosine) / second;
        let shear = force.torsion * outer / (2.0 * second)
            + (force.shear_x * cosine - force.shear_z * sine) * first / (2.0 * (outer - inner) * second);
        normal.hypot(3.0_f64.sqrt() * shear)
    };
    let expected = (0..100_000).map(at).fold(0.0, f64::max);
    assert_relative_eq!(value("equivalent stress"), expected, max_relative = 1e-6);
    let added = value("fiber stress").hypot(3.0_f64.sqrt() * value("shear stress"));
    assert!(expected < 0.97 * added, "{expected} {added}");
}

/// Fiber and equivalent stress of the same section grow with the load, so that the factor at which the axle just
/// holds is that of the check that governs.
#[test]
fn the_governing_check_says_how_far_the_safety_factor_may_rise() {
    let axle = with_yield(350e6);
    let cases = &standard_cases(&axle)[..1];
    let used = strength(&axle, cases, ASK).unwrap().greatest_use().unwrap();
    let at = |factor: f64| {
        strength(&axle, cases, StrengthOptions { safety_factor: factor, ..ASK }).unwrap().holds()
    };
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
    assert_relative_eq!(limit("left-seat"), 0.8 * 520e6 / 1.5, max_relative = 1e-12);
    assert_relative_eq!(limit("center"), 520e6 / 1.5, max_relative = 1e-12);
    assert_eq!(checked.assumptions.len(), 2);
}

#[test]
fn without_a_yield_strength_nothing_is_checked_and_that_is_said() {
    let axle = axle();
    let checked = strength(&axle, &standard_cases(&axle)[..1], ASK).unwrap();
    assert!(checked.cases[0].checks.is_empty() && checked.walls.is_empty());
    let said: Vec<_> = checked.warnings.iter().map(|warning| warning.text.as_str()).collect();
    assert!(said.iter().any(|text| text.contains("the tube is not given")), "{said:?}");
    let refused = strength(&axle, &standard_cases(&axle)[..1], StrengthOptions { safety_factor: 0.5, ..ASK });
    assert!(refused.unwrap_err().to_string().contains("1 to 20"));
}

/// Throat stress is the peak force per length over the throat, leg/√2.
#[test]
fn the_weld_of_a_stiffener_is_checked_where_its_force_peaks() {
    let mut axle = with_yield(350e6);
    axle.stiffeners = vec![tent()];
    let axle = axle.checked().unwrap();
    let cases = &standard_cases(&axle)[..1];
    let peak = flex(&axle, cases).unwrap().cases[0].stiffening.as_ref().unwrap().stiffeners[0].peak;
    let leg = axle.stiffeners[0].weld.leg;
    let checked = strength(&axle, cases, ASK).unwrap();
    let weld =
        checked.cases[0].checks.iter().find(|placed| placed.check.what == "weld throat stress").unwrap();
    assert_relative_eq!(weld.check.value, peak.magnitude() / (leg / 2.0_f64.sqrt()), max_relative = 1e-12);
    assert_eq!(weld.y, Some(peak.y));
}

/// Checks of the weld of the only stiffener in the rated case, in the axle of 350 MPa.
fn weld_checks(stiffener: Stiffener, ask: StrengthOptions) -> Vec<Check> {
    let mut axle = with_yield(350e6);
    axle.stiffeners = vec![stiffener];
    let axle = axle.checked().unwrap();
    let checked = strength(&axle, &standard_cases(&axle)[..1], ask).unwrap();
    let own = checked.cases[0].checks.iter().filter(|placed| placed.place.contains("foot"));
    own.map(|placed| placed.check.clone()).collect()
}

fn called<'a>(checks: &'a [Check], what: &str) -> &'a Check {
    checks.iter().find(|check| check.what == what).unwrap_or_else(|| panic!("{what} in {checks:?}"))
}

const EN: StrengthOptions = StrengthOptions { rules: StrengthRules::En, ..ASK };

/// An angle whose legs are thinner than the wall of 12.7 mm, of a steel that is known.
fn thin_tent(thickness: f64) -> Stiffener {
    let shape =
        Shape::Angle(Angle { height: 0.0762, width: 0.0762, thickness, root_radius: 0.0, toe_radius: 0.0 });
    let material = steel().with_yield(250e6).unwrap();
    let stiffener = example::stiffening::stiffener("angle", &shape, Orientation::ToesDown);
    Stiffener { material, ..stiffener }
}

/// ANSI/AISC 360-22, Table J2.4 and D4: 1/8 in to 1/4 in of thickness, spacing 24 thicknesses.
#[test]
fn the_thinner_part_joined_may_be_the_stiffener() {
    let mut angle = thin_tent(0.005);
    angle.weld.leg = 0.005;
    angle.weld.pattern = WeldPattern::Stitched { length: 0.06, pitch: 0.15 };
    let checks = weld_checks(angle.clone(), ASK);
    assert_relative_eq!(called(&checks, "weld leg").limit, 0.125 * 0.0254);
    assert_relative_eq!(called(&checks, "stitch spacing").limit, 24.0 * 0.005);
    assert_relative_eq!(called(&checks, "greatest weld leg").limit, 0.005);
    let gap = weld_checks(angle, EN).into_iter().find(|check| check.what == "gap between stitches").unwrap();
    assert_relative_eq!(
        gap.limit,
        (12.0_f64 * 0.005).min(0.25 * 0.0762 * 2.0_f64.sqrt()),
        max_relative = 1e-9
    );
    assert_eq!(called(&weld_checks(tent(), ASK), "greatest weld leg").limit, 0.0095);
}

/// The same force per length in both, each over its own thickness.
#[test]
fn base_metal_shears_in_wall_and_stiffener() {
    for (ask, limits) in [(ASK, [0.6 * 350e6, 0.6 * 250e6]), (EN, [350e6, 250e6].map(|f| f / 3_f64.sqrt()))] {
        let checks = weld_checks(thin_tent(0.005), ask);
        let [wall, own] =
            ["wall", "stiffener"].map(|part| called(&checks, &format!("{part} shear, yielding")));
        assert_relative_eq!(own.value / wall.value, 0.0127 / 0.005, max_relative = 1e-12);
        assert_relative_eq!(wall.limit, limits[0] / 1.5, max_relative = 1e-12);
        assert_relative_eq!(own.limit, limits[1] / 1.5, max_relative = 1e-12);
    }
}

/// ANSI/AISC 360-22, J2.2b: 1/16 in less than an edge of 1/4 in or more; a flat on its edge offers its faces.
#[test]
fn a_fillet_along_an_edge_leaves_some_of_it() {
    let along = |checks: &[Check]| {
        checks.iter().find(|check| check.what == "weld leg along the edge").map(|check| check.limit)
    };
    assert_relative_eq!(along(&weld_checks(tent(), ASK)).unwrap(), 0.0095 - 0.0625 * 0.0254);
    assert_eq!(along(&weld_checks(flat(Orientation::OnEdge), ASK)), None);
    assert!(along(&weld_checks(flat(Orientation::Lying), ASK)).is_some());
}

fn flat(orientation: Orientation) -> Stiffener {
    let shape = Shape::Flat(Flat { width: 0.03, thickness: 0.01 });
    example::stiffening::stiffener("flat", &shape, orientation)
}

/// 2 1/2 in on 1/4 in.
#[test]
fn a_leg_far_beyond_the_thickness_of_its_part_fails() {
    let mut angle = thin_tent(0.00635);
    angle.weld.leg = 0.0635;
    for ask in [ASK, EN] {
        assert_eq!(called(&weld_checks(angle.clone(), ask), "greatest weld leg").verdict(), Verdict::Fails);
    }
}

/// 0.75 · 0.60 FEXX over the safety factor; by EN the simplified method, f_u/(√3 · 0.9 · 1.25) over it.
#[test]
fn a_load_across_earns_nothing_but_where_the_plate_is_welded_on_both_sides() {
    let usual = 0.75 * 0.60 * ASK.electrode_strength / 1.5;
    let throat = |stiffener: Stiffener| called(&weld_checks(stiffener, ASK), "weld throat stress").limit;
    assert_relative_eq!(throat(tent()), usual, max_relative = 1e-12);
    let mut standing = flat(Orientation::OnEdge);
    assert!(throat(standing.clone()) > usual * 1.0001);
    called(&weld_checks(standing.clone(), EN), "weld equivalent stress");
    standing.weld.both_sides = false;
    assert_relative_eq!(throat(standing), usual, max_relative = 1e-12);
    let simplified = called(&weld_checks(tent(), EN), "weld throat stress").limit;
    assert_relative_eq!(simplified, 350e6 / (3_f64.sqrt() * 0.9 * 1.25 * 1.5), max_relative = 1e-12);
}

/// Every strength is divided by the safety factor, sizes know none.
#[test]
fn twice_the_safety_factor_uses_twice_of_every_strength() {
    for ask in [ASK, EN] {
        let twice = StrengthOptions { safety_factor: 3.0, ..ask };
        for (once, twice) in
            weld_checks(thin_tent(0.008), ask).iter().zip(weld_checks(thin_tent(0.008), twice))
        {
            let ratio = if once.kind == Kind::Stress { 2.0 } else { 1.0 };
            assert_relative_eq!(twice.utilization(), ratio * once.utilization(), max_relative = 1e-12);
        }
    }
}

/// AWS D1.1: a root opening of more than 1/16 in is taken off the leg. The flat's corners lie 1.9 mm off the tube.
#[test]
fn a_gap_under_a_foot_is_taken_off_the_leg() {
    let gap = 0.0635_f64.hypot(0.0155) - 0.0635;
    assert!(gap > 0.0625 * 0.0254, "{gap}");
    let shape = Shape::Flat(Flat { width: 0.031, thickness: 0.01 });
    let lying = example::stiffening::stiffener("flat", &shape, Orientation::Lying);
    let least = weld_checks(lying, ASK).into_iter().find(|check| check.what == "weld leg").unwrap();
    assert_relative_eq!(least.value, 0.006 - gap, max_relative = 1e-9);
}

/// The force per length rises with the stiffness of the weld; what is said to pass does.
#[test]
fn a_weld_is_judged_over_the_band_of_its_stiffness_and_its_remedies_pass() {
    let mut axle = with_yield(350e6);
    let end = StiffenerEnd::Tapered { length: 0.06 };
    axle.stiffeners = vec![Stiffener { weld: StiffenerWeld { leg: 0.007, ..tent().weld }, end, ..tent() }];
    let axle = axle.checked().unwrap();
    let cases = &standard_cases(&axle)[..1];
    let used = |ask: StrengthOptions| weld_bands(&axle, cases, ask).unwrap().remove(0);
    let band = used(StrengthOptions { safety_factor: 1.0, ..ASK });
    assert!(band.soft.stiffness < band.modeled.stiffness && band.modeled.stiffness < band.stiff.stiffness);
    assert!(band.soft.used < band.modeled.used && band.modeled.used < band.stiff.used);
    assert_eq!(band.remedies, []);
    let strict = StrengthOptions { safety_factor: 1.02 / band.modeled.used, ..ASK };
    let band = used(strict);
    assert_eq!(band.modeled.verdict, Verdict::Fails);
    assert!(!band.remedies.is_empty());
    for remedy in band.remedies {
        let mut changed = axle.clone();
        let own = &mut changed.stiffeners[0];
        match remedy {
            WeldRemedy::RunOut(length) => own.end = StiffenerEnd::Tapered { length },
            WeldRemedy::Leg(leg) => own.weld.leg = leg,
            WeldRemedy::Length(length) => (own.from, own.to) = (-0.5 * length, 0.5 * length),
        }
        let checked = strength(&changed, cases, strict).unwrap();
        let fails =
            |placed: &&PlacedCheck| placed.check.verdict() == Verdict::Fails && placed.place.contains("foot");
        let failed: Vec<_> = checked.cases[0].checks.iter().filter(fails).collect();
        assert!(failed.is_empty(), "{remedy:?}: {failed:?}");
    }
}

/// The tube of 127 mm on a spindle of 90 mm that steps to 70 mm, with fillets of 12 and 5 mm.
fn filleted() -> Axle {
    let material = steel().with_yield(520e6).unwrap();
    let steps = vec![
        SpindleStep { length: 0.09, profile: bar(0.09), fillet: Some(0.012) },
        SpindleStep { length: 0.12, profile: bar(0.07), fillet: Some(0.005) },
    ];
    let spindle = Spindle { material: material.clone(), steps };
    Axle { body: Body::trailer_tube(tube(0.127, 0.0127), 1.6, material, &spindle).unwrap(), ..axle() }
}

/// By hand: the bar's stress 32 M/(π d³) at its root, with the moment of the static run, times K_t of W. D. Pilkey & D. F.
/// Pilkey worked out apart: D/d = 127/90, r = 12 mm: h = 18.5 mm, h/r = 1.541 667, 2h/D = 0.291 339.
#[test]
fn the_stress_in_a_fillet_is_that_of_its_bar_times_the_concentration() {
    let axle = filleted();
    let cases: Vec<_> = standard_cases(&axle).into_iter().take(1).collect();
    let checked = strength(&axle, &cases, ASK).unwrap();
    let flexed = flex(&axle, &cases).unwrap();
    let place = |name: &str| {
        let fillet = |own: &&PlacedCheck| own.part == CheckedPart::Fillet && own.place == name;
        checked.cases[0].checks.iter().find(fillet).unwrap().check.clone()
    };
    let root = flexed.cases[0].stations.iter().find(|own| own.name == "left-tube-end").unwrap();
    let moment = root.axle_resultants.moment_x.abs();
    let (h_r, t) = (18.5_f64 / 12.0, 37.0_f64 / 127.0);
    let factor = 0.947 + 1.206 * h_r.sqrt() - 0.131 * h_r
        + (0.022 - 3.405 * h_r.sqrt() + 0.915 * h_r) * t
        + (0.869 + 1.777 * h_r.sqrt() - 0.555 * h_r) * t * t
        + (-0.810 + 0.422 * h_r.sqrt() - 0.260 * h_r) * t * t * t;
    let bending = 32.0 * moment / (std::f64::consts::PI * 0.09_f64.powi(3));
    assert_relative_eq!(place("left-tube-end").value, factor * bending, max_relative = 1e-3);
    assert_relative_eq!(place("left-tube-end").limit, 520e6 / 1.5, max_relative = 1e-12);
    assert!(place("left-section-change-1").value > 0.0);
    assert!(checked.not_made.iter().all(|own| !own.what.contains("fillet")));
}

#[test]
fn a_fillet_without_a_radius_is_not_made_and_no_pass() {
    let axle = with_yield(520e6);
    let checked = strength(&axle, &standard_cases(&axle)[..1], ASK).unwrap();
    assert!(checked.checks().all(|own| own.part != CheckedPart::Fillet));
    let missing: Vec<_> = checked.not_made.iter().filter(|own| own.what.contains("fillet")).collect();
    assert_eq!(missing.len(), 2);
    assert!(missing[0].reason.contains("is not given") && missing[0].advice.contains("fillet"));
}

fn rated(axle: Axle, [inner, outer]: [Option<f64>; 2]) -> Axle {
    let end = |side: Side| axlebow_axle::WheelEnd {
        inner_rating: inner,
        outer_rating: outer,
        ..*axle.wheel_ends.of(side)
    };
    Axle { wheel_ends: axlebow_axle::Sides::each(end), ..axle.clone() }
}

/// By hand: the lever rule on a span of 110 mm, the thrust that the heavier bearing induces on the lighter one, ISO 281.
#[test]
fn the_life_of_a_bearing_is_that_of_its_lever_its_thrust_and_iso_281() {
    let axle = rated(with_yield(520e6), [Some(240e3), Some(185e3)]);
    let ask = StrengthOptions { bearing_distance: Some(1e9), ..ASK };
    let cases: Vec<_> = standard_cases(&axle).into_iter().take(1).collect();
    let checked = strength(&axle, &cases, ask).unwrap();
    let flexed = flex(&axle, &cases).unwrap();
    let wheel = &flexed.cases[0].wheels.left;
    // Duals share by their camber; against the road's force weigh the wheel at the mounting face and the hub midway between
    // its bearings.
    let moment: f64 = wheel.contacts.iter().map(|own| own.vertical_load * (own.y - 0.84)).sum();
    let (weight, weight_moment) = ((150.0 + 75.0) * 9.806_65, (150.0 * 0.08 + 75.0 * 0.055) * 9.806_65);
    let outer = (moment - weight_moment) / 0.11;
    let inner = wheel.vertical_load - weight - outer;
    let tan = 15_f64.to_radians().tan();
    let thrust = 1.25 * tan * inner.max(outer);
    let radius = 0.49 * std::f64::consts::TAU;
    let life = |rating: f64, radial: f64| {
        let small = thrust <= 1.5 * tan * radial;
        let load = if small { radial } else { 0.4 * radial + 0.4 / tan * thrust };
        1e6 * radius * (rating / load).powf(10.0 / 3.0)
    };
    let value = |name: &str| checked.bearings.iter().find(|own| own.place == name).unwrap().check.value;
    assert_relative_eq!(value("left-inner-bearing"), life(240e3, inner), max_relative = 1e-9);
    assert_relative_eq!(value("left-outer-bearing"), life(185e3, outer), max_relative = 1e-9);
    let strict = StrengthOptions { bearing_reliability: Reliability::NinetyFive, ..ask };
    let strict = strength(&axle, &cases, strict).unwrap();
    assert_relative_eq!(strict.bearings[0].check.value, 0.64 * checked.bearings[0].check.value);
}

#[test]
fn a_bearing_without_rating_or_distance_is_not_made_and_no_pass() {
    let axle = rated(with_yield(520e6), [Some(240e3), None]);
    let cases: Vec<_> = standard_cases(&axle).into_iter().take(1).collect();
    let ask = StrengthOptions { bearing_distance: Some(1e9), ..ASK };
    let checked = strength(&axle, &cases, ask).unwrap();
    assert_eq!(checked.bearings.len(), 2);
    let missing: Vec<_> = checked.not_made.iter().filter(|own| own.what == "bearing life").collect();
    assert!(missing.len() == 2 && missing.iter().all(|own| own.place.ends_with("outer-bearing")));
    let no_distance = strength(&axle, &cases, ASK).unwrap();
    assert!(no_distance.bearings.is_empty());
    assert!(no_distance.not_made.iter().any(|own| own.advice.contains("bearing_distance")));
}
