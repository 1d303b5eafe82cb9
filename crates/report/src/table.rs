//! Tables for a terminal: plain text, at most 100 columns wide for ordinary names, no colour.

mod flex;
mod flex_brief;
mod grid;
mod sections;
mod study;
mod textbook;

pub use flex::flex;
pub use flex_brief::flex_brief;
pub use sections::sections;
pub use study::study;
pub use textbook::textbook;
