//! The keys of what strength is checked against.

use axlebow_units::Kind;

use crate::spec::{key, quantity};
use crate::{Bounds, Holds, Presence, TableSpec, Word};

use Bounds::{Between, Positive};
use Presence::{Default, Optional};

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
            "Yield strength over allowed stress (common practice, no source).",
            (Kind::Ratio, Between(1.0, 20.0)),
            Default("1.5"),
        ),
        quantity(
            "electrode_strength",
            "Tensile strength of the weld metal, FEXX; rules `en` go by the steel instead (common practice, no source).",
            (Kind::Stress, Positive),
            Default("\"70 ksi\""),
        ),
        quantity(
            "kept_beside_weld",
            "Share of its strength that steel keeps beside a weld; 1 up to a yield of 460 MPa and 0.6 above if left out.",
            (Kind::Ratio, Between(0.1, 1.0)),
            Optional,
        ),
    ],
};
