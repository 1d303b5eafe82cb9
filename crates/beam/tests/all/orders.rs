//! Observed orders of convergence against theory.
//!
//! Cubic deflections, elements of length h: nodal values, and eigenvalues by the square of the energy error, converge by
//! h⁴ (G. Strang & G. J. Fix, An Analysis of the Finite Element Method, Prentice-Hall 1973, ch. 1 and 6, from memory), and
//! deflections between nodes by h⁴ as interpolation does; linear ones by h². With shear a cubic element keeps the shear
//! constant, whose error in a load that it does not see is h² in energy: frequencies then converge by h², however small the
//! factor (worked out here).

use axlebow_beam::{Convergence, Element, Load, Mesh, Quantity, Span, SpanSection, SupportKind, convergence};
use axlebow_sections::{Profile, RoundBar};

use crate::{BENDING, SHEAR, STEEL, line, of_spans};

const SUPPORTED: [(f64, SupportKind); 2] = [(0.0, SupportKind::PINNED), (40.0, SupportKind::PINNED)];
const PROPPED: [(f64, SupportKind); 2] = [(0.0, SupportKind::FIXED), (40.0, SupportKind::PINNED)];
const UNIFORM: [Load; 1] = [Load::Distributed { from: 0.0, to: 40.0, start: -100.0, end: -100.0 }];

fn last_order(found: &Convergence, quantity: Quantity) -> f64 {
    let row = found.rows.iter().rfind(|row| row.quantity == quantity).unwrap();
    row.order.unwrap_or_else(|| panic!("no order: {row:?}"))
}

fn assert_order(found: &Convergence, quantity: Quantity, theory: f64) {
    let order = last_order(found, quantity);
    assert!((order - theory).abs() < 0.05, "{quantity:?}: {order} for {theory}");
}

#[test]
fn curves_are_compared_by_their_root_mean_square() {
    let moment = [Load::Moment { at: 40.0, moment: 1e5 }];
    let fixed = [(0.0, SupportKind::FIXED)];
    let found = convergence(&line(40.0, &fixed, &moment), &BENDING, &[1], 0).unwrap();
    let row = found.rows.iter().find(|row| row.quantity == Quantity::Moment).unwrap();
    assert!((row.computed / 1e5 - 1.0).abs() < 1e-12 && (row.reference / 1e5 - 1.0).abs() < 1e-12);
}

#[test]
fn flexibility_elements_leave_rounding_only_in_statics() {
    let found = convergence(&line(40.0, &PROPPED, &UNIFORM), &SHEAR, &[2, 4], 0).unwrap();
    assert_eq!(found.rows.len(), 6);
    assert!(found.rows.iter().all(|row| row.error < 1e-10 && row.order.is_none()), "{found:?}");
}

#[test]
fn hermite_elements_converge_by_the_fourth_power() {
    let hermite = Mesh { element: Element::Hermite, ..BENDING };
    let found = convergence(&line(40.0, &SUPPORTED, &UNIFORM), &hermite, &[4, 8, 16], 2).unwrap();
    assert_order(&found, Quantity::Deflection, 4.0);
    assert_order(&found, Quantity::Frequency(1), 4.0);
    assert_order(&found, Quantity::Frequency(2), 4.0);
    let bar = |diameter| Profile::from(RoundBar::new(diameter).unwrap());
    let cone = Span::new(40.0, SpanSection::Tapered { start: bar(4.0), end: bar(3.0) }, STEEL).unwrap();
    let tip = [Load::Force { at: 40.0, force: 1000.0 }];
    let taper = of_spans(vec![cone], &[(0.0, SupportKind::FIXED)], &tip);
    let found = convergence(&taper, &hermite, &[4, 8, 16], 1).unwrap();
    assert_order(&found, Quantity::LargestDeflection, 4.0);
    assert_order(&found, Quantity::Frequency(1), 4.0);
}

#[test]
fn elements_on_a_foundation_converge_by_the_fourth_power() {
    let bedded = || vec![crate::tube_span(40.0).on_foundation(5e4)];
    let load = [Load::Force { at: 20.0, force: -1e4 }];
    for element in [Element::Flexibility, Element::Hermite] {
        let found = convergence(&of_spans(bedded(), &[], &load), &Mesh { element, ..BENDING }, &[2, 4, 8], 0)
            .unwrap();
        assert_order(&found, Quantity::LargestDeflection, 4.0);
    }
}

#[test]
fn shear_lowers_the_order_on_a_foundation() {
    let spans = vec![crate::tube_span(40.0).on_foundation(5e4)];
    let load = [Load::Force { at: 0.0, force: 1e4 }];
    let found = convergence(&of_spans(spans, &[], &load), &SHEAR, &[8, 16], 0).unwrap();
    for quantity in [Quantity::LargestDeflection, Quantity::Deflection, Quantity::Moment] {
        assert_order(&found, quantity, 2.0);
    }
}

#[test]
fn two_node_elements_converge_by_the_second_power() {
    let two_node = Mesh { element: Element::TwoNode, ..SHEAR };
    let found = convergence(&line(40.0, &SUPPORTED, &UNIFORM), &two_node, &[8, 16, 32], 2).unwrap();
    for quantity in
        [Quantity::LargestDeflection, Quantity::Deflection, Quantity::Frequency(1), Quantity::Frequency(2)]
    {
        assert_order(&found, quantity, 2.0);
    }
    // Propped, so that moments depend on stiffness.
    let found = convergence(&line(40.0, &PROPPED, &UNIFORM), &two_node, &[8, 16, 32], 0).unwrap();
    assert_order(&found, Quantity::Moment, 2.0);
}

#[test]
fn shear_lowers_the_order_of_cubic_frequencies() {
    let hermite = Mesh { element: Element::Hermite, ..SHEAR };
    let found = convergence(&line(40.0, &SUPPORTED, &[]), &hermite, &[16, 32, 64], 1).unwrap();
    assert_order(&found, Quantity::Frequency(1), 2.0);
}
