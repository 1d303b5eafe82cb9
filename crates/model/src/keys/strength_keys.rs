//! The keys of what strength is checked against.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};

use Bounds::{Between, Positive};
use Presence::{Default, Optional};

/// Weakest and strongest weld metal of steel, Pa (common practice, no source).
const WEAKEST: f64 = 300e6;
const STRONGEST: f64 = 1200e6;

/// What strength is checked against.
pub(crate) static STRENGTH: TableSpec = TableSpec {
    name: "strength",
    meaning: "What strength is checked against.",
    keys: &[
        key(
            "rules",
            "Whose limits are used where codes differ.",
            Holds::Choice(&[
                Word { word: "aisc", meaning: "ANSI/AISC 360-22" },
                Word { word: "en", meaning: "EN 1993" },
            ]),
            Default("\"aisc\""),
        ),
        quantity(
            "safety_factor",
            "What every strength is divided by: yield, weld, clamp crush, local buckling (common practice, no source).",
            (Kind::Ratio, Between(1.0, 20.0)),
            Default("1.5"),
        ),
        quantity(
            "electrode_strength",
            "Tensile strength of the weld metal, FEXX; rules `en` go by the steel instead (common practice, no source).",
            (Kind::Stress, Between(WEAKEST, STRONGEST)),
            Default("\"70 ksi\""),
        ),
        quantity(
            "haz_strength_factor",
            "HAZ strength factor, strength beside a weld over that of the steel; if left out 1 up to a yield of 355 MPa, 0.9 to 460, 0.8 to 700, 0.6 above.",
            (Kind::Ratio, Between(0.1, 1.0)),
            Optional,
        ),
        quantity(
            "bearing_distance",
            "Distance that a wheel bearing must reach at the rated load; without it the life of bearings is not checked.",
            (Kind::Length, Positive),
            Optional,
        ),
        key(
            "bearing_reliability",
            "Share of bearings that must reach `bearing_distance` (ISO 281:2007, a1).",
            Holds::Choice(&[
                Word { word: "90 %", meaning: "L10, the rating life" },
                Word { word: "95 %", meaning: "0.64 of the rating life" },
                Word { word: "96 %", meaning: "0.55 of it" },
                Word { word: "97 %", meaning: "0.47 of it" },
                Word { word: "98 %", meaning: "0.37 of it" },
                Word { word: "99 %", meaning: "0.25 of it" },
            ]),
            Default("\"90 %\""),
        ),
        key(
            "mean_stress",
            "Where 60 % of compression counts for fatigue instead of all (EN 1993-1-9, 7.2.1; from memory).",
            Holds::Choice(&[
                Word {
                    word: "ignored",
                    meaning: "nowhere: a range counts in full wherever it lies, as welded",
                },
                Word { word: "unwelded", meaning: "in steel without weld" },
                Word {
                    word: "relieved",
                    meaning: "everywhere: the axle is stress-relieved after all welding",
                },
            ]),
            Default("\"ignored\""),
        ),
        key(
            "seat_stress",
            "By which stress the weld of a seat is held against fatigue.",
            Holds::Choice(&[
                Word {
                    word: "nominal",
                    meaning: "the axle's own at the bracket's edges, category by its length",
                },
                Word {
                    word: "hot-spot",
                    meaning: "hot spot at the bracket's toe, of seats with `wall_flexibility = \"shell\"`",
                },
            ]),
            Default("\"nominal\""),
        ),
    ],
};
