//! What of axle and road may print cups.

use axlebow_road::{Event, Track};
use axlebow_tread::{Suspect, SuspectKind};

use crate::ModeOutcome;

/// Modes as suspects: their weight is the share of strain that is in what moves the tire face, that is in tires, axle
/// and bearings and not in the suspension.
pub fn mode_suspects(modes: &[ModeOutcome]) -> Vec<Suspect> {
    let suspect = |mode: &ModeOutcome| {
        let (tires, axle) = (mode.strain.tires, mode.strain.beam + mode.strain.bearings);
        let why = format!(
            "{:.0} % of its strain is in the tires (load), {:.0} % in axle and bearings (camber)",
            100.0 * tires,
            100.0 * axle
        );
        Suspect {
            kind: SuspectKind::Mode,
            name: mode.name.clone(),
            frequency: mode.frequency,
            weight: (tires + axle).clamp(0.0, 1.0),
            why,
        }
    };
    modes.iter().map(suspect).collect()
}

/// A road that comes back as a suspect, at a speed (m/s): a washboard does, bumps, holes and random roads do not.
pub fn road_suspect(track: &Track, speed: f64) -> Option<Suspect> {
    let Event::Washboard(washboard) = track.event() else { return None };
    let length = washboard.wavelength();
    Some(Suspect {
        kind: SuspectKind::Road,
        name: format!("washboard, crests {length:.2} m apart"),
        frequency: speed / length,
        weight: 1.0,
        why: format!("{} crests that push every tire alike", washboard.count()),
    })
}
