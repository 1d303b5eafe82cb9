//! Results whose shape depends on a study's file: views of them by derived serialization, in place of tables of the catalog.

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Serialize;
use serde_json::Value;

/// The results as JSON.
pub(super) fn json<T: Serialize>(results: &T) -> Value {
    serde_json::to_value(results).expect("these structs have text keys only")
}

/// The JSON Schema (2020-12) of such results.
pub(super) fn schema<T: JsonSchema>() -> Value {
    let settings = SchemaSettings::draft2020_12().with(|settings| settings.inline_subschemas = true);
    settings.into_generator().into_root_schema_for::<T>().into()
}
