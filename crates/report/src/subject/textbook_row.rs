//! A case that was run.

use std::borrow::Cow;

use axlebow_textbook::{Case, Checked, Provenance};

/// A case that was run, of the textbook or of a user's own file, ready to be shown.
#[derive(Debug, Clone)]
pub struct TextbookRow {
    /// The case.
    pub case: CaseCard,
    /// What came out, or why nothing did.
    pub outcome: Result<Checked, String>,
}

/// What a case asks.
#[derive(Debug, Clone)]
pub struct CaseCard {
    /// Its name, different from that of every other case.
    pub id: Cow<'static, str>,
    /// What it is about, to group by.
    pub topic: Cow<'static, str>,
    /// What is asked, in words.
    pub quantity: Cow<'static, str>,
    /// Formula of the reference value; "none" where it has none.
    pub formula: Cow<'static, str>,
    /// What the formula and the code under test are given.
    pub inputs: Cow<'static, str>,
    /// Unit of the reference value; empty for a plain number.
    pub unit: &'static str,
    /// Full reference.
    pub source: Cow<'static, str>,
    /// Where the digits of the reference value come from.
    pub provenance: Provenance,
    /// The reference value.
    pub reference: f64,
    /// Error that is allowed, in the unit.
    pub tolerance: f64,
    /// Why more than half the last digit is allowed; none where it is not.
    pub reason: Option<&'static str>,
    /// Where the theory under test differs from the source's, and by how much.
    pub difference: Option<&'static str>,
}

impl TextbookRow {
    /// Runs a case of the textbook.
    pub fn of(case: Case) -> Self {
        let card = CaseCard {
            id: case.id.into(),
            topic: case.topic.into(),
            quantity: case.quantity.into(),
            formula: case.formula.into(),
            inputs: case.inputs.into(),
            unit: case.unit,
            source: case.source.into(),
            provenance: case.provenance,
            reference: case.reference,
            tolerance: case.tolerance.allowed(case.reference),
            reason: case.tolerance.reason(),
            difference: case.difference,
        };
        TextbookRow { outcome: case.outcome(), case: card }
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
        self.case.tolerance
    }
}

impl CaseCard {
    /// The relative error that is allowed; none where the reference value is zero.
    pub fn relative_tolerance(&self) -> Option<f64> {
        (self.reference != 0.0).then(|| self.tolerance / self.reference.abs())
    }
}
