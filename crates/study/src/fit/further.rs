//! Which further reading would tell most.

use axlebow_axle::{Axle, Ground, LoadCase, Side, modes, seat_layouts};
use axlebow_model::{Model, ReadQuantity, Reading};
use axlebow_numerics::{UNFELT, derivatives};
use axlebow_units::Kind;
use nalgebra::{DMatrix, DVector};

use super::estimated::Estimate;
use super::outcome::FurtherReading;
use super::predicted::{MODES, axle_with, predicted};
use super::unknown::{Unknown, values};

/// Further readings that are named.
const MOST: usize = 3;
/// What is left of the worst standard error by a reading that is worth naming, at most.
const WORTH: f64 = 0.98;
/// Standard errors of readings of which none was taken (common practice, no source): rad, m, share of a frequency.
const ANGLE_ERROR: f64 = 8.7e-4;
const BOW_ERROR: f64 = 2e-4;
const FREQUENCY_ERROR: f64 = 0.02;
/// Natural frequency below which a wheel that rolls off a board excites a mode, Hz (common practice, no source).
const HIGHEST: f64 = 60.0;

/// The readings that would lower the standard error of the worst-known direction most (E-optimality), best first.
///
/// Candidates are camber and toe of each wheel and the bow in every load case of the model, and every natural frequency at
/// rated and unladen load, on the grounds that readings were taken on. Each unknown
/// counts in what the readings would leave uncertain of it were it the only one, so that no unit matters.
pub(crate) fn further(
    document: &axlebow_model::Document,
    (unknowns, estimate): (&[Unknown], &Estimate),
    readings: &[Reading],
) -> Vec<FurtherReading> {
    let Ok(model) = Model::of(document) else { return Vec::new() };
    let Ok(axle) = axle_with(document, unknowns, &estimate.values) else { return Vec::new() };
    let candidates = known(candidates(&model, &axle, readings), &axle, readings);
    let layouts = seat_layouts(&axle);
    // All of them beside the estimate.
    let at = |place: &[f64], _: Option<&[f64]>| -> Result<Vec<f64>, String> {
        let axle = axle_with(document, unknowns, &values(unknowns, place))?;
        let axle = Axle { seat_layouts: layouts.clone(), ..axle };
        predicted(&axle, &candidates).into_iter().collect()
    };
    let limits: Vec<[f64; 2]> = unknowns.iter().map(Unknown::limits).collect();
    let Ok(slopes) = derivatives(&at, &estimate.place, &limits) else { return Vec::new() };
    best(&candidates, &slopes, &estimate.jacobian)
}

fn best(candidates: &[Reading], slopes: &DMatrix<f64>, jacobian: &DMatrix<f64>) -> Vec<FurtherReading> {
    let rows = candidates.iter().enumerate();
    let rows: Vec<DVector<f64>> =
        rows.map(|(i, reading)| slopes.row(i).transpose() / reading.standard_error).collect();
    let sizes = DVector::from_fn(jacobian.ncols(), |i, _| {
        let own = jacobian.column(i).norm();
        let others = rows.iter().map(|row| row[i].abs()).fold(f64::MIN_POSITIVE, f64::max);
        if own > 1e-9 * others { own } else { others }
    });
    let even = DMatrix::from_fn(jacobian.nrows(), jacobian.ncols(), |i, j| jacobian[(i, j)] / sizes[j]);
    let normal = even.tr_mul(&even);
    let before = weakest(&normal);
    let leaves = |row: &DVector<f64>| {
        let row = row.component_div(&sizes);
        let after = weakest(&(&normal + &row * row.transpose()))?;
        Some(before.map_or(0.0, |before| before / after))
    };
    let pairs = candidates.iter().zip(&rows).filter_map(|(reading, row)| Some((reading, leaves(row)?)));
    let mut found: Vec<FurtherReading> = pairs
        .filter(|(_, leaves)| *leaves < WORTH)
        .map(|(reading, leaves)| FurtherReading { reading: reading.clone(), leaves })
        .collect();
    found.sort_by(|a, b| a.leaves.total_cmp(&b.leaves));
    found.truncate(MOST);
    found
}

/// Least singular value of the rows behind a normal matrix: one over the standard error of the worst-known direction; none
/// where that is not felt.
fn weakest(normal: &DMatrix<f64>) -> Option<f64> {
    let values = normal.symmetric_eigenvalues();
    (values.min() > UNFELT * UNFELT * values.max()).then(|| values.min().sqrt())
}

/// The candidates that the model has an answer for, with it as their value.
fn known(candidates: Vec<Reading>, axle: &Axle, readings: &[Reading]) -> Vec<Reading> {
    let values = predicted(axle, &candidates);
    let with_value = candidates.into_iter().zip(values).filter_map(|(mut candidate, value)| {
        candidate.value = value.ok()?;
        candidate.standard_error = usual_error(&candidate, readings);
        Some(candidate)
    });
    with_value.collect()
}

/// The mean of the standard errors that were stated for readings of its kind, of frequencies in proportion.
fn usual_error(candidate: &Reading, readings: &[Reading]) -> f64 {
    let of_frequency = candidate.quantity.kind() == Kind::Frequency;
    let error =
        |own: &Reading| own.standard_error * if of_frequency { candidate.value / own.value } else { 1.0 };
    let word = candidate.quantity.word();
    let alike: Vec<f64> = readings.iter().filter(|own| own.quantity.word() == word).map(error).collect();
    match (alike.len(), candidate.quantity.kind()) {
        (0, Kind::Angle) => ANGLE_ERROR,
        (0, Kind::Length) => BOW_ERROR,
        (0, _) => FREQUENCY_ERROR * candidate.value,
        (count, _) => alike.iter().sum::<f64>() / count as f64,
    }
}

fn candidates(model: &Model, axle: &Axle, readings: &[Reading]) -> Vec<Reading> {
    let mut found = Vec::new();
    for ground in [Ground::Standing, Ground::Rolling] {
        if readings.iter().any(|reading| reading.ground == ground) {
            found.extend(model.cases.iter().flat_map(|case| standing(case, ground)));
            let at_rest =
                model.cases.iter().filter(|case| ["rated-load", "unladen"].contains(&case.name.as_str()));
            found.extend(at_rest.flat_map(|case| moving(axle, case, ground)));
        }
    }
    found
}

fn standing(case: &LoadCase, ground: Ground) -> Vec<Reading> {
    let angles =
        Side::BOTH.into_iter().flat_map(|side| [ReadQuantity::Camber(side), ReadQuantity::Toe(side)]);
    angles.chain([ReadQuantity::Bow]).map(|quantity| candidate(quantity, case, ground)).collect()
}

fn moving(axle: &Axle, case: &LoadCase, ground: Ground) -> Vec<Reading> {
    let axle = Axle { ground, ..axle.clone() };
    let found = modes(&axle, case.actions.axle_load, MODES).map_or(Vec::new(), |found| found.modes);
    let named = found.into_iter().filter(|mode| (0.1..HIGHEST).contains(&mode.frequency));
    named.map(|mode| candidate(ReadQuantity::NaturalFrequency(mode.name), case, ground)).collect()
}

fn candidate(quantity: ReadQuantity, case: &LoadCase, ground: Ground) -> Reading {
    Reading { quantity, load: case.clone(), ground, value: 0.0, standard_error: 1.0, line: 0 }
}
