//! Keeps what the results need of a ride, many samples at a time.

use axlebow_fe::linalg::Columns;
use axlebow_fe::{Direction, Sample};

use crate::ride_outcome::{RideHistory, StationPeak};
use crate::ride_readings::{Fibres, Readings};
use crate::vibration::VibrationModel;
use crate::{Ride, Side};

/// Samples that are read together.
const TOGETHER: usize = 64;

/// Collects samples and reads camber and stress from them by the block.
pub(crate) struct Recorder<'a> {
    readings: &'a Readings,
    ride: &'a Ride,
    tires: Vec<Side>,
    history: RideHistory,
    peaks: Vec<StationPeak>,
    /// Motions of the samples that are not read yet, side by side.
    motions: Columns,
    waiting: usize,
}

impl<'a> Recorder<'a> {
    pub(crate) fn of(model: &VibrationModel, readings: &'a Readings, ride: &'a Ride) -> Self {
        let places = model.frame.places.iter().rev();
        Recorder {
            readings,
            ride,
            tires: model.contacts().iter().map(|contact| contact.side).collect(),
            history: RideHistory::default(),
            peaks: places.map(|place| StationPeak::none(place.name().as_ref(), place.y)).collect(),
            motions: Columns::zeros(readings.order, TOGETHER),
            waiting: 0,
        }
    }

    pub(crate) fn take(&mut self, sample: &Sample) {
        self.history.time.push(sample.time);
        self.history.distance.push(self.ride.from + self.ride.speed * sample.time);
        for side in Side::BOTH {
            let (mut load, mut road) = (0.0, 0.0);
            for (tire, _) in self.tires.iter().enumerate().filter(|(_, own)| **own == side) {
                load += sample.forces[tire];
                road = sample.bases[tire];
            }
            self.history.load.of_mut(side).push(load);
            self.history.road.of_mut(side).push(road);
        }
        for (freedom, value) in sample.motion.u.iter().enumerate() {
            self.motions.set(freedom, self.waiting, *value);
        }
        self.waiting += 1;
        if self.waiting == TOGETHER {
            self.read();
        }
    }

    /// Histories and peaks of all samples taken.
    pub(crate) fn finished(mut self) -> (RideHistory, Vec<StationPeak>) {
        self.read();
        (self.history, self.peaks)
    }

    /// Reads the samples that wait.
    fn read(&mut self) {
        let count = std::mem::take(&mut self.waiting);
        let first = self.history.time.len() - count;
        for side in Side::BOTH {
            let camber = self.reading(self.readings.camber.of(side));
            self.history.camber.of_mut(side).extend_from_slice(&camber[..count]);
        }
        let roll = self.reading(&self.readings.roll);
        self.history.roll.extend_from_slice(&roll[..count]);
        let mut largest = [0.0_f64; TOGETHER];
        for fibres in &self.readings.fibres {
            let stress = self.stress(fibres);
            let peak = &mut self.peaks[fibres.place];
            for (i, stress) in stress[..count].iter().enumerate() {
                peak.see(*stress, self.history.time[first + i]);
                largest[i] = if stress.abs() > largest[i].abs() { *stress } else { largest[i] };
            }
        }
        self.history.stress.extend_from_slice(&largest[..count]);
    }

    fn stress(&self, fibres: &Fibres) -> [f64; TOGETHER] {
        let row = |row: &Option<Direction>| row.as_ref().map_or([0.0; TOGETHER], |row| self.reading(row));
        let [mean, x, z] = fibres.rows.each_ref().map(row);
        std::array::from_fn(|i| fibres.reach.extreme_stress(mean[i], [x[i], z[i]]))
    }

    fn reading(&self, row: &Direction) -> [f64; TOGETHER] {
        let mut values = [0.0; TOGETHER];
        self.motions.weighted_sum(row.parts(), &mut values);
        values
    }
}
