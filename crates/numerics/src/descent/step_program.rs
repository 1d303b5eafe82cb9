//! One step of a descent: a quadratic program with elastic limits in a box.
//!
//! `min ½ dᵀHd + gᵀd + ρ Σ s` subject to `c + J d ≤ s`, `s ≥ 0`, `low ≤ d ≤ high`. The slacks s keep it solvable where
//! no step meets all limits; with ρ above the largest multiplier they are zero where one does. As `min ½ xᵀPx + qᵀx`
//! subject to `A x ≤ b` it is solved by Mehrotra's predictor and corrector along the central path: a dense matrix of values
//! and limits, factored some fifteen times.
//!
//! Source: J. Nocedal & S. J. Wright, Numerical Optimization, 2nd ed. 2006, sec. 16.6 (interior point for convex quadratic
//! programs), from memory.

use nalgebra::{DMatrix, DVector};

/// Most rounds along the path.
const MOST_ROUNDS: usize = 60;
/// Mean product of slack and multiplier at which it ends; values are of the order of one.
const TOLERANCE: f64 = 1e-13;
/// Share of the way to the nearest end that a round goes.
const SHORT_OF_END: f64 = 0.99;

/// A step to be found.
pub(crate) struct StepProgram<'a> {
    /// H, positive definite.
    pub hessian: &'a DMatrix<f64>,
    /// g.
    pub gradient: &'a DVector<f64>,
    /// c: how far each limit is missed, negative where it is met.
    pub misses: &'a [f64],
    /// J.
    pub slopes: &'a DMatrix<f64>,
    /// ρ.
    pub penalty: f64,
    pub low: Vec<f64>,
    pub high: Vec<f64>,
}

/// A step and the multiplier of each limit.
pub(crate) struct Step {
    pub step: DVector<f64>,
    pub multipliers: Vec<f64>,
}

impl StepProgram<'_> {
    /// The step; none where rounding leaves no path.
    pub fn solve(&self) -> Option<Step> {
        let (n, m) = (self.gradient.len(), self.misses.len());
        let convex = self.convex((n, m));
        let slack = self.misses.iter().map(|miss| miss.max(0.0) + 1.0);
        let start = std::iter::repeat_n(0.0, n).chain(slack);
        let (x, z) = convex.solve(DVector::from_iterator(n + m, start))?;
        let step = (0..n).map(|i| x[i].clamp(self.low[i], self.high[i]));
        let multipliers = z.iter().take(m).map(|own| self.penalty * own).collect();
        Some(Step { step: DVector::from_iterator(n, step), multipliers })
    }

    /// The program over its penalty, so that a large one costs no digits of the slacks.
    fn convex(&self, (n, m): (usize, usize)) -> Convex {
        let mut p = DMatrix::zeros(n + m, n + m);
        p.view_mut((0, 0), (n, n)).copy_from(&(self.hessian / self.penalty));
        let mut q = DVector::from_element(n + m, 1.0);
        q.rows_mut(0, n).copy_from(&(self.gradient / self.penalty));
        let mut a = DMatrix::zeros(2 * (m + n), n + m);
        let mut b = DVector::zeros(2 * (m + n));
        a.view_mut((0, 0), (m, n)).copy_from(self.slopes);
        for i in 0..m {
            (a[(i, n + i)], a[(m + i, n + i)], b[i]) = (-1.0, -1.0, -self.misses[i]);
        }
        for j in 0..n {
            let (above, below) = (2 * m + j, 2 * m + n + j);
            (a[(above, j)], b[above]) = (1.0, self.high[j]);
            (a[(below, j)], b[below]) = (-1.0, -self.low[j]);
        }
        Convex { p, q, a, b }
    }
}

/// `min ½ xᵀPx + qᵀx` subject to `A x ≤ b`, P positive semidefinite.
struct Convex {
    p: DMatrix<f64>,
    q: DVector<f64>,
    a: DMatrix<f64>,
    b: DVector<f64>,
}

/// A place on the way: x, slacks b − A x and multipliers, these two above zero.
struct Inside {
    x: DVector<f64>,
    s: DVector<f64>,
    z: DVector<f64>,
}

impl Convex {
    /// Solution and multipliers.
    fn solve(&self, x: DVector<f64>) -> Option<(DVector<f64>, DVector<f64>)> {
        let s = (&self.b - &self.a * &x).map(|own| own.max(1.0));
        let z = DVector::from_element(s.len(), 1.0);
        let mut at = Inside { x, s, z };
        for _ in 0..MOST_ROUNDS {
            let mean = at.s.dot(&at.z) / at.s.len() as f64;
            let (dual, primal) = self.residuals(&at);
            if mean < TOLERANCE && dual.amax().max(primal.amax()) < 1e3 * TOLERANCE {
                break;
            }
            let aimed = self.round(&at, (&dual, &primal), &at.s.component_mul(&at.z))?;
            let reach = at.reach(&aimed, 1.0);
            let far = at.moved(&aimed, reach);
            let share = (far.s.dot(&far.z) / at.s.dot(&at.z)).powi(3);
            let bent = at.s.component_mul(&at.z) + aimed.s.component_mul(&aimed.z);
            let step = self.round(&at, (&dual, &primal), &bent.add_scalar(-share * mean))?;
            let reach = at.reach(&step, SHORT_OF_END);
            at = at.moved(&step, reach);
        }
        at.x.iter().chain(at.z.iter()).all(|own| own.is_finite()).then_some((at.x, at.z))
    }

    fn residuals(&self, at: &Inside) -> (DVector<f64>, DVector<f64>) {
        let dual = &self.p * &at.x + &self.q + self.a.tr_mul(&at.z);
        (dual, &self.a * &at.x + &at.s - &self.b)
    }

    /// Newton's step to where both residuals and the products of slacks and multipliers less `products` vanish.
    fn round(
        &self,
        at: &Inside,
        (dual, primal): (&DVector<f64>, &DVector<f64>),
        products: &DVector<f64>,
    ) -> Option<Inside> {
        let weights = at.z.component_div(&at.s);
        let mut weighted = self.a.clone();
        weighted.row_iter_mut().zip(weights.iter()).for_each(|(mut row, weight)| row *= *weight);
        let matrix = &self.p + self.a.tr_mul(&weighted);
        let pull = (at.z.component_mul(primal) - products).component_div(&at.s);
        let x = matrix.cholesky()?.solve(&-(dual + self.a.tr_mul(&pull)));
        let s = -primal - &self.a * &x;
        let z = -(products + at.z.component_mul(&s)).component_div(&at.s);
        Some(Inside { x, s, z })
    }
}

impl Inside {
    /// Share of a step up to which slacks and multipliers stay above zero, times `short`; 1 at most.
    fn reach(&self, step: &Inside, short: f64) -> f64 {
        let each = self.s.iter().zip(step.s.iter()).chain(self.z.iter().zip(step.z.iter()));
        each.filter(|(_, change)| **change < 0.0)
            .map(|(own, change)| -short * own / change)
            .fold(1.0, f64::min)
    }

    fn moved(&self, step: &Inside, share: f64) -> Inside {
        Inside { x: &self.x + &step.x * share, s: &self.s + &step.s * share, z: &self.z + &step.z * share }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// J. Nocedal & S. J. Wright, Numerical Optimization, 2nd ed. 2006, example 16.4, from memory: (1.4, 1.7), and the
    /// multiplier 0.8 of x − 2y + 2 ≥ 0.
    #[test]
    fn a_textbooks_program_has_its_solution() {
        let hessian = DMatrix::from_diagonal_element(2, 2, 2.0);
        let gradient = DVector::from_vec(vec![-2.0, -5.0]);
        let slopes = DMatrix::from_row_slice(3, 2, &[-1.0, 2.0, 1.0, 2.0, 1.0, -2.0]);
        let program = StepProgram {
            hessian: &hessian,
            gradient: &gradient,
            misses: &[-2.0, -6.0, -2.0],
            slopes: &slopes,
            penalty: 100.0,
            low: vec![0.0; 2],
            high: vec![10.0; 2],
        };
        let found = program.solve().unwrap();
        assert!((found.step[0] - 1.4).abs() < 1e-9 && (found.step[1] - 1.7).abs() < 1e-9, "{}", found.step);
        assert!((found.multipliers[0] - 0.8).abs() < 1e-8 && found.multipliers[1] < 1e-8);
    }

    /// Limits that exclude each other are missed by as little as can be.
    #[test]
    fn limits_that_nothing_meets_give_way() {
        let (hessian, gradient) = (DMatrix::identity(1, 1), DVector::zeros(1));
        let slopes = DMatrix::from_row_slice(2, 1, &[1.0, -2.0]);
        let program = StepProgram {
            hessian: &hessian,
            gradient: &gradient,
            misses: &[1.0, 1.0],
            slopes: &slopes,
            penalty: 1e3,
            low: vec![-5.0],
            high: vec![5.0],
        };
        assert!((program.solve().unwrap().step[0] - 0.5).abs() < 1e-6);
    }
}
