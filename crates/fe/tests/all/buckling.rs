//! Linear buckling of shells.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use axlebow_fe::{
    Attachment, Buckling, FeError, Freedom, Loads, NodeId, Spring, StaticSystem, Structure, Wall, buckling,
};

const E: f64 = 200e9;
const LENGTH: f64 = 1.0;
const WIDTH: f64 = 0.02;
const THICKNESS: f64 = 0.01;

/// A flat bar along Y of `parts` shells, clamped at its start, without Poisson's ratio.
fn bar(parts: usize) -> (Structure, [NodeId; 2]) {
    let mut structure = Structure::new();
    let mut row = |j: usize| {
        let place = |i: usize| [(i as f64 - 0.5) * WIDTH, LENGTH * j as f64 / parts as f64, 0.0];
        [0, 1].map(|i| structure.add_node(format!("row {j}"), place(i)))
    };
    let rows: Vec<_> = (0..=parts).map(&mut row).collect();
    let quads: Vec<_> =
        rows.windows(2).map(|pair| [pair[0][0], pair[0][1], pair[1][1], pair[1][0]]).collect();
    structure.add_surface(&quads, &Wall::new(THICKNESS, E, 0.0)).unwrap();
    rows[0].iter().for_each(|node| structure.hold(*node, &Freedom::ALL));
    (structure, rows[parts])
}

fn pressed(structure: &Structure, ends: [NodeId; 2], force: f64, count: usize) -> Result<Buckling, FeError> {
    let mut loads = Loads::new(structure, 1);
    for node in ends {
        loads.add_force(0, &Attachment::at(node), [0.0, -0.5 * force, 0.0]);
    }
    let mut system = StaticSystem::new();
    system.prepare(structure)?;
    let solved = system.solve(structure, loads)?;
    buckling(&solved.state(structure, 0), count)
}

/// Euler's π²·E·I/(4·L²) of a cantilever, and 9 and 25 times it.
fn euler(second_moment: f64) -> f64 {
    PI * PI * E * second_moment / (4.0 * LENGTH * LENGTH)
}

#[test]
fn a_bar_of_shells_buckles_as_eulers_column_in_both_planes() {
    let (structure, ends) = bar(32);
    let found = pressed(&structure, ends, 1.0, 3).unwrap();
    let (flat, edgewise) = (WIDTH * THICKNESS.powi(3) / 12.0, THICKNESS * WIDTH.powi(3) / 12.0);
    // Chords of a cosine of 1/128 of a wave; shear takes P/(κGA), 1e-4, off.
    for (mode, expected) in found.modes.iter().zip([euler(flat), euler(edgewise), 9.0 * euler(flat)]) {
        assert_relative_eq!(mode.factor, expected, max_relative = 3e-3);
    }
    assert!(found.is_complete());
    assert_eq!(found.counted_below, Some(2));
    assert!(
        found.modes[0].motion(ends[0])[2].abs() > 0.999 && found.modes[1].motion(ends[0])[0].abs() > 0.99
    );
}

#[test]
fn the_factor_falls_as_the_load_grows() {
    let (structure, ends) = bar(8);
    let factor = |force| pressed(&structure, ends, force, 1).unwrap().modes[0].factor;
    assert_relative_eq!(factor(1.0), 1000.0 * factor(1000.0), max_relative = 1e-9);
}

#[test]
fn a_pulled_bar_and_one_without_load_do_not_buckle() {
    let (structure, ends) = bar(8);
    // Pulled, its rotations still let a few fibers shorten: nothing below 100 times the load that presses it flat.
    let pulled = pressed(&structure, ends, -1.0, 1).unwrap();
    let euler = euler(WIDTH * THICKNESS.powi(3) / 12.0);
    assert!(pulled.modes.iter().all(|mode| mode.factor > 100.0 * euler), "{:?}", pulled.modes);
    assert!(pressed(&structure, ends, 0.0, 2).unwrap().modes.is_empty());
}

#[test]
fn a_spring_that_holds_the_end_makes_the_bar_stronger() {
    let (mut structure, ends) = bar(32);
    let free = pressed(&structure, ends, 1.0, 1).unwrap().modes[0].factor;
    for node in ends {
        let rates = [1e9, 0.0, 1e9, 0.0, 0.0, 0.0];
        structure.add_spring(Spring::to_ground(Attachment::at(node), rates)).unwrap();
    }
    // Clamped and pinned: 4.4934² against (π/2)².
    let held = pressed(&structure, ends, 1.0, 1).unwrap().modes[0].factor;
    assert_relative_eq!(held / free, (4.493_41 / (0.5 * PI)).powi(2), max_relative = 5e-3);
}

#[test]
fn what_nothing_holds_is_named() {
    let mut structure = Structure::new();
    let square = [[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 1.0, 0.0], [0.0, 1.0, 0.0]];
    let nodes = square.map(|at| structure.add_node("loose", at));
    structure.add_surface(&[nodes], &Wall::new(0.1, E, 0.3)).unwrap();
    let refused = pressed(&structure, [nodes[0], nodes[1]], 1.0, 1).unwrap_err();
    assert!(matches!(refused, FeError::Unsupported { .. }), "{refused}");
}
