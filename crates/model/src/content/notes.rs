//! How values of a file were read, where that is not plain from the file.

use axlebow_units::{UnitSystem, show};

use super::document::Document;
use super::entry::{Entry, EntryNote, Table, Value};
use super::numbers::place;

impl Document {
    /// How values were read, where that is not plain from the file, such as "loads.rated_load = 20000 lb read as weight,
    /// 88.964 kN".
    pub fn notes(&self) -> Vec<String> {
        let mut notes = Vec::new();
        collect(self.root(), "", &mut notes);
        notes
    }
}

fn collect(table: &Table, under: &str, notes: &mut Vec<String>) {
    for entry in table.entries() {
        let path = format!("{under}{}", entry.key);
        notes.extend(sentence(entry, &path));
        match &entry.value {
            Value::Table(inner) => collect(inner, &format!("{path}."), notes),
            Value::Tables(list) => {
                for (number, inner) in list.iter().enumerate() {
                    collect(inner, &format!("{path}[{}].", place(list, number, under.is_empty())), notes);
                }
            }
            _ => {}
        }
    }
}

fn sentence(entry: &Entry, path: &str) -> Option<String> {
    match entry.note.as_ref()? {
        EntryNote::ReadAs(text) => Some(format!("{path} = {text}")),
        EntryNote::Unused(why) => {
            let Value::Quantity { value, kind, system } = entry.value else { return None };
            let value = show(value, kind, system.unwrap_or(UnitSystem::Si));
            Some(format!("{path} = {value} is not used: {why}"))
        }
    }
}
