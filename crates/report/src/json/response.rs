//! The document of answers in the frequency domain, `axlebow/response/1`.

use axlebow_axle::{
    Input, PrintedCups, RandomAnswer, RandomOutcome, Resonance, ResponseOutcome, Side, Sides,
    StationResponse, TransferFunction,
};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const RESPONSE_SCHEMA: &str = "axlebow/response/1";

/// The document of answers in the frequency domain as JSON text: pretty, ending in a new line, same bytes for
/// the same outcome.
///
/// A value that is not finite is written as `null`.
pub fn response_document(outcome: &ResponseOutcome, card: &ModelCard) -> String {
    pretty(&ResponseDocument::new(outcome, card))
}

/// The JSON Schema (2020-12) of the document of answers in the frequency domain.
pub fn response_schema() -> String {
    schema_of::<ResponseDocument>(RESPONSE_SCHEMA)
}

/// Answers of an axle to a harmonic road, and to a random one by its spectrum.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ResponseDocument {
    /// `axlebow/response/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Which wheels the road moves: `both`, `left`, `right`, or `opposed`, the left up as far as the right down.
    pub wheels: &'static str,
    /// Load of each wheel end at rest.
    pub load_at_rest_n: ByWheel<f64>,
    /// Frequencies of the transfer functions, Hz, rising.
    pub frequencies_hz: Vec<f64>,
    /// Camber change, positive with the tire's top outward, rad per m of road height as the tires feel it.
    pub camber_rad_per_m: ByWheel<TransferEntry>,
    /// Wheel load, N per m of road height.
    pub load_n_per_m: ByWheel<TransferEntry>,
    /// Stress of the fiber that is stressed most at rest, at each place.
    pub stress: Vec<StressEntry>,
    /// Answer to a random road; null without one.
    pub random: Option<RandomEntry>,
    /// Doubts, each with what to do.
    pub warnings: Vec<WarningEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
}

/// A value for each wheel.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ByWheel<T> {
    /// Left of the vehicle.
    pub left: T,
    /// Right of the vehicle.
    pub right: T,
}

/// A transfer function for a road of height `e^{iωt}`.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TransferEntry {
    /// Real part at each frequency.
    pub real: Vec<f64>,
    /// Imaginary part at each frequency.
    pub imaginary: Vec<f64>,
    /// Peaks of its size, by rising frequency.
    pub resonances: Vec<ResonanceEntry>,
}

/// A peak of a transfer function.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ResonanceEntry {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Size, in the unit of the transfer function.
    pub gain: f64,
    /// Nearest mode that this road reaches; null when none is near.
    pub mode: Option<String>,
    /// Its undamped natural frequency, Hz.
    pub mode_frequency_hz: Option<f64>,
}

/// Stress at a place.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StressEntry {
    /// Name of the place.
    pub name: String,
    /// Position, left positive, m.
    pub y_m: f64,
    /// Stress at rest, tension positive, Pa.
    pub at_rest_pa: f64,
    /// Stress, Pa per m of road height.
    pub pa_per_m: TransferEntry,
}

/// Answer to a random road, about the values at rest.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RandomEntry {
    /// Name of the road.
    pub road: String,
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Frequencies of the densities, Hz, rising over the waves that the road holds.
    pub frequencies_hz: Vec<f64>,
    /// Camber change, rad; density in rad²/Hz.
    pub camber: ByWheel<RandomAnswerEntry>,
    /// Wheel load, N; density in N²/Hz.
    pub load: ByWheel<RandomAnswerEntry>,
    /// Root mean square of each wheel's load over its load at rest.
    pub dynamic_load_coefficient: ByWheel<f64>,
    /// Stress at the places of `stress`, in their order, Pa; density in Pa²/Hz.
    pub stress: Vec<RandomAnswerEntry>,
    /// Cups that the frequency which dominates camber prints in one turn; null below one.
    pub cups_per_turn: ByWheel<Option<f64>>,
    /// Distance from cup to cup along the tread, m.
    pub cup_spacing_m: ByWheel<Option<f64>>,
}

/// A random history, known by its spectrum.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RandomAnswerEntry {
    /// Root mean square.
    pub rms: f64,
    /// Expected crossings of the mean, upward, a second.
    pub crossing_rate_hz: f64,
    /// Frequency of the highest density, Hz; null when nothing moves.
    pub dominant_frequency_hz: Option<f64>,
    /// One-sided spectral density at each frequency.
    pub density: Vec<f64>,
}

impl ResponseDocument {
    /// The document of an outcome.
    pub fn new(outcome: &ResponseOutcome, card: &ModelCard) -> Self {
        let warnings = outcome.warnings.iter();
        Self {
            schema: RESPONSE_SCHEMA,
            model: model(card),
            wheels: match outcome.input {
                Input::Both => "both",
                Input::Left => "left",
                Input::Right => "right",
                Input::Opposed => "opposed",
            },
            load_at_rest_n: by_wheel(&outcome.load_at_rest, |load| *load),
            frequencies_hz: outcome.frequencies.clone(),
            camber_rad_per_m: by_wheel(&outcome.camber, TransferEntry::from),
            load_n_per_m: by_wheel(&outcome.load, TransferEntry::from),
            stress: outcome.stress.iter().map(StressEntry::from).collect(),
            random: outcome.random.as_ref().map(|random| RandomEntry::new(random, &outcome.load_at_rest)),
            warnings: warnings
                .map(|warning| WarningEntry { text: warning.text.clone(), advice: warning.advice.clone() })
                .collect(),
            assumed: assumed(card),
        }
    }
}

fn by_wheel<'a, T, E>(sides: &'a Sides<T>, entry: impl Fn(&'a T) -> E) -> ByWheel<E> {
    ByWheel { left: entry(&sides.left), right: entry(&sides.right) }
}

impl From<&TransferFunction> for TransferEntry {
    fn from(transfer: &TransferFunction) -> Self {
        let (real, imaginary) = transfer.values.iter().map(|[real, imaginary]| (*real, *imaginary)).unzip();
        let resonances = transfer.resonances.iter().map(ResonanceEntry::from).collect();
        Self { real, imaginary, resonances }
    }
}

impl From<&Resonance> for ResonanceEntry {
    fn from(resonance: &Resonance) -> Self {
        let (mode, mode_frequency_hz) = resonance.mode.clone().unzip();
        Self { frequency_hz: resonance.frequency, gain: resonance.gain, mode, mode_frequency_hz }
    }
}

impl From<&StationResponse> for StressEntry {
    fn from(station: &StationResponse) -> Self {
        let (name, pa_per_m) = (station.name.clone(), TransferEntry::from(&station.transfer));
        Self { name, y_m: station.y, at_rest_pa: station.at_rest, pa_per_m }
    }
}

impl RandomEntry {
    fn new(random: &RandomOutcome, at_rest: &Sides<f64>) -> Self {
        let coefficient = Sides::each(|side| random.dynamic_load_coefficient(side, *at_rest.of(side)));
        let cups: Sides<Option<PrintedCups>> = Sides::each(|side: Side| random.cups(side));
        Self {
            road: random.name.clone(),
            speed_m_s: random.speed,
            frequencies_hz: random.frequencies.clone(),
            camber: by_wheel(&random.camber, RandomAnswerEntry::from),
            load: by_wheel(&random.load, RandomAnswerEntry::from),
            dynamic_load_coefficient: by_wheel(&coefficient, |value| *value),
            stress: random.stress.iter().map(RandomAnswerEntry::from).collect(),
            cups_per_turn: by_wheel(&cups, |cups| cups.map(|cups| cups.per_turn)),
            cup_spacing_m: by_wheel(&cups, |cups| cups.map(|cups| cups.spacing)),
        }
    }
}

impl From<&RandomAnswer> for RandomAnswerEntry {
    fn from(answer: &RandomAnswer) -> Self {
        Self {
            rms: answer.rms,
            crossing_rate_hz: answer.crossing_rate,
            dominant_frequency_hz: answer.dominant_frequency,
            density: answer.density.clone(),
        }
    }
}
