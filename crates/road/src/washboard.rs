//! Washboard: a row of sine waves.

use std::f64::consts::{PI, TAU};

use crate::RoadError;
use crate::error::{accepted, accepted_count, accepted_length};
use crate::event::Shape;

/// Washboard, z = a sin(2πx/λ) for x from 0 to N λ, on ground at its mean height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Washboard {
    wavelength: f64,
    amplitude: f64,
    count: usize,
}

impl Washboard {
    /// Washboard that begins at x = 0.
    ///
    /// - `wavelength`: λ (m), crest to crest, 1 mm to 100 km
    /// - `amplitude`: a (m), half the height from trough to crest, 0 to 10 m
    /// - `count`: N, whole waves, 1 to 100 000
    ///
    /// Errors: [`RoadError::Range`], [`RoadError::Count`].
    pub fn new(wavelength: f64, amplitude: f64, count: usize) -> Result<Self, RoadError> {
        let wavelength = accepted_length("wavelength of the washboard", wavelength)?;
        let amplitude = accepted("amplitude of the washboard", amplitude, "m", 0.0..=10.0)?;
        let count = accepted_count("count of washboard waves", count, 1..=100_000)?;
        accepted_length("length of the washboard", count as f64 * wavelength)?;
        Ok(Self { wavelength, amplitude, count })
    }

    /// Wavelength λ (m).
    pub fn wavelength(&self) -> f64 {
        self.wavelength
    }

    /// Amplitude a, half the height from trough to crest (m).
    pub fn amplitude(&self) -> f64 {
        self.amplitude
    }

    /// Count N of whole waves.
    pub fn count(&self) -> usize {
        self.count
    }
}

impl Shape for Washboard {
    fn end(&self) -> f64 {
        self.count as f64 * self.wavelength
    }

    fn height(&self, x: f64) -> f64 {
        self.amplitude * (TAU * x / self.wavelength).sin()
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        let whole = PI / self.wavelength;
        self.amplitude / whole * (whole * (to + from)).sin() * (whole * (to - from)).sin()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn crests_and_troughs_lie_a_quarter_wave_from_the_ends_of_each_wave() {
        let washboard = Washboard::new(0.75, 0.0125, 12).unwrap();
        for wave in 0..12 {
            let x = f64::from(wave) * 0.75;
            assert_abs_diff_eq!(Shape::height(&washboard, x + 0.1875), 0.0125, epsilon = 1e-14);
            assert_abs_diff_eq!(Shape::height(&washboard, x + 0.5625), -0.0125, epsilon = 1e-14);
        }
        assert_eq!(washboard.end(), 9.0);
        assert_abs_diff_eq!(washboard.area(0.0, 9.0), 0.0, epsilon = 1e-15);
    }

    #[test]
    fn sizes_out_of_range_are_refused() {
        assert!(Washboard::new(0.75, 0.01, 0).is_err());
        assert!(Washboard::new(0.75, -0.01, 3).is_err());
        assert!(Washboard::new(0.0, 0.01, 3).is_err());
        assert_eq!(
            Washboard::new(1e4, 0.01, 11).unwrap_err().to_string(),
            "length of the washboard is 110000 m; accepted is 0.001 to 100000 m"
        );
    }
}
