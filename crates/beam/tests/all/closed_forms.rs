//! Handbook beams. Values: Roark's Formulas for Stress and Strain, 9th ed., Table 8.1 and sec. 8.10, formulas from memory,
//! numbers recomputed (in, lbf, psi).

use axlebow_beam::{Line, Load, SupportKind, closed_forms, solve};
use axlebow_beam::{PeakKind, Theory};

use crate::{BENDING, SHEAR, assert_near, line};

const FIXED: SupportKind = SupportKind::FIXED;
const PINNED: SupportKind = SupportKind::PINNED;
const UNIFORM: Load = Load::Distributed { from: 0.0, to: 40.0, start: 100.0, end: 100.0 };

const fn force(at: f64) -> Load {
    Load::Force { at, force: 10_000.0 }
}

/// Every handbook case with the magnitudes of its printed values, in the order of the formula.
fn cases() -> Vec<(Line, Vec<f64>)> {
    let ends = |a, b| vec![(0.0, a), (40.0, b)];
    let all = vec![
        (vec![(0.0, FIXED)], vec![force(40.0)], 40.0, vec![0.406_129_43, 0.015_229_853, 400_000.0]),
        (vec![(40.0, FIXED)], vec![force(0.0)], 40.0, vec![0.406_129_43, 0.015_229_853, 400_000.0]),
        (vec![(0.0, FIXED)], vec![UNIFORM], 40.0, vec![0.060_919_41, 2.030_647_1e-3, 80_000.0]),
        (
            vec![(0.0, FIXED)],
            vec![Load::Moment { at: 40.0, moment: 1e5 }],
            40.0,
            vec![0.152_298_53, 7.614_926_7e-3, 1e5],
        ),
        (
            vec![(40.0, FIXED)],
            vec![Load::Moment { at: 0.0, moment: 1e5 }],
            40.0,
            vec![0.152_298_53, 7.614_926_7e-3, 1e5],
        ),
        (ends(PINNED, PINNED), vec![force(20.0)], 40.0, vec![0.025_383_09, 1.903_731_7e-3, 100_000.0]),
        (ends(PINNED, PINNED), vec![force(15.0)], 40.0, vec![0.022_309_36, 1.933_477_5e-3, 93_750.0]),
        (ends(PINNED, PINNED), vec![UNIFORM], 40.0, vec![0.006_345_77, 5.076_617_8e-4, 20_000.0]),
        (ends(FIXED, FIXED), vec![force(20.0)], 40.0, vec![0.006_345_77, 50_000.0]),
        (ends(FIXED, FIXED), vec![UNIFORM], 40.0, vec![0.001_269_15, 13_333.333_3]),
        (
            vec![(18.0, PINNED), (56.0, PINNED)],
            vec![force(0.0), force(74.0)],
            74.0,
            vec![0.154_202_27, 9.594_807_7e-3, 6.510_762_3e-3, 0.061_852_24, 180_000.0],
        ),
    ];
    let made =
        all.into_iter().map(|(supports, loads, length, printed)| (line(length, &supports, &loads), printed));
    made.collect()
}

#[test]
fn printed_values_are_met_to_their_last_digit() {
    for (beam, printed) in cases() {
        let closed = closed_forms(&beam, Theory::EulerBernoulli).expect("a handbook case");
        assert_eq!(closed.values.len(), printed.len(), "{}", closed.title);
        for (value, printed) in closed.values.iter().zip(&printed) {
            let last_digit = match value.kind {
                PeakKind::Deflection => 1e-8,
                PeakKind::Slope => 1e-9,
                _ => 1e-4,
            };
            let error = value.value.abs() - printed;
            assert!(error.abs() <= 0.51 * last_digit, "{}: {} for {printed}", closed.title, value.value);
        }
    }
}

/// Formula and elements, which know nothing of each other, in both theories, with signs.
#[test]
fn elements_meet_the_formulas() {
    let propped = [
        (vec![(0.0, FIXED), (40.0, PINNED)], vec![force(20.0)]),
        (vec![(0.0, PINNED), (40.0, FIXED)], vec![UNIFORM]),
    ];
    let propped = propped.map(|(supports, loads)| line(40.0, &supports, &loads));
    for beam in cases().into_iter().map(|(beam, _)| beam).chain(propped) {
        for mesh in [BENDING, SHEAR] {
            let Some(closed) = closed_forms(&beam, mesh.theory) else { continue };
            let solution = solve(&beam, &mesh).unwrap();
            for value in &closed.values {
                let found = value.kind.of(&solution.at(value.at)).unwrap();
                assert_near(found, value.value, 1e-9);
            }
        }
    }
}

#[test]
fn the_largest_deflection_is_found_between_stations() {
    // P a (L² − a²)^1.5/(9 √3 E I L) at √((L² − a²)/3) from the farther support.
    let beam = line(40.0, &[(0.0, PINNED), (40.0, PINNED)], &[force(15.0)]);
    let peaks = axlebow_beam::peaks(&solve(&beam, &BENDING).unwrap());
    let peak = peaks.iter().find(|peak| peak.kind == PeakKind::Deflection).unwrap();
    assert_near(40.0 - peak.at, ((1600.0_f64 - 225.0) / 3.0).sqrt(), 1e-9);
    assert!((peak.value - 0.023_350_06).abs() < 0.5e-8);
    let moment = peaks.iter().find(|peak| peak.kind == PeakKind::Moment).unwrap();
    assert_near(moment.value, -93_750.0, 1e-12);
    let stress = peaks.iter().find(|peak| peak.kind == PeakKind::Stress).unwrap();
    assert_near(stress.value.abs(), 93_750.0 / 7.245_298_1, 1e-8);
}

#[test]
fn the_largest_moment_is_found_between_stations() {
    // Triangular load from 0 to w on two supports: M = w L²/(9 √3) at L/√3. Gere & Goodno, Mechanics of Materials, 8th
    // ed. 2013, ch. 4 (from memory, checked by differentiation).
    let load = Load::Distributed { from: 0.0, to: 40.0, start: 0.0, end: -100.0 };
    let beam = line(40.0, &[(0.0, PINNED), (40.0, PINNED)], &[load]);
    let peaks = axlebow_beam::peaks(&solve(&beam, &BENDING).unwrap());
    let moment = peaks.iter().find(|peak| peak.kind == PeakKind::Moment).unwrap();
    assert_near(moment.value, 100.0 * 1600.0 / (9.0 * 3.0_f64.sqrt()), 1e-12);
    assert_near(moment.at, 40.0 / 3.0_f64.sqrt(), 1e-9);
}

#[test]
fn reactions_shear_and_moment_agree_with_statics() {
    let beam = line(40.0, &[(0.0, PINNED), (40.0, PINNED)], &[Load::Force { at: 15.0, force: -10_000.0 }]);
    let solution = solve(&beam, &SHEAR).unwrap();
    let [left, right] = solution.reactions[..] else { panic!("two supports") };
    assert_near(left.force, 6250.0, 1e-12);
    assert_near(right.force, 3750.0, 1e-12);
    assert_near(solution.at(5.0).shear, 6250.0, 1e-12);
    assert_near(solution.at(30.0).shear, -3750.0, 1e-12);
    assert_near(solution.at(15.0).moment, 93_750.0, 1e-12);
}

#[test]
fn one_cubic_element_with_shear_is_exact_for_forces_on_nodes() {
    let beam = line(40.0, &[(0.0, FIXED), (40.0, PINNED)], &[force(15.0)]);
    let of = |element| solve(&beam, &axlebow_beam::Mesh { element, ..SHEAR }).unwrap();
    let (hermite, flexibility) = (of(axlebow_beam::Element::Hermite), of(axlebow_beam::Element::Flexibility));
    for at in [7.0, 15.0, 31.0] {
        assert_near(hermite.at(at).deflection, flexibility.at(at).deflection, 1e-10);
        assert_near(hermite.at(at).rise, flexibility.at(at).rise, 1e-9);
    }
}

#[test]
fn a_place_of_a_force_has_two_sides() {
    let beam = line(40.0, &[(0.0, PINNED), (40.0, PINNED)], &[Load::Force { at: 15.0, force: -10_000.0 }]);
    let solution = solve(&beam, &BENDING).unwrap();
    assert_near(solution.before(15.0).shear, 6250.0, 1e-10);
    assert_near(solution.at(15.0).shear, -3750.0, 1e-10);
}

#[test]
fn a_triangular_load_matches_its_handbook_formula() {
    // Cantilever, load from w at the clamp to 0 at the tip: y = w L⁴/(30 E I), θ = w L³/(24 E I). Gere & Goodno,
    // Mechanics of Materials, 8th ed. 2013, App. G, Table G-1, case 8 (from memory, checked by integration).
    let beam =
        line(40.0, &[(0.0, FIXED)], &[Load::Distributed { from: 0.0, to: 40.0, start: 100.0, end: 0.0 }]);
    let ei = 29e6 * crate::tube().second_moment;
    let tip = solve(&beam, &BENDING).unwrap().at(40.0);
    assert_near(tip.deflection, 100.0 * 40.0_f64.powi(4) / (30.0 * ei), 1e-11);
    assert_near(tip.slope, 100.0 * 40.0_f64.powi(3) / (24.0 * ei), 1e-11);
}

#[test]
fn a_temperature_difference_bends_a_cantilever_to_an_arc_and_loads_a_clamped_beam() {
    let thermal = Load::Thermal { from: 0.0, to: 40.0, curvature: 2e-5 };
    let tip = solve(&line(40.0, &[(0.0, FIXED)], &[thermal]), &SHEAR).unwrap().at(40.0);
    assert_near(tip.deflection, 0.5 * 2e-5 * 1600.0, 1e-11);
    assert_near(tip.slope, 2e-5 * 40.0, 1e-11);
    assert!(tip.moment.abs() < 1e-6);
    // Between clamps M = −E I α ΔT/h all along: Roark 9th ed., Table 8.1 case 6 family (from memory).
    for element in
        [axlebow_beam::Element::Flexibility, axlebow_beam::Element::Hermite, axlebow_beam::Element::TwoNode]
    {
        let clamped = line(40.0, &[(0.0, FIXED), (40.0, FIXED)], &[thermal]);
        let solution = solve(&clamped, &axlebow_beam::Mesh { element, ..SHEAR }).unwrap();
        assert_near(solution.at(10.0).moment, -29e6 * crate::tube().second_moment * 2e-5, 1e-11);
    }
}

#[test]
fn settlement_of_a_clamp_makes_its_handbook_moments() {
    // M = 6 E I Δ/L², R = 12 E I Δ/L³: the first column of the stiffness matrix of any text on frames.
    let sunk = SupportKind::Fixed { settlement: -0.1, rotation: 0.0 };
    let beam = line(40.0, &[(0.0, FIXED), (40.0, sunk)], &[]);
    let solution = solve(&beam, &BENDING).unwrap();
    let ei = 29e6 * crate::tube().second_moment;
    assert_near(solution.reactions[1].force, -12.0 * ei * 0.1 / 40.0_f64.powi(3), 1e-10);
    assert_near(solution.at(0.0).moment, -6.0 * ei * 0.1 / 1600.0, 1e-10);
    let turned = SupportKind::Fixed { settlement: 0.0, rotation: 0.01 };
    let beam = line(40.0, &[(0.0, FIXED), (40.0, turned)], &[]);
    let solution = solve(&beam, &BENDING).unwrap();
    assert_near(solution.reactions[1].moment, 4.0 * ei * 0.01 / 40.0, 1e-10);
    assert_near(solution.reactions[0].moment, 2.0 * ei * 0.01 / 40.0, 1e-10);
}

#[test]
fn springs_carry_by_their_stiffness() {
    let spring = SupportKind::Elastic { stiffness: 1e4, turning_stiffness: 0.0, settlement: -0.05 };
    let beam = line(40.0, &[(0.0, PINNED), (40.0, spring)], &[Load::Force { at: 40.0, force: -1000.0 }]);
    let solution = solve(&beam, &BENDING).unwrap();
    assert_near(solution.at(40.0).deflection, -0.15, 1e-10);
    assert_near(solution.reactions[1].force, 1000.0, 1e-9);
    // A pin with a spring against turning under a moment M: it turns by M/c at once with a beam that is free beyond it.
    let pin = SupportKind::Pinned { settlement: 0.0, turning_stiffness: 2e6 };
    let beam = line(40.0, &[(0.0, pin)], &[Load::Moment { at: 0.0, moment: 1e4 }]);
    let solution = solve(&beam, &BENDING).unwrap();
    assert_near(solution.at(40.0).slope, 1e4 / 2e6, 1e-10);
    assert_near(solution.reactions[0].moment, -1e4, 1e-10);
}

#[test]
fn a_slide_holds_the_slope_only() {
    // Half of a beam between two clamps, by symmetry: y = P (2 L)³/(192 E I) with 2 P on the whole.
    let beam =
        line(20.0, &[(0.0, FIXED), (20.0, SupportKind::SLIDING)], &[Load::Force { at: 20.0, force: 5000.0 }]);
    let end = solve(&beam, &BENDING).unwrap().at(20.0);
    assert!((end.deflection - 0.006_345_77).abs() < 0.5e-8 && end.slope.abs() < 1e-15);
}
