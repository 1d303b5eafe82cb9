//! A doubt about answers that hang on how little a mode is damped.

use crate::{ModeOutcome, Warning};

/// Damping ratio below which an answer hangs on numbers that are known only roughly, such as loss factors.
const LIGHT: f64 = 0.01;

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
