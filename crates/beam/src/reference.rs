//! What a mesh is compared with.

use crate::closed_modes::closed_modes;
use crate::error::BeamError;
use crate::line::Line;
use crate::mesh::{Element, Mesh};
use crate::modes::modes;
use crate::solution::{Solution, solve};

/// Elements of a piece in the meshes from which values are extrapolated.
const MESHES: [usize; 3] = [8, 16, 32];

/// Below this part of a value the change between meshes is rounding.
const SETTLED: f64 = 1e-12;

/// Frequencies below this part of the highest are those of rigid motions.
const RIGID: f64 = 1e-6;

/// What a mesh is compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reference {
    /// A handbook formula.
    ClosedForm,
    /// Flexibility integrals, which leave nothing out in statics without a foundation.
    Integrated,
    /// The limit of three meshes of flexibility elements (A. C. Aitken's extrapolation).
    Extrapolated,
}

impl Reference {
    /// The words for it.
    pub fn words(self) -> &'static str {
        match self {
            Self::ClosedForm => "closed form",
            Self::Integrated => "exact integration",
            Self::Extrapolated => "extrapolated",
        }
    }

    /// Relative errors below this are rounding, or that of the reference itself.
    pub(crate) fn noise(self) -> f64 {
        match self {
            Self::ClosedForm | Self::Integrated => 1e-10,
            Self::Extrapolated => 1e-8,
        }
    }
}

/// The best solution that there is, and what it rests on.
pub fn reference_solution(line: &Line, mesh: &Mesh) -> Result<(Solution, Reference), BeamError> {
    let (reference, elements) = match line.has_foundation() {
        false => (Reference::Integrated, 1),
        true => (Reference::Extrapolated, 2 * MESHES[2]),
    };
    let finest = Mesh { element: Element::Flexibility, elements, ..*mesh };
    Ok((solve(line, &finest)?, reference))
}

/// The lowest `count` elastic frequencies as exactly as they can be had (Hz).
pub fn reference_frequencies(
    line: &Line,
    mesh: &Mesh,
    count: usize,
) -> Result<(Vec<f64>, Reference), BeamError> {
    if let Some(closed) = closed_modes(line, mesh.theory, count) {
        return Ok((closed.frequencies, Reference::ClosedForm));
    }
    let of = |elements| {
        elastic_frequencies(line, &Mesh { element: Element::Flexibility, elements, ..*mesh }, count)
    };
    let [a, b, c] = MESHES.map(of);
    let (a, b, c) = (a?, b?, c?);
    let limits = a.iter().zip(&b).zip(&c).map(|((a, b), c)| limit([*a, *b, *c]));
    Ok((limits.collect(), Reference::Extrapolated))
}

/// The lowest `count` frequencies that are not those of rigid motions (Hz).
pub fn elastic_frequencies(line: &Line, mesh: &Mesh, count: usize) -> Result<Vec<f64>, BeamError> {
    let all: Vec<f64> = modes(line, mesh, count + 2)?.modes.iter().map(|mode| mode.frequency).collect();
    let highest = all.last().copied().unwrap_or(0.0);
    Ok(all.into_iter().filter(|frequency| *frequency > RIGID * highest).take(count).collect())
}

/// Limit of a sequence whose error falls by the same factor each time: c − (c − b)²/((c − b) − (b − a)).
fn limit([a, b, c]: [f64; 3]) -> f64 {
    let (first, second) = (b - a, c - b);
    let is_regular = second.abs() > SETTLED * c.abs() && second.abs() < 0.5 * first.abs();
    if is_regular { c - second * second / (second - first) } else { c }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limit_of_a_geometric_sequence_is_exact() {
        assert!((limit([1.0 + 0.16, 1.0 + 0.01, 1.0 + 0.000_625]) - 1.0).abs() < 1e-15);
        assert_eq!(limit([2.0, 2.0, 2.0]), 2.0);
    }
}
