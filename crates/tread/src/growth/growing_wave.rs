//! Waves that keep their shape as they grow: eigenvectors of the feedback.

use nalgebra::{Complex, DMatrix, DVector};

use crate::TreadError;

/// Distance of the shift from an eigenvalue whose vector is sought, over the size of the matrix.
const BESIDE: f64 = 1e-9;

/// A wave that keeps its shape while it grows or is leveled.
#[derive(Debug, Clone, PartialEq)]
pub struct GrowingWave {
    /// Growth, 1/m of mean tread worn; below zero the wave is leveled.
    pub rate: f64,
    /// Angle of its phase gained, rad/m of mean tread worn: above zero crests go to places that met the road earlier.
    pub turning: f64,
    /// Amplitude of each rib over that of the rib which takes part most, with its phase.
    pub ribs: Vec<Complex<f64>>,
}

impl GrowingWave {
    /// By how much it is multiplied while `worn` (m) of tread wear off, in the mean.
    pub fn amplification(&self, worn: f64) -> f64 {
        (self.rate * worn).exp()
    }

    /// Mean tread worn (m) while it grows e-fold; none where it does not grow.
    pub fn worn_for_e_fold(&self) -> Option<f64> {
        (self.rate > 0.0).then(|| 1.0 / self.rate)
    }
}

/// The wave that grows fastest, or is leveled most slowly, by a matrix of growth (1/m); see
/// [`WearWaves::growth`](super::WearWaves::growth).
///
/// # Errors
/// [`TreadError::Value`] for a matrix that is not finite.
pub fn fastest(growth: &DMatrix<Complex<f64>>) -> Result<GrowingWave, TreadError> {
    let value = fastest_value(growth)?;
    Ok(GrowingWave { rate: value.re, turning: value.im, ribs: shape(growth, value) })
}

/// Growth of that wave alone, 1/m.
///
/// # Errors
/// As [`fastest`].
pub fn fastest_rate(growth: &DMatrix<Complex<f64>>) -> Result<f64, TreadError> {
    Ok(fastest_value(growth)?.re)
}

/// The eigenvalue with the largest real part.
fn fastest_value(growth: &DMatrix<Complex<f64>>) -> Result<Complex<f64>, TreadError> {
    let finite = growth.iter().all(|entry| entry.re.is_finite() && entry.im.is_finite());
    let values = finite.then(|| growth.eigenvalues()).flatten();
    let largest =
        values.and_then(|values| values.iter().copied().reduce(|a, b| if b.re > a.re { b } else { a }));
    largest.ok_or(TreadError::Value {
        thing: "growth of a wave",
        value: f64::NAN,
        unit: "1/m",
        accepted: "a finite value: check the axle's damping at this frequency",
    })
}

/// The eigenvector by inverse iteration.
fn shape(growth: &DMatrix<Complex<f64>>, value: Complex<f64>) -> Vec<Complex<f64>> {
    let order = growth.nrows();
    let size = growth.norm().max(f64::MIN_POSITIVE);
    let shift = value + Complex::new(BESIDE * size, 0.0);
    let factor = (growth - DMatrix::identity(order, order) * shift).lu();
    let mut vector = DVector::from_fn(order, |i, _| Complex::new(1.0, 0.1 * i as f64));
    for _ in 0..3 {
        let Some(next) = factor.solve(&vector) else { break };
        let length = next.norm();
        vector = next / Complex::from(length);
    }
    let largest = vector.iter().copied().reduce(|a, b| if b.norm() > a.norm() { b } else { a });
    let largest = largest.unwrap_or(Complex::from(1.0));
    vector.iter().map(|part| part / largest).collect()
}
