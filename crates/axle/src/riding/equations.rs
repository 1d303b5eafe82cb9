//! The equations of an axle on a level road.

use axlebow_fe::{
    Direction, DynamicSystem, ForceLaw, Freedom, LinearDamper, LocalLaw, MotionReader, TimedLoad,
    assemble_mass, assemble_stiffness,
};

use crate::AxleError;
use crate::dynamics::at_rest::AtRest;
use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::riding::ride_laws::RidePart;
use crate::road_contact::ground::STANDARD_GRAVITY;

/// The equations of the axle on a level road; the laws of the tires come first, those given follow.
pub(crate) fn system(
    model: &VibrationModel,
    laws: Vec<(RidePart, LocalLaw)>,
) -> Result<DynamicSystem, AxleError> {
    let mut system = off_the_road(model)?;
    for contact in model.contacts() {
        system.add_law(tire(model, &contact))?;
    }
    for (_, law) in laws {
        system.add_law(law)?;
    }
    Ok(system)
}

/// The equations of the axle with its weight and nothing that carries it.
pub(crate) fn off_the_road(model: &VibrationModel) -> Result<DynamicSystem, AxleError> {
    let structure = &model.frame.structure;
    let mass = assemble_mass(structure);
    let reader = MotionReader::of(structure);
    let rise = reader.vector_of(|_| [0.0, 0.0, 1.0, 0.0, 0.0, 0.0]);
    let mut weight = vec![0.0; rise.len()];
    mass.multiply(&rise, &mut weight);
    let mut system = DynamicSystem::new(assemble_stiffness(structure), mass)?;
    let down = weight.iter().map(|part| -STANDARD_GRAVITY * part);
    let roll = Direction::of_freedom(structure, model.body, Freedom::Rx);
    let at_rest = roll_moment_at_rest(model)?;
    let held = roll.parts().iter().map(|(freedom, part)| (*freedom, at_rest * part));
    system.add_load(TimedLoad::new(Direction::new(down.enumerate().chain(held)), |_| 1.0))?;
    system.add_damper(LinearDamper { direction: roll, damping: model.axle.body_roll_damping })?;
    Ok(system)
}

/// A tire on the road.
pub(crate) fn tire(model: &VibrationModel, contact: &TireContact) -> LocalLaw {
    let (stiffness, damping) = (contact.stiffness, model.axle.wheels.of(contact.side).tire().damping);
    let force = ForceLaw::Contact { stiffness, damping, clearance: contact.rise };
    LocalLaw::along(Direction::at(&model.frame.structure, &contact.at, [0.0, 0.0, 1.0]), force)
}

/// The moment (N m) that makes the spring of the rest of the vehicle do nothing at rest on a level road, as in statics:
/// the rest of the vehicle leans as this axle's loads make it lean.
fn roll_moment_at_rest(model: &VibrationModel) -> Result<f64, AxleError> {
    Ok(model.axle.body_roll_stiffness * AtRest::under(model.axle, model.axle_load)?.body_roll)
}
