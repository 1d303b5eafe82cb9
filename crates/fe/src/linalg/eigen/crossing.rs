//! Lowest positive λ of (K + λ·G)·x = 0 with K positive definite and G of any sign.
//!
//! With the inner product xᵀKy the operator A = −K⁻¹G is symmetric and has the eigenvalues θ = 1/λ; the largest
//! positive ones are sought. A block Krylov basis Q with QᵀKQ = 1 turns it into the small matrix −QᵀGQ (K.-J. Bathe,
//! Finite Element Procedures, 2nd ed. 2014, sec. 6.8.2 and 11.6, from memory).

use faer::{Mat, Side};

use super::dot;
use crate::linalg::columns::Columns;
use crate::linalg::factor::Factor;
use crate::linalg::matrix::SymmetricMatrix;

/// Vectors in a block.
const BLOCK: usize = 8;

/// Change of the last θ from one step to the next, as a part of it, at which it counts as found.
const FOUND: f64 = 1e-9;

/// A vector that keeps less than this part of its length when it is made orthogonal adds nothing new.
const DEPENDENT: f64 = 1e-8;

/// Most vectors beyond six times the wanted ones.
const SPARE: usize = 160;

/// A factored stiffness K with a geometric stiffness G.
#[derive(Debug)]
pub struct Crossing<'a> {
    /// K.
    pub stiffness: &'a SymmetricMatrix,
    /// K, factored.
    pub factor: &'a Factor,
    /// G, stored as K.
    pub geometric: &'a SymmetricMatrix,
}

/// Lowest positive eigenvalues with their vectors.
#[derive(Debug, Clone)]
pub struct CrossingPairs {
    /// λ > 0, ascending.
    pub values: Vec<f64>,
    /// x with xᵀKx = 1, one column for each λ.
    pub vectors: Columns,
}

/// Vectors with their products, each a column.
#[derive(Default)]
struct Basis {
    vectors: Vec<Vec<f64>>,
    /// K·q.
    forces: Vec<Vec<f64>>,
    /// −G·q.
    destabilizing: Vec<Vec<f64>>,
}

impl Crossing<'_> {
    /// The lowest `count` positive λ, fewer when there are fewer.
    ///
    /// The basis grows until the wanted values no longer move, or to all freedoms, or to its greatest size.
    pub fn lowest(&self, count: usize) -> CrossingPairs {
        let (most, mut basis) = (6 * count + SPARE, Basis::default());
        let mut block = self.start();
        let mut before = Vec::new();
        loop {
            let first = basis.vectors.len();
            self.append(&mut basis, &block);
            let found = self.ritz(&basis, count);
            let steady = found.0.len() == count && before.len() == count && settled(&before, &found.0);
            if steady || basis.vectors.len() == first || basis.vectors.len() >= most {
                return self.pairs(&basis, found);
            }
            before = found.0;
            block = self.applied(&basis.destabilizing[first..]);
        }
    }

    /// Number of λ between zero and a limit: that of the negative pivots of K + limit·G (J. J. Sylvester 1852).
    pub fn count_below(&self, limit: f64) -> Option<usize> {
        self.stiffness.plus(limit, self.geometric).negative_pivots()
    }

    /// K⁻¹ times numbers without a pattern.
    fn start(&self) -> Vec<Vec<f64>> {
        let order = self.stiffness.order();
        let rough = |column: usize| -> Vec<f64> {
            let each = (0..order).map(|row| super::lanczos::scattered((row * BLOCK + column) as u64));
            each.enumerate().map(|(row, x)| x * self.stiffness.diagonal(row).abs().sqrt()).collect()
        };
        self.applied(&(0..BLOCK.min(order)).map(rough).collect::<Vec<_>>())
    }

    /// K⁻¹ of each vector.
    fn applied(&self, vectors: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let mut columns = side_by_side(vectors, self.stiffness.order());
        self.factor.solve_columns(&mut columns);
        apart(&columns)
    }

    /// Makes vectors orthonormal to the basis and to each other, each twice, and appends what is new.
    fn append(&self, basis: &mut Basis, block: &[Vec<f64>]) {
        let order = self.stiffness.order();
        for vector in block {
            let (mut x, mut force) = (vector.clone(), vec![0.0; order]);
            self.stiffness.multiply(&x, &mut force);
            let length = dot(&x, &force).max(0.0).sqrt();
            for _ in 0..2 {
                for (q, f) in basis.vectors.iter().zip(&basis.forces) {
                    let along = dot(f, &x);
                    x.iter_mut().zip(q).for_each(|(x, q)| *x -= along * q);
                }
            }
            self.stiffness.multiply(&x, &mut force);
            let left = dot(&x, &force).max(0.0).sqrt();
            if left > DEPENDENT * length {
                x.iter_mut().chain(force.iter_mut()).for_each(|x| *x /= left);
                basis.vectors.push(x);
                basis.forces.push(force);
            }
        }
        let new = &basis.vectors[basis.destabilizing.len()..];
        let mut products = apart(&self.geometric.multiply_columns(&side_by_side(new, order)));
        products.iter_mut().flatten().for_each(|x| *x = -*x);
        basis.destabilizing.append(&mut products);
    }

    /// The largest θ of the small matrix as λ, with their coordinates.
    fn ritz(&self, basis: &Basis, count: usize) -> (Vec<f64>, Mat<f64>) {
        let size = basis.vectors.len();
        let small = Mat::from_fn(size, size, |i, j| dot(&basis.vectors[i], &basis.destabilizing[j]));
        let Ok(eigen) = small.self_adjoint_eigen(Side::Lower) else {
            return (Vec::new(), Mat::zeros(size, 0));
        };
        let theta = eigen.S().column_vector();
        let positive: Vec<usize> = (0..size).rev().filter(|i| theta[*i] > 0.0).take(count).collect();
        let coordinates = Mat::from_fn(size, positive.len(), |i, j| eigen.U()[(i, positive[j])]);
        (positive.iter().map(|i| 1.0 / theta[*i]).collect(), coordinates)
    }

    fn pairs(&self, basis: &Basis, (values, coordinates): (Vec<f64>, Mat<f64>)) -> CrossingPairs {
        let mut vectors = Columns::zeros(self.stiffness.order(), values.len());
        for (i, q) in basis.vectors.iter().enumerate() {
            let share: Vec<f64> = (0..values.len()).map(|j| coordinates[(i, j)]).collect();
            q.iter().enumerate().for_each(|(row, x)| vectors.add_row(row, *x, &share));
        }
        CrossingPairs { values, vectors }
    }
}

fn settled(before: &[f64], now: &[f64]) -> bool {
    before.iter().zip(now).all(|(before, now)| (before - now).abs() <= FOUND * now.abs())
}

fn side_by_side(vectors: &[Vec<f64>], order: usize) -> Columns {
    let mut columns = Columns::zeros(order, vectors.len());
    for (column, vector) in vectors.iter().enumerate() {
        vector.iter().enumerate().for_each(|(row, x)| columns.set(row, column, *x));
    }
    columns
}

fn apart(columns: &Columns) -> Vec<Vec<f64>> {
    (0..columns.count()).map(|column| columns.column(column).collect()).collect()
}
