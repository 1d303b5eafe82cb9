//! The keys of a duty file.

use axlebow_units::Kind;

use super::road_keys::CLASSES;
use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, key, quantity};

use Bounds::{Any, Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// A whole duty file.
pub static DUTY: TableSpec = TableSpec {
    name: "duty file",
    meaning: "What an axle goes through in a year.",
    keys: &[
        key("name", "What the duty is called in results.", Holds::Text, Required),
        key("invented", "Whether the numbers are invented for demonstration.", Holds::Flag, Default("false")),
        quantity(
            "distance_per_year",
            "Distance driven in a year.",
            (Kind::Length, Between(1e3, 1e10)),
            Required,
        ),
        quantity(
            "loadings_per_year",
            "Times a year that the axle is loaded from unladen to rated and unloaded again.",
            (Kind::Ratio, NonNegative),
            Default("0"),
        ),
        quantity(
            "sample",
            "Length of each random road that is driven and stands for the whole; longer ones scatter less.",
            (Kind::Length, Between(50.0, 1e6)),
            Default("\"1 km\""),
        ),
        key(
            "seed",
            "Random seed of the first road; the others follow it.",
            Holds::Count { min: 0, max: 1_000_000 },
            Default("1"),
        ),
        key("road", "A share of the distance on a random road.", Holds::Tables(&DUTY_ROAD), Required),
        key("bump", "A bump or a hole that is met so often.", Holds::Tables(&DUTY_BUMP), Optional),
        key("event", "A braking or a turn that comes so often.", Holds::Tables(&DUTY_EVENT), Optional),
    ],
};

const LOAD: KeySpec = key(
    "load",
    "What the axle carries meanwhile.",
    Holds::Choice(&[
        Word { word: "rated", meaning: "the model's rated load" },
        Word { word: "unladen", meaning: "the model's unladen load" },
    ]),
    Default("\"rated\""),
);

const PER_KM: KeySpec =
    quantity("per_km", "How often in a kilometer.", (Kind::Ratio, Between(0.0, 1000.0)), Required);

const SPEED: KeySpec = quantity("speed", "Speed.", (Kind::Speed, Positive), Required);

static DUTY_ROAD: TableSpec = TableSpec {
    name: "duty road",
    meaning: "A share of the distance on a random road.",
    keys: &[
        key(
            "class",
            "Roughness class of ISO 8608, at its geometric mean.",
            Holds::Choice(&CLASSES),
            Required,
        ),
        quantity(
            "share",
            "Share of the distance; all shares sum to 1.",
            (Kind::Ratio, Between(0.0, 1.0)),
            Required,
        ),
        SPEED,
        LOAD,
    ],
};

static DUTY_BUMP: TableSpec = TableSpec {
    name: "duty bump",
    meaning: "A haversine bump, or a hole of that shape, that is met so often.",
    keys: &[
        quantity("height", "Height; negative for a hole.", (Kind::Length, Any), Required),
        quantity("length", "Length.", (Kind::Length, Positive), Required),
        PER_KM,
        key(
            "wheels",
            "Which wheels go over it.",
            Holds::Choice(&[
                Word { word: "both", meaning: "both" },
                Word { word: "left", meaning: "the left only" },
                Word { word: "right", meaning: "the right only" },
            ]),
            Default("\"both\""),
        ),
        SPEED,
        LOAD,
    ],
};

static DUTY_EVENT: TableSpec = TableSpec {
    name: "duty event",
    meaning: "A braking or a turn that comes so often.",
    keys: &[
        key(
            "kind",
            "What the road does.",
            Holds::Choice(&[
                Word { word: "braking", meaning: "it pushes rearward" },
                Word { word: "turn-left", meaning: "it pushes to the left" },
                Word { word: "turn-right", meaning: "it pushes to the right" },
            ]),
            Required,
        ),
        quantity("force_ratio", "Force over axle load.", (Kind::Ratio, Between(0.0, 1.5)), Required),
        PER_KM,
        quantity("length", "Distance that one lasts.", (Kind::Length, Positive), Required),
        LOAD,
    ],
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::keys::ROAD;

    #[test]
    fn classes_are_those_of_a_road_file() {
        let Some(KeySpec { holds: Holds::Choice(own), .. }) = DUTY_ROAD.key("class") else {
            panic!("a choice")
        };
        let Some(KeySpec { holds: Holds::Choice(road), .. }) = ROAD.key("class") else { panic!("a choice") };
        assert_eq!(*own, *road);
    }
}
