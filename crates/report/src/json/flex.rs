//! The document of a static run, `axlebow/flex/1`.

use axlebow_axle::{
    BearingOutcome, CamberSplit, CaseOutcome, ContactOutcome, FlexOutcome, SeatOutcome, Side, StationOutcome,
    Warning, WheelOutcome,
};
use axlebow_strength::WELDING_CAUTIONS;
use schemars::JsonSchema;
use serde::Serialize;

use super::{PreheatEntry, SeatWallsEntry, StiffeningEntry, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const FLEX_SCHEMA: &str = "axlebow/flex/1";

/// The document of a static run as JSON text: pretty, ending in a new line, same bytes for the same outcome.
///
/// A value that is not finite is written as `null`.
pub fn flex_document(outcome: &FlexOutcome, card: &ModelCard) -> String {
    pretty(&FlexDocument::new(outcome, card))
}

/// The JSON Schema (2020-12) of the document of a static run.
pub fn flex_schema() -> String {
    schema_of::<FlexDocument>(FLEX_SCHEMA)
}

/// Result of a static run.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FlexDocument {
    /// `axlebow/flex/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Mass of the bare axle, kg.
    pub mass_kg: f64,
    /// Mass between the road and the suspension, kg.
    pub unsprung_mass_kg: f64,
    /// The wall at each seat, where it is not simply given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seat_walls: Option<SeatWallsEntry>,
    /// Load cases, in the order asked for.
    pub cases: Vec<CaseEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Doubts about the result.
    pub warnings: Vec<WarningEntry>,
    /// What each steel says about preheat; empty without stiffeners.
    pub preheat: Vec<PreheatEntry>,
    /// What must be said before anybody welds; empty without stiffeners.
    pub cautions: Vec<&'static str>,
}

/// The model that was run.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ModelEntry {
    /// Name of the model.
    pub name: String,
    /// Hash of the model file.
    pub hash: String,
    /// The program and its version.
    pub program: &'static str,
    /// What the command line changed or added, as it said it.
    pub settings: Vec<String>,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// What of all that it was run with is invented: `road`, `tire`, `other axle`.
    pub invented_inputs: Vec<&'static str>,
}

/// A default that was used.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AssumedEntry {
    /// Path of the key.
    pub path: String,
    /// Value as a model file would say it.
    pub value: String,
    /// What the key means.
    pub meaning: String,
}

/// A doubt about the result.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WarningEntry {
    /// What is doubtful.
    pub text: String,
    /// What to do.
    pub advice: String,
}

/// One load case.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CaseEntry {
    /// Name of the case.
    pub name: String,
    /// What acts.
    pub description: String,
    /// Dynamic factor on the static loads.
    pub dynamic_factor: f64,
    /// Each wheel end.
    pub wheels: WheelsEntry,
    /// The bearings, from left to right.
    pub bearings: Vec<BearingEntry>,
    /// The seats.
    pub seats: SeatsEntry,
    /// Named stations, from left to right.
    pub stations: Vec<StationEntry>,
    /// Fiber stress of largest magnitude, tension positive, Pa.
    pub peak_stress_pa: f64,
    /// Position of the peak stress, left positive, m.
    pub peak_stress_y_m: f64,
    /// Height of the axle's center above the line through the hubs, m.
    pub bow_m: f64,
    /// Roll of the line through the hubs, about X, rad.
    pub axle_roll_rad: f64,
    /// Largest unbalanced force over the largest applied one.
    pub equilibrium_residual: f64,
    /// What the stiffeners do, where there are any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stiffening: Option<StiffeningEntry>,
}

/// Both wheel ends.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WheelsEntry {
    /// Left of the vehicle.
    pub left: WheelEntry,
    /// Right of the vehicle.
    pub right: WheelEntry,
}

/// One wheel end.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WheelEntry {
    /// Change of camber, positive with the tire's top outward, rad.
    pub camber_change_rad: f64,
    /// Manufactured camber plus the change, rad.
    pub camber_rad: f64,
    /// Change of toe, positive toe-in, rad.
    pub toe_change_rad: f64,
    /// Manufactured toe plus the change, rad.
    pub toe_rad: f64,
    /// Force of the road, upward, N.
    pub vertical_load_n: f64,
    /// Force of the road, to the left, N.
    pub lateral_load_n: f64,
    /// Force of the road, forward, N.
    pub longitudinal_load_n: f64,
    /// Each tire, outer first.
    pub contacts: Vec<ContactEntry>,
    /// Camber change by source.
    pub split: SplitEntry,
}

/// One tire on the road.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ContactEntry {
    /// `single`, `outer` or `inner`.
    pub name: &'static str,
    /// Position, left positive, m.
    pub y_m: f64,
    /// Force of the road, upward, N.
    pub vertical_load_n: f64,
    /// Force of the road, to the left, N.
    pub lateral_load_n: f64,
    /// True when the tire has left the road.
    pub off_road: bool,
}

/// Camber change by source, rad; bending, shear, seat, bearing, disc and clearance sum to the camber change.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SplitEntry {
    /// Bending of tube, housing and spindle.
    pub bending: f64,
    /// Transverse shear of the same.
    pub shear: f64,
    /// Seats, with the wall under them.
    pub seat: f64,
    /// The part of `seat` that is the wall.
    pub wall: f64,
    /// Bearings, as they give under load.
    pub bearing: f64,
    /// The wheel's disc and the hub's flange.
    pub disc: f64,
    /// Clearance of the bearings, as their hubs take it up.
    pub clearance: f64,
}

/// One bearing; forces are those of the hub on the spindle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BearingEntry {
    /// `left` or `right`.
    pub side: &'static str,
    /// `inner` or `outer`.
    pub place: &'static str,
    /// Position, left positive, m.
    pub y_m: f64,
    /// Upward force, N.
    pub vertical_n: f64,
    /// Forward force, N.
    pub fore_aft_n: f64,
    /// Force to the left, N.
    pub axial_n: f64,
    /// Magnitude of the radial force, N.
    pub radial_n: f64,
    /// Radial clearance that this bearing has in this case, m; the play of a wheel end is all in one bearing.
    pub clearance_m: f64,
}

/// Both seats.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SeatsEntry {
    /// Left of the vehicle.
    pub left: SeatEntry,
    /// Right of the vehicle.
    pub right: SeatEntry,
}

/// One seat; force and moment are those of the suspension on the axle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SeatEntry {
    /// Position, left positive, m.
    pub y_m: f64,
    /// Upward force, N.
    pub vertical_n: f64,
    /// Moment about X, N m.
    pub moment_x_n_m: f64,
    /// Rotation of the axle about X, rad.
    pub rotation_rad: f64,
}

/// A named place along the axle; resultants act on the face whose outward normal is to the left.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StationEntry {
    /// Name of the station.
    pub name: String,
    /// Position, left positive, m.
    pub y_m: f64,
    /// Forward displacement, m.
    pub ux_m: f64,
    /// Displacement to the left, m.
    pub uy_m: f64,
    /// Upward displacement, m.
    pub uz_m: f64,
    /// Rotation about X, rad.
    pub rx_rad: f64,
    /// Rotation about Y, rad.
    pub ry_rad: f64,
    /// Rotation about Z, rad.
    pub rz_rad: f64,
    /// Bending moment about X, N m.
    pub moment_x_n_m: f64,
    /// Bending moment about Z, N m.
    pub moment_z_n_m: f64,
    /// Shear along Z, N.
    pub shear_z_n: f64,
    /// Shear along X, N.
    pub shear_x_n: f64,
    /// Axial force, tension positive, N.
    pub axial_n: f64,
    /// Torque about Y, N m.
    pub torsion_n_m: f64,
    /// Fiber stress of largest magnitude, tension positive, Pa.
    pub stress_pa: f64,
}

impl FlexDocument {
    /// The document of an outcome.
    pub fn new(outcome: &FlexOutcome, card: &ModelCard) -> Self {
        let welded = outcome.cases.iter().any(|case| case.stiffening.is_some());
        Self {
            schema: FLEX_SCHEMA,
            model: super::model(card),
            mass_kg: outcome.axle_mass,
            unsprung_mass_kg: outcome.unsprung_mass,
            seat_walls: SeatWallsEntry::of(&outcome.walls),
            cases: outcome.cases.iter().map(CaseEntry::from).collect(),
            assumed: super::assumed(card),
            warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
            preheat: outcome.preheat.iter().map(PreheatEntry::from).collect(),
            cautions: if welded { WELDING_CAUTIONS.to_vec() } else { Vec::new() },
        }
    }
}

impl From<&Warning> for WarningEntry {
    fn from(warning: &Warning) -> Self {
        Self { text: warning.text.clone(), advice: warning.advice.clone() }
    }
}

impl From<&CaseOutcome> for CaseEntry {
    fn from(case: &CaseOutcome) -> Self {
        let wheel = |side| WheelEntry::from(case.wheels.of(side));
        let seat = |side| SeatEntry::from(case.seats.of(side));
        Self {
            name: case.name.clone(),
            description: case.description.clone(),
            dynamic_factor: case.dynamic_factor,
            wheels: WheelsEntry { left: wheel(Side::Left), right: wheel(Side::Right) },
            bearings: case.bearings.iter().map(BearingEntry::from).collect(),
            seats: SeatsEntry { left: seat(Side::Left), right: seat(Side::Right) },
            stations: case.stations.iter().map(StationEntry::from).collect(),
            peak_stress_pa: case.peak_stress,
            peak_stress_y_m: case.peak_stress_y,
            bow_m: case.bow,
            axle_roll_rad: case.axle_roll,
            equilibrium_residual: case.equilibrium_residual,
            stiffening: case.stiffening.as_ref().map(StiffeningEntry::from),
        }
    }
}

impl From<&WheelOutcome> for WheelEntry {
    fn from(wheel: &WheelOutcome) -> Self {
        Self {
            camber_change_rad: wheel.camber_change,
            camber_rad: wheel.camber,
            toe_change_rad: wheel.toe_change,
            toe_rad: wheel.toe,
            vertical_load_n: wheel.vertical_load,
            lateral_load_n: wheel.lateral_load,
            longitudinal_load_n: wheel.longitudinal_load,
            contacts: wheel.contacts.iter().map(ContactEntry::from).collect(),
            split: SplitEntry::from(&wheel.split),
        }
    }
}

impl From<&CamberSplit> for SplitEntry {
    fn from(split: &CamberSplit) -> Self {
        Self {
            bending: split.bending,
            shear: split.shear,
            seat: split.seat,
            wall: split.wall,
            bearing: split.bearing,
            disc: split.disc,
            clearance: split.clearance,
        }
    }
}

impl From<&ContactOutcome> for ContactEntry {
    fn from(contact: &ContactOutcome) -> Self {
        Self {
            name: contact.name,
            y_m: contact.y,
            vertical_load_n: contact.vertical_load,
            lateral_load_n: contact.lateral_load,
            off_road: contact.off_road,
        }
    }
}

impl From<&BearingOutcome> for BearingEntry {
    fn from(bearing: &BearingOutcome) -> Self {
        Self {
            side: bearing.side.word(),
            place: bearing.place,
            y_m: bearing.y,
            vertical_n: bearing.vertical,
            fore_aft_n: bearing.fore_aft,
            axial_n: bearing.axial,
            radial_n: bearing.radial,
            clearance_m: bearing.clearance,
        }
    }
}

impl From<&SeatOutcome> for SeatEntry {
    fn from(seat: &SeatOutcome) -> Self {
        Self {
            y_m: seat.y,
            vertical_n: seat.vertical,
            moment_x_n_m: seat.moment_x,
            rotation_rad: seat.rotation,
        }
    }
}

impl From<&StationOutcome> for StationEntry {
    fn from(station: &StationOutcome) -> Self {
        let [ux_m, uy_m, uz_m, rx_rad, ry_rad, rz_rad] = station.displacement;
        let r = &station.resultants;
        Self {
            name: station.name.clone(),
            y_m: station.y,
            ux_m,
            uy_m,
            uz_m,
            rx_rad,
            ry_rad,
            rz_rad,
            moment_x_n_m: r.moment_x,
            moment_z_n_m: r.moment_z,
            shear_z_n: r.shear_z,
            shear_x_n: r.shear_x,
            axial_n: r.axial,
            torsion_n_m: r.torsion,
            stress_pa: station.stress,
        }
    }
}
