//! How much of a body's flexibility acts, for asking what the camber would be without it.

use axlebow_fe::Rigidity;

/// Factors on the flexibility of tube, housing and spindles; both are 1 in a real axle, and it bends between its seats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flexing {
    /// Factor on bending, twist and stretch, above 0.
    pub bending: f64,
    /// Factor on transverse shear, above 0.
    pub shear: f64,
    /// Whether the seats hold the axle straight between them: to the line through both, so that it heaves and rolls on its
    /// suspension as before.
    pub straight_between_seats: bool,
}

impl Default for Flexing {
    fn default() -> Self {
        Flexing { bending: 1.0, shear: 1.0, straight_between_seats: false }
    }
}

impl Flexing {
    /// The rigidity that acts.
    pub(crate) fn of(&self, own: Rigidity) -> Rigidity {
        Rigidity {
            axial: own.axial / self.bending,
            torsion: own.torsion / self.bending,
            bending_2: own.bending_2 / self.bending,
            bending_3: own.bending_3 / self.bending,
            shear_2: own.shear_2 / self.shear,
            shear_3: own.shear_3 / self.shear,
        }
    }
}
