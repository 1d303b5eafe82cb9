//! The blocks of a page.

use super::{Page, Table};
use crate::Svg;

/// A part of a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// Heads the blocks that follow.
    Heading(String),
    /// Running text of its own.
    Paragraph(String),
    /// Running text that belongs to what stands above it.
    Note(String),
    /// Items that belong to what stands above them, one below the other.
    List(Vec<String>),
    /// Rows of cells.
    Table(Table),
    /// A picture; a terminal leaves it out.
    Figure(Box<Svg>),
    /// A doubt about the result, with what to do about it.
    Warning(String),
    /// What must be known before anybody acts on the result.
    Caution(Caution),
    /// How many values are defaults.
    Defaults(String),
    /// A page within a page.
    Chapter(Box<Page>),
}

impl Block {
    /// Running text of its own.
    pub(crate) fn paragraph(text: impl Into<String>) -> Self {
        Block::Paragraph(text.into())
    }

    /// Running text that belongs to what stands above it.
    pub(crate) fn note(text: impl Into<String>) -> Self {
        Block::Note(text.into())
    }

    /// A heading.
    pub(crate) fn heading(text: impl Into<String>) -> Self {
        Block::Heading(text.into())
    }

    /// Whether the block stands close to the one above it.
    pub(super) fn is_attached(&self) -> bool {
        matches!(self, Block::Note(_) | Block::List(_))
    }
}

/// What must be known before anybody acts on a result.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// Before what, such as "Before anybody welds:".
    pub heading: String,
    /// The cautions, a sentence or two each.
    pub items: Vec<String>,
}
