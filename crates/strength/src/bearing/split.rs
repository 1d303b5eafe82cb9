//! How a wheel's load splits between its two bearings.

use crate::StrengthError;
use crate::error::{finite, positive};

/// Shares of a wheel's load on the inner and the outer bearing, 1 - o/b and o/b.
///
/// - `span`: b (m), between the two bearings' effective centers, above 0
/// - `offset`: o (m), of the load's line from the inner bearing towards the outer one; outset wheels bring it
///   beyond the outer bearing, and the other bearing then pulls the other way
///
/// Validity: a rigid hub, no side force at the ground.
///
/// Errors: [`StrengthError::NotPositive`], [`StrengthError::NotFinite`].
///
/// Source: the lever rule, as in any text on statics.
pub fn bearing_split(span: f64, offset: f64) -> Result<[f64; 2], StrengthError> {
    let b = positive("span of the bearings", span, "m")?;
    let o = finite("offset of the load from the inner bearing", offset, "m")?;
    Ok([1.0 - o / b, o / b])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shares_sum_to_the_load_wherever_it_acts() {
        for offset in [-0.1, 0.0, 0.05, 0.1, 0.4] {
            let [inner, outer] = bearing_split(0.1, offset).unwrap();
            assert!((inner + outer - 1.0).abs() < 1e-15);
            assert!((outer * 0.1 - offset).abs() < 1e-15);
        }
    }

    #[test]
    fn bearings_at_one_place_are_refused() {
        assert!(bearing_split(0.0, 0.1).is_err());
        assert!(bearing_split(0.1, f64::NAN).is_err());
    }
}
