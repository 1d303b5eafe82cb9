//! Everything that is asked of a beam at once.

use axlebow_beam::{
    Asked, BeamOptions, Check, Line, LineParts, Load, Mesh, PeakKind, PointMass, SectionValues, Span,
    SpanSection, SupportKind, Theory, closed_forms, closed_modes, work_out,
};
use axlebow_results::json;

use crate::{BENDING, STEEL, assert_near, line, of_spans, tube_span};

fn check(asked: Asked, expected: f64) -> Check {
    Check { name: "own".to_owned(), case: None, asked, expected, tolerance: 1e-6, source: "none".to_owned() }
}

fn options(checks: Vec<Check>) -> BeamOptions {
    BeamOptions {
        mesh: Mesh { elements: 20, ..BENDING },
        modes: Some(2),
        convergence: vec![1, 2],
        moving: None,
        shaking: None,
        checks,
    }
}

const FIXED: [(f64, SupportKind); 1] = [(0.0, SupportKind::FIXED)];
const DOWN: [Load; 1] = [Load::Force { at: 40.0, force: -10_000.0 }];

#[test]
fn expected_values_are_compared_with_their_sign() {
    let along = |kind, at| Asked::Along { kind, at };
    let checks = vec![
        check(along(PeakKind::Deflection, Some(40.0)), -0.406_129_43),
        check(along(PeakKind::Deflection, None), -0.406_129_43),
        check(along(PeakKind::Deflection, None), 0.406_129_43),
        check(Asked::Reaction { at: 1.0 }, 10_000.0),
        check(Asked::ReactionMoment { at: 0.0 }, 400_000.0),
        check(Asked::Root { number: 1 }, 1.875_104_07),
        check(Asked::Frequency { number: 3 }, 1.0),
    ];
    let outcome = work_out(line(40.0, &FIXED, &DOWN), &options(checks)).unwrap();
    let passed: Vec<bool> = outcome.checks.iter().map(|own| own.passed()).collect();
    assert_eq!(passed, [true, true, false, true, true, true, false]);
    assert!(!outcome.passed());
    assert_near(outcome.checks[2].error().unwrap(), -2.0, 1e-6);
    // Errors are over the size of what was expected: a deflection too small is not "too large" where both are negative.
    let half = work_out(
        line(40.0, &FIXED, &DOWN),
        &options(vec![check(along(PeakKind::Deflection, None), -0.812_258_86)]),
    );
    assert_near(half.unwrap().checks[0].error().unwrap(), 0.5, 1e-6);
    assert_eq!(outcome.checks[6].computed, None, "two modes were asked for");
}

#[test]
fn what_is_not_asked_for_or_cannot_be_is_left_out() {
    let outcome = work_out(line(40.0, &FIXED, &[]), &options(Vec::new())).unwrap();
    assert!(outcome.bent.is_none() && outcome.passed());
    assert_eq!(outcome.vibrating.as_ref().unwrap().modes.len(), 2);
    assert!(
        outcome
            .convergence
            .as_ref()
            .unwrap()
            .rows
            .iter()
            .all(|row| row.quantity.words().starts_with("frequency"))
    );
    let free = work_out(line(40.0, &[], &[]), &options(Vec::new())).unwrap();
    let vibrating = free.vibrating.as_ref().unwrap();
    assert_eq!((vibrating.rigid, vibrating.modes.len()), (2, 4));
    let mut section = crate::tube();
    section.area = None;
    let bare = of_spans(vec![Span::new(40.0, SpanSection::Uniform(section), STEEL).unwrap()], &FIXED, &DOWN);
    let outcome = work_out(bare, &BeamOptions { modes: None, ..options(Vec::new()) }).unwrap();
    assert!(outcome.vibrating.is_none() && outcome.bent.is_some());
    assert!(outcome.is_exact());
}

#[test]
fn documents_name_units() {
    let outcome =
        work_out(line(40.0, &FIXED, &DOWN), &options(vec![check(Asked::Root { number: 1 }, 1.8)])).unwrap();
    let document = json(&outcome);
    assert_eq!(document["checks"][0]["unit"], "");
    assert_eq!(document["static"]["peaks"][0]["unit"], "m");
    assert_eq!(document["static"]["closed_form"]["values"].as_array().unwrap().len(), 3);
    assert_eq!(document["vibration"]["closed_form"]["title"], "cantilever");
    assert!(document["static"]["stations"][0]["moment_nm"].is_number());
}

/// Beams that are nearly a handbook case are none.
#[test]
fn nearly_a_handbook_case_is_none() {
    let pinned = SupportKind::PINNED;
    let ends = [(18.0, pinned), (56.0, pinned)];
    let forces = |a, b| [Load::Force { at: 0.0, force: a }, Load::Force { at: 74.0, force: b }];
    let known = |beam: &Line| closed_forms(beam, Theory::EulerBernoulli).is_some();
    assert!(known(&line(74.0, &ends, &forces(1.0, 1.0))));
    assert!(!known(&line(74.0, &ends, &forces(1.0, 2.0))));
    assert!(!known(&line(74.0, &[(18.0, pinned), (57.0, pinned)], &forces(1.0, 1.0))));
    let ramp = |end| [Load::Distributed { from: 0.0, to: 40.0, start: 1.0, end }];
    assert!(known(&line(40.0, &FIXED, &ramp(1.0))) && !known(&line(40.0, &FIXED, &ramp(2.0))));
    let part = [Load::Distributed { from: 0.0, to: 39.0, start: 1.0, end: 1.0 }];
    assert!(!known(&line(40.0, &FIXED, &part)));
    assert!(!known(&of_spans(vec![tube_span(40.0).on_foundation(1.0)], &FIXED, &DOWN)));
    let sunk = [(0.0, SupportKind::Fixed { settlement: 0.1, rotation: 0.0 })];
    assert!(!known(&line(40.0, &sunk, &DOWN)));
    let with_mass = |inertia| {
        let supports = line(40.0, &FIXED, &[]).supports().to_vec();
        let masses = vec![PointMass { at: 40.0, mass: 1.0, inertia }];
        Line::new(LineParts { spans: vec![tube_span(40.0)], supports, loads: Vec::new(), masses }).unwrap()
    };
    let modes = |beam: &Line| closed_modes(beam, Theory::EulerBernoulli, 1).is_some();
    assert!(modes(&with_mass(0.0)) && !modes(&with_mass(1.0)));
    assert!(SectionValues { fibers: Some([1.0, 2.0]), ..crate::tube() }.bending_stress(1.0).unwrap() > 0.0);
    assert!(crate::tube().bending_stress(-1.0).unwrap() > 0.0, "of two equal ones the tension");
    assert!(SectionValues { fibers: Some([2.0, 1.0]), ..crate::tube() }.bending_stress(1.0).unwrap() < 0.0);
}
