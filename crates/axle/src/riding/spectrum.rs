//! The power spectrum of a history.

use std::f64::consts::TAU;

use crate::riding::transforms::powers;
use crate::{RideHistory, Side, Sides};

/// Least length of a segment, s: lines at most half a hertz apart part the body's modes from each other.
const SEGMENT: f64 = 2.0;

/// Segments, end to end, from which on a history is cut into them.
const FEWEST_SEGMENTS: usize = 3;

/// Fewest samples that have a spectrum.
const FEWEST_SAMPLES: usize = 16;

/// A band is as wide as this part of its frequency, or as one line: ISO 8608:2016 joins lines of a measured
/// road in bands of an equal ratio likewise, there of 1/12 octave (from memory); this is about 1/16.
const BAND: f64 = 1.0 / 24.0;

/// One-sided power spectral density of a history about its mean.
#[derive(Debug, Clone, PartialEq)]
pub struct Spectrum {
    /// Distance between lines, Hz.
    pub line_width: f64,
    /// Density at each line, from 0 Hz on, in the square of the history's unit over Hz.
    pub density: Vec<f64>,
    /// Segments over which it is the mean; 1 for a history taken as a whole.
    pub segments: usize,
}

/// A few neighboring lines of a spectrum joined.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Frequency in its middle, Hz.
    pub frequency: f64,
    /// Width, Hz.
    pub width: f64,
    /// Mean density, in the square of the history's unit over Hz.
    pub density: f64,
}

impl Spectrum {
    /// The spectrum of a history sampled every `step` seconds; `None` for fewer than 16 samples.
    ///
    /// - of three segments and more: the mean over segments of at least 2 s (a power of two of samples) that
    ///   overlap by half, each about its own mean under a Hann window
    /// - of less: the periodogram of the whole history, whose sum over all lines is the variance exactly
    ///
    /// `S_k = 2 |X_k|² step / Σ w²`, half of that at 0 Hz and at the highest line of an even count.
    ///
    /// Source: P. D. Welch, "The use of fast Fourier transform for the estimation of power spectra", IEEE Trans.
    /// Audio Electroacoust. 15 (1967) 70-73 (from memory); values as from `scipy.signal.welch`.
    pub fn of(history: &[f64], step: f64) -> Option<Self> {
        let count = history.len();
        let length = ((SEGMENT / step).ceil() as usize).next_power_of_two();
        if count < FEWEST_SAMPLES {
            return None;
        }
        if count < FEWEST_SEGMENTS * length {
            return Self::mean_of(std::iter::once(history), &vec![1.0; count], step);
        }
        let hann: Vec<f64> =
            (0..length).map(|i| 0.5 - 0.5 * (TAU * i as f64 / length as f64).cos()).collect();
        Self::mean_of(history.windows(length).step_by(length / 2), &hann, step)
    }

    fn mean_of<'a>(segments: impl Iterator<Item = &'a [f64]>, window: &[f64], step: f64) -> Option<Self> {
        let length = window.len();
        let mut density = vec![0.0; length / 2 + 1];
        let mut count = 0;
        for segment in segments {
            let mean = segment.iter().sum::<f64>() / length as f64;
            let power = powers(segment.iter().zip(window).map(|(x, w)| w * (x - mean)), length)?;
            density.iter_mut().zip(power).for_each(|(sum, power)| *sum += power);
            count += 1;
        }
        let energy: f64 = window.iter().map(|w| w * w).sum();
        let scale = 2.0 * step / (energy * f64::from(count));
        density.iter_mut().for_each(|line| *line *= scale);
        density[0] *= 0.5;
        if length.is_multiple_of(2) {
            density[length / 2] *= 0.5;
        }
        Some(Spectrum { line_width: 1.0 / (length as f64 * step), density, segments: count as usize })
    }

    /// Mean square of the history about its mean, `Σ S_k Δf`.
    pub fn variance(&self) -> f64 {
        self.line_width * self.density.iter().sum::<f64>()
    }

    /// The lines above 0 Hz, joined to bands of about 1/16 octave where lines lie closer: a few hundred bands at
    /// most, which hold as much as the lines do.
    pub fn bands(&self) -> Vec<Band> {
        let mut bands = Vec::new();
        let mut first = 1;
        while first < self.density.len() {
            let count = ((BAND * first as f64) as usize).clamp(1, self.density.len() - first);
            let lines = &self.density[first..first + count];
            bands.push(Band {
                frequency: self.line_width * (first as f64 + 0.5 * (count - 1) as f64),
                width: self.line_width * count as f64,
                density: lines.iter().sum::<f64>() / count as f64,
            });
            first += count;
        }
        bands
    }
}

impl RideHistory {
    /// The spectrum of each wheel's camber, rad²/Hz; `None` for a ride of fewer than 16 samples.
    pub fn camber_spectra(&self) -> Option<Sides<Spectrum>> {
        let (first, last) = (self.time.first()?, self.time.last()?);
        let step = (last - first) / (self.time.len() - 1) as f64;
        let of = |side: Side| Spectrum::of(self.camber.of(side), step);
        Some(Sides { left: of(Side::Left)?, right: of(Side::Right)? })
    }
}
