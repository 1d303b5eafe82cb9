//! What can be drawn.

use crate::ReportError;

/// Larger values leave no room for arithmetic on the canvas.
const LARGEST: f64 = 1e30;

/// Refuses values that are not finite, or too large to draw.
pub(crate) fn finite(thing: &'static str, mut values: impl Iterator<Item = f64>) -> Result<(), ReportError> {
    let refused = values.find(|value| !value.is_finite() || value.abs() > LARGEST);
    refused.map_or(Ok(()), |value| Err(ReportError::NotDrawable { thing, value }))
}
