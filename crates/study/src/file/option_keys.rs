//! The keys of a study file that say what more is asked of the results.

use axlebow_model::{Bounds, Holds, Presence, TableSpec, key, quantity};
use axlebow_units::Kind;

use Presence::{Default, Optional, Required};

pub(crate) static DERIVED: TableSpec = TableSpec {
    name: "derived",
    meaning: "A further result, by an expression of results and varied keys.",
    keys: &[
        key("name", "What it is called, such as `camber-per-mass`.", Holds::Text, Required),
        key(
            "as",
            "Expression in SI of results, with `_` for `-`, and varied keys, such as `camber_change / axle_mass`.",
            Holds::Text,
            Required,
        ),
        key(
            "unit",
            "A unit of what it measures, such as `deg/kg`; a plain number if left out.",
            Holds::Text,
            Optional,
        ),
    ],
};

pub(crate) static LIMIT: TableSpec = TableSpec {
    name: "limit",
    meaning: "What a result may be; of a ride, in every ride.",
    keys: &[
        key("of", "The result, such as `camber-change`, or a derived one.", Holds::Text, Required),
        key("least", "Least that is accepted.", Holds::Text, Optional),
        key("most", "Most that is accepted.", Holds::Text, Optional),
        key("within", "Most that its magnitude may be.", Holds::Text, Optional),
    ],
};

pub(crate) static UNCERTAINTY: TableSpec = TableSpec {
    name: "uncertainty",
    meaning: "What an uncertainty study says of each result.",
    keys: &[
        key(
            "percentiles",
            "Percentages of designs below the values that are told.",
            Holds::Numbers { bounds: Bounds::Between(0.01, 99.99) },
            Default("[5, 50, 95]"),
        ),
        quantity(
            "confidence",
            "Coverage of the intervals.",
            (Kind::Ratio, Bounds::Between(0.5, 0.9999)),
            Default("\"95 %\""),
        ),
        key(
            "indices",
            "Whether the variance of each result is split among the varied keys; N (d + 2) designs are run for N of \
             the sample and d varied keys.",
            Holds::Flag,
            Default("false"),
        ),
    ],
};

pub(crate) static SEARCH: TableSpec = TableSpec {
    name: "search",
    meaning: "What a search looks for.",
    keys: &[
        key(
            "least",
            "The result that is to be least, such as `axle-mass`, or a derived one.",
            Holds::Text,
            Optional,
        ),
        key("most", "The result that is to be most; in place of `least`.", Holds::Text, Optional),
        key(
            "against",
            "One or two results that are traded against it; the less their magnitude the better.",
            Holds::Texts,
            Optional,
        ),
        key(
            "starts",
            "Places from which continuous values are looked for.",
            Holds::Count { min: 1, max: 1000 },
            Default("8"),
        ),
        key(
            "seed",
            "Which of all sets of such places.",
            Holds::Count { min: 0, max: u32::MAX },
            Default("1"),
        ),
    ],
};
