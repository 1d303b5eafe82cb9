//! A force that shakes a beam steadily.

use std::f64::consts::TAU;

use crate::Mesh;
use crate::error::BeamError;
use crate::parts::line::Line;
use crate::solving::modal::{ModalBeam, accepted, hertz};

/// A force that shakes a beam steadily at each of some frequencies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shaking {
    /// Where it acts (m).
    pub at: f64,
    /// Its amplitude, upward (N).
    pub force: f64,
    /// Lowest and highest frequency (Hz), in equal ratios between.
    pub frequencies: [f64; 2],
    /// How many frequencies.
    pub points: usize,
    /// Damping ratio of every mode, 0 or more, below 1.
    pub damping: f64,
    /// Modes.
    pub modes: usize,
    /// Where the deflection is read (m); where the force acts if none.
    pub read_at: Option<f64>,
}

/// What a steady force does.
#[derive(Debug, Clone, PartialEq)]
pub struct Shaken {
    /// Where the deflection is read (m).
    pub read_at: f64,
    /// Frequency (Hz), amplitude of the deflection (m) and its phase behind the force (rad, 0 to 2π).
    pub answers: Vec<[f64; 3]>,
    /// Deflection under the force at rest (m).
    pub at_rest: f64,
    /// Natural frequencies among those (Hz).
    pub natural: Vec<f64>,
}

impl Shaken {
    /// The frequency (Hz) with the largest amplitude, with it (m).
    pub fn largest(&self) -> Option<[f64; 2]> {
        let largest = self.answers.iter().max_by(|a, b| a[1].total_cmp(&b[1]))?;
        Some([largest[0], largest[1]])
    }
}

/// The steady answer to a harmonic force, by modes with a damping ratio each and the static deflection of what they leave.
///
/// # Errors
/// [`BeamError::Value`], [`BeamError::OffTheBeam`], [`BeamError::Mechanism`] and as [`crate::modes`].
pub fn shaken(line: &Line, mesh: &Mesh, shaking: &Shaking) -> Result<Shaken, BeamError> {
    let force = accepted("force", shaking.force, ("N", "a finite number", true))?;
    let holds = (0.0..1.0).contains(&shaking.damping);
    let damping = accepted("damping ratio", shaking.damping, ("", "0 or more, below 1", holds))?;
    let [from, to] = shaking.frequencies;
    accepted("lowest frequency", from, ("Hz", "a number above 0", from > 0.0))?;
    accepted("highest frequency", to, ("Hz", "more than the lowest", to > from))?;
    let at = line.checked_place(shaking.at)?;
    let read_at = line.checked_place(shaking.read_at.unwrap_or(at))?;
    let beam = ModalBeam::of(&line.with_node(at).with_node(read_at), mesh, shaking.modes)?;
    let products: Vec<f64> = beam.at(at).iter().zip(beam.at(read_at)).map(|(a, b)| a * b).collect();
    let at_rest = force * beam.influence(at)?.at(read_at);
    let points = shaking.points.max(2);
    let frequency = |number: usize| from * (to / from).powf(number as f64 / (points - 1) as f64);
    let answer = |frequency: f64| {
        let omega = TAU * frequency;
        let (mut real, mut imaginary) = (at_rest, 0.0);
        for (product, square) in products.iter().zip(beam.squares()) {
            let (stiff, lossy) = (square - omega * omega, 2.0 * damping * square.sqrt() * omega);
            let size = stiff * stiff + lossy * lossy;
            real += force * product * (stiff / size - 1.0 / square);
            imaginary -= force * product * lossy / size;
        }
        [frequency, real.hypot(imaginary), (-imaginary).atan2(real).rem_euclid(TAU)]
    };
    let natural = beam.frequencies().into_iter().map(hertz).filter(|own| (from..=to).contains(own));
    Ok(Shaken {
        read_at,
        answers: (0..points).map(|number| answer(frequency(number))).collect(),
        at_rest,
        natural: natural.collect(),
    })
}
