//! The keys of a study file.

use axlebow_model::{Holds, Presence, TableSpec, Word, key};

use crate::MOST_DESIGNS;

use Presence::{Optional, Required};

/// A whole study file.
pub static STUDY: TableSpec = TableSpec {
    name: "study file",
    meaning: "What is varied in a model, and what is asked of the designs.",
    keys: &[
        key("name", "What the study is called in results.", Holds::Text, Required),
        key("kind", "What the study does.", Holds::Choice(&KINDS), Required),
        key("note", "What the reader of the results must know.", Holds::Text, Optional),
        key("model", "The model file, from the study file's folder.", Holds::Text, Required),
        key("case", "The load case that is run.", Holds::Text, Required),
        key(
            "variant",
            "A variant of the model; the model itself if there is none.",
            Holds::Tables(&VARIANT),
            Optional,
        ),
        key("vary", "A key that is varied; the last one varies fastest.", Holds::Tables(&VARY), Required),
        key(
            "constant_mass",
            "Axle masses at which the variants are held against one another.",
            Holds::Table(&CONSTANT_MASS),
            Optional,
        ),
    ],
};

const KINDS: [Word; 1] = [Word { word: "sweep", meaning: "every varied value with every variant" }];

static VARIANT: TableSpec = TableSpec {
    name: "variant",
    meaning: "The model with some keys changed.",
    keys: &[
        key("name", "What the variant is called in results.", Holds::Text, Required),
        key("change", "Paths in the model with what is to stand there.", Holds::Changes, Optional),
    ],
};

static VARY: TableSpec = TableSpec {
    name: "vary",
    meaning: "A key of the model and the values that it takes: `from`, `to` and `points`, or `values`.",
    keys: &[
        key("path", "Path of the key in the model, such as `tube.wall`.", Holds::Text, Required),
        key("from", "The first value.", Holds::Text, Optional),
        key("to", "The last value.", Holds::Text, Optional),
        key(
            "points",
            "How many values, evenly spaced, both ends included.",
            Holds::Count { min: 2, max: MOST_DESIGNS },
            Optional,
        ),
        key("values", "The values one by one.", Holds::Texts, Optional),
    ],
};

static CONSTANT_MASS: TableSpec = TableSpec {
    name: "constant_mass",
    meaning: "Axle masses at which the variants are held against one another.",
    keys: &[key("masses", "Masses of the bare axle.", Holds::Texts, Required)],
};
