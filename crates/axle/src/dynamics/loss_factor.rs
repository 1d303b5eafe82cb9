//! Loss factors of natural modes.

use axlebow_fe::{Mode, SpringId};

use crate::dynamics::vibration::VibrationModel;
use crate::{Part, Side, Sides};

/// Loss factor of a mode: that of each part by its share of the strain energy. Bearings count as the spindle's steel;
/// tires, and what the rest of the vehicle puts against roll, have dampers of their own.
pub(crate) fn loss_factor(model: &VibrationModel, mode: &Mode) -> f64 {
    let (axle, frame) = (model.axle, &model.frame);
    let steel = |part: Part| axle.body.material(part).loss_factor();
    let beams = frame
        .stretches
        .iter()
        .map(|stretch| steel(stretch.piece.part) * mode.strain_share_of_beam(&frame.structure, stretch.beam));
    let share = |spring: &SpringId| mode.strain_share_of_spring(&frame.structure, *spring);
    let bearings = |pair: &Sides<SpringId>| steel(Part::Spindle) * (share(&pair.left) + share(&pair.right));
    let seats = Side::BOTH.map(|side| axle.seats.of(side).loss_factor * share(frame.seats.of(side)));
    beams.sum::<f64>()
        + seats.iter().sum::<f64>()
        + bearings(&frame.inner_bearings)
        + bearings(&frame.outer_bearings)
        + bearings(&frame.brakes)
}
