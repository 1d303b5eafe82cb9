//! Every number of a file by its path.

use axlebow_units::Kind;

use super::document::Document;
use super::entry::{Table, Value};
use super::named_path::name_in_path;
use crate::declare::{Bounds, Holds};

/// A number that a file gives, or that is assumed for it.
#[derive(Debug, Clone, PartialEq)]
pub struct NumberKey {
    /// Its path, such as `tube.wall` or `seat[left].width`.
    pub path: String,
    /// What it measures.
    pub kind: Kind,
    /// Its value, SI.
    pub value: f64,
    /// The values that it may take, SI.
    pub bounds: Bounds,
    /// Whether it is a default.
    pub assumed: bool,
}

impl Document {
    /// Every number that can vary continuously, in the order of the file, then the defaults; counts and factors of
    /// combinations are none.
    pub fn numbers(&self) -> Vec<NumberKey> {
        let mut found = Vec::new();
        collect(self.root(), "", &mut found);
        found
    }
}

fn collect(table: &Table, under: &str, found: &mut Vec<NumberKey>) {
    for entry in table.entries().iter().filter(|entry| !entry.is_unused()) {
        let path = format!("{under}{}", entry.key);
        match &entry.value {
            Value::Table(inner) => collect(inner, &format!("{path}."), found),
            Value::Tables(list) => {
                for (number, inner) in list.iter().enumerate() {
                    collect(inner, &format!("{path}[{}].", place(list, number, under.is_empty())), found);
                }
            }
            Value::Quantity { value, .. } | Value::Number(value) => {
                let Some((kind, bounds)) = table.spec().key(entry.key).and_then(|spec| measured(spec.holds))
                else {
                    continue;
                };
                found.push(NumberKey { path, kind, value: *value, bounds, assumed: entry.assumed });
            }
            _ => {}
        }
    }
}

/// Name of an entry where it has one of its own and the list is at the top of the file, else its number.
pub(super) fn place(list: &[Table], number: usize, at_top: bool) -> String {
    let name = name_in_path(&list[number]).filter(|_| at_top);
    let own = name.filter(|name| list.iter().filter(|other| name_in_path(other) == Some(name)).count() == 1);
    own.map_or_else(|| number.to_string(), str::to_owned)
}

fn measured(holds: Holds) -> Option<(Kind, Bounds)> {
    match holds {
        Holds::Quantity { kind, bounds } | Holds::QuantityOr { kind, bounds, .. } => Some((kind, bounds)),
        Holds::Load { bounds } => Some((Kind::Force, bounds)),
        Holds::Percent { most } => Some((Kind::Ratio, Bounds::Between(0.0, most / 100.0))),
        Holds::Number { bounds } => Some((Kind::Ratio, bounds)),
        _ => None,
    }
}
