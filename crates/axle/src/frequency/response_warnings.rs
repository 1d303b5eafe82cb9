//! Doubts about answers in the frequency domain.

use crate::dynamics::light_damping::light_damping;
use crate::{ResponseOutcome, Side, Warning};

/// A Gaussian load falls to zero once in 740 mean crossings when its rms is this share of the load at rest:
/// `exp(-3.63²/2)` (S. O. Rice, 1945, from memory).
const LIFTS_OFF: f64 = 1.0 / 3.63;

pub(crate) fn response_warnings(outcome: &ResponseOutcome) -> Vec<Warning> {
    lifts_off(outcome).into_iter().chain(lightly_damped(outcome)).collect()
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

/// The modes that resonances of the answers are named by.
fn lightly_damped(outcome: &ResponseOutcome) -> Option<Warning> {
    let stress = outcome.stress.iter().map(|station| &station.transfer);
    let transfers = [&outcome.camber.left, &outcome.camber.right, &outcome.load.left, &outcome.load.right];
    let peaks = transfers.into_iter().chain(stress).flat_map(|transfer| &transfer.resonances);
    let named: Vec<&str> = peaks.filter_map(|peak| Some(peak.mode.as_ref()?.0.as_str())).collect();
    light_damping(&outcome.modes, |name| named.contains(&name))
}
