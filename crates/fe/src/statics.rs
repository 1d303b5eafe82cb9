//! Static solution for several load columns at once.

use nalgebra::Vector6;

use crate::FeError;
use crate::coupling::Coupling;
use crate::freedom::Freedom;
use crate::linalg::{Columns, Factor, PivotFailure, SymmetricMatrix};
use crate::loads::Loads;
use crate::state::State;
use crate::structure::{NodeId, Structure};

/// Marks a held freedom in the numbering.
const HELD: usize = usize::MAX;

/// Displacements of a structure under load columns.
#[derive(Debug, Clone)]
pub struct Displacements {
    values: Columns,
    loads: Loads,
}

impl Displacements {
    /// Motion of a node under one column: ux uy uz (m), rx ry rz (rad).
    pub fn of(&self, node: NodeId, column: usize) -> [f64; 6] {
        std::array::from_fn(|i| self.values.get(6 * node.0 + i, column))
    }

    /// Number of columns.
    pub fn columns(&self) -> usize {
        self.values.count()
    }

    /// What the structure does under one column.
    pub fn state<'a>(&self, structure: &'a Structure, column: usize) -> State<'a> {
        let factors: Vec<f64> = (0..self.columns()).map(|c| f64::from(u8::from(c == column))).collect();
        self.combined(structure, &factors)
    }

    /// What the structure does when the columns act together, each multiplied by its factor.
    pub fn combined<'a>(&self, structure: &'a Structure, factors: &[f64]) -> State<'a> {
        let sum = |columns: &Columns, node: usize| {
            Vector6::from_fn(|i, _| {
                let row = columns.row(6 * node + i);
                row.iter().zip(factors).map(|(value, factor)| value * factor).sum()
            })
        };
        let nodes = 0..structure.node_count();
        State {
            structure,
            motions: nodes.clone().map(|node| sum(&self.values, node)).collect(),
            loads: nodes.map(|node| sum(&self.loads.nodal, node)).collect(),
            lines: self.loads.combined_lines(structure.beams.len(), factors),
        }
    }
}

/// The stiffness equations of a structure; keeps its storage from one structure to the next of the same
/// shape.
#[derive(Debug, Default)]
pub struct StaticSystem {
    numbers: Vec<usize>,
    order: usize,
    matrix: Option<SymmetricMatrix>,
    factor: Option<Factor>,
}

impl StaticSystem {
    /// A system without equations.
    pub fn new() -> Self {
        StaticSystem::default()
    }

    /// Assembles and factors the stiffness of a structure.
    ///
    /// # Errors
    /// [`FeError::Unsupported`] names the station and freedom that nothing holds.
    pub fn prepare(&mut self, structure: &Structure) -> Result<(), FeError> {
        self.number(structure);
        let half_bandwidth = self.half_bandwidth(structure);
        let kept = self.matrix.take().filter(|m| m.order() == self.order && m.half_bandwidth() == Some(half_bandwidth));
        let mut matrix = match kept {
            Some(mut matrix) => {
                matrix.reset();
                matrix
            }
            None => {
                self.factor = None;
                SymmetricMatrix::for_coupling(self.order, half_bandwidth)
            }
        };
        for coupling in structure.couplings() {
            self.assemble(&mut matrix, coupling);
        }
        let factored = match &mut self.factor {
            Some(factor) => matrix.factor_into(factor),
            None => matrix.factor().map(|factor| self.factor = Some(factor)),
        };
        self.matrix = Some(matrix);
        factored.map_err(|failure| self.unsupported(structure, &failure))
    }

    /// Solves for all load columns.
    ///
    /// # Errors
    /// [`FeError::ImpossibleLoad`] when a load is not finite.
    pub fn solve(&self, structure: &Structure, loads: Loads) -> Result<Displacements, FeError> {
        loads.refuse_non_finite(structure)?;
        let mut values = loads.nodal.clone();
        if let Some(factor) = &self.factor {
            if self.order == self.numbers.len() {
                factor.solve_columns(&mut values);
            } else {
                self.solve_free(factor, &mut values);
            }
        }
        Ok(Displacements { values, loads })
    }

    /// Solves for the free freedoms only and leaves zeros at the held ones.
    fn solve_free(&self, factor: &Factor, values: &mut Columns) {
        let mut free = Columns::zeros(self.order, values.count());
        for (full, &number) in self.numbers.iter().enumerate().filter(|(_, number)| **number != HELD) {
            free.row_mut(number).copy_from_slice(values.row(full));
        }
        factor.solve_columns(&mut free);
        for (full, &number) in self.numbers.iter().enumerate() {
            match number {
                HELD => values.row_mut(full).fill(0.0),
                number => values.row_mut(full).copy_from_slice(free.row(number)),
            }
        }
    }

    fn number(&mut self, structure: &Structure) {
        self.numbers.clear();
        self.order = 0;
        for node in 0..structure.node_count() {
            for held in structure.held(node) {
                self.numbers.push(if *held { HELD } else { self.order });
                self.order += usize::from(!held);
            }
        }
    }

    fn half_bandwidth(&self, structure: &Structure) -> usize {
        let mut widest = 5;
        for coupling in structure.couplings() {
            let Some(far) = coupling.far else { continue };
            let numbers = |node: NodeId| self.numbers[6 * node.0..6 * node.0 + 6].iter().filter(|n| **n != HELD);
            let both = || numbers(coupling.near).chain(numbers(far));
            if let (Some(low), Some(high)) = (both().min(), both().max()) {
                widest = widest.max(high - low);
            }
        }
        widest.min(self.order.saturating_sub(1))
    }

    fn assemble(&self, matrix: &mut SymmetricMatrix, coupling: &Coupling) {
        let near = coupling.block(&coupling.near_arm, &coupling.near_arm);
        self.add_block(matrix, (coupling.near, coupling.near), |i, j| near[(i, j)]);
        let Some(node) = coupling.far else { return };
        let far = coupling.block(&coupling.far_arm, &coupling.far_arm);
        self.add_block(matrix, (node, node), |i, j| far[(i, j)]);
        let cross = coupling.block(&coupling.near_arm, &coupling.far_arm);
        if coupling.near > node {
            self.add_block(matrix, (coupling.near, node), |i, j| -cross[(i, j)]);
        } else {
            self.add_block(matrix, (node, coupling.near), |i, j| -cross[(j, i)]);
        }
    }

    /// Adds the block of a row node and a column node; on the diagonal only its lower triangle.
    fn add_block(
        &self,
        matrix: &mut SymmetricMatrix,
        (row, column): (NodeId, NodeId),
        value: impl Fn(usize, usize) -> f64,
    ) {
        for i in 0..6 {
            let row_number = self.numbers[6 * row.0 + i];
            let last = if row == column { i } else { 5 };
            for j in 0..=last {
                let column_number = self.numbers[6 * column.0 + j];
                if row_number != HELD && column_number != HELD {
                    matrix.add(row_number, column_number, value(i, j));
                }
            }
        }
    }

    /// The free motion in words: the freedom that moves most where nothing holds.
    fn unsupported(&self, structure: &Structure, failure: &PivotFailure) -> FeError {
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
