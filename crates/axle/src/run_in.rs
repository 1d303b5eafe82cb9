//! The run-in of a ride over a road that repeats.
//!
//! A ride that starts at rest needs some seconds until body and axle move as they do on a long road. Over a random road,
//! which repeats after its length, a ride therefore drives over the road's end first: at rest on a level road, whose
//! bumps grow to their full height, for as long as the slowest motion needs to forget where it came from.

use axlebow_road::{Road, Track};

use crate::ride::felt;
use crate::{ModeOutcome, Ride};

/// Time constants 1/(ζω) of the mode that forgets slowest: what is left of a beginning is e⁻⁵, less than a hundredth.
const TIME_CONSTANTS: f64 = 5.0;

/// Longest run-in, s, where a mode is hardly damped.
const LONGEST: f64 = 30.0;

/// Part of the run-in in which the bumps grow.
const GROWING: f64 = 0.2;

/// How long a ride drives before its first sample (s): nothing on a road that does not repeat.
pub(crate) fn run_in(ride: &Ride, modes: &[ModeOutcome]) -> f64 {
    if !ride.repeats {
        return 0.0;
    }
    let rates = modes.iter().map(|mode| mode.damping_ratio * std::f64::consts::TAU * mode.frequency);
    (TIME_CONSTANTS / rates.fold(f64::INFINITY, f64::min)).min(LONGEST)
}

/// Where a ride is at a time, its run-in at times before zero.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Course {
    from: f64,
    speed: f64,
    run_in: f64,
    /// Where the road starts and after what distance it repeats, m; none where it does not.
    lap: Option<[f64; 2]>,
}

impl Course {
    /// - `run_in`: duration of the run-in, s
    pub(crate) fn of(ride: &Ride, road: &Road, run_in: f64) -> Self {
        let lap = ride.repeats.then(|| [road.start(), road.end() - road.start()]);
        Course { from: ride.from, speed: ride.speed, run_in, lap }
    }

    /// Height of a track under a tire (m) and how fast it rises (m/s) at a time (s).
    pub(crate) fn felt(&self, track: &Track, time: f64) -> [f64; 2] {
        let distance = self.from + self.speed * time;
        let distance = match self.lap {
            Some([start, length]) if distance < start => start + (distance - start).rem_euclid(length),
            _ => distance,
        };
        let [height, rate] = felt(track, distance, self.speed);
        if time >= 0.0 || self.run_in == 0.0 {
            return [height, rate];
        }
        let growing = GROWING * self.run_in;
        let share = ((time + self.run_in) / growing).clamp(0.0, 1.0);
        let [grown, growth] = [share * share * (3.0 - 2.0 * share), 6.0 * share * (1.0 - share) / growing];
        [grown * height, grown * rate + growth * height]
    }
}
