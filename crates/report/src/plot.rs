//! Pictures of outcomes: SVG text that is the same on every machine.

pub(crate) mod bend;
mod beside_figure;
mod chart;
pub(crate) mod check;
mod contour;
mod diagram;
mod drawing;
mod flex_figure;
mod label_row;
mod log_axis;
mod log_panel;
mod map_figure;
mod map_panel;
mod mode_panel;
mod modes_figure;
pub(crate) mod palette;
pub(crate) mod panel;
mod rear_view;
mod response_figure;
pub(crate) mod ride_figure;
pub(crate) mod ride_panel;
mod section_figure;
mod spectrum_axes;
mod spectrum_figure;
mod stiffened_panel;
mod study_figure;
pub(crate) mod text;
mod thinned;
mod tire_figure;
mod tire_panel;
mod tire_round;

pub use chart::{Axis, Chart, Link, Series, charts};
pub use drawing::{Drawing, LinePoint, StiffenerDrawing, TireDrawing};
pub use flex_figure::flex_figure;
pub use modes_figure::modes_figure;
pub use response_figure::response_figure;
pub use ride_figure::ride_figure;
pub use section_figure::section_figure;
pub use spectrum_figure::spectrum_figure;
pub use tire_figure::tire_figure;

pub(crate) use rear_view::largest_radius;
pub use study_figure::study_figure;
pub(crate) use text::wrapped;
