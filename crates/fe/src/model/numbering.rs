//! Which equation each freedom has, shared by stiffness and mass.

use std::collections::BTreeSet;

use nalgebra::{Matrix6, Vector6};

use crate::FeError;
use crate::element::shell::ShellMatrix;
use crate::linalg::{Columns, PivotFailure, SymmetricMatrix, is_narrow};
use crate::model::structure::Structure;
use crate::model::ties::Ties;
use crate::node::coupling::Coupling;
use crate::node::freedom::Freedom;
use crate::node::ids::NodeId;

/// Marks a freedom without an equation: held, or carried by a hub.
const HELD: usize = usize::MAX;

/// Equations of the free freedoms, in the order of the nodes.
#[derive(Debug, Default)]
pub(crate) struct Numbering {
    /// Equation of each freedom of each node.
    numbers: Vec<usize>,
    order: usize,
    pub(crate) ties: Ties,
}

impl Numbering {
    /// The numbering of a structure.
    pub(crate) fn of(structure: &Structure) -> Self {
        let mut numbering = Numbering::default();
        numbering.renumber(structure);
        numbering
    }

    /// Numbers the freedoms of a structure in this storage.
    pub(crate) fn renumber(&mut self, structure: &Structure) {
        self.numbers.clear();
        self.order = 0;
        self.ties.read(structure);
        for node in 0..structure.node_count() {
            let tied = self.ties.of(NodeId(node)).is_some();
            for held in structure.held(node) {
                let own = !held && !tied;
                self.numbers.push(if own { self.order } else { HELD });
                self.order += usize::from(own);
            }
        }
    }

    /// Number of equations.
    pub(crate) fn order(&self) -> usize {
        self.order
    }

    /// Equation of a freedom, 0 to 5, of a node; `None` where it is held or tied.
    pub(crate) fn equation(&self, node: NodeId, freedom: usize) -> Option<usize> {
        Some(self.numbers[6 * node.0 + freedom]).filter(|number| *number != HELD)
    }

    /// Whether nothing is held or tied.
    pub(crate) fn all_free(&self) -> bool {
        self.order == self.numbers.len()
    }

    /// Free freedoms, six to a node, each with its equation.
    pub(crate) fn free(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        self.numbers.iter().copied().enumerate().filter(|(_, number)| *number != HELD)
    }

    /// One column of values over the equations as six values to a node, zero at held freedoms.
    pub(crate) fn by_node(&self, values: &Columns, column: usize) -> Vec<Vector6<f64>> {
        let mut nodes = vec![Vector6::zeros(); self.numbers.len() / 6];
        for (full, number) in self.free() {
            nodes[full / 6][full % 6] = values.get(number, column);
        }
        self.ties.carry(&mut nodes);
        nodes
    }

    /// Greatest distance between the equations that a member joins.
    pub(crate) fn half_bandwidth(&self, structure: &Structure) -> usize {
        let mut widest = 5;
        for coupling in structure.couplings() {
            let Some(far) = coupling.far else { continue };
            // Numbers rise from node to node.
            let (near, far) = (self.ties.carrier(coupling.near), self.ties.carrier(far));
            let (low, high) = (near.min(far), near.max(far));
            let free = |number: &&usize| **number != HELD;
            let first = self.numbers_of(low).iter().find(free);
            let last = self.numbers_of(high).iter().rfind(free);
            if let (Some(first), Some(last)) = (first, last) {
                widest = widest.max(last - first);
            }
        }
        for shell in &structure.shells {
            let carriers = shell.nodes.iter().map(|node| self.ties.carrier(*node));
            let numbers = carriers.flat_map(|node| self.numbers_of(node)).copied();
            let free = || numbers.clone().filter(|number| *number != HELD);
            if let (Some(first), Some(last)) = (free().min(), free().max()) {
                widest = widest.max(last - first);
            }
        }
        widest.min(self.order.saturating_sub(1))
    }

    /// A matrix without entries, stored as suits the structure.
    pub(crate) fn empty_matrix(&self, structure: &Structure) -> SymmetricMatrix {
        let half_bandwidth = self.half_bandwidth(structure);
        if is_narrow(half_bandwidth) {
            SymmetricMatrix::banded(self.order, half_bandwidth)
        } else {
            SymmetricMatrix::with_places(&self.places(structure))
        }
    }

    /// Rows of the entries of each column from the diagonal down.
    fn places(&self, structure: &Structure) -> Vec<Vec<usize>> {
        let mut below: Vec<BTreeSet<usize>> = (0..structure.node_count()).map(|node| [node].into()).collect();
        let mut join = |a: NodeId, b: NodeId| {
            let (a, b) = (self.ties.carrier(a), self.ties.carrier(b));
            below[a.0.min(b.0)].insert(a.0.max(b.0))
        };
        for coupling in structure.couplings() {
            coupling.far.map(|far| join(coupling.near, far));
        }
        for shell in &structure.shells {
            for (i, first) in shell.nodes.iter().enumerate() {
                shell.nodes[i + 1..].iter().for_each(|second| _ = join(*first, *second));
            }
        }
        let mut places = Vec::with_capacity(self.order);
        for (node, below) in below.iter().enumerate() {
            let rows = below.iter().flat_map(|node| self.numbers_of(NodeId(*node)));
            let rows: Vec<usize> = rows.copied().filter(|row| *row != HELD).collect();
            let own = self.numbers_of(NodeId(node)).iter().filter(|number| **number != HELD).count();
            places.extend((0..own).map(|first| rows[first..].to_vec()));
        }
        places
    }

    fn numbers_of(&self, node: NodeId) -> &[usize; 6] {
        &self.numbers.as_chunks().0[node.0]
    }

    /// Adds the stiffness of a coupling.
    pub(crate) fn add_coupling(&self, matrix: &mut SymmetricMatrix, coupling: &Coupling) {
        let near = (coupling.near, &coupling.near_arm);
        self.add_block(matrix, (near.0, near.0), &coupling.block(near.1, near.1));
        let Some(far) = coupling.far.map(|far| (far, &coupling.far_arm)) else { return };
        self.add_block(matrix, (far.0, far.0), &coupling.block(far.1, far.1));
        let (row, column) = if near.0 > far.0 { (near, far) } else { (far, near) };
        let mut cross = coupling.block(row.1, column.1);
        cross.neg_mut();
        self.add_block(matrix, (row.0, column.0), &cross);
    }

    /// Adds a matrix over the motions of a shell's corners.
    pub(crate) fn add_shell(&self, matrix: &mut SymmetricMatrix, nodes: &[NodeId; 4], shell: &ShellMatrix) {
        for (i, row) in nodes.iter().enumerate() {
            for (j, column) in nodes.iter().enumerate().filter(|(_, column)| *column <= row) {
                let block = shell.fixed_view::<6, 6>(6 * i, 6 * j).into_owned();
                self.add_block(matrix, (*row, *column), &block);
            }
        }
    }

    /// Adds the block of a row node and a column node, the row's not before the column's; on the diagonal only its lower triangle.
    pub(crate) fn add_block(
        &self,
        matrix: &mut SymmetricMatrix,
        (row, column): (NodeId, NodeId),
        block: &Matrix6<f64>,
    ) {
        if !self.ties.is_empty() {
            let (carriers, moved) = self.ties.moved((row, column), block);
            return self.add_carried(matrix, carriers, &moved);
        }
        self.add_carried(matrix, (row, column), block);
    }

    /// As [`Numbering::add_block`], for nodes with equations of their own.
    fn add_carried(
        &self,
        matrix: &mut SymmetricMatrix,
        (row, column): (NodeId, NodeId),
        block: &Matrix6<f64>,
    ) {
        let (rows, columns) = (self.numbers_of(row), self.numbers_of(column));
        let all_free = !rows.contains(&HELD);
        for j in (0..6).filter(|j| columns[*j] != HELD) {
            let top = if row == column { j } else { 0 };
            let values = &block.as_slice()[6 * j + top..6 * (j + 1)];
            if all_free {
                matrix.add_run(rows[top], columns[j], values);
                continue;
            }
            for (row, value) in rows[top..].iter().zip(values).filter(|(row, _)| **row != HELD) {
                matrix.add(*row, columns[j], *value);
            }
        }
    }

    /// The free motion in words: the freedom that moves most where nothing holds.
    pub(crate) fn unsupported(&self, structure: &Structure, failure: &PivotFailure) -> FeError {
        let moving = |number: usize| failure.null_vector.get(number).map_or(0.0, |x| x.abs());
        let mut most = failure.index;
        for number in 0..self.order {
            if moving(number) > moving(most) * (1.0 + 1e-6) {
                most = number;
            }
        }
        let full = self.numbers.iter().position(|number| *number == most).unwrap_or(0);
        let station = structure.station(NodeId(full / 6)).to_owned();
        FeError::Unsupported { station, freedom: Freedom::ALL[full % 6] }
    }
}
