//! The keys of how an axle runs on the road.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};

use Bounds::{Between, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// Largest skew, rad (common practice, no source).
const STEEPEST_SKEW: f64 = 0.1;

/// Words of the duties.
pub(crate) static DUTIES: [Word; 4] = [
    Word { word: "line-haul", meaning: "long trips on motorways (forces assumed)" },
    Word { word: "regional", meaning: "day trips on country roads (forces assumed)" },
    Word { word: "city", meaning: "deliveries in town: corners, starts and stops (forces assumed)" },
    Word { word: "stated", meaning: "as the `duty_part` tables say" },
];

pub(crate) static RUNNING: TableSpec = TableSpec {
    name: "running",
    meaning: "How the axle runs on the road: what driving asks of its tires, and how it is set in the vehicle.",
    keys: &[
        key(
            "duty",
            "What driving asks of the tires: it wears a wheel that stands upright and runs straight.",
            Holds::Choice(&DUTIES),
            Default("\"line-haul\""),
        ),
        quantity(
            "severity",
            "How hard those trips are driven: every force of the duty is multiplied by it; `axlebow fit` finds it from removals.",
            (Kind::Ratio, Positive),
            Default("1"),
        ),
        quantity(
            "abrasion",
            "Volume that a newton meter, a joule, of scuff takes off an ordinary rubber on these roads; where the file gives it, as `axlebow fit` \
             writes it from removals, wear has a depth, else it is told over that of upright tires only (default assumed).",
            (Kind::Abrasion, Positive),
            Default("\"0.01 mm3/(N m)\""),
        ),
        key("duty_part", "A part of a stated duty.", Holds::Tables(&DUTY_PART), Optional),
        quantity(
            "skew",
            "Angle of the axle out of square, positive with its left end ahead: it toes the left wheel in and the right one out.",
            (Kind::Angle, Between(-STEEPEST_SKEW, STEEPEST_SKEW)),
            Default("\"0 deg\""),
        ),
        quantity(
            "held_speed",
            "Mean of the speeds that the fleet holds: waves of wear grow by it (default assumed).",
            (Kind::Speed, Positive),
            Default("\"100 km/h\""),
        ),
        quantity(
            "held_speed_deviation",
            "Standard deviation of those speeds, less than a third of their mean (default assumed).",
            (Kind::Speed, NonNegative),
            Default("\"4 km/h\""),
        ),
    ],
};

static DUTY_PART: TableSpec = TableSpec {
    name: "duty part",
    meaning: "A share of the distance over which driving asks the same of a tire; all shares sum to 1.",
    keys: &[
        quantity("share", "Share of the distance.", (Kind::Ratio, Between(0.0, 1.0)), Required),
        quantity(
            "side_force",
            "Side force over load, to either side in turn.",
            (Kind::Ratio, NonNegative),
            Default("0"),
        ),
        quantity(
            "forward_force",
            "Force along the road over load: positive drives, which only a drive axle does; negative brakes.",
            (Kind::Ratio, Between(-1.0, 1.0)),
            Default("0"),
        ),
    ],
};
