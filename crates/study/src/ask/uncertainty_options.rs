//! What an uncertainty study is asked.

/// What an uncertainty study says of each result.
#[derive(Debug, Clone, PartialEq)]
pub struct UncertaintyOptions {
    /// Shares of designs below the values that are told, above 0 and below 1.
    pub shares: Vec<f64>,
    /// Coverage of the intervals, above 0 and below 1.
    pub confidence: f64,
}
