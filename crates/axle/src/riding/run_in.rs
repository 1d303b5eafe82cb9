//! The run-in of a ride over a road that repeats.
//!
//! A ride that starts at rest needs some seconds until body and axle move as they do on a long road. Over a random road,
//! which repeats after its length, a ride therefore drives over the road's end first: at rest on a level road, whose
//! bumps grow to their full height, for as long as the slowest motion needs to forget where it came from.

use axlebow_road::{Road, Track};

use crate::riding::tracks::felt;
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

#[cfg(test)]
mod tests {
    use axlebow_road::MeasuredProfile;

    use super::*;

    fn lap() -> Track {
        let heights: Vec<f64> = (0..=40).map(|i| (f64::from(i % 40) * 0.7).sin()).collect();
        let distances: Vec<f64> = (0..=40).map(|i| 0.5 * f64::from(i)).collect();
        Track::new(MeasuredProfile::new(&distances, &heights, 1.0).unwrap())
    }

    fn asked(repeats: bool) -> Ride {
        Ride { repeats, speed: 10.0, ..crate::example::ride_over(Road { left: lap(), right: lap() }) }
    }

    #[test]
    fn bumps_grow_from_nothing_and_then_are_those_of_the_roads_end() {
        let ride = asked(true);
        let course = Course::of(&ride, &ride.road, 3.0);
        let felt = |time: f64| course.felt(&lap(), time);
        assert_eq!(felt(-3.0), [0.0, 0.0]);
        for time in [-2.3, -1.9, -0.4, -1e-9] {
            let there = lap().height(20.0 * 2.0 + 10.0 * time - if time < -2.0 { 0.0 } else { 20.0 });
            assert!((felt(time)[0] - there).abs() < 1e-6, "{time}");
        }
        for time in [-2.91, -2.71, -2.46, -1.03, 0.63] {
            let rate = (felt(time + 1e-6)[0] - felt(time - 1e-6)[0]) / 2e-6;
            assert!((felt(time)[1] - rate).abs() < 1e-5 * (1.0 + rate.abs()), "{time}");
        }
        assert_eq!(felt(0.63), [lap().height(6.3), 10.0 * lap().slope(6.3)]);
    }

    #[test]
    fn only_a_road_that_repeats_has_a_run_in_and_it_is_long_enough_for_the_slowest_motion() {
        let mut held = crate::example::axle();
        (held.body_roll_stiffness, held.body_roll_damping) = (6e5, 2e4);
        for side in crate::Side::BOTH {
            held.seats.of_mut(side).loss_factor = 0.1;
        }
        let modes = crate::modes(&held, 89e3, 3).unwrap().modes;
        assert_eq!(run_in(&asked(false), &modes), 0.0);
        let rate = |mode: &ModeOutcome| std::f64::consts::TAU * mode.frequency * mode.damping_ratio;
        let slowest = modes.iter().map(rate).fold(f64::INFINITY, f64::min);
        assert!(5.0 / slowest < LONGEST);
        assert_eq!(run_in(&asked(true), &modes), 5.0 / slowest);
        let undamped = ModeOutcome { damping_ratio: 0.0, ..modes[0].clone() };
        assert_eq!(run_in(&asked(true), &[undamped]), LONGEST);
    }
}
