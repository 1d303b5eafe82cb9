//! Complex symmetric systems `K − ω²M + iωC`, for answers at many frequencies.

use nalgebra::Complex;

use super::complex_columns::{ComplexColumns, Planes, Span};
use super::lanes::{LANES, Lanes, for_lanes};
use super::matrix::SymmetricMatrix;
use super::narrow_order::NarrowOrder;

type Number = Complex<f64>;

/// Real symmetric matrices whose sum, each times a complex number, is to be solved with again and again.
///
/// The sum has a band on both sides of the diagonal and room for exchanged rows: row r holds the columns from `r − width`
/// to `r + 2·width`, and zeros beyond, so that lanes may run past its end.
#[derive(Debug, Clone)]
pub struct ComplexBand {
    order: usize,
    width: usize,
    numbers: NarrowOrder,
    /// Places and values of the entries of each matrix, both triangles, without zeros.
    parts: Vec<Vec<(usize, f64)>>,
    values: Planes,
    /// For each row the column after its last entry, in the sum and as rows are exchanged.
    own_ends: Vec<usize>,
    ends: Vec<usize>,
}

impl ComplexBand {
    /// Matrices of one order, their rows and columns by the numbers of `numbers`.
    ///
    /// # Panics
    /// When a matrix has another order than the first.
    pub fn new(matrices: &[&SymmetricMatrix], numbers: NarrowOrder) -> Self {
        let order = matrices.first().map_or(0, |matrix| matrix.order());
        let width = matrices.iter().map(|matrix| reach(matrix, &numbers)).max().unwrap_or(0);
        let values = Planes::zeros(order * row_length(width));
        let mut band = ComplexBand {
            order,
            width,
            numbers,
            parts: Vec::new(),
            values,
            own_ends: Vec::new(),
            ends: Vec::new(),
        };
        band.own_ends = (1..=order).collect();
        for matrix in matrices {
            assert_eq!(matrix.order(), order, "order of a matrix");
            let entries = band.entries(matrix);
            band.parts.push(entries);
        }
        band.ends = band.own_ends.clone();
        band
    }

    /// The matrices in a narrow order.
    ///
    /// # Panics
    /// As [`ComplexBand::new`].
    pub fn narrow(matrices: &[&SymmetricMatrix]) -> Self {
        ComplexBand::new(matrices, NarrowOrder::of(matrices))
    }

    /// Row and column of a freedom.
    pub fn number(&self, freedom: usize) -> usize {
        self.numbers.number(freedom)
    }

    /// Solves with `Σ factor·matrix` for right-hand sides in place, by Gauss elimination with exchange of rows; false when the
    /// sum is singular.
    ///
    /// # Panics
    /// When there are not as many factors as matrices, or the length of the right-hand sides is not the order.
    pub fn solve(&mut self, factors: &[Number], sides: &mut ComplexColumns) -> bool {
        assert_eq!(
            (factors.len(), sides.order()),
            (self.parts.len(), self.order),
            "numbers of factors and rows"
        );
        self.values.fill(0.0);
        for (entries, factor) in self.parts.iter().zip(factors) {
            entries.iter().for_each(|(place, value)| self.values.add(*place, factor * value));
        }
        self.ends.copy_from_slice(&self.own_ends);
        eliminate(Lanes::widest(), self, sides) && sides.is_finite()
    }

    /// Entries of a matrix by their places, and how far they make rows reach.
    fn entries(&mut self, matrix: &SymmetricMatrix) -> Vec<(usize, f64)> {
        let mut entries = Vec::new();
        matrix.for_each(|row, column, value| {
            if value == 0.0 {
                return; // it may lie outside of the band
            }
            let (row, column) = (self.numbers.number(row), self.numbers.number(column));
            for (row, column) in [(row, column), (column, row)] {
                self.own_ends[row] = self.own_ends[row].max(column + 1);
                entries.push((self.place(row, column), value));
                if row == column {
                    break;
                }
            }
        });
        entries
    }

    fn place(&self, row: usize, column: usize) -> usize {
        row * row_length(self.width) + column + self.width - row
    }

    /// Entries of a row from a column on, so many and as many more as fill up lanes.
    fn span(&self, row: usize, column: usize, count: usize) -> Span {
        Span { first: self.place(row, column), count: count.next_multiple_of(LANES) }
    }

    fn exchange(&mut self, a: usize, b: usize) {
        for column in a..self.ends[a].max(self.ends[b]) {
            self.values.swap(self.place(a, column), self.place(b, column));
        }
        self.ends.swap(a, b);
    }

    /// The row from a column on that has the largest entry there; none where all are zero, or one is no number.
    fn pivot(&self, column: usize, last: usize) -> Option<usize> {
        let size = |row: usize| self.values.at(self.place(row, column)).norm_sqr();
        let pivot = (column..=last).fold(column, |best, row| if size(row) > size(best) { row } else { best });
        (size(pivot) > 0.0).then_some(pivot)
    }
}

for_lanes! {
    /// Eliminates and substitutes; false where there is no pivot.
    fn eliminate(band: &mut ComplexBand, sides: &mut ComplexColumns) -> bool = eliminate_rows
}

#[inline(always)]
fn eliminate_rows<const FUSED: bool>(band: &mut ComplexBand, sides: &mut ComplexColumns) -> bool {
    for column in 0..band.order {
        let last = (column + band.width).min(band.order - 1);
        let Some(pivot) = band.pivot(column, last) else { return false };
        if pivot != column {
            band.exchange(column, pivot);
            sides.exchange(column, pivot);
        }
        let inverse = band.values.at(band.place(column, column)).inv();
        let count = band.ends[column] - column;
        let top = band.span(column, column, count);
        for row in column + 1..=last {
            let own = band.span(row, column, count);
            let factor = band.values.at(own.first) * inverse;
            if factor != Number::ZERO {
                band.ends[row] = band.ends[row].max(band.ends[column]);
                band.values.subtract::<FUSED>(factor, top, own);
                sides.subtract::<FUSED>(factor, column, row);
            }
        }
    }
    substitute::<FUSED>(band, sides);
    true
}

#[inline(always)]
fn substitute<const FUSED: bool>(band: &ComplexBand, sides: &mut ComplexColumns) {
    for row in (0..band.order).rev() {
        for column in row + 1..band.ends[row] {
            sides.subtract::<FUSED>(band.values.at(band.place(row, column)), column, row);
        }
        sides.scale(band.values.at(band.place(row, row)).inv(), row);
    }
}

/// Entries of a row of the band, with what lanes may run past its end.
fn row_length(width: usize) -> usize {
    3 * width + LANES
}

/// Distance from the diagonal of the farthest entry.
fn reach(matrix: &SymmetricMatrix, numbers: &NarrowOrder) -> usize {
    let mut reach = 0;
    matrix.for_each(|row, column, value| {
        if value != 0.0 {
            reach = reach.max(numbers.number(row).abs_diff(numbers.number(column)));
        }
    });
    reach
}

#[cfg(test)]
mod tests {
    use super::*;

    fn solved(
        matrices: &[&SymmetricMatrix],
        (factors, numbers): (&[Number], NarrowOrder),
        sides: &[Vec<Number>],
    ) -> Vec<Vec<Number>> {
        let order = matrices[0].order();
        let mut band = ComplexBand::new(matrices, numbers);
        let mut columns = ComplexColumns::zeros(order, sides.len());
        for (column, side) in sides.iter().enumerate() {
            side.iter().enumerate().for_each(|(row, value)| columns.add(band.number(row), column, *value));
        }
        // Once more with the same band: nothing of a solution is left in it.
        let again = columns.clone();
        assert!(band.solve(factors, &mut columns));
        let mut second = again;
        assert!(band.solve(factors, &mut second) && second == columns);
        let column = |column: usize| (0..order).map(|row| columns.get(band.number(row), column)).collect();
        (0..sides.len()).map(column).collect()
    }

    #[test]
    fn the_product_with_the_solution_is_the_right_hand_side() {
        for (order, width, count) in [(1, 0, 1), (5, 4, 3), (40, 3, 9), (30, 7, 1)] {
            let [mut a, mut b] = std::array::from_fn(|_| SymmetricMatrix::banded(order, width));
            for column in 0..order {
                for row in column..(column + width + 1).min(order) {
                    // Zeros on the diagonal, so that rows must be exchanged.
                    if row != column || order == 1 {
                        a.add(row, column, ((3 * row + 5 * column) % 7) as f64 - 2.5);
                    }
                    b.add(row, column, ((2 * row + column) % 5) as f64 - 1.7);
                }
            }
            let side = |s: usize| (0..order).map(|i| Complex::new(i as f64 - 3.0, 0.5 + s as f64)).collect();
            let known: Vec<Vec<Number>> = (0..count).map(side).collect();
            let factors = [1.0.into(), Complex::i() * 0.3];
            let found = solved(&[&a, &b], (&factors, NarrowOrder::natural(order)), &known);
            let part = |matrix: &SymmetricMatrix, x: &[Number], of: fn(&Number) -> f64| {
                let mut y = vec![0.0; order];
                matrix.multiply(&x.iter().map(of).collect::<Vec<_>>(), &mut y);
                y
            };
            for (known, found) in known.iter().zip(&found) {
                let (ar, ai) = (part(&a, found, |x| x.re), part(&a, found, |x| x.im));
                let (br, bi) = (part(&b, found, |x| x.re), part(&b, found, |x| x.im));
                for i in 0..order {
                    let product = Complex::new(ar[i] - 0.3 * bi[i], ai[i] + 0.3 * br[i]);
                    assert!((product - known[i]).norm() < 1e-9 * order as f64, "{order} {width} {i}");
                }
            }
        }
    }

    /// The solution by rows as they are numbered is the check of the one in a narrow order.
    #[test]
    fn a_narrow_order_has_the_solution_of_the_natural_one() {
        let chain = 25;
        let (mut stiffness, mut damping) =
            (SymmetricMatrix::sparse(2 * chain), SymmetricMatrix::sparse(2 * chain));
        for i in 0..chain {
            stiffness.add(i, i, 5.0 + i as f64);
            stiffness.add(chain + i, chain + i, 4.0);
            stiffness.add(i, chain + i, -1.5);
            damping.add(i, i, 0.3);
            if i > 0 {
                stiffness.add(i - 1, i, -1.0);
                damping.add(chain + i - 1, chain + i, -0.2);
            }
        }
        let matrices = [&stiffness, &damping];
        let order = NarrowOrder::of(&matrices);
        let natural = NarrowOrder::natural(2 * chain);
        assert_ne!(order, natural);
        let factors = [1.0.into(), Complex::i() * 0.7];
        let force: Vec<Number> = (0..2 * chain).map(|row| Complex::new(row as f64 - 7.0, 0.5)).collect();
        let [one, other] =
            [natural, order].map(|order| solved(&matrices, (&factors, order), std::slice::from_ref(&force)));
        assert!(one[0].iter().zip(&other[0]).all(|(a, b)| (a - b).norm() < 1e-12 * (1.0 + a.norm())));
    }

    #[test]
    fn a_singular_matrix_is_said_to_be_so() {
        let zero = SymmetricMatrix::banded(3, 1);
        let mut band = ComplexBand::narrow(&[&zero]);
        assert!(!band.solve(&[1.0.into()], &mut ComplexColumns::zeros(3, 1)));
    }
}
