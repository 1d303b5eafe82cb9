//! What can be wrong with an axle.

use axlebow_fe::FeError;
use axlebow_sections::SectionError;

use crate::parts::welding_limits::{ALIKE, LARGEST_ROOT_OPENING};
use crate::{Orientation, Side};

/// Errors of this crate; lengths in messages are in millimeters.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum AxleError {
    /// A value is out of its range.
    #[error("{what} is {value} {unit}; {accepted} is accepted")]
    Value {
        /// Key of the value in the trade's words, such as `seat width`.
        what: &'static str,
        /// Value in `unit`.
        value: f64,
        /// Unit of the message.
        unit: &'static str,
        /// Accepted range in words.
        accepted: &'static str,
    },
    /// Bearings with a preload have no endplay.
    #[error(
        "the bearings have both endplay ({:.3} mm) and preload ({:.2} kN); bearings are set with one or the other: leave one out",
        endplay * 1e3,
        preload * 1e-3
    )]
    PreloadedLoose {
        /// Endplay, m.
        endplay: f64,
        /// Preload, N.
        preload: f64,
    },
    /// A ride's histories would take too much memory.
    #[error(
        "the ride has {:.2} million time steps, and at most {:.2} million can be kept{}; drive over a shorter stretch \
         (`length`, `run_up`, `run_out`) or give a longer `time_step`{}",
        samples * 1e-6,
        most * 1e-6,
        if *stresses { " with the stress of every station" } else { "" },
        if *stresses { ", or leave out the stress of the stations" } else { "" }
    )]
    RideTooLong {
        /// Samples of the ride.
        samples: f64,
        /// Most samples.
        most: f64,
        /// Whether the stress of every station is kept.
        stresses: bool,
    },
    /// A place along the axle lies on the wrong side of another.
    #[error(
        "the {side} {what} lies {:.1} mm from the center line, {relation} the {against} at {:.1} mm",
        at * 1e3,
        against_at * 1e3,
        side = side.word()
    )]
    Misplaced {
        /// Side of the vehicle.
        side: Side,
        /// The thing that is out of place.
        what: &'static str,
        /// Its distance from the center line, m.
        at: f64,
        /// How it lies, such as `outboard of`.
        relation: &'static str,
        /// The thing that it is compared with.
        against: &'static str,
        /// Distance of that from the center line, m.
        against_at: f64,
    },
    /// A shape cannot sit on the axle in this way.
    #[error(
        "a shape of this kind, {shape}, does not sit {}; {} is accepted",
        orientation.word(),
        accepted.iter().map(|one| one.word()).collect::<Vec<_>>().join(", ")
    )]
    Orientation {
        /// The shape.
        shape: &'static str,
        /// How it was to sit.
        orientation: Orientation,
        /// How it can sit.
        accepted: &'static [Orientation],
    },
    /// A stiffener does not touch the axle, or no fillet bridges the gap between them.
    #[error(
        "stiffener {stiffener} does not sit on the axle: {:.1} mm lie between them; a gap of at most {:.1} mm under a \
         foot, and of less than the leg of its weld, is accepted",
        gap * 1e3,
        LARGEST_ROOT_OPENING * 1e3
    )]
    Floats {
        /// Name of the stiffener.
        stiffener: String,
        /// Gap, m.
        gap: f64,
    },
    /// A sleeve is wider than the tube.
    #[error(
        "sleeve {stiffener} has a bore of {:.1} mm on a tube of {:.1} mm; a bore of {:.1} to {:.1} mm is accepted: \
         take another tube, or pack it and count the packing as part of its wall",
        bore * 1e3, diameter * 1e3, diameter * 1e3, widest * 1e3
    )]
    SleeveBore {
        /// Name of the stiffener.
        stiffener: String,
        /// Its inside diameter, m.
        bore: f64,
        /// Outside diameter of the tube, m.
        diameter: f64,
        /// Widest bore accepted, m.
        widest: f64,
    },
    /// An outline of the user's is drawn clear of the wall or into it.
    #[error(
        "the outline of stiffener {stiffener} is drawn {:.1} mm {} the wall; an outline that touches it is accepted: \
         {} its corners by {:.1} mm (their second coordinate is 0 at the outermost of the wall)",
        clear.abs() * 1e3,
        if *clear > 0.0 { "clear of" } else { "into" },
        if *clear > 0.0 { "lower" } else { "raise" },
        clear.abs() * 1e3
    )]
    DrawnOffWall {
        /// Name of the stiffener.
        stiffener: String,
        /// How far it is clear of the wall, m; negative where it is drawn into it.
        clear: f64,
    },
    /// A stiffener and the axle are of metals that are not welded to each other.
    #[error(
        "stiffener {stiffener} and the axle are of unlike metals: elastic modulus {:.0} against {:.0} GPa, density {:.0} \
         against {:.0} kg/m³; a metal within {:.0} % of the axle's is accepted, because unlike ones are not welded to each other",
        moduli[0] / 1e9, moduli[1] / 1e9, densities[0], densities[1], 1e2 * ALIKE
    )]
    UnlikeMetals {
        /// Name of the stiffener.
        stiffener: String,
        /// Elastic modulus of stiffener and axle, Pa.
        moduli: [f64; 2],
        /// Density of stiffener and axle, kg/m³.
        densities: [f64; 2],
    },
    /// A part of a stiffener has no room.
    #[error("the {what} of stiffener {stiffener} is {:.1} mm, {:.1} mm more than the {:.1} mm that it has", length * 1e3, (length - room) * 1e3, room * 1e3)]
    StiffenerRoom {
        /// Name of the stiffener.
        stiffener: String,
        /// What has no room.
        what: &'static str,
        /// Its length, m.
        length: f64,
        /// Room for it, m.
        room: f64,
    },
    /// A stiffener runs into something else on the axle.
    #[error("stiffener {stiffener} runs {:.1} mm into the {against}, which begins {:.1} mm from the center line on the {side}", by * 1e3, at * 1e3, side = side.word())]
    StiffenerMeets {
        /// Name of the stiffener.
        stiffener: String,
        /// Side of the vehicle.
        side: Side,
        /// What it runs into.
        against: &'static str,
        /// Where that begins, distance from the center line, m.
        at: f64,
        /// By how much, m.
        by: f64,
    },
    /// Two stiffeners have one name.
    #[error("two stiffeners are named {name}; each stiffener needs a name of its own")]
    DuplicateStiffener {
        /// The name.
        name: String,
    },
    /// Two stations have one name.
    #[error("two stations are named {name}; each station needs a name of its own")]
    DuplicateStation {
        /// The name.
        name: String,
    },
    /// No station has this name.
    #[error("the axle has no station {name}; accepted are {known}")]
    UnknownStation {
        /// The name.
        name: String,
        /// Names of all stations.
        known: String,
    },
    /// Pieces of the axle do not follow one another.
    #[error("the axle has a gap or an overlap at {:.1} mm from its center line", at * 1e3)]
    BrokenLine {
        /// Distance from the center line, m.
        at: f64,
    },
    /// The load on the road is less than the weight of what is between road and suspension.
    #[error(
        "the axle load of case {case} is {:.2} kN, less than the {:.2} kN that axle, hubs, wheels and tires weigh; a larger load is accepted",
        load / 1e3,
        weight / 1e3
    )]
    LoadBelowWeight {
        /// Name of the load case.
        case: String,
        /// Load on the road, N.
        load: f64,
        /// Unsprung weight, N.
        weight: f64,
    },
    /// The vehicle would tip over, or no wheel stays on the road.
    #[error("case {case} has no equilibrium: {reason}")]
    NoEquilibrium {
        /// Name of the load case.
        case: String,
        /// Why.
        reason: &'static str,
    },
    /// There is no derivative.
    #[error("derivatives by the adjoint are not known: {reason}")]
    NoDerivative {
        /// Why.
        reason: &'static str,
    },
    /// The wall at a seat cannot be solved.
    #[error("the wall at the {} seat: {error}", side.word())]
    Wall {
        /// Side of the vehicle.
        side: Side,
        /// Why.
        error: axlebow_wall::WallError,
    },
    /// The joint formulas are for round tubes.
    #[error("the joint formulas hold for round tubes, and the axle is no round tube at the {} seat; shells or a value are accepted", side.word())]
    FormulaNeedsTube {
        /// Side of the vehicle.
        side: Side,
    },
    /// What a seat and the wall under it do together has no stiffness.
    #[error("the wall at the {} seat stiffens it by more than its arm or spring pack gives way; a softer rotational stiffness, or a value of wall_flexibility, is accepted", side.word())]
    SeatTooStiff {
        /// Side of the vehicle.
        side: Side,
    },
    /// A section or material is impossible.
    #[error(transparent)]
    Section(#[from] SectionError),
    /// A road or its use is impossible.
    #[error(transparent)]
    Road(#[from] axlebow_road::RoadError),
    /// A ride that had to reach its end did not.
    #[error("the ride over {ride} did not reach its end: {reason}")]
    BrokenOff {
        /// Name of the ride.
        ride: String,
        /// Why.
        reason: String,
    },
    /// A strength check cannot be made.
    #[error(transparent)]
    Strength(#[from] axlebow_strength::StrengthError),
    /// A tire face is impossible.
    #[error(transparent)]
    Tread(#[from] axlebow_tread::TreadError),
    /// The equations could not be solved.
    #[error(transparent)]
    Fe(#[from] FeError),
}

/// Accepts a finite value above zero.
pub(crate) fn positive(what: &'static str, value: f64, unit: &'static str) -> Result<f64, AxleError> {
    if value.is_finite() && value > 0.0 {
        return Ok(value);
    }
    Err(AxleError::Value { what, value, unit, accepted: "a finite value greater than zero" })
}

/// Accepts a finite value of zero or more.
pub(crate) fn not_negative(what: &'static str, value: f64, unit: &'static str) -> Result<f64, AxleError> {
    if value.is_finite() && value >= 0.0 {
        return Ok(value);
    }
    Err(AxleError::Value { what, value, unit, accepted: "a finite value of zero or more" })
}

/// Accepts a finite value.
pub(crate) fn finite(what: &'static str, value: f64, unit: &'static str) -> Result<f64, AxleError> {
    if value.is_finite() {
        return Ok(value);
    }
    Err(AxleError::Value { what, value, unit, accepted: "a finite value" })
}
