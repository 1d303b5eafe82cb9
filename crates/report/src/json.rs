//! Result documents as JSON: SI units named in the keys, one frame for all, results from the catalog.
//!
//! Each document has the same bytes for the same outcome. A number that is not finite is written as `null`.

mod beam;
mod derived;
mod drawing;
mod explain;
mod frame;
mod remedies;
mod search;
mod section;
mod study;
mod study_row;
mod study_summary;
mod textbook;
mod uncertainty;

use axlebow_axle::tread::Cups;
use axlebow_axle::{
    BasisComparison, FlexOutcome, LifeOutcome, ModesOutcome, ResponseOutcome, RideOutcome, StepRefinement,
    StrengthOutcome, TireOutcome, TireRideOutcome, Warning, WeldBand,
};
use axlebow_results::{Field, Part, Record, Text, json, part, schema};
use axlebow_strength::{CLAMPING_CAUTIONS, WELDING_CAUTIONS};
use axlebow_study::{
    CausesOutcome, CompatibilityOutcome, DrawnRides, FitOutcome, PaybackOutcome, RatingOutcome,
    SensitivityOutcome,
};

use axlebow_units::UnitSystem;

pub use beam::{beam_document, beam_schema};
pub use drawing::{drawing_document, drawing_schema};
pub use explain::{explain_document, explain_schema};
pub use remedies::{remedies_document, remedies_schema};
pub use search::{search_document, search_schema};
pub use section::{section_document, section_schema};
pub use study::{study_document, study_schema};
pub use textbook::{textbook_document, textbook_schema};

use crate::answer::{
    causes_answer, compatibility_answer, cups_answer, fit_answer, flex_answer, flex_beside_answer,
    growth_answer, life_answer, modes_answer, payback_answer, rating_answer, response_answer, ride_answer,
    sensitivities_answer, strength_answer, tire_answer,
};
use crate::words::causes::{UNLIKE_FLEX, warnings as causes_warnings};
use crate::{AxleGrowth, BesideRide, ModelCard};
use frame::{Contents, Frame};

const FLEX: Frame = Frame { tag: "axlebow/flex/2", meaning: "Result of a static run." };

/// The document of a static run.
pub fn flex_document(outcome: &FlexOutcome, card: &ModelCard) -> String {
    let welded = outcome.cases.iter().any(|case| case.stiffening.is_some());
    FLEX.text(Contents {
        card: Some(card),
        answer: flex_answer(outcome, card),
        results: vec![json(outcome)],
        warnings: &outcome.warnings,
        cautions: if welded { WELDING_CAUTIONS.to_vec() } else { Vec::new() },
    })
}

/// The JSON Schema of the document of a static run.
pub fn flex_schema() -> String {
    FLEX.schema::<Warning>(&[schema::<FlexOutcome>()])
}

const FLEX_AGAINST: Frame =
    Frame { tag: "axlebow/flex-against/1", meaning: "A load case of several axles, the model first." };

/// An axle under the load case.
struct ComparedAxle((String, FlexOutcome));

impl Record for ComparedAxle {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of its model.", &Text(|own: &Self| &own.0.0)),
        part("result", "Its static run.", &Part(|own: &Self| &own.0.1)),
        part("warnings", "Doubts about it.", &Part(|own: &Self| &own.0.1.warnings)),
    ];
}

/// The axles side by side.
struct ComparedAxles(Vec<ComparedAxle>);

impl Record for ComparedAxles {
    const FIELDS: &'static [Field<Self>] = &[part("axles", "The axles.", &Part(|own: &Self| &own.0))];
}

/// The document of a load case of several axles.
///
/// - `axles`: names of the models and their runs, the card's first
pub fn flex_against_document(axles: &[(String, FlexOutcome)], card: &ModelCard) -> String {
    let compared = ComparedAxles(axles.iter().cloned().map(ComparedAxle).collect());
    let answer = flex_beside_answer(axles, card);
    FLEX_AGAINST.text::<Warning>(Contents::new(Some(card), answer, vec![json(&compared)], &[]))
}

/// The JSON Schema of the document of a load case of several axles.
pub fn flex_against_schema() -> String {
    FLEX_AGAINST.schema::<Warning>(&[schema::<ComparedAxles>()])
}

const MODES: Frame = Frame {
    tag: "axlebow/modes/2",
    meaning: "The lowest natural modes of an axle on its tires and suspension.",
};

/// The document of natural modes.
pub fn modes_document(outcome: &ModesOutcome, card: &ModelCard) -> String {
    MODES.text::<Warning>(Contents::new(Some(card), modes_answer(outcome, card), vec![json(outcome)], &[]))
}

/// The JSON Schema of the document of natural modes.
pub fn modes_schema() -> String {
    MODES.schema::<Warning>(&[schema::<ModesOutcome>()])
}

const RIDE: Frame = Frame { tag: "axlebow/ride/2", meaning: "Result of a ride over a road." };

/// What a ride has beside its own results.
struct RideComparisons {
    draws: Option<DrawnRides>,
    comparison: Option<BasisComparison>,
    refinement: Option<StepRefinement>,
}

impl Record for RideComparisons {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "draws",
            "Means over several random roads, of which the rest of this document is about the first; null for one road.",
            &Part(|own: &Self| &own.draws),
        ),
        part(
            "comparison",
            "Results of a reduced basis beside those of the full one; null unless both were asked for.",
            &Part(|own: &Self| &own.comparison),
        ),
        part(
            "refinement",
            "Results by shorter time steps; null unless they were asked for.",
            &Part(|own: &Self| &own.refinement),
        ),
    ];
}

/// The document of a ride. Histories are left out: [`crate::csv::write_ride`] writes them.
pub fn ride_document(outcome: &RideOutcome, beside: BesideRide, card: &ModelCard) -> String {
    let comparisons = RideComparisons {
        draws: beside.draws.copied(),
        comparison: beside.comparison.copied(),
        refinement: beside.refinement.copied(),
    };
    RIDE.text(Contents::new(
        Some(card),
        ride_answer(outcome, beside, card),
        vec![json(outcome), json(&comparisons)],
        &outcome.warnings,
    ))
}

/// The JSON Schema of the document of a ride.
pub fn ride_schema() -> String {
    RIDE.schema::<Warning>(&[schema::<RideOutcome>(), schema::<RideComparisons>()])
}

const RESPONSE: Frame = Frame {
    tag: "axlebow/response/2",
    meaning: "Response of an axle to a harmonic road, and to a random one by its spectrum.",
};

/// The document of a response in the frequency domain.
pub fn response_document(outcome: &ResponseOutcome, card: &ModelCard) -> String {
    RESPONSE.text(Contents::new(
        Some(card),
        response_answer(outcome, card),
        vec![json(outcome)],
        &outcome.warnings,
    ))
}

/// The JSON Schema of the document of a response in the frequency domain.
pub fn response_schema() -> String {
    RESPONSE.schema::<Warning>(&[schema::<ResponseOutcome>()])
}

const STRENGTH: Frame =
    Frame { tag: "axlebow/strength/3", meaning: "Strength checks of an axle under its load cases." };

/// The bands of stiffness of welds, beside the checks.
struct WeldBands(Vec<WeldBand>);

impl Record for WeldBands {
    const FIELDS: &'static [Field<Self>] = &[part(
        "weld-bands",
        "Utilization of each stiffener's weld over the band of its stiffness.",
        &Part(|own: &Self| &own.0),
    )];
}

/// The document of strength checks.
pub fn strength_document(outcome: &StrengthOutcome, bands: &[WeldBand], card: &ModelCard) -> String {
    let clamping: &[&str] = if outcome.clamped { &CLAMPING_CAUTIONS } else { &[] };
    STRENGTH.text(Contents {
        card: Some(card),
        answer: strength_answer(outcome, card),
        results: vec![json(outcome), json(&WeldBands(bands.to_vec()))],
        warnings: &outcome.warnings,
        cautions: [&WELDING_CAUTIONS[..], clamping].concat(),
    })
}

/// The JSON Schema of the document of strength checks.
pub fn strength_schema() -> String {
    STRENGTH.schema::<Warning>(&[schema::<StrengthOutcome>(), schema::<WeldBands>()])
}

const RATING: Frame = Frame {
    tag: "axlebow/rating/1",
    meaning: "The axle load at which the first check binds, over wheel offset.",
};

/// The document of a rating.
pub fn rating_document(outcome: &RatingOutcome, card: &ModelCard) -> String {
    RATING.text(Contents {
        card: Some(card),
        answer: rating_answer(outcome, card),
        results: vec![json(outcome)],
        warnings: &outcome.warnings,
        cautions: WELDING_CAUTIONS.to_vec(),
    })
}

/// The JSON Schema of the document of a rating.
pub fn rating_schema() -> String {
    RATING.schema::<Warning>(&[schema::<RatingOutcome>()])
}

const LIFE: Frame = Frame {
    tag: "axlebow/life/1",
    meaning: "Years to a crack at each detail of an axle and of each wheel bearing under a duty.",
};

/// The document of a life.
pub fn life_document(outcome: &LifeOutcome, card: &ModelCard) -> String {
    LIFE.text(Contents {
        card: Some(card),
        answer: life_answer(outcome, card),
        results: vec![json(outcome)],
        warnings: &outcome.warnings,
        cautions: WELDING_CAUTIONS.to_vec(),
    })
}

/// The JSON Schema of the document of a life.
pub fn life_schema() -> String {
    LIFE.schema::<Warning>(&[schema::<LifeOutcome>()])
}

const TIRE: Frame = Frame { tag: "axlebow/tire-result/2", meaning: "Tire faces of an axle." };

/// Tire faces over a ride, beside those of the load cases.
struct OverRide(Option<TireRideOutcome>);

impl Record for OverRide {
    const FIELDS: &'static [Field<Self>] =
        &[part("ride", "The ride; null where none was driven.", &Part(|own: &Self| &own.0))];
}

/// The document of tire faces, with a ride where one was driven.
pub fn tire_document(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> String {
    TIRE.text(Contents::new(
        Some(card),
        tire_answer(outcome, ride, card),
        vec![json(outcome), json(&OverRide(ride.cloned()))],
        &outcome.warnings,
    ))
}

/// The JSON Schema of the document of tire faces.
pub fn tire_schema() -> String {
    TIRE.schema::<Warning>(&[schema::<TireOutcome>(), schema::<OverRide>()])
}

const TIRE_TABLE: Frame = Frame { tag: "axlebow/tire-table/2", meaning: "Tires on axles." };

/// The document of tires on axles.
///
/// - `card`: whose units the answer speaks in
pub fn compatibility_document(outcome: &CompatibilityOutcome, card: &ModelCard) -> String {
    TIRE_TABLE.text(Contents::new(
        None,
        compatibility_answer(outcome, card),
        vec![json(outcome)],
        &outcome.warnings,
    ))
}

/// The JSON Schema of the document of tires on axles.
pub fn compatibility_schema() -> String {
    TIRE_TABLE.schema::<Warning>(&[schema::<CompatibilityOutcome>()])
}

const GROWTH: Frame = Frame { tag: "axlebow/growth/1", meaning: "Cups that grow on one or several axles." };

/// Axles as they are listed in a document.
struct GrownAxles(Vec<AxleGrowth>);

impl Record for GrownAxles {
    const FIELDS: &'static [Field<Self>] =
        &[part("axles", "Each axle, the model first.", &Part(|own: &Self| &own.0))];
}

/// The document of cups that grow on axles, the model first.
pub fn growth_document(axles: &[AxleGrowth], card: &ModelCard) -> String {
    let warnings: Vec<Warning> = axles.iter().flat_map(|axle| axle.outcome.warnings.clone()).collect();
    GROWTH.text(Contents::new(
        Some(card),
        growth_answer(axles, card),
        vec![json(&GrownAxles(axles.to_vec()))],
        &warnings,
    ))
}

/// The JSON Schema of the document of cups that grow.
pub fn growth_schema() -> String {
    GROWTH.schema::<Warning>(&[schema::<GrownAxles>()])
}

const CUPS: Frame = Frame { tag: "axlebow/cups/3", meaning: "A cup count and its possible sources." };

/// The document of a cup count.
///
/// - `has_model`: whether modes of a model were among the possible sources
/// - `system`: units of the answer
pub fn cups_document(outcome: &Cups, has_model: bool, system: UnitSystem) -> String {
    CUPS.text::<Warning>(Contents::new(
        None,
        cups_answer(outcome, has_model, system),
        vec![json(outcome)],
        &[],
    ))
}

/// The JSON Schema of the document of a cup count.
pub fn cups_schema() -> String {
    CUPS.schema::<Warning>(&[schema::<Cups>()])
}

const CAUSES: Frame =
    Frame { tag: "axlebow/causes/2", meaning: "What makes the wheels of an axle lean and steer." };

/// The load case, then the ride where one was driven.
struct Subjects(Vec<CausesOutcome>);

impl Record for Subjects {
    const FIELDS: &'static [Field<Self>] = &[
        part("how", "How these splits relate to others of the same angles.", &Text(|_: &Self| UNLIKE_FLEX)),
        part("subjects", "The load case, then the ride where one was driven.", &Part(|own: &Self| &own.0)),
    ];
}

/// The document of causes.
pub fn causes_document(outcomes: &[CausesOutcome], card: &ModelCard) -> String {
    CAUSES.text(Contents {
        card: Some(card),
        answer: causes_answer(outcomes, card),
        results: vec![json(&Subjects(outcomes.to_vec()))],
        warnings: &causes_warnings(outcomes),
        cautions: WELDING_CAUTIONS.to_vec(),
    })
}

/// The JSON Schema of the document of causes.
pub fn causes_schema() -> String {
    CAUSES.schema::<Warning>(&[schema::<Subjects>()])
}

const FIT: Frame = Frame { tag: "axlebow/fit/2", meaning: "A model fitted to readings." };

/// The document of a fit; its model is as it was before.
pub fn fit_document(outcome: &FitOutcome, card: &ModelCard) -> String {
    FIT.text(Contents::new(
        Some(card),
        fit_answer(outcome, card),
        vec![json(outcome)],
        &outcome.estimate.warnings,
    ))
}

/// The JSON Schema of the document of a fit.
pub fn fit_schema() -> String {
    FIT.schema::<Warning>(&[schema::<FitOutcome>()])
}

const PAYBACK: Frame =
    Frame { tag: "axlebow/payback-result/1", meaning: "Whether a remedy of an axle pays." };

/// The document of a payback.
pub fn payback_document(outcome: &PaybackOutcome, card: &ModelCard) -> String {
    PAYBACK.text(Contents {
        card: Some(card),
        answer: payback_answer(outcome, card),
        results: vec![json(outcome)],
        warnings: &outcome.warnings,
        cautions: if outcome.stiffened { WELDING_CAUTIONS.to_vec() } else { Vec::new() },
    })
}

/// The JSON Schema of the document of a payback.
pub fn payback_schema() -> String {
    PAYBACK.schema::<Warning>(&[schema::<PaybackOutcome>()])
}

const SENSITIVITIES: Frame = Frame {
    tag: "axlebow/sensitivities/2",
    meaning: "What each number of a model file does to an axle under load.",
};

/// The load cases.
struct Cases(Vec<SensitivityOutcome>);

impl Record for Cases {
    const FIELDS: &'static [Field<Self>] = &[part("cases", "Each load case.", &Part(|own: &Self| &own.0))];
}

/// The document of sensitivities.
pub fn sensitivities_document(outcomes: &[SensitivityOutcome], card: &ModelCard) -> String {
    SENSITIVITIES.text::<Warning>(Contents::new(
        Some(card),
        sensitivities_answer(outcomes, card),
        vec![json(&Cases(outcomes.to_vec()))],
        &[],
    ))
}

/// The JSON Schema of the document of sensitivities.
pub fn sensitivities_schema() -> String {
    SENSITIVITIES.schema::<Warning>(&[schema::<Cases>()])
}
