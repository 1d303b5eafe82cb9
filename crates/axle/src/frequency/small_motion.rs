//! The axle in small motions about its rest on the road.
//!
//! The system is that of a [`crate::ride()`]. Its tires stay on the road, which moves their far ends: with the
//! height z of the road a tire pushes with `k (z − u) + c (ż − u̇)`. Camber, load and stress are then linear in
//! the motion and in z, with the sign `e^{iωt}`.

use std::f64::consts::TAU;

use axlebow_fe::{Direction, DynamicSystem, Excitation, MotionReader, ReducedBasis, TimedLoad};
use nalgebra::Complex;

use crate::dynamics::hysteresis::add_hysteresis;
use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::parts::freedoms::RX;
use crate::riding::equations::system;
use crate::riding::ride_basis::FASTEST_MODE;
use crate::riding::ride_laws::{bump, ride_laws};
use crate::riding::stress_reading::{StressReading, axle_readings, stress_readings};
use crate::{Axle, AxleError, Side, Sides};

/// Frequency up to which a reduced basis has all natural modes, over the highest frequency of the answers.
pub(crate) const MODES_BEYOND: f64 = 1.5;

/// The axle in small motions about its rest.
pub(crate) struct SmallMotion {
    system: DynamicSystem,
    camber: Sides<Direction>,
    tires: Sides<Tires>,
    pub stress: Vec<StressReading>,
    pub load_at_rest: Sides<f64>,
    pub tire_radius: f64,
    /// Where the dampers act.
    bumps: [Direction; 2],
}

/// The tires of one side that stand on the road, each by its stiffness over that of a tire at its rated inflation; where they
/// are unlike, their damping is shared so too.
struct Tires {
    /// How the road acts on them.
    road: Excitation,
    /// How many they are, by that weight.
    count: f64,
    /// How far they are lifted off the road, together by that weight, m.
    rise: f64,
}

/// The axle at rest on the road, and its equations about that.
pub(crate) struct Resting<'a> {
    pub model: VibrationModel<'a>,
    /// Linear about the rest.
    pub system: DynamicSystem,
    /// Motion of each freedom to the rest.
    pub rest: Vec<f64>,
}

/// The axle with a load (N) on the road for answers up to a frequency (Hz); `case` names it in an error.
pub(crate) fn resting<'a>(
    axle: &'a Axle,
    (axle_load, up_to): (f64, f64),
    case: &str,
) -> Result<Resting<'a>, AxleError> {
    let model = VibrationModel::without_loose(axle, axle_load, case)?;
    let mut whole = system(&model, ride_laws(&model)?)?;
    add_hysteresis(&mut whole, (axle, axle_load), up_to.max(FASTEST_MODE))?;
    let rest = whole.equilibrium(0.0)?;
    Ok(Resting { system: whole.linearized(&rest, 0.0)?, model, rest })
}

/// Answer of one result to the height of the road under each wheel, at each frequency.
pub(crate) struct Answer(Sides<Vec<Complex<f64>>>);

impl Answer {
    /// The answer to a road that rises by shares of one height.
    pub(crate) fn combined(&self, rise: Sides<f64>) -> Vec<Complex<f64>> {
        let pairs = self.0.left.iter().zip(&self.0.right);
        pairs.map(|(left, right)| left * rise.left + right * rise.right).collect()
    }
}

impl SmallMotion {
    /// The axle with a load (N) on the road for answers up to a frequency (Hz); stresses at named stations, or where it is
    /// stressed most.
    pub(crate) fn of(
        axle: &Axle,
        (axle_load, up_to): (f64, f64),
        stations: &[String],
    ) -> Result<Self, AxleError> {
        Self::reading(axle, (axle_load, up_to), |model, reader, rest| {
            stress_readings(model, reader, rest, stations)
        })
    }

    /// The same with the stresses of the axle itself, without its stiffeners, at named stations, and in few shapes: for sums
    /// over many frequencies.
    pub(crate) fn of_axle(
        axle: &Axle,
        (axle_load, up_to): (f64, f64),
        stations: &[&str],
    ) -> Result<Self, AxleError> {
        let all = Self::reading(axle, (axle_load, up_to), |model, reader, rest| {
            axle_readings(model, reader, rest, stations)
        })?;
        all.in_few_shapes(up_to)
    }

    fn reading(
        axle: &Axle,
        (axle_load, up_to): (f64, f64),
        stresses: impl Fn(&VibrationModel, &MotionReader, &[f64]) -> Result<Vec<StressReading>, AxleError>,
    ) -> Result<Self, AxleError> {
        let Resting { model, system, rest } = resting(axle, (axle_load, up_to), "response")?;
        let reader = MotionReader::of(&model.frame.structure);
        let tires = Sides::each(|side| Tires::of(&model, side, &rest));
        Ok(SmallMotion {
            bumps: Side::BOTH.map(|side| bump(&model, side)),
            system,
            camber: Sides::each(|side| reader.direction(|u| camber(&model, &reader, u, side))),
            stress: stresses(&model, &reader, &rest)?,
            load_at_rest: Sides::each(|side| {
                let Tires { road, rise, .. } = tires.of(side);
                -road.stiffness * (road.direction.dot(&rest) + rise)
            }),
            tire_radius: axle.wheels.left.tire().loaded_radius,
            tires,
        })
    }

    /// The same in the natural modes up to somewhat more than a frequency (Hz) and what the road and the dampers do at rest.
    fn in_few_shapes(mut self, up_to: f64) -> Result<Self, AxleError> {
        // Loads that push nothing, so that a basis answers forces there.
        let roads = Side::BOTH.map(|side| self.tires.of(side).road.direction.clone());
        for direction in roads.into_iter().chain(self.bumps.clone()) {
            self.system.add_load(TimedLoad::new(direction, |_| 0.0))?;
        }
        let basis = ReducedBasis::up_to(MODES_BEYOND * up_to, &self.system, 0.0)?;
        let over = |direction: &Direction| basis.direction(direction);
        for side in Side::BOTH {
            let (camber, tires) = (self.camber.of_mut(side), self.tires.of_mut(side));
            (*camber, tires.road.direction) = (over(camber), over(&tires.road.direction));
        }
        self.stress.iter_mut().for_each(|reading| reading.direction = over(&reading.direction));
        let (system, bumps) = (basis.reduced(&self.system)?, self.bumps.each_ref().map(over));
        Ok(SmallMotion { system, bumps, ..self })
    }

    /// Answers at frequencies (Hz): camber change left and right (rad/m), wheel load left and right (N/m), and
    /// the stress of each station (Pa/m).
    pub(crate) fn answers(&self, frequencies: &[f64]) -> Result<Vec<Answer>, AxleError> {
        let (camber, tires) = (&self.camber, &self.tires);
        let mut outputs = vec![camber.left.clone(), camber.right.clone()];
        outputs.extend(Side::BOTH.map(|side| tires.of(side).road.direction.clone()));
        outputs.extend(self.stress.iter().map(|reading| reading.direction.clone()));
        let inputs = Side::BOTH.map(|side| tires.of(side).road.clone());
        let responses = self.system.frequency_responses(&inputs, &outputs, frequencies)?;
        let list = |input: usize, output: usize| {
            let values = responses[input].outputs[output].iter();
            values.map(|[re, im]| Complex::new(*re, *im)).collect::<Vec<_>>()
        };
        let mut answers: Vec<Answer> = (0..outputs.len())
            .map(|output| Answer(Sides { left: list(0, output), right: list(1, output) }))
            .collect();
        for (i, side) in Side::BOTH.into_iter().enumerate() {
            tires.of(side).turn_into_load(&mut answers[2 + i], side, frequencies);
        }
        Ok(answers)
    }
}

impl Tires {
    fn of(model: &VibrationModel, side: Side, rest: &[f64]) -> Self {
        let structure = &model.frame.structure;
        let contacts = model.contacts().into_iter().filter(|contact| contact.side == side);
        let up = contacts.map(|contact| (Direction::at(structure, &contact.at, [0.0, 0.0, 1.0]), contact));
        let pressed: Vec<_> = up.filter(|(up, contact)| up.dot(rest) + contact.rise < 0.0).collect();
        let tire = model.axle.wheels.of(side).tire();
        let weight = |contact: &TireContact| contact.stiffness / tire.vertical_stiffness;
        let weighted = pressed.iter().flat_map(|(up, contact)| {
            up.parts().iter().map(move |(freedom, part)| (*freedom, weight(contact) * part))
        });
        let direction = Direction::new(weighted);
        let road = Excitation { direction, stiffness: tire.vertical_stiffness, damping: tire.damping };
        let sum = |value: fn(&TireContact) -> f64| {
            pressed.iter().map(|(_, contact)| weight(contact) * value(contact)).sum::<f64>()
        };
        Tires { count: sum(|_| 1.0), rise: sum(|contact| contact.rise), road }
    }

    /// From how far the tires' hubs rise to how hard the tires push.
    fn turn_into_load(&self, answer: &mut Answer, side: Side, frequencies: &[f64]) {
        for own in Side::BOTH {
            let road = if own == side { self.count } else { 0.0 };
            for (x, frequency) in answer.0.of_mut(own).iter_mut().zip(frequencies) {
                let dynamic = Complex::new(self.road.stiffness, TAU * frequency * self.road.damping);
                *x = dynamic * (road - *x);
            }
        }
    }
}

/// Camber change of a wheel against the line through both hubs, rad.
fn camber(model: &VibrationModel, reader: &MotionReader, u: &[f64], side: Side) -> f64 {
    let hub = |side: Side| reader.motion(u, *model.frame.hubs.of(side));
    let lean = (hub(Side::Left)[2] - hub(Side::Right)[2]) / model.axle.hub_distance();
    -side.sign() * (hub(side)[RX] - lean)
}
