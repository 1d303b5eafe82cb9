//! A random road with a given spectrum.

use std::f64::consts::TAU;

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use realfft::RealFftPlanner;
use realfft::num_complex::Complex;

use crate::error::{accepted, accepted_count, accepted_length};
use crate::profile::MOST_SAMPLES;
use crate::{Coherence, MeasuredProfile, Road, RoadError, RoughnessSpectrum, Track, WaveBand};

/// A random road with a given spectrum: two tracks, each a sum of harmonics of the road's length.
///
/// ```text
/// left, right = m ± d,   m = Σ aₖ √((1+γₖ)/2) cos(2πnₖx + φₖ),   d = Σ aₖ √((1-γₖ)/2) cos(2πnₖx + ψₖ)
/// nₖ = k/length within the band,   aₖ = √(2 Gd(nₖ)/length)
/// ```
///
/// with φ and ψ random. Both tracks then have the spectrum Gd and the cross
/// spectrum γ Gd, and neither side is preferred. The sums are evaluated at the
/// samples by one Fourier transform a track; summing them one by one costs the
/// count of harmonics times the count of samples, 10⁹ cosines for 5 km. Between
/// samples the ground is straight, which lowers a wave ten spacings long by 3 %.
/// The road repeats after its length, and its mean height is 0, not
/// its first.
///
/// Source: harmonics with random phases, M. Shinozuka and C.-M. Jan, J. Sound
/// Vib. 25 (1972) 111-128 (from memory).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RandomRoad {
    /// The spectrum of each track.
    pub spectrum: RoughnessSpectrum,
    /// The likeness of the tracks.
    pub coherence: Coherence,
    /// The waves that the road holds; there are none outside.
    pub band: WaveBand,
    /// Length (m), one of the longest waves or more; rounded up to whole spacings.
    pub length: f64,
    /// Distance between samples (m), below half the shortest wave.
    pub spacing: f64,
    /// Which of all such roads; the same number gives the same road.
    pub seed: u64,
}

impl RandomRoad {
    /// The two tracks as samples, left first.
    ///
    /// Errors: [`RoadError::Range`], [`RoadError::Count`], [`RoadError::SpacingCoarse`],
    /// [`RoadError::RoadShort`].
    pub fn profiles(&self) -> Result<[MeasuredProfile; 2], RoadError> {
        let count = self.count()?;
        let mut spectra = [vec![Complex::default(); count / 2 + 1], vec![Complex::default(); count / 2 + 1]];
        let (mut mean_phases, mut difference_phases) = (self.phases(0), self.phases(1));
        let period = count as f64 * self.spacing;
        for k in 1..count.div_ceil(2) {
            let (phi, psi) = (random_phase(&mut mean_phases), random_phase(&mut difference_phases));
            let n = k as f64 / period;
            if self.band.contains(n) {
                let half = 0.5 * (2.0 * self.spectrum.density(n) / period).sqrt();
                let gamma = self.coherence.at(n);
                let mean = Complex::from_polar(half * (0.5 * (1.0 + gamma)).sqrt(), phi);
                let difference = Complex::from_polar(half * (0.5 * (1.0 - gamma)).sqrt(), psi);
                spectra[0][k] = mean + difference;
                spectra[1][k] = mean - difference;
            }
        }
        Ok(spectra.map(|spectrum| MeasuredProfile::even(self.spacing, samples(spectrum, count))))
    }

    /// The road.
    ///
    /// Errors: as [`RandomRoad::profiles`].
    pub fn road(&self) -> Result<Road, RoadError> {
        let [left, right] = self.profiles()?;
        Ok(Road { left: Track::new(left), right: Track::new(right) })
    }

    /// How many samples the road has before it repeats.
    fn count(&self) -> Result<usize, RoadError> {
        let length = accepted_length("length of the random road", self.length)?;
        let spacing = accepted("sample spacing", self.spacing, "m", 1e-3..=1e3)?;
        let limit = 0.5 / self.band.high();
        if spacing >= limit {
            return Err(RoadError::SpacingCoarse { spacing, limit });
        }
        let least = 1.0 / self.band.low();
        if length < least {
            return Err(RoadError::RoadShort { length, least });
        }
        // A whole count of spacings must not gain one by rounding.
        let count = (length / spacing - 1e-9).ceil() as usize;
        accepted_count("count of samples in the random road", count, 2..=MOST_SAMPLES - 1)
    }

    /// An endless row of random numbers, apart from the other streams of the same seed.
    fn phases(&self, stream: u64) -> ChaCha8Rng {
        let mut key = [0; 32];
        key[..8].copy_from_slice(&self.seed.to_le_bytes());
        let mut numbers = ChaCha8Rng::from_seed(key);
        numbers.set_stream(stream);
        numbers
    }
}

/// A phase from 0 to below 2π (rad), made of the top 53 bits of one random number.
fn random_phase(numbers: &mut ChaCha8Rng) -> f64 {
    TAU * ((numbers.next_u64() >> 11) as f64 / (1_u64 << 53) as f64)
}

/// The heights that a one-sided row of complex half amplitudes stands for, closed by the first one again.
fn samples(mut spectrum: Vec<Complex<f64>>, count: usize) -> Vec<f64> {
    let plan = RealFftPlanner::<f64>::new().plan_fft_inverse(count);
    let mut heights = plan.make_output_vec();
    plan.process(&mut spectrum, &mut heights)
        .expect("the buffers have the plan's lengths and the spectrum's ends are zero");
    heights.push(heights[0]);
    heights
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{RoughnessClass, iso_8608_spectrum};

    fn road() -> RandomRoad {
        RandomRoad {
            spectrum: iso_8608_spectrum(RoughnessClass::B),
            coherence: Coherence::isotropic(1.8).unwrap(),
            band: WaveBand::default(),
            length: 200.0,
            spacing: 0.1,
            seed: 7,
        }
    }

    #[test]
    fn length_is_rounded_up_to_whole_spacings_and_the_road_closes() {
        for (length, count) in [(200.0, 2001), (199.95, 2001), (200.05, 2002)] {
            let [left, _] = RandomRoad { length, ..road() }.profiles().unwrap();
            let heights = left.heights();
            assert_eq!(heights.len(), count);
            assert_eq!(heights[0], heights[count - 1]);
        }
    }

    #[test]
    fn roads_that_cannot_hold_their_band_are_refused() {
        assert_eq!(
            RandomRoad { spacing: 0.2, ..road() }.road().unwrap_err(),
            RoadError::SpacingCoarse { spacing: 0.2, limit: 0.5 / 2.83 }
        );
        assert_eq!(
            RandomRoad { length: 90.0, ..road() }.road().unwrap_err(),
            RoadError::RoadShort { length: 90.0, least: 1.0 / 0.011 }
        );
        assert!(RandomRoad { spacing: 0.001, length: 5e4, ..road() }.road().is_err());
        assert!(RandomRoad { length: f64::NAN, ..road() }.road().is_err());
        assert!(RandomRoad { spacing: 0.0, ..road() }.road().is_err());
    }
}
