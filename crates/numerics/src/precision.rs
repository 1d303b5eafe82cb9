//! How well residuals determine parameters.

use nalgebra::{DMatrix, DVector};

/// Ratio of singular values of the Jacobian, its columns made of length 1, below which a direction counts as not felt: far
/// above the noise of its differences, and ten thousand times vaguer than the clearest direction.
pub const UNFELT: f64 = 1e-4;
/// Share in an unfelt direction from which a parameter has a part in it.
const PART: f64 = 0.05;

/// How well residuals determine parameters, each residual over its standard error.
#[derive(Debug, Clone)]
pub struct Precision {
    /// `(JᵀJ)⁻¹` without the directions that are not felt.
    pub covariance: DMatrix<f64>,
    /// Whether each parameter is determined.
    pub determined: Vec<bool>,
    /// Directions that are not felt: the parameters that have a part in each, most first.
    pub unfelt: Vec<Vec<usize>>,
    /// Least over greatest singular value, columns made of length 1.
    pub conditioning: f64,
}

impl Precision {
    /// From the Jacobian of weighted residuals.
    pub fn of(jacobian: &DMatrix<f64>) -> Self {
        let count = jacobian.ncols();
        let sizes: Vec<f64> = (0..count).map(|i| jacobian.column(i).norm()).collect();
        let mut even = jacobian.clone();
        for (i, size) in sizes.iter().enumerate().filter(|(_, size)| **size > 0.0) {
            even.column_mut(i).scale_mut(1.0 / size);
        }
        let pairs = even.tr_mul(&even).symmetric_eigen();
        let values: Vec<f64> = pairs.eigenvalues.iter().map(|value| value.max(0.0).sqrt()).collect();
        let most = values.iter().copied().fold(0.0, f64::max);
        let least = values.iter().copied().fold(f64::INFINITY, f64::min);
        let mut found = Precision {
            covariance: DMatrix::zeros(count, count),
            determined: vec![true; count],
            unfelt: Vec::new(),
            conditioning: if most > 0.0 { least / most } else { 0.0 },
        };
        for (value, direction) in values.iter().zip(pairs.eigenvectors.column_iter()) {
            let direction = direction.into_owned();
            if *value > UNFELT * most {
                let real = direction.map_with_location(|i, _, part| part / sizes[i].max(f64::MIN_POSITIVE));
                found.covariance += &real * real.transpose() / (value * value);
            } else {
                found.leave_out(&direction);
            }
        }
        found
    }

    fn leave_out(&mut self, direction: &DVector<f64>) {
        let mut parts: Vec<usize> = (0..direction.len()).filter(|i| direction[*i].abs() > PART).collect();
        parts.sort_by(|a, b| direction[*b].abs().total_cmp(&direction[*a].abs()));
        parts.iter().for_each(|part| self.determined[*part] = false);
        self.unfelt.push(parts);
    }

    /// Correlation of two parameters; `None` where one of them is not determined.
    pub fn correlation(&self, one: usize, other: usize) -> Option<f64> {
        let both = self.determined[one] && self.determined[other];
        let size = (self.covariance[(one, one)] * self.covariance[(other, other)]).sqrt();
        both.then(|| if one == other { 1.0 } else { self.covariance[(one, other)] / size })
    }
}
