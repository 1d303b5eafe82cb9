//! Sequential quadratic programming in a trust region.
//!
//! Each step minimizes a quadratic model of the Lagrangian under linearized limits in a box about the place (`step_program`);
//! the Hessian is Powell's damped BFGS, the merit the exact penalty `f + ρ Σ max(c, 0)`. A step that the merit does not
//! confirm, or to a place without values, shrinks the box.
//!
//! Source: J. Nocedal & S. J. Wright, Numerical Optimization, 2nd ed. 2006, sec. 18.3 (damped BFGS) and 18.5 (S l1 QP), from
//! memory.

mod step_program;

use nalgebra::{DMatrix, DVector};

use step_program::StepProgram;

/// Most steps of one descent.
const MOST_STEPS: usize = 200;
/// Size of the first box, as a share of each range.
const FIRST_BOX: f64 = 0.2;
/// Box below which a place is a solution.
const SMALLEST_BOX: f64 = 1e-7;
/// Change of the merit that is none.
const NO_CHANGE: f64 = 1e-10;
/// Penalty of the first step; values are of the order of one.
const FIRST_PENALTY: f64 = 10.0;
/// Largest penalty: limits that nothing meets ask for more and more.
const MOST_PENALTY: f64 = 1e5;
/// Share of a range over which slopes are differenced: leaves 1e-9 by the third derivative, and rounding as much.
const DIFFERENCE: f64 = 2e-5;

/// Goal and limits at a place of the cube beside another one.
pub type Beside<'a> = &'a dyn Fn(&[f64], &[f64]) -> Option<SmoothValues>;

/// A goal and limits over the unit cube.
pub struct Smooth<'a> {
    /// Number of values.
    pub dimensions: usize,
    /// Goal and limits at a place of the cube; none where they have no values.
    pub at: &'a dyn Fn(&[f64]) -> Option<SmoothValues>,
    /// The same beside a place, for differences from it: the first is beside the second.
    pub beside: Beside<'a>,
}

/// What is at a place; scaled to be of the order of one.
#[derive(Debug, Clone, PartialEq)]
pub struct SmoothValues {
    /// What is to be least.
    pub goal: f64,
    /// How far each limit is missed, 0 or less where it is met.
    pub misses: Vec<f64>,
}

/// Where a descent ended.
#[derive(Debug, Clone, PartialEq)]
pub struct Descent {
    /// Place in the cube.
    pub place: Vec<f64>,
    /// What is there.
    pub values: SmoothValues,
    /// What a limit's relaxation by one would take off the goal.
    pub multipliers: Vec<f64>,
    /// Steps taken.
    pub steps: usize,
    /// Whether it ended by itself.
    pub converged: bool,
}

impl SmoothValues {
    fn merit(&self, penalty: f64) -> f64 {
        self.goal + penalty * self.misses.iter().map(|miss| miss.max(0.0)).sum::<f64>()
    }

    /// The worst miss; 0 where all limits are met.
    pub fn worst(&self) -> f64 {
        self.misses.iter().copied().fold(0.0, f64::max)
    }
}

impl Smooth<'_> {
    /// Goes down from a place of the cube; none where there are no values at it.
    pub fn descend(&self, from: &[f64]) -> Option<Descent> {
        let values = (self.at)(from)?;
        let limits = values.misses.len();
        let slopes = self.slopes(from, &values)?;
        let mut state = State {
            place: from.to_vec(),
            values,
            slopes,
            hessian: DMatrix::identity(self.dimensions, self.dimensions),
            multipliers: vec![0.0; limits],
            size: FIRST_BOX,
            penalty: FIRST_PENALTY,
        };
        let mut steps = 0;
        while steps < MOST_STEPS {
            steps += 1;
            if self.step(&mut state) {
                break;
            }
        }
        let State { place, values, multipliers, .. } = state;
        Some(Descent { place, values, multipliers, steps, converged: steps < MOST_STEPS })
    }

    /// One step; true where there is none left to take.
    fn step(&self, state: &mut State) -> bool {
        let Some(step) = state.program().solve() else {
            state.size *= 0.25;
            return state.size < SMALLEST_BOX;
        };
        let foretold = state.foretold(&step.step);
        let largest = step.multipliers.iter().copied().fold(0.0, f64::max);
        if largest > 0.9 * state.penalty && state.values.worst() > NO_CHANGE && state.penalty < MOST_PENALTY {
            state.penalty *= 10.0;
            return false;
        }
        state.multipliers.clone_from(&step.multipliers);
        if foretold < NO_CHANGE {
            return true;
        }
        let place: Vec<f64> =
            state.place.iter().zip(step.step.iter()).map(|(x, d)| (x + d).clamp(0.0, 1.0)).collect();
        let length = step.step.amax();
        let taken = (self.at)(&place).and_then(|values| {
            let won = state.values.merit(state.penalty) - values.merit(state.penalty);
            (won > 0.1 * foretold).then_some((values, won))
        });
        let Some((values, won)) = taken else {
            state.size = 0.4 * length.min(state.size);
            return state.size < SMALLEST_BOX;
        };
        let Some(slopes) = self.slopes(&place, &values) else {
            state.size = 0.4 * length.min(state.size);
            return state.size < SMALLEST_BOX;
        };
        if won > 0.7 * foretold && length > 0.99 * state.size {
            state.size = (2.0 * state.size).min(1.0);
        }
        state.learn(&slopes, &step.step);
        (state.place, state.values, state.slopes) = (place, values, slopes);
        false
    }

    /// Slopes of goal and limits, the goal's first: central differences, from one side at an end.
    fn slopes(&self, place: &[f64], values: &SmoothValues) -> Option<DMatrix<f64>> {
        let mut slopes = DMatrix::zeros(1 + values.misses.len(), self.dimensions);
        for axis in 0..self.dimensions {
            let at = |offset: f64| {
                let mut near = place.to_vec();
                near[axis] += offset;
                (0.0..=1.0).contains(&near[axis]).then(|| (self.beside)(&near, place)).flatten().map(all)
            };
            let own = all(values.clone());
            let column = match (at(-DIFFERENCE), at(DIFFERENCE)) {
                (Some(less), Some(more)) => (more - less) / (2.0 * DIFFERENCE),
                (None, Some(more)) => (more - own) / DIFFERENCE,
                (Some(less), None) => (own - less) / DIFFERENCE,
                (None, None) => return None,
            };
            slopes.set_column(axis, &column);
        }
        Some(slopes)
    }
}

fn all(values: SmoothValues) -> DVector<f64> {
    DVector::from_iterator(1 + values.misses.len(), std::iter::once(values.goal).chain(values.misses))
}

/// A place on the way down.
struct State {
    place: Vec<f64>,
    values: SmoothValues,
    /// The goal's first.
    slopes: DMatrix<f64>,
    hessian: DMatrix<f64>,
    multipliers: Vec<f64>,
    /// Half the width of the box.
    size: f64,
    penalty: f64,
}

impl State {
    /// Step and multipliers of the model here.
    fn program(&self) -> OwnProgram<'_> {
        let gradient = self.slopes.row(0).transpose();
        let slopes = self.slopes.rows(1, self.values.misses.len()).into_owned();
        OwnProgram { state: self, gradient, slopes }
    }

    /// What a step takes off the merit by the model.
    fn foretold(&self, step: &DVector<f64>) -> f64 {
        let by_goal = self.slopes.row(0).transpose().dot(step) + 0.5 * step.dot(&(&self.hessian * step));
        let linear = self.slopes.rows(1, self.values.misses.len()) * step;
        let misses = self.values.misses.iter().zip(linear.iter());
        let by_limits: f64 = misses.map(|(miss, change)| miss.max(0.0) - (miss + change).max(0.0)).sum();
        self.penalty * by_limits - by_goal
    }

    /// Lets the Hessian of the Lagrangian learn from a step.
    fn learn(&mut self, slopes: &DMatrix<f64>, step: &DVector<f64>) {
        let weights = DVector::from_iterator(
            1 + self.multipliers.len(),
            std::iter::once(1.0).chain(self.multipliers.iter().copied()),
        );
        let change = (slopes - &self.slopes).transpose() * weights;
        let bent = &self.hessian * step;
        let (curved, own) = (step.dot(&change), step.dot(&bent));
        if own <= f64::MIN_POSITIVE {
            return;
        }
        // Powell's damping keeps it positive definite.
        let share = if curved >= 0.2 * own { 1.0 } else { 0.8 * own / (own - curved) };
        let damped = change * share + &bent * (1.0 - share);
        let along = step.dot(&damped);
        self.hessian += &damped * damped.transpose() / along - &bent * bent.transpose() / own;
    }
}

struct OwnProgram<'a> {
    state: &'a State,
    gradient: DVector<f64>,
    slopes: DMatrix<f64>,
}

impl OwnProgram<'_> {
    fn solve(&self) -> Option<step_program::Step> {
        let State { place, values, hessian, size, penalty, .. } = self.state;
        StepProgram {
            hessian,
            gradient: &self.gradient,
            misses: &values.misses,
            slopes: &self.slopes,
            penalty: *penalty,
            low: place.iter().map(|x| (-size).max(-x)).collect(),
            high: place.iter().map(|x| size.min(1.0 - x)).collect(),
        }
        .solve()
    }
}
