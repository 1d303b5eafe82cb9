//! Hash of what a file says.

use super::entry::{Table, Value};

/// BLAKE3 of every path and value, defaults included, in a fixed order: layout, comments and the choice of
/// unit do not matter. The first 16 hexadecimal digits.
pub(crate) fn of(root: &Table) -> String {
    let mut hasher = blake3::Hasher::new();
    add(root, &mut hasher);
    hasher.finalize().to_hex()[..16].to_owned()
}

fn add(table: &Table, hasher: &mut blake3::Hasher) {
    let mut entries: Vec<_> = table.entries().iter().collect();
    entries.sort_by_key(|entry| entry.key);
    for entry in entries {
        hasher.update(entry.key.as_bytes()).update(&[0]);
        match &entry.value {
            Value::Quantity { value, .. } | Value::Number(value) => {
                hasher.update(&value.to_bits().to_le_bytes());
            }
            Value::Price { amount, currency } => {
                hasher.update(&amount.to_bits().to_le_bytes());
                add_text(currency, hasher);
            }
            Value::Count(count) => {
                hasher.update(&count.to_le_bytes());
            }
            Value::Flag(flag) => {
                hasher.update(&[u8::from(*flag)]);
            }
            Value::Text(text) => add_text(text, hasher),
            Value::Word(word) => add_text(word, hasher),
            Value::Table(inner) => add(inner, hasher),
            Value::Tables(list) => {
                hasher.update(&(list.len() as u64).to_le_bytes());
                list.iter().for_each(|inner| add(inner, hasher));
            }
            Value::Factors(factors) => {
                for (name, factor) in factors {
                    hasher.update(name.as_bytes()).update(&[0]).update(&factor.to_bits().to_le_bytes());
                }
            }
            Value::Corners(corners) => {
                for place in corners.as_flattened() {
                    hasher.update(&place.to_bits().to_le_bytes());
                }
            }
            Value::Numbers(numbers) => {
                for number in numbers {
                    hasher.update(&number.to_bits().to_le_bytes());
                }
            }
            Value::Texts(texts) => texts.iter().for_each(|written| add_text(&written.text, hasher)),
            Value::Changes(changes) => {
                for (path, text) in changes {
                    add_text(&path.text, hasher);
                    add_text(&text.text, hasher);
                }
            }
        }
    }
}

fn add_text(text: &str, hasher: &mut blake3::Hasher) {
    hasher.update(text.as_bytes()).update(&[0]);
}
