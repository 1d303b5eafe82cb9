//! Keeps what the results need of a ride, many samples at a time.

use axlebow_fe::linalg::Columns;
use axlebow_fe::{Direction, MotionReader, Sample};

use crate::dynamics::vibration::VibrationModel;
use crate::outcome::CamberSplit;
use crate::riding::moments::Moments;
use crate::riding::moving::Moving;
use crate::riding::ride_laws::RidePart;
use crate::riding::ride_outcome::{RideHistory, StationPeak, StopHits};
use crate::riding::ride_readings::Readings;
use crate::riding::ride_shape::RideShape;
use crate::{Ride, Side, Sides};

/// Samples that are read together: blocks of lanes, in an odd number of cache lines from one freedom to the next, so that the
/// motion of one sample does not fall onto few of the lines that a cache keeps apart.
const TOGETHER: usize = 72;

/// What is kept of a ride.
pub(crate) struct Recorded {
    pub history: RideHistory,
    /// Load (N) and camber change (rad) of each wheel at rest, where the ride starts.
    pub at_rest: Option<Sides<[f64; 2]>>,
    /// Peak stress of each place from left to right.
    pub peaks: Vec<StationPeak>,
    /// Largest camber change of each wheel by source.
    pub peak_camber: Sides<CamberSplit>,
    pub stops: Sides<Option<StopHits>>,
    /// Times that a tire left the road or came back.
    pub tire_changes: usize,
}

/// Collects samples and reads camber and stress from them by the block.
pub(crate) struct Recorder<'a> {
    model: &'a VibrationModel<'a>,
    moving: &'a Moving,
    readings: &'a Readings,
    ride: &'a Ride,
    reader: MotionReader<'a>,
    tires: Vec<Side>,
    /// What the laws after those of the tires stand for.
    parts: &'a [RidePart],
    recorded: Recorded,
    /// Motions of the samples that are not read yet, side by side.
    motions: Columns,
    waiting: usize,
    moments: Moments,
}

impl<'a> Recorder<'a> {
    pub(crate) fn of(
        model: &'a VibrationModel,
        (moving, parts): (&'a Moving, &'a [RidePart]),
        (ride, steps): (&'a Ride, usize),
    ) -> Self {
        let read = !moving.readings.fibers.is_empty();
        let stations = || model.frame.stations().rev().filter(move |_| read);
        let kept = if ride.keep.stresses { stations().count() } else { 0 };
        let stop = |side: Side| model.axle.seats.of(side).bump_stop.map(|_| StopHits::default());
        let recorded = Recorded {
            history: RideHistory::with_room(steps + 1, kept),
            peaks: stations().map(|(place, _)| StationPeak::none(place.name().as_ref(), place.y)).collect(),
            at_rest: None,
            peak_camber: Sides::default(),
            stops: Sides::each(stop),
            tire_changes: 0,
        };
        Recorder {
            model,
            moving,
            readings: &moving.readings,
            reader: MotionReader::of(&model.frame.structure),
            moments: Moments::new(ride.keep.shapes, steps),
            ride,
            tires: model.contacts().iter().map(|contact| contact.side).collect(),
            parts,
            recorded,
            motions: Columns::zeros(moving.readings.order, TOGETHER),
            waiting: 0,
        }
    }

    /// Takes a sample; of those that are not kept the first only, for the rest that it starts from.
    pub(crate) fn take(&mut self, sample: &Sample, keep: bool) {
        if self.recorded.at_rest.is_none() {
            let camber = |side: Side| self.readings.camber.of(side).dot(&sample.motion.u);
            self.recorded.at_rest = Some(Sides::each(|side| [self.load(sample, side), camber(side)]));
        }
        if !keep {
            return;
        }
        self.recorded.history.time.push(sample.time);
        self.take_stops(&sample.forces[self.tires.len()..]);
        self.recorded.history.distance.push(self.ride.from + self.ride.speed * sample.time);
        for side in Side::BOTH {
            let load = self.load(sample, side);
            self.recorded.history.load.of_mut(side).push(load);
            let road = self.tires_of(side).last().map_or(0.0, |tire| sample.bases[tire]);
            self.recorded.history.road.of_mut(side).push(road);
        }
        self.motions.set_column(self.waiting, &sample.motion.u);
        self.take_shape(&sample.motion.u);
        self.waiting += 1;
        if self.waiting == TOGETHER {
            self.read();
        }
    }

    /// Numbers of the tires of one side.
    fn tires_of(&self, side: Side) -> impl Iterator<Item = usize> + '_ {
        self.tires.iter().enumerate().filter(move |(_, own)| **own == side).map(|(tire, _)| tire)
    }

    fn load(&self, sample: &Sample, side: Side) -> f64 {
        self.tires_of(side).map(|tire| sample.forces[tire]).sum()
    }

    /// Keeps the shape of the axle where the last sample taken is among the moments asked for.
    fn take_shape(&mut self, u: &[f64]) {
        let number = self.recorded.history.time.len() - 1;
        if self.moments.take(number) {
            let all = self.moving.all_freedoms(u);
            let shape = RideShape::of(self.model, number, |node| self.reader.motion(&all, node));
            self.recorded.history.shapes.push(shape);
        }
    }

    /// A contact opened or closed.
    pub(crate) fn note_contact(&mut self, law: usize, touches: bool) {
        let Some(after) = law.checked_sub(self.tires.len()) else {
            self.recorded.tire_changes += 1;
            return;
        };
        if let (RidePart::BumpStop(side), true) = (self.parts[after], touches)
            && let Some(stop) = self.recorded.stops.of_mut(side)
        {
            stop.count += 1;
        }
    }

    /// Keeps the largest force of each bump stop; `forces` are those of the laws after the tires.
    fn take_stops(&mut self, forces: &[f64]) {
        for (part, force) in self.parts.iter().zip(forces) {
            let RidePart::BumpStop(side) = *part else { continue };
            if let Some(stop) = self.recorded.stops.of_mut(side) {
                stop.largest_force = stop.largest_force.max(*force);
            }
        }
    }

    /// What all samples taken say.
    pub(crate) fn finished(mut self) -> Recorded {
        self.read();
        self.recorded
    }

    /// Reads the samples that wait.
    fn read(&mut self) {
        let count = std::mem::take(&mut self.waiting);
        let first = self.recorded.history.time.len() - count;
        for side in Side::BOTH {
            let camber = self.reading(self.readings.camber.of(side));
            self.recorded.history.camber.of_mut(side).extend_from_slice(&camber[..count]);
            self.split_peak(side, &camber[..count]);
            let toe = self.reading(self.readings.toe.of(side));
            self.recorded.history.toe.of_mut(side).extend_from_slice(&toe[..count]);
        }
        let roll = self.reading(&self.readings.roll);
        self.recorded.history.roll.extend_from_slice(&roll[..count]);
        self.read_stresses(first);
    }

    /// Splits the largest camber change of the samples that wait, where none before it was larger.
    fn split_peak(&mut self, side: Side, camber: &[f64]) {
        let peak = camber.iter().enumerate().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
        let Some((number, &camber)) = peak else { return };
        if camber.abs() > self.recorded.peak_camber.of(side).sum().abs() {
            let read = |row: &Direction| self.reading(row)[number];
            let split = self.moving.splits.of(side).split(camber, read);
            *self.recorded.peak_camber.of_mut(side) = split;
        }
    }

    /// Reads the stresses of the samples from a number on: their peaks, the largest of each sample, and where it
    /// is asked for those of every place, the larger one of the two stretches that meet there.
    fn read_stresses(&mut self, first: usize) {
        if self.readings.fibers.is_empty() {
            return;
        }
        let samples = self.recorded.history.time.len();
        let grow = |stresses: &mut Vec<f64>| stresses.resize(samples, 0.0);
        grow(&mut self.recorded.history.stress);
        self.recorded.history.stresses.iter_mut().for_each(grow);
        let (mut terms, mut stress) = ([[0.0; TOGETHER]; 3], [0.0; TOGETHER]);
        for fibers in &self.readings.fibers {
            for (values, row) in terms.iter_mut().zip(&fibers.rows) {
                self.motions.weighted_sum(row.as_ref().map_or(&[], Direction::parts), values);
            }
            fibers.section.extreme_stresses(&terms, &mut stress);
            let Recorded { history, peaks, .. } = &mut self.recorded;
            let peak = &mut peaks[fibers.place];
            if largest_magnitude(&stress) > peak.stress.abs() {
                for (now, stress) in history.time[first..].iter().zip(&stress) {
                    peak.see(*stress, *now);
                }
            }
            keep_larger(&mut history.stress[first..], &stress);
            if let Some(kept) = history.stresses.get_mut(fibers.place) {
                keep_larger(&mut kept[first..], &stress);
            }
        }
    }

    fn reading(&self, row: &Direction) -> [f64; TOGETHER] {
        let mut values = [0.0; TOGETHER];
        self.motions.weighted_sum(row.parts(), &mut values);
        values
    }
}

/// Keeps of each pair the one of larger magnitude.
fn keep_larger(kept: &mut [f64], values: &[f64]) {
    for (kept, value) in kept.iter_mut().zip(values) {
        // Written either way, so that the compiler may run lanes across the pairs.
        *kept = if value.abs() > kept.abs() { *value } else { *kept };
    }
}

/// Largest magnitude, in lanes beside each other.
fn largest_magnitude(values: &[f64; TOGETHER]) -> f64 {
    let larger = |a: f64, b: f64| if a > b { a } else { b };
    let mut most = [0.0; 8];
    for lanes in values.as_chunks::<8>().0 {
        (0..8).for_each(|i| most[i] = larger(lanes[i].abs(), most[i]));
    }
    most.into_iter().fold(0.0, larger)
}
