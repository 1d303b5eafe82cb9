//! What a static run says, in the trade's words; SI inside.
//!
//! Signs: camber is positive with the tire's top leaning outward, toe is positive toe-in, forces on a
//! tire are positive forward, left and up. Resultants act on the face whose outward normal is +Y:
//! `moment_x` = EI·d(rx)/dy, positive where the axle is bent hollow side up (both ends raised).

pub(crate) mod static_readings;
pub(crate) mod stiffening_outcome;

pub use crate::sections::resultants::Resultants;

use crate::assembly::preheat::Preheat;
use crate::outcome::stiffening_outcome::StiffeningOutcome;
use crate::{Side, Sides, TireSlot, WallAtSeat};

/// Result of [`crate::flex`]: one entry for each load case.
#[derive(Debug, Clone, PartialEq)]
pub struct FlexOutcome {
    /// Mass of the bare axle: tube or housing and spindles, kg.
    pub axle_mass: f64,
    /// Mass between the road and the suspension: axle, hubs, brakes, wheels and tires, and whatever
    /// else is fixed to the axle, kg.
    pub unsprung_mass: f64,
    /// What the axle's wall does at each seat.
    pub walls: Sides<WallAtSeat>,
    /// Load cases in the order asked for.
    pub cases: Vec<CaseOutcome>,
    /// What each steel says about preheat, where stiffeners are welded on.
    pub preheat: Vec<Preheat>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// A doubt about a result, with what to do about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Warning {
    /// What is doubtful.
    pub text: String,
    /// What to do.
    pub advice: String,
}

/// Result of one load case.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseOutcome {
    /// Name of the case, kebab-case, such as `rated-load`.
    pub name: String,
    /// One sentence: what acts.
    pub description: String,
    /// Dynamic factor by which the static loads were multiplied.
    pub dynamic_factor: f64,
    /// Each wheel end.
    pub wheels: Sides<WheelOutcome>,
    /// The four bearings: left outer, left inner, right inner, right outer.
    pub bearings: Vec<BearingOutcome>,
    /// The seats: left, right.
    pub seats: Sides<SeatOutcome>,
    /// Named stations, from left to right.
    pub stations: Vec<StationOutcome>,
    /// The axle line from left to right, close enough to draw; two points share a `y` where a resultant
    /// jumps.
    pub diagram: Vec<DiagramPoint>,
    /// Fiber stress of largest magnitude along the axle, signed (tension positive), Pa.
    pub peak_stress: f64,
    /// Position of the peak stress, m.
    pub peak_stress_y: f64,
    /// Height of the axle's center above the straight line through the two hubs; negative when the
    /// middle sags below its ends, m.
    pub bow: f64,
    /// Rigid roll of the line through the two hubs on tires and road, about X, rad; not part of the camber
    /// change.
    pub axle_roll: f64,
    /// Largest unbalanced generalized force, over the largest applied one.
    pub equilibrium_residual: f64,
    /// What the stiffeners do, where there are any; of [`crate::flex`] only, because it takes two more solutions.
    pub stiffening: Option<StiffeningOutcome>,
}

/// A tire face (or the pair of a dual).
#[derive(Debug, Clone, PartialEq)]
pub struct WheelOutcome {
    /// Change of camber against the unloaded axle, from flex and bearings, rad.
    pub camber_change: f64,
    /// Manufactured camber plus the change, rad.
    pub camber: f64,
    /// Change of toe, rad.
    pub toe_change: f64,
    /// Manufactured toe plus the change, rad.
    pub toe: f64,
    /// Rise of the hub against the line through the axle seats: what comes off its clearance to frame and body, m.
    pub hub_rise: f64,
    /// Force of the road on this wheel end (both tires of a dual), upward, N.
    pub vertical_load: f64,
    /// Force of the road on this wheel end, to the left, N.
    pub lateral_load: f64,
    /// Force of the road on this wheel end, forward, N.
    pub longitudinal_load: f64,
    /// Each tire, outer first.
    pub contacts: Vec<ContactOutcome>,
    /// Camber change by source; the parts sum to `camber_change`.
    pub split: CamberSplit,
}

/// One tire on the road.
#[derive(Debug, Clone, PartialEq)]
pub struct ContactOutcome {
    /// Which tire of its end it is.
    pub slot: TireSlot,
    /// Lateral position of the contact on the undeformed axle, m.
    pub y: f64,
    /// Upward force of the road, N.
    pub vertical_load: f64,
    /// Force of the road to the left, N.
    pub lateral_load: f64,
    /// True when the tire has left the road.
    pub off_road: bool,
}

/// Camber change by source, rad.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CamberSplit {
    /// Bending (and twist and stretch) of tube, housing, spindle and stiffeners.
    pub bending: f64,
    /// Transverse shear of the same, and what the welds of stiffeners slip: shear between parts that bend together.
    pub shear: f64,
    /// Seats: arms, spring packs, bushes, and the wall under them.
    pub seat: f64,
    /// The part of `seat` that is the local flexibility of the wall.
    pub wall: f64,
    /// Bearings, as they give under load.
    pub bearing: f64,
    /// The wheel's disc and the hub's flange, as they lean under the wheel's leverage.
    pub disc: f64,
    /// Clearance of the bearings, as their hubs take it up.
    pub clearance: f64,
}

impl CamberSplit {
    /// The parts together: the camber change.
    pub fn sum(&self) -> f64 {
        self.bending + self.shear + self.seat + self.bearing + self.disc + self.clearance
    }
}

/// Load of one bearing.
#[derive(Debug, Clone, PartialEq)]
pub struct BearingOutcome {
    /// Side of the vehicle.
    pub side: Side,
    /// `inner` or `outer`.
    pub place: &'static str,
    /// Position, m.
    pub y: f64,
    /// Upward force of the hub on the spindle through this bearing, N.
    pub vertical: f64,
    /// Forward force of the hub on the spindle, N.
    pub fore_aft: f64,
    /// Force of the hub on the spindle along the axle, to the left, N.
    pub axial: f64,
    /// Magnitude of the radial force, N.
    pub radial: f64,
    /// Radial clearance that this bearing has in this case, m: the play of a wheel end is all in one of its two
    /// bearings.
    pub clearance: f64,
}

/// What goes through one seat.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SeatOutcome {
    /// Position of the seat's center, m.
    pub y: f64,
    /// Upward force of the suspension on the axle, N.
    pub vertical: f64,
    /// Moment of the suspension on the axle about X, N m.
    pub moment_x: f64,
    /// Rotation of the axle at the seat about X, rad.
    pub rotation: f64,
}

/// A named place along the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct StationOutcome {
    /// Name, such as `left-seat`.
    pub name: String,
    /// Position, m.
    pub y: f64,
    /// Displacement: ux, uy, uz (m), rx, ry, rz (rad), in the frame of the vehicle body.
    pub displacement: [f64; 6],
    /// Resultants of axle and stiffeners; where one jumps, the side with the larger bending moment.
    pub resultants: Resultants,
    /// What the axle carries of them itself, without its stiffeners.
    pub axle_resultants: Resultants,
    /// Fiber stress of largest magnitude, signed, Pa; zero where there is no beam (hubs, tire contacts).
    pub stress: f64,
}

/// A point of the drawn axle line.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DiagramPoint {
    /// Position, m.
    pub y: f64,
    /// Upward displacement in the frame of the vehicle body, m.
    pub uz: f64,
    /// Forward displacement, m.
    pub ux: f64,
    /// Resultants.
    pub resultants: Resultants,
    /// Fiber stress of largest magnitude, signed, Pa.
    pub stress: f64,
}
