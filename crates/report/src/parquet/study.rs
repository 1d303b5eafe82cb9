//! The designs of a study, written as they pass by.

use std::io::Write;
use std::sync::Arc;

use axlebow_study::{Row, StudyOutcome};
use parquet::basic::{LogicalType, Repetition, Type as PhysicalType};
use parquet::data_type::{ByteArray, ByteArrayType, DoubleType};
use parquet::errors::ParquetError;
use parquet::file::writer::{SerializedColumnWriter, SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::types::{ColumnPath, Type, TypePtr};

use super::{model_notes, note, number_field, properties};
use crate::columns::{StudyColumn, study_columns};
use crate::{ModelCard, ReportError};

/// Designs of a row group, whatever pieces they come in, so that the file does not depend on them.
const GROUP: usize = 1 << 16;

/// A Parquet file of designs with the columns of [`crate::csv::study`], text or 64-bit floating-point numbers, and nulls
/// where a design has none. The file's own notes say study, case, model, and whether the data is invented.
pub struct StudyParquet<'o, W: Write + Send> {
    outcome: &'o StudyOutcome,
    columns: Vec<StudyColumn<'o>>,
    file: SerializedFileWriter<W>,
    waiting: Vec<Row>,
}

impl<'o, W: Write + Send> StudyParquet<'o, W> {
    /// Begins a file; rows of `outcome` are not yet in it.
    ///
    /// # Errors
    /// [`ReportError::Parquet`] where the library refuses to write, as in the other methods.
    pub fn begin(outcome: &'o StudyOutcome, card: &ModelCard, into: W) -> Result<Self, ReportError> {
        let columns = study_columns(outcome);
        let mut notes = model_notes(card);
        notes.extend([note("study", &outcome.name), note("case", &outcome.case)]);
        let mut properties = properties(notes).set_dictionary_enabled(false);
        let repeating = columns.iter().filter(|column| column.is_repeating());
        let repeating = repeating.map(|column| column.heading.as_str());
        for name in ["variant", "reason"].into_iter().chain(repeating) {
            let path = ColumnPath::new(vec![name.to_owned()]);
            properties = properties.set_column_dictionary_enabled(path, true);
        }
        let file = SerializedFileWriter::new(into, schema(&columns)?, Arc::new(properties.build()))?;
        Ok(StudyParquet { outcome, columns, file, waiting: Vec::new() })
    }

    /// Adds designs.
    ///
    /// # Errors
    /// As [`begin`](Self::begin).
    pub fn add(&mut self, rows: Vec<Row>) -> Result<(), ReportError> {
        self.waiting.extend(rows);
        while self.waiting.len() >= GROUP {
            let rest = self.waiting.split_off(GROUP);
            self.write_group()?;
            self.waiting = rest;
        }
        Ok(())
    }

    /// Ends the file.
    ///
    /// # Errors
    /// As [`begin`](Self::begin).
    pub fn end(mut self) -> Result<(), ReportError> {
        if !self.waiting.is_empty() {
            self.write_group()?;
        }
        self.file.close()?;
        Ok(())
    }

    fn write_group(&mut self) -> Result<(), ParquetError> {
        let (outcome, rows) = (self.outcome, &self.waiting);
        let mut group = self.file.next_row_group()?;
        let variants = rows.iter().map(|row| Some(outcome.variants[row.variant].as_str()));
        write_texts(next(&mut group)?, variants)?;
        for column in &self.columns {
            let values = rows.iter().map(|row| column.value(row, outcome.baseline()));
            write_numbers(next(&mut group)?, values)?;
        }
        write_texts(next(&mut group)?, rows.iter().map(|row| row.result.as_ref().err().map(String::as_str)))?;
        group.close()?;
        Ok(())
    }
}

fn schema(columns: &[StudyColumn<'_>]) -> Result<TypePtr, ParquetError> {
    let text = |name: &str| {
        let field = Type::primitive_type_builder(name, PhysicalType::BYTE_ARRAY);
        let field = field.with_logical_type(Some(LogicalType::String));
        field.with_repetition(Repetition::OPTIONAL).build().map(Arc::new)
    };
    let numbers = columns.iter().map(|column| number_field(&column.heading));
    let all = [text("variant")].into_iter().chain(numbers).chain([text("reason")]);
    let fields = all.collect::<Result<_, _>>()?;
    Type::group_type_builder("study").with_fields(fields).build().map(Arc::new)
}

fn next<'g, W: Write + Send>(
    group: &'g mut SerializedRowGroupWriter<'_, W>,
) -> Result<SerializedColumnWriter<'g>, ParquetError> {
    let missing = || ParquetError::General("a column more than the schema has".to_owned());
    group.next_column()?.ok_or_else(missing)
}

fn write_numbers(
    mut column: SerializedColumnWriter<'_>,
    values: impl Iterator<Item = Option<f64>>,
) -> Result<(), ParquetError> {
    let (levels, values) = parted(values);
    column.typed::<DoubleType>().write_batch(&values, Some(&levels), None)?;
    column.close()
}

fn write_texts<'t>(
    mut column: SerializedColumnWriter<'_>,
    texts: impl Iterator<Item = Option<&'t str>>,
) -> Result<(), ParquetError> {
    let (levels, texts) = parted(texts.map(|text| text.map(ByteArray::from)));
    column.typed::<ByteArrayType>().write_batch(&texts, Some(&levels), None)?;
    column.close()
}

/// Level 1 for each value and 0 for each null, and the values.
fn parted<T>(values: impl Iterator<Item = Option<T>>) -> (Vec<i16>, Vec<T>) {
    let mut levels = Vec::new();
    let values = values.inspect(|value| levels.push(i16::from(value.is_some()))).flatten().collect();
    (levels, values)
}
