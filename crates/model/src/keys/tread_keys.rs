//! The keys of a tread and of a tire file.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, key, quantity};

use Bounds::{Between, Positive};
use Presence::{Default, Optional, Required};

/// Most ribs of a tread (common practice, no source).
const MOST_RIBS: u32 = 12;

/// Largest share of the sidewalls (a judgment, no source).
const MOST_SIDEWALL: f64 = 0.5;

/// Deepest crown, m (common practice, no source).
const DEEPEST_CROWN: f64 = 0.05;

/// The key of a wheel's tread.
pub(crate) const TREAD_KEY: KeySpec =
    key("tread", "The tread of each tire, for `tire` and `causes`.", Holds::Table(&TREAD), Default("{}"));

pub(crate) static TREAD: TableSpec = TableSpec {
    name: "tread",
    meaning: "A tread by its properties; defaults are from memory.",
    keys: &[
        quantity(
            "width",
            "Width from shoulder to shoulder; 0.8 of `tire_width` if left out (from memory).",
            (Kind::Length, Positive),
            Optional,
        ),
        key("ribs", "Ribs across the tread.", Holds::Count { min: 2, max: MOST_RIBS }, Default("5")),
        quantity(
            "crown",
            "How far the edges of the shoulders lie below the middle of the tread.",
            (Kind::Length, Between(0.0, DEEPEST_CROWN)),
            Default("\"2 mm\""),
        ),
        quantity("depth", "Depth of the tread.", (Kind::Length, Positive), Default("\"16 mm\"")),
        quantity(
            "shear_modulus",
            "Shear modulus of the tread as it stands on the road, voids and sipes counted.",
            (Kind::Stress, Positive),
            Default("\"1.2 MPa\""),
        ),
        quantity(
            "abradability",
            "Volume that a joule of scuff takes off, over that of an ordinary rubber.",
            (Kind::Ratio, Positive),
            Default("1"),
        ),
        quantity(
            "inflation",
            "Rated inflation, at which vertical stiffness and rated load hold; with that load it says how long the contact is.",
            (Kind::Stress, Positive),
            Default("\"760 kPa\""),
        ),
        quantity("friction", "Friction of tread on road.", (Kind::Ratio, Positive), Default("0.8")),
        quantity(
            "sidewall_share",
            "Share of load and vertical stiffness that the sidewalls carry through the shoulders at the rated load and inflation.",
            (Kind::Ratio, Between(0.0, MOST_SIDEWALL)),
            Default("0.15"),
        ),
    ],
};

/// A whole tire file.
pub static TIRE: TableSpec = TableSpec {
    name: "tire file",
    meaning: "A tread to put on the wheels of a model.",
    keys: &[
        key("name", "What the tire is called in results.", Holds::Text, Required),
        key(
            "invented",
            "Whether the numbers are invented for demonstration; pictures say so.",
            Holds::Flag,
            Default("false"),
        ),
        key("tread", "The tread.", Holds::Table(&TREAD), Required),
    ],
};
