//! The keys of a wheel with its tires.

use axlebow_units::Kind;

use super::side_key::SIDE;
use super::tread_keys::TREAD_KEY;
use crate::declare::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};

use Bounds::{Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Wheels and tires of one end.
pub(crate) static WHEEL: TableSpec = TableSpec {
    name: "wheel",
    meaning: "Wheels and tires of one end.",
    keys: &[
        SIDE,
        key(
            "tires",
            "How the tires sit.",
            Holds::Choice(&[
                Word { word: "single", meaning: "one tire of ordinary width" },
                Word { word: "wide-base", meaning: "one wide tire in the place of two" },
                Word { word: "dual", meaning: "two tires side by side" },
            ]),
            Required,
        ),
        key(
            "position",
            "Where the tire's center lies against the mounting face.",
            Holds::Choice(&[
                Word { word: "zeroset", meaning: "at the mounting face" },
                Word { word: "outset", meaning: "outboard of it by `offset`" },
                Word { word: "inset", meaning: "inboard of it by `offset`" },
            ]),
            Required,
        ),
        quantity(
            "offset",
            "Distance of outset or inset; it has no say where the wheel is zeroset.",
            (Kind::Length, NonNegative),
            Optional,
        ),
        key(
            "reversed",
            "Whether the wheel is reversed on its hub: outset s becomes inset s less the disc thickness.",
            Holds::Flag,
            Default("false"),
        ),
        quantity(
            "disc_thickness",
            "Thickness of the wheel's disc (common practice, no source).",
            (Kind::Length, Positive),
            Default("\"25 mm\""),
        ),
        quantity(
            "disc_flexibility",
            "How far the wheel leans on its hub, disc and hub flange together (default: flat steel plates of usual size, from memory: \
             a flange 20 mm thick from 90 to 143 mm of radius, a disc 12 mm thick from 165 to 250 mm).",
            (Kind::RotationalFlexibility, NonNegative),
            Default("\"7.3e-5 rad/(kN m)\""),
        ),
        quantity(
            "inflation",
            "Pressure in the tires as they run; the tread's rated one if left out.",
            (Kind::Stress, Positive),
            Optional,
        ),
        quantity(
            "inner_inflation",
            "Pressure in the inner tire of a dual; that of the outer one if left out.",
            (Kind::Stress, Positive),
            Optional,
        ),
        quantity(
            "outer_radius",
            "Radius of the unloaded outer tire of a dual whose tires do not match.",
            (Kind::Length, Positive),
            Optional,
        ),
        quantity("inner_radius", "The same of the inner tire.", (Kind::Length, Positive), Optional),
        quantity(
            "tire_tilt_share",
            "Share of the lateral compliance of a tire that is its belt tilting, for toe (assumed).",
            (Kind::Ratio, Between(0.0, 1.0)),
            Default("0.5"),
        ),
        quantity(
            "dual_spacing",
            "Distance between the centers of a dual.",
            (Kind::Length, Positive),
            Optional,
        ),
        quantity(
            "loaded_radius",
            "Height of the wheel center above the road.",
            (Kind::Length, Positive),
            Required,
        ),
        quantity("tire_width", "Section width of one tire.", (Kind::Length, Positive), Required),
        quantity(
            "tire_vertical_stiffness",
            "Vertical stiffness of one tire (default from memory).",
            (Kind::Stiffness, Positive),
            Default("\"875 N/mm\""),
        ),
        quantity(
            "tire_lateral_stiffness",
            "Lateral stiffness of one standing tire (default from memory).",
            (Kind::Stiffness, Positive),
            Default("\"350 N/mm\""),
        ),
        quantity(
            "tire_damping",
            "Vertical damping of one tire (default from memory).",
            (Kind::Damping, NonNegative),
            Default("\"0.7 kN s/m\""),
        ),
        quantity(
            "tilt_radius",
            "Radius of gyration of wheels and tires about a line across the axle (default from memory).",
            (Kind::Length, NonNegative),
            Default("\"300 mm\""),
        ),
        TREAD_KEY,
        quantity("mass", "Wheels and tires of this end.", (Kind::Mass, NonNegative), Required),
    ],
};
