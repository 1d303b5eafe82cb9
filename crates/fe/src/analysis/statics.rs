//! Static solution for several load columns at once.

use nalgebra::Vector6;

use crate::FeError;
use crate::linalg::{Columns, Factor, SymmetricMatrix};
use crate::model::assembly::add_stiffness;
use crate::model::loads::Loads;
use crate::model::numbering::Numbering;
use crate::model::state::State;
use crate::model::structure::Structure;
use crate::node::coupling::{brought, carried};
use crate::node::ids::NodeId;

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
    pub fn state<'a>(&'a self, structure: &'a Structure, column: usize) -> State<'a> {
        let factors: Vec<f64> = (0..self.columns()).map(|c| f64::from(u8::from(c == column))).collect();
        self.combined(structure, &factors)
    }

    /// What the structure does when the columns act together, each multiplied by its factor.
    pub fn combined<'a>(&'a self, structure: &'a Structure, factors: &[f64]) -> State<'a> {
        let acting: Vec<(usize, f64)> =
            factors.iter().copied().enumerate().filter(|(_, factor)| *factor != 0.0).collect();
        let sum = |row: &[f64]| acting.iter().map(|(column, factor)| row[*column] * factor).sum();
        let motion = |node: usize| Vector6::from_fn(|i, _| sum(self.values.row(6 * node + i)));
        State {
            structure,
            motions: (0..structure.node_count()).map(motion).collect(),
            lines: self.loads.combined_lines(structure.beams.len(), factors),
            loads: &self.loads,
            factors: factors.to_vec(),
        }
    }
}

/// The stiffness equations of a structure; keeps its storage from one structure to the next of the same
/// shape.
#[derive(Debug, Default)]
pub struct StaticSystem {
    numbering: Numbering,
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
        self.numbering.renumber(structure);
        let (order, half_bandwidth) = (self.numbering.order(), self.numbering.half_bandwidth(structure));
        let kept = self.matrix.take().filter(|matrix| matrix.suits(order, half_bandwidth));
        let mut matrix = match kept {
            Some(mut matrix) => {
                matrix.reset();
                matrix
            }
            None => {
                self.factor = None;
                self.numbering.empty_matrix(structure)
            }
        };
        add_stiffness(&mut matrix, structure, &self.numbering);
        let factored = match &mut self.factor {
            Some(factor) => matrix.factor_into(factor),
            None => matrix.factor().map(|factor| self.factor = Some(factor)),
        };
        self.matrix = Some(matrix);
        factored.map_err(|failure| self.numbering.unsupported(structure, &failure))
    }

    /// Solves for all load columns.
    ///
    /// # Errors
    /// [`FeError::ImpossibleLoad`] when a load is not finite.
    pub fn solve(&self, structure: &Structure, loads: Loads) -> Result<Displacements, FeError> {
        let mut values = loads.right_hand_sides(structure)?;
        if let Some(factor) = &self.factor {
            if self.numbering.all_free() {
                factor.solve_columns(&mut values);
            } else {
                self.solve_free(factor, &mut values);
            }
        }
        Ok(Displacements { values, loads })
    }

    /// Solves for the free freedoms only and leaves zeros at the held ones.
    fn solve_free(&self, factor: &Factor, values: &mut Columns) {
        let mut free = Columns::zeros(self.numbering.order(), values.count());
        self.bring_tied(values);
        for (full, number) in self.numbering.free() {
            free.row_mut(number).copy_from_slice(values.row(full));
        }
        factor.solve_columns(&mut free);
        values.reset();
        for (full, number) in self.numbering.free() {
            values.row_mut(full).copy_from_slice(free.row(number));
        }
        self.carry_tied(values);
    }

    /// Brings loads on tied nodes to their hubs.
    fn bring_tied(&self, values: &mut Columns) {
        for (node, tie) in self.numbering.ties.iter() {
            for column in 0..values.count() {
                let force = six(values, node, column);
                let brought = brought(&force, &tie.arm);
                for i in 0..6 {
                    values.row_mut(6 * tie.hub.0 + i)[column] += brought[i];
                }
            }
        }
    }

    /// Gives tied nodes the motions of their hubs.
    fn carry_tied(&self, values: &mut Columns) {
        for (node, tie) in self.numbering.ties.iter() {
            for column in 0..values.count() {
                let motion = carried(&six(values, tie.hub, column), &tie.arm);
                for i in 0..6 {
                    values.row_mut(6 * node.0 + i)[column] = motion[i];
                }
            }
        }
    }
}

fn six(values: &Columns, node: NodeId, column: usize) -> Vector6<f64> {
    Vector6::from_fn(|i, _| values.get(6 * node.0 + i, column))
}
