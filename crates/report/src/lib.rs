//! Outcomes to answers, pages, JSON and plots; does not know the physics.
//!
//! Everything here takes finished outcomes, in SI, and gives text or pictures. Display units are chosen by
//! [`ModelCard::system`]; JSON is always SI. The same input gives the same bytes.

mod animation;
pub mod answer;
mod beside_ride;
mod card;
mod causes_words;
mod compatibility_words;
pub mod csv;
mod error;
mod fit_words;
pub mod json;
mod number;
mod page;
#[cfg(feature = "parquet")]
pub mod parquet;
pub mod plot;
mod response_words;
mod ride_columns;
mod search_words;
mod seat_words;
mod section_card;
mod study_columns;
mod study_words;
mod svg;
pub mod table;
mod textbook_row;
mod tire_words;
mod uncertainty_words;
mod vtu;
mod warning_words;

pub use animation::ride_animation;
pub use beside_ride::BesideRide;
pub use card::{Assumed, InventedInput, ModelCard};
pub use error::ReportError;
pub use page::{Block, Caution, Column, Page, Table};
pub use section_card::{SectionCard, SectionStress, StiffenedCard};
pub use study_words::study_findings;
pub use svg::Svg;
pub use textbook_row::TextbookRow;
pub use vtu::vtu;
