//! What was seen on a worn axle.

use axlebow_axle::tread::{DutyName, Feather};
use axlebow_axle::{Side, Sides, TireSlot};
use axlebow_units::UnitSystem;

use crate::build::Model;
use crate::content::{Assumed, Document};

/// What was seen on a worn axle; `None` is "not looked at".
#[derive(Debug, Clone)]
pub struct CaseSheet {
    /// What the case is called.
    pub name: String,
    /// Whether it is invented for demonstration.
    pub invented: bool,
    /// The axle with its file, from which walls of other thickness are built.
    pub model: Model,
    /// The axle's file.
    pub document: Document,
    /// Where the axle is in the vehicle.
    pub position: Option<String>,
    /// The duty where the sheet says one.
    pub duty: Option<DutyName>,
    /// Distance that the tires have run, m.
    pub distance: Option<f64>,
    /// Distance over which such tires wear by half of their new depth where nothing is wrong, m.
    pub usual_distance: f64,
    /// Depth of the new tread, m.
    pub new_depth: Option<f64>,
    /// Mean load of the axle, N.
    pub axle_load: Option<f64>,
    /// Outset of the wheels, m.
    pub offset: Option<f64>,
    /// Angle of the axle out of square, positive with its left end ahead, rad.
    pub skew: Option<f64>,
    /// Wall of tube or housing, m.
    pub wall: Option<f64>,
    /// What the dampers are like.
    pub damper: Option<DamperState>,
    /// Tires that were looked at.
    pub tires: Vec<SeenTire>,
    /// What was read at the wheel ends.
    pub ends: Sides<SeenEnd>,
    /// Standard errors of readings.
    pub errors: ReadingErrors,
    /// Weights of causes before anything is seen.
    pub priors: Vec<StatedPrior>,
    /// Hash of sheet and axle.
    pub hash: String,
    /// Defaults in use, of sheet and axle.
    pub assumed: Vec<Assumed>,
    /// Unit system of the sheet.
    pub system: UnitSystem,
}

/// What was seen on one tire.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenTire {
    /// Side of the vehicle.
    pub side: Side,
    /// Which tire of the wheel end.
    pub slot: TireSlot,
    /// Tread depth of each rib, the inner shoulder first, m; empty where none was measured.
    pub depths: Vec<Option<f64>>,
    /// Cups round the tire.
    pub cups: Option<u32>,
    /// How the ribs feel across the tread.
    pub feather: Option<FeltFeather>,
    /// Inflation, Pa.
    pub inflation: Option<f64>,
    /// Length round the tire, m.
    pub circumference: Option<f64>,
}

/// How ribs feel across the tread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeltFeather {
    /// Sharp edges point one way.
    Points(Feather),
    /// There are none.
    None,
}

/// What was read at one wheel end.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SeenEnd {
    /// Endplay, m.
    pub endplay: Option<f64>,
    /// Camber of the empty vehicle, rad.
    pub camber: Option<f64>,
    /// Toe of the empty vehicle, rad.
    pub toe: Option<f64>,
    /// Radial runout of the tire, m.
    pub runout: Option<f64>,
}

/// What the dampers are like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DamperState {
    /// Dry, warm after a run, bushes tight.
    Good,
    /// Wet with oil, or bushes loose.
    Leaking,
    /// Cold after a run, loose, broken or missing.
    Dead,
}

/// Standard errors of readings, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingErrors {
    /// Of a tread depth, m.
    pub depth: f64,
    /// Of an endplay, m.
    pub endplay: f64,
    /// Of camber, toe and skew, rad.
    pub angle: f64,
    /// Of a wall, m.
    pub wall: f64,
    /// Of a pressure, Pa.
    pub inflation: f64,
    /// Of the wheels' outset, m.
    pub offset: f64,
    /// Of a circumference, m.
    pub circumference: f64,
    /// Of a runout, m.
    pub runout: f64,
    /// Of the axle load, over it.
    pub load: f64,
}

/// The weight of a cause before anything is seen.
#[derive(Debug, Clone, PartialEq)]
pub struct StatedPrior {
    /// The cause's word.
    pub cause: String,
    /// Its weight.
    pub weight: f64,
}

impl SeenTire {
    /// A tire on which nothing was looked at.
    pub fn unseen(side: Side, slot: TireSlot) -> SeenTire {
        SeenTire {
            side,
            slot,
            depths: Vec::new(),
            cups: None,
            feather: None,
            inflation: None,
            circumference: None,
        }
    }
}
