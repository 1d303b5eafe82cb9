//! Pictures of outcomes: SVG text that is the same on every machine.

mod bend;
mod chart;
mod check;
mod diagram;
mod drawing;
mod flex_figure;
mod label_row;
mod mode_panel;
mod modes_figure;
pub(crate) mod palette;
mod panel;
mod rear_view;
mod ride_figure;
mod ride_panel;
mod section_figure;
mod study_figure;
mod text;
mod thinned;

pub use chart::{Axis, Chart, Link, Series, charts};
pub use drawing::{Drawing, LinePoint, TireDrawing};
pub use flex_figure::flex_figure;
pub use modes_figure::modes_figure;
pub use ride_figure::ride_figure;
pub use section_figure::section_figure;
pub use study_figure::study_figure;
