//! From a model file and readings to a fit.

use axlebow_axle::{Axle, seat_layouts};
use axlebow_model::{Document, ReadQuantity, Reading};

use super::error::FitError;
use super::estimate::estimate;
use super::further::further;
use super::outcome::{FitOutcome, FittedReading, FittedUnknown};
use super::predicted::{axle_with, predicted};
use super::unknown::{ABRASION, Unknown};

/// Fits unknowns of a model to readings.
///
/// Arguments: `document`, the model file, whose values are the initial value; `readings`; `paths` of the unknowns.
///
/// # Errors
/// [`FitError`]: fewer readings than unknowns, a path that cannot be an unknown, a reading that the model cannot give.
pub fn fit(document: &Document, readings: &[Reading], paths: &[String]) -> Result<FitOutcome, FitError> {
    let document = &worn_by_depth(document, readings)?;
    let unknowns = unknowns(document, paths)?;
    if readings.len() < unknowns.len() {
        return Err(FitError::TooFew { readings: readings.len(), unknowns: unknowns.len() });
    }
    let at = |values: &[f64], beside: Option<&[f64]>| -> Result<Vec<Result<f64, String>>, String> {
        let with = |values: &[f64]| axle_with(document, &unknowns, values);
        let seat_layouts = beside.map(|own| with(own).map(|own| seat_layouts(&own))).transpose()?;
        let axle = Axle { seat_layouts: seat_layouts.unwrap_or_default(), ..with(values)? };
        Ok(predicted(&axle, readings))
    };
    let start: Vec<f64> = unknowns.iter().map(|unknown| unknown.start).collect();
    let why_beside = |why: String| FitError::Beside { why };
    let first = with_line(readings, at(&start, None).map_err(why_beside)?)?;
    let all = |values: &[f64], beside: Option<&[f64]>| -> Result<Vec<f64>, String> {
        at(values, beside)?.into_iter().collect()
    };
    let pairs: Vec<(f64, f64)> = readings.iter().map(|own| (own.value, own.standard_error)).collect();
    let estimate = estimate(&unknowns, &pairs, &all).map_err(why_beside)?;
    let fitted = all(&estimate.values, None).map_err(why_beside)?;
    let further = further(document, (&unknowns, &estimate), readings);
    let beside = readings.iter().zip(first.into_iter().zip(fitted));
    let readings =
        beside.map(|(reading, (first, fitted))| FittedReading { reading: reading.clone(), first, fitted });
    let of_unknown = |(i, unknown): (usize, Unknown)| FittedUnknown {
        unknown,
        value: estimate.values[i],
        interval: estimate.intervals[i],
        stated_error: estimate.stated_errors[i],
    };
    Ok(FitOutcome {
        unknowns: unknowns.into_iter().enumerate().map(of_unknown).collect(),
        readings: readings.collect(),
        further,
        estimate,
    })
}

/// The document with the abrasion that is its default where tires were removed, so that wear has a depth.
fn worn_by_depth(document: &Document, readings: &[Reading]) -> Result<Document, FitError> {
    let mut document = document.clone();
    if readings.iter().any(|own| matches!(own.quantity, ReadQuantity::TreadDepth(_))) {
        let refused = |why: axlebow_model::ModelError| FitError::Unknown {
            path: ABRASION.to_owned(),
            why: why.to_string(),
        };
        let start = document.number(ABRASION).map_err(refused)?;
        document.set_number(ABRASION, start).map_err(refused)?;
    }
    Ok(document)
}

fn unknowns(document: &Document, paths: &[String]) -> Result<Vec<Unknown>, FitError> {
    if let Some(path) = (1..paths.len()).find(|i| paths[..*i].contains(&paths[*i])).map(|i| paths[i].clone())
    {
        return Err(FitError::Twice { path });
    }
    paths.iter().map(|path| Unknown::of(document, path)).collect()
}

/// The values, or the line of the first reading that has none.
fn with_line(readings: &[Reading], values: Vec<Result<f64, String>>) -> Result<Vec<f64>, FitError> {
    let with_line = readings
        .iter()
        .zip(values)
        .map(|(reading, value)| value.map_err(|why| FitError::Reading { line: reading.line, why }));
    with_line.collect()
}
