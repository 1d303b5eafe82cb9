//! Outcomes to answers, pages, JSON and plots; does not know the physics.
//!
//! Everything here takes finished outcomes, in SI, and gives text or pictures. Display units are chosen by
//! [`ModelCard::system`]; JSON is always SI. The same input gives the same bytes.

mod animation;
pub mod answer;
mod columns;
pub mod csv;
mod error;
pub mod json;
mod number;
mod page;
mod pages;
mod panels;
#[cfg(feature = "parquet")]
pub mod parquet;
pub mod plot;
mod sheet;
mod subject;
mod svg;
mod vtu;
mod words;

pub use animation::{OtherRide, axle_scene, ride_animation, ride_frames, rides_animation};
pub use error::ReportError;
pub use page::{Block, Caution, Column, Page, Table};
pub use sheet::{DrawingOptions, Paper, Question, ShopDrawing, WeldSymbols};
pub use subject::{
    Assumed, AxleGrowth, BesideRide, CaseCard, InventedInput, ModelCard, SectionCard, SectionStress,
    StiffenedCard, TextbookRow,
};
pub use svg::Svg;
pub use vtu::{RideMoment, collection, modes_vtu, ride_moments, vtu};
pub use words::{CauseInWords, GuidedWords, guided_words, next_checks, study_findings};

/// The page of each command: its answer, then its tables.
pub mod table {
    pub use crate::pages::*;
}
