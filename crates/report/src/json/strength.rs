//! The document of strength checks, `axlebow/strength/1`.

use axlebow_axle::{PlacedCheck, StrengthCase, StrengthOutcome, WeldBand, WeldRemedy, WeldUse};
use axlebow_strength::{Bound, CLAMPING_CAUTIONS, WELDING_CAUTIONS};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, PreheatEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const STRENGTH_SCHEMA: &str = "axlebow/strength/1";

/// The document of strength checks as JSON text: pretty, ending in a new line, same bytes for the same outcome.
pub fn strength_document(outcome: &StrengthOutcome, bands: &[WeldBand], card: &ModelCard) -> String {
    pretty(&StrengthDocument::new(outcome, bands, card))
}

/// The JSON Schema (2020-12) of the document of strength checks.
pub fn strength_schema() -> String {
    schema_of::<StrengthDocument>(STRENGTH_SCHEMA)
}

/// Strength checks of an axle under its load cases.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StrengthDocument {
    /// `axlebow/strength/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// What every strength is divided by: yield, weld, clamp crush, local buckling.
    pub safety_factor: f64,
    /// `aisc` or `en`: whose limits are used where codes differ.
    pub rules: &'static str,
    /// Tensile strength of the weld metal.
    pub electrode_strength_pa: f64,
    /// HAZ strength factor, strength beside a weld over that of the steel; null where it is assumed.
    pub haz_strength_factor: Option<f64>,
    /// False when a binding check fails.
    pub holds: bool,
    /// Each load case.
    pub cases: Vec<StrengthCaseEntry>,
    /// Walls against their class.
    pub walls: Vec<CheckEntry>,
    /// What the weld of each stiffener uses over the band of its stiffness.
    pub weld_bands: Vec<WeldBandEntry>,
    /// What each steel that is welded says about preheat.
    pub preheat: Vec<PreheatEntry>,
    /// What stands in for what the file does not say about strength.
    pub assumptions: Vec<String>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Doubts about the results.
    pub warnings: Vec<WarningEntry>,
    /// What must be read with these numbers.
    pub cautions: Vec<&'static str>,
}

/// Checks of one load case.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StrengthCaseEntry {
    /// Name.
    pub name: String,
    /// What acts.
    pub description: String,
    /// Every check, from left to right.
    pub checks: Vec<CheckEntry>,
}

/// One check.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CheckEntry {
    /// Station or part.
    pub place: String,
    /// Position, positive to the left; null for a part as a whole.
    pub y_m: Option<f64>,
    /// What is checked.
    pub what: String,
    /// The value, in `unit`.
    pub value: f64,
    /// Its limit, in `unit`.
    pub limit: f64,
    /// SI unit of value and limit; empty for a plain number.
    pub unit: &'static str,
    /// `at-most` or `at-least`.
    pub bound: &'static str,
    /// How much of the limit is used; 1 at the limit.
    pub utilization: f64,
    /// `passes`, `watch` or `fails`.
    pub verdict: &'static str,
    /// Clause and edition.
    pub source: &'static str,
    /// What to do where the limit is passed.
    pub advice: &'static str,
}

impl StrengthDocument {
    fn new(outcome: &StrengthOutcome, bands: &[WeldBand], card: &ModelCard) -> Self {
        Self {
            schema: STRENGTH_SCHEMA,
            model: model(card),
            safety_factor: outcome.ask.safety_factor,
            rules: outcome.ask.rules.word(),
            electrode_strength_pa: outcome.ask.electrode_strength,
            haz_strength_factor: outcome.ask.haz_strength_factor,
            holds: outcome.holds(),
            cases: outcome.cases.iter().map(StrengthCaseEntry::from).collect(),
            walls: outcome.walls.iter().map(CheckEntry::from).collect(),
            weld_bands: bands.iter().map(WeldBandEntry::from).collect(),
            preheat: outcome.preheat.iter().map(PreheatEntry::from).collect(),
            assumptions: outcome.assumptions.clone(),
            assumed: assumed(card),
            warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
            cautions: [&WELDING_CAUTIONS[..], if outcome.clamped { &CLAMPING_CAUTIONS } else { &[] }]
                .concat(),
        }
    }
}

/// What the weld of a stiffener uses of its strength over the band of its stiffness, the worst of all cases.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WeldBandEntry {
    /// Name of the stiffener.
    pub stiffener: String,
    /// With walls that give as wide plates: the end that is safe for the camber.
    pub soft: WeldUseEntry,
    /// As the model has it.
    pub modeled: WeldUseEntry,
    /// Between rigid walls: the end that is safe for the weld.
    pub stiff: WeldUseEntry,
    /// Length over which each end, tapered, would let it pass as modeled; null where none was found or is needed.
    pub passing_run_out_m: Option<f64>,
    /// Leg that would let it pass; null where none was found or is needed.
    pub passing_leg_m: Option<f64>,
    /// Length of the stiffener that would let it pass; null where none was found or is needed.
    pub passing_length_m: Option<f64>,
}

/// What a weld uses at one stiffness.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WeldUseEntry {
    /// Stiffness per length of weld.
    pub stiffness_n_per_m2: f64,
    /// Greatest share of a strength that its throat or the steel beside it uses.
    pub utilization: f64,
    /// `passes` or `fails`.
    pub verdict: &'static str,
}

impl From<&WeldBand> for WeldBandEntry {
    fn from(band: &WeldBand) -> Self {
        let passing = |of: fn(&WeldRemedy) -> Option<f64>| band.remedies.iter().find_map(of);
        Self {
            stiffener: band.stiffener.clone(),
            soft: band.soft.into(),
            modeled: band.modeled.into(),
            stiff: band.stiff.into(),
            passing_run_out_m: passing(|remedy| match remedy {
                WeldRemedy::RunOut(run_out) => Some(*run_out),
                _ => None,
            }),
            passing_leg_m: passing(|remedy| match remedy {
                WeldRemedy::Leg(leg) => Some(*leg),
                _ => None,
            }),
            passing_length_m: passing(|remedy| match remedy {
                WeldRemedy::Length(length) => Some(*length),
                _ => None,
            }),
        }
    }
}

impl From<WeldUse> for WeldUseEntry {
    fn from(at: WeldUse) -> Self {
        Self { stiffness_n_per_m2: at.stiffness, utilization: at.used, verdict: at.verdict.word() }
    }
}

impl From<&StrengthCase> for StrengthCaseEntry {
    fn from(case: &StrengthCase) -> Self {
        let (name, description) = (case.name.clone(), case.description.clone());
        Self { name, description, checks: case.checks.iter().map(CheckEntry::from).collect() }
    }
}

impl From<&PlacedCheck> for CheckEntry {
    fn from(PlacedCheck { place, y, check }: &PlacedCheck) -> Self {
        Self {
            place: place.clone(),
            y_m: *y,
            what: check.what.clone(),
            value: check.value,
            limit: check.limit,
            unit: check.kind.si(),
            bound: if check.bound == Bound::AtMost { "at-most" } else { "at-least" },
            utilization: check.utilization(),
            verdict: check.verdict().word(),
            source: check.source,
            advice: check.advice,
        }
    }
}
