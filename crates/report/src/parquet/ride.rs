//! The histories of a ride.

use std::sync::Arc;

use axlebow_axle::RideOutcome;
use parquet::data_type::DoubleType;
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use parquet::file::writer::SerializedFileWriter;
use parquet::schema::types::{Type, TypePtr};

use super::{model_notes, note, number_field, properties};
use crate::columns::{RideColumn, ride_columns};
use crate::words::warning::sentence;
use crate::{ModelCard, ReportError};

/// The histories of a ride as a Parquet file: the columns of [`crate::csv::write_ride`] as 64-bit floating-point
/// numbers, a history that ends early with nulls. The file's own notes say model, road, speed, whether the data is
/// invented, and why the ride is partial if it is.
///
/// # Errors
/// [`ReportError::Parquet`] where the library refuses to write.
pub fn ride(outcome: &RideOutcome, card: &ModelCard) -> Result<Vec<u8>, ReportError> {
    written(outcome, card).map_err(|fault| ReportError::Parquet(fault.to_string()))
}

fn written(outcome: &RideOutcome, card: &ModelCard) -> Result<Vec<u8>, ParquetError> {
    let columns = ride_columns(outcome);
    let properties = properties(notes(outcome, card)).build();
    let mut file = SerializedFileWriter::new(Vec::new(), schema(&columns)?, Arc::new(properties))?;
    let mut rows = file.next_row_group()?;
    for (_, values) in &columns {
        let Some(mut column) = rows.next_column()? else { break };
        // Level 1 marks a value, level 0 a null.
        let levels: Vec<i16> = (0..outcome.history.time.len()).map(|i| i16::from(i < values.len())).collect();
        column.typed::<DoubleType>().write_batch(values, Some(&levels), None)?;
        column.close()?;
    }
    rows.close()?;
    file.into_inner()
}

fn schema(columns: &[RideColumn]) -> Result<TypePtr, ParquetError> {
    let fields = columns.iter().map(|(name, _)| number_field(name)).collect::<Result<_, _>>()?;
    Type::group_type_builder("ride").with_fields(fields).build().map(Arc::new)
}

fn notes(outcome: &RideOutcome, card: &ModelCard) -> Vec<KeyValue> {
    let mut notes = model_notes(card);
    notes.extend([note("road", &outcome.name), note("speed_m_per_s", &format!("{:?}", outcome.speed))]);
    notes.extend(outcome.warnings.iter().map(|warning| note("warning", &sentence(warning))));
    notes.extend(outcome.partial.as_ref().map(|why| note("partial", why)));
    notes
}
