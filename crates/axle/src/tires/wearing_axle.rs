//! A wave of wear in time: the worn profile is fed back as the road, and tires may leave it.

use std::ops::ControlFlow;
use std::sync::Arc;

use axlebow_fe::{
    Attachment, Direction, DynamicSystem, ForceLaw, LocalLaw, Record, ReducedBasis, Sample, Start, TimedLoad,
    Transient, TransientSettings,
};
use axlebow_tread::{GrowingWave, RibPress, RibSpring, TreadWave, WearingTread};

use crate::dynamics::hysteresis::add_hysteresis;
use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::frequency::hub_compliance::motions;
use crate::riding::equations::{off_the_road, system, tire};
use crate::riding::ride_basis::{FASTEST_MODE, USUAL_SCHEME};
use crate::riding::ride_laws::{RidePart, ride_laws};
use crate::tires::growth_outcome::WaveInTime;
use crate::{Axle, AxleError, Side};

/// Time steps of a turn, and of a wave.
const STEPS_OF_TURN: usize = 360;
const STEPS_OF_WAVE: usize = 60;
/// Turns in which the axle settles on its wave, and turns in which the wave then wears.
const SETTLING: usize = 20;
const WEARING: usize = 25;
/// How far a wave grows, or its phase turns, in one turn that wears.
const GROWN_PER_TURN: f64 = 0.002;

/// An axle on the worn tread of one wheel end, the tires of the other one round.
pub(crate) struct WearingAxle {
    /// In few shapes; the laws of the ribs come first.
    system: DynamicSystem,
    /// Load (N) and compression (m) of each rib at rest.
    rest: Vec<RibPress>,
    /// Where the forces of the bearing with play of that end begin among those of all laws.
    loose: Option<usize>,
    /// Rise of the hub.
    rise: Direction,
}

/// A wave that is let to wear.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wearing<'a> {
    /// Count and speed.
    pub wave: TreadWave,
    /// Growth and ribs by eigenvalue.
    pub linear: &'a GrowingWave,
    /// Distance traveled over the angle turned, m.
    pub rolling_radius: f64,
}

/// What is seen over turns.
#[derive(Debug, Clone, Copy, Default)]
struct Seen {
    steps: usize,
    off_road: usize,
    loose: usize,
    lowest: f64,
    highest: f64,
}

/// Time steps of a turn with so many waves.
pub(crate) fn steps_of_turn(count: u16) -> usize {
    STEPS_OF_TURN.max(STEPS_OF_WAVE * usize::from(count))
}

/// Mean tread worn in each turn (m) so that a wave grows or turns by a small part of itself.
pub(crate) fn worn_per_turn(linear: &GrowingWave) -> f64 {
    GROWN_PER_TURN / linear.rate.hypot(linear.turning).max(f64::MIN_POSITIVE)
}

impl WearingAxle {
    /// The axle with a load (N) on the road, one end on the ribs of a tread.
    pub(crate) fn of(
        axle: &Axle,
        (axle_load, side): (f64, Side),
        ribs: &[RibSpring],
    ) -> Result<Self, AxleError> {
        let model = VibrationModel::without_loose(axle, axle_load, "growth")?;
        let laws = ride_laws(&model)?;
        let rest = system(&model, laws.clone())?.equilibrium(0.0)?;
        let mut whole = off_the_road(&model)?;
        let standing = Standing { model: &model, side, rest: &rest };
        for rib in ribs {
            whole.add_law(standing.rib(rib))?;
        }
        whole.add_load(standing.what_ribs_leave(ribs))?;
        let others: Vec<TireContact> =
            model.contacts().into_iter().filter(|contact| contact.side != side).collect();
        for contact in &others {
            whole.add_law(tire(&model, contact))?;
        }
        let loose = first_force(&laws, side).map(|first| ribs.len() + others.len() + first);
        for (_, law) in laws {
            whole.add_law(law)?;
        }
        add_hysteresis(&mut whole, (axle, axle_load), FASTEST_MODE)?;
        let [rise, _] = motions(&model, side);
        let basis = ReducedBasis::up_to(FASTEST_MODE, &whole, 0.0)?;
        Ok(WearingAxle {
            system: basis.reduced(&whole)?,
            rest: ribs.iter().map(|rib| standing.press(rib)).collect(),
            loose,
            rise: basis.direction(&rise),
        })
    }

    /// Lets a wave of a height (m) wear a round tread of parts as [`steps_of_turn`] has them.
    pub(crate) fn worn(
        &self,
        mut tread: WearingTread,
        wearing: Wearing,
        height: f64,
    ) -> Result<WaveInTime, AxleError> {
        let Wearing { wave, linear, rolling_radius } = wearing;
        let steps = steps_of_turn(wave.count);
        let step = std::f64::consts::TAU * rolling_radius / wave.speed / steps as f64;
        tread.raise(wave.count, &linear.ribs, height);
        let larger = |a: usize, b: usize| if linear.ribs[b].norm() > linear.ribs[a].norm() { b } else { a };
        let leading = (0..linear.ribs.len()).reduce(larger).unwrap_or(0);
        let worn = worn_per_turn(linear);
        let settings = TransientSettings { steps, scheme: USUAL_SCHEME, ..TransientSettings::new(step, 1.0) };
        let (mut start, mut before, mut seen) = (Start::Equilibrium, 0.0, Seen::default());
        for turn in 0..SETTLING + WEARING {
            if turn == SETTLING {
                before = tread.wave(leading, wave.count).norm();
                seen = Seen::default();
            }
            let run = self.turn(&mut tread, (start, &settings), &mut seen)?;
            if run.is_partial() {
                let reason = "the equations stopped converging; try a lower wave".to_owned();
                return Err(AxleError::BrokenOff { ride: "wave in time".to_owned(), reason });
            }
            tread.wear(if turn < SETTLING { 0.0 } else { worn });
            start = Start::Given { u: run.last.u, v: run.last.v };
        }
        let grown = tread.wave(leading, wave.count).norm() / before;
        Ok(WaveInTime {
            height,
            rate: grown.ln() / (worn * WEARING as f64),
            off_road: seen.share(seen.off_road),
            bearing_loose: self.loose.map(|_| seen.share(seen.loose)),
            hub_rise: 0.5 * (seen.highest - seen.lowest),
        })
    }

    /// One turn over the profile as it is.
    fn turn(
        &self,
        tread: &mut WearingTread,
        (start, settings): (Start, &TransientSettings),
        seen: &mut Seen,
    ) -> Result<Transient, AxleError> {
        let felt: Vec<Arc<[f64]>> = tread.felt().into_iter().map(Arc::from).collect();
        let mut system = self.system.clone();
        for (law, profile) in felt.iter().enumerate() {
            let (profile, step) = (Arc::clone(profile), settings.step);
            system.put_on_base(&[law], move |time| on_profile(&profile, time / step, step));
        }
        let tires: Vec<usize> = tread.springs().iter().map(|rib| rib.tire).collect();
        let mut passed = 0;
        Ok(system.run(start, settings, |record| {
            if let Record::Sample(sample) = record
                && passed < settings.steps
            {
                let here: Vec<f64> = felt.iter().map(|profile| profile[passed]).collect();
                tread.pass(passed, &here, &self.presses(&sample), settings.step);
                seen.take(self, &sample, &tires);
                passed += 1;
            }
            ControlFlow::Continue(())
        })?)
    }

    fn presses(&self, sample: &Sample) -> Vec<RibPress> {
        let each = self.rest.iter().zip(sample.forces).zip(sample.compressions);
        each.map(|((rest, force), compression)| RibPress {
            load: force - rest.load,
            deflection: compression - rest.deflection,
        })
        .collect()
    }
}

impl Seen {
    fn take(&mut self, axle: &WearingAxle, sample: &Sample, tires: &[usize]) {
        let rise = axle.rise.dot(&sample.motion.u);
        if self.steps == 0 {
            (self.lowest, self.highest) = (rise, rise);
        }
        (self.lowest, self.highest) = (self.lowest.min(rise), self.highest.max(rise));
        self.steps += 1;
        let bears =
            |tire: usize| tires.iter().zip(sample.forces).any(|(own, force)| *own == tire && *force > 0.0);
        let most = tires.iter().copied().max().unwrap_or(0);
        self.off_road += usize::from(!(0..=most).all(bears));
        let pushes = |first: usize| sample.forces[first..first + 2].iter().any(|force| *force != 0.0);
        self.loose += usize::from(axle.loose.is_some_and(|first| !pushes(first)));
    }

    fn share(&self, of: usize) -> f64 {
        of as f64 / self.steps.max(1) as f64
    }
}

/// The axle at rest on its tires.
struct Standing<'a> {
    model: &'a VibrationModel<'a>,
    side: Side,
    rest: &'a [f64],
}

impl Standing<'_> {
    /// Rise of the hub at a rib.
    fn direction(&self, rib: &RibSpring) -> Direction {
        let (wheel, hub) = (self.model.axle.wheels.of(self.side), *self.model.frame.hubs.of(self.side));
        let across = self.side.sign() * (wheel.outset() + rib.outboard);
        let at = Attachment::on_arm(hub, [0.0, across, -wheel.tire().loaded_radius]);
        Direction::at(&self.model.frame.structure, &at, [0.0, 0.0, 1.0])
    }

    /// Load and compression of a rib.
    fn press(&self, rib: &RibSpring) -> RibPress {
        RibPress { load: rib.load, deflection: -self.direction(rib).dot(self.rest) }
    }

    /// The rib on the road: as stiff and as much damped as its share of a tire, loaded as at rest; one that is off the road
    /// there stays off.
    fn rib(&self, rib: &RibSpring) -> LocalLaw {
        let tire = self.model.axle.wheels.of(self.side).tire();
        let stiffness = if rib.load > 0.0 { rib.stiffness } else { 0.0 };
        let force = ForceLaw::Contact {
            stiffness,
            damping: stiffness * tire.damping / tire.vertical_stiffness,
            clearance: self.press(rib).deflection - rib.load / rib.stiffness,
        };
        LocalLaw::along(self.direction(rib), force)
    }

    /// The forces of the tires at rest less those of their ribs, which are not all in the middle of a tire: with them the rest
    /// stays what it is.
    fn what_ribs_leave(&self, ribs: &[RibSpring]) -> TimedLoad {
        let structure = &self.model.frame.structure;
        let of_tire = |contact: &TireContact| {
            let up = Direction::at(structure, &contact.at, [0.0, 0.0, 1.0]);
            let load = contact.stiffness * (-up.dot(self.rest) - contact.rise).max(0.0);
            (up, load)
        };
        let contacts = self.model.contacts().into_iter().filter(|contact| contact.side == self.side);
        let tires = contacts.map(|contact| of_tire(&contact));
        let ribs = ribs.iter().map(|rib| (self.direction(rib), -rib.load));
        let scaled = |(direction, load): (Direction, f64)| {
            direction.parts().iter().map(|(freedom, part)| (*freedom, load * part)).collect::<Vec<_>>()
        };
        TimedLoad::new(Direction::new(tires.chain(ribs).flat_map(scaled)), |_| 1.0)
    }
}

/// Where the two forces of the bearing with play of a side begin among those of laws.
fn first_force(laws: &[(RidePart, LocalLaw)], side: Side) -> Option<usize> {
    let mut first = 0;
    for (part, _) in laws {
        match part {
            RidePart::Bearing(own, _) if *own == side => return Some(first),
            RidePart::Bearing(..) => first += 2,
            RidePart::Damper(_) | RidePart::BumpStop(_) => first += 1,
        }
    }
    None
}

/// Height (m) and rise (m/s) of a profile at so many parts from its first, one part a step (s).
fn on_profile(profile: &[f64], at: f64, step: f64) -> [f64; 2] {
    let count = profile.len();
    let (whole, share) = (at.floor(), at - at.floor());
    let first = whole.rem_euclid(count as f64) as usize;
    let of = |i: usize| profile[(first + i) % count];
    let [before, here, next, after] = [of(count - 1), of(0), of(1), of(2)];
    let slope = |share: f64| 0.5 * ((1.0 - share) * (next - before) + share * (after - here));
    [here + share * (next - here), slope(share) / step]
}
