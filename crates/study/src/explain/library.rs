//! The patterns that each cause makes on an axle, over its sizes.
//!
//! A cause has variants (which side, which way), each a straight line of states from its least size to its largest. The line is
//! cut into cells; within a cell the pattern is linear in the size, and everywhere it is linear in how sound axles and tires
//! differ. So each cell is a normal distribution of patterns, and the likelihood of a cause is a mean over its cells.

use std::sync::Arc;

use axlebow_axle::AxleError;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

use super::variant::Variant;
use super::wear_cause::WearCause;
use super::worn_axle::{WearPattern, WornAxle};

/// Cells of a variant.
const CELLS: usize = 5;

/// The patterns of all causes on one axle.
pub struct Library {
    /// Every cell.
    pub cells: Vec<Cell>,
    /// Pattern of a sound axle.
    pub usual: WearPattern,
}

/// A stretch of a cause's sizes.
pub struct Cell {
    /// The variant that it is of.
    pub variant: Variant,
    /// Share of the cause's probability.
    pub share: f64,
    /// Size in the middle of it.
    pub size: f64,
    /// Variance of the size within it, and of the parameters along the variant's direction.
    pub size_variance: f64,
    /// Value of each parameter in its middle.
    pub state: Vec<f64>,
    /// Logarithms of wear, then feathering, in its middle.
    pub mean: DVector<f64>,
    /// What a unit of the size adds to them.
    pub per_size: DVector<f64>,
    /// What each parameter adds to them for each of its standard deviations, a column each.
    pub per_spread: Arc<DMatrix<f64>>,
}

impl Library {
    /// Solves an axle for all causes that it can have.
    ///
    /// # Errors
    /// As [`WornAxle::pattern`].
    pub fn of(worn: &WornAxle<'_>) -> Result<Library, AxleError> {
        let variants: Vec<Variant> =
            WearCause::ALL.into_iter().flat_map(|cause| Variant::of(cause, worn.axle())).collect();
        let usual = worn.pattern(&worn.usual())?;
        let sound = Arc::new(per_spread(worn, &worn.usual())?);
        let cells: Vec<Vec<Cell>> =
            variants.into_par_iter().map(|variant| cells(worn, variant, &sound)).collect::<Result<_, _>>()?;
        Ok(Library { cells: cells.into_iter().flatten().collect(), usual })
    }

    /// The cells of a cause.
    pub fn of_cause(&self, cause: WearCause) -> impl Iterator<Item = (usize, &Cell)> {
        self.cells.iter().enumerate().filter(move |(_, cell)| cell.variant.cause == cause)
    }

    /// Causes that the axle can have.
    pub fn causes(&self) -> Vec<WearCause> {
        WearCause::ALL.into_iter().filter(|cause| self.of_cause(*cause).next().is_some()).collect()
    }
}

/// A pattern as one column.
fn column(pattern: &WearPattern) -> DVector<f64> {
    DVector::from_iterator(
        pattern.log_wear.len() + pattern.feathering.len(),
        pattern.log_wear.iter().chain(&pattern.feathering).copied(),
    )
}

/// The cells of a variant; what parameters add is that of its middle where its wheels drag, else that of a sound axle.
fn cells(worn: &WornAxle<'_>, variant: Variant, sound: &Arc<DMatrix<f64>>) -> Result<Vec<Cell>, AxleError> {
    let [least, largest] = variant.sizes;
    let width = (largest - least) / CELLS as f64;
    let at = |size: f64| worn.pattern(&variant.state(worn, size)).map(|pattern| column(&pattern));
    let edges: Vec<DVector<f64>> =
        (0..=CELLS).map(|edge| at(least + width * edge as f64)).collect::<Result<_, _>>()?;
    let per_spread = match variant.drags() {
        true => Arc::new(per_spread(worn, &variant.state(worn, 0.5 * (least + largest)))?),
        false => sound.clone(),
    };
    let cell = |number: usize| -> Result<Cell, AxleError> {
        let size = least + width * (number as f64 + 0.5);
        Ok(Cell {
            share: variant.share / CELLS as f64,
            size,
            size_variance: width * width / 12.0,
            state: variant.state(worn, size),
            mean: at(size)?,
            per_size: (&edges[number + 1] - &edges[number]) / width,
            per_spread: per_spread.clone(),
            variant: variant.clone(),
        })
    };
    (0..CELLS).map(cell).collect()
}

/// What one standard deviation of each parameter adds: half of the difference between one up and one down.
fn per_spread(worn: &WornAxle<'_>, state: &[f64]) -> Result<DMatrix<f64>, AxleError> {
    let of = |place: usize| -> Result<DVector<f64>, AxleError> {
        let moved = |by: f64| {
            let mut state = state.to_vec();
            state[place] += by * worn.parameters()[place].spread();
            worn.pattern(&state).map(|pattern| column(&pattern))
        };
        Ok((moved(1.0)? - moved(-1.0)?) * 0.5)
    };
    let columns: Vec<DVector<f64>> = (0..state.len()).map(of).collect::<Result<_, _>>()?;
    Ok(DMatrix::from_columns(&columns))
}
