//! The keys of a study file.

use axlebow_model::{Bounds, Holds, Presence, TableSpec, Word, key, quantity};
use axlebow_units::Kind;

use super::option_keys::{DERIVED, LIMIT, SEARCH, UNCERTAINTY};
use super::vary_keys::{LINK, SAMPLE, VARY};

use Presence::{Default, Optional, Required};

/// A whole study file.
pub static STUDY: TableSpec = TableSpec {
    name: "study file",
    meaning: "What is varied in a model, and what is asked of the designs.",
    keys: &[
        key("name", "What the study is called in results.", Holds::Text, Required),
        key("kind", "What the study does.", Holds::Choice(&KINDS), Required),
        key("note", "What the reader of the results must know.", Holds::Text, Optional),
        key(
            "model",
            "The model file, from the study file's folder; not needed where every variant has its own.",
            Holds::Text,
            Optional,
        ),
        key("case", "The load case that is run.", Holds::Text, Required),
        key(
            "strength_cases",
            "Load cases that `utilization`, `rating` and limits on them cover, such as `rated-load`; all of the model if left out.",
            Holds::Texts,
            Optional,
        ),
        key(
            "duty",
            "The duty file that `years-to-crack`, `yearly-damage` and `bearing-years` are of, from the study file's folder.",
            Holds::Text,
            Optional,
        ),
        key(
            "variant",
            "A variant of the model; the model itself if there is none.",
            Holds::Tables(&VARIANT),
            Optional,
        ),
        key(
            "baseline",
            "The variant that the others are compared with, side by side; the first if left out.",
            Holds::Text,
            Optional,
        ),
        key(
            "vary",
            "A key that is varied; the last one varies fastest; a sweep and an uncertainty have one or more.",
            Holds::Tables(&VARY),
            Optional,
        ),
        key("sample", "How the values of varied keys come together.", Holds::Table(&SAMPLE), Optional),
        key("link", "A key that follows the varied ones.", Holds::Tables(&LINK), Optional),
        key("derived", "A further result, by an expression.", Holds::Tables(&DERIVED), Optional),
        key("limit", "What a result may be.", Holds::Tables(&LIMIT), Optional),
        key("search", "What a search looks for.", Holds::Table(&SEARCH), Optional),
        key(
            "uncertainty",
            "What an uncertainty study says of each result.",
            Holds::Table(&UNCERTAINTY),
            Default("{}"),
        ),
        key("ride", "A road that every design is driven over.", Holds::Tables(&RIDE), Optional),
        key(
            "show",
            "Results that tables and pictures show, in this order, such as `camber-peak-to-peak`; JSON and CSV have all.",
            Holds::Texts,
            Optional,
        ),
        key(
            "rank_by",
            "Result that the designs are ranked by, largest first, such as `camber-removed-per-mass`.",
            Holds::Text,
            Optional,
        ),
        key(
            "seat_walls",
            "How shells of the walls at seats are had, where a model asks for them; solved if left out.",
            Holds::Choice(&SEAT_WALLS),
            Optional,
        ),
        key(
            "constant_mass",
            "Axle masses at which the variants are compared with one another.",
            Holds::Table(&CONSTANT_MASS),
            Optional,
        ),
    ],
};

const KINDS: [Word; 5] = [
    Word { word: "sweep", meaning: "every varied value with every variant" },
    Word { word: "side-by-side", meaning: "variants compared with a baseline" },
    Word { word: "search", meaning: "the best design within the limits" },
    Word { word: "uncertainty", meaning: "how results scatter when varied values do" },
    Word { word: "payback", meaning: "whether a remedy pays; a file of keys of its own" },
];

const SEAT_WALLS: [Word; 2] = [
    Word { word: "solved", meaning: "each by itself" },
    Word {
        word: "table",
        meaning: "interpolated from a table that is made once, kept, and used where it reaches",
    },
];

static VARIANT: TableSpec = TableSpec {
    name: "variant",
    meaning: "The model, or one of its own, with some keys changed.",
    keys: &[
        key("name", "What the variant is called in results.", Holds::Text, Required),
        key(
            "model",
            "The variant's own model file, from the study file's folder; that of the study if left out.",
            Holds::Text,
            Optional,
        ),
        key("change", "Paths in the model with what is to stand there.", Holds::Changes, Optional),
    ],
};

static RIDE: TableSpec = TableSpec {
    name: "ride",
    meaning: "A road that every design is driven over.",
    keys: &[
        key(
            "road",
            "The road file, from the study file's folder, or an event by its name, such as `pothole`.",
            Holds::Text,
            Required,
        ),
        key(
            "name",
            "What the ride is called in results; the road file's name if left out.",
            Holds::Text,
            Optional,
        ),
        quantity(
            "speed",
            "Speed; that of the road file if left out.",
            (Kind::Speed, Bounds::Positive),
            Optional,
        ),
        key("load", "What the axle carries.", Holds::Choice(&LOADS), Default("\"rated\"")),
        key("basis", "The motions that it is solved in.", Holds::Choice(&BASES), Default("\"full\"")),
        key("change", "Paths in the road file with what is to stand there.", Holds::Changes, Optional),
    ],
};

const LOADS: [Word; 2] = [
    Word { word: "rated", meaning: "the model's `rated_load`" },
    Word { word: "unladen", meaning: "the model's `unladen_load`" },
];

const BASES: [Word; 2] = [
    Word { word: "full", meaning: "all degrees of freedom" },
    Word {
        word: "reduced",
        meaning: "the lower natural modes with static answers: faster, and nearly the same",
    },
];

static CONSTANT_MASS: TableSpec = TableSpec {
    name: "constant_mass",
    meaning: "Axle masses at which the variants are compared with one another.",
    keys: &[key("masses", "Masses of the bare axle.", Holds::Texts, Required)],
};
