//! The spectrum of a rough road.

use std::f64::consts::TAU;

use crate::error::accepted;
use crate::{RoadError, RoughnessClass};

/// Reference wave number n0 of ISO 8608 (cycle/m).
const REFERENCE: f64 = 0.1;

/// One-sided displacement spectrum of a rough road, Gd(n) = Gd(n0) (n/n0)⁻², n0 = 0.1 cycle/m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoughnessSpectrum {
    reference_density: f64,
}

/// One-sided displacement spectrum in time of a rough road passed at a speed, Gd(f) = Gd(n = f/v)/v.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimeSpectrum {
    spectrum: RoughnessSpectrum,
    speed: f64,
}

/// The spectrum of a road at the geometric mean of its class.
///
/// Source: ISO 8608:2016, Table C.1, waviness 2.
pub fn iso_8608_spectrum(class: RoughnessClass) -> RoughnessSpectrum {
    RoughnessSpectrum { reference_density: class.geometric_mean() }
}

impl RoughnessSpectrum {
    /// A spectrum from its density at the reference wave number.
    ///
    /// - `reference_density`: Gd(n0) (m³), 1e-9 to 1
    ///
    /// Errors: [`RoadError::Range`].
    ///
    /// Source: ISO 8608:2016, waviness 2.
    pub fn new(reference_density: f64) -> Result<Self, RoadError> {
        let thing = "displacement density at 0.1 cycle/m";
        Ok(Self { reference_density: accepted(thing, reference_density, "m³", 1e-9..=1.0)? })
    }

    /// Gd(n0) (m³).
    pub fn reference_density(&self) -> f64 {
        self.reference_density
    }

    /// Displacement density Gd(n) (m³, which is m² per cycle/m).
    ///
    /// - `wave_number`: n (cycle/m), above 0
    pub fn density(&self, wave_number: f64) -> f64 {
        let ratio = REFERENCE / wave_number;
        self.reference_density * ratio * ratio
    }

    /// Displacement density Gd(Ω) = Gd(n = Ω/2π)/2π (m³, which is m² per rad/m).
    ///
    /// - `angular_wave_number`: Ω (rad/m), above 0
    pub fn angular_density(&self, angular_wave_number: f64) -> f64 {
        self.density(angular_wave_number / TAU) / TAU
    }

    /// The spectrum in time when the road is passed at a speed.
    ///
    /// - `speed`: v (m/s), 0.01 to 200
    ///
    /// Errors: [`RoadError::Range`].
    pub fn time_spectrum(&self, speed: f64) -> Result<TimeSpectrum, RoadError> {
        Ok(TimeSpectrum {
            spectrum: *self,
            speed: accepted("speed over the road", speed, "m/s", 0.01..=200.0)?,
        })
    }
}

impl TimeSpectrum {
    /// Displacement density Gd(f) (m²/Hz).
    ///
    /// - `frequency`: f (Hz), above 0
    pub fn density(&self, frequency: f64) -> f64 {
        self.spectrum.density(frequency / self.speed) / self.speed
    }

    /// Speed v (m/s).
    pub fn speed(&self) -> f64 {
        self.speed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::{assert_abs_diff_eq, assert_relative_eq};

    #[test]
    fn angular_density_matches_iso_8608_class_a() {
        // Printed 1.00531e-6 m³ at 1 rad/m.
        let density = iso_8608_spectrum(RoughnessClass::A).angular_density(1.0);
        assert_abs_diff_eq!(density, 1.00531e-6, epsilon = 0.5e-11);
    }

    #[test]
    fn density_falls_with_the_square_of_the_wave_number() {
        let spectrum = iso_8608_spectrum(RoughnessClass::C);
        assert_relative_eq!(spectrum.density(0.1), 256e-6);
        assert_relative_eq!(spectrum.density(1.0), 2.56e-6, max_relative = 1e-15);
    }

    #[test]
    fn a_band_holds_the_same_energy_in_space_and_in_time() {
        let (spectrum, v) = (iso_8608_spectrum(RoughnessClass::B), 25.0);
        let time = spectrum.time_spectrum(v).unwrap();
        for n in [0.011, 0.1, 2.83] {
            assert_relative_eq!(time.density(n * v) * v, spectrum.density(n), max_relative = 1e-14);
        }
    }

    #[test]
    fn densities_and_speeds_out_of_range_are_refused() {
        for bad in [0.0, -1.0, f64::NAN, 1.1] {
            assert!(RoughnessSpectrum::new(bad).is_err(), "{bad}");
        }
        assert!(iso_8608_spectrum(RoughnessClass::A).time_spectrum(0.0).is_err());
    }
}
