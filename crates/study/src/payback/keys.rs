//! The keys of a study file that asks whether a remedy pays.

use axlebow_model::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, key, quantity};
use axlebow_units::Kind;

use super::terms::{DEAREST, LONGEST, STRONGEST};
use crate::file::DISTRIBUTIONS;

use Presence::{Default, Optional, Required};

/// Most vehicles, and most axles of one.
const MOST: u32 = 1_000_000;
/// Most retreads of a casing (common practice, no source: three or four are usual).
const MOST_RETREADS: u32 = 20;
/// Most draws, and fewest from which anything is told.
const DRAWS: [u32; 2] = [100, 10_000_000];

const fn price(key_name: &'static str, meaning: &'static str, presence: Presence) -> KeySpec {
    key(key_name, meaning, Holds::Price { per: None }, presence)
}

const fn share(key_name: &'static str, meaning: &'static str) -> KeySpec {
    quantity(key_name, meaning, (Kind::Ratio, Bounds::Between(0.0, 1.0)), Required)
}

/// A whole study file that asks whether a remedy pays.
pub static PAYBACK: TableSpec = TableSpec {
    name: "payback file",
    meaning: "A remedy of an axle, what it costs, and what tires, mass and time cost its owner.",
    keys: &[
        key("name", "What the study is called in results.", Holds::Text, Required),
        key("kind", "What the study does.", Holds::Choice(&KINDS), Required),
        key("note", "What the reader of the results must know.", Holds::Text, Optional),
        key(
            "currency",
            "The currency of every price, such as `USD`; a label, nothing is converted.",
            Holds::Text,
            Required,
        ),
        key(
            "model",
            "The model file of the axle of today, from the study file's folder.",
            Holds::Text,
            Required,
        ),
        key("case", "The load case for the tire faces.", Holds::Text, Required),
        key("remedy", "The remedied axle, and what it costs.", Holds::Table(&REMEDY), Required),
        key("fleet", "The vehicles and how they are used.", Holds::Table(&FLEET), Required),
        key("tires", "What tires cost, and when they come off.", Holds::Table(&TIRES), Required),
        key("mass", "What a kilogram more costs; nothing if left out.", Holds::Table(&MASS), Default("{}")),
        key("range", "How an input is distributed.", Holds::Tables(&RANGE), Optional),
        key(
            "draws",
            "How many draws from the ranges are made, and which.",
            Holds::Table(&DRAW),
            Default("{}"),
        ),
    ],
};

const KINDS: [Word; 1] = [Word { word: "payback", meaning: "whether a remedy pays" }];

static REMEDY: TableSpec = TableSpec {
    name: "remedy",
    meaning: "The remedied axle, and what it costs; prices are those of one axle.",
    keys: &[
        key(
            "name",
            "What the remedy is called in results, such as `the angle on top`.",
            Holds::Text,
            Required,
        ),
        key(
            "model",
            "Its model file, from the study file's folder; that of today if left out.",
            Holds::Text,
            Optional,
        ),
        key("change", "Paths in the model with what is to stand there.", Holds::Changes, Optional),
        price("price", "Price of parts and work, once.", Required),
        quantity(
            "downtime",
            "Time for which the vehicle stands, once.",
            (Kind::Time, Bounds::NonNegative),
            Optional,
        ),
        key(
            "downtime_price",
            "What such time costs, such as `95 USD/h`; needed with `downtime`.",
            Holds::Price { per: Some(Kind::Time) },
            Optional,
        ),
        price("inspection", "What its inspections cost in a year.", Optional),
    ],
};

static FLEET: TableSpec = TableSpec {
    name: "fleet",
    meaning: "The vehicles and how they are used.",
    keys: &[
        key("vehicles", "Vehicles that get the remedy.", Holds::Count { min: 1, max: MOST }, Required),
        key("axles", "Axles of each that get it.", Holds::Count { min: 1, max: MOST }, Required),
        quantity(
            "distance",
            "Distance of a vehicle in a year, such as `120000 km`.",
            (Kind::Length, Bounds::Positive),
            Required,
        ),
        key(
            "years",
            "Years that the vehicles are held.",
            Holds::Number { bounds: Bounds::Between(0.1, LONGEST) },
            Required,
        ),
        quantity(
            "discount_rate",
            "Discount rate of a year, such as `8 %`; the real one where prices are those of today.",
            (Kind::Ratio, Bounds::Between(0.0, DEAREST)),
            Required,
        ),
    ],
};

static TIRES: TableSpec = TableSpec {
    name: "tires",
    meaning: "What tires cost, and when they come off.",
    keys: &[
        price("new", "Price of a new tire.", Required),
        price("retread", "Price of a retread; needed with `retreads`.", Optional),
        key("retreads", "Retreads of a casing.", Holds::Count { min: 0, max: MOST_RETREADS }, Default("0")),
        price("casing", "What a casing is worth when it goes.", Optional),
        price("fitting", "What it costs to take a tire off and put the next one on.", Optional),
        quantity(
            "removal_distance",
            "Distance at which tires come off today, over all positions of the axle, new and retreaded alike.",
            (Kind::Length, Bounds::Positive),
            Required,
        ),
        key(
            "removed_by",
            "What decides that tires come off; the shares come to 1.",
            Holds::Table(&REMOVED_BY),
            Required,
        ),
        key(
            "rotation",
            "What becomes of tires while they are on the axle.",
            Holds::Choice(&ROTATIONS),
            Default("\"none\""),
        ),
        key(
            "wear_effect",
            "Change of wear by the remedy over that of the model: 1 for as the model says, 0 for none.",
            Holds::Number { bounds: Bounds::Between(0.0, STRONGEST) },
            Default("1"),
        ),
    ],
};

static REMOVED_BY: TableSpec = TableSpec {
    name: "removed_by",
    meaning: "Shares of removals by what decides them; they come to 1.",
    keys: &[
        share(
            "shoulder_wear",
            "A shoulder, or another rib, is worn before the rest: the remedy moves these.",
        ),
        share("even_wear", "The whole tread is worn: these stay."),
        share("other", "Damage, age and all else: these stay."),
    ],
};

const ROTATIONS: [Word; 2] = [
    Word { word: "none", meaning: "each stays where it was fitted" },
    Word { word: "positions", meaning: "each runs the same distance at every position of the axle" },
];

static MASS: TableSpec = TableSpec {
    name: "mass",
    meaning: "What a kilogram more costs.",
    keys: &[
        key(
            "payload",
            "Payload that is lost, for each kilogram and year, such as `0.80 USD/kg`.",
            Holds::Price { per: Some(Kind::Mass) },
            Optional,
        ),
        key(
            "fuel",
            "Fuel, for each kilogram and 100 km, such as `0.0006 USD/kg`.",
            Holds::Price { per: Some(Kind::Mass) },
            Optional,
        ),
    ],
};

static RANGE: TableSpec = TableSpec {
    name: "range",
    meaning: "How an input is distributed; inputs are drawn independently of one another.",
    keys: &[
        key(
            "path",
            "Path of the input in this file, such as `tires.removal_distance`.",
            Holds::Text,
            Required,
        ),
        key(
            "distribution",
            "How it is distributed; all values from `from` to `to` alike if left out.",
            Holds::Choice(&DISTRIBUTIONS),
            Optional,
        ),
        key("from", "The least value.", Holds::Text, Optional),
        key("to", "The greatest value.", Holds::Text, Optional),
        key("likely", "The likeliest value of a triangular distribution.", Holds::Text, Optional),
        key("mean", "Mean of a normal or lognormal value itself.", Holds::Text, Optional),
        key("deviation", "Standard deviation of a normal or lognormal value itself.", Holds::Text, Optional),
    ],
};

static DRAW: TableSpec = TableSpec {
    name: "draws",
    meaning: "How many draws from the ranges are made, and which.",
    keys: &[
        key("count", "How many.", Holds::Count { min: DRAWS[0], max: DRAWS[1] }, Default("100000")),
        key(
            "seed",
            "Which of all sets of draws; another number is another set, the same number the same one everywhere.",
            Holds::Count { min: 0, max: u32::MAX },
            Default("1"),
        ),
    ],
};
