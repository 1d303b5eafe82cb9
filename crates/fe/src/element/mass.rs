//! Masses that nodes carry.

use nalgebra::{Matrix3, Matrix6, Vector3};

use crate::node::coupling::{Attachment, bring_rows, carry_columns};

/// A mass at a point carried by a node.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LumpedMass {
    /// Where it sits.
    pub place: Attachment,
    /// Mass, kg.
    pub mass: f64,
}

/// A rigid body carried by a node.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RigidBody {
    /// Where its center of mass sits.
    pub place: Attachment,
    /// Mass, kg.
    pub mass: f64,
    /// Inertia tensor about its center of mass along the global axes, row by row, kg m²; its products of
    /// inertia have the sign of −∫ x y dm.
    pub inertia: [[f64; 3]; 3],
}

impl From<LumpedMass> for RigidBody {
    fn from(lump: LumpedMass) -> Self {
        RigidBody { place: lump.place, mass: lump.mass, inertia: [[0.0; 3]; 3] }
    }
}

/// Part of the largest moment of inertia by which rounding may make the least one negative, or two products
/// of inertia differ.
const ROUNDING: f64 = 1e-9;

impl RigidBody {
    /// A body with the moments of inertia (kg m²) about the global axes through its center and no products.
    pub fn with_moments(place: Attachment, mass: f64, moments: [f64; 3]) -> Self {
        let inertia = std::array::from_fn(|i| std::array::from_fn(|j| if i == j { moments[i] } else { 0.0 }));
        RigidBody { place, mass, inertia }
    }

    fn tensor(&self) -> Matrix3<f64> {
        Matrix3::from_fn(|i, j| self.inertia[i][j])
    }

    /// Mass matrix at the node: `Aᵀ diag(m, m, m, J) A` with the arm matrix A.
    pub(crate) fn matrix(&self) -> Matrix6<f64> {
        let mut block = Matrix6::zeros();
        block.fixed_view_mut::<3, 3>(0, 0).copy_from(&(Matrix3::identity() * self.mass));
        block.fixed_view_mut::<3, 3>(3, 3).copy_from(&self.tensor());
        let arm = Vector3::from(self.place.arm);
        carry_columns(&mut block, &arm);
        bring_rows(&mut block, &arm);
        block
    }

    /// A quantity, with its value, that no body can have.
    pub(crate) fn impossible_quantity(&self) -> Option<(&'static str, f64)> {
        if !(self.mass.is_finite() && self.mass >= 0.0) {
            return Some(("mass", self.mass));
        }
        let tensor = self.tensor();
        if let Some(value) = tensor.iter().find(|value| !value.is_finite()) {
            return Some(("moment of inertia", *value));
        }
        let skew = (tensor - tensor.transpose()).amax();
        if skew > ROUNDING * tensor.amax() {
            return Some(("difference of two equal products of inertia", skew));
        }
        let least = tensor.symmetric_eigenvalues().min();
        (least < -ROUNDING * tensor.amax()).then_some(("least principal moment of inertia", least))
    }
}
