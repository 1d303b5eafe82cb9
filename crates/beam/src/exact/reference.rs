//! What a mesh is compared with.

use crate::elements::mesh::{Element, Mesh, Theory};
use crate::error::BeamError;
use crate::exact::closed_modes::closed_modes;
use crate::parts::line::Line;
use crate::solving::modes::modes;
use crate::solving::solution::{Solution, Station, solve};

/// Elements of a piece in the meshes from which values are extrapolated.
const MESHES: [usize; 3] = [16, 32, 64];

/// Below this part of a value the change between meshes is rounding.
const SETTLED: f64 = 1e-12;

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
    ///
    /// With shear, deflections between nodes on a foundation do not settle as regularly as those of nodes, and their limit is
    /// good to some 1e-5 only.
    pub(crate) fn noise(self, theory: Theory) -> f64 {
        match (self, theory) {
            (Self::ClosedForm | Self::Integrated, _) => 1e-10,
            (Self::Extrapolated, Theory::EulerBernoulli) => 1e-8,
            (Self::Extrapolated, Theory::Timoshenko) => 1e-4,
        }
    }
}

/// The best that is known of a beam under its loads.
pub enum Best {
    /// Nothing is left out.
    Integrated(Solution),
    /// The limit of finer and finer meshes.
    Extrapolated(Box<[Solution; 3]>),
}

impl Best {
    /// The best that there is.
    pub fn of(line: &Line, mesh: &Mesh) -> Result<Self, BeamError> {
        let solved = |elements| solve(line, &Mesh { element: Element::Flexibility, elements, ..*mesh });
        if !line.has_foundation() {
            return Ok(Self::Integrated(solved(1)?));
        }
        let [coarse, middle, fine] = MESHES;
        Ok(Self::Extrapolated(Box::new([solved(coarse)?, solved(middle)?, solved(fine)?])))
    }

    /// What its values rest on.
    pub fn basis(&self) -> Reference {
        match self {
            Self::Integrated(_) => Reference::Integrated,
            Self::Extrapolated(_) => Reference::Extrapolated,
        }
    }

    /// The solution that comes nearest.
    pub fn nearest(&self) -> &Solution {
        match self {
            Self::Integrated(solution) => solution,
            Self::Extrapolated(solutions) => &solutions[2],
        }
    }

    /// A value at a place.
    pub fn value(&self, at: f64, of: impl Fn(&Station) -> f64) -> f64 {
        match self {
            Self::Integrated(solution) => of(&solution.at(at)),
            Self::Extrapolated(solutions) => limit(solutions.each_ref().map(|solution| of(&solution.at(at)))),
        }
    }
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
    let found = modes(line, mesh, count + 2)?;
    let elastic = found.modes[found.rigid()..].iter().take(count);
    Ok(elastic.map(|mode| mode.frequency).collect())
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
