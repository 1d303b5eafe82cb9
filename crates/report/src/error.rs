//! What can go wrong in a report.

/// What can go wrong when a table, document or picture is made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ReportError {
    /// A value to be drawn is not a number, or too large.
    #[error("{thing} is {value}; a plot accepts finite numbers below 1e30 only")]
    NotDrawable {
        /// What the value is.
        thing: &'static str,
        /// The value refused.
        value: f64,
    },
    /// There is nothing to draw.
    #[error("{thing} has no points; a plot needs at least one")]
    Empty {
        /// What is empty.
        thing: &'static str,
    },
    /// The picture would be too large, or has no size.
    #[error("picture of {width} by {height} pixels; accepted is 1 to {limit} a side")]
    PictureSize {
        /// Width asked for, pixels.
        width: f64,
        /// Height asked for, pixels.
        height: f64,
        /// Largest side accepted, pixels.
        limit: f64,
    },
    /// The drawing library refused.
    #[error("drawing failed: {0}")]
    Drawing(String),
    /// The library that writes Parquet files refused.
    #[error("writing Parquet failed: {0}")]
    Parquet(String),
}
