//! Eigenvalues of a complex matrix, without vectors.
//!
//! Elimination with exchange of rows brings the matrix to Hessenberg's form, from which rotations by the shifted QR method
//! take one eigenvalue after the other. Source: J. H. Wilkinson, The Algebraic Eigenvalue Problem, 1965, chs. 6 and 8; R. S.
//! Martin, J. H. Wilkinson, Numer. Math. 12 (1968) 349-368 and 369-376 (both from memory).

use nalgebra::{Complex, DMatrix};

type Number = Complex<f64>;

/// Rounds within which an eigenvalue is found; two or three do.
const ROUNDS: usize = 60;
/// Rounds after which the shift is not that of the corner once, in case it goes round in circles.
const ANOTHER_SHIFT: usize = 10;

/// The eigenvalues of a square matrix; none where they are not found, as where it is not finite.
pub(super) fn eigenvalues(matrix: &DMatrix<Number>) -> Option<Vec<Number>> {
    let mut own = Hessenberg::of(matrix);
    let mut last = own.order.checked_sub(1)?;
    let mut rounds = 0;
    while last > 0 {
        let first = own.first_of_block(last);
        if first == last {
            (last, rounds) = (last - 1, 0);
            continue;
        }
        rounds += 1;
        if rounds > ROUNDS {
            return None;
        }
        let shift = if rounds % ANOTHER_SHIFT == 0 { own.odd_shift(last) } else { own.shift(last) };
        own.turn(first..=last, shift);
    }
    Some((0..own.order).map(|i| own.at(i, i)).collect())
}

/// A matrix with zeros below its first subdiagonal, row by row.
struct Hessenberg {
    order: usize,
    values: Vec<Number>,
    /// Rotations of a round.
    turns: Vec<(f64, Number)>,
}

impl Hessenberg {
    fn of(matrix: &DMatrix<Number>) -> Self {
        let order = matrix.nrows();
        let values = matrix.transpose().iter().copied().collect();
        let mut own = Hessenberg { order, values, turns: Vec::with_capacity(order) };
        (1..order.saturating_sub(1)).for_each(|column| own.clear_below(column));
        own
    }

    fn at(&self, row: usize, column: usize) -> Number {
        self.values[row * self.order + column]
    }

    fn at_mut(&mut self, row: usize, column: usize) -> &mut Number {
        &mut self.values[row * self.order + column]
    }

    /// Clears the column before one below it: rows lose multiples of row `m`, column `m` gains those of columns.
    fn clear_below(&mut self, m: usize) {
        let n = self.order;
        let larger = |best: usize, row: usize| {
            if size(self.at(row, m - 1)) > size(self.at(best, m - 1)) { row } else { best }
        };
        let pivot = (m + 1..n).fold(m, larger);
        if self.at(pivot, m - 1) == Number::ZERO {
            return;
        }
        if pivot != m {
            (m - 1..n).for_each(|column| self.values.swap(pivot * n + column, m * n + column));
            (0..n).for_each(|row| self.values.swap(row * n + pivot, row * n + m));
        }
        let inverse = self.at(m, m - 1).inv();
        for row in m + 1..n {
            let factor = self.at(row, m - 1) * inverse;
            if factor == Number::ZERO {
                continue;
            }
            *self.at_mut(row, m - 1) = Number::ZERO;
            for column in m..n {
                let above = self.at(m, column);
                *self.at_mut(row, column) -= factor * above;
            }
            for other in 0..n {
                let gained = factor * self.at(other, row);
                *self.at_mut(other, m) += gained;
            }
        }
    }

    /// The first row of the block that ends at a row, none of its subdiagonal entries negligible.
    fn first_of_block(&self, last: usize) -> usize {
        let apart = |row: &usize| {
            let beside = size(self.at(row - 1, row - 1)) + size(self.at(*row, *row));
            size(self.at(*row, row - 1)) <= f64::EPSILON * beside
        };
        (1..=last).rev().find(apart).unwrap_or(0)
    }

    /// The eigenvalue of the last two rows that is nearer to the corner.
    fn shift(&self, last: usize) -> Number {
        let corner = self.at(last, last);
        let half = 0.5 * (self.at(last - 1, last - 1) - corner);
        let product = self.at(last - 1, last) * self.at(last, last - 1);
        let root = (half * half + product).sqrt();
        let root = if half.re * root.re + half.im * root.im < 0.0 { -root } else { root };
        let sum = half + root;
        if sum == Number::ZERO { corner } else { corner - product / sum }
    }

    fn odd_shift(&self, last: usize) -> Number {
        let before = if last > 1 { size(self.at(last - 1, last - 2)) } else { 0.0 };
        self.at(last, last) + Complex::from(size(self.at(last, last - 1)) + before)
    }

    /// One round on a block: `H − s = QR` by rotations, then `RQ + s`.
    fn turn(&mut self, block: std::ops::RangeInclusive<usize>, shift: Number) {
        let (first, last) = (*block.start(), *block.end());
        block.for_each(|i| *self.at_mut(i, i) -= shift);
        self.turns.clear();
        for row in first..last {
            let turn = rotation(self.at(row, row), self.at(row + 1, row));
            self.turns.push(turn);
            let (before, after) = self.values.split_at_mut((row + 1) * self.order);
            let above = &mut before[row * self.order..][row..=last];
            for (above, below) in above.iter_mut().zip(&mut after[row..=last]) {
                [*above, *below] =
                    [*above * turn.0 + turn.1 * *below, *below * turn.0 - turn.1.conj() * *above];
            }
        }
        for (number, column) in (first..last).enumerate() {
            let turn = self.turns[number];
            let rows = self.values.chunks_exact_mut(self.order).take(column + 2).skip(first);
            for row in rows {
                let [left, right] = [row[column], row[column + 1]];
                row[column] = left * turn.0 + turn.1.conj() * right;
                row[column + 1] = right * turn.0 - turn.1 * left;
            }
        }
        (first..=last).for_each(|i| *self.at_mut(i, i) += shift);
    }
}

/// c and s with `c a + s b` as large as both, and `c b − s̄ a` zero.
fn rotation(a: Number, b: Number) -> (f64, Number) {
    let (own, both) = (a.norm_sqr(), a.norm_sqr() + b.norm_sqr());
    if own == 0.0 {
        return (0.0, Complex::from(1.0));
    }
    let (own, both) = (own.sqrt(), both.sqrt());
    (own / both, a * b.conj() / (own * both))
}

/// |re| + |im|.
fn size(value: Number) -> f64 {
    value.re.abs() + value.im.abs()
}

#[cfg(test)]
mod tests {
    use nalgebra::Schur;

    use super::*;

    fn sorted(mut values: Vec<Number>) -> Vec<Number> {
        values.sort_by(|a, b| a.re.total_cmp(&b.re).then(a.im.total_cmp(&b.im)));
        values
    }

    /// Schur's form of a general library is the check.
    #[test]
    fn eigenvalues_are_those_of_schurs_form() {
        for order in 1..=21 {
            let entry = |i: usize, j: usize| {
                let share = |k: usize| ((i * 37 + j * 101 + k * 53 + i * j * 7) % 97) as f64 / 48.5 - 1.0;
                Complex::new(share(1), share(2)) * if i == j { 3.0 } else { 0.4 }
            };
            let matrix = DMatrix::from_fn(order, order, entry);
            let found = sorted(eigenvalues(&matrix).unwrap());
            let schur = Schur::try_new(matrix, f64::EPSILON, 10_000).unwrap().eigenvalues().unwrap();
            for (found, known) in found.iter().zip(sorted(schur.iter().copied().collect())) {
                assert!((found - known).norm() < 1e-12 * order as f64, "{order}: {found} {known}");
            }
        }
    }

    /// By hand: a matrix that turns places round has the roots of one, equal shares of a sum have that sum and zeros, and a
    /// triangle has its diagonal.
    #[test]
    fn eigenvalues_of_plain_matrices() {
        let of = |order: usize, entry: &dyn Fn(usize, usize) -> f64| {
            let matrix = DMatrix::from_fn(order, order, |i, j| Complex::from(entry(i, j)));
            eigenvalues(&matrix).unwrap()
        };
        let round = of(5, &|i, j| f64::from(u8::from((i + 1) % 5 == j)));
        assert!(round.iter().all(|value| (value.powu(5) - 1.0).norm() < 1e-12), "{round:?}");
        let equal = sorted(of(4, &|_, _| 0.25));
        assert!((equal[3] - 1.0).norm() < 1e-14 && equal[..3].iter().all(|value| value.norm() < 1e-14));
        let triangle = sorted(of(3, &|i, j| if j >= i { (1 + i + j) as f64 } else { 0.0 }));
        assert!(triangle.iter().zip([1.0, 3.0, 5.0]).all(|(found, known)| (found - known).norm() < 1e-14));
        assert_eq!(of(3, &|_, _| 0.0), [Number::ZERO; 3]);
        assert_eq!(
            eigenvalues(&DMatrix::from_element(2, 2, Complex::from(f64::NAN))).map(|own| own.len()),
            None
        );
    }
}
