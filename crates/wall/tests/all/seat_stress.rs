//! Hot spots, crush and buckling of the wall at a seat beside closed forms.

use crate::example::seat;
use approx::assert_relative_eq;
use axlebow_wall::{Fineness, SeatResultants, SeatWall, UBolts};

const THIN: (f64, f64) = (0.1524, 0.009);

fn bent(moment: f64) -> SeatResultants {
    let six = [0.0, 0.0, 0.0, moment, 0.0, 0.0];
    SeatResultants { before: six, after: six }
}

/// Stress on the outer fiber under a bending moment.
fn fiber(seat: &SeatWall, moment: f64) -> f64 {
    -moment * 0.5 * seat.profile.height() / seat.profile.properties(0.3).second_moment_x
}

/// Edge bending of a cylinder that is held where it is stretched: at a distance x from the edge
/// `σ_b = σ·ν·√(3/(1 − ν²))·e^−βx·(cos βx − sin βx)`, `β⁴ = 3(1 − ν²)/(r t)²` (S. Timoshenko & S. Woinowsky-Krieger, Theory
/// of Plates and Shells, 2nd ed. 1959, art. 114-115; from memory), extrapolated as the hot spot is.
fn edge_bending(radius: f64, thickness: f64) -> f64 {
    let rest = 1.0 - 0.3_f64.powi(2);
    let beta = (3.0 * rest).powf(0.25) / (radius * thickness).sqrt();
    let at = |x: f64| (-beta * x).exp() * ((beta * x).cos() - (beta * x).sin());
    let [near, far] = [0.4 * thickness, thickness].map(at);
    0.3 * (3.0 / rest).sqrt() * (near + (near - far) * 0.4 / 0.6)
}

#[test]
fn the_hot_spot_of_a_tube_held_all_round_is_its_edge_bending() {
    for (outer, wall) in [THIN, (0.1524, 0.004)] {
        let held = seat((outer, wall), 0.09, 359.9);
        let hot = held.solved(&Fineness::USUAL).unwrap().hot_spot(&bent(20e3)).unwrap();
        let radius = 0.5 * (outer - wall);
        let expected = fiber(&held, 20e3).abs() * (1.0 + 2.0 * radius / outer * edge_bending(radius, wall));
        println!("{:.4}", hot.stress.abs() / expected);
        // Elements of 0.4 t fit a plane to a stress that bends over them.
        assert_relative_eq!(hot.stress.abs(), expected, max_relative = 0.08);
        // Under a positive moment the top is pressed and the bottom pulled.
        assert_eq!(hot.stress < 0.0, (hot.clock - 0.5).abs() > 0.25);
        assert_relative_eq!(hot.along.abs(), 0.045, epsilon = 1e-9);
    }
}

#[test]
fn a_bracket_on_the_pulled_side_raises_the_stress_at_its_toe() {
    let narrow = seat(THIN, 0.09, 90.0);
    let solved = narrow.solved(&Fineness::USUAL).unwrap();
    let hot = solved.hot_spot(&bent(20e3)).unwrap();
    let raised = hot.stress / fiber(&narrow, 20e3).abs();
    assert!((1.1..2.0).contains(&raised), "{raised}");
    assert_eq!(hot.patch, "bracket");
    let turned = solved.hot_spot(&bent(-20e3)).unwrap();
    assert_relative_eq!(turned.stress, -hot.stress, max_relative = 1e-9);
}

#[test]
fn a_long_tube_pressed_along_its_length_flattens_as_a_ring() {
    // S. Timoshenko, Strength of Materials, Part I: 0.1488·P·r³/(E'·I) on the load and 0.1366 across it, per length of a
    // long tube, E' = E/(1 − ν²); shear and hoop strain of a ring add 1 %.
    let (outer, wall, width) = (0.1, 0.004, 1.2);
    let long = seat((outer, wall), width, 8.0);
    let pressed = SeatWall { clamp: Some(UBolts { diameter: 0.02, count: 2 }), ..long };
    let crush = pressed.crush(&Fineness { beside: 1.0, ..Fineness::USUAL }).unwrap().unwrap();
    let (radius, stiffness) = (0.5 * (outer - wall), 200e9 / 0.91 * wall.powi(3) / 12.0);
    let ring = radius.powi(3) / (stiffness * width);
    println!("{:.4} {:.4}", crush.flattening / (0.1488 * ring), crush.widening / (0.1366 * ring));
    // The wall beside the pressed length helps, over a part of it.
    assert_relative_eq!(crush.flattening, 0.1488 * ring, max_relative = 0.1);
    assert_relative_eq!(crush.widening, 0.1366 * ring, max_relative = 0.05);
}

#[test]
fn a_thicker_wall_and_a_wider_clamp_stand_more_force() {
    let bolts = Some(UBolts { diameter: 0.022, count: 2 });
    let limit = |size, width| {
        let own = SeatWall { clamp: bolts, ..seat(size, width, 100.0) };
        own.crush(&Fineness::USUAL).unwrap().unwrap().elastic_limit(520e6)
    };
    let thin = limit(THIN, 0.12);
    assert!(limit((0.1524, 0.012), 0.12) > thin && limit(THIN, 0.18) > thin);
    assert!(seat(THIN, 0.09, 90.0).crush(&Fineness::USUAL).unwrap().is_none());
}

#[test]
fn a_thin_tube_buckles_near_the_classical_stress_and_an_axle_tube_never() {
    // E·t/(r·√(3(1 − ν²))) of a perfect cylinder (S. P. Timoshenko & J. M. Gere, Theory of Elastic Stability, 2nd ed. 1961,
    // art. 11.1, from memory). Bent, it buckles where it is pressed most, a little above; held edges and elements half as
    // long as a wave move it by as much.
    let thin = seat((0.1, 0.002), 0.05, 359.9);
    let fineness = Fineness { edge: 1.0, growth: 0.1, round: 80.0, beside: 1.5 };
    let factor = thin.buckling_factor(&bent(1e3), &fineness).unwrap().unwrap();
    let critical = 200e9 * 0.002 / (0.049 * (3.0 * 0.91_f64).sqrt());
    let ratio = factor * fiber(&thin, 1e3).abs() * 0.98 / critical;
    println!("{ratio:.3}");
    assert!((0.85..1.15).contains(&ratio), "{ratio}");
    let axle = seat(THIN, 0.09, 90.0);
    assert!(axle.buckling_factor(&bent(20e3), &Fineness::USUAL.scaled(2.0)).unwrap().unwrap() > 20.0);
}
