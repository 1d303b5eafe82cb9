//! What can be drawn of a load case.

use axlebow_axle::{CaseOutcome, Side};

use super::Drawing;
use crate::ReportError;
use crate::panels::finite;

/// Refuses a case or sizes that cannot be drawn.
pub(crate) fn drawable(case: &CaseOutcome, drawing: &Drawing) -> Result<(), ReportError> {
    if case.diagram.is_empty() {
        return Err(ReportError::Empty { thing: "diagram of the load case" });
    }
    let diagram = case.diagram.iter().flat_map(|point| {
        let r = &point.resultants;
        [point.y, point.uz, r.moment_x, r.moment_z, point.stress]
    });
    let tires = drawing.tires.left.iter().chain(&drawing.tires.right);
    let sizes = tires
        .flat_map(|tire| [tire.y, tire.radius, tire.width])
        .chain(drawing.line.iter().flat_map(|point| [point.y, point.half_height]))
        .chain([drawing.hubs.left, drawing.hubs.right, drawing.seats.left, drawing.seats.right]);
    finite("diagram of the load case", diagram)?;
    finite("size in the drawing", sizes)?;
    finite("position of a station", case.stations.iter().map(|station| station.y))?;
    Side::BOTH.into_iter().try_for_each(|side| wheel_end(case, side))
}

fn wheel_end(case: &CaseOutcome, side: Side) -> Result<(), ReportError> {
    let (wheel, seat) = (case.wheels.of(side), case.seats.of(side));
    let contacts = wheel.contacts.iter().flat_map(|contact| [contact.y, contact.vertical_load]);
    finite("camber", [wheel.camber, wheel.camber_change].into_iter())?;
    finite("tire load or position", contacts)?;
    finite("seat load or position", [seat.y, seat.vertical].into_iter())
}
