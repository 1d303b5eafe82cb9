//! The document of an explained worn axle.

use axlebow_axle::Warning;
use axlebow_results::{json, schema};
use axlebow_study::ExplainOutcome;

use super::frame::{Contents, Frame};
use crate::ModelCard;
use crate::answer::explain_answer;

const EXPLAIN: Frame = Frame {
    tag: "axlebow/explain/1",
    meaning: "Causes of a worn axle by their probability after what was seen.",
};

/// The document of an explained worn axle.
pub fn explain_document(outcome: &ExplainOutcome, card: &ModelCard) -> String {
    let answer = explain_answer(outcome, card);
    EXPLAIN.text::<Warning>(Contents::new(Some(card), answer, vec![json(outcome)], &[]))
}

/// The JSON Schema of that document.
pub fn explain_schema() -> String {
    EXPLAIN.schema::<Warning>(&[schema::<ExplainOutcome>()])
}
