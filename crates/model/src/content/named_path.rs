//! Paths that name an entry of a list, such as `stiffener[top angle].length` or `seat[left].width`.

use std::borrow::Cow;

use super::entry::{Table, Value};
use super::numbers::place;
use super::path::{Step, steps};
use crate::faults::{ModelError, likely};

/// Keys by which an entry of a list is called.
const NAMES: [&str; 2] = ["name", "side"];

/// The same path with the place of an entry in the list instead of its name, and with that of the only entry of a list where
/// the path leaves it out; other paths stay as they are.
pub(crate) fn by_place<'p>(root: &Table, path: &'p str) -> Result<Cow<'p, str>, ModelError> {
    let path = without_names(root, path)?;
    let mut ends = match steps(&path) {
        Ok(steps) => lone_entries(root, &path, &steps)?,
        // Whoever takes the path says what is wrong with it.
        Err(_) => Vec::new(),
    };
    if ends.is_empty() {
        return Ok(path);
    }
    let mut path = path.into_owned();
    while let Some(end) = ends.pop() {
        path.insert_str(end, "[0]");
    }
    Ok(Cow::Owned(path))
}

/// Ends of the steps that leave out which entry of a list is meant, where it has only one.
fn lone_entries(root: &Table, path: &str, steps: &[Step<'_>]) -> Result<Vec<usize>, ModelError> {
    let (mut table, mut ends) = (root, Vec::new());
    for step in &steps[..steps.len() - 1] {
        table = match (table.value(step.key), step.index) {
            (Some(Value::Table(inner)), None) => inner,
            (Some(Value::Tables(list)), Some(place)) if place < list.len() => &list[place],
            (Some(Value::Tables(list)), None) => match list.as_slice() {
                [lone] => {
                    ends.push(step.end);
                    lone
                }
                [] => break,
                several => return Err(which(several, path, step)),
            },
            _ => break,
        };
    }
    Ok(ends)
}

/// The refusal of a path that leaves out which of several entries is meant.
fn which(list: &[Table], path: &str, step: &Step<'_>) -> ModelError {
    let (before, after) = path.split_at(step.end);
    let own = |number| format!("`{before}[{}]{after}`", place(list, number, before == step.key));
    ModelError::WhichEntry {
        path: path.to_owned(),
        key: step.key.to_owned(),
        count: list.len(),
        accepted: (0..list.len()).map(own).collect::<Vec<_>>().join(", "),
    }
}

/// The same path with the place of an entry in the list instead of its name.
fn without_names<'p>(root: &Table, path: &'p str) -> Result<Cow<'p, str>, ModelError> {
    let named = path.split_once('[').and_then(|(key, rest)| Some((key, rest.split_once(']')?)));
    let Some((key, (name, tail))) = named.filter(|(_, (name, _))| is_name(name)) else {
        return Ok(Cow::Borrowed(path));
    };
    let names: Vec<&str> = root.tables(key).iter().filter_map(called).collect();
    match names.iter().position(|own| *own == name) {
        Some(place) => Ok(Cow::Owned(format!("{key}[{place}]{tail}"))),
        None => Err(ModelError::NoSuchEntry {
            path: path.to_owned(),
            key: key.to_owned(),
            accepted: accepted(&names),
            likely: likely(name, names.iter().copied()),
        }),
    }
}

fn is_name(text: &str) -> bool {
    text.starts_with(|c: char| c.is_alphabetic())
}

/// What an entry of a list is called, if its name can stand in a path.
pub(crate) fn name_in_path(table: &Table) -> Option<&str> {
    called(table).filter(|name| is_name(name) && !name.contains(']'))
}

fn called(table: &Table) -> Option<&str> {
    NAMES.iter().find_map(|key| table.optional_text(key).or_else(|| table.optional_word(key)))
}

fn accepted(names: &[&str]) -> String {
    if names.is_empty() { "none, the file has no such list".to_owned() } else { names.join(", ") }
}
