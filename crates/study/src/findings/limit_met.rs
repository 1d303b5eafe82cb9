//! Whether a design meets a limit.

use super::outcome::Row;
use crate::ask::Limit;
use crate::solve::Measure;

impl Limit {
    /// Whether a design meets it; one without that result does not.
    ///
    /// Arguments: `measures`, of the study.
    pub fn is_met(&self, row: &Row, measures: &[Measure]) -> bool {
        let mut own = measures.iter().filter(|measure| measure.name == self.of).peekable();
        own.peek().is_some() && own.all(|measure| row.value(measure).is_some_and(|value| self.admits(value)))
    }
}
