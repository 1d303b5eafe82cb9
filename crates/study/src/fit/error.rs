//! Why a fit could not be made.

/// Why a fit could not be made.
#[non_exhaustive]
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FitError {
    /// Too few readings.
    #[error(
        "too few readings for {unknowns} unknowns: {readings}; accepted: at least as many readings as unknowns, or fewer \
         unknowns by --unknown"
    )]
    TooFew {
        /// Count of readings.
        readings: usize,
        /// Count of unknowns.
        unknowns: usize,
    },
    /// An unknown that cannot be one.
    #[error("unknown {path}: {why}")]
    Unknown {
        /// The path.
        path: String,
        /// Why.
        why: String,
    },
    /// An unknown that is asked for twice.
    #[error("unknown {path}: it is asked for twice")]
    Twice {
        /// The path.
        path: String,
    },
    /// An unknown that starts where its logarithm does not exist.
    #[error(
        "unknown {path}: a fit cannot start from 0; accepted: an initial value above zero in the model file"
    )]
    StartsAtZero {
        /// The path.
        path: String,
    },
    /// A reading that the model as it is cannot give.
    #[error("the reading in line {line} cannot be had of the model: {why}")]
    Reading {
        /// Line of the readings file, from 1.
        line: usize,
        /// Why.
        why: String,
    },
    /// The model cannot be solved near the initial value.
    #[error("the model cannot be solved beside the initial value: {why}")]
    Beside {
        /// Why.
        why: String,
    },
}
