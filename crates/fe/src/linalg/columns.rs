//! Right-hand sides side by side.

use super::lanes::LANES;

/// Several vectors of one length, stored row by row so that vector lanes run across the columns.
///
/// A row is padded with zeros to a whole number of lanes.
#[derive(Debug, Clone, PartialEq)]
pub struct Columns {
    order: usize,
    count: usize,
    width: usize,
    values: Vec<f64>,
}

impl Columns {
    /// `count` zero vectors of length `order`.
    pub fn zeros(order: usize, count: usize) -> Self {
        let width = count.next_multiple_of(LANES);
        Columns { order, count, width, values: vec![0.0; order * width] }
    }

    /// Length of each vector.
    pub fn order(&self) -> usize {
        self.order
    }

    /// Number of vectors.
    pub fn count(&self) -> usize {
        self.count
    }

    /// One row across all columns.
    pub fn row(&self, index: usize) -> &[f64] {
        &self.values[index * self.width..][..self.count]
    }

    /// One row across all columns, to be changed.
    pub fn row_mut(&mut self, index: usize) -> &mut [f64] {
        &mut self.values[index * self.width..][..self.count]
    }

    /// One number.
    pub fn get(&self, index: usize, column: usize) -> f64 {
        self.row(index)[column]
    }

    /// Sets one number.
    pub fn set(&mut self, index: usize, column: usize, value: f64) {
        self.row_mut(index)[column] = value;
    }

    /// Sets one column from top to bottom.
    ///
    /// # Panics
    /// When the column is not there.
    pub fn set_column(&mut self, column: usize, values: &[f64]) {
        assert!(column < self.count, "column {column} of {}", self.count);
        let rows = self.values.chunks_exact_mut(self.width);
        rows.zip(values).for_each(|(row, value)| row[column] = *value);
    }

    /// Adds to one number.
    pub fn add(&mut self, index: usize, column: usize, value: f64) {
        self.row_mut(index)[column] += value;
    }

    /// Adds the multiple of a row to one row across all columns.
    pub(super) fn add_row(&mut self, index: usize, factor: f64, row: &[f64]) {
        self.row_mut(index).iter_mut().zip(row).for_each(|(sum, x)| *sum += factor * x);
    }

    /// The columns as rows.
    pub fn transposed(&self) -> Columns {
        let mut turned = Columns::zeros(self.count, self.order);
        for index in 0..self.order {
            (0..self.count).for_each(|column| turned.set(column, index, self.get(index, column)));
        }
        turned
    }

    /// One column from top to bottom.
    pub fn column(&self, column: usize) -> impl Iterator<Item = f64> + '_ {
        (0..self.order).map(move |index| self.get(index, column))
    }

    /// Sets everything to zero and keeps the storage.
    pub fn reset(&mut self) {
        self.values.fill(0.0);
    }

    /// Numbers from one row to the next.
    pub(super) fn width(&self) -> usize {
        self.width
    }

    /// All rows one after the other, padding included.
    pub(super) fn values(&self) -> &[f64] {
        &self.values
    }

    /// All rows one after the other, padding included, to be changed.
    pub(super) fn values_mut(&mut self) -> &mut [f64] {
        &mut self.values
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_set_whole_and_turned_stand_where_they_should() {
        let mut columns = Columns::zeros(3, 10);
        (0..10).for_each(|column| {
            columns.set_column(column, &[0.0, 1.0, 2.0].map(|row| row + 10.0 * column as f64))
        });
        let turned = columns.transposed();
        assert_eq!((turned.order(), turned.count()), (10, 3));
        assert_eq!((columns.get(2, 7), turned.row(7)), (72.0, [70.0, 71.0, 72.0].as_slice()));
        assert_eq!(turned.transposed(), columns);
    }
}
