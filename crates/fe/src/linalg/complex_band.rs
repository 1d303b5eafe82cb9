//! Complex symmetric systems `K − ω²M + iωC`, for answers at one frequency.

use nalgebra::Complex;

use super::matrix::SymmetricMatrix;
use super::narrow_order::NarrowOrder;

type Number = Complex<f64>;

const ZERO: Number = Complex { re: 0.0, im: 0.0 };

/// A square complex matrix with a band on both sides of the diagonal and room for exchanged rows.
///
/// Row r holds the columns from `r − width` to `r + 2·width`.
#[derive(Debug, Clone)]
pub struct ComplexBand {
    order: usize,
    width: usize,
    values: Vec<Number>,
    /// For each row the column after its last entry.
    ends: Vec<usize>,
}

impl ComplexBand {
    /// The sum of real symmetric matrices of one order, each times a complex number, its rows and columns by the numbers of
    /// `numbers`.
    ///
    /// # Panics
    /// When a matrix has another order than the first.
    pub fn sum(parts: &[(Number, &SymmetricMatrix)], numbers: &NarrowOrder) -> Self {
        let order = parts.first().map_or(0, |(_, matrix)| matrix.order());
        let width = parts.iter().map(|(_, matrix)| reach(matrix, numbers)).max().unwrap_or(0);
        let ends = (1..=order).collect();
        let mut sum = ComplexBand { order, width, values: vec![ZERO; order * (3 * width + 1)], ends };
        for (factor, matrix) in parts {
            assert_eq!(matrix.order(), order, "order of a part");
            matrix.for_each(|row, column, value| {
                if value == 0.0 {
                    return; // it may lie outside of the band
                }
                let (row, column) = (numbers.number(row), numbers.number(column));
                sum.add(row, column, factor * value);
                if row != column {
                    sum.add(column, row, factor * value);
                }
            });
        }
        sum
    }

    /// Solves for several right-hand sides in place, by Gauss elimination with exchange of rows; false when
    /// the matrix is singular. The matrix is used up.
    ///
    /// # Panics
    /// When the length of a right-hand side is not the order.
    pub fn solve(mut self, sides: &mut [Vec<Number>]) -> bool {
        assert!(sides.iter().all(|side| side.len() == self.order), "length of a right-hand side");
        for column in 0..self.order {
            let last = (column + self.width).min(self.order - 1);
            let size = |row: usize| self.at(row, column).norm_sqr();
            let pivot =
                (column..=last).fold(column, |best, row| if size(row) > size(best) { row } else { best });
            let size = size(pivot);
            if size == 0.0 || size.is_nan() {
                return false;
            }
            self.exchange(column, pivot);
            sides.iter_mut().for_each(|side| side.swap(column, pivot));
            self.eliminate(column, last, sides);
        }
        sides.iter_mut().for_each(|side| self.substitute(side));
        sides.iter().flatten().all(|x| x.re.is_finite() && x.im.is_finite())
    }

    fn place(&self, row: usize, column: usize) -> usize {
        row * (3 * self.width + 1) + column + self.width - row
    }

    fn at(&self, row: usize, column: usize) -> Number {
        self.values[self.place(row, column)]
    }

    fn add(&mut self, row: usize, column: usize, value: Number) {
        let place = self.place(row, column);
        self.values[place] += value;
        self.ends[row] = self.ends[row].max(column + 1);
    }

    fn exchange(&mut self, a: usize, b: usize) {
        if a != b {
            for column in a..self.ends[a].max(self.ends[b]) {
                let places = (self.place(a, column), self.place(b, column));
                self.values.swap(places.0, places.1);
            }
            self.ends.swap(a, b);
        }
    }

    fn eliminate(&mut self, column: usize, last: usize, sides: &mut [Vec<Number>]) {
        let (first, count) = (self.place(column, column), self.ends[column] - column);
        for row in column + 1..=last {
            let start = self.place(row, column);
            let (above, below) = self.values.split_at_mut(start);
            let (top, own) = (&above[first..][..count], &mut below[..count]);
            if own[0] == ZERO {
                continue;
            }
            self.ends[row] = self.ends[row].max(self.ends[column]);
            let factor = own[0] / top[0];
            own.iter_mut().zip(top).for_each(|(own, top)| *own -= factor * top);
            for side in &mut *sides {
                let known = side[column];
                side[row] -= factor * known;
            }
        }
    }

    fn substitute(&self, x: &mut [Number]) {
        for row in (0..self.order).rev() {
            let known: Number =
                (row + 1..self.ends[row]).map(|column| self.at(row, column) * x[column]).sum();
            x[row] = (x[row] - known) / self.at(row, row);
        }
    }
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

    #[test]
    fn the_product_with_the_solution_is_the_right_hand_side() {
        for (order, width) in [(1, 0), (5, 4), (40, 3), (30, 7)] {
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
            let known: Vec<Number> = (0..order).map(|i| Complex::new(i as f64 - 3.0, 0.5)).collect();
            let mut sides = vec![known.clone()];
            assert!(
                ComplexBand::sum(&[(1.0.into(), &a), (Complex::i() * 0.3, &b)], &NarrowOrder::natural(order))
                    .solve(&mut sides)
            );
            let part = |matrix: &SymmetricMatrix, of: fn(&Number) -> f64| {
                let mut y = vec![0.0; order];
                matrix.multiply(&sides[0].iter().map(of).collect::<Vec<_>>(), &mut y);
                y
            };
            let (ar, ai) = (part(&a, |x| x.re), part(&a, |x| x.im));
            let (br, bi) = (part(&b, |x| x.re), part(&b, |x| x.im));
            for i in 0..order {
                let product = Complex::new(ar[i] - 0.3 * bi[i], ai[i] + 0.3 * br[i]);
                assert!((product - known[i]).norm() < 1e-9 * order as f64, "{order} {width} {i}");
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
        let order = NarrowOrder::of(&[&stiffness, &damping]);
        assert_ne!(order, NarrowOrder::natural(2 * chain));
        let parts = [(1.0.into(), &stiffness), (Complex::i() * 0.7, &damping)];
        let force = |row: usize| Complex::new(row as f64 - 7.0, 0.5);
        let natural = NarrowOrder::natural(2 * chain);
        let [one, other] = [&natural, &order].map(|order| {
            let mut sides = vec![vec![ZERO; 2 * chain]];
            (0..2 * chain).for_each(|row| sides[0][order.number(row)] = force(row));
            assert!(ComplexBand::sum(&parts, order).solve(&mut sides));
            order.restored(&sides[0])
        });
        assert!(one.iter().zip(&other).all(|(a, b)| (a - b).norm() < 1e-12 * (1.0 + a.norm())));
    }

    #[test]
    fn a_singular_matrix_is_said_to_be_so() {
        let zero = SymmetricMatrix::banded(3, 1);
        assert!(
            !ComplexBand::sum(&[(1.0.into(), &zero)], &NarrowOrder::natural(3)).solve(&mut [vec![ZERO; 3]])
        );
    }
}
