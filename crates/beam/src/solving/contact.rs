//! Which stops touch.

use crate::elements::mesh::Mesh;
use crate::error::BeamError;
use crate::parts::line::Line;
use crate::parts::support::SupportKind;
use crate::solving::solution::Solution;

/// Steps after which stops that still open and close are given up.
const MOST_STEPS: usize = 60;

/// Reactions and gaps below this part of the largest count as none.
const NONE: f64 = 1e-9;

/// The solution in which stops that touch push and those that do not are not reached.
///
/// An active set: stops that would pull are let go, stops that the beam would pass are added, until neither happens.
/// One is changed at a time, the worst, which for a beam that is held without stops ends after finitely many steps.
///
/// # Errors
/// [`BeamError::Mechanism`], [`BeamError::Contact`] and as [`Solution::of`].
pub fn settled(line: &Line, mesh: &Mesh) -> Result<Solution, BeamError> {
    let mut touches: Vec<bool> = line.supports().iter().map(|support| !support.kind.is_stop()).collect();
    if line.free_motion(&touches).is_some() {
        touches.fill(true);
    }
    for _ in 0..MOST_STEPS {
        if let Some(motion) = line.free_motion(&touches) {
            return Err(BeamError::Mechanism { motion });
        }
        let solution = Solution::of(line, mesh, &touches)?;
        match worst(line, &solution, &touches) {
            Some(number) => touches[number] = !touches[number],
            None => return Ok(solution),
        }
    }
    Err(BeamError::Contact { steps: MOST_STEPS })
}

/// The stop that pulls most or is passed farthest, each in its own measure.
fn worst(line: &Line, solution: &Solution, touches: &[bool]) -> Option<usize> {
    let largest =
        |values: &mut dyn Iterator<Item = f64>| values.fold(f64::MIN_POSITIVE, |a, b| a.max(b.abs()));
    let force = largest(&mut solution.reactions.iter().map(|reaction| reaction.force));
    let height = largest(&mut line.supports().iter().map(|support| solution.at(support.at).deflection));
    let wrong = |number: usize| {
        let support = &line.supports()[number];
        let SupportKind::Stop { side, gap, .. } = support.kind else { return 0.0 };
        if touches[number] {
            return -side.push() * solution.reactions[number].force / force;
        }
        (-side.push() * solution.at(support.at).deflection - gap) / height
    };
    let all = (0..touches.len()).map(|number| (number, wrong(number)));
    all.filter(|(_, wrong)| *wrong > NONE).max_by(|a, b| a.1.total_cmp(&b.1)).map(|(number, _)| number)
}
