//! The keys of a road file.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};

use Bounds::{Any, Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Roughness classes of ISO 8608.
pub(super) const CLASSES: [Word; 8] = [
    Word { word: "A", meaning: "very good" },
    Word { word: "B", meaning: "good" },
    Word { word: "C", meaning: "average" },
    Word { word: "D", meaning: "poor" },
    Word { word: "E", meaning: "very poor" },
    Word { word: "F", meaning: "worse than most roads" },
    Word { word: "G", meaning: "off the road" },
    Word { word: "H", meaning: "off the road, rougher still" },
];

/// A whole road file.
pub static ROAD: TableSpec = TableSpec {
    name: "road file",
    meaning: "The road input, and how it is driven.",
    keys: &[
        key(
            "name",
            "What the road is called in results; if left out, its kind and sizes.",
            Holds::Text,
            Optional,
        ),
        key("invented", "Whether the numbers are invented for demonstration.", Holds::Flag, Default("false")),
        key(
            "kind",
            "What the road is.",
            Holds::Choice(&[
                Word { word: "half-sine-bump", meaning: "half a sine wave of `height` over `length`" },
                Word { word: "haversine-bump", meaning: "a whole cosine wave of `height` over `length`" },
                Word { word: "ramp", meaning: "a rise by `height` over `length`" },
                Word { word: "step", meaning: "a rise by `height` at once" },
                Word {
                    word: "pothole",
                    meaning: "a hole of `depth` over `length` with edges of `edge_slope`",
                },
                Word { word: "washboard", meaning: "`count` waves of `amplitude` and `wavelength`" },
                Word { word: "random-road", meaning: "a road of an ISO 8608 `class` over `length`" },
                Word { word: "measured-profile", meaning: "the heights of a `profile` file" },
            ]),
            Required,
        ),
        quantity(
            "height",
            "Height of a bump, ramp or step; negative for a drop.",
            (Kind::Length, Any),
            Optional,
        ),
        quantity("depth", "Depth of a pothole.", (Kind::Length, Positive), Optional),
        quantity(
            "length",
            "Length of a bump, ramp, pothole or random road.",
            (Kind::Length, Positive),
            Optional,
        ),
        quantity("edge_slope", "Rise over run of a pothole's edges.", (Kind::Ratio, Positive), Default("1")),
        quantity("wavelength", "Distance from crest to crest.", (Kind::Length, Positive), Optional),
        quantity("amplitude", "Half the height from trough to crest.", (Kind::Length, Positive), Optional),
        key("count", "Number of waves.", Holds::Count { min: 1, max: 10_000 }, Optional),
        key(
            "class",
            "Roughness class of ISO 8608, at its geometric mean.",
            Holds::Choice(&CLASSES),
            Optional,
        ),
        key(
            "seed",
            "Random seed; the same number gives the same road.",
            Holds::Count { min: 0, max: 1_000_000 },
            Default("1"),
        ),
        quantity(
            "spacing",
            "Distance between samples of a random road.",
            (Kind::Length, Positive),
            Default("\"50 mm\""),
        ),
        quantity(
            "track_width",
            "Distance between the two tracks of a random road, from which their coherence follows.",
            (Kind::Length, NonNegative),
            Default("\"1.9 m\""),
        ),
        key(
            "profile",
            "CSV file of a measured profile, from the folder of the road file: a column `distance [m]` and either \
             `height [mm]` or both `left [mm]` and `right [mm]`, in any unit of length; rows joined by straight \
             lines, heights counted from the first row, the ground level beyond both ends; lines that begin with # \
             are skipped.",
            Holds::Text,
            Optional,
        ),
        quantity(
            "widest_gap",
            "Greatest distance from row to row of a measured profile that is no hole (default: the usual limit \
             of surveys, from memory).",
            (Kind::Length, Between(1e-3, 1e5)),
            Default("\"300 mm\""),
        ),
        key(
            "wheels",
            "Which wheels go over it; not for a random road or a profile of both tracks.",
            Holds::Choice(&[
                Word { word: "both", meaning: "both, the right `lag` behind the left" },
                Word { word: "left", meaning: "the left only" },
                Word { word: "right", meaning: "the right only" },
            ]),
            Default("\"both\""),
        ),
        quantity(
            "lag",
            "Distance by which the right wheels meet it later.",
            (Kind::Length, Any),
            Default("\"0 mm\""),
        ),
        quantity("speed", "Speed.", (Kind::Speed, Positive), Default("\"80 km/h\"")),
        quantity(
            "contact_length",
            "Length of a tire's contact with the road (default from memory).",
            (Kind::Length, Positive),
            Default("\"200 mm\""),
        ),
        quantity("run_up", "Distance driven before it.", (Kind::Length, NonNegative), Default("\"1 m\"")),
        quantity("run_out", "Time driven after it.", (Kind::Time, NonNegative), Default("\"2 s\"")),
        quantity("time_step", "Length of a time step.", (Kind::Time, Positive), Default("\"1 ms\"")),
        key(
            "scheme",
            "Time integration scheme.",
            Holds::Choice(&[
                Word {
                    word: "generalized-alpha",
                    meaning: "numerical dissipation of motions far faster than the step",
                },
                Word { word: "average-acceleration", meaning: "Newmark's, which damps nothing by itself" },
            ]),
            Default("\"generalized-alpha\""),
        ),
        quantity(
            "spectral_radius",
            "What a step of generalized-alpha leaves of motions far faster than it, 0 (nothing) to 1 (all).",
            (Kind::Ratio, Between(0.0, 1.0)),
            Default("0.8"),
        ),
    ],
};
