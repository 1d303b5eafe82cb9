//! Lowest eigenpairs of K·x = λ·M·x with K and M positive semidefinite.
//!
//! All work is done on (K + σM)⁻¹M, whose largest eigenvalues θ = 1/(λ + σ) belong to the lowest λ; freedoms
//! without mass have θ = 0 and drop out. The shift σ is zero where K alone can be factored, and of the size of
//! the wanted λ where rigid motions make K singular. Large matrices go to block Lanczos, small ones to a dense
//! solution; Sturm's count of the negative pivots of K − λM says whether one was missed, and then the dense
//! solution decides.

mod crossing;
mod dense;
mod lanczos;
mod shift;

use super::columns::Columns;
use super::matrix::SymmetricMatrix;
use super::pivot::{PivotFailure, ROUNDING};
pub use crossing::{Crossing, CrossingPairs};
use shift::ShiftedPencil;

/// Order up to which the dense solution is the faster one.
const SMALL: usize = 48;

/// Order over wanted eigenpairs up to which the dense solution is the faster one.
const MANY: usize = 6;

/// Eigenvalues closer than this part of their size (and of the shift) are not told apart by a count.
const CLUSTER: f64 = 1e-6;

/// Stiffness and mass, stored alike.
#[derive(Debug, Clone, Copy)]
pub struct Pencil<'a> {
    /// K, positive semidefinite.
    pub stiffness: &'a SymmetricMatrix,
    /// M, positive semidefinite.
    pub mass: &'a SymmetricMatrix,
}

/// How eigenpairs are found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EigenMethod {
    /// Block Lanczos, and the dense solution where that misses one.
    Lanczos,
    /// All eigenpairs of the full matrices; time grows with the cube of the order.
    Dense,
}

/// Lowest eigenpairs.
#[derive(Debug, Clone)]
pub struct EigenPairs {
    /// λ, ascending; rounding of K is taken for zero.
    pub values: Vec<f64>,
    /// x with xᵀMx = 1, one column for each λ.
    pub vectors: Columns,
    /// ‖Kx − λMx‖/((λ + σ)‖Mx‖): unbalanced over inertia forces; for rigid motions, whose λ is zero, at the
    /// shift.
    pub residuals: Vec<f64>,
    /// Value between the last λ, or those that crowd with it, and the next.
    pub limit: f64,
    /// Number of λ found below the limit.
    pub found_below: usize,
    /// Number of λ below the limit by Sturm's count.
    pub counted_below: usize,
}

/// Why there are no eigenpairs.
#[derive(Debug, Clone, PartialEq)]
pub enum EigenFailure {
    /// A motion has neither stiffness nor mass, or less than no stiffness.
    Unheld(PivotFailure),
    /// The dense solution did not converge.
    NoConvergence,
}

/// Approximate eigenpairs of (K + σM)⁻¹M, largest first.
struct Candidates {
    /// θ of all that are known.
    inverses: Vec<f64>,
    /// x of the first of them.
    vectors: Columns,
}

/// Where a list of values is cut.
#[derive(Debug, Clone, Copy)]
struct Cut {
    limit: f64,
    below: usize,
}

impl Pencil<'_> {
    /// The lowest `count` eigenpairs, fewer when fewer freedoms have mass.
    ///
    /// # Errors
    /// [`EigenFailure`] when a motion has neither stiffness nor mass.
    pub fn lowest(&self, count: usize) -> Result<EigenPairs, EigenFailure> {
        let dense = self.mass.order() <= SMALL.max(MANY * count);
        let method = if dense { EigenMethod::Dense } else { EigenMethod::Lanczos };
        self.lowest_by(count, method)
    }

    /// As [`Pencil::lowest`], by a given method.
    ///
    /// # Errors
    /// As [`Pencil::lowest`].
    pub fn lowest_by(&self, count: usize, method: EigenMethod) -> Result<EigenPairs, EigenFailure> {
        if self.mass.order() == 0 {
            return Ok(EigenPairs::none());
        }
        let shifted = ShiftedPencil::of(*self, count).map_err(EigenFailure::Unheld)?;
        if method == EigenMethod::Lanczos
            && let Some((candidates, cut)) = lanczos::lowest(&shifted, count)
        {
            return shifted.pairs(candidates, cut, cut.below, count);
        }
        let candidates = dense::all(&shifted).ok_or(EigenFailure::NoConvergence)?;
        let cut = shifted.cut(&candidates.inverses, count);
        let counted = shifted.count_below(cut.limit).unwrap_or(0);
        shifted.pairs(candidates, cut, counted, count)
    }
}

impl EigenPairs {
    /// Those of a matrix without rows.
    fn none() -> Self {
        let (values, residuals, vectors) = (Vec::new(), Vec::new(), Columns::zeros(0, 0));
        EigenPairs { values, vectors, residuals, limit: 0.0, found_below: 0, counted_below: 0 }
    }
}

impl ShiftedPencil<'_> {
    /// Places the limit in the first gap behind `count` values.
    fn cut(&self, inverses: &[f64], count: usize) -> Cut {
        let value = |i: usize| self.value(inverses[i]);
        let apart = |i: &usize| value(*i) - value(i - 1) > CLUSTER * (value(*i) + self.shift);
        match (count.max(1)..inverses.len()).find(apart) {
            Some(next) => Cut { limit: (0.5 * (value(next - 1) + value(next))).max(0.0), below: next },
            None => {
                let last = inverses.last().map_or(0.0, |inverse| self.value(*inverse));
                let limit = if last > 0.0 { 2.0 * last } else { 1.0 };
                Cut { limit, below: inverses.len() }
            }
        }
    }

    /// Normalized pairs with their residuals.
    fn pairs(
        &self,
        found: Candidates,
        cut: Cut,
        counted_below: usize,
        count: usize,
    ) -> Result<EigenPairs, EigenFailure> {
        let count = count.min(found.inverses.len());
        let (k, m) = (self.pencil.stiffness, self.pencil.mass);
        let (forces, momenta) = (k.multiply_columns(&found.vectors), m.multiply_columns(&found.vectors));
        let (limit, found_below) = (cut.limit, cut.below);
        let (values, residuals) = (Vec::with_capacity(count), Vec::with_capacity(count));
        let vectors = Columns::zeros(m.order(), count);
        let mut pairs = EigenPairs { values, vectors, residuals, limit, found_below, counted_below };
        for (column, inverse) in found.inverses[..count].iter().enumerate() {
            let of = |columns: &Columns| columns.column(column).collect::<Vec<f64>>();
            let (x, kx, mx) = (of(&found.vectors), of(&forces), of(&momenta));
            let (mass, value) = (dot(&x, &mx), self.value(*inverse));
            let unbalanced: f64 = kx.iter().zip(&mx).map(|(kx, mx)| (kx - value * mx).powi(2)).sum();
            pairs.residuals.push((unbalanced / dot(&mx, &mx)).sqrt() / (value + self.shift));
            pairs.values.push(self.beyond_rounding(value, mass, &x)?);
            let scale = sign_of_largest(&x) / mass.sqrt();
            x.iter().enumerate().for_each(|(row, x)| pairs.vectors.set(row, column, scale * x));
        }
        Ok(pairs)
    }

    /// A λ, zero where it is no more than rounding of the energy xᵀKx; refused where it is less than that.
    fn beyond_rounding(&self, value: f64, mass: f64, x: &[f64]) -> Result<f64, EigenFailure> {
        let noise = ROUNDING * self.pencil.stiffness.magnitude(x) / mass;
        if value < -noise.max(CLUSTER * self.shift) {
            return Err(EigenFailure::Unheld(PivotFailure::new(0, value, 0.0, x.to_vec())));
        }
        Ok(if value <= noise { 0.0 } else { value })
    }
}

/// ±1, so that the largest component becomes positive.
fn sign_of_largest(x: &[f64]) -> f64 {
    let largest = x.iter().fold(0.0_f64, |a, x| if x.abs() > a.abs() * (1.0 + CLUSTER) { *x } else { a });
    if largest < 0.0 { -1.0 } else { 1.0 }
}

/// Σ aᵢbᵢ in eight partial sums.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 8];
    let (a, b) = (a.as_chunks::<8>(), b.as_chunks::<8>());
    for (a, b) in a.0.iter().zip(b.0) {
        for i in 0..8 {
            sums[i] += a[i] * b[i];
        }
    }
    let rest: f64 = a.1.iter().zip(b.1).map(|(a, b)| a * b).sum();
    sums.iter().sum::<f64>() + rest
}
