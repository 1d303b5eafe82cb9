//! Shear flow at the face between two parts of a built-up section.

use crate::StrengthError;
use crate::error::{finite, positive};

/// Shear flow between two parts of a section that bend as one, q = V Q / I (N/m).
///
/// - `shear`: V (N)
/// - `first_moment`: Q (m³), of the attached part about the neutral axis of the whole
/// - `second_moment`: I (m⁴), of the whole, above 0
///
/// Valid where plane sections stay plane: away from the ends of the attached part, where the welds must also bring
/// its force in.
///
/// Errors: [`StrengthError::NotFinite`], [`StrengthError::NotPositive`].
///
/// Source: D. I. Jourawski's formula, as in J. M. Gere & B. J. Goodno, *Mechanics of Materials*, 8th ed. 2013, ch. 5
/// (from memory).
pub fn shear_flow(shear: f64, first_moment: f64, second_moment: f64) -> Result<f64, StrengthError> {
    let v = finite("shear force", shear, "N")?;
    let q = finite("first moment of the attached part", first_moment, "m³")?;
    let i = positive("second moment of the section", second_moment, "m⁴")?;
    Ok(v * q / i)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_rectangle_carries_one_and_a_half_times_the_mean_shear() {
        let (b, h, v) = (0.04, 0.1, 20e3);
        let flow = shear_flow(v, b * h * h / 8.0, b * h.powi(3) / 12.0).unwrap();
        assert!((flow / b - 1.5 * v / (b * h)).abs() < 1e-3);
    }

    #[test]
    fn a_section_without_inertia_is_refused() {
        assert!(shear_flow(1.0, 1.0, 0.0).is_err());
        assert!(shear_flow(f64::NAN, 1.0, 1.0).is_err());
    }
}
