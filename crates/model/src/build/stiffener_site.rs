//! Which stiffener of a file is meant.

use super::builder::Builder;
use crate::content::{Assumed, Table};

/// A stiffener's table and its place in the list.
#[derive(Clone, Copy)]
pub(crate) struct Site<'t> {
    pub table: &'t Table,
    pub number: usize,
}

impl Builder<'_> {
    /// Lists what a key that is left out is taken to be.
    pub(crate) fn assume(&mut self, site: Site<'_>, key: &str, text: String) {
        let meaning = site.table.spec().key(key).map_or("", |spec| spec.meaning);
        self.assumed.push(Assumed { path: format!("stiffener[{}].{key}", site.number), text, meaning });
    }
}
