//! The histories of a ride.

use std::io::{self, Write};

use axlebow_axle::RideOutcome;

use crate::columns::ride_columns;

/// Writes the histories of a ride, a line for each sample; a history that ends early leaves its cells empty.
///
/// Camber change is against the unloaded axle, positive with the tire's top outward; road is the height that the
/// tires feel; stress is the fiber stress of largest magnitude along the axle, signed. A ride that ended early has
/// a last line that begins with `# partial:` and says why. Where the ride kept the stress of each station, these
/// columns follow from left to right.
///
/// # Errors
/// Those of the writer.
pub fn write_ride(outcome: &RideOutcome, out: &mut impl Write) -> io::Result<()> {
    let columns = ride_columns(outcome);
    let headings: Vec<&str> = columns.iter().map(|(heading, _)| heading.as_str()).collect();
    write!(out, "{}\r\n", headings.join(","))?;
    for sample in 0..outcome.history.time.len() {
        for (i, (_, values)) in columns.iter().enumerate() {
            let comma = if i > 0 { "," } else { "" };
            match values.get(sample) {
                Some(value) => write!(out, "{comma}{value:?}")?,
                None => write!(out, "{comma}")?,
            }
        }
        write!(out, "\r\n")?;
    }
    match &outcome.partial {
        Some(why) => write!(out, "# partial: {why}\r\n"),
        None => Ok(()),
    }
}
