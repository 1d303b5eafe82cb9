//! Beams whose section changes. J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 9; formulas from
//! memory, numbers recomputed.

use axlebow_beam::{Element, Load, Mesh, SectionValues, Span, SpanSection, SupportKind, solve};
use axlebow_sections::{Profile, RoundBar, RoundTube};

use crate::{BENDING, SHEAR, STEEL, assert_near, of_spans};

fn values(second_moment: f64) -> SpanSection {
    SpanSection::Uniform(SectionValues { area: None, second_moment, shear_coefficient: 1.0, fibers: None })
}

fn cone() -> Span {
    let bar = |diameter| Profile::from(RoundBar::new(diameter).unwrap());
    Span::new(40.0, SpanSection::Tapered { start: bar(4.0), end: bar(2.0) }, STEEL).unwrap()
}

#[test]
fn tip_of_a_stepped_cantilever_matches_gere_goodno_chapter_9() {
    let span = |length, second_moment| Span::new(length, values(second_moment), STEEL).unwrap();
    let spans = vec![span(15.0, 20.0), span(25.0, 10.0)];
    let loads = [Load::Force { at: 40.0, force: 10_000.0 }];
    for element in [Element::Flexibility, Element::Hermite] {
        let beam = of_spans(spans.clone(), &[(0.0, SupportKind::FIXED)], &loads);
        let tip = solve(&beam, &Mesh { element, ..BENDING }).unwrap().at(40.0);
        assert!((tip.deflection - 0.457_614_94).abs() < 0.5e-8);
        assert_near(tip.slope, 55.625 / 2900.0, 1e-12);
    }
}

#[test]
fn tip_of_a_tapered_cantilever_matches_gere_goodno_chapter_9() {
    let beam =
        of_spans(vec![cone()], &[(0.0, SupportKind::FIXED)], &[Load::Force { at: 40.0, force: 1000.0 }]);
    let tip = solve(&beam, &BENDING).unwrap().at(40.0);
    // P L³/(24 E I_A), P L²/(12 E I_A) with I_A = π/4 in⁴.
    let ei = 29e6 * std::f64::consts::FRAC_PI_4;
    assert_near(tip.deflection, 1000.0 * 40.0_f64.powi(3) / (24.0 * ei), 1e-9);
    assert_near(tip.slope, 1000.0 * 1600.0 / (12.0 * ei), 1e-9);
}

#[test]
fn one_flexibility_element_of_a_taper_is_as_good_as_many() {
    let tube = |diameter| Profile::from(RoundTube::new(diameter, 0.4).unwrap());
    let span = Span::new(40.0, SpanSection::Tapered { start: tube(5.0), end: tube(3.0) }, STEEL).unwrap();
    let loads =
        [Load::Distributed { from: 0.0, to: 40.0, start: -50.0, end: 80.0 }, Load::Weight { gravity: 386.0 }];
    let beam = of_spans(vec![span], &[(0.0, SupportKind::FIXED), (40.0, SupportKind::PINNED)], &loads);
    let of = |elements| solve(&beam, &Mesh { elements, ..SHEAR }).unwrap();
    let (one, many) = (of(1), of(7));
    for at in [3.0, 17.0, 33.0] {
        assert_near(one.at(at).deflection, many.at(at).deflection, 1e-8);
        assert_near(one.at(at).moment, many.at(at).moment, 1e-8);
        assert_near(one.at(at).rise, many.at(at).rise, 1e-8);
    }
}

#[test]
fn a_temperature_difference_bends_a_cone_to_an_arc() {
    let thermal = [Load::Thermal { from: 0.0, to: 40.0, curvature: 2e-5 }];
    let solution = solve(&of_spans(vec![cone()], &[(0.0, SupportKind::FIXED)], &thermal), &BENDING).unwrap();
    for at in [13.0, 29.0, 40.0] {
        assert_near(solution.at(at).deflection, 0.5 * 2e-5 * at * at, 1e-8);
        assert_near(solution.at(at).slope, 2e-5 * at, 1e-8);
    }
}

#[test]
fn weight_of_a_cone_is_its_volume_by_density() {
    let beam = of_spans(vec![cone()], &[(0.0, SupportKind::FIXED)], &[Load::Weight { gravity: 386.0 }]);
    let volume = std::f64::consts::PI * 40.0 / 12.0 * (16.0 + 8.0 + 4.0);
    assert_near(solve(&beam, &BENDING).unwrap().reactions[0].force, 386.0 * 7.3e-4 * volume, 1e-11);
}
