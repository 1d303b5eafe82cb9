//! The keys of a case sheet: what was seen on a worn axle.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};

use Bounds::{Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Largest camber or toe, rad: no wheel that runs stands so.
const LARGEST_ANGLE: f64 = 0.2;
/// Largest skew, rad.
const LARGEST_SKEW: f64 = 0.1;
/// Farthest that a tire's center lies from the mounting face, m (common practice, no source).
const FARTHEST_OFFSET: f64 = 0.25;
/// Most cups round a tire that anybody counts (common practice, no source).
const MOST_CUPS: u32 = 40;
/// Inflations between which a truck tire is found, Pa (common practice, no source).
const INFLATIONS: [f64; 2] = [100e3, 1.2e6];
/// Largest endplay and runout that a gauge reads, m (common practice, no source).
const LARGEST_PLAY: f64 = 0.01;

/// A whole case sheet.
pub static CASE: TableSpec = TableSpec {
    name: "case sheet",
    meaning: "What was seen on a worn axle; what is left out was not looked at.",
    keys: &[
        key("name", "What the case is called in results.", Holds::Text, Required),
        key(
            "invented",
            "Whether the case is invented for demonstration; pages say so.",
            Holds::Flag,
            Default("false"),
        ),
        key(
            "axle",
            "The axle: a model file, named from the folder of this sheet, or the name of a typical axle such as trailer-5-inch-duals.",
            Holds::Text,
            Required,
        ),
        key("position", "Where the axle is in the vehicle, in your words.", Holds::Text, Optional),
        key("tires", "How the tires sit; it must agree with the axle.", Holds::Choice(&LAYOUTS), Optional),
        key(
            "duty",
            "What driving asks of the tires; that of the axle's file if left out.",
            Holds::Choice(&DUTIES),
            Optional,
        ),
        quantity("distance", "Distance that these tires have run.", (Kind::Length, Positive), Optional),
        quantity(
            "usual_distance",
            "Distance over which such tires wear by half of their new depth where nothing is wrong (default invented: put in that \
             of your own removals).",
            (Kind::Length, Positive),
            Default("\"120000 km\""),
        ),
        quantity(
            "new_depth",
            "Depth of the tread when it was new; that of the axle's tire, less sure, if left out.",
            (Kind::Length, Positive),
            Optional,
        ),
        key(
            "axle_load",
            "What the axle carries in the mean over its distance, such as a mean of scale tickets.",
            Holds::Load { bounds: Positive },
            Optional,
        ),
        quantity(
            "offset",
            "Outset of the wheels as measured; negative for inset.",
            (Kind::Length, Between(-FARTHEST_OFFSET, FARTHEST_OFFSET)),
            Optional,
        ),
        quantity(
            "skew",
            "Angle of the axle out of square as measured, positive with its left end ahead.",
            (Kind::Angle, Between(-LARGEST_SKEW, LARGEST_SKEW)),
            Optional,
        ),
        quantity("wall", "Wall of tube or housing by ultrasonic gauge.", (Kind::Length, Positive), Optional),
        key("damper", "What the dampers are like.", Holds::Choice(&DAMPERS), Optional),
        key("tire", "What was seen on one tire.", Holds::Tables(&SEEN_TIRE), Required),
        key("wheel_end", "What was read at one wheel end.", Holds::Tables(&SEEN_END), Optional),
        key("errors", "How far readings may be off.", Holds::Table(&ERRORS), Default("{}")),
        key(
            "priors",
            "Weights of causes before anything is seen, such as { toe = 2, worn-damper = 0.5 }; only their ratios count.",
            Holds::Factors,
            Optional,
        ),
    ],
};

static DUTIES: [Word; 3] = [
    Word { word: "line-haul", meaning: "long trips on motorways" },
    Word { word: "regional", meaning: "day trips on country roads" },
    Word { word: "city", meaning: "deliveries in town: corners, starts and stops" },
];

static LAYOUTS: [Word; 3] = [
    Word { word: "single", meaning: "one tire of ordinary width" },
    Word { word: "wide-base", meaning: "one wide tire in the place of two" },
    Word { word: "dual", meaning: "two tires side by side" },
];

static DAMPERS: [Word; 3] = [
    Word { word: "good", meaning: "dry, warm after a run, bushes tight" },
    Word { word: "leaking", meaning: "wet with oil, or bushes loose" },
    Word { word: "dead", meaning: "cold after a run, loose, broken or missing" },
];

static SIDES: [Word; 2] = [
    Word { word: "left", meaning: "left in the direction of travel" },
    Word { word: "right", meaning: "right in the direction of travel" },
];

static SEEN_TIRE: TableSpec = TableSpec {
    name: "tire",
    meaning: "What was seen on one tire.",
    keys: &[
        key("side", "Which side of the vehicle.", Holds::Choice(&SIDES), Required),
        key(
            "place",
            "Which tire of the wheel end.",
            Holds::Choice(&[
                Word { word: "single", meaning: "the only one" },
                Word { word: "outer", meaning: "the outer one of a dual" },
                Word { word: "inner", meaning: "the inner one of a dual" },
            ]),
            Required,
        ),
        key(
            "depths",
            "Tread depth of each rib from the inner shoulder (toward the middle of the vehicle) outward, such as [\"9.5 mm\", \"11 mm\"] \
             or [\"12/32 in\", \"14/32 in\"]; \"-\" where a rib was not measured.",
            Holds::Texts,
            Optional,
        ),
        key(
            "cups",
            "Cups counted round the tire; 0 if looked for and none.",
            Holds::Count { min: 0, max: MOST_CUPS },
            Optional,
        ),
        key(
            "feather",
            "Which way the sharp edges of the ribs point, felt by hand across the tread.",
            Holds::Choice(&[
                Word { word: "inboard", meaning: "toward the middle of the vehicle" },
                Word { word: "outboard", meaning: "away from it" },
                Word { word: "none", meaning: "felt for and none" },
            ]),
            Optional,
        ),
        quantity(
            "inflation",
            "Pressure as found, the tire cold.",
            (Kind::Stress, Between(INFLATIONS[0], INFLATIONS[1])),
            Optional,
        ),
        quantity(
            "circumference",
            "Length round the tire over its middle rib, by tape, off the road.",
            (Kind::Length, Positive),
            Optional,
        ),
    ],
};

static SEEN_END: TableSpec = TableSpec {
    name: "wheel end",
    meaning: "What was read at one wheel end.",
    keys: &[
        key("side", "Which side of the vehicle.", Holds::Choice(&SIDES), Required),
        quantity(
            "endplay",
            "Endplay of the hub by dial indicator, the wheel off.",
            (Kind::Length, Between(0.0, LARGEST_PLAY)),
            Optional,
        ),
        quantity(
            "camber",
            "Camber by gauge, the vehicle empty on a level floor; negative with the top leaning in.",
            (Kind::Angle, Between(-LARGEST_ANGLE, LARGEST_ANGLE)),
            Optional,
        ),
        quantity(
            "toe",
            "Toe of this wheel against the axle's square, the vehicle empty; positive toe-in.",
            (Kind::Angle, Between(-LARGEST_ANGLE, LARGEST_ANGLE)),
            Optional,
        ),
        quantity(
            "runout",
            "Radial runout of the tire over its middle rib, largest less smallest.",
            (Kind::Length, Between(0.0, LARGEST_PLAY)),
            Optional,
        ),
    ],
};

static ERRORS: TableSpec = TableSpec {
    name: "errors",
    meaning: "Standard errors of readings; the defaults are judgments, no source.",
    keys: &[
        quantity("depth", "Of a tread depth.", (Kind::Length, Positive), Default("\"0.5 mm\"")),
        quantity("endplay", "Of an endplay.", (Kind::Length, Positive), Default("\"0.03 mm\"")),
        quantity("angle", "Of camber, toe and skew.", (Kind::Angle, Positive), Default("\"0.06 deg\"")),
        quantity("wall", "Of a wall.", (Kind::Length, Positive), Default("\"0.3 mm\"")),
        quantity("inflation", "Of a pressure.", (Kind::Stress, Positive), Default("\"20 kPa\"")),
        quantity("offset", "Of the wheels' outset.", (Kind::Length, Positive), Default("\"4 mm\"")),
        quantity("circumference", "Of a circumference.", (Kind::Length, Positive), Default("\"6 mm\"")),
        quantity("runout", "Of a runout.", (Kind::Length, Positive), Default("\"0.3 mm\"")),
        quantity("load", "Of the axle load, over it.", (Kind::Ratio, NonNegative), Default("0.05")),
    ],
};
