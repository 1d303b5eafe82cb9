//! Paths that name an entry of a list, such as `stiffener[top angle].length` or `seat[left].width`.

use std::borrow::Cow;

use super::entry::Table;
use crate::faults::{ModelError, likely};

/// Keys by which an entry of a list is called.
const NAMES: [&str; 2] = ["name", "side"];

/// The same path with the place of an entry in the list instead of its name; paths without a name stay as they are.
pub(crate) fn by_place<'p>(root: &Table, path: &'p str) -> Result<Cow<'p, str>, ModelError> {
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
