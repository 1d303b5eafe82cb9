//! Results of ratings.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{Limiter, PartLoad, RatingOutcome, RatingPoint};

impl Record for RatingOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "stated-load",
            Kind::Force,
            "Load that the model says the axle is rated for.",
            &Own(|own: &Self| own.stated_load),
        ),
        number(
            "own-offset",
            Kind::Length,
            "Tire center of the model outboard of the mounting face; negative for inset.",
            &Own(|own: &Self| own.own_offset),
        ),
        part(
            "safety-factor",
            "What every strength is divided by: yield, weld, clamp crush, local buckling.",
            &Own(|own: &Self| own.ask.safety_factor),
        ),
        number(
            "bearing-distance",
            Kind::Length,
            "Distance that a wheel bearing must reach; null where none is stated.",
            &Own(|own: &Self| own.ask.bearing_distance),
        ),
        part(
            "bearing-reliability",
            "Share of bearings that must reach it.",
            &Text(|own: &Self| own.ask.bearing_reliability.word()),
        ),
        part(
            "duty",
            "Name of the duty under which no detail may crack; null where none was given.",
            &Own(|own: &Self| own.lasting.as_ref().map(|(duty, _)| duty.clone())),
        ),
        part(
            "years-to-last",
            "Years until 5 % of the details that crack first may have a crack; null where no duty was given.",
            &Own(|own: &Self| own.lasting.as_ref().map(|(_, years)| *years)),
        ),
        part("points", "The rating at each offset, the innermost first.", &Part(|own: &Self| &own.points)),
        part(
            "not-made",
            "Checks that could not be made; no load is limited by them.",
            &Part(|own: &Self| &own.not_made),
        ),
    ];
}

impl Record for RatingPoint {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "offset",
            Kind::Length,
            "Tire center outboard of the mounting face; negative for inset.",
            &Own(|own: &Self| own.offset),
        ),
        number(
            "load",
            Kind::Force,
            "Axle load at which the first check binds; null where there is none.",
            &Own(|own: &Self| own.load),
        ),
        part(
            "limiter",
            "The check that binds first, or is past its limit at any load; null where none binds.",
            &Part(|own: &Self| &own.limiter),
        ),
        part("parts", "The same for each part by itself.", &Part(|own: &Self| &own.parts)),
        part("reason", "Why there is no rating; null where there is.", &Own(|own: &Self| own.reason.clone())),
    ];
}

impl Record for PartLoad {
    const FIELDS: &'static [Field<Self>] = &[
        part("part", "The part.", &Text(|own: &Self| own.part.word())),
        number(
            "load",
            Kind::Force,
            "Axle load at which its first check binds; null where there is none.",
            &Own(|own: &Self| own.load),
        ),
        part(
            "limiter",
            "The check that binds, or is past its limit at any load; null where none binds.",
            &Part(|own: &Self| &own.limiter),
        ),
    ];
}

impl Record for Limiter {
    const FIELDS: &'static [Field<Self>] = &[
        part("part", "What the check is made of.", &Text(|own: &Self| own.part.word())),
        part("what", "What is checked.", &Text(|own: &Self| &own.what)),
        part("place", "Station or part.", &Text(|own: &Self| &own.place)),
        part("case", "Load case; null for a wall or a bearing.", &Own(|own: &Self| own.case.clone())),
        part("advice", "What to do about it.", &Text(|own: &Self| own.advice)),
    ];
}
