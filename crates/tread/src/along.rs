//! Wear along a ride, and where round the tire it falls.

use crate::round::RoundMap;
use crate::worn::RibStates;
use crate::{Face, Pose, RibScuff, TreadError, Worn};

/// One moment of a ride.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passed {
    /// Distance along the road, m; it grows from one moment to the next.
    pub distance: f64,
    /// How the hub stands then.
    pub pose: Pose,
}

/// How a ride is followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AlongRide {
    /// Parts into which the tire's circumference is cut.
    pub parts: usize,
}

/// Wear of a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct RideWear {
    /// Means over the distance: loads, slips, wear, and the upright wear under the same loads.
    pub mean: Worn,
    /// Turns of the tire.
    pub turns: f64,
    /// Wear round each tire, outermost first.
    pub round: Vec<RoundMap>,
}

/// Sums over a ride.
struct Sums<'a> {
    face: &'a Face,
    length: f64,
    angle: f64,
    states: RibStates,
    /// Length that passed in each part of the circumference, and energy of each rib there.
    parts: Vec<f64>,
    energy: Vec<Vec<f64>>,
}

impl Face {
    /// Wear over a ride: each moment counts for half of the distance to its neighbors, and falls on the part of the
    /// circumference that is in contact then, as the tire rolls on its own radius from the first moment on.
    ///
    /// # Errors
    /// As [`Face::rolling`]; [`TreadError::TooShort`] for a ride without distance.
    pub fn worn_along(&self, ride: &[Passed], along: AlongRide) -> Result<RideWear, TreadError> {
        let mut sums = Sums::new(self, along.parts.max(1));
        for (i, moment) in ride.iter().enumerate() {
            let before = ride[i.saturating_sub(1)].distance;
            let after = ride.get(i + 1).unwrap_or(moment).distance;
            sums.add(moment.pose, 0.5 * (after - before))?;
        }
        let moves_on = ride.windows(2).all(|pair| pair[1].distance > pair[0].distance);
        if !(moves_on && sums.length > 0.0) {
            return Err(TreadError::TooShort { samples: ride.len() });
        }
        Ok(sums.finished())
    }
}

impl<'a> Sums<'a> {
    fn new(face: &'a Face, parts: usize) -> Self {
        let ribs = face.ribs.len() * face.tires.len();
        let none = vec![0.0; ribs];
        let scuff = vec![RibScuff::default(); ribs];
        Sums {
            face,
            length: 0.0,
            angle: 0.0,
            states: RibStates { radius: 0.0, load: none.clone(), scuff, upright: none },
            parts: vec![0.0; parts],
            energy: vec![vec![0.0; parts]; ribs],
        }
    }

    fn add(&mut self, pose: Pose, length: f64) -> Result<(), TreadError> {
        let now = self.face.rib_states(pose)?;
        let turn = length / now.radius;
        let place = (self.angle + 0.5 * turn) / std::f64::consts::TAU;
        let part = ((place - place.floor()) * self.parts.len() as f64) as usize;
        let part = part.min(self.parts.len() - 1);
        self.parts[part] += length;
        for i in 0..now.load.len() {
            let scuff = &now.scuff[i];
            self.states.scuff[i].add(scuff, length);
            self.states.load[i] += length * now.load[i];
            self.states.upright[i] += length * now.upright[i];
            self.energy[i][part] += length * scuff.energy;
        }
        self.length += length;
        self.angle += turn;
        Ok(())
    }

    fn finished(mut self) -> RideWear {
        let share = self.length.recip();
        for i in 0..self.states.load.len() {
            let sum = std::mem::take(&mut self.states.scuff[i]);
            self.states.scuff[i].add(&sum, share);
            self.states.load[i] *= share;
            self.states.upright[i] *= share;
        }
        self.states.radius = self.length / self.angle;
        let mean = self.face.worn_of(&self.states);
        let ribs = self.face.tread.ribs;
        let map = |tire: usize| {
            let own = &self.energy[tire * ribs..(tire + 1) * ribs];
            RoundMap::new(own.iter().map(|energy| self.wear_of_parts(energy, mean.upright)).collect())
        };
        let round = (0..self.face.tires.len()).map(map).collect();
        RideWear { mean, turns: self.angle / std::f64::consts::TAU, round }
    }

    /// Wear of each part of the circumference over the mean upright wear; none where nothing passed.
    fn wear_of_parts(&self, energy: &[f64], upright: f64) -> Vec<Option<f64>> {
        let each = energy.iter().zip(&self.parts);
        each.map(|(energy, length)| {
            (*length > 0.0 && upright > 0.0).then(|| self.face.wear_of(energy / length) / upright)
        })
        .collect()
    }
}
