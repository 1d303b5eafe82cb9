//! A ride: the axle in time over a road, with tires that may leave it.
//!
//! The axle, its suspension and the body are linear; each tire pushes on the road through a one-sided
//! spring and damper, each seat's damper acts between axle and body. The ride starts at rest on the road's
//! first height.

use std::ops::ControlFlow;

use axlebow_fe::{
    Attachment, Direction, DynamicSystem, Ended, ForceLaw, LocalLaw, MotionReader, Record, Sample, Scheme,
    Start, TimedLoad, TransientSettings, assemble_mass, assemble_stiffness,
};
use axlebow_road::{Road, Track};

use crate::frame::{RX, Stretch};
use crate::ground::STANDARD_GRAVITY;
use crate::ride_basis::{self, RideBasis, RideMethod};
use crate::ride_outcome::{Driven, RideHistory, RideOutcome, StationPeak};
use crate::vibration::VibrationModel;
use crate::{Axle, AxleError, Side, Sides, along};

/// Half the distance over which a road's slope is taken, m.
const SLOPE_REACH: f64 = 5e-4;

/// Laws of force for each tire come first, then one damper for each seat.
const SEATS: usize = 2;

/// What is driven over, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Ride {
    /// Name for results.
    pub name: String,
    /// Height of the road under each side's wheels against distance.
    pub road: Road,
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
}

/// Most samples of a ride: a longer one needs a longer step.
const MOST_STEPS: f64 = 5e6;

impl Ride {
    fn check(&self) -> Result<f64, AxleError> {
        crate::error::positive("speed", self.speed, "m/s")?;
        crate::error::positive("contact length", self.contact_length, "m")?;
        crate::error::positive("time step", self.step, "s")?;
        crate::error::finite("start of the ride", self.from, "m")?;
        let duration = (self.to - self.from) / self.speed;
        crate::error::positive("length of the ride in time", duration, "s")?;
        if duration / self.step > MOST_STEPS {
            let accepted = "at most 5 million";
            let value = duration / self.step;
            return Err(AxleError::Value { what: "number of time steps", value, unit: "", accepted });
        }
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
    let duration = ride.check()?;
    let model = VibrationModel::of(axle, ride.axle_load, &ride.name)?;
    let road = ride.road.enveloped(ride.contact_length)?;
    let system = system(&model, &road, ride)?;
    let mut recorder = Recorder::of(&model, &road, ride);
    let settings = TransientSettings { scheme: ride.scheme, ..TransientSettings::new(ride.step, duration) };
    let reduced = match ride.basis {
        RideBasis::Full => None,
        RideBasis::Reduced => Some(ride_basis::shapes(&system, ride.step)?),
    };
    let moving = reduced.as_ref().map_or(Ok(system.clone()), |shapes| shapes.reduced(&system))?;
    let run = moving.run(Start::Equilibrium, &settings, |record| {
        if let Record::Sample(sample) = record {
            match &reduced {
                Some(shapes) => recorder.take(&sample, &shapes.motion(&sample.motion.u)),
                None => recorder.take(&sample, &sample.motion.u),
            }
        }
        ControlFlow::Continue(())
    })?;
    let partial = match run.ended {
        Ended::Completed => None,
        Ended::BrokenOff { time } => Some(format!("the ride was broken off at {time:.4} s")),
        Ended::NoConvergence { time, law } => Some(format!(
            "the equations stopped converging at {time:.4} s, at the {}; try a shorter time step",
            recorder.law_name(law)
        )),
        Ended::NotFinite { time } => {
            Some(format!("the motion ran away at {time:.4} s; try a shorter time step"))
        }
    };
    let method = RideMethod {
        basis: ride.basis,
        unknowns: moving.order(),
        modes_up_to: reduced.map(|_| ride_basis::modes_up_to(ride.step)),
        scheme: ride.scheme,
        step: ride.step,
    };
    Ok(recorder.outcome(&run, method, partial))
}

fn system(model: &VibrationModel, road: &Road, ride: &Ride) -> Result<DynamicSystem, AxleError> {
    let structure = &model.frame.structure;
    let mass = assemble_mass(structure);
    let reader = MotionReader::of(structure);
    let rise = reader.vector_of(|_| [0.0, 0.0, 1.0, 0.0, 0.0, 0.0]);
    let mut weight = vec![0.0; rise.len()];
    mass.multiply(&rise, &mut weight);
    let mut system = DynamicSystem::new(assemble_stiffness(structure), mass)?;
    let down = weight.iter().map(|part| -STANDARD_GRAVITY * part);
    system.add_load(TimedLoad::new(Direction::new(down.enumerate()), |_| 1.0))?;
    for contact in model.contacts() {
        let tire = model.axle.wheels.of(contact.side).tire();
        let (stiffness, damping) = (tire.vertical_stiffness, tire.damping);
        let force = ForceLaw::Contact { stiffness, damping, clearance: 0.0 };
        let direction = Direction::at(structure, &contact.at, [0.0, 0.0, 1.0]);
        let track = track(road, contact.side).clone();
        let (from, speed) = (ride.from, ride.speed);
        let base = move |time: f64| felt(&track, from + speed * time, speed);
        system.add_law(LocalLaw::along(direction, force).on_base(base))?;
    }
    for side in Side::BOTH {
        let damping = model.axle.seats.of(side).damping;
        let force = ForceLaw::Damper { compression: damping, extension: damping };
        system.add_law(LocalLaw::along(seat_direction(model, side), force))?;
    }
    Ok(system)
}

fn track(road: &Road, side: Side) -> &Track {
    match side {
        Side::Left => &road.left,
        Side::Right => &road.right,
    }
}

/// Height of a track at a distance (m) and how fast it rises under a tire (m/s).
fn felt(track: &Track, distance: f64, speed: f64) -> [f64; 2] {
    let rise = track.height(distance + SLOPE_REACH) - track.height(distance - SLOPE_REACH);
    [track.height(distance), speed * rise / (2.0 * SLOPE_REACH)]
}

/// Vertical motion of the axle at a seat less that of the body there.
fn seat_direction(model: &VibrationModel, side: Side) -> Direction {
    let structure = &model.frame.structure;
    let (node, y) = model.seat(side);
    let up = [0.0, 0.0, 1.0];
    let axle = Direction::at(structure, &Attachment::at(node), up);
    let body = Direction::at(structure, &Attachment::on_arm(model.body, [0.0, y, 0.0]), up);
    let less = body.parts().iter().map(|(freedom, part)| (*freedom, -part));
    Direction::new(axle.parts().iter().copied().chain(less))
}

/// Keeps what the results need of each sample.
struct Recorder<'a> {
    model: &'a VibrationModel<'a>,
    road: &'a Road,
    ride: &'a Ride,
    reader: MotionReader<'a>,
    sides: Vec<Side>,
    history: RideHistory,
    peaks: Vec<StationPeak>,
}

impl<'a> Recorder<'a> {
    fn of(model: &'a VibrationModel, road: &'a Road, ride: &'a Ride) -> Self {
        let places = model.frame.places.iter().rev();
        Recorder {
            model,
            road,
            ride,
            reader: MotionReader::of(&model.frame.structure),
            sides: model.contacts().iter().map(|contact| contact.side).collect(),
            history: RideHistory::default(),
            peaks: places.map(|place| StationPeak::none(place.name().as_ref(), place.y)).collect(),
        }
    }

    fn take(&mut self, sample: &Sample, u: &[f64]) {
        let time = sample.time;
        let distance = self.ride.from + self.ride.speed * time;
        self.history.time.push(time);
        self.history.distance.push(distance);
        let tires = sample.forces.iter().zip(&self.sides);
        let load = |side: Side| tires.clone().filter(|(_, own)| **own == side).map(|(f, _)| f).sum::<f64>();
        let hub = Sides::each(|side| self.reader.motion(u, *self.model.frame.hubs.of(side)));
        let lean = (hub.left[2] - hub.right[2]) / self.model.axle.hub_distance();
        for side in Side::BOTH {
            let camber = -side.sign() * (hub.of(side)[RX] - lean);
            self.history.load.of_mut(side).push(load(side));
            self.history.camber.of_mut(side).push(camber);
            self.history.road.of_mut(side).push(track(self.road, side).height(distance));
        }
        self.history.roll.push(lean);
        self.take_stress(u, time);
    }

    fn take_stress(&mut self, u: &[f64], time: f64) {
        let count = self.peaks.len();
        let mut largest = 0.0_f64;
        for (i, stretch) in self.model.frame.stretches.iter().enumerate() {
            let forces = self.reader.beam_forces(u, stretch.beam);
            for (place, y) in [(i, stretch.start_y), (i + 1, stretch.end_y)] {
                let stress = self.stress(stretch, y, &forces.at(y - stretch.start_y));
                self.peaks[count - 1 - place].see(stress, time);
                largest = if stress.abs() > largest.abs() { stress } else { largest };
            }
        }
        self.history.stress.push(largest);
    }

    fn stress(&self, stretch: &Stretch, y: f64, force: &axlebow_fe::EndForce) -> f64 {
        along::stress(self.model.axle, stretch, y, &along::resultants(force))
    }

    fn law_name(&self, law: usize) -> String {
        match self.sides.get(law) {
            Some(side) => format!("{} tire", side.word()),
            None if law < self.sides.len() + SEATS => "damper of a seat".to_owned(),
            None => format!("law {law}"),
        }
    }

    fn outcome(
        self,
        run: &axlebow_fe::Transient,
        method: RideMethod,
        partial: Option<String>,
    ) -> RideOutcome {
        let radius = self.model.axle.wheels.left.tire().loaded_radius;
        RideOutcome::of(self.ride, self.history, self.peaks, Driven { run, radius, method, partial })
    }
}
