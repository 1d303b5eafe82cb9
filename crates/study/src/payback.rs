//! Whether a remedy of an axle pays.
//!
//! ```text
//! two axles --AxleChange::between--> what the remedy does to mass and wear
//! PaybackTerms + AxleChange --outcome--> CashFlowOutcome     (pure: no file, no axle)
//! file --PaybackStudy::from_bytes--> PaybackStudy --run--> PaybackOutcome
//! ```

mod cash_flow;
mod draws;
mod keys;
mod read;
mod sensitivity;
mod study;
mod terms;
mod wear;

pub use cash_flow::{Balance, CashFlowOutcome, PositionOutcome};
pub use draws::{DrawOptions, PaybackDraws};
pub use keys::PAYBACK;
pub use sensitivity::{BreakEven, Swing};
pub use study::{PaybackOutcome, PaybackRange, PaybackStudy};
pub use terms::{FleetTerms, MassTerms, PaybackInput, PaybackTerms, RemedyTerms, TireTerms};
pub use wear::{AxleChange, PaybackError, PositionWear, Rotation, TirePosition};
