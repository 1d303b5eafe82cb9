//! Forces of all local laws at once.
//!
//! With the compliance G of the rest of the structure along the directions of the laws, the motions x along
//! them are `x = x₀ + G·(f(x, ẋ) + k₀ x)`, `ẋ = c_v x − q`. Newton's method solves this small dense system:
//! `(1 + G (T − k₀)) Δx = −R`, T the changes of the forces with x.

use super::law::{LocalLaw, MOST, Response};
use crate::linalg::Columns;

/// Most iterations of one solution; piecewise linear laws need two or three.
const MOST_ITERATIONS: usize = 25;

/// Tolerance down to which the exact solution of straight pieces, which is off by rounding, needs no look at its residual.
const ROUNDING: f64 = 1e-12;

/// What holds during one solution.
pub(super) struct Trial<'a> {
    pub laws: &'a [LocalLaw],
    /// Displacement and velocity of each base.
    pub bases: &'a [[f64; 2]],
    /// Whether each law touched at the beginning.
    pub touching: &'a [bool],
    /// G, which is symmetric.
    pub compliance: &'a Columns,
    /// x to begin from.
    pub start: &'a [f64],
    /// k₀ of each direction, already in G; empty for none.
    pub reference: &'a [f64],
    /// x₀.
    pub free: &'a [f64],
    /// c_v.
    pub rate: f64,
    /// q along each direction.
    pub known_rate: &'a [f64],
}

/// A solution that did not converge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Unsolved {
    /// The law that is furthest from its solution.
    pub law: usize,
}

/// Storage of the iteration, and its last solution.
#[derive(Debug, Clone)]
pub(super) struct Newton {
    /// Forces along the directions.
    pub forces: Vec<f64>,
    /// Motions along the directions.
    x: Vec<f64>,
    /// Forces f + k₀ x.
    totals: Vec<f64>,
    residual: Vec<f64>,
    change: Vec<f64>,
    responses: Vec<Response>,
    kept: KeptInverse,
}

/// The inverse of the matrix of a step, kept for as long as laws and step change forces alike: laws of straight
/// pieces do so from one step to the next.
#[derive(Debug, Clone)]
struct KeptInverse {
    /// c_v and the changes of each law's force that it belongs to.
    rate: f64,
    changes: Vec<([[f64; MOST]; MOST], f64)>,
    matrix: Vec<f64>,
    /// Column by column.
    inverse: Columns,
}

impl Newton {
    /// Storage for so many laws with so many directions, their forces zero.
    pub fn new(laws: usize, directions: usize) -> Self {
        let [forces, x, totals, residual, change] = [(); 5].map(|()| vec![0.0; directions]);
        let (responses, kept) = (vec![Response::default(); laws], KeptInverse::none(directions));
        Newton { forces, x, totals, residual, change, responses, kept }
    }

    /// Solves from the start of the trial; returns the number of iterations.
    pub fn solve(&mut self, trial: &Trial, tolerance: f64) -> Result<usize, Unsolved> {
        self.x.copy_from_slice(trial.start);
        self.respond(trial);
        // Laws of straight pieces that stay on the same ones are solved by one iteration.
        let exact = tolerance >= ROUNDING;
        for iteration in 0..MOST_ITERATIONS {
            self.find_residual(trial);
            let known = self.kept.is_of(trial, &self.responses);
            if !(known && exact) && (0..self.x.len()).all(|row| self.is_balanced(row, trial, tolerance)) {
                self.x.iter_mut().zip(&self.residual).for_each(|(x, residual)| *x -= residual);
                return Ok(iteration);
            }
            if !known && !self.kept.renew(trial, &self.responses) {
                break;
            }
            self.change.fill(0.0);
            self.kept.inverse.add_rows(&self.residual, &mut self.change);
            self.x.iter_mut().zip(&self.change).for_each(|(x, change)| *x -= change);
            if !self.x.iter().all(|x| x.is_finite()) {
                break;
            }
            self.respond(trial);
            if exact && self.kept.is_of(trial, &self.responses) {
                return Ok(iteration + 1);
            }
        }
        Err(Unsolved { law: law_of(trial.laws, self.worst_row(trial)) })
    }

    /// Motions `x₀ + G f` along the directions that the forces of the last solution make.
    pub fn motions(&self) -> &[f64] {
        &self.x
    }

    /// Forces f + k₀ x of the last solution.
    pub fn totals(&self, reference: &[f64]) -> Vec<f64> {
        self.forces.iter().zip(reference).zip(&self.x).map(|((f, k), x)| f + k * x).collect()
    }

    /// Evaluates all laws at x.
    fn respond(&mut self, trial: &Trial) {
        let mut row = 0;
        for (index, law) in trial.laws.iter().enumerate() {
            let [z, z_rate] = trial.bases[index];
            let mut delta = [z - self.x[row], 0.0];
            if law.directions.len() == MOST {
                delta[1] = -self.x[row + 1];
            }
            let rate = z_rate - (trial.rate * self.x[row] - trial.known_rate[row]);
            let response = law.response(delta, rate, trial.touching[index]);
            self.forces[row] = response.force[0];
            if law.directions.len() == MOST {
                self.forces[row + 1] = response.force[1];
            }
            self.responses[index] = response;
            row += law.directions.len();
        }
    }

    /// Finds R.
    fn find_residual(&mut self, trial: &Trial) {
        self.totals.copy_from_slice(&self.forces);
        let held = self.totals.iter_mut().zip(trial.reference).zip(&self.x);
        held.for_each(|((total, reference), x)| *total += reference * x);
        self.change.fill(0.0);
        trial.compliance.add_rows(&self.totals, &mut self.change);
        for (row, residual) in self.residual.iter_mut().enumerate() {
            *residual = self.x[row] - trial.free[row] - self.change[row];
        }
    }

    /// Whether a row is within the tolerance.
    fn is_balanced(&self, row: usize, trial: &Trial, tolerance: f64) -> bool {
        let residual = self.residual[row].abs();
        let known = self.x[row].abs() + trial.free[row].abs();
        // Most rows are, whatever the size of what forces move.
        residual <= tolerance * known || residual <= tolerance * self.size(row, trial) + f64::MIN_POSITIVE
    }

    /// The parts that make up the motion of a row, in magnitude.
    fn size(&self, row: usize, trial: &Trial) -> f64 {
        let moved = trial.compliance.row(row).iter().zip(&self.totals).map(|(g, f)| (g * f).abs());
        self.x[row].abs() + trial.free[row].abs() + moved.sum::<f64>()
    }

    /// The row that is furthest from its solution.
    fn worst_row(&self, trial: &Trial) -> usize {
        let off = |row: usize| self.residual[row].abs() / (self.size(row, trial) + f64::MIN_POSITIVE);
        // A motion that is no number is off by most.
        (0..self.x.len()).max_by(|a, b| off(*a).abs().total_cmp(&off(*b).abs())).unwrap_or(0)
    }
}

impl KeptInverse {
    fn none(directions: usize) -> Self {
        let inverse = Columns::zeros(directions, directions);
        KeptInverse { rate: 0.0, changes: Vec::new(), matrix: Vec::new(), inverse }
    }

    /// Whether it belongs to these changes of the forces; the rate stands for the length of the step.
    fn is_of(&self, trial: &Trial, responses: &[Response]) -> bool {
        let alike =
            |(kept, now): (&([[f64; MOST]; MOST], f64), &Response)| *kept == (now.stiffness, now.damping);
        self.rate == trial.rate
            && trial.reference.is_empty()
            && self.changes.len() == responses.len()
            && self.changes.iter().zip(responses).all(alike)
    }

    /// Makes it anew; false when the matrix is singular.
    fn renew(&mut self, trial: &Trial, responses: &[Response]) -> bool {
        self.fill_matrix(trial, responses);
        self.rate = trial.rate;
        self.changes.clear();
        let m = trial.free.len();
        let mut inverse = vec![0.0; m * m];
        if !invert(m, &mut self.matrix, &mut inverse) {
            return false;
        }
        (0..m * m).for_each(|place| self.inverse.set(place % m, place / m, inverse[place]));
        self.changes.extend(responses.iter().map(|response| (response.stiffness, response.damping)));
        true
    }

    /// 1 + G (T − k₀).
    fn fill_matrix(&mut self, trial: &Trial, responses: &[Response]) {
        let m = trial.free.len();
        self.matrix.clear();
        self.matrix.resize(m * m, 0.0);
        let mut first = 0;
        for (law, response) in trial.laws.iter().zip(responses) {
            let count = law.directions.len();
            let mut tangent = response.stiffness;
            tangent[0][0] += trial.rate * response.damping;
            for i in 0..m {
                for j in 0..count {
                    let column = (0..count).map(|k| trial.compliance.get(i, first + k) * tangent[k][j]);
                    let reference = trial.reference.get(first + j).copied().unwrap_or(0.0);
                    let known = trial.compliance.get(i, first + j) * reference;
                    self.matrix[i * m + first + j] = column.sum::<f64>() - known;
                }
            }
            first += count;
        }
        (0..m).for_each(|i| self.matrix[i * (m + 1)] += 1.0);
    }
}

/// The law that a row belongs to.
fn law_of(laws: &[LocalLaw], row: usize) -> usize {
    let mut first = 0;
    let holds = |law: &LocalLaw| {
        first += law.directions.len();
        row < first
    };
    laws.iter().position(holds).unwrap_or(0)
}

/// Inverse of a small matrix stored row by row, by Gauss-Jordan elimination with partial pivoting; the matrix is
/// used up, and `inverse` comes in as zeros. False when it is singular.
fn invert(m: usize, matrix: &mut [f64], inverse: &mut [f64]) -> bool {
    (0..m).for_each(|i| inverse[i * (m + 1)] = 1.0);
    for c in 0..m {
        let larger = |a: &usize, b: &usize| matrix[a * m + c].abs().total_cmp(&matrix[b * m + c].abs());
        let pivot = (c..m).max_by(larger).unwrap_or(c);
        let value = matrix[pivot * m + c];
        if value == 0.0 || !value.is_finite() {
            return false;
        }
        for j in 0..m {
            for rows in [&mut *matrix, &mut *inverse] {
                rows.swap(c * m + j, pivot * m + j);
                rows[c * m + j] /= value;
            }
        }
        for i in (0..m).filter(|i| *i != c) {
            let factor = matrix[i * m + c];
            for j in 0..m {
                matrix[i * m + j] -= factor * matrix[c * m + j];
                inverse[i * m + j] -= factor * inverse[c * m + j];
            }
        }
    }
    inverse.iter().all(|x| x.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn elimination_exchanges_rows_where_it_must() {
        let (mut matrix, mut inverse) = ([0.0, 2.0, 1.0, 1.0, 1.0, 0.0, 3.0, 0.0, 1.0], [0.0; 9]);
        assert!(invert(3, &mut matrix, &mut inverse));
        let found =
            |row: usize| inverse[3 * row..][..3].iter().zip([7.0, 3.0, 6.0]).map(|(a, b)| a * b).sum::<f64>();
        for (row, expected) in [1.0, 2.0, 3.0].into_iter().enumerate() {
            assert!((found(row) - expected).abs() < 1e-14);
        }
        assert!(!invert(2, &mut [1.0, 2.0, 2.0, 4.0], &mut [0.0; 4]));
    }
}
