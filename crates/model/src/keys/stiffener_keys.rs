//! The keys of a stiffener.

use std::f64::consts::TAU;

use axlebow_units::Kind;

use super::material_keys::MATERIAL;
use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, key, quantity};

use Bounds::{Any, Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Where nothing may be welded, beside the heat-treated zone of the spindle.
pub(crate) const KEEP_OUT: KeySpec = quantity(
    "weld_keep_out",
    "Length inboard of its end, beside the spindle, in which no stiffener may lie (common practice, no source).",
    (Kind::Length, NonNegative),
    Default("\"75 mm\""),
);

/// A standard size of a shape.
pub(crate) const STANDARD_SIZE: KeySpec =
    key("size", "A standard size, such as `L3x3x3/8`, in place of sizes of its own.", Holds::Text, Optional);

/// The fillets of a rolled shape.
pub(crate) const ROOT_RADIUS: KeySpec = quantity(
    "root_radius",
    "Radius of the fillets between legs, or between web and flanges; none if left out.",
    (Kind::Length, NonNegative),
    Optional,
);

/// The toes of an angle.
pub(crate) const TOE_RADIUS: KeySpec = quantity(
    "toe_radius",
    "Radius of an angle's toes; none if left out.",
    (Kind::Length, NonNegative),
    Optional,
);

/// A shape welded along the axle.
pub(crate) static STIFFENER: TableSpec = TableSpec {
    name: "stiffener",
    meaning: "A shape welded along the axle: a standard `size` or sizes of its own, from end to end or by length and center.",
    keys: &[
        key("name", "A name that no other stiffener has.", Holds::Text, Required),
        key("shape", "What is welded on.", SHAPES, Required),
        STANDARD_SIZE,
        size("height", "Height of an angle, channel or tee, as a catalogue draws it."),
        size("width", "Width of the same, or of a flat."),
        size("thickness", "Thickness of a flat or of an angle's legs, or wall of a sleeve."),
        size("web", "Thickness of a channel's web or of a tee's stem."),
        size("flange", "Thickness of the flanges."),
        ROOT_RADIUS,
        TOE_RADIUS,
        size(
            "bore",
            "Inside diameter of a sleeve, the outside diameter of the tube to 3.2 mm more; that of the tube if left out.",
        ),
        key(
            "corners",
            "Corners of an outline of its own, counter-clockwise: forward, then away from the axle, 0 at the outermost of its wall; it sits as drawn, touching the wall.",
            Holds::Corners,
            Optional,
        ),
        key("hole", "Holes in that outline.", Holds::Tables(&HOLE), Optional),
        key(
            "orientation",
            "How it sits on the axle; the usual way of its shape if left out.",
            ATTITUDES,
            Optional,
        ),
        key(
            "material",
            "Its material; that of the tube or housing if left out.",
            Holds::Table(&MATERIAL),
            Optional,
        ),
        quantity(
            "clock",
            "Angle round the axle from the top, positive toward the front.",
            (Kind::Angle, Between(-TAU, TAU)),
            Default("\"0 deg\""),
        ),
        quantity(
            "from",
            "Its right end, along the axle, positive to the left.",
            (Kind::Length, Any),
            Optional,
        ),
        quantity("to", "Its left end, along the axle, positive to the left.", (Kind::Length, Any), Optional),
        size("length", "Its length, with `center` in place of `from` and `to`."),
        quantity(
            "center",
            "Its middle, along the axle, positive to the left.",
            (Kind::Length, Any),
            Optional,
        ),
        key("end", "How its ends run out.", ENDS, Default("\"square\"")),
        size("end_length", "Length over which a tapered end runs out, or radius of a radiused one."),
        size_of_weld("weld_leg", "Leg of its fillet welds.", Required),
        key("weld", "Where along it there is weld.", WELDS, Default("\"continuous\"")),
        size("stitch_length", "Length of a stitch."),
        size("stitch_pitch", "Distance of stitches from middle to middle."),
        key("weld_sides", "Which of its sides are welded.", WELD_SIDES, Default("\"both\"")),
        quantity(
            "weld_stiffness",
            "Stiffness along the axle of one weld, per length of weld; G/√2 of its material if left out (our estimate).",
            (Kind::Stress, Positive),
            Optional,
        ),
    ],
};

pub(crate) static HOLE: TableSpec = TableSpec {
    name: "hole",
    meaning: "A hole in a stiffener's outline.",
    keys: &[key("corners", "Its corners, counter-clockwise too.", Holds::Corners, Required)],
};

/// A size of a shape, where it has it.
pub(crate) const fn size(key: &'static str, meaning: &'static str) -> KeySpec {
    size_of_weld(key, meaning, Optional)
}

const fn size_of_weld(key: &'static str, meaning: &'static str, presence: Presence) -> KeySpec {
    quantity(key, meaning, (Kind::Length, Positive), presence)
}

const SHAPES: Holds = Holds::Choice(&[
    Word { word: "angle", meaning: "an angle" },
    Word { word: "flat", meaning: "a flat bar" },
    Word { word: "channel", meaning: "a channel" },
    Word { word: "tee", meaning: "a tee" },
    Word { word: "half-pipe", meaning: "half of a round tube, over the axle's tube" },
    Word { word: "full-sleeve", meaning: "a round tube over the axle's tube" },
    Word { word: "outline", meaning: "an outline by its `corners`" },
]);

const ATTITUDES: Holds = Holds::Choice(&[
    Word { word: "toes-down", meaning: "an angle or a channel with both toes on the wall" },
    Word { word: "leg-down", meaning: "an angle with one toe on the wall, that leg standing up from it" },
    Word { word: "back-up", meaning: "an angle with one leg flat on the wall" },
    Word { word: "on-edge", meaning: "a flat that stands on its edge" },
    Word { word: "lying", meaning: "a flat, or a channel's web, that lies on the wall" },
    Word { word: "stem-down", meaning: "a tee whose stem stands on the wall" },
    Word { word: "flange-down", meaning: "a tee whose flange lies on the wall" },
    Word { word: "round", meaning: "a sleeve about the tube" },
    Word { word: "as-drawn", meaning: "an outline of its own, as its corners say" },
]);

const ENDS: Holds = Holds::Choice(&[
    Word { word: "square", meaning: "cut square" },
    Word { word: "tapered", meaning: "its height runs out evenly over `end_length`" },
    Word { word: "radiused", meaning: "its height runs out along a quarter circle of `end_length`" },
]);

const WELDS: Holds = Holds::Choice(&[
    Word { word: "continuous", meaning: "from end to end" },
    Word {
        word: "stitched",
        meaning: "stitches of `stitch_length` at `stitch_pitch`, the first and the last at its ends",
    },
]);

const WELD_SIDES: Holds = Holds::Choice(&[
    Word { word: "both", meaning: "front and rear" },
    Word { word: "one", meaning: "one of them; no cell is closed" },
]);
