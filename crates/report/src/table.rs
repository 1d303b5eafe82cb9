//! Tables for a terminal: plain text, at most 100 columns wide for ordinary names, no colour.

mod causes;
mod cautions;
mod compatibility;
mod cups;
mod flex;
mod flex_beside;
mod flex_brief;
mod grid;
mod modes;
mod response;
mod ride;
mod sections;
mod stiffened_sections;
mod stiffening;
mod strength;
mod study;
mod study_beside;
mod study_map;
mod study_rank;
mod textbook;
mod walls;
mod tire;

pub use causes::causes;
pub use compatibility::compatibility;
pub use cups::cups;
pub use flex::flex;
pub use flex_beside::flex_beside;
pub use flex_brief::flex_brief;
pub use modes::modes;
pub use response::response;
pub use ride::{basis_comparison, ride};
pub use sections::sections;
pub use strength::strength;
pub use study::study;
pub use textbook::textbook;
pub use tire::tire;
