//! The histories of a ride.

use std::fmt::Write as _;

use axlebow_axle::RideOutcome;

use crate::ride_columns::ride_columns;

/// The histories of a ride, a line for each sample; a history that ends early leaves its cells empty.
///
/// Camber change is against the unloaded axle, positive with the tire's top outward; road is the height that the
/// tires feel; stress is the fibre stress of largest magnitude along the axle, signed. A ride that ended early has
/// a last line that begins with `# partial:` and says why. Where the ride kept the stress of each station, these
/// columns follow from left to right.
pub fn ride(outcome: &RideOutcome) -> String {
    let columns = ride_columns(outcome);
    let headings: Vec<&str> = columns.iter().map(|(heading, _)| heading.as_str()).collect();
    let mut text = headings.join(",") + "\r\n";
    for sample in 0..outcome.history.time.len() {
        for (i, (_, values)) in columns.iter().enumerate() {
            let comma = if i > 0 { "," } else { "" };
            let _ = match values.get(sample) {
                Some(value) => write!(text, "{comma}{value:?}"), // a String takes every write
                None => write!(text, "{comma}"),
            };
        }
        text.push_str("\r\n");
    }
    if let Some(why) = &outcome.partial {
        let _ = write!(text, "# partial: {why}\r\n");
    }
    text
}
