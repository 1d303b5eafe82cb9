//! How one freedom of a node is held.

/// How one freedom of a node is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// Not at all.
    Free,
    /// At a value (m or rad).
    Rigid(f64),
    /// By a spring whose foot is at a value.
    Elastic {
        /// Stiffness (N/m or N m/rad).
        rate: f64,
        /// Where the spring is slack (m or rad).
        value: f64,
    },
}
