//! The frame of every document: what made it and from what, then the results, then what the reader must know.

use axlebow_results::{Field, Own, Part, Record, Shape, Text, part};
use serde_json::{Map, Value, json};

use crate::subject::PROGRAM;
use crate::{Assumed, ModelCard};

/// A kind of document.
pub(super) struct Frame {
    /// Name and version, such as `axlebow/flex/2`.
    pub tag: &'static str,
    /// What it holds, one sentence.
    pub meaning: &'static str,
}

/// What a document says.
pub(super) struct Contents<'a, W> {
    /// The model; none where none was run.
    pub card: Option<&'a ModelCard>,
    /// One to three sentences, in the units of the reader.
    pub answer: Vec<String>,
    /// Objects whose members are the results, in order.
    pub results: Vec<Value>,
    /// Doubts about the results.
    pub warnings: &'a [W],
    /// What must be read with them.
    pub cautions: Vec<&'static str>,
}

impl<'a, W> Contents<'a, W> {
    /// Contents without cautions.
    pub fn new(
        card: Option<&'a ModelCard>,
        answer: Vec<String>,
        results: Vec<Value>,
        warnings: &'a [W],
    ) -> Self {
        Contents { card, answer, results, warnings, cautions: Vec::new() }
    }
}

impl Frame {
    /// The document: pretty JSON that ends in a new line, the same bytes for the same contents. A number that is not finite
    /// is null.
    pub fn text<W: Shape>(&self, contents: Contents<W>) -> String {
        let mut document = Map::new();
        let mut add = |name: &str, value: Value| document.insert(name.to_owned(), value);
        add("schema", self.tag.into());
        add("program", PROGRAM.into());
        add("model", contents.card.map_or(Value::Null, Shape::json));
        add("answer", contents.answer.into());
        for (name, value) in contents.results.into_iter().flat_map(members) {
            add(&name, value);
        }
        let assumed = contents.card.map_or(&[][..], |card| &card.assumed);
        add("assumed", assumed.iter().map(Shape::json).collect());
        add("warnings", contents.warnings.iter().map(Shape::json).collect());
        add("cautions", contents.cautions.into());
        pretty(&Value::Object(document))
    }

    /// The JSON Schema (2020-12) of such documents whose results have these schemas and whose warnings are `W`.
    pub fn schema<W: Shape>(&self, results: &[Value]) -> String {
        let mut properties = Map::new();
        let mut add = |name: &str, mut schema: Value, meaning: &str| {
            schema["description"] = meaning.into();
            properties.insert(name.to_owned(), schema);
        };
        add("schema", json!({ "const": self.tag }), "Name and version of the document.");
        add("program", String::schema(), "The program and its version.");
        add("model", Option::<ModelCard>::schema(), "The model that was run; null where none was.");
        add(
            "answer",
            Vec::<String>::schema(),
            "What comes out, a sentence each, in the units of the reader.",
        );
        for (name, schema) in results.iter().flat_map(|schema| members(schema["properties"].clone())) {
            let meaning = schema["description"].as_str().unwrap_or_default().to_owned();
            add(&name, schema, &meaning);
        }
        add("assumed", Vec::<Assumed>::schema(), "Defaults that stand for what the file does not say.");
        add("warnings", Vec::<W>::schema(), "Doubts about the results.");
        add("cautions", Vec::<String>::schema(), "What must be read with these numbers.");
        let required: Vec<&String> = properties.keys().collect();
        pretty(&json!({
            "$schema": "https://json-schema.org/draft/2020-12/schema",
            "title": self.tag,
            "description": self.meaning,
            "type": "object",
            "required": required,
            "properties": properties,
            "additionalProperties": false,
        }))
    }
}

/// Name and value of each member of an object.
fn members(object: Value) -> Map<String, Value> {
    match object {
        Value::Object(members) => members,
        _ => Map::new(),
    }
}

fn pretty(document: &Value) -> String {
    format!("{document:#}\n")
}

impl Record for ModelCard {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the model.", &Text(|card: &Self| &card.name)),
        part("hash", "Hash of the model file.", &Text(|card: &Self| &card.hash)),
        part(
            "settings",
            "What the command line changed or added, as it said it.",
            &Part(|card: &Self| &card.settings),
        ),
        part(
            "invented",
            "Whether its numbers are invented for demonstration.",
            &Own(|card: &Self| card.invented),
        ),
        part(
            "typical",
            "Keys whose values are typical of such axles and not measured on this one.",
            &Part(|card: &Self| &card.typical),
        ),
        part(
            "invented-inputs",
            "What of all that it was run with is invented: `road`, `tire`, `duty`, `other axle`.",
            &Own(|card: &Self| card.invented_inputs.iter().map(|input| input.word()).collect::<Vec<_>>()),
        ),
    ];
}

impl Record for Assumed {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Path of the key.", &Text(|own: &Self| &own.path)),
        part("value", "Value as a model file would say it.", &Text(|own: &Self| &own.value)),
        part("meaning", "What the key means.", &Text(|own: &Self| &own.meaning)),
    ];
}
