//! What of a typical axle is still typical once some of its keys were measured.

use crate::content::{Entry, Table, Value};

/// The entries of `typical` less what was measured: what holds nothing measured stays whole, of all else the keys that were
/// not measured are listed.
///
/// Arguments: `root`, the file; `typical`, its entries; `measured`, paths such as `tube.od` and `housing.profile[2].height`.
pub(super) fn still_typical(root: &Table, typical: &[String], measured: &[String]) -> Vec<String> {
    let entries = typical.iter().filter_map(|key| root.entry(key));
    entries.flat_map(|entry| rest_of(entry, entry.key, measured)).collect()
}

/// What was not measured of an entry.
fn rest_of(entry: &Entry, path: &str, measured: &[String]) -> Vec<String> {
    if entry.assumed || measured.iter().any(|own| own == path) || ["side", "name"].contains(&entry.key) {
        return Vec::new();
    }
    match &entry.value {
        Value::Table(table) => rest_of_table(table, path, measured),
        Value::Tables(tables) => match tables.as_slice() {
            [lone] => rest_of_table(lone, path, measured),
            several if holds_measured(path, measured) => {
                let each = several.iter().enumerate();
                each.flat_map(|(i, table)| rest_of_table(table, &format!("{path}[{i}]"), measured)).collect()
            }
            _ => vec![path.to_owned()],
        },
        _ => vec![path.to_owned()],
    }
}

fn rest_of_table(table: &Table, path: &str, measured: &[String]) -> Vec<String> {
    if !holds_measured(path, measured) {
        return vec![path.to_owned()];
    }
    let entries = table.entries().iter();
    entries.flat_map(|entry| rest_of(entry, &format!("{path}.{}", entry.key), measured)).collect()
}

/// Whether something under a path was measured.
fn holds_measured(path: &str, measured: &[String]) -> bool {
    measured.iter().any(|own| own.strip_prefix(path).is_some_and(|rest| rest.starts_with(['.', '['])))
}
