//! Wear across a face, against the same tires upright and straight.

use crate::rolling::{RibScuff, Rolling};
use crate::{Face, Pose, TreadError};

/// Share of the scuff that must be one-sided for a rib to feather (a judgment, no source).
const FEATHERED: f64 = 0.1;

/// A face with its wear.
#[derive(Debug, Clone, PartialEq)]
pub struct Worn {
    /// Distance traveled over the angle turned, m.
    pub radius: f64,
    /// The tires, outermost first.
    pub tires: Vec<TireWear>,
    /// Mean wear of the ribs were the same tires upright, straight, matched and at their rated inflation under the same load, J/m² of an ordinary rubber.
    pub upright: f64,
}

/// Which way a feathered rib points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Feather {
    /// Its sharp edges point inboard: toe-in.
    Inboard,
    /// Its sharp edges point outboard: toe-out.
    Outboard,
}

/// One tire of a face.
#[derive(Debug, Clone, PartialEq)]
pub struct TireWear {
    /// Its load, N.
    pub load: f64,
    /// Its share of the load of the face; zero off the road.
    pub share: f64,
    /// Its ribs, the inner shoulder first.
    pub ribs: Vec<RibWear>,
}

/// One rib of a tire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RibWear {
    /// Place outboard of the tire's center, m.
    pub outboard: f64,
    /// Load, N.
    pub load: f64,
    /// Slip and scuff.
    pub scuff: RibScuff,
    /// Energy of scuff for each area of tread and passage through the contact, by the abradability, J/m².
    pub wear: f64,
    /// Wear over the mean wear of the upright tires; none where those do not wear.
    pub index: Option<f64>,
    /// Wear over that of the same rib upright; none where that does not wear.
    pub against_upright: Option<f64>,
    /// Depth of tread worn off for each distance traveled; none where nobody knows what a joule takes off.
    pub worn_per_distance: Option<f64>,
}

/// Load, scuff and upright wear of every rib of a face: sums or means of many poses too.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RibStates {
    pub radius: f64,
    pub load: Vec<f64>,
    pub scuff: Vec<RibScuff>,
    /// Energy for each meter were the tires upright, J/m.
    pub upright: Vec<f64>,
}

impl Face {
    /// Wear of every rib: `abradability × E/b` for the energy E of scuff for each meter and the rib's width b.
    ///
    /// # Errors
    /// As [`Face::rolling`].
    pub fn worn(&self, pose: Pose) -> Result<Worn, TreadError> {
        Ok(self.worn_of(&self.rib_states(pose)?))
    }

    pub(crate) fn rib_states(&self, pose: Pose) -> Result<RibStates, TreadError> {
        let Rolling { radius, load, ribs } = self.rolling(pose)?;
        Ok(RibStates { radius, load, scuff: ribs, upright: self.upright_energy(pose.load) })
    }

    pub(crate) fn wear_of(&self, energy: f64) -> f64 {
        self.tread.abradability * energy / self.tread.rib_width()
    }

    pub(crate) fn worn_of(&self, states: &RibStates) -> Worn {
        let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
        let upright = self.wear_of(mean(&states.upright));
        let total: f64 = states.load.iter().sum();
        let over = |wear: f64, base: f64| (base > 0.0).then(|| wear / base);
        let rib = |i: usize| {
            let wear = self.wear_of(states.scuff[i].energy);
            RibWear {
                outboard: self.ribs[i % self.tread.ribs].on_tire,
                load: states.load[i],
                scuff: states.scuff[i],
                wear,
                index: over(wear, upright),
                against_upright: over(wear, self.wear_of(states.upright[i])),
                worn_per_distance: self.worn_per_distance(wear, states.radius),
            }
        };
        let tire = |number: usize| {
            let first = number * self.tread.ribs;
            let ribs: Vec<RibWear> = (first..first + self.tread.ribs).map(rib).collect();
            let load: f64 = ribs.iter().map(|rib| rib.load).sum();
            TireWear { load, share: if total > 0.0 { load / total } else { 0.0 }, ribs }
        };
        Worn { radius: states.radius, tires: (0..self.tires.len()).map(tire).collect(), upright }
    }
}

impl TireWear {
    /// The rib at the inner shoulder.
    pub fn inner_shoulder(&self) -> &RibWear {
        &self.ribs[0]
    }

    /// The rib at the outer shoulder.
    pub fn outer_shoulder(&self) -> &RibWear {
        &self.ribs[self.ribs.len() - 1]
    }

    /// Load of the inner over that of the outer shoulder rib; none where the outer one is off the road.
    pub fn shoulder_load_ratio(&self) -> Option<f64> {
        ratio(self.inner_shoulder().load, self.outer_shoulder().load)
    }

    /// Wear of the inner over that of the outer shoulder rib; none where the outer one does not wear.
    pub fn shoulder_wear_ratio(&self) -> Option<f64> {
        ratio(self.inner_shoulder().wear, self.outer_shoulder().wear)
    }
}

impl TireWear {
    /// Which way the ribs of the tire feather; none where less than a tenth of their scuff is one-sided (a judgment, no
    /// source).
    pub fn feather(&self) -> Option<Feather> {
        let sum = |value: fn(&RibScuff) -> f64| self.ribs.iter().map(|rib| value(&rib.scuff)).sum::<f64>();
        let one_sided = ratio(sum(|scuff| scuff.inboard_less_outboard), sum(|scuff| scuff.energy))?;
        let way = if one_sided > 0.0 { Feather::Inboard } else { Feather::Outboard };
        (one_sided.abs() >= FEATHERED).then_some(way)
    }
}

impl Worn {
    /// The most worn rib: number of its tire, number on the tire.
    pub fn most_worn(&self) -> (usize, usize) {
        let ribs = self
            .tires
            .iter()
            .enumerate()
            .flat_map(|(tire, worn)| (0..worn.ribs.len()).map(move |rib| (tire, rib)));
        let wear = |(tire, rib): (usize, usize)| self.tires[tire].ribs[rib].wear;
        ribs.reduce(|most, next| if wear(next) > wear(most) { next } else { most }).unwrap_or((0, 0))
    }
}

fn ratio(part: f64, base: f64) -> Option<f64> {
    (base > 0.0).then(|| part / base)
}
