//! Results of strength checks.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_strength::Bound;
use axlebow_units::Kind;

use crate::{NotMade, PlacedCheck, StrengthCase, StrengthOutcome, WeldBand, WeldRemedy, WeldUse};

impl Record for StrengthOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "safety-factor",
            "What every strength is divided by: yield, weld, clamp crush, local buckling.",
            &Own(|run: &Self| run.ask.safety_factor),
        ),
        part(
            "rules",
            "`aisc` or `en`: whose limits are used where codes differ.",
            &Text(|run: &Self| run.ask.rules.word()),
        ),
        number(
            "electrode-strength",
            Kind::Stress,
            "Tensile strength of the weld metal.",
            &Own(|run: &Self| run.ask.electrode_strength),
        ),
        part(
            "haz-strength-factor",
            "HAZ strength factor, strength beside a weld over that of the steel; null where it is assumed.",
            &Own(|run: &Self| run.ask.haz_strength_factor),
        ),
        part("holds", "False when a binding check fails.", &Own(|run: &Self| run.holds())),
        part("cases", "Each load case.", &Part(|run: &Self| &run.cases)),
        part("walls", "Section classification of each wall.", &Part(|run: &Self| &run.walls)),
        part(
            "bearings",
            "Life of the wheel bearings, running straight under the rated load.",
            &Part(|run: &Self| &run.bearings),
        ),
        part(
            "not-made",
            "Checks that could not be made; none of them is a pass.",
            &Part(|run: &Self| &run.not_made),
        ),
        part(
            "preheat",
            "What each steel that is welded says about preheat.",
            &Part(|run: &Self| &run.preheat),
        ),
        part(
            "assumptions",
            "What stands in for what the file does not say about strength.",
            &Part(|run: &Self| &run.assumptions),
        ),
    ];
}

impl Record for StrengthCase {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name.", &Text(|case: &Self| &case.name)),
        part("description", "What acts.", &Text(|case: &Self| &case.description)),
        part("checks", "Every check, from left to right.", &Part(|case: &Self| &case.checks)),
    ];
}

impl Record for NotMade {
    const FIELDS: &'static [Field<Self>] = &[
        part("place", "Station or part.", &Text(|own: &Self| &own.place)),
        part("what", "What would be checked.", &Text(|own: &Self| &own.what)),
        part("reason", "Why it was not.", &Text(|own: &Self| &own.reason)),
        part("advice", "What to do so that it is.", &Text(|own: &Self| &own.advice)),
    ];
}

impl Record for PlacedCheck {
    const FIELDS: &'static [Field<Self>] = &[
        part("place", "Station or part.", &Text(|at: &Self| &at.place)),
        part(
            "part",
            "`tube`, `housing`, `spindle`, `spindle fillet`, `stiffener`, `weld`, `seat wall` or `wheel bearing`.",
            &Text(|at: &Self| at.part.word()),
        ),
        number(
            "y",
            Kind::Length,
            "Position, positive to the left; null for a part as a whole.",
            &Part(|at: &Self| &at.y),
        ),
        part("what", "What is checked.", &Text(|at: &Self| &at.check.what)),
        part("value", "The value, in `unit`.", &Own(|at: &Self| at.check.value)),
        part("limit", "Its limit, in `unit`.", &Own(|at: &Self| at.check.limit)),
        part(
            "unit",
            "SI unit of value and limit; empty for a plain number.",
            &Text(|at: &Self| at.check.kind.si()),
        ),
        part("bound", "`at-most` or `at-least`.", &Text(|at: &Self| bound(at.check.bound))),
        part(
            "utilization",
            "How much of the limit is used; 1 at the limit.",
            &Own(|at: &Self| at.check.utilization()),
        ),
        part("verdict", "`passes`, `watch` or `fails`.", &Text(|at: &Self| at.check.verdict().word())),
        part("source", "Clause and edition.", &Text(|at: &Self| at.check.source)),
        part("advice", "What to do where the limit is passed.", &Text(|at: &Self| at.check.advice)),
    ];
}

fn bound(bound: Bound) -> &'static str {
    match bound {
        Bound::AtMost => "at-most",
        Bound::AtLeast => "at-least",
    }
}

/// What the weld of a stiffener uses of its strength over the band of its stiffness, the worst of all cases.
impl Record for WeldBand {
    const FIELDS: &'static [Field<Self>] = &[
        part("stiffener", "Name of the stiffener.", &Text(|band: &Self| &band.stiffener)),
        part(
            "soft",
            "With walls that give as wide plates: the end that is safe for the camber.",
            &Part(|band: &Self| &band.soft),
        ),
        part("modeled", "As the model has it.", &Part(|band: &Self| &band.modeled)),
        part(
            "stiff",
            "Between rigid walls: the end that is safe for the weld.",
            &Part(|band: &Self| &band.stiff),
        ),
        number(
            "passing-run-out",
            Kind::Length,
            "Length over which each end, tapered, would let it pass as modeled; null where none was found or is needed.",
            &Own(|band: &Self| {
                passing(
                    band,
                    |remedy| if let WeldRemedy::RunOut(length) = remedy { Some(*length) } else { None },
                )
            }),
        ),
        number(
            "passing-leg",
            Kind::Length,
            "Leg that would let it pass; null where none was found or is needed.",
            &Own(|band: &Self| {
                passing(band, |remedy| if let WeldRemedy::Leg(leg) = remedy { Some(*leg) } else { None })
            }),
        ),
        number(
            "passing-length",
            Kind::Length,
            "Length of the stiffener that would let it pass; null where none was found or is needed.",
            &Own(|band: &Self| {
                passing(
                    band,
                    |remedy| if let WeldRemedy::Length(length) = remedy { Some(*length) } else { None },
                )
            }),
        ),
    ];
}

fn passing(band: &WeldBand, size: fn(&WeldRemedy) -> Option<f64>) -> Option<f64> {
    band.remedies.iter().find_map(size)
}

impl Record for WeldUse {
    const FIELDS: &'static [Field<Self>] = &[
        in_unit("stiffness", "N/m2", "Stiffness per length of weld.", &Own(|at: &Self| at.stiffness)),
        part(
            "utilization",
            "Greatest share of a strength that its throat or the steel beside it uses.",
            &Own(|at: &Self| at.used),
        ),
        part("verdict", "`passes` or `fails`.", &Text(|at: &Self| at.verdict.word())),
    ];
}
