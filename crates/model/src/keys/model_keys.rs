//! The keys of a model file.

use axlebow_axle::LARGEST_COMPOSITE_FRACTION;
use axlebow_units::Kind;

use super::material_keys::MATERIAL;
use super::running_keys::RUNNING;
use super::side_key::SIDE;
use super::stiffener_keys::{KEEP_OUT, STIFFENER};
use super::strength_keys::STRENGTH;
use super::wheel_end_keys::WHEEL_END;
use super::wheel_keys::WHEEL;
use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, key, quantity};

use Bounds::{Any, Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Largest clearance of a bump stop, m: a suspension has no longer travel (common practice, no source).
const MOST_TRAVEL: f64 = 0.5;

/// A whole model file.
pub static MODEL: TableSpec = TableSpec {
    name: "model file",
    meaning: "An axle with its wheels, seats and loads.",
    keys: &[
        key("name", "What the axle is called in results.", Holds::Text, Required),
        key(
            "kind",
            "What the axle is.",
            Holds::Choice(&[
                Word { word: "trailer-tube", meaning: "a tube with a spindle at each end" },
                Word {
                    word: "drive-housing",
                    meaning: "a rectangular housing with a wider bowl in the middle",
                },
            ]),
            Required,
        ),
        key(
            "invented",
            "Whether the numbers are invented for demonstration; pictures say so.",
            Holds::Flag,
            Default("false"),
        ),
        key(
            "typical",
            "Keys whose values are typical of such axles and not measured on this one, such as `tube`; results say so until they are taken out.",
            Holds::Texts,
            Optional,
        ),
        key("material", "Material of the tube or housing.", Holds::Table(&MATERIAL), Default("{}")),
        key(
            "spindle_material",
            "Material of the spindles; that of the tube or housing if left out.",
            Holds::Table(&MATERIAL),
            Optional,
        ),
        key("tube", "The tube of a trailer-tube axle.", Holds::Table(&TUBE), Optional),
        key("housing", "The housing of a drive-housing axle.", Holds::Table(&HOUSING), Optional),
        key("spindle", "The spindle, the same at both ends.", Holds::Table(&SPINDLE), Required),
        key("wheel_end", "Hub and bearings.", Holds::Tables(&WHEEL_END), Required),
        key("wheel", "Wheels and tires.", Holds::Tables(&WHEEL), Required),
        key("seat", "Where the suspension holds the axle.", Holds::Tables(&SEAT), Required),
        key("stiffener", "A shape welded along the axle.", Holds::Tables(&STIFFENER), Optional),
        key("mass", "A further mass fixed to the axle.", Holds::Tables(&MASS), Optional),
        key("station", "A further place to report results at.", Holds::Tables(&STATION), Optional),
        key("loads", "What the axle carries.", Holds::Table(&LOADS), Required),
        key("running", "How the axle runs on the road.", Holds::Table(&RUNNING), Default("{}")),
        key("strength", "What strength is checked against.", Holds::Table(&STRENGTH), Default("{}")),
        key("combination", "A load case made of others.", Holds::Tables(&COMBINATION), Optional),
    ],
};

static TUBE: TableSpec = TableSpec {
    name: "tube",
    meaning: "A round tube of one section from end to end.",
    keys: &[
        quantity("od", "Outside diameter.", (Kind::Length, Positive), Required),
        quantity("wall", "Wall thickness.", (Kind::Length, Positive), Required),
        quantity(
            "length",
            "Length from end to end, spindles not counted.",
            (Kind::Length, Positive),
            Required,
        ),
        KEEP_OUT,
    ],
};

static HOUSING: TableSpec = TableSpec {
    name: "housing",
    meaning: "A rectangular tube with rounded corners whose size changes along the axle.",
    keys: &[
        quantity("wall", "Wall thickness.", (Kind::Length, Positive), Required),
        quantity("corner_radius", "Outside radius of the corners.", (Kind::Length, NonNegative), Required),
        key(
            "profile",
            "Outside size at places from the center outward; between two places it changes linearly.",
            Holds::Tables(&HOUSING_POINT),
            Required,
        ),
        KEEP_OUT,
    ],
};

static HOUSING_POINT: TableSpec = TableSpec {
    name: "housing profile",
    meaning: "The housing's outside size at one place.",
    keys: &[
        quantity(
            "at",
            "Distance from the center line; the first is 0.",
            (Kind::Length, NonNegative),
            Required,
        ),
        quantity("height", "Outside height.", (Kind::Length, Positive), Required),
        quantity("width", "Outside width, fore and aft.", (Kind::Length, Positive), Required),
    ],
};

static SPINDLE: TableSpec = TableSpec {
    name: "spindle",
    meaning: "A stepped round spindle.",
    keys: &[key("step", "Steps from the tube's end outward.", Holds::Tables(&SPINDLE_STEP), Required)],
};

static SPINDLE_STEP: TableSpec = TableSpec {
    name: "spindle step",
    meaning: "A length of spindle of one diameter.",
    keys: &[
        quantity("length", "Length along the axle.", (Kind::Length, Positive), Required),
        quantity("od", "Outside diameter.", (Kind::Length, Positive), Required),
        quantity("bore", "Diameter of its bore; solid if left out.", (Kind::Length, Positive), Optional),
        quantity(
            "fillet",
            "Radius of the fillet at its inboard end, where it meets the larger part; without it the stress there is not checked.",
            (Kind::Length, Positive),
            Optional,
        ),
    ],
};

static SEAT: TableSpec = TableSpec {
    name: "seat",
    meaning: "Where the suspension holds the axle; has either a `leaf` or a `trailing_arm` table.",
    keys: &[
        SIDE,
        quantity("at", "Distance of its center from the center line.", (Kind::Length, Positive), Required),
        quantity("width", "Width along the axle.", (Kind::Length, Positive), Required),
        key(
            "fixing",
            "How it is fixed to the axle; shells of the wall take a welded seat as one bracket, a clamped one as saddle, block and U-bolts.",
            Holds::Choice(&[
                Word { word: "clamped", meaning: "clamped by U-bolts" },
                Word { word: "welded", meaning: "welded" },
            ]),
            Required,
        ),
        quantity(
            "composite_fraction",
            "Share of the flexibility under the seat that the clamp takes away.",
            (Kind::Ratio, Between(0.0, LARGEST_COMPOSITE_FRACTION)),
            Default("0"),
        ),
        quantity(
            "rotational_stiffness",
            "Stiffness about the fore-aft axis of arm or spring pack with its bush.",
            (Kind::RotationalStiffness, NonNegative),
            Required,
        ),
        key(
            "wall_flexibility",
            "Local flexibility about the fore-aft axis of the axle's wall under the seat, in series.",
            Holds::QuantityOr {
                kind: Kind::RotationalFlexibility,
                bounds: NonNegative,
                words: &[
                    Word {
                        word: "shell",
                        meaning: "from shells of the wall, in all directions, under a rigid bracket, the stiffest that it can be; they also say how far the seat stiffens its length",
                    },
                    Word {
                        word: "shell-spread",
                        meaning: "the same under a bracket that spreads its force over the wall, the softest that it can be",
                    },
                    Word {
                        word: "formula",
                        meaning: "from published joint formulas, extrapolated to axle tubes",
                    },
                ],
            },
            Default("\"0 rad/(kN m)\""),
        ),
        quantity(
            "weld_keep_out",
            "Length on both sides of the seat in which no stiffener may lie: bracket, weld toes and clamp need it (common practice, no source).",
            (Kind::Length, NonNegative),
            Default("\"25 mm\""),
        ),
        quantity(
            "bracket_breadth",
            "Breadth of bracket, saddle and clamp block round the middle of the wall; a quarter of the way round if left out.",
            (Kind::Length, Positive),
            Optional,
        ),
        quantity(
            "u_bolt_diameter",
            "Diameter of the legs of the U-bolts of a clamped seat; 22 mm if left out.",
            (Kind::Length, Positive),
            Optional,
        ),
        key(
            "u_bolts",
            "Number of U-bolts of a clamped seat, each with two legs; 2 if left out.",
            Holds::Count { min: 1, max: 8 },
            Optional,
        ),
        quantity(
            "u_bolt_torque",
            "Torque on each nut of the U-bolts, two nuts a bolt, for the wall's strength under the clamp.",
            (Kind::Moment, Positive),
            Optional,
        ),
        quantity(
            "nut_factor",
            "Torque over clamp force and diameter of a leg; 0.2, dry steel, if left out.",
            (Kind::Ratio, Positive),
            Optional,
        ),
        quantity(
            "damping",
            "Vertical damping of the suspension of one side in bump (the axle rises), at the seat (default from memory).",
            (Kind::Damping, NonNegative),
            Default("\"12 kN s/m\""),
        ),
        quantity(
            "rebound_damping",
            "The same in rebound (the axle falls); that of bump if left out.",
            (Kind::Damping, NonNegative),
            Optional,
        ),
        key("bump_stop", "What ends the travel in bump.", Holds::Table(&BUMP_STOP), Optional),
        key("leaf", "A leaf spring clamped to the seat.", Holds::Table(&LEAF), Optional),
        key("trailing_arm", "An arm that swings about a bush ahead.", Holds::Table(&TRAILING_ARM), Optional),
    ],
};

static BUMP_STOP: TableSpec = TableSpec {
    name: "bump stop",
    meaning: "A stop between axle and body at the seat; it acts in rides.",
    keys: &[
        quantity(
            "clearance",
            "Distance from stop to axle at rest under the rated load.",
            (Kind::Length, Between(0.0, MOST_TRAVEL)),
            Required,
        ),
        quantity("rate", "Stiffness of the stop.", (Kind::Stiffness, Positive), Required),
        quantity(
            "damping",
            "Damping while the stop is pressed.",
            (Kind::Damping, NonNegative),
            Default("\"0 kN s/m\""),
        ),
    ],
};

static LEAF: TableSpec = TableSpec {
    name: "leaf spring",
    meaning: "A leaf spring of one side; defaults are from memory.",
    keys: &[
        quantity("vertical_rate", "Vertical spring rate.", (Kind::Stiffness, Positive), Required),
        quantity("lateral_rate", "Lateral stiffness.", (Kind::Stiffness, Positive), Default("\"4000 N/mm\"")),
        quantity(
            "fore_aft_rate",
            "Fore-aft stiffness.",
            (Kind::Stiffness, Positive),
            Default("\"8000 N/mm\""),
        ),
        quantity(
            "wind_up_stiffness",
            "Stiffness against winding up under a brake torque.",
            (Kind::RotationalStiffness, Positive),
            Default("\"60 kN m/rad\""),
        ),
        quantity(
            "yaw_stiffness",
            "Stiffness about the vertical axis.",
            (Kind::RotationalStiffness, Positive),
            Default("\"80 kN m/rad\""),
        ),
        quantity(
            "loss_factor",
            "Energy that friction of the leaves and bushes turns into heat in a cycle over 2 pi times the greatest that is stored, for rides, modes and response (default: half of the most that Council Directive \
             96/53/EC, annex II, leaves to a suspension without its dampers, a tenth of critical).",
            (Kind::Ratio, Between(0.0, 1.0)),
            Default("0.1"),
        ),
    ],
};

static TRAILING_ARM: TableSpec = TableSpec {
    name: "trailing arm",
    meaning: "A trailing arm of one side; defaults are from memory.",
    keys: &[
        quantity(
            "pivot_ahead",
            "Distance of the bush ahead of the axle.",
            (Kind::Length, Positive),
            Required,
        ),
        quantity(
            "pivot_above",
            "Height of the bush above the wheel center.",
            (Kind::Length, Any),
            Default("\"0 mm\""),
        ),
        quantity(
            "bush_radial_rate",
            "Stiffness of the bush across its pin.",
            (Kind::Stiffness, Positive),
            Default("\"20000 N/mm\""),
        ),
        quantity(
            "bush_axial_rate",
            "Stiffness of the bush along its pin.",
            (Kind::Stiffness, Positive),
            Default("\"5000 N/mm\""),
        ),
        quantity(
            "spring_behind",
            "Distance of the spring behind the axle.",
            (Kind::Length, NonNegative),
            Required,
        ),
        quantity("spring_rate", "Vertical rate of the spring.", (Kind::Stiffness, Positive), Required),
        quantity(
            "loss_factor",
            "Energy that bushes and spring turn into heat in a cycle over 2 pi times the greatest that is stored, for rides, modes and response (default: half of the most that Council Directive \
             96/53/EC, annex II, leaves to a suspension without its dampers, a tenth of critical).",
            (Kind::Ratio, Between(0.0, 1.0)),
            Default("0.1"),
        ),
    ],
};

static MASS: TableSpec = TableSpec {
    name: "mass",
    meaning: "A mass fixed to the axle: brake chambers, brackets, a drive carrier.",
    keys: &[
        key("name", "What it is.", Holds::Text, Required),
        quantity("at", "Position along the axle, positive to the left.", (Kind::Length, Any), Required),
        quantity("mass", "Mass.", (Kind::Mass, Positive), Required),
    ],
};

static STATION: TableSpec = TableSpec {
    name: "station",
    meaning: "A place along the axle.",
    keys: &[
        key("name", "A name that no other station has.", Holds::Text, Required),
        quantity("at", "Position along the axle, positive to the left.", (Kind::Length, Any), Required),
    ],
};

static LOADS: TableSpec = TableSpec {
    name: "loads",
    meaning: "The measures from which the load cases are made; default ratios are from memory.",
    keys: &[
        key(
            "rated_load",
            "Rated load of the whole axle on the road.",
            Holds::Load { bounds: Positive },
            Required,
        ),
        key(
            "unladen_load",
            "Unladen load of the whole axle on the road.",
            Holds::Load { bounds: Positive },
            Required,
        ),
        key(
            "ground",
            "What the ground does to a tire sideways.",
            Holds::Choice(&[
                Word { word: "rolling", meaning: "it rolls straight and takes no side force of its own" },
                Word { word: "standing", meaning: "it stands and resists by its lateral stiffness" },
            ]),
            Default("\"rolling\""),
        ),
        quantity(
            "body_height",
            "Height of the sprung mass's center above the road.",
            (Kind::Length, Positive),
            Default("\"1.9 m\""),
        ),
        quantity(
            "body_roll_radius",
            "Radius of gyration of the sprung mass about the fore-aft axis (default from memory).",
            (Kind::Length, Positive),
            Default("\"0.8 m\""),
        ),
        quantity(
            "body_roll_stiffness",
            "Roll stiffness of the rest of the vehicle against an uneven road under this axle.",
            (Kind::RotationalStiffness, NonNegative),
            Default("\"600 kN m/rad\""),
        ),
        quantity(
            "body_roll_damping",
            "Damping of the same roll by the rest of the vehicle, in rides, modes and response (default: a fifth of \
             critical at 2 Hz, the limits of road-friendly suspension in Council Directive 96/53/EC, annex II, with \
             the default stiffness).",
            (Kind::RotationalDamping, NonNegative),
            Default("\"20 kN m s/rad\""),
        ),
        quantity(
            "raise",
            "Height by which the road is raised under the left wheel in `one-wheel-raised`.",
            (Kind::Length, NonNegative),
            Default("\"50 mm\""),
        ),
        quantity(
            "side_force_ratio",
            "Side force over axle load in `side-load`.",
            (Kind::Ratio, NonNegative),
            Default("0.2"),
        ),
        quantity(
            "braking_force_ratio",
            "Braking force over axle load in `braking`.",
            (Kind::Ratio, NonNegative),
            Default("0.5"),
        ),
        quantity(
            "curb_force_ratio",
            "Curb force over the left wheel's load in `curb`.",
            (Kind::Ratio, NonNegative),
            Default("0.3"),
        ),
        quantity(
            "traction_force_ratio",
            "Driving force over axle load in `traction`, of a drive axle.",
            (Kind::Ratio, NonNegative),
            Default("0.3"),
        ),
        quantity(
            "final_drive_ratio",
            "Turns of the propeller shaft for one turn of a drive axle's wheels.",
            (Kind::Ratio, Positive),
            Default("3.7"),
        ),
        key(
            "dynamic_factor",
            "Factor by which all forces of a case are multiplied.",
            Holds::Table(&DYNAMIC_FACTOR),
            Default("{}"),
        ),
    ],
};

static DYNAMIC_FACTOR: TableSpec = TableSpec {
    name: "dynamic factor",
    meaning: "The dynamic factor of each standard case.",
    keys: &[
        dynamic_factor("rated-load"),
        dynamic_factor("unladen"),
        dynamic_factor("one-wheel-raised"),
        dynamic_factor("side-load"),
        dynamic_factor("braking"),
        dynamic_factor("curb"),
        dynamic_factor("traction"),
    ],
};

const fn dynamic_factor(case: &'static str) -> KeySpec {
    quantity(case, "Dynamic factor of this case.", (Kind::Ratio, Positive), Default("1"))
}

static COMBINATION: TableSpec = TableSpec {
    name: "combination",
    meaning: "A load case made of others: their loads are multiplied, added and solved once.",
    keys: &[
        key("name", "A name that no other case has.", Holds::Text, Required),
        key("description", "One sentence.", Holds::Text, Optional),
        key("of", "Factor of each case, such as { braking = 0.7, curb = 0.3 }.", Holds::Factors, Required),
        quantity("dynamic_factor", "Factor on top of the cases' own.", (Kind::Ratio, Positive), Default("1")),
    ],
};
