//! How far walls go along with the weld that joins them: formulas of plane stress compared with shells.

use std::f64::consts::FRAC_PI_2;

use crate::example;
use axlebow_axle::{plate_give_along_a_line, plate_give_along_an_edge};
use axlebow_fe::{Attachment, Freedom, Loads, NodeId, StaticSystem, Structure, Wall};

/// A quarter of a wave of 1/κ = 40 mm, eight lengths of decay wide.
const KAPPA: f64 = 25.0;
const THICKNESS: f64 = 0.008;
const ALONG: usize = 16;
const ACROSS: usize = 60;

/// Motion at y = 0 along a force q cos κy on the edge x = 0 of a plate of shells, times t κ/q; `lined` where the plate
/// goes on beyond the edge, so that each half carries half of the force and the edge keeps its place across it.
fn give_of_shells(lined: bool) -> f64 {
    let steel = example::steel();
    let (step, width) = (FRAC_PI_2 / KAPPA / ALONG as f64, 8.0 / KAPPA);
    let mut structure = Structure::new();
    let place = |i: usize, j: usize| [width * (i as f64 / ACROSS as f64).powf(1.5), step * j as f64, 0.0];
    let nodes: Vec<Vec<NodeId>> = (0..=ACROSS)
        .map(|i| (0..=ALONG).map(|j| structure.add_node("plate", place(i, j))).collect())
        .collect();
    let quads: Vec<[NodeId; 4]> = (0..ACROSS * ALONG)
        .map(|k| (k / ALONG, k % ALONG))
        .map(|(i, j)| [nodes[i][j], nodes[i + 1][j], nodes[i + 1][j + 1], nodes[i][j + 1]])
        .collect();
    let wall = Wall::new(THICKNESS, steel.elastic_modulus(), steel.poisson_ratio());
    structure.add_surface(&quads, &wall).unwrap();
    for (i, row) in nodes.iter().enumerate() {
        row.iter().for_each(|node| structure.hold(*node, &[Freedom::Uz, Freedom::Rx, Freedom::Ry]));
        structure.hold(row[0], &[Freedom::Ux]);
        structure.hold(row[ALONG], &[Freedom::Uy]);
        if i == 0 && lined {
            row.iter().for_each(|node| structure.hold(*node, &[Freedom::Ux]));
        }
    }
    let mut loads = Loads::new(&structure, 1);
    let carried = if lined { 0.5 } else { 1.0 };
    for (j, node) in nodes[0].iter().enumerate() {
        let share = if j == 0 || j == ALONG { 0.5 } else { 1.0 };
        let force = carried * share * step * (KAPPA * step * j as f64).cos();
        loads.add_force(0, &Attachment::at(*node), [0.0, force, 0.0]);
    }
    let mut system = StaticSystem::new();
    system.prepare(&structure).unwrap();
    system.solve(&structure, loads).unwrap().of(nodes[0][0], 0)[1] * THICKNESS * KAPPA
}

#[test]
fn shells_go_along_with_a_weld_as_wide_plates_do() {
    let steel = example::steel();
    for (lined, formula) in
        [(true, plate_give_along_a_line(&steel)), (false, plate_give_along_an_edge(&steel))]
    {
        let shells = give_of_shells(lined);
        assert!((shells / formula - 1.0).abs() < 0.01, "{shells:e} {formula:e}");
    }
}
