//! How alike the left and the right track of a random road are.

use std::f64::consts::TAU;

use crate::RoadError;
use crate::error::accepted;

/// How alike two parallel tracks are, wave by wave: γ(n) = Glr(n)/Gd(n), from 1 (the same) to 0 (strangers).
///
/// Glr is the one-sided cross spectrum of the two tracks, which is real because a
/// road has no preferred side. γ² is the ordinary coherence function.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coherence(Form);

#[derive(Debug, Clone, Copy, PartialEq)]
enum Form {
    Isotropic { separation: f64 },
    Exponential { decay_length: f64 },
}

impl Coherence {
    /// Coherence on a surface that is equally rough in every direction.
    ///
    /// γ = u K₁(u), u = 2πnb
    ///
    /// For Gd(n) ~ n⁻² the spectrum of such a surface is ~ κ⁻³ in the plane; its
    /// transform across the road over the same at b = 0 is this γ, by Basset's
    /// integral for the Bessel function K₁.
    ///
    /// - `separation`: b (m), between the tracks, 0 (the same track) to 10
    ///
    /// Validity: measured roads are mostly less alike than this at short waves and
    /// depend on paving and ruts (P. Múčka, 2015, compares eleven forms).
    ///
    /// Errors: [`RoadError::Range`].
    ///
    /// Source: the hypothesis of K. M. A. Kamash and J. D. Robson, J. Sound Vib. 57
    /// (1978) 89-100 (volume and pages from memory); the form here is derived anew
    /// and checked by direct integration.
    pub fn isotropic(separation: f64) -> Result<Self, RoadError> {
        let separation = accepted("separation of the tracks", separation, "m", 0.0..=10.0)?;
        Ok(Self(Form::Isotropic { separation }))
    }

    /// Coherence that falls off exponentially, γ = exp(-d n).
    ///
    /// - `decay_length`: d (m), 0 (the same track) to 1e6 (strangers)
    ///
    /// Errors: [`RoadError::Range`].
    ///
    /// Source: a common form, fitted to measured roads; from memory.
    pub fn exponential(decay_length: f64) -> Result<Self, RoadError> {
        let decay_length = accepted("decay length of the coherence", decay_length, "m", 0.0..=1e6)?;
        Ok(Self(Form::Exponential { decay_length }))
    }

    /// γ(n), 0 to 1.
    ///
    /// - `wave_number`: n (cycle/m), 0 or more
    pub fn at(&self, wave_number: f64) -> f64 {
        match self.0 {
            Form::Isotropic { separation } => bessel_share(TAU * wave_number * separation),
            Form::Exponential { decay_length } => (-decay_length * wave_number).exp(),
        }
    }
}

/// u K₁(u), from K₁(u) = ∫ exp(-u cosh t) cosh t dt over t from 0 on.
///
/// The substitution makes the integrand fall off doubly exponentially, so even
/// steps of 1/4 leave an error of exp(-π²/h) = 7e-18 (trapezoidal rule on a strip
/// of half width π/2). Source: NIST DLMF 10.32.9.
fn bessel_share(u: f64) -> f64 {
    const STEP: f64 = 0.25;
    /// Below this u K₁(u) is 1 to the last digit, 1 + (u²/2) ln(u/2) + ...
    const SMALL: f64 = 1e-9;
    if u < SMALL {
        return 1.0;
    }
    let mut sum = 0.5 * (-u).exp();
    for index in 1.. {
        let cosh = (f64::from(index) * STEP).cosh();
        if u * cosh > 745.0 {
            break; // exp underflows
        }
        sum += (-u * cosh).exp() * cosh;
    }
    (u * STEP * sum).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::{assert_abs_diff_eq, assert_relative_eq};

    #[test]
    fn bessel_function_matches_abramowitz_stegun_table_9_8() {
        // K1(1) = 0.601907230197..., K1(0.1) = 9.853844780870..., K1(10) = 1.864877345382e-5 (from memory).
        for (u, k) in [(1.0, 0.601907230197), (0.1, 9.853844780871), (10.0, 1.864877345382e-5)] {
            assert_relative_eq!(bessel_share(u), u * k, max_relative = 1e-12);
        }
    }

    #[test]
    fn isotropic_coherence_matches_direct_integration_across_the_surface() {
        // Integral of cos(l b) (k² + l²)^(-3/2) over l, over the same at b = 0, by midpoints.
        let (n, b) = (0.2, 1.8);
        let k = TAU * n;
        let integral = |b: f64| -> f64 {
            let step = 1e-3;
            (0..400_000)
                .map(|i| (f64::from(i) + 0.5) * step)
                .map(|l| step * (l * b).cos() * (k * k + l * l).powf(-1.5))
                .sum()
        };
        let coherence = Coherence::isotropic(b).unwrap();
        // The integral stops at 400 rad/m; its tail is 1/(2·400²) of 1/k².
        assert_abs_diff_eq!(coherence.at(n), integral(b) / integral(0.0), epsilon = 2.0 * k * k / 320_000.0);
    }

    #[test]
    fn long_waves_are_the_same_on_both_sides_and_short_ones_are_not() {
        for coherence in [Coherence::isotropic(1.8).unwrap(), Coherence::exponential(5.0).unwrap()] {
            assert_eq!(coherence.at(0.0), 1.0);
            let values: Vec<f64> = (0..300).map(|i| coherence.at(f64::from(i) * 0.01)).collect();
            assert!(values.windows(2).all(|pair| pair[1] < pair[0] && pair[1] > 0.0));
        }
        assert_eq!(Coherence::isotropic(0.0).unwrap().at(2.83), 1.0);
    }

    #[test]
    fn sizes_out_of_range_are_refused() {
        assert!(Coherence::isotropic(-0.1).is_err());
        assert!(Coherence::isotropic(f64::NAN).is_err());
        assert!(Coherence::exponential(f64::INFINITY).is_err());
    }
}
