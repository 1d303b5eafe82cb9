//! Block Lanczos on A = (K + σM)⁻¹M with full reorthogonalization in the inner product xᵀMy.
//!
//! R. G. Grimes, J. G. Lewis & H. D. Simon, SIAM J. Matrix Anal. Appl. 15 (1994) 228-272 (from memory), without
//! their restarts and selective steps: axles need few blocks. A block finds up to eight equal λ at once, as
//! round tubes and rigid motions have them. Each step
//! ```text
//! A·Qⱼ = Q·Hⱼ + Qⱼ₊₁·Rⱼ,   Q = [Q₁ … Qⱼ],   QᵀMQ = 1
//! ```
//! adds eight vectors to the basis; QᵀMAQ = [H₁ H₂ …] is a small symmetric matrix whose eigenpairs (θ, s) give
//! x = Q·s with the error ‖Rⱼ·(last eight of s)‖.

use faer::linalg::matmul::matmul;
use faer::{Accum, Mat, MatRef, Par, Side};

use super::shift::ShiftedPencil;
use super::{Candidates, Cut, dot};
use crate::linalg::columns::Columns;

/// Vectors in a block.
const BLOCK: usize = 8;

/// Error of an eigenvector, as a part of θ, at which it counts as found; one more product with A follows.
const FOUND: f64 = 1e-9;

/// A vector that keeps less than this part of its length when it is made orthogonal adds nothing new.
const DEPENDENT: f64 = 1e-10;

/// Most vectors beyond six times the wanted ones.
const SPARE: usize = 160;

/// Orthonormal basis of what A makes of a start block.
struct Basis<'a> {
    shifted: &'a ShiftedPencil<'a>,
    order: usize,
    /// Q, column by column.
    vectors: Vec<f64>,
    /// M·Q.
    momenta: Vec<f64>,
    /// H of each block.
    projections: Vec<Mat<f64>>,
    /// R of the last block.
    coupling: Mat<f64>,
}

/// What the basis knows.
struct Ritz {
    /// θ, largest first.
    inverses: Vec<f64>,
    errors: Vec<f64>,
    /// Eigenvectors of the small matrix, those of the largest θ last.
    coordinates: Mat<f64>,
}

/// The lowest pairs, as many as the cut asks for; none when the count says that one was missed.
pub(super) fn lowest(shifted: &ShiftedPencil, count: usize) -> Option<(Candidates, Cut)> {
    let mut basis = Basis::start(shifted);
    loop {
        let exhausted = !basis.extend();
        if basis.known() < 2 * count + BLOCK && !exhausted {
            continue;
        }
        let ritz = basis.ritz()?;
        let cut = shifted.cut(&ritz.inverses, count);
        let found = (0..cut.below).all(|i| ritz.errors[i] <= FOUND * ritz.inverses[i]);
        if found && shifted.count_below(cut.limit) == Some(cut.below) {
            return Some((basis.candidates(ritz, cut.below.min(count)), cut));
        }
        if exhausted || basis.known() >= 6 * count + SPARE {
            return None;
        }
    }
}

impl<'a> Basis<'a> {
    /// A basis of one block, A times numbers without a pattern.
    fn start(shifted: &'a ShiftedPencil<'a>) -> Self {
        let order = shifted.pencil.mass.order();
        let mut rough = Columns::zeros(order, BLOCK);
        for row in 0..order {
            for (column, x) in rough.row_mut(row).iter_mut().enumerate() {
                *x = scattered((row * BLOCK + column) as u64);
            }
        }
        let mut block = shifted.pencil.mass.multiply_columns(&rough);
        shifted.solve(&mut block);
        let (vectors, momenta, coupling) = (Vec::new(), Vec::new(), Mat::zeros(BLOCK, BLOCK));
        let mut basis = Basis { shifted, order, vectors, momenta, projections: Vec::new(), coupling };
        basis.append(by_column(&block));
        basis
    }

    /// Number of vectors whose product with A is known.
    fn known(&self) -> usize {
        self.projections.len() * BLOCK
    }

    /// Multiplies the last block by A and appends what is new; whether anything is.
    fn extend(&mut self) -> bool {
        let last = &self.momenta[self.known() * self.order..];
        let mut block = by_row(last, self.order);
        self.shifted.solve(&mut block);
        let projection = self.append(by_column(&block));
        self.projections.push(projection);
        (0..BLOCK).any(|i| self.coupling[(i, i)] != 0.0)
    }

    /// Makes a block orthonormal to the basis and in itself, twice, and appends it; returns H and keeps R.
    fn append(&mut self, mut block: Vec<f64>) -> Mat<f64> {
        let size = self.vectors.len() / self.order;
        let mut projection = Mat::zeros(size, BLOCK);
        let mut coupling = Mat::<f64>::identity(BLOCK, BLOCK);
        let mut momenta = Vec::new();
        for _ in 0..2 {
            let part = self.project(&mut block);
            matmul(projection.as_mut(), Accum::Add, part.as_ref(), coupling.as_ref(), 1.0, Par::Seq);
            momenta = by_column(&self.shifted.pencil.mass.multiply_columns(&by_row(&block, self.order)));
            let triangle = orthonormalize((&mut block, &mut momenta), self.order, &part);
            coupling = triangle * coupling;
        }
        self.coupling = coupling;
        self.vectors.append(&mut block);
        self.momenta.append(&mut momenta);
        projection
    }

    /// Takes the part along the basis out of a block and returns it.
    fn project(&self, block: &mut [f64]) -> Mat<f64> {
        let size = self.vectors.len() / self.order;
        let mut part = Mat::zeros(size, BLOCK);
        if size > 0 {
            let momenta = MatRef::from_column_major_slice(&self.momenta, self.order, size);
            let vectors = MatRef::from_column_major_slice(&self.vectors, self.order, size);
            let mut block = faer::MatMut::from_column_major_slice_mut(block, self.order, BLOCK);
            matmul(part.as_mut(), Accum::Replace, momenta.transpose(), block.as_ref(), 1.0, Par::Seq);
            matmul(block.as_mut(), Accum::Add, vectors, part.as_ref(), -1.0, Par::Seq);
        }
        part
    }

    /// Eigenpairs of the small matrix; none when its solution does not converge.
    fn ritz(&self) -> Option<Ritz> {
        let size = self.known();
        let mut small = Mat::zeros(size, size);
        for (block, projection) in self.projections.iter().enumerate() {
            small.get_mut(..projection.nrows(), block * BLOCK..(block + 1) * BLOCK).copy_from(projection);
        }
        let eigen = small.self_adjoint_eigen(Side::Upper).ok()?;
        let ascending = eigen.S().column_vector();
        let (mut inverses, mut errors) = (Vec::with_capacity(size), Vec::with_capacity(size));
        for column in (0..size).rev().take_while(|i| ascending[*i] > 0.0) {
            let last = eigen.U().get(size - BLOCK.., column);
            inverses.push(ascending[column]);
            errors.push((&self.coupling * last).norm_l2());
        }
        Some(Ritz { inverses, errors, coordinates: eigen.U().to_owned() })
    }

    /// The first vectors, refined by one more product with A: x = A·Q·s/θ.
    fn candidates(&self, ritz: Ritz, count: usize) -> Candidates {
        let size = self.known();
        let momenta = MatRef::from_column_major_slice(&self.momenta[..size * self.order], self.order, size);
        let lowest = ritz.coordinates.get(.., size - count..);
        let product = momenta * lowest;
        let mut vectors = Columns::zeros(self.order, count);
        for row in 0..self.order {
            for (column, inverse) in ritz.inverses[..count].iter().enumerate() {
                vectors.set(row, column, product[(row, count - 1 - column)] / inverse);
            }
        }
        self.shifted.solve(&mut vectors);
        Candidates { inverses: ritz.inverses, vectors }
    }
}

/// Makes a block and its momenta orthonormal by the modified Gram-Schmidt process; returns the triangle R with
/// old block = new block · R. Vectors that depend on the basis (of which `part` was taken out) or on those
/// before become zero.
fn orthonormalize((w, mw): (&mut [f64], &mut [f64]), order: usize, part: &Mat<f64>) -> Mat<f64> {
    let mut triangle = Mat::zeros(BLOCK, BLOCK);
    for i in 0..BLOCK {
        let (before, here) = w.split_at_mut(i * order);
        let (momenta_before, momenta_here) = mw.split_at_mut(i * order);
        let (x, mx) = (&mut here[..order], &mut momenta_here[..order]);
        let taken = part.col(i).squared_norm_l2();
        let length = (dot(x, mx) + taken).max(0.0).sqrt();
        for j in 0..i {
            let (q, mq) = (&before[j * order..][..order], &momenta_before[j * order..][..order]);
            let along = dot(q, mx);
            triangle[(j, i)] = along;
            x.iter_mut().zip(q).for_each(|(x, q)| *x -= along * q);
            mx.iter_mut().zip(mq).for_each(|(mx, mq)| *mx -= along * mq);
        }
        let left = dot(x, mx).max(0.0).sqrt();
        let new = left > DEPENDENT * length;
        triangle[(i, i)] = if new { left } else { 0.0 };
        let factor = if new { 1.0 / left } else { 0.0 };
        x.iter_mut().chain(mx.iter_mut()).for_each(|x| *x *= factor);
    }
    triangle
}

/// A number in −½..½ that looks like chance, the same on every machine (the finaliser of SplitMix64: G. L. Steele,
/// D. Lea & C. H. Flood, OOPSLA 2014; from memory).
pub(super) fn scattered(index: u64) -> f64 {
    let mut z = index.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    (z >> 11) as f64 / (1_u64 << 53) as f64 - 0.5
}

fn by_column(rows: &Columns) -> Vec<f64> {
    let mut columns = vec![0.0; rows.order() * BLOCK];
    for row in 0..rows.order() {
        rows.row(row).iter().enumerate().for_each(|(column, x)| columns[column * rows.order() + row] = *x);
    }
    columns
}

fn by_row(columns: &[f64], order: usize) -> Columns {
    let mut rows = Columns::zeros(order, BLOCK);
    for (column, values) in columns.chunks_exact(order).enumerate() {
        values.iter().enumerate().for_each(|(row, x)| rows.set(row, column, *x));
    }
    rows
}
