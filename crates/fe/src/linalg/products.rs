//! Products of a rectangular matrix with single vectors, from either side.
//!
//! [`Columns`] holds a matrix A row by row, each row padded to whole blocks of lanes, so that both products read unbroken runs of
//! numbers.

use super::columns::Columns;
use super::lanes::{LANES, Lanes, for_lanes, multiply_add};

impl Columns {
    /// Adds `Aᵀ·f`, every row times its factor; the sums stay in registers while the rows pass.
    ///
    /// # Panics
    /// When there are not as many factors as rows and sums as columns.
    pub fn add_rows(&self, factors: &[f64], sums: &mut [f64]) {
        assert_eq!((factors.len(), sums.len()), (self.order(), self.count()), "lengths of the vectors");
        add_rows(Lanes::widest(), self, factors, sums);
    }

    /// The products `A·x` of every row with a vector.
    ///
    /// # Panics
    /// When there are not as many products as rows and numbers in the vector as columns.
    pub fn multiply(&self, x: &[f64], products: &mut [f64]) {
        assert_eq!((x.len(), products.len()), (self.count(), self.order()), "lengths of the vectors");
        multiply(Lanes::widest(), self, x, products);
    }
}

for_lanes! {
    /// Sum of all rows, each times its factor.
    fn add_rows(columns: &Columns, factors: &[f64], sums: &mut [f64]) -> () = add_every_row
}

for_lanes! {
    /// Products of all rows with one vector.
    fn multiply(columns: &Columns, x: &[f64], products: &mut [f64]) -> () = multiply_every_row
}

/// In strips of as many blocks as registers hold; of a narrow strip several rows run side by side, so that one sum need not wait
/// for the other.
#[inline(always)]
fn add_every_row<const FUSED: bool>(columns: &Columns, factors: &[f64], sums: &mut [f64]) {
    let mut start = 0;
    while start < columns.width() {
        start += match (columns.width() - start) / LANES {
            1 => add_strip::<FUSED, LANES, 4>(columns, factors, sums, start),
            2 => add_strip::<FUSED, { 2 * LANES }, 2>(columns, factors, sums, start),
            3 => add_strip::<FUSED, { 3 * LANES }, 1>(columns, factors, sums, start),
            _ => add_strip::<FUSED, { 4 * LANES }, 1>(columns, factors, sums, start),
        };
    }
}

/// Adds N columns from one on, R rows side by side; returns N.
#[inline(always)]
fn add_strip<const FUSED: bool, const N: usize, const R: usize>(
    columns: &Columns,
    factors: &[f64],
    sums: &mut [f64],
    start: usize,
) -> usize {
    let (mut totals, mut rows) = ([[0.0; N]; R], columns.values().chunks_exact(columns.width()));
    let (groups, rest) = factors.as_chunks::<R>();
    for group in groups {
        for (factor, total) in group.iter().zip(&mut totals) {
            add_row::<FUSED, N>(*factor, rows.next(), start, total);
        }
    }
    rest.iter().for_each(|factor| add_row::<FUSED, N>(*factor, rows.next(), start, &mut totals[0]));
    let total: [f64; N] = std::array::from_fn(|i| totals.iter().map(|total| total[i]).sum());
    let end = sums.len().min(start + N);
    sums[start..end].iter_mut().zip(total).for_each(|(sum, total)| *sum += total);
    N
}

#[inline(always)]
fn add_row<const FUSED: bool, const N: usize>(
    factor: f64,
    row: Option<&[f64]>,
    start: usize,
    total: &mut [f64; N],
) {
    let Some(values) = row.and_then(|row| row[start..].first_chunk::<N>()) else { return };
    for i in 0..N {
        total[i] = multiply_add::<FUSED>(factor, values[i], total[i]);
    }
}

#[inline(always)]
fn multiply_every_row<const FUSED: bool>(columns: &Columns, x: &[f64], products: &mut [f64]) {
    for (product, row) in products.iter_mut().zip(columns.values().chunks_exact(columns.width().max(1))) {
        *product = dot::<FUSED>(&row[..x.len()], x);
    }
}

/// Σ aᵢbᵢ in as many partial sums as there are lanes.
#[inline(always)]
pub(super) fn dot<const FUSED: bool>(a: &[f64], b: &[f64]) -> f64 {
    let (a, b) = (a.as_chunks::<LANES>(), b.as_chunks::<LANES>());
    let mut sums = [0.0; LANES];
    for (a, b) in a.0.iter().zip(b.0) {
        for i in 0..LANES {
            sums[i] = multiply_add::<FUSED>(a[i], b[i], sums[i]);
        }
    }
    for (i, (a, b)) in a.1.iter().zip(b.1).enumerate() {
        sums[i] = multiply_add::<FUSED>(*a, *b, sums[i]);
    }
    let [a, b, c, d, e, f, g, h] = sums;
    ((a + e) + (c + g)) + ((b + f) + (d + h))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whole numbers, so that sums in any order are exact.
    fn matrix(rows: usize, columns: usize) -> Columns {
        let mut matrix = Columns::zeros(rows, columns);
        for row in 0..rows {
            (0..columns)
                .for_each(|column| matrix.set(row, column, ((3 * row + 7 * column) % 11) as f64 - 4.0));
        }
        matrix
    }

    #[test]
    fn products_from_either_side_are_those_entry_by_entry() {
        for (rows, columns) in [(1, 1), (5, 8), (8, 5), (13, 17), (6, 24), (9, 40), (128, 13), (13, 128)] {
            let a = matrix(rows, columns);
            let [f, x] =
                [rows, columns].map(|count| (0..count).map(|i| (i % 5) as f64 - 1.0).collect::<Vec<_>>());
            let (mut sums, mut products) = (vec![2.0; columns], vec![f64::NAN; rows]);
            a.add_rows(&f, &mut sums);
            a.multiply(&x, &mut products);
            for (j, sum) in sums.iter().enumerate() {
                assert_eq!(
                    *sum,
                    2.0 + (0..rows).map(|i| f[i] * a.get(i, j)).sum::<f64>(),
                    "{rows} {columns} {j}"
                );
            }
            for (i, product) in products.iter().enumerate() {
                let expected: f64 = (0..columns).map(|j| a.get(i, j) * x[j]).sum();
                assert_eq!(*product, expected, "{rows} {columns} {i}");
            }
        }
    }
}
