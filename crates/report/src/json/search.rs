//! The document of a search.

use std::collections::BTreeMap;

use axlebow_strength::WELDING_CAUTIONS;
use axlebow_study::{FoundLimit, Proof, Row, SearchOutcome};
use schemars::JsonSchema;
use serde::Serialize;

use super::derived;
use super::frame::{Contents, Frame};
use super::study_summary::DesignWarningEntry;
use crate::ModelCard;
use crate::answer::search_answer;

const SEARCH: Frame = Frame {
    tag: "axlebow/search/2",
    meaning: "The best design within limits, and what it could be traded for.",
};

/// The document of a search; its warnings are those of the designs that are given here and of their rides.
pub fn search_document(outcome: &SearchOutcome, card: &ModelCard) -> String {
    let warnings: Vec<DesignWarningEntry> =
        outcome.warnings.iter().map(|own| DesignWarningEntry::of(own, &outcome.variants)).collect();
    let cautions = if outcome.stiffened { WELDING_CAUTIONS.to_vec() } else { Vec::new() };
    let results = vec![derived::json(&SearchResults::of(outcome))];
    SEARCH.text(Contents {
        card: Some(card),
        answer: search_answer(outcome, card),
        results,
        warnings: &warnings,
        cautions,
    })
}

/// The JSON Schema of the document of a search.
pub fn search_schema() -> String {
    SEARCH.schema::<DesignWarningEntry>(&[derived::schema::<SearchResults>()])
}

/// The best design within limits, and what it could be traded for.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct SearchResults {
    /// Name of the study.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// Name of the load case.
    pub case: String,
    /// Key in `results` of what was to be least or most.
    pub goal: String,
    /// Whether it was to be least.
    pub least: bool,
    /// Keys in `results` of what is traded against it.
    pub against: Vec<String>,
    /// The best design; null where none meets every limit.
    pub best: Option<DesignEntry>,
    /// Where none does, the one that misses its worst limit by least.
    pub nearest: Option<DesignEntry>,
    /// The limits at that design.
    pub limits: Vec<FoundLimitEntry>,
    /// What stands behind it.
    pub proof: ProofEntry,
    /// Designs that were solved.
    pub solved: usize,
    /// Designs that could not be.
    pub failed: usize,
    /// Why the first of them could not.
    pub first_failure: Option<String>,
    /// The Pareto front: designs none of which is better in everything that is traded, in the order of the goal.
    pub front: Vec<DesignEntry>,
}

/// A design.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DesignEntry {
    /// Its variant.
    pub variant: String,
    /// Its varied values (SI) by their paths.
    pub values: BTreeMap<String, f64>,
    /// Its choices by their names.
    pub choices: BTreeMap<String, String>,
    /// Its results (SI units in the keys); null where it has none.
    pub results: BTreeMap<String, Option<f64>>,
}

/// A limit at a design, in the SI unit of the result.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FoundLimitEntry {
    /// Name of the result.
    pub of: String,
    /// SI unit; empty for a plain number.
    pub unit: &'static str,
    /// Least that is accepted.
    pub least: Option<f64>,
    /// Most that is accepted.
    pub most: Option<f64>,
    /// Most that its magnitude may be.
    pub within: Option<f64>,
    /// The result; null where there is none.
    pub value: Option<f64>,
    /// Share of the limit by which it is missed; negative where there is room; null without a result.
    pub missed: Option<f64>,
    /// Whether it stands in the way.
    pub active: bool,
    /// Change of the goal per unit by which the limit is relaxed; null without continuous values.
    pub price: Option<f64>,
    /// The goal when the limit is relaxed by a hundredth of itself.
    pub goal_relaxed: Option<f64>,
    /// The goal without the limit.
    pub goal_without: Option<f64>,
}

/// What stands behind the best being best.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ProofEntry {
    /// `every-combination` or `starts`.
    pub by: &'static str,
    /// Combinations of listed values, all of them tried.
    pub combinations: usize,
    /// Places from which each was searched; null without continuous values.
    pub starts: Option<usize>,
    /// How many of those of the best combination came to its goal.
    pub agreed: Option<usize>,
}

impl SearchResults {
    fn of(outcome: &SearchOutcome) -> Self {
        let design = |row: &Row| DesignEntry::of(row, outcome);
        SearchResults {
            name: outcome.name.clone(),
            note: outcome.note.clone(),
            case: outcome.case.clone(),
            goal: outcome.goal.measure.key(),
            least: outcome.goal.least,
            against: outcome.against.iter().map(|own| own.key()).collect(),
            best: outcome.best.as_ref().map(design),
            nearest: outcome.nearest.as_ref().map(design),
            limits: outcome.limits.iter().map(FoundLimitEntry::from).collect(),
            proof: ProofEntry::from(outcome.proof),
            solved: outcome.solved,
            failed: outcome.failed.0,
            first_failure: outcome.failed.1.clone(),
            front: outcome.front.iter().map(design).collect(),
        }
    }
}

impl From<Proof> for ProofEntry {
    fn from(proof: Proof) -> Self {
        match proof {
            Proof::Every { combinations } => {
                ProofEntry { by: "every-combination", combinations, starts: None, agreed: None }
            }
            Proof::Starts { combinations, starts, agreed } => {
                ProofEntry { by: "starts", combinations, starts: Some(starts), agreed: Some(agreed) }
            }
        }
    }
}

impl From<&FoundLimit> for FoundLimitEntry {
    fn from(found: &FoundLimit) -> Self {
        let limit = &found.limit;
        FoundLimitEntry {
            of: limit.of.clone(),
            unit: limit.kind.si(),
            least: limit.least,
            most: limit.most,
            within: limit.within,
            value: Some(found.value).filter(|value| value.is_finite()),
            missed: Some(found.missed).filter(|missed| missed.is_finite()),
            active: found.active,
            price: found.price,
            goal_relaxed: found.relaxed,
            goal_without: found.without,
        }
    }
}

impl DesignEntry {
    fn of(row: &Row, outcome: &SearchOutcome) -> Self {
        let each = || outcome.varied.iter().zip(&row.values);
        let chosen =
            each().filter_map(|(varied, value)| Some((varied, varied.choices.get(*value as usize)?)));
        let numbers = each().filter(|(varied, _)| varied.choices.is_empty());
        let results = outcome.measures.iter().filter(|own| own.ride.is_none());
        DesignEntry {
            variant: outcome.variants[row.variant].clone(),
            values: numbers.map(|(varied, value)| (varied.path.clone(), *value)).collect(),
            choices: chosen.map(|(varied, choice)| (varied.path.clone(), choice.name.clone())).collect(),
            results: results.map(|own| (own.key(), row.value(own))).collect(),
        }
    }
}
