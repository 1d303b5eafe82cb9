//! Every problem of a model file at once: what cannot be read does not hide the rules across keys that can.

use crate::Model;
use crate::content::{Document, Entry, Table, Value};
use crate::declare::Presence;
use crate::faults::Problems;
use crate::keys::MODEL;
use crate::read::{read_bytes, read_bytes_partly};
use crate::start::TYPICAL;

/// How far what stands in for an unreadable number lies from the typical one. A problem counts only where it comes up with
/// either, word for word, so that it cannot come from what stands in.
const STAND_INS: [f64; 2] = [0.8, 1.3];

/// Reads a model file.
///
/// # Errors
/// Every problem at once: those of [`read_bytes`], and those of [`Model::of`] that do not depend on what could not be read.
pub fn read_model(bytes: &[u8], file_name: &str) -> Result<Document, Problems> {
    read_bytes_partly(bytes, file_name, &MODEL).map_err(|unread| unread.with(across_keys))
}

/// The problems across keys that come up whatever stands in for the keys that could not be read.
fn across_keys(partial: &Document) -> Option<Problems> {
    let kind = partial.root().optional_word("kind");
    let typical = TYPICAL.iter().find_map(|own| {
        let own = read_bytes(own.text().as_bytes(), own.name, &MODEL).ok()?;
        (kind == Some(own.root().word("kind"))).then_some(own)
    });
    let typical = typical?;
    let [one, other] = STAND_INS.map(|factor| {
        let mut document = partial.clone();
        let whole = fill(document.root_mut(), Some(typical.root()), factor);
        whole.then(|| Model::of(&document).err()).flatten()
    });
    Some(one?.also_in(&other?))
}

/// Fills the gaps of a table from a typical one; false where one stays open.
fn fill(table: &mut Table, typical: Option<&Table>, factor: f64) -> bool {
    for spec in table.spec.keys {
        let own = typical.and_then(|typical| typical.entry(spec.key));
        let span = table.span();
        match table.entries.iter_mut().find(|entry| entry.key == spec.key) {
            Some(entry) => {
                if !fill_entry(entry, own, factor) {
                    return false;
                }
            }
            None if matches!(spec.presence, Presence::Optional) => {}
            None => match own {
                Some(own) => table.entries.push(Entry { span, ..stand_in(own, factor) }),
                None => return false,
            },
        }
    }
    true
}

/// Fills the gaps of the tables that an entry holds; those of a list that stay open are left out.
fn fill_entry(entry: &mut Entry, typical: Option<&Entry>, factor: f64) -> bool {
    match &mut entry.value {
        Value::Table(inner) => {
            let typical =
                typical.and_then(|own| if let Value::Table(own) = &own.value { Some(own) } else { None });
            fill(inner, typical, factor)
        }
        Value::Tables(list) => {
            let typical =
                typical.map_or(&[][..], |own| if let Value::Tables(own) = &own.value { own } else { &[] });
            let mut place = 0;
            list.retain_mut(|inner| {
                place += 1;
                fill(inner, typical.get(place - 1).or(typical.first()), factor)
            });
            !list.is_empty()
        }
        _ => true,
    }
}

/// What stands in for an entry: the typical one, its numbers moved.
fn stand_in(own: &Entry, factor: f64) -> Entry {
    let mut entry = own.clone();
    if let Value::Quantity { value, .. } = &mut entry.value {
        *value *= factor;
    }
    entry
}

#[cfg(test)]
mod tests {
    use super::*;

    fn problems(changes: &[(&str, &str)]) -> String {
        let mut text = TYPICAL[0].text().to_owned();
        for (from, to) in changes {
            assert!(text.contains(from), "{from}");
            text = text.replacen(from, to, 1);
        }
        read_model(text.as_bytes(), "own.toml").unwrap_err().render()
    }

    #[test]
    fn a_wrong_unit_hides_no_rule_across_other_keys() {
        let spacing = ("dual_spacing = \"330 mm\"", "dual_spacing = \"200 mm\"");
        let unit = ("wall = \"5/8 in\"", "wall = \"5/8 kg\"");
        let seat = ("at = \"485 mm\"", "at = \"1485 mm\"");
        let all = problems(&[spacing, unit, seat]);
        for words in ["measures mass", "overlap", "left seat's outer edge lies 1575 mm"] {
            assert!(all.contains(words), "{words} in {all}");
        }
        let combination = ("braking = 0.6", "breaking = 0.6");
        assert!(problems(&[unit, combination]).contains("breaking"));
    }

    #[test]
    fn what_stands_in_for_an_unreadable_key_is_never_at_fault() {
        for (from, to) in [
            ("at = \"485 mm\"", "at = \"485\""),
            ("od = \"5 in\"", "od = \"5\""),
            ("mounting_face_at = \"984 mm\"", "mounting_face_at = \"984 kg\""),
            ("rated_load = \"20000 lb\"", "rated_load = 20000"),
            ("tire_width = \"280 mm\"\n", ""),
            ("length = \"1.68 m\"", "length = \"1.68\""),
        ] {
            let all = problems(&[(from, to)]);
            assert_eq!(all.matches("error").count(), 1, "{from}: {all}");
        }
    }
}
