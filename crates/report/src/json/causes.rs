//! The document of causes, `axlebow/causes/1`.

use axlebow_strength::WELDING_CAUTIONS;
use axlebow_study::{CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, BySide, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;
use crate::causes_words::{UNLIKE_FLEX, warnings};

/// Name and version of the document.
pub const CAUSES_SCHEMA: &str = "axlebow/causes/1";

/// The document of causes as JSON text: pretty, ending in a new line, same bytes for the same outcome.
pub fn causes_document(outcomes: &[CausesOutcome], card: &ModelCard) -> String {
    let warnings = warnings(outcomes).iter().map(WarningEntry::from).collect();
    pretty(&CausesDocument {
        schema: CAUSES_SCHEMA,
        model: model(card),
        how: UNLIKE_FLEX,
        subjects: outcomes.iter().map(SubjectEntry::from).collect(),
        assumed: assumed(card),
        warnings,
        cautions: WELDING_CAUTIONS.to_vec(),
    })
}

/// The JSON Schema (2020-12) of the document of causes.
pub fn causes_schema() -> String {
    schema_of::<CausesDocument>(CAUSES_SCHEMA)
}

/// What makes the wheels of an axle lean and steer.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CausesDocument {
    /// `axlebow/causes/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// How these splits relate to others of the same angles.
    pub how: &'static str,
    /// The load case, then the ride where one was driven.
    pub subjects: Vec<SubjectEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Doubts about the results.
    pub warnings: Vec<WarningEntry>,
    /// What must be read with these numbers.
    pub cautions: Vec<&'static str>,
}

/// A load case or a ride.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SubjectEntry {
    /// `standing`: angles against the line through the hubs; `ride`: peak-to-peak angle over it.
    pub kind: &'static str,
    /// Name of the load case or of the road.
    pub name: String,
    /// Speed; null standing.
    pub speed_m_s: Option<f64>,
    /// Each wheel end.
    pub wheels: BySide<WheelCausesEntry>,
    /// What the axle's rigid roll adds to each wheel's camber against the road; of a ride peak to peak. No cause's.
    pub rigid_roll_rad: BySide<f64>,
    /// Free tilt of each hub within its endplay, either way.
    pub endplay_tilt: BySide<WobbleEntry>,
    /// Axles that were solved.
    pub solved: usize,
}

/// Causes at one wheel end.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WheelCausesEntry {
    /// Of camber.
    pub camber: ContributionEntry,
    /// Of toe.
    pub toe: ContributionEntry,
}

/// An angle and its causes.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ContributionEntry {
    /// The angle.
    pub total_rad: f64,
    /// What is left without any cause.
    pub rest_rad: f64,
    /// What causes do together beyond what each takes off when removed alone.
    pub interaction_rad: f64,
    /// Each cause that the model has.
    pub causes: Vec<CauseEntry>,
}

/// One cause.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CauseEntry {
    /// Its name.
    pub cause: &'static str,
    /// Its share: the mean over all orders in which causes could come in.
    pub share_rad: f64,
    /// The angle were it the only cause, less the rest.
    pub alone_rad: f64,
    /// What removing it alone takes off.
    pub removing_rad: f64,
    /// Half of how far the angle moves with the tolerance of the cause's input.
    pub uncertainty_rad: f64,
    /// That tolerance.
    pub tolerance: &'static str,
    /// What would remove it.
    pub remedy: &'static str,
}

/// Free tilt of a hub within its endplay, either way from the middle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WobbleEntry {
    /// With the model's endplay.
    pub own_rad: f64,
    /// With the least endplay that is accepted, 0.025 mm.
    pub least_accepted_rad: f64,
    /// With the largest, 0.127 mm.
    pub most_accepted_rad: f64,
}

impl From<&CausesOutcome> for SubjectEntry {
    fn from(outcome: &CausesOutcome) -> Self {
        let (kind, name, speed_m_s) = match &outcome.subject {
            Subject::Standing { case, .. } => ("standing", case.clone(), None),
            Subject::Ride { name, speed } => ("ride", name.clone(), Some(*speed)),
        };
        SubjectEntry {
            kind,
            name,
            speed_m_s,
            wheels: BySide::of(&outcome.wheels, |wheel| WheelCausesEntry {
                camber: ContributionEntry::from(&wheel.camber),
                toe: ContributionEntry::from(&wheel.toe),
            }),
            rigid_roll_rad: BySide::of(&outcome.rigid_roll, |roll| *roll),
            endplay_tilt: BySide::of(&outcome.endplay_tilt, |endplay_tilt| WobbleEntry::from(endplay_tilt)),
            solved: outcome.solved,
        }
    }
}

impl From<&Contribution> for ContributionEntry {
    fn from(contribution: &Contribution) -> Self {
        ContributionEntry {
            total_rad: contribution.total,
            rest_rad: contribution.rest,
            interaction_rad: contribution.interaction(),
            causes: contribution.shares.iter().map(CauseEntry::from).collect(),
        }
    }
}

impl From<&CauseShare> for CauseEntry {
    fn from(share: &CauseShare) -> Self {
        CauseEntry {
            cause: share.cause.words(),
            share_rad: share.share,
            alone_rad: share.alone,
            removing_rad: share.removing,
            uncertainty_rad: share.uncertainty,
            tolerance: share.cause.tolerance(),
            remedy: share.cause.remedy(),
        }
    }
}

impl From<&EndplayTilt> for WobbleEntry {
    fn from(endplay_tilt: &EndplayTilt) -> Self {
        let [least_accepted_rad, most_accepted_rad] = endplay_tilt.accepted;
        WobbleEntry { own_rad: endplay_tilt.own, least_accepted_rad, most_accepted_rad }
    }
}
