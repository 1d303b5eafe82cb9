//! The likelihood of readings on two cells of a cause, held against SciPy.
//!
//! By `scipy.optimize.minimize` for the most probable wear, `scipy.stats.norm` and NumPy's determinants and solutions (SciPy 1.x),
//! from the formulas in the README of this crate; the tolerance is that of the rounds in which depths are straightened.

use std::path::Path;
use std::sync::Arc;

use axlebow_axle::{Side, TireSlot};
use axlebow_model::CaseSheet;
use nalgebra::{DMatrix, DVector};

use super::library::{Cell, Library};
use super::likelihood::{Discrepancy, Likelihood};
use super::observed::{Evidence, NumberRead, Observed, PredictedBy, WordsRead};
use super::parameter::Parameter;
use super::variant::Variant;
use super::wear_cause::WearCause;
use super::worn_axle::{WearPattern, WornAxle};

const TOLERANCE: f64 = 1e-3;

fn sheet() -> CaseSheet {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/cases");
    let bytes = std::fs::read(folder.join("feathered-left.toml")).unwrap();
    CaseSheet::from_bytes(&bytes, ("case.toml", &folder), &WearCause::words()).unwrap()
}

/// What deviations of parameters add: to three ribs, and to how the left tire feels; that of the endplay, in whose place the size
/// stands, is not to count.
fn per_spread(worn: &WornAxle<'_>) -> Arc<DMatrix<f64>> {
    let mut all = DMatrix::zeros(12, worn.parameters().len());
    let mut put = |parameter, at: &[(usize, f64)]| {
        let column = worn.place(parameter).unwrap();
        at.iter().for_each(|(row, value)| all[(*row, column)] = *value);
    };
    put(Parameter::Load, &[(0, 0.05), (4, -0.04), (5, 0.06)]);
    put(Parameter::Inflation, &[(0, -0.03), (4, 0.05), (5, 0.02)]);
    put(Parameter::Endplay(Side::Left), &[(0, 5.0)]);
    put(Parameter::Toe(Side::Left), &[(10, 0.1)]);
    Arc::new(all)
}

/// Left bearings loose by a size.
fn cell(worn: &WornAxle<'_>, (share, size, first): (f64, f64, f64)) -> Cell {
    let variant = Variant::of(WearCause::LooseBearings, worn.axle()).remove(0);
    let column = |values: &[(usize, f64)]| {
        let mut all = DVector::zeros(12);
        values.iter().for_each(|(row, value)| all[*row] = *value);
        all
    };
    Cell {
        state: variant.state(worn, size),
        mean: column(&[(0, first), (4, 0.1), (5, -0.2), (10, 0.25)]),
        per_size: column(&[(0, 200.0), (4, -150.0), (10, 500.0)]),
        per_spread: per_spread(worn),
        size_variance: 4e-8,
        variant,
        share,
        size,
    }
}

/// Three ribs, of which one has hardly worn, endplay and a pressure; feathering, cups and dampers.
fn observed() -> Observed {
    let rib = |tire, rib, value| NumberRead {
        evidence: Evidence::Depths(if tire == 0 { Side::Left } else { Side::Right }, TireSlot::Single),
        value,
        error: 0.5e-3,
        predicted_by: PredictedBy::Rib { rib, tire },
    };
    let sum = |evidence, value, error, of| NumberRead {
        evidence,
        value,
        error,
        predicted_by: PredictedBy::Parameters { base: 0.0, of },
    };
    let pressure = vec![Parameter::Inflation, Parameter::TireInflation(Side::Left, TireSlot::Single)];
    Observed {
        numbers: vec![
            rib(0, 0, 5e-3),
            rib(0, 4, 0.2e-3),
            rib(1, 5, 4e-3),
            sum(Evidence::Endplay, 0.9e-3, 0.03e-3, vec![Parameter::Endplay(Side::Left)]),
            sum(Evidence::Inflation, -0.05, 0.06, pressure),
        ],
        words: WordsRead { feathering: vec![(0, 0)], cups: Some(2), damper: Some(1) },
        new_depth: (16e-3, 0.3e-3),
        rate: (4e-3_f64.ln(), 0.6),
    }
}

fn with_likelihood(check: impl FnOnce(&Likelihood<'_>)) {
    let sheet = sheet();
    let worn = WornAxle::of(&sheet.model.axle, &sheet.document);
    let cells = [(0.25, 0.85e-3, 0.3), (0.75, 1.05e-3, 0.5)].map(|own| cell(&worn, own)).into();
    let usual = WearPattern { log_wear: vec![0.0; 10], feathering: vec![0.0; 2] };
    let (library, observed) = (Library { cells, usual }, observed());
    check(&Likelihood::new(&worn, &library, &observed, Discrepancy { rib: 0.09, tire: 0.07 }));
}

fn assert_near(value: f64, expected: f64) {
    assert!((value - expected).abs() < TOLERANCE, "{value} is not {expected}");
}

#[test]
fn likelihoods_of_cells_and_of_their_cause_match_scipy() {
    with_likelihood(|likelihood| {
        let cells: Vec<_> = likelihood.cells_of(WearCause::LooseBearings).collect();
        assert_near(likelihood.of_cell(cells[0], None), 7.3012991816331585);
        assert_near(likelihood.of_cell(cells[1], None), 7.385550341579421);
        assert_near(likelihood.of_cause(WearCause::LooseBearings, None), 7.365143623858115);
        let without = |evidence| likelihood.of_cell(cells[0], Some(evidence));
        assert_near(without(Evidence::Endplay), -0.13892367748649326);
        assert_near(without(Evidence::Feathering), 7.845908473126554);
        assert_near(without(Evidence::Cups), 8.09980687785093);
        assert_near(without(Evidence::Damper), 9.42156271783325);
        let fit = likelihood.fit(cells[0]);
        assert!((fit / 6.626669894923872e-06 - 1.0).abs() < TOLERANCE, "{fit}");
    });
}

/// A number that was read itself is predicted with its own covariances, its error not counted.
#[test]
fn what_would_be_read_again_has_the_covariances_of_what_was_read() {
    with_likelihood(|likelihood| {
        for on in likelihood.cells_of(WearCause::LooseBearings) {
            for place in [3, 4] {
                let read = &likelihood.observed.numbers[place];
                let row = likelihood.row(on.cell, &read.predicted_by);
                let mut expected = on.covariance.column(place).into_owned();
                expected[place] -= read.error.powi(2);
                assert!((row.covariances(on) - &expected).amax() < 1e-15);
                assert!((row.variance(on.cell) - expected[place]).abs() < 1e-15);
            }
        }
    });
}
