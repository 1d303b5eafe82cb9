//! What a road is called when its file does not say.

use axlebow_units::{Kind, UnitSystem, show};

use super::road_kind::RoadKind;
use crate::content::{Document, Value};

/// Kind and sizes of a road, such as "haversine bump, height 40 mm, length 1 m".
pub(crate) fn described(document: &Document) -> String {
    let root = document.root();
    let word = root.word("kind");
    let mut name = word.replace('-', " ");
    for key in RoadKind::of(word).iter().flat_map(|kind| kind.needs) {
        if let Some(value) = root.value(key) {
            name += &format!(", {key} {}", in_words(value, document.system()));
        }
    }
    match root.word("wheels") {
        "both" => name,
        side => format!("{name}, {side} wheels only"),
    }
}

fn in_words(value: &Value, system: UnitSystem) -> String {
    match value {
        Value::Quantity { value, kind: Kind::Length, .. } if system == UnitSystem::Si && *value >= 1.0 => {
            format!("{value} m")
        }
        Value::Quantity { value, kind, .. } => show(*value, *kind, system),
        Value::Count(count) => count.to_string(),
        Value::Word(word) => (*word).to_owned(),
        Value::Text(text) => text.clone(),
        _ => String::new(),
    }
}
