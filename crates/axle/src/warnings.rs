//! Doubts about a static result that follow from the axle itself.

use crate::outcome::Warning;
use crate::{Axle, Side};

/// Everything worth a warning before any case is solved.
pub(crate) fn warnings(axle: &Axle) -> Vec<Warning> {
    let mut warnings = Vec::new();
    if let Some(sides) = sides_where(|side| axle.seats.of(side).rotational_stiffness == 0.0) {
        warnings.push(Warning {
            text: format!("the seat has no rotational stiffness ({sides}): it carries no bending moment"),
            advice: "give rotational_stiffness if arm, spring pack or bush resist the axle's slope"
                .to_owned(),
        });
    }
    let beyond = |side: Side| {
        let end = axle.wheel_ends.of(side);
        end.mounting_face + axle.wheels.of(side).outset() - end.outer_bearing
    };
    if let Some(sides) = sides_where(|side| beyond(side) > 0.0) {
        let farthest = beyond(Side::Left).max(beyond(Side::Right));
        warnings.push(Warning {
            text: format!(
                "the wheel's load acts {:.0} mm outboard of the outer bearing ({sides}), so that the inner bearing is loaded the other way",
                farthest * 1e3
            ),
            advice: "ask the axle maker whether this wheel offset is within the axle's rating".to_owned(),
        });
    }
    warnings
}

/// The sides for which something holds, in words; `None` when it holds for neither.
fn sides_where(holds: impl Fn(Side) -> bool) -> Option<&'static str> {
    match (holds(Side::Left), holds(Side::Right)) {
        (true, true) => Some("left and right"),
        (true, false) => Some("left"),
        (false, true) => Some("right"),
        (false, false) => None,
    }
}
