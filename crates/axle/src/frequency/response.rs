//! Answers of the axle at one frequency at a time: to a harmonic road, and to a random one by its spectrum.

use axlebow_road::FeltSpectrum;

use crate::frequency::frequency_grid::FrequencyGrid;
use crate::frequency::response_outcome::{RandomOutcome, ResponseOutcome, StationResponse};
use crate::frequency::response_warnings::response_warnings;
use crate::frequency::small_motion::SmallMotion;
use crate::frequency::transfer::TransferFunction;
use crate::{Axle, AxleError, Input, ModeOutcome, RandomAnswer, Sides, modes};

/// Least and most frequencies that may be asked for.
const POINTS: std::ops::RangeInclusive<usize> = 2..=100_000;

/// Frequencies over the band of a random road, before those near modes: 160 a decade, for a mean square within
/// 1e-3 (`frequency_grid`).
const BAND_POINTS: usize = 400;

/// Modes to begin with, and most of them.
const MODES: [usize; 2] = [16, 64];

/// What is asked about the answers of an axle to the road.
#[derive(Debug, Clone, PartialEq)]
pub struct ResponseOptions {
    /// Load of the axle on the road at rest, N.
    pub axle_load: f64,
    /// What the road does under the two wheels, for the transfer functions.
    pub input: Input,
    /// Lowest and highest frequency, Hz, above zero.
    pub frequencies: [f64; 2],
    /// Number of frequencies, evenly apart on a logarithmic scale; more are added where modes resonate.
    pub points: usize,
    /// Places whose stress is wanted, by name; none for the place that is stressed most at rest.
    pub stations: Vec<String>,
    /// A random road that is driven over.
    pub over: Option<RandomRide>,
}

/// A random road driven over at a speed.
#[derive(Debug, Clone, PartialEq)]
pub struct RandomRide {
    /// Name for results.
    pub name: String,
    /// The road as the tires feel it.
    pub road: FeltSpectrum,
}

impl ResponseOptions {
    fn check(&self) -> Result<(), AxleError> {
        let [low, high] = self.frequencies;
        crate::parts::error::positive("lowest frequency", low, "Hz")?;
        crate::parts::error::positive("highest frequency", high, "Hz")?;
        if low >= high {
            let (what, accepted) = ("highest frequency", "a value above the lowest frequency");
            return Err(AxleError::Value { what, value: high, unit: "Hz", accepted });
        }
        if !POINTS.contains(&self.points) {
            let (what, value) = ("number of frequencies", self.points as f64);
            return Err(AxleError::Value { what, value, unit: "", accepted: "2 to 100000" });
        }
        Ok(())
    }
}

/// Transfer functions from the height of the road to camber change, wheel load and fiber stress, and the answer
/// to a random road.
///
/// - transfer function: amplitude and phase of a result for a road of height `e^{iωt}` as the tires feel it
/// - answer to a random road: density `Gm·|H_both|² + Gd·|H_opposed|²`, with the densities of the tracks' mean
///   and difference ([`FeltSpectrum`]) and H the transfer functions for both wheels alike and opposed; its
///   integral over the band of the road is the mean square
///
/// Stress is that of the fiber that is stressed most at rest. Valid while no tire leaves the road and no other
/// fiber of the section overtakes that one.
///
/// # Errors
/// [`AxleError::Value`] for frequencies out of range; [`AxleError::UnknownStation`];
/// [`AxleError::LoadBelowWeight`]; [`AxleError::Fe`].
///
/// Source: S. H. Crandall, W. D. Mark, Random Vibration in Mechanical Systems, 1963, ch. 2 (from memory).
pub fn response(axle: &Axle, ask: &ResponseOptions) -> Result<ResponseOutcome, AxleError> {
    ask.check()?;
    let top = ask.over.as_ref().map_or(0.0, |over| over.road.frequencies()[1]).max(ask.frequencies[1]);
    let small = SmallMotion::of(axle, (ask.axle_load, top), &ask.stations)?;
    let modes = modes_up_to(&axle.rolling(), ask.axle_load, top)?;
    let frequencies = FrequencyGrid { ends: ask.frequencies, points: ask.points }.near(&modes);
    let answers = small.answers(&frequencies)?;
    let (camber, load, stress) = by_result(answers.iter().map(|answer| {
        TransferFunction::of(&frequencies, answer.combined(ask.input.rise()), (ask.input, &modes))
    }));
    let stations = small.stress.iter().zip(stress);
    let random = ask.over.as_ref().map(|over| random(&small, over, &modes)).transpose()?;
    let mut outcome = ResponseOutcome {
        input: ask.input,
        load_at_rest: small.load_at_rest,
        camber,
        load,
        stress: stations.map(|(reading, transfer)| StationResponse::of(reading, transfer)).collect(),
        random,
        modes,
        frequencies,
        warnings: Vec::new(),
    };
    outcome.warnings = response_warnings(&outcome);
    Ok(outcome)
}

/// Camber and load of each wheel and stresses, from answers in this order, left first.
fn by_result<T>(mut answers: impl Iterator<Item = T>) -> (Sides<T>, Sides<T>, Vec<T>) {
    let mut pair = || Sides::each(|_| answers.next().expect("an answer for each wheel"));
    let (camber, load) = (pair(), pair());
    (camber, load, answers.collect())
}

/// Spectra of the axle's own fiber stress at stations over a random road: frequency (Hz) and density (Pa²/Hz).
///
/// - `modes`: modes near which frequencies crowd
///
/// # Errors
/// As [`response`].
pub(crate) fn stress_spectra(
    axle: &Axle,
    axle_load: f64,
    stations: &[&str],
    (over, modes): (&RandomRide, &[ModeOutcome]),
) -> Result<Vec<Vec<(f64, f64)>>, AxleError> {
    let top = over.road.frequencies()[1];
    let small = SmallMotion::of_axle(axle, (axle_load, top), stations)?;
    let outcome = random(&small, over, modes)?;
    let points = |own: &RandomAnswer| outcome.frequencies.iter().copied().zip(own.density.clone()).collect();
    Ok(outcome.stress.iter().map(points).collect())
}

fn random(small: &SmallMotion, over: &RandomRide, modes: &[ModeOutcome]) -> Result<RandomOutcome, AxleError> {
    let road = &over.road;
    let frequencies = FrequencyGrid { ends: road.frequencies(), points: BAND_POINTS }.near(modes);
    let answers = small.answers(&frequencies)?;
    let (camber, load, stress) = by_result(answers.iter().map(|answer| {
        let [both, opposed] = [Input::Both, Input::Opposed].map(|input| answer.combined(input.rise()));
        let density =
            frequencies.iter().zip(both.iter().zip(&opposed)).map(|(frequency, (both, opposed))| {
                let road = road.at(*frequency);
                road.mean * both.norm_sqr() + road.difference * opposed.norm_sqr()
            });
        RandomAnswer::of(&frequencies, density.collect())
    }));
    let (speed, radius) = (road.speed(), small.tire_radius);
    let name = over.name.clone();
    Ok(RandomOutcome { name, speed, tire_radius: radius, camber, load, stress, frequencies })
}

/// The modes up to a frequency and at least one above, or as many as are of use.
pub(crate) fn modes_up_to(axle: &Axle, axle_load: f64, top: f64) -> Result<Vec<ModeOutcome>, AxleError> {
    let [mut count, most] = MODES;
    loop {
        let found = modes(axle, axle_load, count)?.modes;
        let beyond = found.last().is_none_or(|mode| mode.frequency > top);
        if beyond || count >= most || found.len() < count {
            return Ok(found);
        }
        count *= 2;
    }
}
