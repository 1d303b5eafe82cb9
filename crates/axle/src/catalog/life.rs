//! Results of lives.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{BearingLife, DamageShares, DetailLife, LifeOutcome};

impl Record for LifeOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("duty", "Name of the duty.", &Text(|own: &Self| &own.duty)),
        number("distance-per-year", Kind::Length, "Distance of a year.", &Own(|own: &Self| own.distance)),
        part(
            "scatter",
            "Standard deviation of log10 of the lives of one detail.",
            &Own(|own: &Self| own.scatter),
        ),
        part(
            "mean-stress",
            "Where 60 % of compression counted instead of all: `ignored` (nowhere), `unwelded` (steel without weld), `relieved` (everywhere).",
            &Text(|own: &Self| own.mean_stress.word()),
        ),
        part(
            "reliability",
            "Share of bearings that reach their life.",
            &Text(|own: &Self| own.reliability.word()),
        ),
        part(
            "details",
            "Details that can crack, the first to crack first.",
            &Part(|own: &Self| &own.details),
        ),
        part("bearings", "Wheel bearings, the shortest life first.", &Part(|own: &Self| &own.bearings)),
        part(
            "not-made",
            "What has no rating, no category or no size; none of it is a pass.",
            &Part(|own: &Self| &own.not_made),
        ),
    ];
}

impl Record for DetailLife {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "What it is and where.", &Text(|own: &Self| &own.name)),
        number("y", Kind::Length, "Position, positive to the left.", &Own(|own: &Self| own.y)),
        part("detail", "Name of its category.", &Text(|own: &Self| own.detail.name)),
        part("detail-words", "What the category is for.", &Text(|own: &Self| own.detail.words)),
        number(
            "category",
            Kind::Stress,
            "Stress range that 95 % of such details survive for two million cycles.",
            &Own(|own: &Self| own.detail.category),
        ),
        part("table", "Table of the category.", &Text(|own: &Self| own.detail.table)),
        part("source", "Whose rules it follows.", &Text(|own: &Self| own.detail.rules.source())),
        part("geometry", "What of its geometry chose the category.", &Text(|own: &Self| &own.geometry)),
        number(
            "greatest-range",
            Kind::Stress,
            "Greatest stress range in a year.",
            &Own(|own: &Self| own.greatest_range),
        ),
        part(
            "years-5-percent",
            "Years until 5 % of such details have cracked; null where no range does damage.",
            &Own(|own: &Self| own.years[0]),
        ),
        part(
            "years-median",
            "Years until half of such details have cracked; null where no range does damage.",
            &Own(|own: &Self| own.years[1]),
        ),
        part(
            "years-95-percent",
            "Years until 95 % of such details have cracked; null where no range does damage.",
            &Own(|own: &Self| own.years[2]),
        ),
        part("shares", "Where the damage comes from.", &Part(|own: &Self| &own.shares)),
        part(
            "spectral-ratio",
            "Damage of the random roads by their spectra (Dirlik) over that by counted cycles; null where those do none, or compression counts less.",
            &Own(|own: &Self| own.spectral_ratio),
        ),
    ];
}

impl Record for DamageShares {
    const FIELDS: &'static [Field<Self>] = &[
        part("roads", "Random roads.", &Own(|own: &Self| own.roads)),
        part("bumps", "Bumps and holes.", &Own(|own: &Self| own.bumps)),
        part("events", "Braking and turns.", &Own(|own: &Self| own.events)),
        part("loadings", "Loading and unloading.", &Own(|own: &Self| own.loadings)),
    ];
}

impl Record for BearingLife {
    const FIELDS: &'static [Field<Self>] = &[
        part("place", "Station.", &Text(|own: &Self| &own.place)),
        number("y", Kind::Length, "Position, positive to the left.", &Own(|own: &Self| own.y)),
        number(
            "mean-load",
            Kind::Force,
            "Steady equivalent load of the same life (ISO 281).",
            &Own(|own: &Self| own.mean_load),
        ),
        number("distance", Kind::Length, "Distance in its life.", &Own(|own: &Self| own.distance)),
        part("years", "Years in its life.", &Own(|own: &Self| own.years)),
    ];
}
