//! Natural frequencies. R. D. Blevins, Formulas for Dynamics, Acoustics and Vibration, Wiley 2016, Table 4.2; S. S. Rao,
//! Mechanical Vibrations, 6th ed. 2017, sec. 8.5; S. Timoshenko, D. H. Young & W. Weaver, Vibration Problems in
//! Engineering, 4th ed. 1974, art. 5.12: equations from memory, numbers recomputed.

use std::f64::consts::TAU;

use axlebow_beam::{
    Elastic, Line, LineParts, Mesh, PointMass, SectionValues, Span, SpanSection, Support, SupportKind,
    Theory, closed_modes, modes,
};
use axlebow_sections::{Profile, RoundTube};

use crate::{BENDING, SHEAR, assert_near};

const FIXED: SupportKind = SupportKind::FIXED;
const PINNED: SupportKind = SupportKind::PINNED;
/// 30 kg/m and 8e-6 m⁴ over 2 m.
const LENGTH: f64 = 2.0;

fn bar(supports: &[(f64, SupportKind)], masses: &[(f64, f64)]) -> Line {
    let section =
        SectionValues { area: Some(4e-3), second_moment: 8e-6, shear_coefficient: 0.5, fibers: None };
    let elastic = Elastic { modulus: 29e6, poisson_ratio: 0.3, density: 7500.0 };
    Line::new(LineParts {
        spans: vec![Span::new(LENGTH, SpanSection::Uniform(section), elastic).unwrap()],
        supports: supports.iter().map(|(at, kind)| Support { at: *at, kind: *kind }).collect(),
        loads: Vec::new(),
        masses: masses
            .iter()
            .map(|(at, ratio)| PointMass { at: *at, mass: ratio * 60.0, inertia: 0.0 })
            .collect(),
    })
    .unwrap()
}

/// β L of a frequency.
fn root(frequency: f64) -> f64 {
    (TAU * frequency * LENGTH * LENGTH * (30.0_f64 / (29e6 * 8e-6)).sqrt()).sqrt()
}

#[test]
fn equations_and_elements_meet_the_tables() {
    let cases: Vec<(Line, usize, Vec<f64>)> = vec![
        (bar(&[(0.0, FIXED)], &[]), 0, vec![1.875_104_07, 4.694_091_13, 7.854_757_44]),
        (bar(&[], &[]), 2, vec![4.730_040_74, 7.853_204_62, 10.995_607_84]),
        (bar(&[(0.0, FIXED), (2.0, FIXED)], &[]), 0, vec![4.730_040_74, 7.853_204_62, 10.995_607_84]),
        (bar(&[(0.0, FIXED), (2.0, PINNED)], &[]), 0, vec![3.926_602_31, 7.068_582_75, 10.210_176_12]),
        (bar(&[(0.0, PINNED), (2.0, FIXED)], &[]), 0, vec![3.926_602_31, 7.068_582_75, 10.210_176_12]),
        (bar(&[(0.0, FIXED)], &[(2.0, 0.5)]), 0, vec![1.419_964_43, 4.111_133_39]),
        (bar(&[(2.0, FIXED)], &[(0.0, 10.0)]), 0, vec![0.735_781_92, 3.938_465_83]),
    ];
    for (line, rigid, printed) in cases {
        let found = modes(&line, &Mesh { elements: 20, ..BENDING }, rigid + printed.len()).unwrap();
        assert!(found.complete);
        assert!(found.modes[..rigid].iter().all(|mode| mode.frequency == 0.0));
        let closed = closed_modes(&line, Theory::EulerBernoulli, printed.len()).unwrap();
        for (number, printed) in printed.iter().enumerate() {
            assert!((root(closed.frequencies[number]) - printed).abs() < 0.6e-8, "{}", closed.title);
            // Consistent mass: too large by (β h)⁴/2880, 3.2e-5 of the third root of the free beam.
            let computed = root(found.modes[rigid + number].frequency);
            assert_near(computed, *printed, 1.1 * (printed / 20.0).powi(4) / 2880.0 + 1e-8);
        }
    }
}

#[test]
fn symmetric_frequencies_of_a_beam_with_wheels_match_rao() {
    let line = bar(&[], &[(0.0, 1.0), (2.0, 1.0)]);
    let closed = closed_modes(&line, Theory::EulerBernoulli, 3).unwrap();
    assert!((root(closed.frequencies[0]) - 3.398_799_33).abs() < 0.5e-8);
    assert!((root(closed.frequencies[2]) - 9.524_452_16).abs() < 0.5e-8);
    let found = modes(&line, &Mesh { elements: 40, ..BENDING }, 5).unwrap().modes;
    for (mode, closed) in found[2..].iter().zip(&closed.frequencies) {
        assert_near(mode.frequency, *closed, 3e-6);
    }
}

#[test]
fn frequencies_with_shear_match_timoshenko_young_weaver() {
    let tube = Profile::from(RoundTube::new(0.127, 0.0127).unwrap());
    let elastic = Elastic { modulus: 200e9, poisson_ratio: 0.3, density: 7850.0 };
    let section = SpanSection::Uniform(SectionValues::of_profile(&tube, 0.3));
    let line = Line::new(LineParts {
        spans: vec![Span::new(1.2, section, elastic).unwrap()],
        supports: vec![Support { at: 0.0, kind: PINNED }, Support { at: 1.2, kind: PINNED }],
        ..LineParts::default()
    })
    .unwrap();
    let closed = closed_modes(&line, Theory::Timoshenko, 3).unwrap();
    let found = modes(&line, &Mesh { elements: 40, ..SHEAR }, 3).unwrap().modes;
    for (number, printed) in [216.914_025, 799.277_549, 1_613.193_580].into_iter().enumerate() {
        assert!((closed.frequencies[number] - printed).abs() < 1e-6);
        assert_near(found[number].frequency, printed, 1e-3);
    }
    let bending = closed_modes(&line, Theory::EulerBernoulli, 3).unwrap();
    for (frequency, printed) in bending.frequencies.iter().zip([223.873_768, 895.495_070, 2_014.863_908]) {
        assert!((frequency - printed).abs() < 1e-6);
    }
}

#[test]
fn a_mass_on_a_spring_has_its_own_frequency() {
    // A stiff, light bar: f = √(k/m)/2π; 1 mm of settlement of the foot changes nothing.
    let spring = SupportKind::Elastic { stiffness: 1e3, turning_stiffness: 0.0, settlement: 1e-3 };
    let line = bar(&[(0.0, PINNED), (2.0, spring)], &[(2.0, 1e4)]);
    let found = modes(&line, &BENDING, 1).unwrap();
    // The beam turns about its pin: its own inertia is m L²/3 beside M L².
    assert_near(found.modes[0].frequency, (1e3_f64 / (60.0 * (1e4 + 1.0 / 3.0))).sqrt() / TAU, 1e-4);
}

#[test]
fn inertia_of_a_mass_counts() {
    let line = |inertia| {
        let mut parts = LineParts {
            spans: bar(&[], &[]).spans().to_vec(),
            supports: vec![Support { at: 0.0, kind: PINNED }],
            ..LineParts::default()
        };
        parts.supports[0].kind = SupportKind::Pinned { settlement: 0.0, turning_stiffness: 10.0 };
        parts.masses.push(PointMass { at: 2.0, mass: 0.0, inertia });
        Line::new(parts).unwrap()
    };
    // Turning about the pin: (m L²/3 + J) with m = 60 kg and L = 2 m.
    let frequency = |inertia: f64| modes(&line(inertia), &BENDING, 1).unwrap().modes[0].frequency;
    assert_near(frequency(40.0), (10.0_f64 / 120.0).sqrt() / TAU, 2e-2);
    assert_near(frequency(40.0) / frequency(0.0), (80.0_f64 / 120.0).sqrt(), 2e-2);
}
