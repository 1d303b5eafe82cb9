//! A force or moment spread over the nodes of a patch, and the mean motion that goes with it.
//!
//! With weights w_i (areas) about their center, a force F and a moment M there spread as
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
        let center: Vector3<f64> = weighted.iter().map(|(node, w)| place(*node) * (*w / total)).sum();
        let inertia: Matrix3<f64> = weighted
            .iter()
            .map(|(node, w)| {
                let r = place(*node) - center;
                (Matrix3::identity() * r.norm_squared() - r * r.transpose()) * *w
            })
            .sum();
        let inverse = inertia.try_inverse().unwrap_or_else(Matrix3::zeros);
        let unit = |number: usize| {
            let axis = Vector3::ith(number % 3, 1.0);
            // A force at the origin is the same force at the center with a moment.
            let (force, moment) =
                if number < 3 { (axis, -center.cross(&axis)) } else { (Vector3::zeros(), axis) };
            let turn = inverse * moment;
            let share =
                |(node, w): &(NodeId, f64)| (force / total + turn.cross(&(place(*node) - center))) * *w;
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tube_mesh::{Fineness, TubePiece};
    use axlebow_fe::{Freedom, StaticSystem};
    use axlebow_sections::{Material, RoundTube};

    /// w·E·t/P under a radial load at the middle of a cylinder on end diaphragms, R/t = 50 and L/R = 2, by the double
    /// Fourier series of the thin-shell energy of Koiter and Sanders (as the textbook cases have it; recomputed apart).
    const SERIES: f64 = 69.67;

    #[test]
    fn a_small_spread_load_dents_a_cylinder_as_the_series_says() {
        let (radius, thickness) = (0.1, 0.002);
        let profile = RoundTube::new(2.0 * radius + thickness, thickness).unwrap().into();
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let half = 0.5 * thickness;
        let patch = Patch { name: "load", clock: 0.0, breadth: thickness, along: [-half, half] };
        let piece = TubePiece {
            profile: &profile,
            material: &material,
            half_length: radius,
            patches: &[patch],
            layout: None,
        };
        let fineness = Fineness { edge: 0.5, growth: 0.15, round: 60.0, beside: 1.0 };
        let mut mesh = TubeMesh::of(&piece, &fineness).unwrap();
        for ring in [0, mesh.along.len() - 1] {
            for node in mesh.ring(ring).to_vec() {
                mesh.structure.hold(node, &[Freedom::Ux, Freedom::Uz]);
            }
        }
        mesh.structure.hold(mesh.nodes[0], &[Freedom::Uy]);
        let spread = Spread::over(&mesh, &patch);
        let mut loads = Loads::new(&mesh.structure, 1);
        spread.add(&mut loads, 0, (2, 1.0));
        let mut system = StaticSystem::new();
        system.prepare(&mesh.structure).unwrap();
        let solved = system.solve(&mesh.structure, loads).unwrap();
        let found = spread.motion(&solved, 0, 2) * 200e9 * thickness;
        // A load over t × t is a little less than a point's; a wall with shear gives way a little more.
        assert!((found / SERIES - 1.0).abs() < 0.03, "{found}");
    }

    #[test]
    fn a_spread_unit_is_a_unit() {
        let profile = RoundTube::new(0.15, 0.009).unwrap().into();
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let patch = Patch { name: "bracket", clock: 0.4, breadth: 0.1, along: [-0.03, 0.05] };
        let piece = TubePiece {
            profile: &profile,
            material: &material,
            half_length: 0.3,
            patches: &[patch],
            layout: None,
        };
        let mesh = TubeMesh::of(&piece, &Fineness::USUAL).unwrap();
        let spread = Spread::over(&mesh, &patch);
        for (unit, forces) in spread.units.iter().enumerate() {
            let (mut force, mut moment) = (Vector3::zeros(), Vector3::zeros());
            for (node, f) in spread.nodes.iter().zip(forces) {
                force += f;
                moment += Vector3::from(mesh.structure.position(*node)).cross(f);
            }
            for (i, value) in force.iter().chain(moment.iter()).enumerate() {
                let expected = if i == unit { 1.0 } else { 0.0 };
                assert!((value - expected).abs() < 1e-9, "{unit} {i} {value}");
            }
        }
    }
}
