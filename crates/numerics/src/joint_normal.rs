//! Several readings that scatter together.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use statrs::distribution::{ChiSquared, ContinuousCDF};

/// A normal distribution of several values together.
#[derive(Debug, Clone)]
pub struct JointNormal {
    mean: DVector<f64>,
    factor: Cholesky<f64, Dyn>,
}

impl JointNormal {
    /// A distribution by its mean and covariance; none where the covariance is not positive definite.
    pub fn new(mean: DVector<f64>, covariance: DMatrix<f64>) -> Option<JointNormal> {
        Some(JointNormal { mean, factor: Cholesky::new(covariance)? })
    }

    /// Squared distance of values from the mean, in standard deviations: `(x − μ)ᵀ S⁻¹ (x − μ)` (Mahalanobis).
    pub fn squared_distance(&self, values: &DVector<f64>) -> f64 {
        let off = values - &self.mean;
        off.dot(&self.factor.solve(&off))
    }

    /// Logarithm of the density: `−½ (d² + ln |S| + n ln 2π)`.
    pub fn log_density(&self, values: &DVector<f64>) -> f64 {
        let log_determinant = 2.0 * self.factor.l_dirty().diagonal().map(f64::ln).sum();
        let constant = values.len() as f64 * std::f64::consts::TAU.ln();
        -0.5 * (self.squared_distance(values) + log_determinant + constant)
    }

    /// How readings pull other values: `S⁻¹ (x − μ)`, so that a value of covariance c with these moves by `cᵀ S⁻¹ (x − μ)`.
    pub fn pull(&self, values: &DVector<f64>) -> DVector<f64> {
        self.factor.solve(&(values - &self.mean))
    }

    /// Mean and variance of another normal value once these are known: `m + cᵀ S⁻¹ (x − μ)`, `v − cᵀ S⁻¹ c`.
    ///
    /// Arguments: `values`, x; mean m and variance v of the other before; `covariances` c of it with each of these.
    pub fn regressed(
        &self,
        values: &DVector<f64>,
        (mean, variance): (f64, f64),
        covariances: &DVector<f64>,
    ) -> (f64, f64) {
        let gain = self.factor.solve(covariances);
        (mean + gain.dot(&(values - &self.mean)), (variance - gain.dot(covariances)).max(0.0))
    }
}

/// Probability that chi squared with `count` degrees of freedom is larger than a squared distance; 1 for no degree.
pub fn chi_squared_tail(squared_distance: f64, count: usize) -> f64 {
    ChiSquared::new(count as f64).map_or(1.0, |chi_squared| chi_squared.sf(squared_distance.max(0.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> JointNormal {
        let covariance = DMatrix::from_row_slice(3, 3, &[2.0, 0.3, -0.4, 0.3, 1.0, 0.2, -0.4, 0.2, 0.5]);
        JointNormal::new(DVector::from_vec(vec![1.0, -0.5, 2.0]), covariance).unwrap()
    }

    /// `scipy.stats.multivariate_normal.logpdf` and NumPy's solution of the same sets (SciPy 1.x).
    #[test]
    fn density_and_regression_match_scipy() {
        let values = DVector::from_vec(vec![0.2, 0.7, 1.1]);
        let normal = example();
        assert!((normal.squared_distance(&values) - 7.913493253373314).abs() < 1e-12);
        assert!((normal.log_density(&values) - (-6.511079609767423)).abs() < 1e-12);
        let covariances = DVector::from_vec(vec![0.5, -0.2, 0.1]);
        let (mean, variance) = normal.regressed(&values, (3.0, 1.5), &covariances);
        assert!(
            (mean - 1.302698650674663).abs() < 1e-12 && (variance - 1.079460269865067).abs() < 1e-12,
            "{mean} {variance}"
        );
    }

    /// Table of chi squared: 3.841 and 18.307 are its upper 5 % of 1 and 10 degrees (any handbook of statistics).
    #[test]
    fn tail_of_chi_squared_matches_the_table() {
        assert!((chi_squared_tail(3.841, 1) - 0.05).abs() < 1e-4);
        assert!((chi_squared_tail(18.307, 10) - 0.05).abs() < 1e-4);
        assert_eq!(chi_squared_tail(5.0, 0), 1.0);
    }

    #[test]
    fn a_covariance_that_is_none_is_refused() {
        let indefinite = DMatrix::from_row_slice(2, 2, &[1.0, 2.0, 2.0, 1.0]);
        assert!(JointNormal::new(DVector::zeros(2), indefinite).is_none());
    }
}
