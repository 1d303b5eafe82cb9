//! Shop drawings: the axle with its stiffeners as a shop makes it, with the words that go with it.
//!
//! One drawing is made of primitives in millimeters of paper; SVG, DXF and PDF are three ways to write it down.

mod dimension;
mod elevation;
mod layout;
mod letters;
mod notes;
mod paper;
mod primitive;
pub(crate) mod proposal;
pub(crate) mod questions;
mod section_view;
mod shop_drawing;
mod shop_notes;
mod silhouette;
mod title_block;
mod to_dxf;
mod to_pdf;
mod to_svg;
mod view;
mod weld_symbol;

pub use paper::Paper;
pub use questions::Question;
pub use shop_drawing::{DrawingOptions, ShopDrawing};
pub use silhouette::Silhouette;
pub use weld_symbol::WeldSymbols;
