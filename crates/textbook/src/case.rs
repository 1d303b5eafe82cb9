//! One published case.

/// Gives our value of a case, or says why there is none.
pub type Ours = fn() -> Result<f64, String>;

/// One published case.
#[derive(Debug, Clone, Copy)]
pub struct Case {
    /// `<quantity>_matches_<source>_<place>_<case>`.
    pub id: &'static str,
    /// What it is about, to group by.
    pub topic: &'static str,
    /// What is asked, in words.
    pub quantity: &'static str,
    /// Unit of the printed value; empty for a plain number.
    pub unit: &'static str,
    /// Full reference, with "from memory" where the page was not at hand.
    pub source: &'static str,
    /// The printed value.
    pub printed: f64,
    /// How near ours must come.
    pub tolerance: Tolerance,
    /// Our value.
    pub ours: Ours,
    /// Where our theory differs from the source's, and by how much.
    pub difference: Option<&'static str>,
}

/// How near a value must come to the printed one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// In the unit of the case: half the last printed digit.
    Absolute(f64),
    /// As a share of the printed value.
    Relative {
        /// The share.
        share: f64,
        /// Why more than half the last digit is allowed; none where it is less.
        reason: Option<&'static str>,
    },
}

/// A case that has been run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Checked {
    /// Our value.
    pub ours: f64,
    /// The printed value.
    pub printed: f64,
    /// Ours less the printed value.
    pub error: f64,
    /// Whether the error is within the tolerance.
    pub passed: bool,
}

impl Case {
    /// Runs the case.
    ///
    /// Errors: the text of what kept our code from an answer; such a case has not passed.
    pub fn outcome(&self) -> Result<Checked, String> {
        let (ours, printed) = ((self.ours)()?, self.printed);
        let error = ours - printed;
        let passed = error.abs() <= self.tolerance.allowed(printed);
        Ok(Checked { ours, printed, error, passed })
    }

    /// The same case, printed with its last digit worth `last_digit`.
    pub(crate) const fn printed_to(self, last_digit: f64) -> Self {
        Self { tolerance: Tolerance::Absolute(0.5 * last_digit), ..self }
    }

    /// The same case by another source.
    pub(crate) const fn sourced(self, source: &'static str) -> Self {
        Self { source, ..self }
    }

    /// The same case in another unit.
    pub(crate) const fn measured_in(self, unit: &'static str) -> Self {
        Self { unit, ..self }
    }

    /// The same case for an exact printed value, to be met but for rounding of ours.
    pub(crate) const fn exact(self) -> Self {
        Self { tolerance: Tolerance::Relative { share: 1e-9, reason: None }, ..self }
    }

    /// The same case with a wider tolerance, and why.
    pub(crate) const fn within(self, share: f64, reason: &'static str) -> Self {
        Self { tolerance: Tolerance::Relative { share, reason: Some(reason) }, ..self }
    }

    /// The same case with a note on where the theories differ.
    pub(crate) const fn differing(self, difference: &'static str) -> Self {
        Self { difference: Some(difference), ..self }
    }
}

impl Tolerance {
    /// The error allowed beside a printed value, in its unit.
    pub fn allowed(&self, printed: f64) -> f64 {
        match *self {
            Self::Absolute(allowed) => allowed,
            Self::Relative { share, .. } => share * printed.abs(),
        }
    }

    /// Why more than half the last printed digit is allowed; none where it is not.
    pub fn reason(&self) -> Option<&'static str> {
        match *self {
            Self::Absolute(_) => None,
            Self::Relative { reason, .. } => reason,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HALF: Case = Case {
        id: "half_matches_itself",
        topic: "test",
        quantity: "half",
        unit: "",
        source: "",
        printed: 0.5,
        tolerance: Tolerance::Absolute(0.05),
        ours: || Ok(0.54),
        difference: None,
    };

    #[test]
    fn a_case_passes_up_to_half_its_last_digit() {
        assert!(HALF.outcome().unwrap().passed);
        assert!(!HALF.printed_to(0.01).outcome().unwrap().passed);
        assert!(HALF.within(0.09, "test").outcome().unwrap().passed);
    }

    #[test]
    fn no_number_never_passes() {
        assert!(!Case { ours: || Ok(f64::NAN), ..HALF }.outcome().unwrap().passed);
        assert!(Case { ours: || Err("none".into()), ..HALF }.outcome().is_err());
    }
}
