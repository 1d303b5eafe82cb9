//! Lower triangle of a symmetric matrix with entries anywhere.

/// Lower triangle, column by column, each column sorted by row.
#[derive(Debug, Clone)]
pub(super) struct Sparse {
    columns: Vec<Vec<(usize, f64)>>,
}

/// Compressed columns.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Pattern {
    /// Where each column starts in `rows`, and the end of the last.
    pub(super) starts: Vec<usize>,
    /// Row of each entry.
    pub(super) rows: Vec<usize>,
}

impl Sparse {
    /// A matrix without entries but for a zero diagonal.
    pub(super) fn zeros(order: usize) -> Self {
        Sparse { columns: (0..order).map(|index| vec![(index, 0.0)]).collect() }
    }

    /// A zero matrix with entries in the given rows of each column, sorted from the diagonal on.
    pub(super) fn with_places(rows: &[Vec<usize>]) -> Self {
        Sparse { columns: rows.iter().map(|rows| rows.iter().map(|row| (*row, 0.0)).collect()).collect() }
    }

    /// Number of rows.
    pub(super) fn order(&self) -> usize {
        self.columns.len()
    }

    /// Sets the entries to zero and keeps their places.
    pub(super) fn reset(&mut self) {
        self.columns.iter_mut().flatten().for_each(|entry| entry.1 = 0.0);
    }

    /// Adds to an entry of the lower triangle.
    ///
    /// # Panics
    /// When the entry is outside the matrix.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        assert!(row < self.order(), "row {row} of a matrix of order {}", self.order());
        let entries = &mut self.columns[column];
        match entries.binary_search_by_key(&row, |entry| entry.0) {
            Ok(place) => entries[place].1 += value,
            Err(place) => entries.insert(place, (row, value)),
        }
    }

    /// Adds to entries of the lower triangle below each other.
    ///
    /// # Panics
    /// When an entry is outside the matrix.
    pub(super) fn add_run(&mut self, first: usize, column: usize, values: &[f64]) {
        let entries = &mut self.columns[column];
        let place = entries.partition_point(|entry| entry.0 < first);
        let known =
            entries.get(place + values.len() - 1).is_some_and(|last| last.0 == first + values.len() - 1);
        if known {
            entries[place..].iter_mut().zip(values).for_each(|(entry, value)| entry.1 += value);
            return;
        }
        for (below, value) in values.iter().enumerate() {
            self.add(first + below, column, *value);
        }
    }

    /// Entry on the diagonal.
    pub(super) fn diagonal(&self, index: usize) -> f64 {
        self.columns[index][0].1
    }

    /// Visits the entries (row, column, value) of the lower triangle.
    pub(super) fn for_each(&self, mut visit: impl FnMut(usize, usize, f64)) {
        for (column, entries) in self.columns.iter().enumerate() {
            for (row, value) in entries {
                visit(*row, column, *value);
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

    /// Places of the entries.
    pub(super) fn pattern(&self) -> Pattern {
        let mut pattern = Pattern { starts: vec![0], rows: Vec::new() };
        for entries in &self.columns {
            pattern.rows.extend(entries.iter().map(|entry| entry.0));
            pattern.starts.push(pattern.rows.len());
        }
        pattern
    }

    /// Values of the entries in the order of the pattern.
    pub(super) fn values(&self) -> Vec<f64> {
        self.columns.iter().flatten().map(|entry| entry.1).collect()
    }
}
