//! What stiffeners do, in the document of a static run.

use axlebow_axle::{AxialForce, StiffenerOutcome, StiffeningOutcome, WeldForce};
use schemars::JsonSchema;
use serde::Serialize;

/// What all stiffeners of an axle do in one case.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StiffeningEntry {
    /// The wheel whose camber changes more without stiffeners, `left` or `right`.
    pub side: &'static str,
    /// Mass of all stiffeners, kg.
    pub mass_kg: f64,
    /// Camber change of that wheel without stiffeners, rad.
    pub camber_change_without_rad: f64,
    /// With full composite action, axle and stiffeners one section: the upper bound of what they do, rad.
    pub camber_change_composite_rad: f64,
    /// With stiffeners as their welds tie them: that of the wheel in this document, rad.
    pub camber_change_tied_rad: f64,
    /// Share of the camber change that is gone with full composite action, the upper bound.
    pub removed_composite: f64,
    /// Share of the camber change that is gone.
    pub removed_tied: f64,
    /// Camber change that is gone for each kilogram, rad/kg.
    pub removed_tied_rad_per_kg: f64,
    /// Why tied stiffeners help less, where they help at least 5 % less.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Each stiffener.
    pub stiffeners: Vec<StiffenerEntry>,
}

/// One stiffener and its weld, tied.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StiffenerEntry {
    /// Name.
    pub name: String,
    /// What it is and how it sits.
    pub form: String,
    /// Right end, left positive, m.
    pub from_m: f64,
    /// Left end, m.
    pub to_m: f64,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Length over which its axial force is at least 95 % of the composite's, m.
    pub working_length_m: f64,
    /// The greatest force of its weld.
    pub peak_weld_force: WeldForceEntry,
    /// Force along its weld, from right to left.
    pub weld_forces: Vec<WeldForceEntry>,
    /// Axial force of the stiffener, from right to left.
    pub axial_forces: Vec<AxialForceEntry>,
}

/// Force of a stiffener on the axle through a piece of weld, per length of weld.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WeldForceEntry {
    /// Position, left positive, m.
    pub y_m: f64,
    /// Length of the piece, m.
    pub length_m: f64,
    /// `rear` or `front`, of a stiffener on top of the axle.
    pub foot: &'static str,
    /// Along the axle, to the left, N/m.
    pub along_n_per_m: f64,
    /// Across the wall, forward on top of the axle, N/m.
    pub across_n_per_m: f64,
    /// Away from the axle, N/m.
    pub outward_n_per_m: f64,
}

/// Axial force of a stiffener at one place, tension positive.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AxialForceEntry {
    /// Position, left positive, m.
    pub y_m: f64,
    /// As its weld ties it, N.
    pub tied_n: f64,
    /// As one section with the axle, N.
    pub composite_n: f64,
}

impl From<&StiffeningOutcome> for StiffeningEntry {
    fn from(outcome: &StiffeningOutcome) -> Self {
        Self {
            side: outcome.side.word(),
            mass_kg: outcome.mass,
            camber_change_without_rad: outcome.without,
            camber_change_composite_rad: outcome.composite,
            camber_change_tied_rad: outcome.tied,
            removed_composite: outcome.removed(outcome.composite),
            removed_tied: outcome.removed(outcome.tied),
            removed_tied_rad_per_kg: outcome.removed_per_mass(),
            why: outcome.why.clone(),
            stiffeners: outcome.stiffeners.iter().map(StiffenerEntry::from).collect(),
        }
    }
}

impl From<&StiffenerOutcome> for StiffenerEntry {
    fn from(outcome: &StiffenerOutcome) -> Self {
        Self {
            name: outcome.name.clone(),
            form: outcome.called.clone(),
            from_m: outcome.reach[0],
            to_m: outcome.reach[1],
            mass_kg: outcome.mass,
            working_length_m: outcome.working_length,
            peak_weld_force: WeldForceEntry::from(&outcome.peak),
            weld_forces: outcome.weld.iter().map(WeldForceEntry::from).collect(),
            axial_forces: outcome.axial.iter().map(AxialForceEntry::from).collect(),
        }
    }
}

impl From<&WeldForce> for WeldForceEntry {
    fn from(force: &WeldForce) -> Self {
        Self {
            y_m: force.y,
            length_m: force.length,
            foot: force.foot,
            along_n_per_m: force.along,
            across_n_per_m: force.across,
            outward_n_per_m: force.outward,
        }
    }
}

impl From<&AxialForce> for AxialForceEntry {
    fn from(force: &AxialForce) -> Self {
        Self { y_m: force.y, tied_n: force.tied, composite_n: force.composite }
    }
}
