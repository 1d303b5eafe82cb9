//! The document of remedies.

use axlebow_results::{Field, Own, Part, Record, Text, json, part, schema};
use axlebow_strength::WELDING_CAUTIONS;
use axlebow_study::{RemediesOutcome, Standing, State, Tried};

use super::frame::{Contents, Frame};
use crate::ModelCard;
use crate::answer::remedies_answer;
use crate::words::remedies::{done_by, name, needs_and_risks, welds};

const REMEDIES: Frame =
    Frame { tag: "axlebow/remedies/1", meaning: "Remedies tried on an axle, the best first." };

/// A remedy with its place in the ranking.
struct Ranked {
    tried: Tried,
    standing: Standing,
    taken_off: Option<f64>,
}

impl Record for Ranked {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "name",
            "What it is called; `+` between the two of a pair.",
            &Own(|own: &Self| name(&own.tried.remedy)),
        ),
        part(
            "done-by",
            "`shop`, `wheels`, `weld`, `another axle`, or `own` for a remedy of the user's own.",
            &Own(|own: &Self| done_by(&own.tried.remedy)),
        ),
        part(
            "checks",
            "`holds`; `still-fails` where a check fails that fails without it too, no worse; `refused` where a check fails by it, or a tire \
             meets its seat.",
            &Text(|own: &Self| own.standing.word()),
        ),
        part(
            "excess-off",
            "Share of today's shoulder wear above that of upright tires that it takes off; null where there is none.",
            &Own(|own: &Self| own.taken_off),
        ),
        part(
            "worth-of-an-axle",
            "What it is worth for each axle over the years held, discounted, before anything is paid for it, in the currency of `money`: its \
             price, downtime and inspections may cost so much; null without prices.",
            &Own(|own: &Self| own.tried.worth),
        ),
        part("state", "The axle with it.", &Part::<Self, State>(|own| &own.tried.state)),
        part("changes", "What it changes in the model.", &Part(|own: &Self| &own.tried.changes)),
        part(
            "needs-and-risks",
            "What it needs and what it risks, a sentence each.",
            &Own(|own: &Self| needs_and_risks(&own.tried.remedy)),
        ),
    ];
}

/// A remedy that could not be tried.
struct LeftOut {
    name: String,
    why: String,
}

impl Record for LeftOut {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "What it is called.", &Text(|own: &Self| &own.name)),
        part("why", "Why it cannot be.", &Text(|own: &Self| &own.why)),
    ];
}

/// All that was tried and all that was not.
struct Ranking {
    ranked: Vec<Ranked>,
    impossible: Vec<LeftOut>,
    not_needed: Vec<String>,
}

impl Record for Ranking {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "remedies",
            "The best first: those with which all checks hold, those with which one still fails, those that are refused; last those that do not \
             help.",
            &Part(|own: &Self| &own.ranked),
        ),
        part("impossible", "Remedies that this axle cannot have.", &Part(|own: &Self| &own.impossible)),
        part(
            "not-needed",
            "Standard remedies that this axle does not need or has nothing of the kind of.",
            &Part(|own: &Self| &own.not_needed),
        ),
    ];
}

impl Ranking {
    fn of(outcome: &RemediesOutcome) -> Self {
        let ranked = outcome.helping.iter().chain(&outcome.idle).map(|tried| Ranked {
            standing: tried.standing(&outcome.base),
            taken_off: outcome.taken_off(tried),
            tried: tried.clone(),
        });
        let left_out =
            |(remedy, why): &(_, axlebow_study::WhyNot)| LeftOut { name: name(remedy), why: why.to_string() };
        Ranking {
            ranked: ranked.collect(),
            impossible: outcome.impossible.iter().map(left_out).collect(),
            not_needed: outcome.not_needed.iter().map(name).collect(),
        }
    }
}

/// The document of remedies.
pub fn remedies_document(outcome: &RemediesOutcome, card: &ModelCard) -> String {
    let welded = outcome.helping.iter().chain(&outcome.idle).any(|tried| welds(&tried.remedy));
    REMEDIES.text(Contents::<axlebow_axle::Warning> {
        card: Some(card),
        answer: remedies_answer(outcome, card),
        results: vec![json(outcome), json(&Ranking::of(outcome))],
        warnings: &[],
        cautions: if welded { WELDING_CAUTIONS.to_vec() } else { Vec::new() },
    })
}

/// The JSON Schema of the document of remedies.
pub fn remedies_schema() -> String {
    REMEDIES.schema::<axlebow_axle::Warning>(&[schema::<RemediesOutcome>(), schema::<Ranking>()])
}
