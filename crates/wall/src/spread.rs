//! A force or moment spread over the nodes of a patch, and the mean motion that goes with it.
//!
//! With weights w_i (areas) about their centre, a force F and a moment M there spread as
//! `f_i = w_i·(F/Σw + J⁻¹·M × r_i)`, `J = Σw·(r²·1 − r·rᵀ)`; the motion along a unit of them is its work.

use axlebow_fe::{Attachment, Displacements, Loads, NodeId};
use nalgebra::{Matrix3, Vector3};

use crate::patch::Patch;
use crate::tube_mesh::TubeMesh;

/// Unit forces and moments about the origin, spread over a patch.
#[derive(Debug)]
pub(crate) struct Spread {
    nodes: Vec<NodeId>,
    /// For each unit and node a force.
    units: [Vec<Vector3<f64>>; 6],
}

impl Spread {
    pub(crate) fn over(mesh: &TubeMesh, patch: &Patch) -> Self {
        let weighted = mesh.areas_on(patch);
        let place = |node: NodeId| Vector3::from(mesh.structure.position(node));
        let total: f64 = weighted.iter().map(|(_, w)| w).sum();
        let centre: Vector3<f64> = weighted.iter().map(|(node, w)| place(*node) * (*w / total)).sum();
        let inertia: Matrix3<f64> = weighted
            .iter()
            .map(|(node, w)| {
                let r = place(*node) - centre;
                (Matrix3::identity() * r.norm_squared() - r * r.transpose()) * *w
            })
            .sum();
        let inverse = inertia.try_inverse().unwrap_or_else(Matrix3::zeros);
        let unit = |number: usize| {
            let axis = Vector3::ith(number % 3, 1.0);
            // A force at the origin is the same force at the centre with a moment.
            let (force, moment) =
                if number < 3 { (axis, -centre.cross(&axis)) } else { (Vector3::zeros(), axis) };
            let turn = inverse * moment;
            let share =
                |(node, w): &(NodeId, f64)| (force / total + turn.cross(&(place(*node) - centre))) * *w;
            weighted.iter().map(share).collect()
        };
        Spread { nodes: weighted.iter().map(|(node, _)| *node).collect(), units: std::array::from_fn(unit) }
    }

    /// Adds a unit times a factor to a load column.
    pub(crate) fn add(&self, loads: &mut Loads, column: usize, (unit, factor): (usize, f64)) {
        for (node, force) in self.nodes.iter().zip(&self.units[unit]) {
            loads.add_force(column, &Attachment::at(*node), (force * factor).into());
        }
    }

    /// Motion along a unit: its work.
    pub(crate) fn motion(&self, solved: &Displacements, column: usize, unit: usize) -> f64 {
        let each = self.nodes.iter().zip(&self.units[unit]).map(|(node, force)| {
            let [x, y, z, ..] = solved.of(*node, column);
            force.dot(&Vector3::new(x, y, z))
        });
        each.sum()
    }
}
