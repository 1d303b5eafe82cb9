//! Which tires stand on the road, and whether the vehicle stands.
//!
//! A tire on the road pushes, and one off the road is clear of it. Four tires leave fifteen ways to stand, so that the
//! search ends: most loads are found by taking tires off and putting them back, and the rest by trying every way.
//!
//! A way to stand counts only where it is stable: a roll of the body must be met by a moment that turns it back. The
//! moment of a unit roll follows from the equations themselves, so that a singular matrix, as one tire leaves it, never
//! looks like an answer. Where nothing but tires resists roll and those of one side have left the road, the vehicle tips.

use nalgebra::{Const, DimMin, SMatrix, SVector};

use super::{GroundModel, HEAVE, Hubs, Problem, ROLL, TIRES, UNKNOWNS, Unknowns};
use crate::{AxleError, Side};

/// Roll beyond which displacements are not small, rad.
const LARGEST_ROLL: f64 = 0.2;
/// Share of the axle load by which a tire may pull, or push on nothing, for rounding.
const ROUNDING: f64 = 1e-10;
/// Share of the roll stiffness of the tires alone below which there is none but for rounding.
const NO_STIFFNESS: f64 = 1e-9;

/// How the tires of one case stand on the road.
#[derive(Debug, Clone)]
pub(crate) struct Footing {
    pub(super) unknowns: Unknowns,
    pub(super) on_road: Vec<bool>,
    /// Roll of the body at which the rest of the vehicle does nothing; none on an even road.
    pub(super) rest: Option<f64>,
    /// Largest miss of an equation, as [`GroundModel::miss`].
    pub(super) missed: f64,
}

/// A solution with given tires on the road.
struct Solution {
    unknowns: Unknowns,
    missed: f64,
}

impl Footing {
    /// Roll of the body about X, rad.
    pub(crate) fn roll(&self) -> f64 {
        self.unknowns[ROLL]
    }
}

impl GroundModel {
    /// The way in which the tires stand.
    pub(super) fn settled(&self, problem: &Problem, rest: Option<f64>) -> Result<Footing, AxleError> {
        let none = |reason| AxleError::NoEquilibrium { case: problem.case.to_owned(), reason };
        let found = self.by_pivots(problem).or_else(|| self.by_trial(problem));
        let (Solution { unknowns, missed }, on_road) =
            found.ok_or_else(|| none(self.why_it_falls(problem)))?;
        if unknowns[ROLL].abs() > LARGEST_ROLL {
            return Err(none(ROLLS_TOO_FAR));
        }
        Ok(Footing { unknowns, on_road, rest, missed })
    }

    /// Takes tires that pull off the road and puts those that it has reached back, until none changes.
    fn by_pivots(&self, problem: &Problem) -> Option<(Solution, Vec<bool>)> {
        let mut on_road = vec![true; self.tires.len()];
        // The count bounds a cycle.
        for _ in 0..2 * TIRES {
            let solution = self.standing_on(problem, &on_road)?;
            let next = self.on_road(problem, &solution.unknowns, &on_road);
            if next == on_road {
                return Some((solution, on_road));
            }
            on_road = next;
        }
        None
    }

    /// Tries every way to stand, those on more tires first.
    fn by_trial(&self, problem: &Problem) -> Option<(Solution, Vec<bool>)> {
        let count = self.tires.len();
        let mut ways: Vec<Vec<bool>> =
            (1..1_usize << count).map(|way| (0..count).map(|k| way >> k & 1 == 1).collect()).collect();
        ways.sort_by_key(|way| way.iter().filter(|on| !**on).count());
        ways.into_iter().find_map(|on_road| {
            let solution = self.standing_on(problem, &on_road)?;
            (self.on_road(problem, &solution.unknowns, &on_road) == on_road).then_some((solution, on_road))
        })
    }

    /// Solves with the given tires on the road; none where the vehicle does not stand on them.
    fn standing_on(&self, problem: &Problem, on_road: &[bool]) -> Option<Solution> {
        let stands = |side: Side| self.tires.iter().zip(on_road).any(|(tire, on)| *on && tire.side == side);
        let both = stands(Side::Left) && stands(Side::Right);
        if !both && problem.restraint.stiffness == 0.0 {
            return None;
        }
        let (matrix, right) = self.equations(problem, on_road);
        let mut turn = Unknowns::zeros();
        turn[ROLL] = -1.0;
        let sides = [turn, right];
        // Tires that roll have no side forces of their own.
        let [turned, unknowns] = if self.standing {
            solved(&matrix, std::array::from_fn::<_, UNKNOWNS, _>(|place| place), sides)?
        } else {
            solved(&matrix, ROLLING, sides)?
        };
        let roll = turned[ROLL];
        let tires: f64 = self.tires.iter().map(|tire| tire.vertical_stiffness * tire.y * tire.y).sum();
        let stable = roll > 0.0 && roll * NO_STIFFNESS * tires < 1.0;
        let missed = self.miss(problem, &(matrix * unknowns - right));
        (stable && unknowns.iter().all(|value| value.is_finite())).then_some(Solution { unknowns, missed })
    }

    /// Which tires should be on the road: those that push, and those off it that the road has reached.
    fn on_road(&self, problem: &Problem, x: &Unknowns, now: &[bool]) -> Vec<bool> {
        // Where every tire is on the road, how high it would be does not matter.
        let motion = if now.contains(&false) { self.hub_motion(problem, x) } else { Hubs::zeros() };
        let rounding = ROUNDING * problem.actions.axle_load;
        let tires = self.tires.iter().zip(now).enumerate();
        tires
            .map(|(k, (tire, on))| {
                let height = tire.unit[2].dot(&motion) + x[HEAVE] + x[ROLL] * tire.y + tire.rise;
                let reached = tire.vertical_stiffness * (problem.actions.raise.of(tire.side) - height);
                if *on { x[k] >= -rounding } else { reached > rounding }
            })
            .collect()
    }

    /// Why no way to stand was found.
    fn why_it_falls(&self, problem: &Problem) -> &'static str {
        if self.standing_on(problem, &vec![true; self.tires.len()]).is_some() { TIPS } else { ROLLS_OVER }
    }

    /// Largest miss of an equation of the ground: of a force over the axle load, of the moment over the axle load at
    /// the outermost tire.
    fn miss(&self, problem: &Problem, missed: &Unknowns) -> f64 {
        let reach = self.tires.iter().map(|tire| tire.y.abs()).fold(0.0, f64::max);
        let over = |row: usize| if row == ROLL { reach } else { 1.0 };
        (0..UNKNOWNS).map(|row| missed[row].abs() / over(row)).fold(0.0, f64::max) / problem.actions.axle_load
    }
}

/// Places of the unknowns of tires that roll: their loads, heave and roll.
const ROLLING: [usize; TIRES + 2] = [0, 1, 2, 3, HEAVE, ROLL];

/// Solutions of equations of which those at some places are to be solved; every other one gives its own unknown.
fn solved<const N: usize>(
    matrix: &SMatrix<f64, UNKNOWNS, UNKNOWNS>,
    places: [usize; N],
    right_sides: [Unknowns; 2],
) -> Option<[Unknowns; 2]>
where
    Const<N>: DimMin<Const<N>, Output = Const<N>>,
{
    let own = SMatrix::<f64, N, N>::from_fn(|i, j| matrix[(places[i], places[j])]).lu();
    let solve = |mut unknowns: Unknowns| {
        let solved = own.solve(&SVector::<f64, N>::from_fn(|i, _| unknowns[places[i]]))?;
        places.iter().zip(&solved).for_each(|(place, value)| unknowns[*place] = *value);
        Some(unknowns)
    };
    let [one, other] = right_sides.map(solve);
    Some([one?, other?])
}

const TIPS: &str = "the vehicle tips over, because its tires on one side have left the road; lower the side force, the curb force, the raise or the body height";
const ROLLS_OVER: &str = "the body rolls over by its own weight, because springs, tires and seats hold it against roll by less; lower the body height, or check the springs' rates and the seats' places";
const ROLLS_TOO_FAR: &str = "the body rolls by more than 0.2 rad (11 deg), beyond which displacements are not small; lower the side force, the raise or the body height, or check the springs' rates";
