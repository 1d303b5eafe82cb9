//! What a report is of, beside the outcome.

mod axle_growth;
mod beside_ride;
mod card;
mod section_card;
mod stiffened_card;
mod textbook_row;

pub use axle_growth::AxleGrowth;
pub use beside_ride::BesideRide;
pub use card::{Assumed, InventedInput, ModelCard, PROGRAM};
pub use section_card::SectionCard;
pub use stiffened_card::{SectionStress, StiffenedCard};
pub use textbook_row::{CaseCard, TextbookRow};
