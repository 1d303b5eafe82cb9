//! Solution with a factored band.
//!
//! With A = V·D⁻¹·Vᵀ, forwards to z = V⁻¹·b, then backwards to D⁻¹·Vᵀ·x = z:
//! ```text
//! z[c] = (b[c] - Σ_m V[c, c-m]·z[c-m]) / d[c]
//! x[c] = z[c] - (Σ_m V[c+m, c]·x[c+m]) / d[c],   m = 1..width
//! ```
//! A row holds the numbers of all right-hand sides, and the lanes run across them.

use super::band::stride;
use super::band_factor::BandFactor;
use super::columns::Columns;
use super::lanes::{LANES, Lanes, block, for_lanes, for_width, multiply_add};

impl BandFactor {
    /// Solves for one right-hand side in place.
    pub(super) fn solve(&self, x: &mut [f64]) {
        solve_single(Lanes::widest(), self, x.as_chunks_mut().0);
    }

    /// Solves for all columns in place.
    pub(super) fn solve_columns(&self, columns: &mut Columns) {
        self.solve_columns_on(Lanes::widest(), columns);
    }

    fn solve_columns_on(&self, lanes: Lanes, columns: &mut Columns) {
        match columns.width() {
            LANES => solve_block(lanes, self, columns.values_mut().as_chunks_mut().0),
            PAIR => solve_pair(lanes, self, columns.values_mut().as_chunks_mut().0),
            width => (0..width).step_by(LANES).for_each(|start| self.solve_strip(lanes, columns, start)),
        }
    }

    /// Solves for one block of columns of a wide row, taken out and put back.
    fn solve_strip(&self, lanes: Lanes, columns: &mut Columns, start: usize) {
        let width = columns.width();
        let place = start..start + LANES;
        let rows = columns.values_mut().chunks_exact_mut(width);
        let mut strip: Vec<[f64; LANES]> = rows.map(|row| block(row, start)).collect();
        solve_block(lanes, self, &mut strip);
        for (row, solved) in columns.values_mut().chunks_exact_mut(width).zip(strip) {
            row[place.clone()].copy_from_slice(&solved);
        }
    }
}

/// Two blocks side by side: their sums run beside each other.
const PAIR: usize = 2 * LANES;

for_lanes! {
    /// Solves for one right-hand side.
    fn solve_single(factor: &BandFactor, rows: &mut [[f64; 1]]) -> () = solve_rows[1]
}

for_lanes! {
    /// Solves for one block of right-hand sides.
    fn solve_block(factor: &BandFactor, rows: &mut [[f64; LANES]]) -> () = solve_rows[LANES]
}

for_lanes! {
    /// Solves for two blocks of right-hand sides.
    fn solve_pair(factor: &BandFactor, rows: &mut [[f64; PAIR]]) -> () = solve_rows[PAIR]
}

#[inline(always)]
fn solve_rows<const FUSED: bool, const N: usize>(factor: &BandFactor, rows: &mut [[f64; N]]) {
    for_width!(factor.width, |width| solve_rows_within::<FUSED, N>(width, factor, rows));
}

/// At the ends of the matrix a row reaches less far than the band is wide; between them it reaches a constant.
#[inline(always)]
fn solve_rows_within<const FUSED: bool, const N: usize>(
    width: usize,
    factor: &BandFactor,
    x: &mut [[f64; N]],
) {
    let order = x.len();
    let near = width.min(order);
    for c in 0..near {
        forward::<FUSED, N>((width, c), factor, x, c);
    }
    for c in near..order {
        forward::<FUSED, N>((width, width), factor, x, c);
    }
    for c in (order - near..order).rev() {
        backward::<FUSED, N>((width, order - 1 - c), factor, x, c);
    }
    for c in (0..order - near).rev() {
        backward::<FUSED, N>((width, width), factor, x, c);
    }
}

#[inline(always)]
fn forward<const FUSED: bool, const N: usize>(
    (width, reach): (usize, usize),
    factor: &BandFactor,
    x: &mut [[f64; N]],
    c: usize,
) {
    let window = &factor.columns[c * stride(width)..][..width * stride(width)];
    let known = &x[c - reach..c];
    let mut sum = x[c];
    for m in (1..reach + 1).rev() {
        let entry = window[(width - m) * stride(width) + m];
        for i in 0..N {
            sum[i] = multiply_add::<FUSED>(-entry, known[reach - m][i], sum[i]);
        }
    }
    let reciprocal = factor.reciprocals[c + width];
    x[c] = sum.map(|sum| sum * reciprocal);
}

#[inline(always)]
fn backward<const FUSED: bool, const N: usize>(
    (width, reach): (usize, usize),
    factor: &BandFactor,
    x: &mut [[f64; N]],
    c: usize,
) {
    let column = &factor.columns[(c + width) * stride(width)..][..stride(width)];
    let known = &x[c + 1..c + 1 + reach];
    let mut sum = [0.0; N];
    for m in (1..reach + 1).rev() {
        for i in 0..N {
            sum[i] = multiply_add::<FUSED>(column[m], known[m - 1][i], sum[i]);
        }
    }
    let reciprocal = factor.reciprocals[c + width];
    for i in 0..N {
        x[c][i] = multiply_add::<FUSED>(-reciprocal, sum[i], x[c][i]);
    }
}

#[cfg(test)]
mod tests {
    use super::super::band::Band;
    use super::*;

    /// A chain of unit springs held at both ends: the load i + 1 at place i gives a cubic.
    fn chain(order: usize, width: usize) -> BandFactor {
        let mut matrix = Band::zeros(order, width);
        for i in 0..order {
            matrix.add(i, i, 2.0);
            if i > 0 {
                matrix.add(i, i - 1, -1.0);
            }
        }
        let mut factor = BandFactor::default();
        factor.refactor(&matrix).unwrap();
        factor
    }

    /// Solution of -x[i-1] + 2x[i] - x[i+1] = i with x = 0 at 0 and at n + 1, i counted from 1.
    fn cubic(order: usize, i: usize) -> f64 {
        let (n, i) = (order as f64 + 1.0, i as f64 + 1.0);
        i * (n * n - i * i) / 6.0
    }

    #[test]
    fn every_kind_of_lanes_solves_a_chain_of_springs() {
        for (order, width) in [(1, 1), (3, 5), (30, 5), (30, 11), (40, 17), (50, 23), (9, 9), (20, 3)] {
            let factor = chain(order, width);
            for lanes in Lanes::available() {
                let mut x: Vec<f64> = (1..=order).map(|i| i as f64).collect();
                solve_single(lanes, &factor, x.as_chunks_mut().0);
                for count in [1, 8, 9, 16, 20] {
                    let mut columns = Columns::zeros(order, count);
                    (0..order * count)
                        .for_each(|k| columns.set(k / count, k % count, (k / count + 1) as f64));
                    factor.solve_columns_on(lanes, &mut columns);
                    for i in 0..order {
                        let expected = cubic(order, i);
                        let close = |value: f64| (value - expected).abs() < 1e-11 * expected;
                        assert!(close(x[i]), "{lanes:?} {order} {width} {} {expected}", x[i]);
                        assert!(
                            columns.row(i).iter().all(|value| close(*value)),
                            "{lanes:?} {order} {width}"
                        );
                    }
                }
            }
        }
    }
}
