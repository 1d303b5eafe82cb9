//! What readings say of unknowns.

use axlebow_axle::outcome::Warning;

/// Probability below which a scatter is no accident.
pub(super) const NO_ACCIDENT: f64 = 0.025;

/// What [`estimate`](crate::estimate()) found.
#[derive(Debug, Clone)]
pub struct Estimate {
    /// Value of each unknown, SI.
    pub values: Vec<f64>,
    /// Standard error of each unknown by the standard errors of the readings alone, SI; `None` where readings do not
    /// determine it.
    pub stated_errors: Vec<Option<f64>>,
    /// 95 % interval of each unknown, SI; `None` where readings do not determine it, or only to a factor of a thousand, and
    /// of all unknowns where the search found no least sum of squares inside their ranges.
    pub intervals: Vec<Option<[f64; 2]>>,
    /// Covariance of the unknowns by the scatter of the readings, SI.
    pub covariance: Vec<Vec<Option<f64>>>,
    /// Their correlation.
    pub correlation: Vec<Vec<Option<f64>>>,
    /// Sum of squares of residuals, each over its standard error.
    pub chi_squared: f64,
    /// Readings less unknowns.
    pub degrees_of_freedom: usize,
    /// Probability that readings with their stated errors scatter more than these; `None` without degrees of freedom.
    pub chance: Option<f64>,
    /// Least over greatest singular value of the Jacobian, its columns made of length 1.
    pub conditioning: f64,
    /// Steps of the search.
    pub steps: usize,
    /// Whether the search found a least sum of squares.
    pub converged: bool,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
    pub(crate) place: Vec<f64>,
    pub(crate) jacobian: nalgebra::DMatrix<f64>,
}

impl Estimate {
    /// Why the fitted values are not to be gone by: the search found no least sum of squares, or the readings scatter as
    /// readings of such a model would in one case of forty at most.
    pub fn doubt(&self) -> Option<&'static str> {
        if !self.converged {
            return Some("the search did not converge");
        }
        let is_wrong = self.chance.is_some_and(|chance| chance < NO_ACCIDENT);
        is_wrong.then_some(
            "the readings differ from the fitted model by more than their standard errors let expect",
        )
    }
}
