//! Modes that a ride makes ring.

use crate::{ModeOutcome, RideOutcome, Side};

/// Part of the highest density of a spectrum from which on a peak has a say in the whole: a tenth of the amplitude.
const LOUD: f64 = 0.01;

/// Peaks of a spectrum that are looked at.
const PEAKS: usize = 8;

/// Names of the modes near the peaks of the spectra of a ride's camber.
pub(crate) fn ringing(outcome: &RideOutcome, modes: &[ModeOutcome]) -> Vec<String> {
    let Some(spectra) = outcome.history.camber_spectra() else { return Vec::new() };
    let movable = outcome.movable(modes);
    let named = Side::BOTH.map(|side| {
        let peaks = spectra.of(side).peaks(&movable, PEAKS);
        let highest = peaks.iter().map(|peak| peak.density).fold(0.0, f64::max);
        let loud = peaks.into_iter().filter(move |peak| peak.density >= LOUD * highest);
        loud.filter_map(|peak| peak.mode).collect::<Vec<_>>()
    });
    named.concat()
}
