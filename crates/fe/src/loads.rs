//! Loads of a structure, several cases side by side.

use nalgebra::{Vector3, Vector6};

use crate::FeError;
use crate::coupling::{Attachment, brought};
use crate::freedom::Freedom;
use crate::linalg::Columns;
use crate::structure::{BeamId, NodeId, Structure};

/// Loads of a structure, one column for each load case.
#[derive(Debug, Clone)]
pub struct Loads {
    pub(crate) nodal: Columns,
    /// (column, beam, load per length in global axes)
    lines: Vec<(usize, BeamId, Vector3<f64>)>,
}

impl Loads {
    /// `columns` load cases without any load.
    pub fn new(structure: &Structure, columns: usize) -> Self {
        Loads { nodal: Columns::zeros(6 * structure.node_count(), columns), lines: Vec::new() }
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

    /// Adds the weight of every mass under an acceleration field (m/s², global axes).
    pub fn add_gravity(&mut self, structure: &Structure, column: usize, gravity: [f64; 3]) {
        let field = Vector3::from(gravity);
        for beam in 0..structure.beams.len() {
            let q = field * structure.beams[beam].mass_per_length;
            if q != Vector3::zeros() {
                self.add_line_load(structure, column, BeamId(beam), q.into());
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
        for i in 0..6 {
            self.nodal.add(6 * node.0 + i, column, force[i]);
        }
    }

    /// Load per length on every beam when the columns act with the given factors.
    pub(crate) fn combined_lines(&self, beams: usize, factors: &[f64]) -> Vec<Vector3<f64>> {
        let mut combined = vec![Vector3::zeros(); beams];
        for (column, beam, q) in &self.lines {
            combined[beam.0] += q * factors[*column];
        }
        combined
    }

    pub(crate) fn refuse_non_finite(&self, structure: &Structure) -> Result<(), FeError> {
        for node in 0..structure.node_count() {
            for freedom in Freedom::ALL {
                let row = self.nodal.row(6 * node + freedom.index());
                if let Some(value) = row.iter().copied().find(|value| !value.is_finite()) {
                    let station = structure.station(NodeId(node)).to_owned();
                    return Err(FeError::ImpossibleLoad { station, freedom, value });
                }
            }
        }
        Ok(())
    }
}

