//! Beams on a foundation. M. Hetényi, Beams on Elastic Foundation, Univ. of Michigan Press 1946, ch. II-III; formulas
//! from memory, numbers recomputed.

use axlebow_beam::{Elastic, Load, Mesh, SectionValues, Span, SpanSection, SupportKind, solve};

use crate::{BENDING, assert_near, of_spans};

const BAR: SectionValues =
    SectionValues { area: None, second_moment: 10.0, shear_coefficient: 1.0, fibers: None };
const STEEL: Elastic = Elastic { modulus: 29e6, poisson_ratio: 0.3, density: 1.0 };

fn bedded(length: f64) -> Span {
    Span::new(length, SpanSection::Uniform(BAR), STEEL).unwrap().on_foundation(2000.0)
}

const FINE: Mesh = Mesh { elements: 400, ..BENDING };

/// Elements of 1 in: what is lost falls by h⁴ and is (λ h)⁴/240 or less, 7.2e-9.
const MESH: f64 = 7.2e-9;

#[test]
fn deflection_and_moment_match_hetenyi_chapter_2_infinite_beam() {
    // 800 in: what comes back from an end 400 in away is e^(-2 · 14.5) = 3e-13.
    let beam = of_spans(vec![bedded(800.0)], &[], &[Load::Force { at: 400.0, force: 10_000.0 }]);
    let middle = solve(&beam, &FINE).unwrap().at(400.0);
    assert!((middle.deflection - 0.090_590_57).abs() < 0.5e-8 + MESH * 0.09, "{}", middle.deflection);
    assert!((middle.moment + 68_991.726).abs() < 0.5e-3 + MESH * 7e4, "{}", middle.moment);
}

#[test]
fn deflection_and_slope_match_hetenyi_chapter_3_half_infinite_beam() {
    // 400 in: what comes back from the other end is e^(-2 · 14.5) = 3e-13.
    let beam = of_spans(vec![bedded(400.0)], &[], &[Load::Force { at: 0.0, force: 10_000.0 }]);
    let end = solve(&beam, &FINE).unwrap().at(0.0);
    assert!((end.deflection - 0.362_362_30).abs() < 0.5e-8 + MESH * 0.36, "{}", end.deflection);
    assert!((end.slope + 0.013_130_643).abs() < 0.5e-9 + MESH * 0.013, "{}", end.slope);
}

/// A beam of 4 in on its own bed under a uniform load sinks evenly, whatever the element.
#[test]
fn a_uniform_load_sinks_a_free_beam_evenly() {
    let loads = [Load::Distributed { from: 0.0, to: 50.0, start: -30.0, end: -30.0 }];
    for element in [axlebow_beam::Element::Flexibility, axlebow_beam::Element::Hermite] {
        let solution =
            solve(&of_spans(vec![bedded(50.0)], &[], &loads), &Mesh { element, ..BENDING }).unwrap();
        assert_near(solution.at(20.0).deflection, -30.0 / 2000.0, 1e-10);
        assert!(solution.at(20.0).moment.abs() < 1e-6);
    }
}

#[test]
fn a_foundation_takes_part_of_the_load() {
    let supports = [(0.0, SupportKind::PINNED), (100.0, SupportKind::PINNED)];
    let loads = [Load::Force { at: 50.0, force: -1000.0 }];
    let solution = solve(&of_spans(vec![bedded(100.0)], &supports, &loads), &FINE).unwrap();
    let bed: f64 = -solution
        .stations(2000)
        .windows(2)
        .map(|pair| 2000.0 * 0.5 * (pair[0].deflection + pair[1].deflection) * (pair[1].at - pair[0].at))
        .sum::<f64>();
    let reactions: f64 = solution.reactions.iter().map(|reaction| reaction.force).sum();
    assert_near(bed + reactions, 1000.0, 1e-6);
}
