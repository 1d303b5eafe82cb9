//! Linear buckling: by what factor the loads of a state may grow before the structure has another shape.

use nalgebra::Vector6;

use crate::FeError;
use crate::linalg::Crossing;
use crate::model::assembly::{geometric_matrix, stiffness_matrix};
use crate::model::numbering::Numbering;
use crate::model::state::State;
use crate::node::ids::NodeId;

/// A shape into which a structure buckles.
#[derive(Debug, Clone)]
pub struct BucklingMode {
    /// The loads of the state times this factor are critical.
    pub factor: f64,
    motions: Vec<Vector6<f64>>,
}

/// The lowest buckling factors of a loaded structure.
#[derive(Debug, Clone)]
pub struct Buckling {
    /// By rising factor; empty when the loads cannot buckle it, however large.
    pub modes: Vec<BucklingMode>,
    /// Number of factors found below the last one and those that crowd with it.
    pub found_below: usize,
    /// Number of factors there by Sturm's count, which misses none; none where a pivot vanished.
    pub counted_below: Option<usize>,
}

/// Part of the last factor below it at which the count is taken.
const CLUSTER: f64 = 1e-6;

impl BucklingMode {
    /// Motion of a node: ux uy uz, rx ry rz; the largest displacement is 1.
    pub fn motion(&self, node: NodeId) -> [f64; 6] {
        self.motions[node.0].into()
    }
}

impl Buckling {
    /// Whether the count confirms that no factor was missed.
    pub fn is_complete(&self) -> bool {
        self.counted_below.is_none_or(|counted| counted == self.found_below)
    }
}

/// The lowest `count` positive buckling factors λ of `(K + λ·K_σ)·φ = 0`, with the stress of `state` in its shells;
/// beams and springs stiffen but do not buckle.
///
/// Valid while the structure is linear up to λ: a thin shell of a real make buckles well below, because of its dents;
/// apply the reduction factors of a design code.
///
/// # Errors
/// [`FeError::Unsupported`] names the station and freedom that nothing holds.
pub fn buckling(state: &State, count: usize) -> Result<Buckling, FeError> {
    let structure = state.structure;
    let numbering = Numbering::of(structure);
    let stiffness = stiffness_matrix(structure, &numbering);
    let factor = stiffness.factor().map_err(|failure| numbering.unsupported(structure, &failure))?;
    let geometric = geometric_matrix(state, &numbering);
    let crossing = Crossing { stiffness: &stiffness, factor: &factor, geometric: &geometric };
    let pairs = crossing.lowest(count);
    let limit = pairs.values.last().map_or(0.0, |last| last * (1.0 - CLUSTER));
    let found_below = pairs.values.iter().filter(|factor| **factor < limit).count();
    let counted_below = crossing.count_below(limit);
    let mode = |(i, factor): (usize, &f64)| BucklingMode {
        factor: *factor,
        motions: largest_one(numbering.by_node(&pairs.vectors, i)),
    };
    let modes = pairs.values.iter().enumerate().map(mode).collect();
    Ok(Buckling { modes, found_below, counted_below })
}

/// Motions scaled so that the largest displacement is 1.
fn largest_one(mut motions: Vec<Vector6<f64>>) -> Vec<Vector6<f64>> {
    let displacements = motions.iter().flat_map(|motion| [motion[0], motion[1], motion[2]]);
    let largest = displacements.fold(0.0_f64, |a, x| if x.abs() > a.abs() { x } else { a });
    if largest != 0.0 {
        motions.iter_mut().for_each(|motion| *motion /= largest);
    }
    motions
}
