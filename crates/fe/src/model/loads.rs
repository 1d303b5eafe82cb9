//! Loads of a structure, several cases side by side.

use nalgebra::{Vector3, Vector6};

use crate::FeError;
use crate::element::shell::ShellMember;
use crate::linalg::Columns;
use crate::model::structure::Structure;
use crate::node::coupling::{Attachment, brought};
use crate::node::freedom::Freedom;
use crate::node::ids::{BeamId, NodeId, ShellId};

/// Loads of a structure, one column for each load case.
#[derive(Debug, Clone)]
pub struct Loads {
    nodes: usize,
    columns: usize,
    /// (column, node, force and moment)
    nodal: Vec<(usize, NodeId, Vector6<f64>)>,
    /// (column, beam, load per length in global axes)
    lines: Vec<(usize, BeamId, Vector3<f64>)>,
}

impl Loads {
    /// `columns` load cases without any load.
    pub fn new(structure: &Structure, columns: usize) -> Self {
        Loads { nodes: structure.node_count(), columns, nodal: Vec::new(), lines: Vec::new() }
    }

    /// Adds a force (N) at a point.
    pub fn add_force(&mut self, column: usize, at: &Attachment, force: [f64; 3]) {
        self.add(column, at, &Vector6::new(force[0], force[1], force[2], 0.0, 0.0, 0.0));
    }

    /// Adds a moment (N m) at a point.
    pub fn add_moment(&mut self, column: usize, at: &Attachment, moment: [f64; 3]) {
        self.add(column, at, &Vector6::new(0.0, 0.0, 0.0, moment[0], moment[1], moment[2]));
    }

    /// Adds a uniform load per length (N/m, global axes) on a beam.
    pub fn add_line_load(&mut self, structure: &Structure, column: usize, beam: BeamId, load: [f64; 3]) {
        let q = Vector3::from(load);
        let member = &structure.beams[beam.0];
        let (start, end) = member.equivalent_loads(&q);
        self.add_nodal(column, member.coupling.near, &start);
        if let Some(far) = member.coupling.far {
            self.add_nodal(column, far, &end);
        }
        self.lines.push((column, beam, q));
    }

    /// Adds a pressure (Pa) on a shell's middle surface, positive along its normal.
    pub fn add_pressure(&mut self, structure: &Structure, column: usize, shell: ShellId, pressure: f64) {
        self.add_corner_forces(structure, column, shell, |member| member.pressed(pressure));
    }

    /// Adds a uniform load per area (Pa, global axes) on a shell's middle surface.
    pub fn add_area_load(&mut self, structure: &Structure, column: usize, shell: ShellId, load: [f64; 3]) {
        let load = Vector3::from(load);
        self.add_corner_forces(structure, column, shell, |member| member.areas().map(|area| load * area));
    }

    /// Adds a uniform load per length (N/m, global axes) on a shell's edge from one corner, 0 to 3, to the next.
    pub fn add_edge_load(
        &mut self,
        structure: &Structure,
        column: usize,
        (shell, edge): (ShellId, usize),
        load: [f64; 3],
    ) {
        self.add_corner_forces(structure, column, shell, |member| member.pulled(edge, &load.into()));
    }

    fn add_corner_forces(
        &mut self,
        structure: &Structure,
        column: usize,
        shell: ShellId,
        forces: impl Fn(&ShellMember) -> [Vector3<f64>; 4],
    ) {
        let member = &structure.shells[shell.0];
        for (node, force) in member.nodes.into_iter().zip(forces(member)) {
            self.add_force(column, &Attachment::at(node), force.into());
        }
    }

    /// Adds the weight of every mass under an acceleration field (m/s², global axes).
    pub fn add_gravity(&mut self, structure: &Structure, column: usize, gravity: [f64; 3]) {
        let field = Vector3::from(gravity);
        for beam in 0..structure.beams.len() {
            let q = field * structure.beams[beam].mass_per_length;
            if q != Vector3::zeros() {
                self.add_line_load(structure, column, BeamId(beam), q.into());
            }
        }
        for shell in 0..structure.shells.len() {
            let wall = &structure.shells[shell].wall;
            let load = field * (wall.density * wall.thickness);
            if load != Vector3::zeros() {
                self.add_area_load(structure, column, ShellId(shell), load.into());
            }
        }
        for lump in &structure.masses {
            self.add_nodal(column, lump.place.node, &Structure::lump_weight(lump, &field));
        }
    }

    fn add(&mut self, column: usize, at: &Attachment, force: &Vector6<f64>) {
        self.add_nodal(column, at.node, &brought(force, &Vector3::from(at.arm)));
    }

    fn add_nodal(&mut self, column: usize, node: NodeId, force: &Vector6<f64>) {
        assert!(column < self.columns, "load column {column} of {}", self.columns);
        self.nodal.push((column, node, *force));
    }

    /// Load per length on every beam when the columns act with the given factors.
    pub(crate) fn combined_lines(&self, beams: usize, factors: &[f64]) -> Vec<Vector3<f64>> {
        let mut combined = vec![Vector3::zeros(); beams];
        for (column, beam, q) in &self.lines {
            combined[beam.0] += q * factors[*column];
        }
        combined
    }

    /// Nodal loads, those of line loads included, when the columns act with the given factors.
    pub(crate) fn combined_nodal(&self, factors: &[f64]) -> Vec<Vector6<f64>> {
        let mut combined = vec![Vector6::zeros(); self.nodes];
        for (column, node, force) in &self.nodal {
            combined[node.0] += force * factors[*column];
        }
        combined
    }

    /// Right-hand sides of the equilibrium equations.
    ///
    /// # Errors
    /// [`FeError::ImpossibleLoad`] when a load or the sum of the loads on a freedom is not finite.
    pub(crate) fn right_hand_sides(&self, structure: &Structure) -> Result<Columns, FeError> {
        let mut sides = Columns::zeros(6 * self.nodes, self.columns);
        for (column, node, force) in &self.nodal {
            for freedom in Freedom::ALL {
                let i = freedom.index();
                let sum = &mut sides.row_mut(6 * node.0 + i)[*column];
                *sum += force[i];
                if !sum.is_finite() {
                    let station = structure.station(*node).to_owned();
                    return Err(FeError::ImpossibleLoad { station, freedom, value: *sum });
                }
            }
        }
        Ok(sides)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::StaticSystem;

    fn refusal(add: impl FnOnce(&mut Loads, NodeId)) -> Option<FeError> {
        let mut structure = Structure::new();
        structure.add_node("seat", [0.0; 3]);
        let hub = structure.add_node("hub", [0.0, 1.0, 0.0]);
        structure.nodes().for_each(|node| structure.hold(node, &Freedom::ALL));
        let mut loads = Loads::new(&structure, 2);
        add(&mut loads, hub);
        let mut system = StaticSystem::new();
        system.prepare(&structure).unwrap();
        system.solve(&structure, loads).err()
    }

    #[test]
    fn a_load_that_is_not_finite_is_refused_by_station_and_freedom() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let force =
                refusal(|loads, hub| loads.add_force(0, &Attachment::at(hub), [0.0, 0.0, value])).unwrap();
            let expected =
                format!("the load at hub in displacement along Z is {value}; a finite value is accepted");
            assert_eq!(force.to_string(), expected);
            let moment =
                refusal(|loads, hub| loads.add_moment(1, &Attachment::at(hub), [0.0, value, 0.0])).unwrap();
            assert!(matches!(moment, FeError::ImpossibleLoad { freedom: Freedom::Ry, .. }), "{moment}");
        }
    }

    #[test]
    fn loads_whose_sum_overflows_are_refused() {
        let twice = refusal(|loads, hub| {
            for _ in 0..2 {
                loads.add_force(1, &Attachment::at(hub), [f64::MAX, 0.0, 0.0]);
            }
        });
        assert!(matches!(twice, Some(FeError::ImpossibleLoad { freedom: Freedom::Ux, .. })), "{twice:?}");
        assert_eq!(
            refusal(|loads, hub| loads.add_force(1, &Attachment::at(hub), [f64::MAX, 0.0, 0.0])),
            None
        );
    }
}
