//! The text of one value to the value.

use toml::Spanned;
use toml::de::DeValue;

use super::reader::Reader;
use crate::content::{EntryNote, Value};
use crate::declare::{Holds, KeySpec};
use crate::faults::{ModelError, Problems, quoted};

/// Reads one value by the rules of its key; text is taken without its quotes, and a zero without its unit.
///
/// Returns the value, and how it was read where that is not plain.
pub(crate) fn lone_value(
    spec: &'static KeySpec,
    path: &str,
    text: &str,
) -> Result<(Value, Option<EntryNote>), ModelError> {
    let refused =
        |message, accepted, likely| ModelError::Refused { path: path.to_owned(), message, accepted, likely };
    let raw = match spec.holds {
        Holds::Table(_)
        | Holds::Tables(_)
        | Holds::Factors
        | Holds::Texts
        | Holds::Numbers { .. }
        | Holds::Values
        | Holds::Changes
        | Holds::Corners => {
            return Err(ModelError::NotOneValue { path: path.to_owned() });
        }
        Holds::Quantity { .. }
        | Holds::Load { .. }
        | Holds::QuantityOr { .. }
        | Holds::Percent { .. }
        | Holds::Price { .. }
        | Holds::Text
        | Holds::Choice(_) => Spanned::new(0..text.len(), DeValue::String(text.into())),
        Holds::Number { .. } | Holds::Count { .. } | Holds::Flag => {
            DeValue::parse(text.trim()).map_err(|_| {
                refused(format!("`{path}` cannot be {}", quoted(text)), Some(spec.holds.accepted()), None)
            })?
        }
    };
    let mut reader = Reader::new(text, Problems::new("", "".into()));
    (reader.stands_at, reader.takes_bare_zero) = (Some(0..0), true);
    let value = reader.value(spec, &raw, path.to_owned()).ok_or_else(|| {
        let problem = reader.problems.iter().next().cloned();
        problem
            .map_or_else(|| refused(String::new(), None, None), |p| refused(p.message, p.accepted, p.likely))
    })?;
    Ok((value, reader.note))
}
