//! The keys of a wheel end.

use axlebow_axle::STEEPEST_CUP;
use axlebow_units::Kind;

use super::side_key::SIDE;
use crate::declare::{Bounds, Presence, TableSpec, quantity};

use Bounds::{Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Largest endplay, m: with more of it a wheel is coming off (common practice, no source).
const MOST_ENDPLAY: f64 = 0.005;

/// Greatest preload, N: that of the bearings' own ratings (common practice, no source).
const MOST_PRELOAD: f64 = 200e3;

/// A hub on two bearings.
pub(crate) static WHEEL_END: TableSpec = TableSpec {
    name: "wheel end",
    meaning: "A hub on two bearings; distances are from the center line.",
    keys: &[
        SIDE,
        quantity("inner_bearing_at", "Load center of the inner bearing.", (Kind::Length, Positive), Required),
        quantity("outer_bearing_at", "Load center of the outer bearing.", (Kind::Length, Positive), Required),
        quantity("mounting_face_at", "Face that the wheel is bolted to.", (Kind::Length, Positive), Required),
        quantity(
            "bearing_radial_stiffness",
            "Radial stiffness of each bearing; without it, from the rollers (ISO/TS 16281) at the bearing's load under the rated axle load.",
            (Kind::Stiffness, Positive),
            Optional,
        ),
        quantity(
            "bearing_axial_stiffness",
            "Axial stiffness of each bearing; without it, from the rollers as the radial one.",
            (Kind::Stiffness, Positive),
            Optional,
        ),
        quantity(
            "inner_bearing_rollers",
            "Number of rollers of the inner bearing (default from memory).",
            (Kind::Ratio, Between(3.0, 100.0)),
            Default("21"),
        ),
        quantity(
            "inner_bearing_roller_length",
            "Effective length of the inner bearing's rollers (default from memory).",
            (Kind::Length, Positive),
            Default("\"26 mm\""),
        ),
        quantity(
            "outer_bearing_rollers",
            "Number of rollers of the outer bearing (default from memory).",
            (Kind::Ratio, Between(3.0, 100.0)),
            Default("19"),
        ),
        quantity(
            "outer_bearing_roller_length",
            "Effective length of the outer bearing's rollers (default from memory).",
            (Kind::Length, Positive),
            Default("\"22 mm\""),
        ),
        quantity(
            "inner_bearing_rating",
            "Basic dynamic radial load rating C of the inner bearing (ISO 281), from its catalog; without it its life is not checked.",
            (Kind::Force, Positive),
            Optional,
        ),
        quantity(
            "outer_bearing_rating",
            "Basic dynamic radial load rating C of the outer bearing (ISO 281), from its catalog; without it its life is not checked.",
            (Kind::Force, Positive),
            Optional,
        ),
        quantity(
            "endplay",
            "How far the hub moves along the spindle from stop to stop; TMC RP 618 accepts 0.025 to 0.127 mm.",
            (Kind::Length, Between(0.0, MOST_ENDPLAY)),
            Default("\"0 mm\""),
        ),
        quantity(
            "preload",
            "Force that presses both bearings together when nothing else acts; counts for their life, not for their stiffness.",
            (Kind::Force, Between(0.0, MOST_PRELOAD)),
            Default("\"0 kN\""),
        ),
        quantity(
            "bearing_cup_angle",
            "Angle of the bearings' cups to the spindle: its tangent turns endplay into radial play (default from memory).",
            (Kind::Angle, Between(0.0, STEEPEST_CUP)),
            Default("\"15 deg\""),
        ),
        quantity("hub_mass", "Hub, bearings and brake drum or disc.", (Kind::Mass, NonNegative), Required),
        quantity(
            "camber",
            "Manufactured camber, positive with the top leaning outward.",
            (Kind::Angle, Between(-0.1, 0.1)),
            Default("\"0 deg\""),
        ),
        quantity(
            "toe",
            "Manufactured toe, positive toe-in.",
            (Kind::Angle, Between(-0.1, 0.1)),
            Default("\"0 deg\""),
        ),
    ],
};
