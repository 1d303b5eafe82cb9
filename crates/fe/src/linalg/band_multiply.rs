//! Product of a band with vectors side by side.

use super::band::{Band, stride};
use super::lanes::{LANES, Lanes, for_lanes, for_width, multiply_add};

impl Band {
    /// `y = A·x` for one block of vectors, stored row by row.
    pub(super) fn multiply_block(&self, x: &[[f64; LANES]], y: &mut [[f64; LANES]]) {
        multiply(Lanes::widest(), self, x, y);
    }
}

for_lanes! {
    /// Product for one block of vectors.
    fn multiply(band: &Band, x: &[[f64; LANES]], y: &mut [[f64; LANES]]) -> () = multiply_by_width
}

#[inline(always)]
fn multiply_by_width<const FUSED: bool>(band: &Band, x: &[[f64; LANES]], y: &mut [[f64; LANES]]) {
    for_width!(band.width, |width| multiply_rows::<FUSED>(width, band, x, y));
}

/// Each row gathers its own column of the lower band and what the columns before have in its row.
#[inline(always)]
fn multiply_rows<const FUSED: bool>(width: usize, band: &Band, x: &[[f64; LANES]], y: &mut [[f64; LANES]]) {
    let stride = stride(width);
    for row in 0..band.order {
        let mut sum = [0.0; LANES];
        let mut add = |entry: f64, x: &[f64; LANES]| {
            for i in 0..LANES {
                sum[i] = multiply_add::<FUSED>(entry, x[i], sum[i]);
            }
        };
        let below = width.min(band.order - 1 - row);
        let column = &band.values[row * stride..][..below + 1];
        column.iter().zip(&x[row..]).for_each(|(entry, x)| add(*entry, x));
        for back in 1..width.min(row) + 1 {
            add(band.values[(row - back) * stride + back], &x[row - back]);
        }
        y[row] = sum;
    }
}
