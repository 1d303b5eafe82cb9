//! Keys of a document set as a file would write them.

use axlebow_units::Kind;

use super::lone_value::lone_value;
use crate::content::{Document, Entry, Step, Value, by_place, key_spec, no_number, owner, several, steps};
use crate::declare::Holds;
use crate::faults::ModelError;

impl Document {
    /// Sets the key at a path to what a file would write there, without the quotes of text.
    ///
    /// Arguments: `path`, such as `tube.wall`; a key that may be left out need not be in the file, but its
    /// table must, and of a list with one entry its place may be left out; `text`, such as `8 mm`, `welded` or `4`; a
    /// zero may stand without its unit.
    ///
    /// # Errors
    /// A path that is malformed or leads nowhere, and a value that the reader of a file would refuse; the
    /// document is then as it was.
    pub fn set(&mut self, path: &str, text: &str) -> Result<(), ModelError> {
        let path = &*by_place(self.root(), path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(self.root(), path, &steps)?;
        let spec = key_spec(table, path, rest[0].key)?;
        let (value, note) = match rest {
            [Step { index: None, .. }] => lone_value(spec, path, text)?,
            [list, name] => {
                (Value::Factors(with_factor(table.factors(list.key), path, (name.key, text))?), None)
            }
            _ => return Err(several(path)),
        };
        let entry = Entry { key: spec.key, value, span: table.span_of(spec.key), assumed: false, note };
        self.put(path, &steps[..steps.len() - rest.len()], entry);
        Ok(())
    }

    /// Sets the quantity (SI), number, count or factor at a path; see [`set`](Self::set).
    ///
    /// # Errors
    /// Those of [`set`](Self::set), and a key that holds no number.
    pub fn set_number(&mut self, path: &str, value: f64) -> Result<(), ModelError> {
        let path = &*by_place(self.root(), path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(self.root(), path, &steps)?;
        match (key_spec(table, path, rest[0].key)?.holds, rest) {
            (Holds::Percent { .. }, _) => self.set(path, &format!("{:?} %", 100.0 * value)),
            (Holds::Quantity { kind, .. } | Holds::QuantityOr { kind, .. }, _) => {
                self.set(path, &format!("{value:?} {}", kind.si()))
            }
            (Holds::Load { .. }, _) => self.set(path, &format!("{value:?} {}", Kind::Force.si())),
            (Holds::Price { per }, _) => {
                let Value::Price { currency, .. } = self.value(path)? else {
                    return Err(no_number(path, Some(Holds::Price { per }.accepted())));
                };
                let unit = per.map_or(String::new(), |kind| format!("/{}", kind.si()));
                self.set(path, &format!("{value:?} {currency}{unit}"))
            }
            (Holds::Number { .. }, _) | (Holds::Factors, [_, _]) => self.set(path, &format!("{value:?}")),
            (Holds::Count { .. }, _) => self.set(path, &value.to_string()),
            (holds, _) => Err(no_number(path, Some(holds.accepted()))),
        }
    }
}

/// The factors with the one of a name set to a number.
fn with_factor(
    factors: &[(String, f64)],
    path: &str,
    (name, text): (&str, &str),
) -> Result<Vec<(String, f64)>, ModelError> {
    let mut factors = factors.to_vec();
    let found = factors.iter_mut().find(|(key, _)| key == name);
    let (_, factor) = found.ok_or_else(|| ModelError::Absent { path: path.to_owned() })?;
    let number = text.trim().parse().ok().filter(|number: &f64| number.is_finite());
    *factor = number.ok_or_else(|| no_number(path, Some("a number".to_owned())))?;
    Ok(factors)
}
