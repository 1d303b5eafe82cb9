//! Peaks of the camber's spectrum and the modes that they belong to.

use crate::riding::peak_ground::peak_ground;
use crate::{Band, ModeOutcome, Side, Spectrum};

/// A peak is the highest within this part of its frequency to both sides.
const REACH: f64 = 0.12;

/// Least ratio of a peak to the higher one of the lowest densities between it and what is higher on either side.
const PROMINENT: f64 = 2.0;

/// Part of the highest density below which a peak does not count: a thousandth of the amplitude.
const FAINT: f64 = 1e-6;

/// A mode this near to a peak, as part of its frequency, names it: damping, lift-off and the width of a band
/// move a peak by a few percent.
const NEAR: f64 = 0.08;

/// Camber of a mode, rad for a largest motion of 1 m, below which it cannot show in the camber.
const NO_CAMBER: f64 = 1e-3;

/// A peak of a spectrum.
#[derive(Debug, Clone, PartialEq)]
pub struct SpectrumPeak {
    /// Frequency, Hz.
    pub frequency: f64,
    /// Density of the band.
    pub density: f64,
    /// Name of the mode whose frequency is near; none when no mode that moves the camber is.
    pub mode: Option<String>,
}

impl Spectrum {
    /// The most prominent peaks, at most `most` of them by rising frequency, named by the nearest of `modes`.
    pub fn peaks(&self, modes: &[ModeOutcome], most: usize) -> Vec<SpectrumPeak> {
        let bands = self.bands();
        let densities: Vec<f64> = bands.iter().map(|band| band.density).collect();
        let top = densities.iter().copied().fold(0.0, f64::max);
        let prominence = |i: usize| densities[i] / peak_ground(&densities, i).max(f64::MIN_POSITIVE);
        let mut found: Vec<(f64, Band)> = (0..bands.len())
            .filter(|i| densities[*i] > FAINT * top && is_highest_about(&bands, *i))
            .map(|i| (prominence(i), bands[i]))
            .filter(|(prominence, _)| *prominence >= PROMINENT)
            .collect();
        found.sort_by(|a, b| b.0.total_cmp(&a.0));
        found.truncate(most);
        found.sort_by(|a, b| a.1.frequency.total_cmp(&b.1.frequency));
        let peak = |(_, band): (f64, Band)| {
            let frequency = self.highest_line(band.frequency, band.width);
            SpectrumPeak { frequency, density: band.density, mode: name_near(modes, frequency) }
        };
        found.into_iter().map(peak).collect()
    }

    /// Frequency of the highest line in a band.
    fn highest_line(&self, middle: f64, width: f64) -> f64 {
        let number = |frequency: f64| (frequency / self.line_width).round() as usize;
        let (first, last) = (
            number(middle - 0.5 * (width - self.line_width)),
            number(middle + 0.5 * (width - self.line_width)),
        );
        let highest = (first..=last).max_by(|a, b| self.density[*a].total_cmp(&self.density[*b]));
        highest.map_or(middle, |line| self.line_width * line as f64)
    }
}

/// Whether a band has bands on both sides and the highest density of all near it.
fn is_highest_about(bands: &[Band], i: usize) -> bool {
    let Band { frequency, density, .. } = bands[i];
    let near = |other: &&Band| (other.frequency / frequency - 1.0).abs() <= REACH;
    let beside = i > 0 && i + 1 < bands.len();
    beside
        && [bands[i - 1], bands[i + 1]]
            .iter()
            .chain(bands.iter().filter(near))
            .all(|other| density >= other.density)
}

fn name_near(modes: &[ModeOutcome], frequency: f64) -> Option<String> {
    let off = |mode: &ModeOutcome| (mode.frequency / frequency - 1.0).abs();
    let shows = |mode: &&ModeOutcome| Side::BOTH.iter().any(|side| mode.camber.of(*side).abs() > NO_CAMBER);
    let nearest = modes.iter().filter(shows).min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(nearest) <= NEAR).then(|| nearest.name.clone())
}
