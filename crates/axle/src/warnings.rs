//! Doubts about a static result that follow from the axle itself.

use crate::outcome::Warning;
use crate::{Axle, Side};

/// Everything worth a warning before any case is solved.
pub(crate) fn warnings(axle: &Axle) -> Vec<Warning> {
    let mut warnings = Vec::new();
    for side in Side::BOTH {
        let (seat, end) = (axle.seats.of(side), axle.wheel_ends.of(side));
        if seat.rotational_stiffness == 0.0 {
            warnings.push(Warning {
                text: format!("the {} seat has no rotational stiffness: it carries no bending moment", side.word()),
                advice: "give rotational_stiffness if arm, spring pack or bush resist the axle's slope".to_owned(),
            });
        }
        for tire in axle.wheels.of(side).tires() {
            let beyond = end.mounting_face + tire.outboard;
            if beyond > end.outer_bearing {
                warnings.push(Warning {
                    text: format!(
                        "the {} {} tire's centre lies {:.0} mm outboard of the outer bearing, so that the inner bearing is pulled down",
                        side.word(),
                        tire.name,
                        (beyond - end.outer_bearing) * 1e3
                    ),
                    advice: "ask the axle maker whether this wheel offset is within the axle's rating".to_owned(),
                });
            }
        }
    }
    warnings
}
