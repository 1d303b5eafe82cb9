//! Colors of every picture.
//!
//! The colors of series are those that Okabe and Ito (Color Universal Design, 2008) chose to be told apart
//! with any kind of color vision, darkest first; grays carry everything that is not a result.

/// Text and outlines.
pub(crate) const INK: &str = "#1f2933";
/// Notes, axis numbers.
pub(crate) const MUTED: &str = "#5b6775";
/// The unloaded axle, leader lines.
pub(crate) const FAINT: &str = "#9aa5b1";
/// Grid lines.
pub(crate) const GRID: &str = "#e4e7eb";
/// Steel.
pub(crate) const STEEL: &str = "#8fa3b8";
/// Tire rubber.
pub(crate) const RUBBER: &str = "#d5dae1";
/// Ground under the road.
pub(crate) const GROUND: &str = "#eceff2";
/// Bending, first series.
pub(crate) const BLUE: &str = "#0072b2";
/// Stress, loads, second series.
pub(crate) const VERMILLION: &str = "#d55e00";

/// Less than the rest.
pub(crate) const GREEN: &str = "#009e73";

/// Stiffeners.
pub(crate) const ORANGE: &str = "#e69f00";

/// Colors of series, in turn.
pub(crate) const SERIES: [&str; 6] = [BLUE, VERMILLION, GREEN, "#a0457a", ORANGE, "#56b4e9"];
