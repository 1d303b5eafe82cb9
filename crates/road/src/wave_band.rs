//! The band of wave numbers that a random road holds.

use crate::RoadError;
use crate::error::accepted;

/// The band of wave numbers that a random road holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaveBand {
    low: f64,
    high: f64,
}

impl WaveBand {
    /// A band of wave numbers.
    ///
    /// - `low`, `high`: ends of the band (cycle/m), 1e-4 to 100, low < high
    ///
    /// Errors: [`RoadError::Range`], [`RoadError::BandEmpty`].
    pub fn new(low: f64, high: f64) -> Result<Self, RoadError> {
        let low = accepted("lower end of the band", low, "cycle/m", 1e-4..=100.0)?;
        let high = accepted("upper end of the band", high, "cycle/m", 1e-4..=100.0)?;
        if low >= high {
            return Err(RoadError::BandEmpty { low, high });
        }
        Ok(Self { low, high })
    }

    /// Lower end (cycle/m): the longest wave is its inverse.
    pub fn low(&self) -> f64 {
        self.low
    }

    /// Upper end (cycle/m): the shortest wave is its inverse.
    pub fn high(&self) -> f64 {
        self.high
    }

    /// Whether a wave number lies in the band.
    pub fn contains(&self, wave_number: f64) -> bool {
        (self.low..=self.high).contains(&wave_number)
    }
}

/// 0.011 to 2.83 cycle/m, waves of 91 m to 0.35 m, over which ISO 8608 draws its classes (from memory).
impl Default for WaveBand {
    fn default() -> Self {
        Self { low: 0.011, high: 2.83 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_without_width_is_refused() {
        assert_eq!(
            WaveBand::new(0.5, 0.5).unwrap_err().to_string(),
            "upper end of the band is 0.5 cycle/m; accepted is above its lower end, 0.5 cycle/m"
        );
        assert!(WaveBand::new(0.0, 0.5).is_err());
        assert!(WaveBand::new(0.1, f64::NAN).is_err());
    }
}
