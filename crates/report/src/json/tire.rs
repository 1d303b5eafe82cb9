//! The document of tire faces, `axlebow/tire-result/1`.

use axlebow_axle::tread::{Pose, RibWear, RideWear, TireWear, Worn};
use axlebow_axle::{PrintedWave, Side, Sides, TireOutcome, TireRide, TireRideOutcome};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, CupsEntry, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const TIRE_SCHEMA: &str = "axlebow/tire-result/1";

/// The document of tire faces as JSON text, with a ride where one was driven: pretty, ending in a new line, same bytes
/// for the same outcome.
pub fn tire_document(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> String {
    pretty(&TireDocument {
        schema: TIRE_SCHEMA,
        model: model(card),
        cases: outcome.cases.iter().map(TireCaseEntry::from).collect(),
        ride: ride.map(TireRideEntry::from),
        assumed: assumed(card),
        warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
    })
}

/// The JSON Schema (2020-12) of the document of tire faces.
pub fn tire_schema() -> String {
    schema_of::<TireDocument>(TIRE_SCHEMA)
}

/// Tire faces of an axle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TireDocument {
    /// `axlebow/tire-result/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Each load case.
    pub cases: Vec<TireCaseEntry>,
    /// The ride; null where none was driven.
    pub ride: Option<TireRideEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Doubts about the results.
    pub warnings: Vec<WarningEntry>,
}

/// One value for each side.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BySide<T> {
    /// Left of the vehicle.
    pub left: T,
    /// Right of the vehicle.
    pub right: T,
}

/// Tire faces of a load case.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TireCaseEntry {
    /// Name.
    pub name: String,
    /// What acts.
    pub description: String,
    /// Each wheel end.
    pub wheels: BySide<FaceEntry>,
}

/// The tire face of a wheel end.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FaceEntry {
    /// Load of the road.
    pub load_n: f64,
    /// Camber against the road, positive with the top leaning outward.
    pub camber_rad: f64,
    /// Toe, positive toe-in.
    pub toe_rad: f64,
    /// Rolling radius.
    pub rolling_radius_m: f64,
    /// Tires, outermost first.
    pub tires: Vec<FaceTireEntry>,
}

/// One tire of a face.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FaceTireEntry {
    /// Load.
    pub load_n: f64,
    /// Share of the load of the wheel end.
    pub share: f64,
    /// Load of the inner over the outer shoulder rib; null with the outer one off the road.
    pub shoulder_load_ratio: Option<f64>,
    /// Wear of the inner over the outer shoulder rib; null where the outer one does not wear.
    pub shoulder_wear_ratio: Option<f64>,
    /// Ribs, the inner shoulder first.
    pub ribs: Vec<RibEntry>,
}

/// One rib.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RibEntry {
    /// Outboard of the tire's center.
    pub outboard_m: f64,
    /// Load.
    pub load_n: f64,
    /// Sliding speed forward over travelling speed, positive where it drives.
    pub slip_forward: f64,
    /// Sliding speed sideways over travelling speed, by toe.
    pub slip_side: f64,
    /// Energy of scuff for each meter traveled.
    pub scuff_j_per_m: f64,
    /// Wear over the mean wear of the same tires upright and straight; null where those do not wear.
    pub wear_index: Option<f64>,
    /// Wear over that of the same rib upright and straight.
    pub wear_against_upright: Option<f64>,
}

/// Tire faces over a ride.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TireRideEntry {
    /// Name of the road.
    pub name: String,
    /// Speed.
    pub speed_m_s: f64,
    /// Whether the road comes back and may be in step with the wheel.
    pub road_comes_back: bool,
    /// Each wheel end.
    pub wheels: BySide<RideFaceEntry>,
    /// Doubts about the ride.
    pub warnings: Vec<WarningEntry>,
}

/// The tire face of a wheel end over a ride.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideFaceEntry {
    /// Least camber against the road.
    pub camber_least_rad: f64,
    /// Mean camber.
    pub camber_mean_rad: f64,
    /// Greatest camber.
    pub camber_greatest_rad: f64,
    /// Turns of the tire.
    pub turns: f64,
    /// Tires with their means over the ride, outermost first.
    pub tires: Vec<FaceTireEntry>,
    /// Wear round each tire: for each rib, the inner shoulder first, each part of the circumference over the mean wear
    /// of the upright tires; null where nothing passed.
    pub round: Vec<Vec<Vec<Option<f64>>>>,
    /// The strongest wave round the most worn rib; null for less than a turn.
    pub wave: Option<WaveEntry>,
}

/// A wave of wear round a tire.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WaveEntry {
    /// Number of its tire, the outermost 0.
    pub tire: usize,
    /// Number of its rib, the inner shoulder 0.
    pub rib: usize,
    /// Half of crest less trough over the mean wear.
    pub amplitude: f64,
    /// Whether it stands out enough to be seen.
    pub visible: bool,
    /// Count, spacing, frequency, explanations.
    pub cups: CupsEntry,
}

impl<T> BySide<T> {
    /// Each side's value made of another.
    pub(super) fn of<S>(sides: &Sides<S>, make: impl Fn(&S) -> T) -> Self {
        BySide { left: make(sides.of(Side::Left)), right: make(sides.of(Side::Right)) }
    }
}

impl From<&axlebow_axle::TireCase> for TireCaseEntry {
    fn from(case: &axlebow_axle::TireCase) -> Self {
        TireCaseEntry {
            name: case.name.clone(),
            description: case.description.clone(),
            wheels: BySide::of(&case.wheels, |face| face_entry(&face.pose, &face.worn)),
        }
    }
}

fn face_entry(pose: &Pose, worn: &Worn) -> FaceEntry {
    FaceEntry {
        load_n: pose.load,
        camber_rad: pose.camber,
        toe_rad: pose.toe,
        rolling_radius_m: worn.radius,
        tires: worn.tires.iter().map(FaceTireEntry::from).collect(),
    }
}

impl From<&TireWear> for FaceTireEntry {
    fn from(tire: &TireWear) -> Self {
        FaceTireEntry {
            load_n: tire.load,
            share: tire.share,
            shoulder_load_ratio: tire.shoulder_load_ratio(),
            shoulder_wear_ratio: tire.shoulder_wear_ratio(),
            ribs: tire.ribs.iter().map(RibEntry::from).collect(),
        }
    }
}

impl From<&RibWear> for RibEntry {
    fn from(rib: &RibWear) -> Self {
        RibEntry {
            outboard_m: rib.outboard,
            load_n: rib.load,
            slip_forward: rib.scuff.slip_forward,
            slip_side: rib.scuff.slip_side,
            scuff_j_per_m: rib.scuff.energy,
            wear_index: rib.index,
            wear_against_upright: rib.against_upright,
        }
    }
}

impl From<&TireRideOutcome> for TireRideEntry {
    fn from(ride: &TireRideOutcome) -> Self {
        TireRideEntry {
            name: ride.name.clone(),
            speed_m_s: ride.speed,
            road_comes_back: ride.comes_back,
            wheels: BySide::of(&ride.wheels, |face| RideFaceEntry::from(face)),
            warnings: ride.warnings.iter().map(WarningEntry::from).collect(),
        }
    }
}

impl From<&TireRide> for RideFaceEntry {
    fn from(TireRide { camber, wear, wave }: &TireRide) -> Self {
        let RideWear { mean, turns, round } = wear;
        let [camber_least_rad, camber_mean_rad, camber_greatest_rad] = *camber;
        RideFaceEntry {
            camber_least_rad,
            camber_mean_rad,
            camber_greatest_rad,
            turns: *turns,
            tires: mean.tires.iter().map(FaceTireEntry::from).collect(),
            round: round.iter().map(|map| map.ribs.clone()).collect(),
            wave: wave.as_ref().map(WaveEntry::from),
        }
    }
}

impl From<&PrintedWave> for WaveEntry {
    fn from(wave: &PrintedWave) -> Self {
        WaveEntry {
            tire: wave.tire,
            rib: wave.rib,
            amplitude: wave.amplitude,
            visible: wave.visible,
            cups: CupsEntry::from(&wave.cups),
        }
    }
}
