//! Beams recomputed by `scripts/recompute_beam.py`, which integrates the differential equations without elements.

use axlebow_beam::{
    Elastic, Line, LineParts, Load, Mesh, PointMass, SectionValues, Span, SpanSection, Support, SupportKind,
    modes, solve,
};
use axlebow_sections::{Profile, RoundTube};

use crate::{BENDING, SHEAR, assert_near};

const STEEL: Elastic = Elastic { modulus: 205e9, poisson_ratio: 0.29, density: 7850.0 };

fn tube(od: f64, wall: f64) -> Profile {
    Profile::from(RoundTube::new(od, wall).unwrap())
}

fn span(length: f64, profile: Profile) -> Span {
    Span::new(length, SpanSection::Uniform(SectionValues::of_profile(&profile, 0.29)), STEEL).unwrap()
}

fn support(at: f64, kind: SupportKind) -> Support {
    Support { at, kind }
}

#[test]
fn a_tapered_tube_on_three_supports_matches_its_differential_equation() {
    let section = SpanSection::Tapered { start: tube(0.127, 0.0127), end: tube(0.090, 0.008) };
    let spring = SupportKind::Elastic { stiffness: 4e6, turning_stiffness: 0.0, settlement: 0.0 };
    let line = Line::new(LineParts {
        spans: vec![Span::new(1.2, section, STEEL).unwrap()],
        supports: vec![
            support(0.0, SupportKind::FIXED),
            support(0.7, spring),
            support(1.2, SupportKind::PINNED),
        ],
        loads: vec![
            Load::Force { at: 0.3, force: -15e3 },
            Load::Distributed { from: 0.0, to: 1.2, start: -20e3, end: -5e3 },
        ],
        masses: Vec::new(),
    })
    .unwrap();
    let solution = solve(&line, &SHEAR).unwrap();
    assert_near(solution.at(0.5).deflection, -2.299_562_166_2e-4, 1e-9);
    assert_near(solution.at(0.0).moment, -5.793_412_343_1e3, 1e-9);
    assert_near(solution.reactions[1].force, 1.020_191_400_4e3, 1e-9);
}

#[test]
fn a_stepped_beam_on_a_foundation_matches_its_differential_equation() {
    let line = Line::new(LineParts {
        spans: vec![span(1.4, tube(0.1, 0.01)).on_foundation(2e6), span(0.6, tube(0.08, 0.006))],
        supports: vec![support(2.0, SupportKind::PINNED)],
        loads: vec![
            Load::Thermal { from: 0.0, to: 2.0, curvature: 1e-3 },
            Load::Distributed { from: 0.0, to: 2.0, start: 2e3, end: 2e3 },
        ],
        masses: Vec::new(),
    })
    .unwrap();
    let solution = solve(&line, &Mesh { elements: 40, ..BENDING }).unwrap();
    assert_near(solution.at(0.0).deflection, 1.739_146_466_7e-3, 1e-8);
    assert_near(solution.at(1.4).deflection, 4.438_518_569_7e-4, 1e-8);
    assert_near(solution.at(1.4).moment, -3.849_756_139_0e2, 1e-7);
    assert_near(solution.at(2.0).slope, -7.265_165_319_4e-4, 1e-8);
}

#[test]
fn frequencies_of_a_stepped_tube_with_a_mass_match_its_differential_equation() {
    let line = Line::new(LineParts {
        spans: vec![span(0.8, tube(0.127, 0.0127)), span(0.7, tube(0.09, 0.01))],
        supports: vec![support(0.0, SupportKind::FIXED), support(0.8, SupportKind::PINNED)],
        loads: Vec::new(),
        masses: vec![PointMass { at: 1.5, mass: 40.0, inertia: 0.3 }],
    })
    .unwrap();
    let bending = [4.103_724_454_1e1, 3.802_193_891_1e2, 8.218_312_823_6e2];
    let shear = [4.024_973_595_1e1, 3.666_968_502_2e2, 7.100_793_973_0e2];
    // What 60 cubic elements lose of the third: (β h)⁴/720 without shear, an h² term with it.
    for (mesh, printed, share) in [(BENDING, bending, 2e-8), (SHEAR, shear, 2e-4)] {
        let found = modes(&line, &Mesh { elements: 60, ..mesh }, 3).unwrap();
        assert!(found.complete);
        for (mode, printed) in found.modes.iter().zip(printed) {
            assert_near(mode.frequency, printed, share);
        }
    }
}
