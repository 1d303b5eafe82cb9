//! Histories and designs as Parquet, read back.

use ::parquet::file::reader::{FileReader, SerializedFileReader};
use ::parquet::record::Field;
use axlebow_report::parquet::StudyParquet;
use axlebow_report::{csv, parquet};
use axlebow_units::UnitSystem;
use bytes::Bytes;

use crate::made_up::card;
use crate::ride::{outcome, samples_as_csv, with_stresses};
use crate::study::small;

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
    let text = samples_as_csv(&outcome);
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
    assert_eq!(note("speed_m_per_s"), Some("20.0"));
    assert_eq!(note("partial"), None);
}

/// A study's file, its designs added in pieces of so many.
fn study_file(pieces: usize) -> Vec<u8> {
    let (outcome, mut bytes) = (small(1.0), Vec::new());
    let mut file = StudyParquet::begin(&outcome, &card(UnitSystem::Si), &mut bytes).unwrap();
    outcome.rows.chunks(pieces).for_each(|rows| file.add(rows.to_vec()).unwrap());
    file.end().unwrap();
    bytes
}

#[test]
fn a_study_holds_what_its_csv_holds_whatever_pieces_it_comes_in() {
    let (outcome, bytes) = (small(1.0), study_file(1));
    assert_eq!(bytes, study_file(3));
    let file = SerializedFileReader::new(Bytes::from(bytes)).unwrap();
    let quoted = |text: &str| if text.contains(',') { format!("\"{text}\"") } else { text.to_owned() };
    let cell = |field: &Field| match field {
        Field::Double(value) => format!("{value:?}"),
        Field::Str(text) => quoted(text),
        _ => String::new(),
    };
    let row = |row: ::parquet::record::Row| {
        row.get_column_iter().map(|(_, field)| cell(field)).collect::<Vec<_>>().join(",")
    };
    let rows: Vec<String> = file.get_row_iter(None).unwrap().map(|own| row(own.unwrap())).collect();
    let schema = file.metadata().file_metadata().schema();
    let names: Vec<&str> = schema.get_fields().iter().map(|field| field.name()).collect();
    let text = csv::study(&outcome);
    let lines: Vec<&str> = text.trim_end().split("\r\n").collect();
    assert_eq!(names.join(","), lines[0]);
    assert_eq!(rows, lines[1..]);
    let notes = file.metadata().file_metadata().key_value_metadata().unwrap();
    let note = |key: &str| notes.iter().find(|note| note.key == key).and_then(|note| note.value.as_deref());
    assert_eq!((note("case"), note("invented")), (Some("rated-load"), Some("true")));
}
