//! A fillet weld of equal legs.

use std::f64::consts::{FRAC_1_SQRT_2, SQRT_2};

use crate::StrengthError;
use crate::error::positive;

/// A fillet weld of equal legs between faces at a right angle; deep penetration is not counted.
///
/// Where the faces meet at another angle, as at the toe of an angle on a round tube, measure the throat and use
/// [`Fillet::with_throat`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fillet {
    throat: f64,
    one_sided: bool,
}

impl Fillet {
    /// A fillet of a leg.
    ///
    /// - `leg`: w (m), above 0
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn with_leg(leg: f64) -> Result<Self, StrengthError> {
        Self::with_throat(positive("leg of the fillet", leg, "m")? * FRAC_1_SQRT_2)
    }

    /// A fillet of a throat.
    ///
    /// - `throat`: a (m), above 0
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn with_throat(throat: f64) -> Result<Self, StrengthError> {
        Ok(Self { throat: positive("throat of the fillet", throat, "m")?, one_sided: false })
    }

    /// The same fillet where the plate that it joins has none on its other side.
    ///
    /// Its root can open, so that the direction of the load earns it no strength.
    ///
    /// Source: EN 1993-1-8:2005, 4.12, on the root of one-sided fillets (from memory); by AISC our cautious reading.
    pub fn one_sided(self) -> Self {
        Self { one_sided: true, ..self }
    }

    /// Whether the plate that it joins has none on its other side.
    pub fn is_one_sided(&self) -> bool {
        self.one_sided
    }

    /// Throat, a = w/√2 (m): the least distance from the root to the flat face.
    pub fn throat(&self) -> f64 {
        self.throat
    }

    /// Leg, w = a √2 (m).
    pub fn leg(&self) -> f64 {
        self.throat * SQRT_2
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn throat_and_leg_are_a_square_and_its_half_diagonal() {
        let fillet = Fillet::with_leg(0.006).unwrap();
        assert!((fillet.throat() - 0.004_242_640_687).abs() < 1e-12);
        assert!((Fillet::with_throat(fillet.throat()).unwrap().leg() - 0.006).abs() < 1e-15);
    }

    #[test]
    fn a_fillet_without_size_is_refused() {
        for bad in [0.0, -0.006, f64::NAN, f64::INFINITY] {
            assert!(Fillet::with_leg(bad).is_err());
            assert!(Fillet::with_throat(bad).is_err());
        }
    }
}
