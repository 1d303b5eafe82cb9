//! Results of remedies.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{Binding, Change, Money, RemediesOutcome, Shoulder, ShoulderWear, State, StateOverRoad};

impl Record for State {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "axle-mass",
            Kind::Mass,
            "Mass of the bare axle: tube or housing, spindles and stiffeners.",
            &Own(|own: &Self| own.axle_mass),
        ),
        number(
            "camber-change",
            Kind::Angle,
            "Camber change of each wheel in the load case, positive with the tire's top outward.",
            &Part(|own: &Self| &own.camber_change),
        ),
        number(
            "camber",
            Kind::Angle,
            "Manufactured camber plus the change.",
            &Part(|own: &Self| &own.camber),
        ),
        part("shoulder", "The shoulder that wears most.", &Part(|own: &Self| &own.shoulder)),
        part(
            "binding-check",
            "The check of strength that uses most of its limit, in all load cases; null where none binds.",
            &Part(|own: &Self| &own.binding),
        ),
        number(
            "track",
            Kind::Length,
            "Between the middles of both wheels' tires.",
            &Own(|own: &Self| own.track),
        ),
        number(
            "seat-clearance",
            Kind::Length,
            "From the innermost tire's inner sidewall to the seat; negative where they meet.",
            &Own(|own: &Self| own.seat_clearance),
        ),
        in_unit(
            "cup-growth",
            "1/m",
            "Growth of the wave of wear that grows fastest over the speeds held, for each meter of mean tread worn; null where waves \
             cannot be solved.",
            &Own(|own: &Self| own.cups.map(|cups| cups.rate)),
        ),
        number(
            "distance-for-e-fold",
            Kind::Length,
            "Distance in which it grows e-fold; null where it does not grow, or where removals have not calibrated wear.",
            &Own(|own: &Self| own.cups.and_then(|cups| cups.distance_for_e_fold)),
        ),
        part("over-road", "What the road does; null standing.", &Part(|own: &Self| &own.over_road)),
    ];
}

impl Record for ShoulderWear {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "wear",
            "Wear over that of the same rib of today's tires upright and straight; over the road where one is driven.",
            &Own(|own: &Self| own.wear),
        ),
        part("side", "`left` or `right`.", &Text(|own: &Self| own.side.word())),
        part("tire", "`single`, `outer` or `inner`.", &Text(|own: &Self| own.tire.word())),
        part(
            "shoulder",
            "`inner` or `outer`.",
            &Text(|own: &Self| match own.shoulder {
                Shoulder::Inner => "inner",
                Shoulder::Outer => "outer",
            }),
        ),
    ];
}

impl Record for Binding {
    const FIELDS: &'static [Field<Self>] = &[
        part("utilization", "Share of its limit that it uses.", &Own(|own: &Self| own.utilization)),
        part("what", "What is checked.", &Text(|own: &Self| &own.what)),
        part("place", "Where.", &Text(|own: &Self| &own.place)),
        part("case", "Load case; null for a wall by itself.", &Part(|own: &Self| &own.case)),
        part("holds", "False when a binding check fails.", &Own(|own: &Self| own.holds)),
    ];
}

impl Record for StateOverRoad {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "camber-peak-to-peak",
            Kind::Angle,
            "Peak-to-peak camber change of the wheel where it is larger.",
            &Own(|own: &Self| own.camber_peak_to_peak),
        ),
        part(
            "dynamic-load-factor",
            "Largest wheel load over that at rest.",
            &Own(|own: &Self| own.dynamic_load_factor),
        ),
    ];
}

impl Record for Change {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "path",
            "Key of the model; null for a stiffener that is put on.",
            &Own(|own: &Self| match own {
                Change::Key { path, .. } => Some(path.clone()),
                Change::Stiffener(_) => None,
            }),
        ),
        part(
            "text",
            "What is to stand there, or the stiffener's table of a model file.",
            &Text(|own: &Self| match own {
                Change::Key { text, .. } | Change::Stiffener(text) => text,
            }),
        ),
    ];
}

impl Record for RemediesOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "Name of the load case.", &Text(|own: &Self| &own.case)),
        part("duty", "The duty in which the tires run.", &Text(|own: &Self| own.duty.word())),
        part("road", "Name of the road; null standing.", &Part(|own: &Self| &own.road)),
        part(
            "ranked-by",
            "By what those that help are ranked, after how the checks stand: `wear`, `cups`, `camber`, `mass` or `money`.",
            &Text(|own: &Self| own.rank.word()),
        ),
        part("base", "The axle as it is.", &Part(|own: &Self| &own.base)),
        part("money", "In what worth is told; null without prices.", &Part(|own: &Self| &own.money)),
    ];
}

impl Record for Money {
    const FIELDS: &'static [Field<Self>] = &[
        part("currency", "The currency, a label.", &Text(|own: &Self| &own.currency)),
        part("years", "Years that the vehicles are held.", &Own(|own: &Self| own.years)),
        part(
            "prices",
            "Name of the payback study whose fleet, tires and mass were taken.",
            &Text(|own: &Self| &own.prices),
        ),
    ];
}
