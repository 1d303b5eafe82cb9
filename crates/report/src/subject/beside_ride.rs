//! What a report of a ride has beside the ride.

use axlebow_axle::{BasisComparison, StepRefinement};
use axlebow_study::DrawnRides;

/// What a report of a ride has beside the ride; by default nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct BesideRide<'a> {
    /// Means over several random roads, of which the ride is the first.
    pub draws: Option<&'a DrawnRides>,
    /// The same ride in a reduced basis.
    pub comparison: Option<&'a BasisComparison>,
    /// The same ride by shorter steps.
    pub refinement: Option<&'a StepRefinement>,
}
