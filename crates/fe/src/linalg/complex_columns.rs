//! Complex right-hand sides side by side, and the rows of a complex matrix: real and imaginary parts apart, so that vector
//! lanes run along each.

use nalgebra::Complex;

use super::lanes::{LANES, multiply_add};

type Number = Complex<f64>;

/// Complex numbers, their real and imaginary parts apart.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Planes {
    real: Vec<f64>,
    imaginary: Vec<f64>,
}

/// So many numbers from a first one on, a whole number of blocks of lanes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    pub first: usize,
    pub count: usize,
}

impl Planes {
    pub(super) fn zeros(count: usize) -> Self {
        Planes { real: vec![0.0; count], imaginary: vec![0.0; count] }
    }

    pub(super) fn fill(&mut self, value: f64) {
        self.real.fill(value);
        self.imaginary.fill(value);
    }

    #[inline(always)]
    pub(super) fn at(&self, place: usize) -> Number {
        Complex::new(self.real[place], self.imaginary[place])
    }

    #[inline(always)]
    pub(super) fn add(&mut self, place: usize, value: Number) {
        self.real[place] += value.re;
        self.imaginary[place] += value.im;
    }

    #[inline(always)]
    pub(super) fn swap(&mut self, a: usize, b: usize) {
        self.real.swap(a, b);
        self.imaginary.swap(a, b);
    }

    /// Subtracts a multiple of numbers from as many others that do not overlap them.
    ///
    /// # Panics
    /// Where they do.
    #[inline(always)]
    pub(super) fn subtract<const FUSED: bool>(&mut self, factor: Number, known: Span, own: Span) {
        let (real, own_real) = two(&mut self.real, known, own);
        let (imaginary, own_imaginary) = two(&mut self.imaginary, known, own);
        let known = real.as_chunks::<LANES>().0.iter().zip(imaginary.as_chunks::<LANES>().0);
        let own =
            own_real.as_chunks_mut::<LANES>().0.iter_mut().zip(own_imaginary.as_chunks_mut::<LANES>().0);
        let Complex { re, im } = factor;
        for ((own_real, own_imaginary), (real, imaginary)) in own.zip(known) {
            for i in 0..LANES {
                own_real[i] =
                    multiply_add::<FUSED>(im, imaginary[i], multiply_add::<FUSED>(-re, real[i], own_real[i]));
                own_imaginary[i] = multiply_add::<FUSED>(
                    -im,
                    real[i],
                    multiply_add::<FUSED>(-re, imaginary[i], own_imaginary[i]),
                );
            }
        }
    }
}

/// Numbers to read, and others to change.
#[inline(always)]
fn two(values: &mut [f64], known: Span, own: Span) -> (&[f64], &mut [f64]) {
    if known.first < own.first {
        let (before, after) = values.split_at_mut(own.first);
        (&before[known.first..][..known.count], &mut after[..own.count])
    } else {
        let (before, after) = values.split_at_mut(known.first);
        (&after[..known.count], &mut before[own.first..][..own.count])
    }
}

/// Several complex vectors of one length, stored row by row so that vector lanes run across the columns.
#[derive(Debug, Clone, PartialEq)]
pub struct ComplexColumns {
    order: usize,
    count: usize,
    /// Numbers from one row to the next: a whole number of blocks of lanes.
    width: usize,
    values: Planes,
}

impl ComplexColumns {
    /// `count` zero vectors of length `order`.
    pub fn zeros(order: usize, count: usize) -> Self {
        let width = count.next_multiple_of(LANES);
        ComplexColumns { order, count, width, values: Planes::zeros(order * width) }
    }

    /// Length of each vector.
    pub fn order(&self) -> usize {
        self.order
    }

    /// One number.
    pub fn get(&self, row: usize, column: usize) -> Number {
        self.values.at(self.place(row, column))
    }

    /// Adds to one number.
    pub fn add(&mut self, row: usize, column: usize, value: Number) {
        self.values.add(self.place(row, column), value);
    }

    /// `Σ factor·row` over given rows, one number for each column.
    ///
    /// # Panics
    /// When a row is not there.
    pub fn weighted_sum(&self, rows: impl Iterator<Item = (usize, f64)>) -> Vec<Number> {
        let mut sums = vec![Number::ZERO; self.count];
        for (row, factor) in rows {
            let first = row * self.width;
            let real = &self.values.real[first..][..self.count];
            let imaginary = &self.values.imaginary[first..][..self.count];
            for (sum, (real, imaginary)) in sums.iter_mut().zip(real.iter().zip(imaginary)) {
                sum.re += factor * real;
                sum.im += factor * imaginary;
            }
        }
        sums
    }

    pub(super) fn is_finite(&self) -> bool {
        [&self.values.real, &self.values.imaginary].into_iter().flatten().all(|x| x.is_finite())
    }

    fn place(&self, row: usize, column: usize) -> usize {
        assert!(row < self.order && column < self.count, "place in the columns");
        row * self.width + column
    }

    #[inline(always)]
    fn span(&self, row: usize) -> Span {
        Span { first: row * self.width, count: self.width }
    }

    #[inline(always)]
    pub(super) fn exchange(&mut self, a: usize, b: usize) {
        (0..self.count).for_each(|column| self.values.swap(a * self.width + column, b * self.width + column));
    }

    /// Subtracts a multiple of one row from another.
    #[inline(always)]
    pub(super) fn subtract<const FUSED: bool>(&mut self, factor: Number, known: usize, own: usize) {
        let (known, own) = (self.span(known), self.span(own));
        self.values.subtract::<FUSED>(factor, known, own);
    }

    /// Multiplies a row.
    #[inline(always)]
    pub(super) fn scale(&mut self, factor: Number, row: usize) {
        let Span { first, count } = self.span(row);
        let real = &mut self.values.real[first..][..count];
        let imaginary = &mut self.values.imaginary[first..][..count];
        for (real, imaginary) in real.iter_mut().zip(imaginary) {
            let own = Complex::new(*real, *imaginary) * factor;
            (*real, *imaginary) = (own.re, own.im);
        }
    }
}
