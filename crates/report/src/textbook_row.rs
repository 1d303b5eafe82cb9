//! A published case that was run.

/// A published case that was run, ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct TextbookRow {
    /// Name of the case.
    pub id: &'static str,
    /// What it is about.
    pub topic: &'static str,
    /// What is asked.
    pub quantity: &'static str,
    /// Unit of the printed value; empty for a plain number.
    pub unit: &'static str,
    /// Full reference.
    pub source: &'static str,
    /// The printed value.
    pub printed: f64,
    /// Our value, or why there is none.
    pub ours: Result<f64, String>,
    /// Error that is allowed, in the unit of the value.
    pub allowed: f64,
    /// Why more than half the last printed digit is allowed, where it is.
    pub reason: Option<&'static str>,
    /// Where our theory differs from the source's.
    pub difference: Option<&'static str>,
    /// Whether the error is within what is allowed.
    pub passed: bool,
}
