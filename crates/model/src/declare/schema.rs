//! JSON Schema of a declaration, for editors.

use serde_json::{Map, Value as Json, json};
use toml::de::DeValue;

use axlebow_units::Kind;

use super::bounds::Bounds;
use super::spec::{Holds, KeySpec, Presence, TableSpec, Word};

/// A number, and a unit that begins with a letter, a bracket or a percent or degree sign.
const QUANTITY: &str = r"^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?\s*[A-Za-zµ%°(].*$";

/// An amount and a currency.
const PRICE: &str = r"^\s*(\d+\.?\d*|\.\d+)\s*[^\s\d/]+(\s*/.+)?$";

/// JSON Schema (2020-12) of the files that a declaration describes.
///
/// Arguments: `spec`, the declaration of the whole file.
///
/// Returns the schema. It is no stricter than the reader: units and bounds of quantities are described in
/// words and by a pattern for the form only.
pub fn json_schema(spec: &TableSpec) -> Json {
    let mut schema = table(spec);
    schema.insert("$schema".into(), "https://json-schema.org/draft/2020-12/schema".into());
    schema.insert("title".into(), spec.name.into());
    Json::Object(schema)
}

fn table(spec: &TableSpec) -> Map<String, Json> {
    let properties: Map<_, _> =
        spec.keys.iter().map(|key| (key.key.to_owned(), Json::Object(property(key)))).collect();
    let required = spec.keys.iter().filter(|key| key.presence == Presence::Required).map(|key| key.key);
    object(json!({
        "type": "object",
        "description": spec.meaning,
        "properties": properties,
        "required": required.collect::<Vec<_>>(),
        "additionalProperties": false,
    }))
}

fn property(key: &KeySpec) -> Map<String, Json> {
    let mut schema = content(key);
    let accepted = match key.holds {
        Holds::Quantity { .. }
        | Holds::Load { .. }
        | Holds::QuantityOr { .. }
        | Holds::Percent { .. }
        | Holds::Price { .. }
        | Holds::Factors
        | Holds::Texts
        | Holds::Numbers { .. }
        | Holds::Values
        | Holds::Changes
        | Holds::Corners => {
            format!(" Accepted: {}.", key.holds.accepted())
        }
        _ => String::new(),
    };
    schema.insert("description".into(), format!("{}{accepted}", key.meaning).into());
    if let Presence::Default(text) = key.presence
        && let Some(value) = DeValue::parse(text).ok().and_then(|raw| plain(raw.get_ref()))
    {
        schema.insert("default".into(), value);
    }
    schema
}

fn content(key: &KeySpec) -> Map<String, Json> {
    match key.holds {
        Holds::Quantity { kind: Kind::Ratio, bounds } => {
            object(json!({ "anyOf": [number(bounds), { "type": "string", "pattern": QUANTITY }] }))
        }
        Holds::QuantityOr { words, .. } => {
            let word = |word: &Word| json!({ "const": word.word, "description": word.meaning });
            let mut either: Vec<_> = words.iter().map(word).collect();
            either.push(json!({ "type": "string", "pattern": QUANTITY }));
            object(json!({ "anyOf": either }))
        }
        Holds::Quantity { kind, .. } => {
            let examples: Vec<_> = kind.accepted().iter().map(|unit| format!("1 {unit}")).collect();
            object(json!({ "type": "string", "pattern": QUANTITY, "examples": examples }))
        }
        Holds::Load { .. } => {
            let examples = ["90 kN", "20000 lbf", "20000 lb", "9 t"];
            object(json!({ "type": "string", "pattern": QUANTITY, "examples": examples }))
        }
        Holds::Percent { .. } => {
            object(json!({ "type": "string", "pattern": r"^\s*[0-9.eE+-]+\s*%\s*$", "examples": ["0.20 %"] }))
        }
        Holds::Price { per } => {
            let example = per.map_or("850 USD".to_owned(), |kind| format!("95 USD/{}", kind.accepted()[0]));
            object(json!({ "type": "string", "pattern": PRICE, "examples": [example] }))
        }
        Holds::Number { bounds } => number(bounds),
        Holds::Count { min, max } => object(json!({ "type": "integer", "minimum": min, "maximum": max })),
        Holds::Flag => object(json!({ "type": "boolean" })),
        Holds::Text => object(text()),
        Holds::Choice(words) => {
            let one = |word: &Word| json!({ "const": word.word, "description": word.meaning });
            object(json!({ "oneOf": words.iter().map(one).collect::<Vec<_>>() }))
        }
        Holds::Table(spec) => table(spec),
        Holds::Tables(spec) => {
            let least = u32::from(key.presence == Presence::Required);
            object(json!({ "type": "array", "items": table(spec), "minItems": least }))
        }
        Holds::Factors => object(json!({ "type": "object", "additionalProperties": { "type": "number" } })),
        Holds::Texts => object(json!({ "type": "array", "items": text(), "minItems": 1 })),
        Holds::Numbers { bounds } => {
            object(json!({ "type": "array", "items": number(bounds), "minItems": 1 }))
        }
        Holds::Values => object(json!({ "type": "array", "items": plain_value(), "minItems": 1 })),
        Holds::Changes => object(json!({ "type": "object", "additionalProperties": plain_value() })),
        Holds::Corners => {
            let length = json!({ "type": "string", "pattern": QUANTITY });
            let corner = json!({ "type": "array", "items": length, "minItems": 2, "maxItems": 2 });
            object(json!({ "type": "array", "items": corner, "minItems": 1 }))
        }
    }
}

/// Text that is not empty.
fn text() -> Json {
    json!({ "type": "string", "pattern": r"\S" })
}

/// Text that is not empty, a number, or true or false.
fn plain_value() -> Json {
    json!({ "anyOf": [text(), { "type": ["number", "boolean"] }] })
}

fn number(bounds: Bounds) -> Map<String, Json> {
    object(match bounds {
        Bounds::Any => json!({ "type": "number" }),
        Bounds::Positive => json!({ "type": "number", "exclusiveMinimum": 0 }),
        Bounds::NonNegative => json!({ "type": "number", "minimum": 0 }),
        Bounds::Between(low, high) => json!({ "type": "number", "minimum": low, "maximum": high }),
    })
}

/// A default as JSON.
fn plain(raw: &DeValue<'_>) -> Option<Json> {
    Some(match raw {
        DeValue::String(text) => Json::from(text.as_ref()),
        DeValue::Integer(integer) => Json::from(i64::from_str_radix(integer.as_str(), integer.radix()).ok()?),
        DeValue::Float(float) => Json::from(float.as_str().parse::<f64>().ok()?),
        DeValue::Boolean(flag) => Json::from(*flag),
        DeValue::Datetime(_) => return None,
        DeValue::Array(list) => {
            list.iter().map(|item| plain(item.get_ref())).collect::<Option<Vec<_>>>()?.into()
        }
        DeValue::Table(table) => {
            let pair =
                |(key, value): (&toml::Spanned<toml::de::DeString<'_>>, &toml::Spanned<DeValue<'_>>)| {
                    Some((key.get_ref().as_ref().to_owned(), plain(value.get_ref())?))
                };
            Json::Object(table.iter().map(pair).collect::<Option<_>>()?)
        }
    })
}

/// The members of a JSON object literal.
fn object(json: Json) -> Map<String, Json> {
    if let Json::Object(members) = json { members } else { Map::new() }
}
