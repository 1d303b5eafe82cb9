//! Results in the frequency domain.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{
    Input, RandomAnswer, RandomOutcome, Resonance, ResponseOutcome, Sides, StationResponse, TransferFunction,
};

impl Record for ResponseOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "wheels",
            "Which wheels the road moves: `both`, `left`, `right`, or `opposed`, antisymmetric.",
            &Text(|run: &Self| wheels(run.input)),
        ),
        number(
            "load-at-rest",
            Kind::Force,
            "Load of each wheel end at rest.",
            &Part(|run: &Self| &run.load_at_rest),
        ),
        number(
            "frequencies",
            Kind::Frequency,
            "Frequencies of the transfer functions, rising.",
            &Part(|run: &Self| &run.frequencies),
        ),
        in_unit(
            "camber",
            "rad/m",
            "Camber change, positive with the tire's top outward, over road height as the tires feel it.",
            &Part(|run: &Self| &run.camber),
        ),
        in_unit("load", "N/m", "Wheel load over road height.", &Part(|run: &Self| &run.load)),
        part(
            "stress",
            "Stress of the fiber that is stressed most at rest, at each place.",
            &Part(|run: &Self| &run.stress),
        ),
        part(
            "random",
            "Response to a random road, about the values at rest; null without one.",
            &Own(|run: &Self| {
                let response = |random: &RandomOutcome| RandomResponse {
                    random: random.clone(),
                    load_at_rest: run.load_at_rest,
                };
                run.random.as_ref().map(response)
            }),
        ),
    ];
}

fn wheels(input: Input) -> &'static str {
    match input {
        Input::Both => "both",
        Input::Left => "left",
        Input::Right => "right",
        Input::Opposed => "opposed",
    }
}

/// For a road of height `e^{iωt}`.
impl Record for TransferFunction {
    const FIELDS: &'static [Field<Self>] = &[
        part("real", "Real part at each frequency.", &Own(|own: &Self| component(own, 0))),
        part("imaginary", "Imaginary part at each frequency.", &Own(|own: &Self| component(own, 1))),
        part(
            "resonances",
            "Peaks of its magnitude, by rising frequency.",
            &Part(|own: &Self| &own.resonances),
        ),
    ];
}

fn component(transfer: &TransferFunction, which: usize) -> Vec<f64> {
    transfer.values.iter().map(|value| value[which]).collect()
}

impl Record for Resonance {
    const FIELDS: &'static [Field<Self>] = &[
        number("frequency", Kind::Frequency, "Frequency.", &Own(|peak: &Self| peak.frequency)),
        part("gain", "Magnitude, in the unit of the transfer function.", &Own(|peak: &Self| peak.gain)),
        part(
            "mode",
            "Nearest mode that this road reaches; null when none is near.",
            &Own(|peak: &Self| peak.mode.as_ref().map(|(name, _)| name.clone())),
        ),
        number(
            "mode-frequency",
            Kind::Frequency,
            "Its undamped natural frequency.",
            &Own(|peak: &Self| peak.mode.as_ref().map(|(_, frequency)| *frequency)),
        ),
    ];
}

impl Record for StationResponse {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the place.", &Text(|at: &Self| &at.name)),
        number("y", Kind::Length, "Position, left positive.", &Own(|at: &Self| at.y)),
        number(
            "stress-at-rest",
            Kind::Stress,
            "Stress at rest, tension positive.",
            &Own(|at: &Self| at.at_rest),
        ),
        in_unit("stress", "Pa/m", "Stress over road height.", &Part(|at: &Self| &at.transfer)),
    ];
}

/// A response to a random road beside the loads at rest that its coefficients need.
struct RandomResponse {
    random: RandomOutcome,
    load_at_rest: Sides<f64>,
}

impl Record for RandomResponse {
    const FIELDS: &'static [Field<Self>] = &[
        part("road", "Name of the road.", &Text(|own: &Self| &own.random.name)),
        number("speed", Kind::Speed, "Speed.", &Own(|own: &Self| own.random.speed)),
        number(
            "frequencies",
            Kind::Frequency,
            "Frequencies of the densities, rising over the waves that the road holds.",
            &Part(|own: &Self| &own.random.frequencies),
        ),
        part("camber", "Camber change, rad; density in rad²/Hz.", &Part(|own: &Self| &own.random.camber)),
        part("load", "Wheel load, N; density in N²/Hz.", &Part(|own: &Self| &own.random.load)),
        part(
            "dynamic-load-coefficient",
            "Root mean square of each wheel's load over its load at rest.",
            &Own(|own: &Self| {
                Sides::each(|side| own.random.dynamic_load_coefficient(side, *own.load_at_rest.of(side)))
            }),
        ),
        part(
            "stress",
            "Stress at the places of `stress`, in their order, Pa; density in Pa²/Hz.",
            &Part(|own: &Self| &own.random.stress),
        ),
        part(
            "cups-per-turn",
            "Cups that the dominant frequency of camber prints in one turn; null below one.",
            &Own(|own: &Self| Sides::each(|side| own.random.cups(side).map(|cups| cups.per_turn))),
        ),
        number(
            "cup-spacing",
            Kind::Length,
            "Distance from cup to cup along the tread.",
            &Own(|own: &Self| Sides::each(|side| own.random.cups(side).map(|cups| cups.spacing))),
        ),
    ];
}

impl Record for RandomAnswer {
    const FIELDS: &'static [Field<Self>] = &[
        part("rms", "Root mean square.", &Own(|own: &Self| own.rms)),
        number(
            "crossing-rate",
            Kind::Frequency,
            "Expected crossings of the mean, upward, a second.",
            &Own(|own: &Self| own.crossing_rate),
        ),
        number(
            "dominant-frequency",
            Kind::Frequency,
            "Frequency of the highest density; null when nothing moves.",
            &Part(|own: &Self| &own.dominant_frequency),
        ),
        part("density", "One-sided spectral density at each frequency.", &Part(|own: &Self| &own.density)),
    ];
}
