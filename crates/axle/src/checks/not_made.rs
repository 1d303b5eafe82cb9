//! A check that could not be made.

/// A check that could not be made: it is no pass.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotMade {
    /// Name of the station or the part.
    pub place: String,
    /// What would be checked.
    pub what: String,
    /// Why it was not.
    pub reason: String,
    /// What to do so that it is.
    pub advice: String,
}
