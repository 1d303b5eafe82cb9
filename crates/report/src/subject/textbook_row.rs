//! A textbook case that was run.

use axlebow_textbook::{Case, Checked};

/// A textbook case that was run, ready to be shown.
#[derive(Debug, Clone)]
pub struct TextbookRow {
    /// The case.
    pub case: Case,
    /// What came out, or why nothing did.
    pub outcome: Result<Checked, String>,
}

impl TextbookRow {
    /// Runs a case.
    pub fn of(case: Case) -> Self {
        TextbookRow { outcome: case.outcome(), case }
    }

    /// Whether the error is within the tolerance.
    pub fn passed(&self) -> bool {
        self.outcome.as_ref().is_ok_and(|checked| checked.passed)
    }

    /// What came out, if anything did.
    pub(crate) fn checked(&self) -> Option<&Checked> {
        self.outcome.as_ref().ok()
    }

    /// Error that is allowed, in the unit of the value.
    pub fn tolerance(&self) -> f64 {
        self.case.tolerance.allowed(self.case.reference)
    }
}
