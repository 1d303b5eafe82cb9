//! Axes, panels and charts that figures are put together from.

mod chart;
mod color_bar;
mod contour;
mod finite;
mod label_row;
pub(crate) mod layout;
mod log_axis;
mod log_panel;
mod map_panel;
mod panel;
mod round;
mod thinned;
mod zero_axis;

pub use chart::{Axis, Chart, Link, Series, charts};
pub(crate) use color_bar::{color, draw_color_bar};
pub(crate) use contour::Field;
pub(crate) use finite::finite;
pub(crate) use label_row::spread;
pub(crate) use log_axis::LogAxis;
pub(crate) use log_panel::{LogCurve, LogPanel, Place, log_share};
pub(crate) use map_panel::{MapCurve, MapPanel};
pub(crate) use panel::{Curve, Panel, Ticks, range_of};
pub(crate) use round::{levels, round_down};
pub(crate) use thinned::thinned;
pub(crate) use zero_axis::draw_axis;
