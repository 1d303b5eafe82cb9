//! A constant force that drives over a beam.

use std::f64::consts::TAU;

use crate::Mesh;
use crate::error::BeamError;
use crate::parts::line::Line;
use crate::solving::modal::{ModalBeam, accepted, hertz};

/// Steps in the period of the fastest mode, and least steps of the passage.
const STEPS: [f64; 2] = [16.0, 2000.0];
/// Most steps.
const MOST_STEPS: f64 = 2e6;
/// Points of the history that are kept, about.
const KEPT: usize = 1000;
/// Periods of the first mode after the force has left.
const AFTER: f64 = 2.0;

/// A constant force that drives over a beam from its start to its end, at rest before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MovingForce {
    /// Upward force (N).
    pub force: f64,
    /// Speed (m/s), above 0.
    pub speed: f64,
    /// Damping ratio of every mode, 0 or more, below 1.
    pub damping: f64,
    /// Modes.
    pub modes: usize,
    /// Where the deflection is read (m); the middle if none.
    pub at: Option<f64>,
}

/// What a moving force does.
#[derive(Debug, Clone, PartialEq)]
pub struct Passage {
    /// Where the deflection is read (m).
    pub at: f64,
    /// Time after the force comes onto the beam (s), the place of the force (m; beyond the beam once it has left) and the
    /// deflection (m), thinned.
    pub history: Vec<[f64; 3]>,
    /// Largest deflection by size while the force is on the beam, signed (m).
    pub largest: f64,
    /// The same when it crawls (m).
    pub largest_static: f64,
    /// Largest deflection by size after it has left, signed (m).
    pub largest_after: f64,
    /// Speed over the critical one, at which the force keeps step with the first mode, v/(2 f₁ L).
    pub speed_ratio: f64,
    /// First natural frequency (Hz).
    pub frequency: f64,
}

impl Passage {
    /// Largest deflection while the force is on the beam over that when it crawls.
    pub fn amplification(&self) -> f64 {
        self.largest / self.largest_static
    }
}

/// The passage of a force, by modes whose equations are solved exactly for a force that goes linearly within each step, and the
/// static deflection of what the modes leave.
///
/// # Errors
/// [`BeamError::Value`], [`BeamError::OffTheBeam`], [`BeamError::Mechanism`] and as [`crate::modes`].
pub fn passage(line: &Line, mesh: &Mesh, moving: &MovingForce) -> Result<Passage, BeamError> {
    let force = accepted("force", moving.force, ("N", "a finite number", true))?;
    let speed = accepted("speed", moving.speed, ("m/s", "a number above 0", moving.speed > 0.0))?;
    let holds = (0.0..1.0).contains(&moving.damping);
    let damping = accepted("damping ratio", moving.damping, ("", "0 or more, below 1", holds))?;
    let at = line.checked_place(moving.at.unwrap_or(0.5 * line.length()))?;
    let beam = ModalBeam::of(&line.with_node(at), mesh, moving.modes)?;
    let (read, influence, frequencies) = (beam.at(at), beam.influence(at)?, beam.frequencies());
    let on = line.length() / speed;
    let highest = frequencies.iter().copied().fold(0.0, f64::max);
    let steps = (on * highest / TAU * STEPS[0]).clamp(STEPS[1], MOST_STEPS).ceil();
    let step = on / steps;
    let after = (AFTER * TAU / frequencies[0] / step).ceil().min(MOST_STEPS) as usize;
    let mut modes: Vec<Oscillator> =
        beam.squares().iter().map(|square| Oscillator::new(square.max(0.0).sqrt(), damping, step)).collect();
    let mut passage = Passage {
        at,
        history: vec![[0.0; 3]],
        largest: 0.0,
        largest_static: 0.0,
        largest_after: 0.0,
        speed_ratio: speed / (2.0 * hertz(frequencies[0]) * line.length()),
        frequency: hertz(frequencies[0]),
    };
    let count = steps as usize + after;
    let stride = count.div_ceil(KEPT);
    let mut before = scaled(beam.at(0.0), force);
    for number in 1..=count {
        let time = step * number as f64;
        let leaves = number > steps as usize;
        let place = (speed * time).min(line.length());
        let now = if leaves { vec![0.0; before.len()] } else { scaled(beam.at(place), force) };
        // What leaves does so between two steps, not along one.
        let start = if leaves { now.clone() } else { before };
        let crawling = if leaves { 0.0 } else { force * influence.at(place) };
        let mut deflection = crawling;
        for (((mode, start), end), read) in modes.iter_mut().zip(&start).zip(&now).zip(&read) {
            deflection += read * (mode.advance([*start, *end]) - end / mode.square);
        }
        let largest = if leaves { &mut passage.largest_after } else { &mut passage.largest };
        keep_larger(largest, deflection);
        keep_larger(&mut passage.largest_static, crawling);
        if number % stride == 0 || number == count {
            passage.history.push([time, speed * time, deflection]);
        }
        before = now;
    }
    Ok(passage)
}

fn scaled(values: Vec<f64>, by: f64) -> Vec<f64> {
    values.into_iter().map(|value| by * value).collect()
}

fn keep_larger(kept: &mut f64, value: f64) {
    if value.abs() > kept.abs() {
        *kept = value;
    }
}

/// q'' + 2ζω q' + ω² q = f, exactly over a step along which f goes linearly.
struct Oscillator {
    square: f64,
    state: [f64; 2],
    /// Of the state over a step without force.
    free: [[f64; 2]; 2],
    damping: f64,
    omega: f64,
    step: f64,
}

impl Oscillator {
    fn new(omega: f64, damping: f64, step: f64) -> Self {
        let damped = omega * (1.0 - damping * damping).sqrt();
        let (sine, cosine) = (damped * step).sin_cos();
        let decay = (-damping * omega * step).exp();
        let share = damping * omega / damped;
        let free = [
            [decay * (cosine + share * sine), decay * sine / damped],
            [-decay * omega * omega / damped * sine, decay * (cosine - share * sine)],
        ];
        Oscillator { square: omega * omega, state: [0.0; 2], free, damping, omega, step }
    }

    /// The next displacement under a force that goes from one value to another.
    fn advance(&mut self, [start, end]: [f64; 2]) -> f64 {
        // The steady answer to f = a + b t is (a − 2ζ b/ω)/ω² + b t/ω².
        let rate = (end - start) / self.step;
        let lag = 2.0 * self.damping * rate / self.omega;
        let steady = |force: f64| (force - lag) / self.square;
        let left = [self.state[0] - steady(start), self.state[1] - rate / self.square];
        let moved = self.free.map(|row| row[0] * left[0] + row[1] * left[1]);
        self.state = [moved[0] + steady(end), moved[1] + rate / self.square];
        self.state[0]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A constant force on an undamped oscillator at rest: q = f (1 − cos ωt)/ω²; on a damped one it ends at f/ω².
    #[test]
    fn an_oscillator_answers_a_constant_force_as_by_hand() {
        let mut own = Oscillator::new(3.0, 0.0, 0.7);
        for number in 1..20 {
            let expected = 2.0 * (1.0 - (3.0 * 0.7 * f64::from(number)).cos()) / 9.0;
            assert!((own.advance([2.0, 2.0]) - expected).abs() < 1e-12);
        }
        let mut damped = Oscillator::new(3.0, 0.2, 0.7);
        let last = (0..200).map(|_| damped.advance([2.0, 2.0])).last().unwrap();
        assert!((last - 2.0 / 9.0).abs() < 1e-12);
    }

    /// A ramp from rest, undamped: q = b (t − sin(ωt)/ω)/ω²; the damped steady answer lags by 2ζ/ω.
    #[test]
    fn an_oscillator_answers_a_ramp_as_by_hand() {
        let mut own = Oscillator::new(3.0, 0.0, 0.1);
        let mut damped = Oscillator::new(3.0, 0.2, 0.1);
        let (mut last, mut last_damped) = (0.0, 0.0);
        for number in 1..=400 {
            let ends = [f64::from(number - 1), f64::from(number)].map(|n| 5.0 * 0.1 * n);
            (last, last_damped) = (own.advance(ends), damped.advance(ends));
            let time = 0.1 * f64::from(number);
            assert!((last - 5.0 * (time - (3.0 * time).sin() / 3.0) / 9.0).abs() < 1e-11);
        }
        assert!((last_damped - 5.0 * (40.0 - 0.4 / 3.0) / 9.0).abs() < 1e-9);
        assert!(last > 20.0);
    }
}
