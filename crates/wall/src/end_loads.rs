//! Forces on the end of a piece of tube, spread as beam theory spreads them, and the motions that go with them.
//!
//! A load that is spread needs no constraint: the end stays free to warp and to change its shape, and the motion along
//! a load is the work of its spread on the wall (unit-load theorem), a mean of the wall's motions.

use axlebow_fe::{Attachment, Displacements, Loads, NodeId, Structure};
use axlebow_sections::SectionProperties;
use nalgebra::Vector3;

use crate::tube_mesh::TubeMesh;

/// Unit forces along and unit moments about X, Y, Z on a ring of nodes.
#[derive(Debug)]
pub(crate) struct EndLoads {
    nodes: Vec<NodeId>,
    /// For each unit and node: force and moment.
    units: [Vec<[Vector3<f64>; 2]>; 6],
    /// Shares of the area that carry shear along X and Z by the energy of their flow.
    pub shear_shares: [f64; 2],
}

impl EndLoads {
    /// The loads of a ring.
    pub(crate) fn of(mesh: &TubeMesh, ring: usize, section: &SectionProperties) -> Self {
        let nodes = mesh.ring(ring).to_vec();
        let wall = RingWall::of(mesh, &nodes);
        let (i_x, i_z) = (section.second_moment_x, section.second_moment_z);
        let axial = wall.traction(|_, _| [1.0 / section.area, 0.0]);
        let about_x = wall.traction(|place, normal| [-place[2] / i_x, -normal[2] / i_x]);
        let about_z = wall.traction(|place, normal| [place[0] / i_z, normal[0] / i_z]);
        let flows = [0, 2].map(|axis| wall.shear_flow(axis));
        let shear_shares = [0, 1].map(|i| 1.0 / (section.area * wall.flow_energy(&flows[i])));
        let twist = wall.scaled_torque(vec![1.0; nodes.len()]);
        let units = [
            wall.along_the_wall(&flows[0]),
            axial,
            wall.along_the_wall(&flows[1]),
            about_x,
            wall.along_the_wall(&twist),
            about_z,
        ];
        EndLoads { nodes, units, shear_shares }
    }

    /// Adds a unit load times a factor to a load column.
    pub(crate) fn add_times(&self, loads: &mut Loads, column: usize, (unit, factor): (usize, f64)) {
        for (node, [force, moment]) in self.nodes.iter().zip(&self.units[unit]) {
            loads.add_force(column, &Attachment::at(*node), (force * factor).into());
            loads.add_moment(column, &Attachment::at(*node), (moment * factor).into());
        }
    }

    /// Motion along a unit load: its work.
    pub(crate) fn motion(&self, solved: &Displacements, column: usize, unit: usize) -> f64 {
        let each = self.nodes.iter().zip(&self.units[unit]).map(|(node, [force, moment])| {
            let [x, y, z, rx, ry, rz] = solved.of(*node, column);
            force.dot(&Vector3::new(x, y, z)) + moment.dot(&Vector3::new(rx, ry, rz))
        });
        each.sum()
    }
}

/// The wall of a ring, edge by edge from node to node.
struct RingWall {
    places: Vec<Vector3<f64>>,
    normals: Vec<Vector3<f64>>,
    /// Mean curvature of each edge, 1/m.
    curvatures: Vec<f64>,
    thickness: f64,
}

impl RingWall {
    fn of(mesh: &TubeMesh, nodes: &[NodeId]) -> Self {
        let structure: &Structure = &mesh.structure;
        let place = |node: &NodeId| {
            let [x, _, z] = structure.position(*node);
            Vector3::new(x, 0.0, z)
        };
        let normal = |round: &f64| {
            let [x, z] = mesh.line.at(*round).normal;
            Vector3::new(x, 0.0, z)
        };
        let ends = mesh.round.iter().zip(mesh.round.iter().cycle().skip(1));
        let curvature = |(from, to): (&f64, &f64)| {
            mesh.line.turn(*from, *to) / (to - from).rem_euclid(mesh.line.length())
        };
        RingWall {
            places: nodes.iter().map(place).collect(),
            normals: mesh.round.iter().map(normal).collect(),
            curvatures: ends.map(curvature).collect(),
            thickness: mesh.line.thickness,
        }
    }

    /// Numbers of each edge's nodes.
    fn edges(&self) -> impl Iterator<Item = [usize; 2]> {
        let count = self.places.len();
        (0..count).map(move |k| [k, (k + 1) % count])
    }

    fn edge(&self, [from, to]: [usize; 2]) -> Vector3<f64> {
        self.places[to] - self.places[from]
    }

    /// Forces and moments at the nodes of a stress along Y of `c₀ + c₁·ζ`, ζ outward from the middle of the wall:
    /// `n = c₀·t + c₁·κ·t³/12` and `m = (c₁ + κ·c₀)·t³/12` per length.
    fn traction(&self, stress: impl Fn(&Vector3<f64>, &Vector3<f64>) -> [f64; 2]) -> Vec<[Vector3<f64>; 2]> {
        let (t, cube) = (self.thickness, self.thickness.powi(3) / 12.0);
        let per_length = |k: usize, curvature: f64| {
            let [c0, c1] = stress(&self.places[k], &self.normals[k]);
            let (n, m) = (c0 * t + c1 * curvature * cube, (c1 + curvature * c0) * cube);
            [Vector3::y() * n, self.normals[k].cross(&Vector3::y()) * m]
        };
        let mut nodal = vec![[Vector3::zeros(); 2]; self.places.len()];
        for ([from, to], curvature) in self.edges().zip(&self.curvatures) {
            let sixth = self.edge([from, to]).norm() / 6.0;
            let [one, next] = [from, to].map(|k| per_length(k, *curvature));
            for i in 0..2 {
                nodal[from][i] += (one[i] * 2.0 + next[i]) * sixth;
                nodal[to][i] += (one[i] + next[i] * 2.0) * sixth;
            }
        }
        nodal
    }

    /// Forces at the nodes of a flow (N/m) along each edge.
    fn along_the_wall(&self, flow: &[f64]) -> Vec<[Vector3<f64>; 2]> {
        let mut nodal = vec![[Vector3::zeros(); 2]; self.places.len()];
        for ([from, to], flow) in self.edges().zip(flow) {
            let half = self.edge([from, to]) * (0.5 * flow);
            nodal[from][0] += half;
            nodal[to][0] += half;
        }
        nodal
    }

    /// Flow of a unit shear force along an axis (0 for X, 2 for Z) that does not twist: `dq/ds = −t·z/I`, each edge its
    /// mean.
    fn shear_flow(&self, axis: usize) -> Vec<f64> {
        let mut flow = Vec::with_capacity(self.places.len());
        let mut here = 0.0;
        for [from, to] in self.edges() {
            let (one, next, length) =
                (self.places[from][axis], self.places[to][axis], self.edge([from, to]).norm());
            // The first moment grows as the square along an edge.
            flow.push(here - length * (2.0 * one + next) / 6.0);
            here -= 0.5 * length * (one + next);
        }
        let torque = self.torque(&flow) / self.torque(&vec![1.0; flow.len()]);
        flow.iter_mut().for_each(|q| *q -= torque);
        let force: f64 = self.edges().zip(&flow).map(|(edge, q)| self.edge(edge)[axis] * q).sum();
        flow.iter().map(|q| q / force).collect()
    }

    fn scaled_torque(&self, flow: Vec<f64>) -> Vec<f64> {
        let torque = self.torque(&flow);
        flow.iter().map(|q| q / torque).collect()
    }

    /// Torque about Y of a flow.
    fn torque(&self, flow: &[f64]) -> f64 {
        let each =
            self.edges().zip(flow).map(|(edge, q)| self.places[edge[0]].cross(&self.edge(edge))[1] * q);
        each.sum()
    }

    /// `∫q²/t ds`.
    fn flow_energy(&self, flow: &[f64]) -> f64 {
        self.edges().zip(flow).map(|(edge, q)| q * q * self.edge(edge).norm() / self.thickness).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tube_mesh::{Fineness, TubePiece};
    use axlebow_sections::{Material, Profile, RectangularTube, RoundTube};

    /// Resultants (force, moment) of the six unit loads on the ring at Y = 1, and the shear shares.
    fn resultants(profile: &Profile) -> ([[f64; 6]; 6], [f64; 2]) {
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let piece = TubePiece { profile, material: &material, half_length: 1.0, patches: &[], layout: None };
        let mesh = TubeMesh::of(&piece, &Fineness::USUAL).unwrap();
        let loads = EndLoads::of(&mesh, mesh.along.len() - 1, &profile.properties(0.3));
        let sum = |unit: usize| {
            let mut total = [0.0; 6];
            for (node, [force, moment]) in loads.nodes.iter().zip(&loads.units[unit]) {
                let [x, _, z] = mesh.structure.position(*node);
                let about = Vector3::new(x, 0.0, z).cross(force) + moment;
                (0..3).for_each(|i| total[i] += force[i]);
                (0..3).for_each(|i| total[3 + i] += about[i]);
            }
            total
        };
        (std::array::from_fn(sum), loads.shear_shares)
    }

    #[test]
    fn each_unit_load_adds_up_to_one() {
        let round: Profile = RoundTube::new(0.127, 0.0127).unwrap().into();
        let rounded: Profile = RectangularTube::new(0.12, 0.14, 0.0095, 0.022).unwrap().into();
        for profile in [round, rounded] {
            let (found, _) = resultants(&profile);
            for (unit, row) in found.iter().enumerate() {
                for (i, value) in row.iter().enumerate() {
                    let expected = if i == unit { 1.0 } else { 0.0 };
                    // Area and second moments of a polygon are not quite those of the section.
                    assert!((value - expected).abs() < 0.01, "{profile:?} {unit} {i}: {value}");
                }
            }
        }
    }

    #[test]
    fn half_of_a_thin_round_tube_carries_its_shear() {
        let (_, shares) = resultants(&RoundTube::new(0.12, 0.001).unwrap().into());
        shares.iter().for_each(|share| assert!((share - 0.5).abs() < 2e-3, "{share}"));
    }
}
