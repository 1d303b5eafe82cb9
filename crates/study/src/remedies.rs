//! What would make the tires of an axle wear less: every standard remedy and a user's own, tried on the axle and ranked.

mod change;
mod outcome;
mod own;
mod remedy;
mod run;
mod state;
mod top_angle;

pub use change::Change;
pub use outcome::{Money, RankBy, RemediesOutcome, Standing, Tried, WhyNot};
pub use own::{OwnRemedy, REMEDIES, own_remedies};
pub use remedy::{DoneBy, Remedy, Standard, StockAngle};
pub use run::{RemedyOptions, remedies};
pub use state::{Binding, CupGrowth, Shoulder, ShoulderWear, State, StateOverRoad};
pub use top_angle::TopAngle;
