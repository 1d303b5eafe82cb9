//! Normal logarithms whose values are read on a plain scale.

use nalgebra::{DMatrix, DVector};

use crate::JointNormal;

/// Rounds at most, the change of a logarithm at which they end, and the largest one of a round.
const ROUNDS: usize = 20;
const DONE: f64 = 1e-4;
const STEP: f64 = 1.0;

/// Readings of several values.
#[derive(Debug, Clone)]
pub struct Readings {
    /// What was read, each in its own unit.
    pub values: DVector<f64>,
    /// Covariance of the errors of readings, in the same units.
    pub errors: DMatrix<f64>,
    /// Whether what is known beforehand is the natural logarithm of a value and not the value.
    pub logarithms: Vec<bool>,
}

/// Readings on the scale of what is known beforehand.
#[derive(Debug, Clone)]
pub struct Straightened {
    /// What was read on that scale.
    pub values: DVector<f64>,
    /// Covariance of the errors of readings on that scale.
    pub errors: DMatrix<f64>,
    /// Logarithm of the value about which a reading is straightened, 0 where none is: to be taken off a log density of `values`
    /// so that it is one of the readings.
    pub log_units: DVector<f64>,
}

impl Readings {
    /// The readings as if logarithms had been read: `y = eˣ + e` is straightened about the most probable x = ln w after all
    /// readings, `y ≈ w (1 + x − ln w) + e`, so that `ln w + (y − w) / w` reads x with the error e / w. A reading of nothing,
    /// or of less by its error, so says all that it can.
    ///
    /// The density of the straightened readings is Laplace's approximation of that of the readings, with the curvature of Gauss
    /// and Newton: exact where errors are small against the values.
    ///
    /// Arguments: mean and covariance of what is known beforehand. Errors are positive; where their sum with the covariance is
    /// not positive definite, readings are straightened about themselves.
    pub fn straightened(&self, mean: &DVector<f64>, covariance: &DMatrix<f64>) -> Straightened {
        let mut straight = self.about(self.start());
        for _ in 0..ROUNDS {
            let joint = JointNormal::new(mean.clone(), covariance + &straight.errors);
            let Some(joint) = joint else { break };
            let after = mean + covariance * joint.pull(&straight.values);
            let step = |place: usize| match self.logarithms[place] {
                true => (after[place] - straight.log_units[place]).clamp(-STEP, STEP),
                false => 0.0,
            };
            let step = self.each(step);
            straight = self.about(&straight.log_units + &step);
            if step.amax() < DONE {
                break;
            }
        }
        straight
    }

    fn each(&self, value: impl Fn(usize) -> f64) -> DVector<f64> {
        DVector::from_fn(self.values.len(), |place, _| value(place))
    }

    /// Logarithms of what was read, at least of its error.
    fn start(&self) -> DVector<f64> {
        self.each(|place| match self.logarithms[place] {
            true => self.values[place].max(self.errors[(place, place)].sqrt()).ln(),
            false => 0.0,
        })
    }

    /// Straightened about logarithms of values.
    fn about(&self, log_units: DVector<f64>) -> Straightened {
        let per_unit = log_units.map(|log| (-log).exp());
        let values = self.each(|place| match self.logarithms[place] {
            true => log_units[place] + self.values[place] * per_unit[place] - 1.0,
            false => self.values[place],
        });
        let error = |i: usize, j: usize| self.errors[(i, j)] * per_unit[i] * per_unit[j];
        let count = values.len();
        Straightened { values, errors: DMatrix::from_fn(count, count, error), log_units }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two logarithms and a plain value, read far from where they are expected.
    fn example() -> (Readings, DVector<f64>, DMatrix<f64>) {
        let readings = Readings {
            values: DVector::from_vec(vec![0.1, 2.5, 0.2]),
            errors: DMatrix::from_row_slice(3, 3, &[0.16, 0.04, 0.0, 0.04, 0.16, 0.0, 0.0, 0.0, 0.04]),
            logarithms: vec![true, true, false],
        };
        let covariance = [0.09, 0.05, 0.01, 0.05, 0.08, 0.0, 0.01, 0.0, 0.25];
        (readings, DVector::from_vec(vec![1.0, 0.6, -0.3]), DMatrix::from_row_slice(3, 3, &covariance))
    }

    fn log_density(readings: &Readings, mean: &DVector<f64>, covariance: &DMatrix<f64>) -> (f64, f64) {
        let straight = readings.straightened(mean, covariance);
        let joint = JointNormal::new(mean.clone(), covariance + &straight.errors).unwrap();
        (
            joint.log_density(&straight.values) - straight.log_units.sum(),
            joint.squared_distance(&straight.values),
        )
    }

    /// `scipy.optimize.minimize` of the sum of squares, and Laplace's formula at its least place by NumPy (SciPy 1.x); the
    /// tolerances are those of the rounds.
    #[test]
    fn most_probable_logarithms_and_density_match_scipy() {
        let (readings, mean, covariance) = example();
        let log_units = readings.straightened(&mean, &covariance).log_units;
        let expected = DVector::from_vec(vec![0.34093794, 0.7474049, 0.0]);
        assert!((&log_units - expected).amax() < 1e-4, "{log_units}");
        let (density, squared) = log_density(&readings, &mean, &covariance);
        assert!((squared - 25.317095365672984).abs() < 1e-4, "{squared}");
        assert!((density - (-13.80890765847019)).abs() < 1e-4, "{density}");
    }

    /// `scipy.integrate.dblquad` of the exact density of the two logarithms: -12.886. Laplace's approximation is off by the third
    /// derivatives, here for readings five standard deviations off by 6 %.
    #[test]
    fn density_is_near_the_exact_one_far_off() {
        let (readings, mean, covariance) = example();
        let two = Readings {
            values: readings.values.rows(0, 2).into_owned(),
            errors: readings.errors.view((0, 0), (2, 2)).into_owned(),
            logarithms: vec![true, true],
        };
        let mean = mean.rows(0, 2).into_owned();
        let (density, _) = log_density(&two, &mean, &covariance.view((0, 0), (2, 2)).into_owned());
        assert!((density - (-12.823264673739981)).abs() < 1e-4, "{density}");
        assert!((density - (-12.886140013727685)).abs() < 0.07, "{density}");
    }

    /// By hand: nothing read where 3 ± 15 % is expected with an error of 0.5 is off by 3 / sqrt(0.45² + 0.5²) = 4.5 at the most,
    /// and by more than half of that; a plain logarithm of the error (one standard deviation wide) would be off by 1.8.
    #[test]
    fn a_reading_of_nothing_contradicts_much() {
        let nothing = |value: f64| Readings {
            values: DVector::from_vec(vec![value]),
            errors: DMatrix::from_element(1, 1, 0.25),
            logarithms: vec![true],
        };
        let (mean, covariance) = (DVector::from_vec(vec![3.0_f64.ln()]), DMatrix::from_element(1, 1, 0.0225));
        let off = |value: f64| log_density(&nothing(value), &mean, &covariance).1.sqrt();
        assert!(off(0.0) > 3.5 && off(0.0) < 6.0, "{}", off(0.0));
        assert!(off(-0.3) > off(0.0) && off(3.0) < 1e-6);
        // Known exactly: by the reading alone, 3 / 0.5.
        let sure = DMatrix::from_element(1, 1, 1e-12);
        assert!((log_density(&nothing(0.0), &mean, &sure).1.sqrt() - 6.0).abs() < 1e-3);
    }
}
