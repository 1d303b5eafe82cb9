//! What causes contribute.

use axlebow_axle::Sides;
use axlebow_axle::outcome::Warning;

use super::cause::Cause;

/// Result of [`super::causes`] and [`super::causes_over`].
#[derive(Debug, Clone, PartialEq)]
pub struct CausesOutcome {
    /// What was looked at.
    pub subject: Subject,
    /// Each wheel end.
    pub wheels: Sides<WheelCauses>,
    /// What the axle's rigid roll on its tires and the road adds to the camber of each wheel against the road, positive with
    /// the tire's top outward; over a ride its largest less its smallest; rad. It is no flex, and no cause's.
    pub rigid_roll: Sides<f64>,
    /// How far a hub can tilt freely within its endplay.
    pub endplay_tilt: Sides<EndplayTilt>,
    /// Axles that were solved.
    pub solved: usize,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// What was looked at.
#[derive(Debug, Clone, PartialEq)]
pub enum Subject {
    /// Camber and toe against the line through the hubs in a load case.
    Standing {
        /// Name of the case.
        case: String,
        /// What acts.
        description: String,
    },
    /// Peak-to-peak camber and toe over a ride.
    Ride {
        /// Name of the road.
        name: String,
        /// Speed, m/s.
        speed: f64,
    },
}

/// What makes a wheel lean and steer.
#[derive(Debug, Clone, PartialEq)]
pub struct WheelCauses {
    /// Of camber.
    pub camber: Contribution,
    /// Of toe.
    pub toe: Contribution,
}

/// An angle and its causes.
#[derive(Debug, Clone, PartialEq)]
pub struct Contribution {
    /// Each cause that the axle has.
    pub shares: Vec<CauseShare>,
    /// What is left without all of them: rounding, and a ten-thousandth of what was made rigid; rad.
    pub rest: f64,
    /// The angle, the sum of the shares and the rest, rad.
    pub total: f64,
}

/// What one cause contributes, rad.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CauseShare {
    /// The cause.
    pub cause: Cause,
    /// Its share, the mean over all orders in which causes could come in (Shapley).
    pub share: f64,
    /// The angle were it the only cause, less the rest.
    pub alone: f64,
    /// What removing it alone takes off the axle as it is.
    pub removing: f64,
    /// Half of how far the angle moves as the cause's input goes from one end of its tolerance to the other.
    pub uncertainty: f64,
}

/// How far a hub can tilt freely within its endplay, either way from the middle, in camber and toe alike, rad: radial play
/// over the span of the bearings (geometry; an upper bound for a loaded hub).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct EndplayTilt {
    /// With the endplay of the model.
    pub own: f64,
    /// At the least and at the largest endplay that TMC RP 618 accepts, 0.025 and 0.127 mm.
    pub accepted: [f64; 2],
}

impl Contribution {
    /// What causes do together beyond what each takes off when removed alone.
    pub fn interaction(&self) -> f64 {
        self.total - self.rest - self.shares.iter().map(|share| share.removing).sum::<f64>()
    }
}
