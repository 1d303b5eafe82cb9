//! A tread that wears turn by turn in time: the worn profile is the road of the next turn.

use std::f64::consts::TAU;

use nalgebra::Complex;

use super::WheelInertia;
use crate::error::{not_negative, positive};
use crate::rolling::{Asked, DrivenState, ROLLING_SHARE, RollingRib};
use crate::travel::{rolling_radius, surplus};
use crate::{Face, Pose, TreadError};

/// A rib as a spring on the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RibSpring {
    /// Number of its tire, the outermost 0.
    pub tire: usize,
    /// Outboard of the point about which camber turns the hub, m.
    pub outboard: f64,
    /// Vertical stiffness, N/m.
    pub stiffness: f64,
    /// Load at rest, N; zero off the road.
    pub load: f64,
}

/// What the road does to a rib beyond what it does at rest.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RibPress {
    /// Load, N.
    pub load: f64,
    /// Deflection, m.
    pub deflection: f64,
}

/// The ribs of one hub, their circumferences cut into parts that wear each by itself.
///
/// It is what [`WearWaves`](super::WearWaves) has in waves that are small: a rib slips on its own radius, all ribs turn at one
/// speed, wear follows the energy of scuff and is smeared evenly over the contact. Loads and deflections come from
/// whoever moves the hub, so that tires may leave the road. What each rib loses evenly is left out, so that loads at rest stay
/// those of the pose.
#[derive(Debug, Clone)]
pub struct WearingTread {
    face: Face,
    springs: Vec<RibSpring>,
    /// The parts of the duty at rest, and how each turns.
    states: Vec<(DrivenState, Turning)>,
    /// I V/R³, kg/s; zero for a wheel that follows its ribs.
    inertia: f64,
    /// Weights of the parts in the contact of each rib, its middle first and the rest to either side.
    contacts: Vec<Vec<f64>>,
    /// Height of each part of each rib, m.
    heights: Vec<Vec<f64>>,
    /// Scuff energy of each part of each rib in this turn.
    energies: Vec<Vec<f64>>,
    parts: usize,
    /// The ribs in a part of the duty as they pass, and the energy of each.
    ribs: Vec<RollingRib>,
    passed: Vec<f64>,
}

/// Travel for each radian (m) and how fast it changes (m/s).
#[derive(Debug, Clone, Copy)]
struct Turning {
    travel: f64,
    rate: f64,
}

impl WearingTread {
    /// A round tread about a pose at a speed (m/s), each rib cut into so many parts.
    ///
    /// # Errors
    /// As [`Face::rolling`]; [`TreadError::Value`] for a speed that is not above zero, a negative inertia or less than 36 parts.
    pub fn new(
        face: &Face,
        (pose, inertia): (Pose, WheelInertia),
        speed: f64,
        parts: usize,
    ) -> Result<Self, TreadError> {
        positive("speed", speed, "m/s")?;
        not_negative("moment of inertia of a wheel", inertia.spin, "kg m²")?;
        if parts < 36 {
            let (thing, value) = ("number of parts of a circumference", parts as f64);
            return Err(TreadError::Value { thing, value, unit: "", accepted: "36 or more" });
        }
        let rolling = face.rolling(pose)?;
        let part = TAU * rolling.radius / parts as f64;
        let ribs = face.tread.ribs as f64;
        let contact = |load: &f64| weights((face.contact_length(load * ribs) / part).min(parts as f64));
        let turning = |state: DrivenState| {
            let travel = state.travel;
            (state, Turning { travel, rate: 0.0 })
        };
        let springs = face.rib_springs().into_iter().zip(&rolling.load).enumerate();
        Ok(WearingTread {
            springs: springs
                .map(|(rib, ((outboard, stiffness), load))| RibSpring {
                    tire: rib / face.tread.ribs,
                    outboard,
                    stiffness,
                    load: *load,
                })
                .collect(),
            states: face.driven_states(pose).into_iter().map(turning).collect(),
            inertia: inertia.spin * speed / rolling.radius.powi(3),
            contacts: rolling.load.iter().map(contact).collect(),
            heights: vec![vec![0.0; parts]; rolling.load.len()],
            energies: vec![vec![0.0; parts]; rolling.load.len()],
            parts,
            ribs: Vec::new(),
            passed: vec![0.0; rolling.load.len()],
            face: face.clone(),
        })
    }

    /// The ribs, outermost tire and inner shoulder first.
    pub fn springs(&self) -> &[RibSpring] {
        &self.springs
    }

    /// Raises a wave of a count on every rib: `height` (m) by the shape's amplitude and phase.
    pub fn raise(&mut self, count: u16, shape: &[Complex<f64>], height: f64) {
        let turn = TAU * f64::from(count) / self.parts as f64;
        for (heights, share) in self.heights.iter_mut().zip(shape) {
            let wave = |i: usize| height * (share * Complex::from_polar(1.0, turn * i as f64)).re;
            heights.iter_mut().enumerate().for_each(|(i, part)| *part += wave(i));
        }
    }

    /// The wave of a count in a rib: its height (m) with its phase.
    pub fn wave(&self, rib: usize, count: u16) -> Complex<f64> {
        let turn = TAU * f64::from(count) / self.parts as f64;
        let parts = self.heights[rib].iter().enumerate();
        let sum: Complex<f64> = parts.map(|(i, height)| Complex::from_polar(*height, -turn * i as f64)).sum();
        sum * (2.0 / self.parts as f64)
    }

    /// Height of each rib under its contact, for each part in the middle of it, m.
    pub fn felt(&self) -> Vec<Vec<f64>> {
        let felt = |(contact, heights): (&Vec<f64>, &Vec<f64>)| {
            let under = |middle: usize| {
                let mut sum = 0.0;
                spread(contact, (middle, self.parts), |part, weight| sum += weight * heights[part]);
                sum
            };
            (0..self.parts).map(under).collect()
        };
        self.contacts.iter().zip(&self.heights).map(felt).collect()
    }

    /// Part `middle` is in the middle of the contact, a time `step` (s) after the part before it.
    ///
    /// - `felt`: height of each rib under its contact, m
    /// - `presses`: each rib's load and deflection beyond those at rest
    pub fn pass(&mut self, middle: usize, felt: &[f64], presses: &[RibPress], step: f64) {
        let WearingTread { face, states, ribs, passed, .. } = self;
        passed.fill(0.0);
        for (state, turning) in states {
            ribs.clear();
            ribs.extend(felt.iter().zip(presses).enumerate().map(|(r, (felt, press))| {
                let radius = state.ribs[r].radius() + felt - ROLLING_SHARE * press.deflection;
                RollingRib::new(radius, face.brush((state.loads[r] + press.load).max(0.0)))
            }));
            turning.follow(ribs, state.asked, (self.inertia, step));
            let sums = passed.iter_mut().zip(&*ribs);
            sums.for_each(|(sum, rib)| *sum += state.share * rib.energy(turning.travel, state.asked.side));
        }
        for ((contact, energies), here) in self.contacts.iter().zip(&mut self.energies).zip(&self.passed) {
            let middle = middle % self.parts;
            spread(contact, (middle, self.parts), |part, weight| energies[part] += weight * here);
        }
    }

    /// Ends a turn: the profile loses what was scuffed since the last one, `worn` (m) in the mean of the ribs.
    pub fn wear(&mut self, worn: f64) {
        let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
        let each: Vec<f64> = self.energies.iter().map(|parts| mean(parts)).collect();
        let all = mean(&each);
        for ((heights, energies), own) in self.heights.iter_mut().zip(&mut self.energies).zip(each) {
            for (height, energy) in heights.iter_mut().zip(energies) {
                if all > 0.0 {
                    *height -= worn * (*energy - own) / all;
                }
                *energy = 0.0;
            }
        }
    }
}

impl Turning {
    /// Follows the ribs over a step (s): `I V/R³ dR_e/dt = Σ X(R_e) − X asked`, by the trapezoidal rule, linear in the step.
    fn follow(&mut self, ribs: &[RollingRib], asked: Asked, (inertia, step): (f64, f64)) {
        if inertia == 0.0 {
            self.travel = rolling_radius(ribs, asked);
            return;
        }
        let [now, slope] = surplus(ribs, asked, self.travel).map(|sum| sum / inertia);
        let change = 0.5 * step * (self.rate + now) / (1.0 - 0.5 * step * slope);
        self.travel += change;
        self.rate = now + slope * change;
    }
}

/// Weights of an even mean over a length in parts: whole parts, and what is left at either end.
fn weights(parts: f64) -> Vec<f64> {
    let reach = (0.5 * parts + 0.5).floor() as usize;
    let of = |i: usize| (0.5 * parts + 0.5 - i as f64).min(1.0) / parts;
    if parts <= 1.0 {
        return vec![1.0];
    }
    (0..=reach).map(of).filter(|weight| *weight > 0.0).collect()
}

/// Adds to the parts of a contact about its middle one, which is one of the parts; a contact is shorter than the circumference.
fn spread(contact: &[f64], (middle, parts): (usize, usize), mut add: impl FnMut(usize, f64)) {
    add(middle, contact[0]);
    for (i, weight) in contact.iter().enumerate().skip(1) {
        let (ahead, behind) = (middle + i, middle + parts - i);
        add(if ahead < parts { ahead } else { ahead - parts }, *weight);
        add(if behind < parts { behind } else { behind - parts }, *weight);
    }
}
