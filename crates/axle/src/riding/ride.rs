//! A ride: the axle in time over a road, with tires that may leave it.
//!
//! The axle, its springs, the body and what the rest of the vehicle puts against its roll are linear; each tire pushes on the road through a one-sided spring and
//! damper, dampers and bump stops act between axle and body at the seats, and a bearing with play presses when
//! its hub has crossed the gap. The ride starts at rest on the road's first height.

use axlebow_fe::{
    Direction, DynamicSystem, ForceLaw, Freedom, LinearDamper, LocalLaw, MotionReader, Scheme, TimedLoad,
    assemble_mass, assemble_stiffness,
};
use axlebow_road::{Road, Track};

use crate::dynamics::at_rest::AtRest;
use crate::dynamics::vibration::VibrationModel;
use crate::riding::moments::RecordOptions;
use crate::riding::ride_basis::RideBasis;
use crate::riding::ride_laws::RidePart;
use crate::riding::ride_outcome::RideOutcome;
use crate::riding::riding_axle::RidingAxle;
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::{Axle, AxleError, Side};

/// The road input, and how it is driven.
#[derive(Debug, Clone, PartialEq)]
pub struct Ride {
    /// Name for results.
    pub name: String,
    /// Height of the road under each side's wheels against distance.
    pub road: Road,
    /// Whether the road repeats after its end, as a random one does: the ride then has a run-in over the road's end, so that
    /// its samples begin in the motion of a long ride and not at rest.
    pub repeats: bool,
    /// Speed, m/s.
    pub speed: f64,
    /// Length of a tire's contact with the road, over which it takes the mean height, m.
    pub contact_length: f64,
    /// Distance from where the road's event begins at which the ride begins, m; negative for a run-up.
    pub from: f64,
    /// Distance at which the ride ends, m.
    pub to: f64,
    /// Length of a time step, s.
    pub step: f64,
    /// Load of the axle on the road at rest, N.
    pub axle_load: f64,
    /// The motions that it is solved in.
    pub basis: RideBasis,
    /// How it advances in time.
    pub scheme: Scheme,
    /// What is kept beside the histories that always are.
    pub keep: RecordOptions,
}

impl Ride {
    pub(crate) fn check(&self) -> Result<f64, AxleError> {
        crate::parts::error::positive("speed", self.speed, "m/s")?;
        crate::parts::error::positive("contact length", self.contact_length, "m")?;
        crate::parts::error::positive("time step", self.step, "s")?;
        if let Scheme::GeneralizedAlpha { spectral_radius: value } = self.scheme
            && !(0.0..=1.0).contains(&value)
        {
            let (what, accepted) = ("spectral radius", "a value from 0 to 1");
            return Err(AxleError::Value { what, value, unit: "", accepted });
        }
        crate::parts::error::finite("start of the ride", self.from, "m")?;
        let duration = (self.to - self.from) / self.speed;
        crate::parts::error::positive("length of the ride in time", duration, "s")?;
        Ok(duration)
    }
}

/// Drives an axle over a road.
///
/// # Errors
/// [`AxleError::Value`] for a speed, step or length out of range; [`AxleError::LoadBelowWeight`];
/// [`AxleError::Road`] when the road cannot be felt through the contact length; [`AxleError::Fe`]. A ride that
/// stops converging on its way is no error: what was driven is kept and marked as partial.
pub fn ride(axle: &Axle, ride: &Ride) -> Result<RideOutcome, AxleError> {
    RidingAxle::of(axle, ride.axle_load)?.ride(ride)
}

/// The equations of the axle on a level road; the laws of the tires come first, those given follow.
pub(crate) fn system(
    model: &VibrationModel,
    laws: Vec<(RidePart, LocalLaw)>,
) -> Result<DynamicSystem, AxleError> {
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
    for contact in model.contacts() {
        let tire = model.axle.wheels.of(contact.side).tire();
        let (stiffness, damping) = (tire.vertical_stiffness, tire.damping);
        let force = ForceLaw::Contact { stiffness, damping, clearance: contact.rise };
        let direction = Direction::at(structure, &contact.at, [0.0, 0.0, 1.0]);
        system.add_law(LocalLaw::along(direction, force))?;
    }
    for (_, law) in laws {
        system.add_law(law)?;
    }
    Ok(system)
}

/// The moment (N m) that makes the spring of the rest of the vehicle do nothing at rest on a level road, as in statics:
/// the rest of the vehicle leans as this axle's loads make it lean.
fn roll_moment_at_rest(model: &VibrationModel) -> Result<f64, AxleError> {
    Ok(model.axle.body_roll_stiffness * AtRest::under(model.axle, model.axle_load)?.body_roll)
}

pub(crate) fn track(road: &Road, side: Side) -> &Track {
    match side {
        Side::Left => &road.left,
        Side::Right => &road.right,
    }
}

/// Height of a track at a distance (m) and how fast it rises under a tire (m/s).
pub(crate) fn felt(track: &Track, distance: f64, speed: f64) -> [f64; 2] {
    [track.height(distance), speed * track.slope(distance)]
}
