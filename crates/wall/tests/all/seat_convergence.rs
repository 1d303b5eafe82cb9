//! The compliance of a seat: signs, limits, and how it converges.

use crate::example::seat;
use approx::assert_relative_eq;
use axlebow_sections::{Profile, RectangularTube};
use axlebow_wall::{Fineness, SeatCompliance, SeatWall, Tie, UBolts, WallError};
use nalgebra::Matrix6;

const RX: usize = 3;
const THICK: (f64, f64) = (0.127, 0.0127);
const THIN: (f64, f64) = (0.1524, 0.009);

fn clamped(seat: SeatWall) -> SeatWall {
    SeatWall { clamp: Some(UBolts { diameter: 0.022, count: 2 }), ..seat }
}

fn usual(seat: &SeatWall) -> SeatCompliance {
    seat.compliance(&Fineness::USUAL).unwrap()
}

fn bending_stiffness(seat: &SeatWall) -> f64 {
    200e9 * seat.profile.properties(0.3).second_moment_x
}

#[test]
fn the_whole_compliance_is_positive_definite_and_symmetric() {
    let rounded = Profile::from(RectangularTube::new(0.11, 0.13, 0.0095, 0.022).unwrap());
    let boxed = SeatWall { profile: rounded, breadth: 0.06, ..seat(THIN, 0.12, 90.0) };
    let spread = SeatWall { tie: Tie::Spread, ..seat(THIN, 0.09, 90.0) };
    for seat in [seat(THIN, 0.09, 90.0), clamped(seat(THICK, 0.18, 120.0)), boxed, spread] {
        let whole = usual(&seat).whole;
        let matrix = Matrix6::from_fn(|i, j| whole[i][j] / (whole[i][i] * whole[j][j]).sqrt());
        assert_eq!(matrix, matrix.transpose());
        assert!(matrix.symmetric_eigenvalues().min() > 0.0, "{matrix}");
    }
}

/// A node in the middle of the top or of the bottom has the curvature of the tube, on whichever side of it rounding puts it.
#[test]
fn what_a_seat_says_changes_as_little_as_its_sizes() {
    let at = |step: f64| {
        let wall = 0.009 * (1.0 + step);
        SeatWall { breadth: 0.1, ..seat((0.151, wall), 0.09, 90.0) }
    };
    // Nearly straight over steps of 1e-5; a change of mesh or of loads would show as 1e-4.
    let steps = [-2e-5, -1.3e-5, -1e-5, -4e-6, 0.0, 1e-5, 2e-5];
    let shares = steps.map(|step| usual(&at(step)).stiffened_share);
    let slope = (shares[6] - shares[0]) / 4e-5;
    for (step, share) in steps.into_iter().zip(shares) {
        assert_relative_eq!(share, shares[4] + slope * step, max_relative = 1e-7);
    }
}

/// With the layout of its neighbor's mesh a seat changes smoothly where its own mesh would have an element more.
#[test]
fn seats_meshed_by_one_layout_differ_by_their_sizes_only() {
    let own = |wall: f64| seat((0.151, wall), 0.09, 90.0);
    let layout = |wall: f64| own(wall).mesh_layout(&Fineness::USUAL).unwrap();
    let base = 0.009;
    let other = (1..200).map(|step| base * (1.0 - 1e-3 * f64::from(step)));
    let changed = other.into_iter().find(|wall| layout(*wall) != layout(base)).unwrap();
    let held = |wall: f64| {
        let layout = Some(std::sync::Arc::new(layout(base)));
        usual(&SeatWall { layout, ..own(wall) }).local[RX][RX]
    };
    assert_eq!(held(base), usual(&own(base)).local[RX][RX]);
    // Of three points the middle one lies on the line of its neighbors, with the curve of a power of the wall.
    let ends = [changed * 0.999, changed * 1.001].map(held);
    let middle = held(changed);
    assert_relative_eq!(middle, 0.5 * (ends[0] + ends[1]), max_relative = 2e-5);
    // A layout of another kind of seat is left alone.
    let clamp = clamped(seat(THICK, 0.18, 120.0));
    let other = SeatWall { layout: Some(std::sync::Arc::new(layout(base))), ..clamp.clone() };
    let fineness = Fineness::USUAL.scaled(2.0);
    let unknowns = |seat: SeatWall| seat.compliance(&fineness).unwrap().unknowns;
    assert_eq!(unknowns(other), unknowns(clamp));
}

#[test]
fn a_narrow_bracket_dents_the_wall_and_a_clamp_round_it_stiffens_its_length() {
    let (bracket, clamp) = (usual(&seat(THIN, 0.09, 90.0)), usual(&clamped(seat(THICK, 0.18, 120.0))));
    assert!(bracket.extra[RX][RX] > 0.0 && bracket.local[RX][RX] > bracket.extra[RX][RX]);
    assert!(clamp.extra[RX][RX] < 0.0 && clamp.local[RX][RX] > 0.0);
    assert!(clamp.stiffened_share > bracket.stiffened_share && bracket.stiffened_share > 0.0);
}

#[test]
fn a_tube_held_all_round_is_a_beam_from_edge_to_edge() {
    for size in [THICK, THIN] {
        let held = seat(size, 0.09, 359.9);
        let found = usual(&held);
        // w/(4·E·I) of two cantilevers shorter by w/2 each; the wall beside the edge cannot shrink across either, which
        // stiffens over a part of √(r t).
        let expected = -held.width / (4.0 * bending_stiffness(&held));
        assert_relative_eq!(found.extra[RX][RX], expected, max_relative = 0.06);
        assert_relative_eq!(found.stiffened_share, 1.0, epsilon = 0.06);
        // The length beside it bends, shears, twists and stretches as a Timoshenko beam.
        for i in 0..6 {
            let apart = found.local[i][i] / found.whole[i][i];
            assert!(apart.abs() < 0.01, "{size:?} {i}: {apart}");
        }
    }
}

#[test]
fn compliance_converges_with_smaller_elements() {
    let narrow = seat(THIN, 0.09, 90.0);
    let [coarse, usual, fine] = [2.0, 1.0, 0.5]
        .map(|factor| narrow.compliance(&Fineness::USUAL.scaled(factor)).unwrap().local[RX][RX]);
    // At the corners of a rigid bracket stress is infinite, so that the order stays below 2.
    let extrapolated = fine + (fine - usual) / 2.0;
    println!("{coarse:e} {usual:e} {fine:e} {extrapolated:e}");
    assert!((coarse - extrapolated).abs() > 1.5 * (usual - extrapolated).abs());
    assert_relative_eq!(usual, extrapolated, max_relative = 0.02);
    assert_relative_eq!(fine, extrapolated, max_relative = 0.01);
}

#[test]
fn more_wall_beside_the_seat_does_not_count() {
    for narrow in [seat(THIN, 0.09, 90.0), clamped(seat(THICK, 0.18, 120.0))] {
        let longer = Fineness { beside: 6.0, ..Fineness::USUAL };
        let (one, other) = (usual(&narrow), narrow.compliance(&longer).unwrap());
        println!("{:e} {:e}", one.local[RX][RX], other.local[RX][RX]);
        assert_relative_eq!(one.local[RX][RX], other.local[RX][RX], max_relative = 0.02);
        assert_relative_eq!(one.stiffened_share, other.stiffened_share, epsilon = 0.02);
    }
}

#[test]
fn a_bracket_that_spreads_its_force_is_softer_and_stiffens_nothing() {
    let rigid = seat(THIN, 0.09, 90.0);
    let spread = SeatWall { tie: Tie::Spread, ..rigid.clone() };
    let (rigid, spread) = (usual(&rigid), usual(&spread));
    for i in 0..6 {
        assert!(spread.whole[i][i] > rigid.whole[i][i], "{i}");
    }
    assert!(spread.stiffened_share.abs() < 0.02, "{}", spread.stiffened_share);
}

#[test]
fn flexibility_falls_with_wall_width_and_breadth() {
    let local = |size, width, degrees| usual(&seat(size, width, degrees)).local[RX][RX];
    let base = local(THIN, 0.09, 90.0);
    assert!(local((0.1524, 0.012), 0.09, 90.0) < base);
    assert!(local(THIN, 0.12, 90.0) < base);
    assert!(local(THIN, 0.09, 120.0) < base);
}

#[test]
fn what_cannot_be_meshed_is_refused_with_its_place() {
    let refused = |seat: SeatWall, fineness: Fineness| seat.compliance(&fineness).unwrap_err();
    let broad = SeatWall { breadth: 0.5, ..seat(THIN, 0.09, 90.0) };
    assert!(matches!(refused(broad, Fineness::USUAL), WallError::PatchTooBroad { patch: "bracket", .. }));
    let meeting = clamped(seat(THIN, 0.09, 200.0));
    let said = refused(meeting, Fineness::USUAL).to_string();
    assert!(said.contains("the saddle and the clamp block overlap"), "{said}");
    let coarse = refused(seat(THIN, 0.09, 90.0), Fineness::USUAL.scaled(6.0));
    assert!(matches!(coarse, WallError::TooCoarse { .. }), "{coarse}");
    let solid = refused(seat((0.1, 0.04), 0.09, 90.0), Fineness::USUAL);
    assert!(matches!(solid, WallError::TooThick { .. }), "{solid}");
    assert_eq!(usual(&seat((0.127, 0.0127), 0.09, 90.0)).caveats.len(), 1);
    assert!(usual(&seat(THIN, 0.09, 90.0)).caveats.is_empty());
}
