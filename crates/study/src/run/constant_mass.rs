//! Designs of equal axle mass, found on the model itself and not between its samples.

use super::asked::Asked;
use crate::ask::{Point, Study};
use crate::findings::{EqualMass, Row, StudyOutcome};
use crate::solve::Solver;
use crate::solve::name;

/// Most halvings of a range: more than a `f64` has bits between two ends.
const MOST_HALVINGS: usize = 200;

impl Study {
    /// An outcome with the designs of equal mass that the study asks for.
    pub(crate) fn with_equal_mass(&self, outcome: StudyOutcome, asked: &Asked) -> StudyOutcome {
        let masses = self.masses.iter();
        let constant_mass = masses.map(|&mass| self.equal_mass(mass, (&outcome, asked))).collect();
        StudyOutcome { constant_mass, ..outcome }
    }

    /// The first design of each line that has a mass (kg), in the order of the lines.
    fn equal_mass(&self, mass: f64, (outcome, asked): (&StudyOutcome, &Asked)) -> EqualMass {
        let mut solver = Solver::default();
        let axle_mass = outcome.standing(name::AXLE_MASS);
        let excess = |row: &Row| axle_mass.and_then(|own| row.value(own)).map_or(f64::NAN, |own| own - mass);
        let found = outcome.lines().filter_map(|line| {
            let step = line.windows(2).find(|step| excess(&step[0]) * excess(&step[1]) <= 0.0)?;
            let point = self.point_of_mass(mass, (step, excess(&step[0])), &mut solver)?;
            Some(self.solve(&[point], asked, &mut solver).pop()?.row)
        });
        EqualMass { mass, points: found.filter(|row| row.result.is_ok()).collect() }
    }

    /// Halves a step of a line that the mass lies in until nothing is left to halve.
    ///
    /// Arguments: `step`, two neighbors in a line; `excess`, by how much the first one is heavier, kg.
    fn point_of_mass(&self, mass: f64, (step, excess): (&[Row], f64), solver: &mut Solver) -> Option<Point> {
        let at = |value: f64| {
            let mut values = step[0].values.clone();
            values[self.varied.len() - 1] = value;
            Point { variant: step[0].variant, values }
        };
        let end = |row: &Row| row.values[self.varied.len() - 1];
        let (mut low, mut high) = (end(&step[0]), end(&step[1]));
        let low_side = excess < 0.0;
        for _ in 0..MOST_HALVINGS {
            let middle = 0.5 * (low + high);
            if middle == low || middle == high {
                break;
            }
            let found = solver.with_axle(self, &at(middle), |ready| Ok(ready.axle.mass())).ok()? - mass;
            *(if (found < 0.0) == low_side { &mut low } else { &mut high }) = middle;
        }
        Some(at(if excess == 0.0 { end(&step[0]) } else { high }))
    }
}
