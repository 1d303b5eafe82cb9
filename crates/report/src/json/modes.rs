//! The document of natural modes, `axlebow/modes/1`.

use axlebow_axle::{ModeOutcome, ModesOutcome, Motion, ShapePoint, Strain};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const MODES_SCHEMA: &str = "axlebow/modes/1";

/// The document of natural modes as JSON text: pretty, ending in a new line, same bytes for the same outcome.
///
/// A value that is not finite is written as `null`.
pub fn modes_document(outcome: &ModesOutcome, card: &ModelCard) -> String {
    pretty(&ModesDocument::new(outcome, card))
}

/// The JSON Schema (2020-12) of the document of natural modes.
pub fn modes_schema() -> String {
    schema_of::<ModesDocument>(MODES_SCHEMA)
}

/// The lowest natural modes of an axle on its tires and suspension.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ModesDocument {
    /// `axlebow/modes/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Mass of the vehicle body that the axle carries, kg.
    pub sprung_mass_kg: f64,
    /// Modes below the limit by Sturm's count, which misses none.
    pub counted_below: usize,
    /// Modes found below the limit.
    pub found_below: usize,
    /// Frequency below which modes were counted, Hz.
    pub limit_hz: f64,
    /// True when as many modes were found as were counted.
    pub complete: bool,
    /// Length of the longest element, m.
    pub longest_element_m: f64,
    /// Greatest change of a frequency, as a share of it, when the elements were last halved: at most 0.001 where they are
    /// short enough for the modes asked for.
    pub change_by_halving: f64,
    /// The modes, by rising frequency.
    pub modes: Vec<ModeEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
}

/// One natural mode; its motion is scaled so that the largest displacement of all is 1 m, its sign is free.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ModeEntry {
    /// What moves; numbered where several are alike.
    pub name: String,
    /// Undamped natural frequency, Hz.
    pub frequency_hz: f64,
    /// Damping over critical damping.
    pub damping_ratio: f64,
    /// Mass that, at the place of largest displacement, has the mode's kinetic energy, kg.
    pub modal_mass_kg: f64,
    /// Residual over inertia forces.
    pub residual: f64,
    /// Where the strain energy is.
    pub strain: StrainEntry,
    /// Where the kinetic energy is.
    pub motion: MotionEntry,
    /// Camber of each wheel against the road, positive with the tire's top outward.
    pub camber_rad_per_m: CamberEntry,
    /// Motion of the vehicle body.
    pub body: BodyEntry,
    /// The axle line, from left to right.
    pub shape: Vec<ShapeEntry>,
}

/// Shares of the strain energy; they sum to 1.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StrainEntry {
    /// Tube or housing and spindles.
    pub beam: f64,
    /// Seats with suspension and wall.
    pub seats: f64,
    /// Bearings and brakes.
    pub bearings: f64,
    /// Tires.
    pub tires: f64,
    /// The rest of the vehicle: what it puts against roll of the body, less what the sprung weight gives back.
    pub rest_of_vehicle: f64,
}

/// Shares of the kinetic energy; they sum to 1.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MotionEntry {
    /// Vertical motion of axle and wheels.
    pub vertical: f64,
    /// Fore-aft motion of axle and wheels.
    pub fore_aft: f64,
    /// Lateral motion of axle and wheels.
    pub lateral: f64,
    /// Rotation of the axle about its own line.
    pub twist: f64,
    /// Vehicle body.
    pub body: f64,
}

/// Camber of both wheels over the largest displacement, rad/m.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CamberEntry {
    /// Left of the vehicle.
    pub left: f64,
    /// Right of the vehicle.
    pub right: f64,
}

/// Motion of the vehicle body.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BodyEntry {
    /// Upward displacement, m.
    pub heave_m: f64,
    /// Rotation about X, rad.
    pub roll_rad: f64,
}

/// A point of the axle line in a mode.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ShapeEntry {
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
}

impl ModesDocument {
    /// The document of an outcome.
    pub fn new(outcome: &ModesOutcome, card: &ModelCard) -> Self {
        Self {
            schema: MODES_SCHEMA,
            model: model(card),
            sprung_mass_kg: outcome.sprung_mass,
            counted_below: outcome.counted_below,
            found_below: outcome.found_below,
            limit_hz: outcome.limit,
            complete: outcome.found_below == outcome.counted_below,
            longest_element_m: outcome.mesh.longest_element,
            change_by_halving: outcome.mesh.change,
            modes: outcome.modes.iter().map(ModeEntry::from).collect(),
            assumed: assumed(card),
        }
    }
}

impl From<&ModeOutcome> for ModeEntry {
    fn from(mode: &ModeOutcome) -> Self {
        let [heave_m, roll_rad] = mode.body;
        Self {
            name: mode.name.clone(),
            frequency_hz: mode.frequency,
            damping_ratio: mode.damping_ratio,
            modal_mass_kg: mode.modal_mass,
            residual: mode.residual,
            strain: mode.strain.into(),
            motion: mode.motion.into(),
            camber_rad_per_m: CamberEntry { left: mode.camber.left, right: mode.camber.right },
            body: BodyEntry { heave_m, roll_rad },
            shape: mode.shape.iter().map(ShapeEntry::from).collect(),
        }
    }
}

impl From<Strain> for StrainEntry {
    fn from(Strain { beam, seats, bearings, tires, rest_of_vehicle }: Strain) -> Self {
        Self { beam, seats, bearings, tires, rest_of_vehicle }
    }
}

impl From<Motion> for MotionEntry {
    fn from(Motion { vertical, fore_aft, lateral, twist, body }: Motion) -> Self {
        Self { vertical, fore_aft, lateral, twist, body }
    }
}

impl From<&ShapePoint> for ShapeEntry {
    fn from(point: &ShapePoint) -> Self {
        let [ux_m, uy_m, uz_m, rx_rad, ry_rad, rz_rad] = point.motion;
        Self { y_m: point.y, ux_m, uy_m, uz_m, rx_rad, ry_rad, rz_rad }
    }
}
