//! Spectrum of a random stress and its moments.

use crate::StrengthError;

/// Spectral density of a random stress, one-sided, straight between its points.
#[derive(Debug, Clone, PartialEq)]
pub struct StressSpectrum {
    points: Vec<(f64, f64)>,
}

/// Moments of a spectrum, m_n = ∫ f^n G df, with f in Hz.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpectralMoments {
    /// m_0 (Pa²), the mean square.
    pub m0: f64,
    /// m_1 (Pa² Hz).
    pub m1: f64,
    /// m_2 (Pa² Hz²).
    pub m2: f64,
    /// m_4 (Pa² Hz⁴).
    pub m4: f64,
}

impl StressSpectrum {
    /// A spectrum by its points.
    ///
    /// - `points`: frequency (Hz) that increases from 0 or more, density G (Pa²/Hz) of 0 or more; two or more
    ///
    /// Errors: [`StrengthError::TooFew`], [`StrengthError::Spectrum`].
    pub fn new(points: Vec<(f64, f64)>) -> Result<Self, StrengthError> {
        if points.len() < 2 {
            return Err(StrengthError::TooFew { thing: "stress spectrum", count: points.len(), least: 2 });
        }
        let mut before = -f64::MIN_POSITIVE;
        for (i, (frequency, density)) in points.iter().copied().enumerate() {
            let refused = |accepted| StrengthError::Spectrum { point: i + 1, frequency, density, accepted };
            if !(frequency.is_finite() && frequency > before) {
                return Err(refused("a frequency of 0 or more above the one before"));
            }
            if !(density.is_finite() && density >= 0.0) {
                return Err(refused("a finite density of 0 or more"));
            }
            before = frequency;
        }
        Ok(Self { points })
    }

    /// Moments, exact for the straight pieces.
    pub fn moments(&self) -> SpectralMoments {
        let [m0, m1, m2, m4] = [0, 1, 2, 4].map(|order| self.moment(order));
        SpectralMoments { m0, m1, m2, m4 }
    }

    /// ∫ f^n (g + s f) df over each piece, g and s its intercept and slope.
    fn moment(&self, order: i32) -> f64 {
        let piece = |pair: &[(f64, f64)]| {
            let ((f_a, g_a), (f_b, g_b)) = (pair[0], pair[1]);
            let slope = (g_b - g_a) / (f_b - f_a);
            let power = |n: i32| (f_b.powi(n) - f_a.powi(n)) / f64::from(n);
            (g_a - slope * f_a) * power(order + 1) + slope * power(order + 2)
        };
        self.points.windows(2).map(piece).sum()
    }
}

impl SpectralMoments {
    /// Root mean square (Pa).
    pub fn rms(&self) -> f64 {
        self.m0.sqrt()
    }

    /// How often the stress crosses its mean upward, √(m2/m0) (Hz).
    ///
    /// Source: S. O. Rice, *Bell Syst. Tech. J.* 24 (1945) 46-156 (from memory).
    pub fn upcrossing_rate(&self) -> f64 {
        ratio(self.m2, self.m0).sqrt()
    }

    /// How often it has a peak, √(m4/m2) (Hz).
    pub fn peak_rate(&self) -> f64 {
        ratio(self.m4, self.m2).sqrt()
    }

    /// Upcrossings over peaks, m2/√(m0 m4): 1 for a narrow band, towards 0 for a wide one.
    pub fn regularity(&self) -> f64 {
        self.m2 / (self.m0 * self.m4).sqrt()
    }

    /// Mean frequency over the rate of peaks, x_m = m1/m0 √(m2/m4), as Dirlik's formula takes it.
    pub fn mean_over_peak_rate(&self) -> f64 {
        self.m1 / self.m0 / self.peak_rate()
    }
}

/// One moment over another; 0 where there is no stress.
fn ratio(part: f64, whole: f64) -> f64 {
    if part == 0.0 { 0.0 } else { part / whole }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_triangle_has_the_moments_of_a_triangle() {
        let triangle = StressSpectrum::new(vec![(0.0, 0.0), (2.0, 6.0), (4.0, 0.0)]).unwrap().moments();
        assert_relative_eq!(triangle.m0, 12.0, max_relative = 1e-12);
        assert_relative_eq!(triangle.m1, 24.0, max_relative = 1e-12);
        assert_relative_eq!(triangle.m2, 12.0 * (4.0 + 4.0 / 6.0), max_relative = 1e-12);
    }

    #[test]
    fn a_point_that_is_out_of_order_is_named() {
        let refused = |points: &[(f64, f64)]| StressSpectrum::new(points.to_vec()).unwrap_err().to_string();
        assert_eq!(
            refused(&[(5.0, 250.0), (5.0, 250.0)]),
            "point 2 of the stress spectrum is (5 Hz, 250 Pa²/Hz); accepted is a frequency of 0 or more above the \
             one before"
        );
        assert!(refused(&[(0.0, 1.0), (1.0, -1.0)]).contains("a finite density of 0 or more"));
        assert_eq!(refused(&[(0.0, 1.0)]), "stress spectrum has 1 entries; accepted is 2 or more");
        assert!(StressSpectrum::new(vec![(0.0, 1.0), (1.0, f64::NAN)]).is_err());
    }
}
