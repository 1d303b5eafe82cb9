//! The keys of a study file that say what is varied, and how the values come together.

use axlebow_model::{Holds, Presence, TableSpec, Word, key};

use crate::ask::MOST_DESIGNS;

use Presence::{Default, Optional, Required};

pub(crate) static SAMPLE: TableSpec = TableSpec {
    name: "sample",
    meaning: "How the values of varied keys come together; in every combination if left out.",
    keys: &[
        key("method", "How values come together.", Holds::Choice(&METHODS), Required),
        key(
            "designs",
            "How many designs of each variant; not for grid and list, which have as many as there are values.",
            Holds::Count { min: 1, max: u32::MAX },
            Optional,
        ),
        key(
            "seed",
            "Which of all samples; another number is another sample, the same number the same one everywhere.",
            Holds::Count { min: 0, max: u32::MAX },
            Default("1"),
        ),
    ],
};

const METHODS: [Word; 5] = [
    Word { word: "grid", meaning: "every combination" },
    Word { word: "list", meaning: "first with first, second with second, and so on" },
    Word {
        word: "latin-hypercube",
        meaning: "every key in as many strata as there are designs, one in each",
    },
    Word { word: "sobol", meaning: "Sobol's sequence, scrambled: fills the space most evenly" },
    Word { word: "random", meaning: "each by itself at random" },
];

pub(crate) static VARY: TableSpec = TableSpec {
    name: "vary",
    meaning: "A key, or several, and the values taken: `from`, `to` and `points`, or `values`, or a `distribution`; or \
              choices that each set several keys.",
    keys: &[
        key(
            "path",
            "Path of the key in the model, such as `tube.wall`, or in every ride's road, such as `road.speed`.",
            Holds::Text,
            Optional,
        ),
        key("paths", "Several keys that take the same value.", Holds::Texts, Optional),
        key(
            "name",
            "What expressions and results call it; the last word of the path if left out.",
            Holds::Text,
            Optional,
        ),
        key("from", "The first or least value.", Holds::Text, Optional),
        key("to", "The last or greatest value.", Holds::Text, Optional),
        key(
            "points",
            "How many values from `from` to `to`, both included.",
            Holds::Count { min: 2, max: MOST_DESIGNS },
            Optional,
        ),
        key("spacing", "How they are spaced; evenly if left out.", Holds::Choice(&SPACINGS), Optional),
        key(
            "values",
            "The values one by one: of a number, of words, or `true` and `false`.",
            Holds::Values,
            Optional,
        ),
        key(
            "distribution",
            "How the value is distributed, where designs are sampled.",
            Holds::Choice(&DISTRIBUTIONS),
            Optional,
        ),
        key("mean", "Mean of a normal or lognormal value itself.", Holds::Text, Optional),
        key("deviation", "Standard deviation of a normal or lognormal value itself.", Holds::Text, Optional),
        key("likely", "The likeliest value of a triangular distribution.", Holds::Text, Optional),
        key("choice", "One entry of a catalogue, in place of a path.", Holds::Tables(&CHOICE), Optional),
    ],
};

const SPACINGS: [Word; 2] =
    [Word { word: "even", meaning: "equal steps" }, Word { word: "log", meaning: "equal ratios" }];

pub(crate) const DISTRIBUTIONS: [Word; 4] = [
    Word { word: "normal", meaning: "by `mean` and `deviation`, cut off at `from` and `to` if given" },
    Word {
        word: "lognormal",
        meaning: "the logarithm normal; by `mean` and `deviation` of the value itself",
    },
    Word { word: "uniform", meaning: "all values from `from` to `to` alike" },
    Word { word: "triangular", meaning: "rising from `from` to `likely`, falling to `to`" },
];

static CHOICE: TableSpec = TableSpec {
    name: "choice",
    meaning: "One entry of a catalogue: the keys that it sets.",
    keys: &[
        key("name", "What the choice is called in results.", Holds::Text, Required),
        key("change", "Paths in the model or road with what is to stand there.", Holds::Changes, Required),
    ],
};

pub(crate) static LINK: TableSpec = TableSpec {
    name: "link",
    meaning: "A key that follows the varied ones.",
    keys: &[
        key("path", "Path of the key that follows.", Holds::Text, Optional),
        key("paths", "Several keys that follow alike.", Holds::Texts, Optional),
        key(
            "as",
            "Expression of the names of varied keys, in SI, such as `2 * wall + 0.1`.",
            Holds::Text,
            Required,
        ),
    ],
};
