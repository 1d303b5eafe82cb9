//! One thing across many others: tires across axles, a ride across random roads.

mod compatibility;
mod drawn_rides;

pub use compatibility::{Compatibility, CompatibilityOutcome, TableAxle, TireCell, TireColumn};
pub use drawn_rides::{DrawnRide, DrawnRides, DrawnWheel};
