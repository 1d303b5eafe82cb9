//! What a command has to say, before anybody decides how it is shown.
//!
//! A command makes one [`Page`] from its outcome. The terminal prints [`Page::text`]; whatever else shows a result renders the
//! same blocks, so that no command writes a second table.

mod block;
mod html;
mod paragraph;
mod table;
mod table_text;
mod text;

pub use block::{Block, Caution};
pub(crate) use paragraph::paragraph;
pub(crate) use table::FAILS;
pub use table::{Column, Table};

use crate::{ModelCard, Svg};

/// A result for a reader: what it is of, the answer, and the blocks that stand behind it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// What the result is of, such as the name of the model.
    pub title: Option<String>,
    /// What must be known of the input before anything else, such as that it is invented.
    pub subtitle: Option<String>,
    /// What happens, how much, why, and what to do, a sentence each.
    pub answer: Vec<String>,
    /// Tables and text behind the answer.
    pub blocks: Vec<Block>,
}

impl Page {
    /// A page of a model that begins with an answer.
    pub(crate) fn of_model(card: &ModelCard, answer: Vec<String>) -> Self {
        Page::titled(card.name.clone(), card, answer)
    }

    /// A page with a title of its own on what the card describes.
    pub(crate) fn titled(title: String, card: &ModelCard, answer: Vec<String>) -> Self {
        Page { title: Some(title), subtitle: card.invented_note(), answer, blocks: Vec::new() }
    }

    /// Adds a block.
    pub(crate) fn add(&mut self, block: Block) {
        self.blocks.push(block);
    }

    /// Adds a table.
    pub(crate) fn add_table(&mut self, table: Table) {
        self.blocks.push(Block::Table(table));
    }

    /// Adds blocks.
    pub(crate) fn extend(&mut self, blocks: impl IntoIterator<Item = Block>) {
        self.blocks.extend(blocks);
    }

    /// The page with pictures before its first block.
    pub fn with_figures(mut self, pictures: impl IntoIterator<Item = Svg>) -> Self {
        self.blocks.splice(0..0, pictures.into_iter().map(|picture| Block::Figure(Box::new(picture))));
        self
    }

    /// The page as one HTML document that needs nothing else, with what the card says it was made from.
    pub fn html(&self, card: &ModelCard) -> String {
        html::page_html(self, &card.provenance())
    }

    /// The same for a page that no model made.
    pub fn html_alone(&self) -> String {
        html::page_html(self, &[format!("axlebow {}", env!("CARGO_PKG_VERSION"))])
    }

    /// The page for a terminal: plain text of at most 100 columns for ordinary names.
    pub fn text(&self) -> String {
        text::page_text(self)
    }
}
