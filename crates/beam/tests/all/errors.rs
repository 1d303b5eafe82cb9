//! What is refused, and how.

use axlebow_beam::{
    BeamError, Element, FreeMotion, Line, LineParts, Load, Mesh, Part, PointMass, Span, SpanSection, Support,
    SupportKind, modes, solve,
};
use axlebow_sections::{Profile, RoundBar, RoundTube};

use crate::{BENDING, SHEAR, STEEL, line, tube_span};

const PINNED: SupportKind = SupportKind::PINNED;
const DOWN: Load = Load::Force { at: 20.0, force: -1.0 };

fn refusal(parts: LineParts) -> String {
    Line::new(LineParts { spans: vec![tube_span(40.0)], ..parts }).unwrap_err().to_string()
}

fn mechanism(supports: &[(f64, SupportKind)]) -> FreeMotion {
    match solve(&line(40.0, supports, &[DOWN]), &BENDING) {
        Err(BeamError::Mechanism { motion }) => motion,
        other => panic!("{:?}", other.err()),
    }
}

#[test]
fn mechanisms_say_what_is_free() {
    assert_eq!(mechanism(&[]), FreeMotion::All);
    assert_eq!(mechanism(&[(10.0, PINNED)]), FreeMotion::TurningAbout { at: 10.0 });
    assert_eq!(mechanism(&[(10.0, SupportKind::SLIDING)]), FreeMotion::UpAndDown);
    let message = BeamError::Mechanism { motion: FreeMotion::TurningAbout { at: 10.0 } }.to_string();
    assert_eq!(
        message,
        "nothing holds the beam against turning about its only support at 10 m; add a support, a spring or a foundation that does"
    );
    for held in [
        vec![(0.0, SupportKind::FIXED)],
        vec![
            (0.0, PINNED),
            (30.0, SupportKind::Elastic { stiffness: 1.0, turning_stiffness: 0.0, settlement: 0.0 }),
        ],
        vec![(0.0, PINNED), (30.0, SupportKind::SLIDING)],
        vec![(0.0, SupportKind::Pinned { settlement: 0.0, turning_stiffness: 5.0 })],
    ] {
        assert!(solve(&line(40.0, &held, &[DOWN]), &BENDING).is_ok(), "{held:?}");
    }
}

#[test]
fn places_off_the_beam_are_refused() {
    let loads = vec![DOWN, Load::Distributed { from: 30.0, to: 41.0, start: 1.0, end: 1.0 }];
    assert_eq!(
        refusal(LineParts { loads, ..LineParts::default() }),
        "load 2 is at 41 m, but the beam runs from 0 to 40 m; give a place on the beam"
    );
    let masses = vec![PointMass { at: -1.0, mass: 1.0, inertia: 0.0 }];
    assert!(refusal(LineParts { masses, ..LineParts::default() }).starts_with("mass 1 is at -1 m"));
    let supports = vec![Support { at: f64::NAN, kind: PINNED }];
    assert!(refusal(LineParts { supports, ..LineParts::default() }).starts_with("support 1 is at NaN m"));
}

#[test]
fn parts_that_cannot_be_are_refused() {
    let twice = vec![Support { at: 3.0, kind: PINNED }; 2];
    assert!(
        refusal(LineParts { supports: twice, ..LineParts::default() })
            .starts_with("support 2 is at 3 m, where")
    );
    let backward = vec![Load::Distributed { from: 3.0, to: 3.0, start: 1.0, end: 1.0 }];
    assert!(
        refusal(LineParts { loads: backward, ..LineParts::default() })
            .starts_with("load 1 runs from 3 m to 3 m")
    );
    let infinite = vec![Load::Force { at: 1.0, force: f64::INFINITY }];
    assert!(
        refusal(LineParts { loads: infinite, ..LineParts::default() }).starts_with("load 1 has force inf N")
    );
    let soft = SupportKind::Elastic { stiffness: -1.0, turning_stiffness: 0.0, settlement: 0.0 };
    let supports = vec![Support { at: 1.0, kind: soft }];
    assert!(
        refusal(LineParts { supports, ..LineParts::default() }).starts_with("support 1 has stiffness -1 N/m")
    );
    assert_eq!(Line::new(LineParts::default()), Err(BeamError::NoSpan));
    let section = |start, end| Span::new(1.0, SpanSection::Tapered { start, end }, STEEL);
    let (bar, tube) =
        (Profile::from(RoundBar::new(2.0).unwrap()), Profile::from(RoundTube::new(5.0, 0.5).unwrap()));
    assert!(matches!(section(bar, tube), Err(BeamError::Section { part: Part::Span(0), .. })));
    for length in [0.0, -1.0, f64::NAN] {
        assert!(Span::new(length, SpanSection::Uniform(crate::tube()), STEEL).is_err());
    }
}

#[test]
fn meshes_and_sections_that_do_not_go_with_the_theory_are_refused() {
    let beam = line(40.0, &[(0.0, SupportKind::FIXED)], &[DOWN]);
    let two_node = Mesh { element: Element::TwoNode, ..BENDING };
    assert_eq!(solve(&beam, &two_node).err(), Some(BeamError::TwoNodeNeedsShear));
    for elements in [0, 1001] {
        assert!(matches!(solve(&beam, &Mesh { elements, ..BENDING }), Err(BeamError::Elements { .. })));
    }
    let mut bare = crate::tube();
    bare.area = None;
    let span = Span::new(40.0, SpanSection::Uniform(bare), STEEL).unwrap();
    let beam = crate::of_spans(vec![span], &[(0.0, SupportKind::FIXED)], &[DOWN]);
    let no_area = |what| Some(BeamError::NoArea { part: Part::Span(0), what });
    assert_eq!(solve(&beam, &SHEAR).err(), no_area("shear"));
    assert_eq!(modes(&beam, &BENDING, 1).err(), no_area("mass"));
    assert!(solve(&beam, &BENDING).is_ok());
}
