//! Outcomes as Apache Parquet: the columns of the CSV in binary, for data tools.

mod ride;
mod study;

pub use ride::ride;
pub use study::StudyParquet;

use std::sync::Arc;

use parquet::basic::{Repetition, Type as PhysicalType};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use parquet::file::properties::{WriterProperties, WriterPropertiesBuilder};
use parquet::schema::types::{Type, TypePtr};

use crate::{ModelCard, ReportError};

impl From<ParquetError> for ReportError {
    fn from(fault: ParquetError) -> Self {
        ReportError::Parquet(fault.to_string())
    }
}

fn properties(notes: Vec<KeyValue>) -> WriterPropertiesBuilder {
    WriterProperties::builder()
        .set_created_by(concat!("axlebow ", env!("CARGO_PKG_VERSION")).to_owned())
        .set_key_value_metadata(Some(notes))
}

/// A column of 64-bit floating-point numbers, some of which may be missing.
fn number_field(name: &str) -> Result<TypePtr, ParquetError> {
    let field = Type::primitive_type_builder(name, PhysicalType::DOUBLE);
    field.with_repetition(Repetition::OPTIONAL).build().map(Arc::new)
}

fn note(key: &str, value: &str) -> KeyValue {
    KeyValue::new(key.to_owned(), value.to_owned())
}

fn model_notes(card: &ModelCard) -> Vec<KeyValue> {
    vec![
        note("model", &card.name),
        note("model_hash", &card.hash),
        note("settings", &card.settings.join("; ")),
        note("invented", &card.invented.to_string()),
        note(
            "invented_inputs",
            &card.invented_inputs.iter().map(|input| input.word()).collect::<Vec<_>>().join(", "),
        ),
    ]
}
