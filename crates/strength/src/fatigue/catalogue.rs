//! The details of the codes that meet on an axle, from memory.

use super::{Detail, DetailRules, DetailStress};

/// The details of the codes that meet on an axle; categories from memory, to be looked up before a report goes out.
pub const DETAILS: &[Detail] = &[
    Detail {
        welded: false,
        ..en("plain", "plain steel without weld, by its local stress where it is notched", 160.0, "8.1 (1)")
    },
    en(
        "longitudinal-automatic",
        "continuous automatic longitudinal fillet, no stop or start",
        125.0,
        "8.2 (1), (2)",
    ),
    en("longitudinal-automatic-stops", "the same with stops and starts", 112.0, "8.2 (3)"),
    en("longitudinal-manual", "continuous manual longitudinal fillet", 100.0, "8.2 (5)"),
    en("longitudinal-stitches", "longitudinal fillet in stitches", 80.0, "8.2 (8)"),
    en("longitudinal-cope-hole", "longitudinal fillet with cope holes", 71.0, "8.2 (9)"),
    en("attachment-50", "longitudinal attachment to 50 mm long", 80.0, "8.4 (1)"),
    en("attachment-80", "longitudinal attachment to 80 mm long", 71.0, "8.4 (1)"),
    en("attachment-100", "longitudinal attachment to 100 mm long", 63.0, "8.4 (1)"),
    en("attachment-long", "longitudinal attachment longer than 100 mm", 56.0, "8.4 (1)"),
    en(
        "attachment-tapered",
        "longitudinal attachment longer than 100 mm, ends tapered below 45°",
        71.0,
        "8.4 (2)",
    ),
    en("gusset-radius-third", "gusset on an edge, radius a third of its length or 150 mm", 90.0, "8.4 (4)"),
    en("gusset-radius-sixth", "gusset on an edge, radius a sixth of its length or more", 71.0, "8.4 (4)"),
    en("gusset-radius-small", "gusset on an edge, radius below a sixth of its length", 50.0, "8.4 (4)"),
    en("gusset-square", "gusset on an edge, no radius", 40.0, "8.4 (5)"),
    en("transverse-50", "transverse attachment to 50 mm long", 80.0, "8.4 (6)-(8)"),
    en("transverse-80", "transverse attachment 50 to 80 mm long", 71.0, "8.4 (6)-(8)"),
    en("cover-thin-20", "end of a cover plate thinner than the part, part to 20 mm", 56.0, "8.5 (6)"),
    en("cover-thin-30", "end of a cover plate thinner than the part, part 20 to 30 mm", 50.0, "8.5 (6)"),
    en("cover-thin-50", "end of a cover plate thinner than the part, part 30 to 50 mm", 45.0, "8.5 (6)"),
    en("cover-thin-over", "end of a cover plate thinner than the part, part over 50 mm", 40.0, "8.5 (6)"),
    en(
        "cover-thick-20",
        "end of a cover plate as thick as the part or thicker, part to 20 mm",
        50.0,
        "8.5 (6)",
    ),
    en(
        "cover-thick-30",
        "end of a cover plate as thick as the part or thicker, part 20 to 30 mm",
        45.0,
        "8.5 (6)",
    ),
    en(
        "cover-thick-50",
        "end of a cover plate as thick as the part or thicker, part 30 to 50 mm",
        40.0,
        "8.5 (6)",
    ),
    en(
        "cover-thick-over",
        "end of a cover plate as thick as the part or thicker, part over 50 mm",
        36.0,
        "8.5 (6)",
    ),
    Detail {
        stress: DetailStress::Shear,
        ..en("throat-shear", "throat of a continuous longitudinal fillet in shear flow", 80.0, "8.5 (8)")
    },
    Detail {
        stress: DetailStress::Throat,
        ..en("root", "root of a load-carrying fillet or of partial penetration", 36.0, "8.5 (3)")
    },
    en("hot-spot", "toe of a fillet that carries no load, by the hot-spot stress", 100.0, "B.1 (4), (5)"),
    en("hot-spot-loaded", "toe of a fillet that carries load, by the hot-spot stress", 90.0, "B.1 (7)"),
    iiw("iiw-gusset-50", "longitudinal gusset to 50 mm long", 80.0),
    iiw("iiw-gusset-150", "longitudinal gusset to 150 mm long", 71.0),
    iiw("iiw-gusset-300", "longitudinal gusset to 300 mm long", 63.0),
    iiw("iiw-gusset-long", "longitudinal gusset longer than 300 mm", 50.0),
    iiw("iiw-transverse", "transverse attachment that carries no load, as welded", 80.0),
    iiw("iiw-transverse-ground", "transverse attachment that carries no load, toes ground", 100.0),
    iiw("iiw-cover-56", "end of a cover plate, best proportions", 56.0),
    iiw("iiw-cover-50", "end of a cover plate, middling proportions", 50.0),
    iiw("iiw-cover-45", "end of a cover plate, worst proportions", 45.0),
    iiw("iiw-longitudinal-automatic", "continuous automatic longitudinal fillet", 100.0),
    iiw("iiw-longitudinal-manual", "continuous manual longitudinal fillet", 90.0),
];

/// A detail of EN 1993-1-9 by its category in MPa, driven by normal stress.
const fn en(name: &'static str, words: &'static str, category: f64, table: &'static str) -> Detail {
    let stress = DetailStress::Normal;
    Detail { name, words, category: category * 1e6, stress, rules: DetailRules::En, table, welded: true }
}

/// A detail of the International Institute of Welding by its class in MPa, driven by normal stress.
const fn iiw(name: &'static str, words: &'static str, class: f64) -> Detail {
    Detail { rules: DetailRules::Iiw, ..en(name, words, class, "3.1-3.3") }
}
