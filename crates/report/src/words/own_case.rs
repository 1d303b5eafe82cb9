//! A case of a user's own file as a row of the textbook.

use axlebow_textbook::{Checked, Provenance};
use axlebow_units::UnitSystem;

use crate::number::Numbers;
use crate::{CaseCard, TextbookRow};

impl TextbookRow {
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
}
