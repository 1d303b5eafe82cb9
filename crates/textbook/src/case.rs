//! One case.

/// Computes the value of a case, or says why there is none.
pub type Compute = fn() -> Result<f64, String>;

/// Formula and inputs of a case.
pub(crate) type Basis = [&'static str; 2];

/// One case: a value of a source, and the code that must come to it.
#[derive(Debug, Clone, Copy)]
pub struct Case {
    /// `<quantity>_matches_<source>_<place>_<case>`.
    pub id: &'static str,
    /// What it is about, to group by.
    pub topic: &'static str,
    /// What is asked, in words.
    pub quantity: &'static str,
    /// Formula of the reference value; "none" where it has none.
    pub formula: &'static str,
    /// What the formula and the code under test are given.
    pub inputs: &'static str,
    /// Unit of the reference value; empty for a plain number.
    pub unit: &'static str,
    /// Full reference, with "from memory" where the page was not at hand.
    pub source: &'static str,
    /// Where the digits of the reference value come from.
    pub provenance: Provenance,
    /// The reference value.
    pub reference: f64,
    /// How near the computed value must come.
    pub tolerance: Tolerance,
    /// The computed value.
    pub computed: Compute,
    /// Where the theory under test differs from the source's, and by how much.
    pub difference: Option<&'static str>,
}

/// Where the digits of a reference value come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Provenance {
    /// They stand in the source.
    Printed,
    /// They were worked out from the formula, which is the source's.
    ClosedForm,
    /// They come from another numerical method or another program.
    Independent,
    /// A user's own file states them.
    Stated,
    /// They are remembered to stand in the source, whose page was not at hand, and were not worked out again.
    Recalled,
}

impl Provenance {
    /// All of the textbook, the strongest claim first.
    pub const ALL: [Self; 4] = [Self::Printed, Self::ClosedForm, Self::Independent, Self::Recalled];

    /// The words for it in every output.
    pub fn label(self) -> &'static str {
        match self {
            Self::Printed => "printed",
            Self::ClosedForm => "closed form recomputed",
            Self::Independent => "independent computation",
            Self::Recalled => "value from memory",
            Self::Stated => "stated in the file",
        }
    }
}

/// How near a value must come to the reference value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// In the unit of the case: half the last digit of the reference value.
    Absolute(f64),
    /// As a share of the reference value.
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
    /// The computed value.
    pub computed: f64,
    /// The reference value.
    pub reference: f64,
    /// The computed value less the reference value.
    pub error: f64,
    /// The error over the size of the reference value; none where that is zero.
    pub relative_error: Option<f64>,
    /// Whether the error is within the tolerance.
    pub passed: bool,
}

impl Case {
    /// Runs the case.
    ///
    /// Errors: the text of what kept the code from an answer; such a case has not passed.
    pub fn outcome(&self) -> Result<Checked, String> {
        let (computed, reference) = ((self.computed)()?, self.reference);
        let error = computed - reference;
        let passed = error.abs() <= self.tolerance.allowed(reference);
        Ok(Checked { computed, reference, error, relative_error: self.relative(error), passed })
    }

    /// The relative error that is allowed; none where the reference value is zero.
    pub fn relative_tolerance(&self) -> Option<f64> {
        self.relative(self.tolerance.allowed(self.reference))
    }

    fn relative(&self, error: f64) -> Option<f64> {
        (self.reference != 0.0).then(|| error / self.reference.abs())
    }

    /// The same case, its reference value given to a last digit worth `last_digit`.
    pub(crate) const fn rounded_to(self, last_digit: f64) -> Self {
        Self { tolerance: Tolerance::Absolute(0.5 * last_digit), ..self }
    }

    /// The same case by another source.
    pub(crate) const fn sourced(self, source: &'static str) -> Self {
        Self { source, ..self }
    }

    /// The same case with digits of another provenance.
    pub(crate) const fn with_provenance(self, provenance: Provenance) -> Self {
        Self { provenance, ..self }
    }

    /// The same case in another unit.
    pub(crate) const fn measured_in(self, unit: &'static str) -> Self {
        Self { unit, ..self }
    }

    /// The same case for an exact reference value, to be met but for rounding.
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
    /// The error allowed beside a reference value, in its unit.
    pub fn allowed(&self, reference: f64) -> f64 {
        match *self {
            Self::Absolute(allowed) => allowed,
            Self::Relative { share, .. } => share * reference.abs(),
        }
    }

    /// Why more than half the last digit is allowed; none where it is not.
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
        formula: "1/2",
        inputs: "none",
        unit: "",
        source: "",
        provenance: Provenance::ClosedForm,
        reference: 0.5,
        tolerance: Tolerance::Absolute(0.05),
        computed: || Ok(0.54),
        difference: None,
    };

    #[test]
    fn a_case_passes_up_to_half_its_last_digit() {
        assert!(HALF.outcome().unwrap().passed);
        assert!(!HALF.rounded_to(0.01).outcome().unwrap().passed);
        assert!(HALF.within(0.09, "test").outcome().unwrap().passed);
    }

    #[test]
    fn no_number_never_passes() {
        assert!(!Case { computed: || Ok(f64::NAN), ..HALF }.outcome().unwrap().passed);
        assert!(Case { computed: || Err("none".into()), ..HALF }.outcome().is_err());
    }

    #[test]
    fn relative_errors_are_over_the_size_of_the_reference() {
        let negative = Case { reference: -0.5, computed: || Ok(-0.45), ..HALF }.outcome().unwrap();
        assert!((negative.relative_error.unwrap() - 0.1).abs() < 1e-12);
        let zero = Case { reference: 0.0, ..HALF };
        assert_eq!((zero.outcome().unwrap().relative_error, zero.relative_tolerance()), (None, None));
    }
}
