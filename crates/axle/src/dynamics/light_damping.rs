//! A doubt about answers that hang on how little a mode is damped.

use crate::{ModeOutcome, RideOutcome, Side, Warning};

/// Damping ratio below which an answer hangs on numbers that are known only roughly, such as loss factors.
const LIGHT: f64 = 0.01;

/// Part of the highest density of a spectrum from which on a peak has a say in the whole: a tenth of the amplitude.
const LOUD: f64 = 0.01;

/// Peaks of a spectrum that are looked at.
const PEAKS: usize = 8;

/// Names those of the modes that answer which are damped less than 1 % of critical.
pub(crate) fn light_damping(modes: &[ModeOutcome], answers: impl Fn(&str) -> bool) -> Option<Warning> {
    let light = modes.iter().filter(|mode| mode.damping_ratio < LIGHT && answers(&mode.name));
    let named: Vec<_> = light
        .map(|mode| {
            format!("{} at {:.1} Hz ({:.2} %)", mode.name, mode.frequency, 100.0 * mode.damping_ratio)
        })
        .collect();
    (!named.is_empty()).then(|| Warning {
        text: format!(
            "the answer has a part in modes that are damped less than 1 % of critical: {}; how large it is near them hangs \
             on damping that is known only roughly",
            named.join(", ")
        ),
        advice: "take what they add as an upper bound, or give `loss_factor` of material and seat from a measurement"
            .to_owned(),
    })
}

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
