//! Where a document keeps a number, found once and set many times.

use super::document::{Document, key_spec, owner};
use super::entry::{Table, Value};
use super::named_path::by_place;
use super::path::{Step, steps};
use crate::declare::{Bounds, Holds};
use crate::faults::ModelError;

/// Where a document keeps the number of one path.
///
/// It holds for the document that it was found in and for copies of it, as long as these get no further keys.
#[derive(Debug, Clone)]
pub struct NumberPlace {
    path: String,
    /// Entries on the way, each with a place in its list if it is one.
    way: Vec<(usize, Option<usize>)>,
    entry: usize,
    /// Place among the factors of the entry, if it holds factors.
    factor: Option<usize>,
    holds: Holds,
}

impl NumberPlace {
    /// The path.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The key that the path begins with.
    pub(crate) fn first_key(&self) -> &str {
        self.path.split(['.', '[']).next().unwrap_or_default()
    }
}

impl Document {
    /// Where the number at a path is kept.
    ///
    /// # Errors
    /// Those of [`number`](Self::number): there must be a number.
    pub fn place_of_number(&self, path: &str) -> Result<NumberPlace, ModelError> {
        self.number(path)?;
        let path = &*by_place(self.root(), path)?;
        let absent = || ModelError::Absent { path: path.to_owned() };
        let steps = steps(path)?;
        let (table, rest) = owner(self.root(), path, &steps)?;
        let holds = key_spec(table, path, rest[0].key)?.holds;
        let entry = place_of_key(table, rest[0].key).ok_or_else(absent)?;
        let named = |name: &Step| table.factors(rest[0].key).iter().position(|(key, _)| key == name.key);
        let factor = rest.get(1).and_then(named);
        let way = way(self.root(), &steps[..steps.len() - rest.len()]).ok_or_else(absent)?;
        Ok(NumberPlace { path: path.to_owned(), way, entry, factor, holds })
    }

    /// Sets the number (SI) at a place, with the same result as [`set_number`](Self::set_number) and without its way
    /// through text.
    ///
    /// # Errors
    /// Those of [`set_number`](Self::set_number); the document is then as it was.
    pub fn put_number(&mut self, place: &NumberPlace, value: f64) -> Result<(), ModelError> {
        let number = admitted(place.holds, value).zip(self.number_at(place));
        match number {
            Some((Value::Count(count), Value::Count(own))) => *own = count,
            Some((Value::Number(number), Value::Quantity { value: own, .. } | Value::Number(own))) => {
                *own = number;
            }
            Some((Value::Number(number), Value::Factors(factors))) => match place.factor {
                Some(factor) => factors[factor].1 = number,
                None => return self.set_number(&place.path, value),
            },
            _ => return self.set_number(&place.path, value),
        }
        Ok(())
    }

    fn number_at(&mut self, place: &NumberPlace) -> Option<&mut Value> {
        let mut table = self.root_mut();
        for (entry, number) in &place.way {
            table = match &mut table.entries.get_mut(*entry)?.value {
                Value::Table(inner) => inner,
                Value::Tables(list) => list.get_mut((*number)?)?,
                _ => return None,
            };
        }
        table.entries.get_mut(place.entry).map(|entry| &mut entry.value)
    }
}

fn place_of_key(table: &Table, key: &str) -> Option<usize> {
    table.entries.iter().position(|entry| entry.key == key)
}

fn way(root: &Table, steps: &[Step<'_>]) -> Option<Vec<(usize, Option<usize>)>> {
    let mut table = root;
    let mut way = Vec::with_capacity(steps.len());
    for step in steps {
        let entry = place_of_key(table, step.key)?;
        way.push((entry, step.index));
        table = match &table.entries[entry].value {
            Value::Table(inner) => inner,
            Value::Tables(list) => list.get(step.index?)?,
            _ => return None,
        };
    }
    Some(way)
}

/// What a key that holds numbers keeps of one, as the reader of a file would; none where it would refuse it.
fn admitted(holds: Holds, value: f64) -> Option<Value> {
    let (bounds, value) = match holds {
        Holds::Quantity { bounds, .. }
        | Holds::QuantityOr { bounds, .. }
        | Holds::Load { bounds }
        | Holds::Number { bounds } => (bounds, value),
        // As it is read, from per cent.
        Holds::Percent { most } => (Bounds::Between(0.0, most / 100.0), 100.0 * value / 100.0),
        Holds::Factors => (Bounds::Any, value),
        Holds::Count { min, max } => {
            let whole = value.fract() == 0.0 && (f64::from(min)..=f64::from(max)).contains(&value);
            // Whole and within, so that nothing is cut off.
            return whole.then_some(Value::Count(value as u32));
        }
        _ => return None,
    };
    bounds.admit(value).then_some(Value::Number(value))
}
