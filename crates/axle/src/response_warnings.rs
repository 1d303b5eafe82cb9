//! Doubts about answers in the frequency domain.

use crate::{ModeOutcome, ResponseOutcome, Side, Warning};

/// A Gaussian load falls to zero once in 740 mean crossings when its rms is this share of the load at rest:
/// `exp(-3.63²/2)` (S. O. Rice, 1945, from memory).
const LIFTS_OFF: f64 = 1.0 / 3.63;

/// Damping ratio below which steel's own damping, which the model leaves out, is of the same size (from memory).
const HARDLY_DAMPED: f64 = 2e-3;

pub(crate) fn response_warnings(outcome: &ResponseOutcome) -> Vec<Warning> {
    lifts_off(outcome).into_iter().chain(hardly_damped(outcome)).collect()
}

fn lifts_off(outcome: &ResponseOutcome) -> Option<Warning> {
    let random = outcome.random.as_ref()?;
    let share = |side: Side| random.load.of(side).rms / outcome.load_at_rest.of(side);
    let most = share(Side::Left).max(share(Side::Right));
    (most > LIFTS_OFF).then(|| Warning {
        text: format!(
            "the rms of a wheel's load is {:.0} % of its load at rest: a tire would leave the road at times, \
             which spectra do not know",
            100.0 * most
        ),
        advice: "run `axlebow ride` over the same road".to_owned(),
    })
}

fn hardly_damped(outcome: &ResponseOutcome) -> Option<Warning> {
    let stress = outcome.stress.iter().map(|station| &station.transfer);
    let transfers = [&outcome.camber.left, &outcome.camber.right, &outcome.load.left, &outcome.load.right];
    let peaks = transfers.into_iter().chain(stress).flat_map(|transfer| &transfer.resonances);
    let named: Vec<&str> = peaks.filter_map(|peak| Some(peak.mode.as_ref()?.0.as_str())).collect();
    let doubtful =
        |mode: &&ModeOutcome| mode.damping_ratio < HARDLY_DAMPED && named.contains(&mode.name.as_str());
    let mode = outcome.modes.iter().find(doubtful)?;
    Some(Warning {
        text: format!(
            "the {} at {:.1} Hz has a damping ratio of {:.2} % from tires and seats; the damping of steel and \
             joints is left out, so that answers near it are too large",
            mode.name,
            mode.frequency,
            100.0 * mode.damping_ratio
        ),
        advice: "take peaks near that frequency as an upper bound".to_owned(),
    })
}
