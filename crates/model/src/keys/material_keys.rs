//! The keys of a material.

use axlebow_units::Kind;

use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, key, quantity};

use Bounds::{Between, Positive};
use Presence::{Default, Optional, Required};

/// A material of tube, housing, spindle or stiffener.
pub(crate) static MATERIAL: TableSpec = TableSpec {
    name: "material",
    meaning: "A linear elastic material.",
    keys: &[
        key("name", "What it is called.", Holds::Text, Default("\"steel\"")),
        quantity("elastic_modulus", "Young's modulus.", (Kind::Stress, Positive), Default("\"200 GPa\"")),
        quantity("poisson_ratio", "Poisson's ratio.", (Kind::Ratio, Between(0.0, 0.5)), Default("0.3")),
        quantity("density", "Mass per volume.", (Kind::Density, Positive), Default("\"7850 kg/m3\"")),
        quantity(
            "loss_factor",
            "Energy that a cycle turns into heat over 2 pi times the greatest that is stored, for rides, modes and response \
             (default: unlined welded steel stacks, logarithmic decrement 0.012, EN 1991-1-4:2005, table F.2, from memory).",
            (Kind::Ratio, Between(0.0, 1.0)),
            Default("0.004"),
        ),
        quantity("yield_strength", "Yield strength.", (Kind::Stress, Positive), Optional),
        quantity(
            "ultimate_strength",
            "Ultimate (tensile) strength; where it is left out, checks of welds go by the yield strength.",
            (Kind::Stress, Positive),
            Optional,
        ),
        key(
            "carbon_equivalent",
            "Carbon equivalent by the formula of the International Institute of Welding, in place of `composition`.",
            Holds::Percent { most: 2.0 },
            Optional,
        ),
        key(
            "composition",
            "What a mill certificate says of the steel.",
            Holds::Table(&COMPOSITION),
            Optional,
        ),
    ],
};

static COMPOSITION: TableSpec = TableSpec {
    name: "composition",
    meaning: "Elements by mass, as on a mill certificate; CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15.",
    keys: &[
        key("carbon", "C.", Holds::Percent { most: 2.0 }, Required),
        key("manganese", "Mn.", Holds::Percent { most: 5.0 }, Required),
        element("chromium", "Cr."),
        element("molybdenum", "Mo."),
        element("vanadium", "V."),
        element("nickel", "Ni."),
        element("copper", "Cu."),
    ],
};

const fn element(key: &'static str, meaning: &'static str) -> KeySpec {
    crate::declare::key(key, meaning, Holds::Percent { most: 5.0 }, Default("\"0 %\""))
}
