//! A case that was run.

use std::borrow::Cow;

use axlebow_textbook::{Case, Checked, Provenance};
use axlebow_units::UnitSystem;

use crate::number::Numbers;

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

    /// A value that a beam file expects, in units of a system.
    ///
    /// - `place`: name of the file, and of the beam in it
    pub fn of_beam(own: &axlebow_beam::Checked, place: [&str; 2], system: UnitSystem) -> Self {
        let numbers = Numbers { system };
        let check = &own.check;
        let kind = check.asked.measured();
        let scaled = |value: f64| numbers.scaled(value, kind);
        let reference = scaled(check.expected);
        let tolerance = check.tolerance * if reference == 0.0 { 1.0 } else { reference.abs() };
        let checked = |computed: f64| {
            let error = scaled(computed) - reference;
            let relative_error = (reference != 0.0).then(|| error / reference.abs());
            let passed = own.passed();
            Checked { computed: scaled(computed), reference, error, relative_error, passed }
        };
        TextbookRow {
            outcome: own.computed.map(checked).ok_or_else(|| check.asked.missing().to_owned()),
            case: CaseCard {
                id: format!("{}: {}", place[0], check.name).into(),
                topic: place[1].to_owned().into(),
                quantity: check.name.clone().into(),
                formula: "none: stated in the file".into(),
                inputs: place[0].to_owned().into(),
                unit: numbers.unit(kind),
                source: check.source.clone().into(),
                provenance: Provenance::Stated,
                reference,
                tolerance,
                reason: None,
                difference: None,
            },
        }
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
