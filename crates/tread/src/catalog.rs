//! The catalog of results of tire faces and cups: names, units and meanings ([`axlebow_results`]).

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{Cups, Explanation, RibWear, SuspectKind, TireWear};

impl Record for TireWear {
    const FIELDS: &'static [Field<Self>] = &[
        number("load", Kind::Force, "Load.", &Own(|tire: &Self| tire.load)),
        part("share", "Share of the load of the wheel end.", &Own(|tire: &Self| tire.share)),
        part(
            "shoulder-load-ratio",
            "Load of the inner over the outer shoulder rib; null with the outer one off the road.",
            &Own(|tire: &Self| tire.shoulder_load_ratio()),
        ),
        part(
            "shoulder-wear-ratio",
            "Wear of the inner over the outer shoulder rib; null where the outer one does not wear.",
            &Own(|tire: &Self| tire.shoulder_wear_ratio()),
        ),
        part("ribs", "Ribs, the inner shoulder first.", &Part(|tire: &Self| &tire.ribs)),
    ];
}

impl Record for RibWear {
    const FIELDS: &'static [Field<Self>] = &[
        number("outboard", Kind::Length, "Outboard of the tire's center.", &Own(|rib: &Self| rib.outboard)),
        number("load", Kind::Force, "Load.", &Own(|rib: &Self| rib.load)),
        part(
            "slip-forward",
            "Sliding speed forward over traveling speed, positive where it drives.",
            &Own(|rib: &Self| rib.scuff.slip_forward),
        ),
        part(
            "slip-side",
            "Sliding speed sideways over traveling speed, by toe.",
            &Own(|rib: &Self| rib.scuff.slip_side),
        ),
        in_unit(
            "scuff",
            "J/m",
            "Energy of scuff for each meter traveled.",
            &Own(|rib: &Self| rib.scuff.energy),
        ),
        part(
            "feathering",
            "Share of the scuff by which the road drags the rubber inboard more than outboard, -1 to 1; positive leaves \
             sharp edges that point inboard, as toe-in does.",
            &Own(|rib: &Self| rib.scuff.feathering()),
        ),
        part(
            "wear-index",
            "Wear over the mean wear of the same tires upright, straight, matched and at their rated inflation; null where those \
             do not wear.",
            &Own(|rib: &Self| rib.index),
        ),
        part(
            "wear-against-upright",
            "Wear over that of the same rib of those tires.",
            &Own(|rib: &Self| rib.against_upright),
        ),
        number(
            "worn-in-10000-km",
            Kind::Length,
            "Depth of tread worn off in 10 000 km; null where removals have not calibrated it.",
            &Own(|rib: &Self| rib.worn_per_distance.map(|rate| 1e7 * rate)),
        ),
    ];
}

impl Record for Cups {
    const FIELDS: &'static [Field<Self>] = &[
        part("count", "Cups round the tire.", &Own(|cups: &Self| usize::from(cups.count))),
        number("speed", Kind::Speed, "Speed.", &Own(|cups: &Self| cups.speed)),
        number("tire-radius", Kind::Length, "Rolling radius.", &Own(|cups: &Self| cups.radius)),
        number("spacing", Kind::Length, "From cup to cup along the tread.", &Own(|cups: &Self| cups.spacing)),
        number(
            "frequency",
            Kind::Frequency,
            "Frequency that prints them.",
            &Own(|cups: &Self| cups.frequency),
        ),
        number(
            "frequency-if-one-fewer",
            Kind::Frequency,
            "The same had one cup fewer been counted; null below one.",
            &Own(|cups: &Self| cups.misread[0]),
        ),
        number(
            "frequency-if-one-more",
            Kind::Frequency,
            "The same had one cup more been counted.",
            &Own(|cups: &Self| cups.misread[1]),
        ),
        number(
            "wheel-frequency",
            Kind::Frequency,
            "Turns of the wheel for each second.",
            &Own(|cups: &Self| cups.wheel_frequency),
        ),
        part(
            "explanations",
            "Possible sources, the likeliest first.",
            &Part(|cups: &Self| &cups.explanations),
        ),
    ];
}

impl Record for Explanation {
    const FIELDS: &'static [Field<Self>] = &[
        part("kind", "`mode`, `road` or `wheel-turn`.", &Text(|own: &Self| kind(own.suspect.kind))),
        part("name", "Its name.", &Text(|own: &Self| &own.suspect.name)),
        number(
            "frequency",
            Kind::Frequency,
            "Its frequency at this speed.",
            &Own(|own: &Self| own.suspect.frequency),
        ),
        part("off-by", "Its frequency over that of the cups, less one.", &Own(|own: &Self| own.off_by)),
        part("cups-per-turn", "Cups that it would print in a turn.", &Own(|own: &Self| own.cups)),
        part("score", "Nearness by weight, 0 to 1.", &Own(|own: &Self| own.score)),
        in_unit(
            "growth",
            "1/m",
            "Growth of the wave of the whole count that it would print, for each meter of mean tread worn; null without a model.",
            &Own(|own: &Self| own.growth),
        ),
        part("why", "Why it has its weight.", &Text(|own: &Self| &own.suspect.why)),
    ];
}

fn kind(kind: SuspectKind) -> &'static str {
    match kind {
        SuspectKind::Mode => "mode",
        SuspectKind::Road => "road",
        SuspectKind::WheelTurn => "wheel-turn",
    }
}
