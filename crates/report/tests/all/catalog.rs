//! Every result of every document says what it means.

use axlebow_report::json;
use serde_json::Value;

fn documents() -> [Value; 18] {
    [
        json::flex_schema(),
        json::flex_against_schema(),
        json::modes_schema(),
        json::ride_schema(),
        json::response_schema(),
        json::section_schema(),
        json::strength_schema(),
        json::tire_schema(),
        json::compatibility_schema(),
        json::cups_schema(),
        json::causes_schema(),
        json::explain_schema(),
        json::fit_schema(),
        json::payback_schema(),
        json::sensitivities_schema(),
        json::study_schema(),
        json::search_schema(),
        json::textbook_schema(),
    ]
    .map(|text| serde_json::from_str(&text).unwrap())
}

/// Calls `visit` with the key and the schema of every property of a schema.
fn properties(schema: &Value, visit: &mut dyn FnMut(&str, &Value)) {
    match schema {
        Value::Object(members) => {
            if let Some(Value::Object(properties)) = members.get("properties") {
                properties.iter().for_each(|(key, property)| visit(key, property));
            }
            members.values().for_each(|member| properties(member, visit));
        }
        Value::Array(items) => items.iter().for_each(|item| properties(item, visit)),
        _ => {}
    }
}

#[test]
fn every_result_of_every_document_has_a_meaning() {
    let mut count = 0;
    for document in documents() {
        properties(&document, &mut |key, property| {
            let meaning = property["description"].as_str().unwrap_or_default();
            assert!(meaning.ends_with('.'), "{key} of {}: {meaning}", document["title"]);
            assert!(key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_'), "{key}");
            count += 1;
        });
    }
    assert!(count > 400, "{count}");
}
