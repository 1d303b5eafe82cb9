//! An axle made ready for many rides: its equations, its shapes and its readings are made once.

use std::ops::ControlFlow;
use std::sync::OnceLock;

use axlebow_fe::{
    Direction, DynamicSystem, Ended, FeError, MotionReader, Record, Start, Transient, TransientSettings,
};
use axlebow_road::{Road, Track};

use crate::dynamics::hysteresis::add_hysteresis;
use crate::dynamics::light_damping::light_damping;
use crate::dynamics::vibration::VibrationModel;
use crate::riding::equations::system;
use crate::riding::moving::Moving;
use crate::riding::ride_basis::{FASTEST_MODE, RideMethod};
use crate::riding::ride_laws::{RidePart, ride_laws};
use crate::riding::ride_readings::Readings;
use crate::riding::ride_recorder::Recorder;
use crate::riding::ride_results::Driven;
use crate::riding::ride_split::SplitReadings;
use crate::riding::ride_warnings::{energy_drift, ride_warnings};
use crate::riding::ringing::ringing;
use crate::riding::run_in::{Course, run_in};
use crate::riding::stress_reading::axle_readings;
use crate::riding::tracks::track;
use crate::{Axle, AxleError, ModeOutcome, Ride, RideBasis, RideOutcome, Side, Sides};

/// Force of a tire or stop over the axle's load, beyond which a motion has run away.
const RUNAWAY: f64 = 1e3;

/// An axle with its load, ready for rides over any road at any speed; threads may share it.
#[derive(Debug)]
pub struct RidingAxle<'a> {
    model: VibrationModel<'a>,
    /// Side of each tire; the laws of force of the tires come first, in this order.
    tires: Vec<Side>,
    /// What the laws after them stand for.
    parts: Vec<RidePart>,
    full: Moving,
    /// Its modes up to the fastest of a reduced basis.
    modes: Vec<ModeOutcome>,
    reduced: OnceLock<Result<Moving, FeError>>,
}

impl<'a> RidingAxle<'a> {
    /// The axle that carries a load (N) on the road at rest.
    ///
    /// # Errors
    /// [`AxleError::LoadBelowWeight`]; [`AxleError::Fe`] when nothing holds the axle somewhere.
    pub fn of(axle: &'a Axle, axle_load: f64) -> Result<Self, AxleError> {
        let model = VibrationModel::without_loose(axle, axle_load, "ride")?;
        let laws = ride_laws(&model)?;
        let parts = laws.iter().map(|(part, _)| *part).collect();
        let mut system = system(&model, laws)?;
        let modes = add_hysteresis(&mut system, (axle, axle_load), FASTEST_MODE)?;
        let full = Moving {
            system,
            readings: Readings::of(&model),
            splits: SplitReadings::of(&model)?,
            shapes: None,
        };
        let tires = model.contacts().iter().map(|contact| contact.side).collect();
        Ok(RidingAxle { model, tires, parts, full, modes, reduced: OnceLock::new() })
    }

    /// The same for rides of which nothing is asked but what body and wheels do: they read no stress, and their outcome has no
    /// stations.
    pub fn without_stations(mut self) -> Self {
        self.full.readings.fibers.clear();
        RidingAxle { reduced: OnceLock::new(), ..self }
    }

    /// Its modes up to the fastest of a reduced basis.
    pub(crate) fn modes(&self) -> &[ModeOutcome] {
        &self.modes
    }

    /// Drives over a road.
    ///
    /// # Errors
    /// As [`crate::ride()`]; [`AxleError::RideTooLong`]; [`AxleError::Value`] for a ride with another load than the axle was made ready for.
    pub fn ride(&self, ride: &Ride) -> Result<RideOutcome, AxleError> {
        let duration = self.duration(ride)?;
        ride.keep.check_room(duration, ride.step, self.model.frame.places.len())?;
        let road = ride.road.enveloped(ride.contact_length)?;
        let moving = self.moving(ride.basis)?;
        let (settings, kept) = self.settings(ride, duration);
        let start = settings.start;
        let system = self.on_road(&moving.system, &road, Course::of(ride, &ride.road, -start));
        let mut recorder = Recorder::of(&self.model, (moving, &self.parts), (ride, kept));
        // The run-in ends with the last sample before zero, whatever its rounding.
        let is_kept = |time: f64| time > -0.5 * ride.step;
        let run = system.run(Start::Equilibrium, &settings, |record| {
            match record {
                Record::Sample(sample) => {
                    if runs_away(sample.forces, ride) {
                        return ControlFlow::Break(());
                    }
                    recorder.take(&sample, is_kept(sample.time));
                }
                Record::Contact { time, law, touches } if is_kept(time) => {
                    recorder.note_contact(law, touches)
                }
                Record::Contact { .. } => {}
            }
            ControlFlow::Continue(())
        })?;
        let recorded = recorder.finished();
        let warnings =
            ride_warnings(self.model.axle, ride).into_iter().chain(energy_drift(run.balance.drift()));
        let driven = Driven {
            radius: self.model.axle.wheels.left.tire().loaded_radius,
            method: method(ride, system.order()),
            partial: self.why_partial(&run),
            warnings: warnings.collect(),
            run: &run,
            run_in: -start,
        };
        let mut outcome = RideOutcome::of(ride, recorded, driven);
        let ringing = ringing(&outcome, &self.modes);
        outcome.warnings.extend(light_damping(&self.modes, |name| ringing.iter().any(|own| own == name)));
        Ok(outcome)
    }

    /// Drives over a road and tells at each sample the axle's own fiber stress (Pa) at stations and the load of each wheel
    /// over that at rest; keeps nothing, so that a road may be as long as it likes.
    ///
    /// # Errors
    /// As [`Self::ride`], and [`AxleError::UnknownStation`]; [`AxleError::BrokenOff`] for a ride that does not reach its end.
    pub(crate) fn watch(
        &self,
        ride: &Ride,
        stations: &[&str],
        mut take: impl FnMut(&[f64], Sides<f64>),
    ) -> Result<(), AxleError> {
        let duration = self.duration(ride)?;
        let road = ride.road.enveloped(ride.contact_length)?;
        let moving = self.moving(ride.basis)?;
        let directions = self.stress_directions(moving, stations)?;
        let (settings, _) = self.settings(ride, duration);
        let system = self.on_road(&moving.system, &road, Course::of(ride, &ride.road, -settings.start));
        let (mut at_rest, mut stresses) = (None, vec![0.0; directions.len()]);
        let run = system.run(Start::Equilibrium, &settings, |record| {
            if let Record::Sample(sample) = record {
                if runs_away(sample.forces, ride) {
                    return ControlFlow::Break(());
                }
                let loads = self.loads(sample.forces);
                let rest = *at_rest.get_or_insert(loads);
                if sample.time > -0.5 * ride.step {
                    let read = directions.iter().map(|direction| direction.dot(&sample.motion.u));
                    stresses.iter_mut().zip(read).for_each(|(stress, read)| *stress = read);
                    take(&stresses, Sides::each(|side| loads.of(side) / rest.of(side)));
                }
            }
            ControlFlow::Continue(())
        })?;
        match self.why_partial(&run) {
            Some(reason) => Err(AxleError::BrokenOff { ride: ride.name.clone(), reason }),
            None => Ok(()),
        }
    }

    /// Load of each wheel from the forces of the laws, N.
    fn loads(&self, forces: &[f64]) -> Sides<f64> {
        Sides::each(|side| {
            let own = self.tires.iter().zip(forces).filter(|(tire, _)| **tire == side);
            own.map(|(_, force)| force).sum()
        })
    }

    /// Readings of the axle's own fiber stress at stations, of the fiber that is stressed most at rest.
    fn stress_directions(&self, moving: &Moving, stations: &[&str]) -> Result<Vec<Direction>, AxleError> {
        let reader = MotionReader::of(&self.model.frame.structure);
        let rest = self.full.system.equilibrium(0.0)?;
        let readings = axle_readings(&self.model, &reader, &rest, stations)?;
        let over = |direction: Direction| match &moving.shapes {
            Some(shapes) => shapes.direction(&direction),
            None => direction,
        };
        Ok(readings.into_iter().map(|reading| over(reading.direction)).collect())
    }

    /// How long a ride takes, s; refuses one that the axle is not ready for.
    fn duration(&self, ride: &Ride) -> Result<f64, AxleError> {
        let duration = ride.check()?;
        if ride.axle_load != self.model.axle_load {
            let (what, value) = ("axle load of the ride", ride.axle_load);
            let accepted = "the load that the axle was made ready for";
            return Err(AxleError::Value { what, value, unit: "N", accepted });
        }
        Ok(duration)
    }

    /// How a ride that takes so long (s) is advanced, its run-in included, and how many steps are kept.
    fn settings(&self, ride: &Ride, duration: f64) -> (TransientSettings, usize) {
        let kept = TransientSettings { scheme: ride.scheme, ..TransientSettings::new(ride.step, duration) };
        let before = (run_in(ride, &self.modes) / ride.step).ceil();
        let steps = kept.steps + before as usize;
        (TransientSettings { start: -before * ride.step, steps, ..kept }, kept.steps)
    }

    fn moving(&self, basis: RideBasis) -> Result<&Moving, FeError> {
        match basis {
            RideBasis::Full => Ok(&self.full),
            RideBasis::Reduced => {
                self.reduced.get_or_init(|| self.full.reduced()).as_ref().map_err(Clone::clone)
            }
        }
    }

    /// The system with its tires on a road, all on one base where both tracks are alike.
    fn on_road(&self, system: &DynamicSystem, road: &Road, course: Course) -> DynamicSystem {
        let mut system = system.clone();
        let mut put = |track: &Track, sides: &[Side]| {
            let tires = self.tires.iter().enumerate().filter(|(_, own)| sides.contains(own));
            let laws: Vec<usize> = tires.map(|(law, _)| law).collect();
            let track = track.clone();
            system.put_on_base(&laws, move |time| course.felt(&track, time));
        };
        if road.left == road.right {
            put(&road.left, &Side::BOTH);
        } else {
            Side::BOTH.iter().for_each(|side| put(track(road, *side), &[*side]));
        }
        system
    }

    fn law_name(&self, law: usize) -> String {
        match self.tires.get(law) {
            Some(side) => format!("{} tire", side.word()),
            None => self.parts[law - self.tires.len()].words(),
        }
    }

    fn why_partial(&self, run: &Transient) -> Option<String> {
        match run.ended {
            Ended::Completed => None,
            Ended::BrokenOff { time } => Some(format!(
                "the motion ran away at {time:.4} s, as of an axle that tips over once a tire leaves the road; check \
                 `body_roll_stiffness` and dampers of the suspension, or drive more slowly"
            )),
            Ended::NoConvergence { time, law } => Some(format!(
                "the equations stopped converging at {time:.4} s, at the {}; try a shorter time step",
                self.law_name(law)
            )),
            Ended::NotFinite { time } => {
                Some(format!("the motion ran away at {time:.4} s; try a shorter time step"))
            }
        }
    }
}

/// Whether a tire presses on the road as no tire can.
fn runs_away(forces: &[f64], ride: &Ride) -> bool {
    forces.iter().any(|force| force.abs() > RUNAWAY * ride.axle_load)
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

/// How a ride is solved with so many unknowns.
fn method(ride: &Ride, unknowns: usize) -> RideMethod {
    let modes_up_to = (ride.basis == RideBasis::Reduced).then_some(FASTEST_MODE);
    RideMethod { basis: ride.basis, unknowns, modes_up_to, scheme: ride.scheme, step: ride.step }
}
