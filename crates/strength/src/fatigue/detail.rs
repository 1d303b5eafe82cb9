//! A detail that can crack, with its category.

use super::{DETAILS, LifeCurve};
use crate::StrengthError;

/// A detail that can crack, with its category.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Detail {
    /// How it is called in files and messages.
    pub name: &'static str,
    /// What it is, in words.
    pub words: &'static str,
    /// Stress range that lasts two million cycles (Pa).
    pub category: f64,
    /// Which stress drives it.
    pub stress: DetailStress,
    /// Whose rules its curve follows.
    pub rules: DetailRules,
    /// Table of those rules.
    pub table: &'static str,
    /// Whether it is at a weld, whose residual stress is near yield as welded.
    pub welded: bool,
}

/// Which stress drives a detail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DetailStress {
    /// Range of the nominal normal stress of the part.
    Normal,
    /// Range of the shear stress, on the throat of a weld.
    Shear,
    /// Range of the normal stress on the throat of a weld, for cracks from its root.
    Throat,
}

/// Whose rules a detail's curve follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DetailRules {
    /// EN 1993-1-9:2005.
    En,
    /// A. Hobbacher, recommendations of the International Institute of Welding, 2nd ed. 2016.
    Iiw,
}

impl DetailRules {
    /// Full reference.
    pub fn source(self) -> &'static str {
        match self {
            Self::En => "EN 1993-1-9:2005, sec. 7.1 and Tables 8.1-8.5 (from memory)",
            Self::Iiw => {
                "A. Hobbacher, Recommendations for Fatigue Design of Welded Joints and Components, 2nd ed., Springer \
                 2016, Tables 3.1-3.3 (from memory)"
            }
        }
    }
}

impl Detail {
    /// The detail of a name.
    ///
    /// Errors: [`StrengthError::UnknownDetail`], with the names that there are.
    pub fn named(name: &str) -> Result<&'static Self, StrengthError> {
        let found = DETAILS.iter().find(|detail| detail.name == name);
        found.ok_or_else(|| {
            let known = DETAILS.iter().map(|detail| detail.name).collect::<Vec<_>>().join(", ");
            StrengthError::UnknownDetail { name: name.to_owned(), known }
        })
    }

    /// Its life under ranges that vary, as on a road.
    ///
    /// EN: slope 3 to 5e6 cycles, 5 to 1e8, none below; shear slope 5 to 1e8, none below. International Institute of
    /// Welding: slope 3 to 1e7, then 5; shear slope 5 to 1e8, then 22.
    ///
    /// Errors: those of [`LifeCurve`], for a detail that is not of the catalogue.
    pub fn curve(&self) -> Result<LifeCurve, StrengthError> {
        let first = LifeCurve::through(self.category, 2e6, if self.shears() { 5.0 } else { 3.0 })?;
        match (self.rules, self.shears()) {
            (DetailRules::En, false) => first.then(5.0, 5e6)?.ending_at(1e8),
            (DetailRules::En, true) => first.ending_at(1e8),
            (DetailRules::Iiw, false) => first.then(5.0, 1e7),
            (DetailRules::Iiw, true) => first.then(22.0, 1e8),
        }
    }

    fn shears(&self) -> bool {
        self.stress == DetailStress::Shear
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_detail_has_a_curve_through_its_category_and_a_name_of_its_own() {
        for (i, detail) in DETAILS.iter().enumerate() {
            let range = detail.curve().unwrap().range(2e6);
            assert!((range / detail.category - 1.0).abs() < 1e-12, "{}", detail.name);
            assert!(DETAILS[..i].iter().all(|other| other.name != detail.name), "{}", detail.name);
            assert_eq!(Detail::named(detail.name), Ok(detail));
        }
    }

    #[test]
    fn an_unknown_name_is_answered_with_those_that_there_are() {
        let text = Detail::named("seat").unwrap_err().to_string();
        assert!(
            text.starts_with("no fatigue detail is called `seat`; accepted is one of: plain, longitudinal-"),
            "{text}"
        );
    }
}
