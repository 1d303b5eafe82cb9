//! Histories as Parquet, read back.

use ::parquet::file::reader::{FileReader, SerializedFileReader};
use ::parquet::record::Field;
use axlebow_report::{csv, parquet};
use axlebow_units::UnitSystem;
use bytes::Bytes;

use crate::made_up::card;
use crate::ride::{outcome, with_stresses};

/// Rows of the file as the cells of a CSV row.
fn rows(file: &SerializedFileReader<Bytes>) -> Vec<String> {
    let cell = |field: &Field| match field {
        Field::Double(value) => format!("{value:?}"),
        _ => String::new(),
    };
    let rows = file.get_row_iter(None).unwrap();
    rows.map(|row| row.unwrap().get_column_iter().map(|(_, field)| cell(field)).collect::<Vec<_>>().join(","))
        .collect()
}

#[test]
fn the_file_holds_what_the_csv_holds() {
    let mut outcome = with_stresses(outcome());
    outcome.history.roll.truncate(1);
    let bytes = parquet::ride(&outcome, &card(UnitSystem::Us)).unwrap();
    assert_eq!(bytes, parquet::ride(&outcome, &card(UnitSystem::Si)).unwrap());
    let file = SerializedFileReader::new(Bytes::from(bytes)).unwrap();
    let schema = file.metadata().file_metadata().schema();
    let names: Vec<&str> = schema.get_fields().iter().map(|field| field.name()).collect();
    let text = csv::ride(&outcome);
    let lines: Vec<&str> = text.trim_end().split("\r\n").collect();
    assert_eq!(names.join(","), lines[0]);
    assert_eq!(rows(&file), lines[1..]);
}

#[test]
fn the_file_says_what_it_is() {
    let bytes = parquet::ride(&outcome(), &card(UnitSystem::Si)).unwrap();
    let file = SerializedFileReader::new(Bytes::from(bytes)).unwrap();
    let notes = file.metadata().file_metadata().key_value_metadata().unwrap();
    let note = |key: &str| notes.iter().find(|note| note.key == key).and_then(|note| note.value.as_deref());
    assert_eq!(note("model"), Some("Round-tube trailer axle"));
    assert_eq!(note("invented"), Some("true"));
    assert_eq!(note("speed_m_s"), Some("20.0"));
    assert_eq!(note("partial"), None);
}
