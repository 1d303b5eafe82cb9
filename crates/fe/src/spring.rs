//! Linear spring at a point between two nodes, or between a node and the ground.

use nalgebra::{Matrix6, Vector3};

use crate::coupling::{Attachment, Coupling};

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
