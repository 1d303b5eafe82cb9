//! What tires feel of a random road in time.

use std::f64::consts::PI;

use crate::error::accepted;
use crate::track::CONTACT_LENGTHS;
use crate::{Coherence, RandomRoad, RoadError, TimeSpectrum, WaveBand};

/// One-sided spectra in time of a random road that tires of one contact length pass at a speed.
///
/// The two tracks are the mean of both and a difference from it, which are strangers to each other
/// (see [`RandomRoad`]): `left, right = m ± d`.
///
/// ```text
/// of m: (1 + γ)/2 · E² · Gd(f)   of d: (1 − γ)/2 · E² · Gd(f)   n = f/v,   E = sin(πnL)/(πnL)
/// ```
///
/// E is what a mean over the contact length L leaves of a wave ([`crate::Track::enveloped`]).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FeltSpectrum {
    spectrum: TimeSpectrum,
    coherence: Coherence,
    band: WaveBand,
    contact_length: f64,
}

/// Spectral densities (m²/Hz) of both tracks at one frequency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackDensities {
    /// Of the mean m of both tracks.
    pub mean: f64,
    /// Of the difference d of a track from the mean.
    pub difference: f64,
}

impl FeltSpectrum {
    /// The spectra of a random road.
    ///
    /// - `speed`: v (m/s), 0.01 to 200
    /// - `contact_length`: L (m), 1 mm to 2 m
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(road: &RandomRoad, speed: f64, contact_length: f64) -> Result<Self, RoadError> {
        Ok(Self {
            spectrum: road.spectrum.time_spectrum(speed)?,
            coherence: road.coherence,
            band: road.band,
            contact_length: accepted("contact length of the tire", contact_length, "m", CONTACT_LENGTHS)?,
        })
    }

    /// Speed v (m/s).
    pub fn speed(&self) -> f64 {
        self.spectrum.speed()
    }

    /// Lowest and highest frequency (Hz) that the road holds at this speed.
    pub fn frequencies(&self) -> [f64; 2] {
        [self.band.low(), self.band.high()].map(|n| n * self.speed())
    }

    /// Densities at a frequency; zero outside the waves that the road holds.
    ///
    /// - `frequency`: f (Hz), above 0
    pub fn at(&self, frequency: f64) -> TrackDensities {
        let [low, high] = self.frequencies();
        if !(low..=high).contains(&frequency) {
            return TrackDensities { mean: 0.0, difference: 0.0 };
        }
        let n = frequency / self.speed();
        let gamma = self.coherence.at(n);
        let felt = self.spectrum.density(frequency) * share_of_wave(PI * n * self.contact_length).powi(2);
        TrackDensities { mean: 0.5 * (1.0 + gamma) * felt, difference: 0.5 * (1.0 - gamma) * felt }
    }
}

/// sin(a)/a, the mean of a wave over a window of half the angle a about its crest.
fn share_of_wave(a: f64) -> f64 {
    if a == 0.0 { 1.0 } else { a.sin() / a }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{RoughnessClass, Track, iso_8608_spectrum};
    use approx::assert_relative_eq;

    fn road() -> RandomRoad {
        RandomRoad {
            spectrum: iso_8608_spectrum(RoughnessClass::B),
            coherence: Coherence::isotropic(1.9).unwrap(),
            band: WaveBand::default(),
            length: 400.0,
            spacing: 0.02,
            seed: 3,
        }
    }

    /// A generated road repeats, so its mean square over its length is the sum over its harmonics, which the
    /// integral of the density differs from by how far apart the harmonics are.
    #[test]
    fn tracks_of_a_generated_road_have_the_stated_mean_squares() {
        let (road, v, contact) = (road(), 20.0, 0.3);
        let felt = FeltSpectrum::new(&road, v, contact).unwrap();
        let tracks = road.profiles().unwrap().map(|profile| Track::new(profile).enveloped(contact).unwrap());
        let heights = |x: f64| [&tracks[0], &tracks[1]].map(|track| track.height(x));
        let (mut mean, mut difference, count) = (0.0, 0.0, 20_000);
        for i in 0..count {
            let [left, right] = heights(400.0 * f64::from(i) / f64::from(count));
            mean += (0.5 * (left + right)).powi(2) / f64::from(count);
            difference += (0.5 * (left - right)).powi(2) / f64::from(count);
        }
        let harmonics = (1..).map(|k| f64::from(k) * v / 400.0).take_while(|f| *f <= felt.frequencies()[1]);
        let (mut of_mean, mut of_difference) = (0.0, 0.0);
        for frequency in harmonics {
            let at = felt.at(frequency);
            of_mean += at.mean * v / 400.0;
            of_difference += at.difference * v / 400.0;
        }
        // Straight lines between samples lower a wave of a meter, where the difference has most, by 0.1 %; the
        // ends of the road, where the contact reaches beyond it, are a thousandth of it.
        assert_relative_eq!(mean, of_mean, max_relative = 2e-3);
        assert_relative_eq!(difference, of_difference, max_relative = 4e-3);
    }

    #[test]
    fn both_parts_make_the_class_where_waves_are_long() {
        let felt = FeltSpectrum::new(&road(), 20.0, 0.2).unwrap();
        let at = felt.at(0.5);
        let class = iso_8608_spectrum(RoughnessClass::B).time_spectrum(20.0).unwrap().density(0.5);
        // A wave of 40 m loses (π·0.2/40)²/3 of its density to the contact.
        assert_relative_eq!(at.mean + at.difference, class, max_relative = 1e-4);
        assert!(at.mean > 10.0 * at.difference);
    }

    #[test]
    fn nothing_is_felt_outside_the_band() {
        let felt = FeltSpectrum::new(&road(), 20.0, 0.2).unwrap();
        let [low, high] = felt.frequencies();
        assert_relative_eq!(low, 0.22, max_relative = 1e-15);
        assert_relative_eq!(high, 56.6, max_relative = 1e-15);
        for frequency in [0.21, 56.7] {
            assert_eq!(felt.at(frequency), TrackDensities { mean: 0.0, difference: 0.0 });
        }
    }

    #[test]
    fn speeds_and_contacts_out_of_range_are_refused() {
        assert!(FeltSpectrum::new(&road(), 0.0, 0.2).is_err());
        assert!(FeltSpectrum::new(&road(), 20.0, 0.0).is_err());
        assert!(FeltSpectrum::new(&road(), 20.0, f64::NAN).is_err());
    }
}
