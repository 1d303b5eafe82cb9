//! Enhanced membrane strains: r in rr, s in ss, r and s in rs.

use nalgebra::{Matrix3, Matrix3x4};

use super::layer::Layer;

/// The enhanced strains of a shell; they average to nothing, so that a constant stress does no work on them
/// (J. C. Simo & M. S. Rifai, Int. J. Numer. Methods Eng. 29 (1990) 1595-1638, from memory).
pub(super) struct EnhancedStrain {
    /// Local from natural strains at the center.
    turn: Matrix3<f64>,
    /// Area at the center.
    area: f64,
}

impl EnhancedStrain {
    pub(super) fn of(center: &Layer) -> Self {
        EnhancedStrain { turn: center.turn(), area: center.area }
    }

    /// Local strains (11, 22, 2·12) at a point per parameter.
    pub(super) fn at(&self, layer: &Layer, [r, s]: [f64; 2]) -> Matrix3x4<f64> {
        let natural = Matrix3x4::new(r, 0.0, 0.0, 0.0, 0.0, s, 0.0, 0.0, 0.0, 0.0, r, s);
        self.turn * natural * (self.area / layer.area)
    }
}
