//! Lower band of a symmetric matrix.

use super::lanes::LANES;

/// Lower band, column by column: the entry of row c + m in column c is `values[c·stride + m]`, m ≤ width.
///
/// Behind each column stand [`LANES`] − 1 zeros, so that whole blocks can be read past the end of the band.
#[derive(Debug, Clone)]
pub(super) struct Band {
    pub(super) order: usize,
    pub(super) width: usize,
    pub(super) values: Vec<f64>,
}

/// Numbers from one column to the next.
#[inline(always)]
pub(super) const fn stride(width: usize) -> usize {
    width + LANES
}

impl Band {
    /// A band of zeros.
    pub(super) fn zeros(order: usize, width: usize) -> Self {
        Band { order, width, values: vec![0.0; order * stride(width)] }
    }

    /// Place of an entry of the lower triangle.
    ///
    /// # Panics
    /// When the entry is outside the matrix or the band: the caller's band was too narrow.
    fn place(&self, row: usize, column: usize) -> usize {
        assert!(row < self.order, "row {row} of a matrix of order {}", self.order);
        assert!(
            row - column <= self.width,
            "entry ({row}, {column}) outside the half-bandwidth {}",
            self.width
        );
        column * stride(self.width) + row - column
    }

    /// Adds to an entry of the lower triangle.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        let place = self.place(row, column);
        self.values[place] += value;
    }

    /// Adds to entries below each other in one column of the lower triangle.
    pub(super) fn add_run(&mut self, first: usize, column: usize, values: &[f64]) {
        let Some(below) = values.len().checked_sub(1) else { return };
        self.place(first + below, column);
        let start = self.place(first, column);
        for (entry, value) in self.values[start..=start + below].iter_mut().zip(values) {
            *entry += value;
        }
    }

    /// Entry on the diagonal.
    pub(super) fn diagonal(&self, index: usize) -> f64 {
        self.values[self.place(index, index)]
    }

    /// Visits the entries (row, column, value) of the lower triangle.
    pub(super) fn for_each(&self, mut visit: impl FnMut(usize, usize, f64)) {
        for (column, values) in self.values.chunks_exact(stride(self.width)).enumerate() {
            let last = self.width.min(self.order - 1 - column);
            for (below, value) in values[..=last].iter().enumerate() {
                visit(column + below, column, *value);
            }
        }
    }

    /// Σ |x_i||A_ij||x_j|, the size of the terms of the energy xᵀAx.
    pub(super) fn magnitude(&self, x: &[f64]) -> f64 {
        let mut sum = 0.0;
        self.for_each(|row, column, value| {
            let times = if row == column { 1.0 } else { 2.0 };
            sum += times * (value * x[row] * x[column]).abs();
        });
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_adds_what_its_entries_would() {
        let values = [1.0, 2.5, -3.0];
        for (first, column) in [(2, 2), (3, 2), (4, 4), (2, 0)] {
            let (mut run, mut entries) = (Band::zeros(7, 4), Band::zeros(7, 4));
            run.add_run(first, column, &values);
            run.add_run(first, column, &[]);
            for (below, value) in values.into_iter().enumerate() {
                entries.add(first + below, column, value);
            }
            assert_eq!(run.values, entries.values, "{first} {column}");
        }
    }

    #[test]
    #[should_panic(expected = "outside the half-bandwidth")]
    fn a_run_past_the_band_is_a_fault_of_the_caller() {
        Band::zeros(7, 4).add_run(3, 0, &[1.0, 2.0, 3.0]);
    }
}
