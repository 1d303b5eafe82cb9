//! What a search is asked.

/// What a search is asked.
#[derive(Debug, Clone, PartialEq)]
pub struct SearchOptions {
    /// Name of the result that is to be least or most.
    pub goal: String,
    /// Whether it is to be least.
    pub least: bool,
    /// Names of results that are traded against the goal; the less their magnitude the better.
    pub against: Vec<String>,
    /// Places from which continuous values are looked for.
    pub starts: usize,
    /// Which of all sets of such places.
    pub seed: u64,
}
