//! Linear spring at a point between two nodes, or between a node and the ground.

use nalgebra::{Matrix6, Vector3};

use crate::node::coupling::{Attachment, Coupling};

/// A spring with a symmetric 6 × 6 stiffness at a point.
#[derive(Debug, Clone)]
pub struct Spring {
    /// Point of the spring as carried by the near node.
    pub near: Attachment,
    /// The same point as carried by the far node; `None` for the ground.
    pub far: Option<Attachment>,
    /// Force (force, moment) on the near side per motion of it, global axes, row by row.
    pub stiffness: [[f64; 6]; 6],
}

impl Spring {
    /// A spring to the ground with a stiffness for each freedom (N/m, N m/rad).
    pub fn to_ground(near: Attachment, rates: [f64; 6]) -> Self {
        Spring { near, far: None, stiffness: diagonal(rates) }
    }

    /// A spring between two nodes with a stiffness for each freedom.
    pub fn between(near: Attachment, far: Attachment, rates: [f64; 6]) -> Self {
        Spring { near, far: Some(far), stiffness: diagonal(rates) }
    }

    /// Adds the stiffness of a second spring whose point lies at `offset` from this one, both sides carrying
    /// it rigidly: several springs of one bracket become one.
    pub fn with_rates_at(mut self, offset: [f64; 3], rates: [f64; 6]) -> Self {
        let other = Coupling {
            near: self.near.node,
            far: None,
            near_arm: Vector3::zeros(),
            far_arm: Vector3::zeros(),
            stiffness: matrix(&diagonal(rates)),
        };
        let arm = Vector3::from(offset);
        let moved = other.block(&arm, &arm);
        for (i, row) in self.stiffness.iter_mut().enumerate() {
            for (j, value) in row.iter_mut().enumerate() {
                *value += moved[(i, j)];
            }
        }
        self
    }

    /// Puts a further flexibility in series with freedom `index`:
    /// `K − K·e·eᵀ·K·c/(1 + c·kₑₑ)` (Sherman–Morrison on the compliance), c in rad/(N m) or m/N.
    pub fn in_series(mut self, index: usize, flexibility: f64) -> Self {
        let column: [f64; 6] = std::array::from_fn(|i| self.stiffness[i][index]);
        let factor = flexibility / (1.0 + flexibility * column[index]);
        for (i, row) in self.stiffness.iter_mut().enumerate() {
            for (j, value) in row.iter_mut().enumerate() {
                *value -= factor * column[i] * column[j];
            }
        }
        self
    }

    /// Puts a further compliance in series: `K·(1 + C·K)⁻¹`, which holds for a singular K too.
    ///
    /// - `compliance`: symmetric, of any sign, m/N and rad/(N m) by freedom
    ///
    /// Returns `None` where the two together have no stiffness: a negative compliance as large as the spring's own.
    pub fn in_series_with(mut self, compliance: &[[f64; 6]; 6]) -> Option<Self> {
        let (k, c) = (matrix(&self.stiffness), matrix(compliance));
        let joined = k * (Matrix6::identity() + c * k).try_inverse()?;
        let joined = (joined + joined.transpose()) * 0.5;
        let largest = joined.amax();
        if !(joined.symmetric_eigenvalues().min() >= -1e-9 * largest) {
            return None;
        }
        self.stiffness = std::array::from_fn(|i| std::array::from_fn(|j| joined[(i, j)]));
        Some(self)
    }

    pub(crate) fn coupling(&self) -> Coupling {
        Coupling {
            near: self.near.node,
            far: self.far.map(|far| far.node),
            near_arm: Vector3::from(self.near.arm),
            far_arm: self.far.map_or_else(Vector3::zeros, |far| Vector3::from(far.arm)),
            stiffness: matrix(&self.stiffness),
        }
    }
}

fn diagonal(rates: [f64; 6]) -> [[f64; 6]; 6] {
    std::array::from_fn(|i| std::array::from_fn(|j| if i == j { rates[i] } else { 0.0 }))
}

fn matrix(rows: &[[f64; 6]; 6]) -> Matrix6<f64> {
    Matrix6::from_fn(|i, j| rows[i][j])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::node::ids::NodeId;

    const RATES: [f64; 6] = [1e6, 2e6, 3e6, 4e5, 5e5, 0.0];

    fn spring() -> Spring {
        Spring::to_ground(Attachment::at(NodeId(0)), RATES).with_rates_at([0.5, 0.0, 0.1], RATES)
    }

    #[test]
    fn one_flexibility_in_series_is_a_compliance_in_series() {
        let mut compliance = [[0.0; 6]; 6];
        compliance[3][3] = 4e-6;
        let (one, other) = (spring().in_series(3, 4e-6), spring().in_series_with(&compliance).unwrap());
        for (a, b) in one.stiffness.iter().flatten().zip(other.stiffness.iter().flatten()) {
            assert!((a - b).abs() < 1e-9 * 3e6, "{a} {b}");
        }
    }

    #[test]
    fn compliances_add_up() {
        let diagonal = [[1e-6, 0.0], [0.0, 2e-6]];
        let mut compliance = [[0.0; 6]; 6];
        (compliance[0][0], compliance[3][3]) = (diagonal[0][0], diagonal[1][1]);
        let soft = Spring::to_ground(Attachment::at(NodeId(0)), RATES).in_series_with(&compliance).unwrap();
        assert!((1.0 / soft.stiffness[0][0] - (1e-6 + 1e-6)).abs() < 1e-15);
        assert!((1.0 / soft.stiffness[3][3] - (1.0 / 4e5 + 2e-6)).abs() < 1e-15);
        assert_eq!(soft.stiffness[5][5], 0.0);
        let mut negative = [[0.0; 6]; 6];
        negative[0][0] = -2e-6;
        assert!(Spring::to_ground(Attachment::at(NodeId(0)), RATES).in_series_with(&negative).is_none());
    }
}
