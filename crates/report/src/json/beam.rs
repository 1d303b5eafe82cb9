//! The document of a straight beam.

use axlebow_axle::Warning;
use axlebow_beam::BeamOutcome;
use axlebow_results::{json, schema};

use super::frame::{Contents, Frame};
use crate::ModelCard;
use crate::answer::beam_answer;

const BEAM: Frame = Frame { tag: "axlebow/beam/1", meaning: "A straight beam of one's own." };

/// The document of a straight beam.
pub fn beam_document(outcome: &BeamOutcome, card: &ModelCard) -> String {
    BEAM.text::<Warning>(Contents::new(Some(card), beam_answer(outcome, card), vec![json(outcome)], &[]))
}

/// The JSON Schema of the document of a straight beam.
pub fn beam_schema() -> String {
    BEAM.schema::<Warning>(&[schema::<BeamOutcome>()])
}
