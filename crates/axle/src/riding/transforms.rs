//! Power of the lines of a Fourier transform, prepared once for each length.

use std::cell::RefCell;
use std::sync::Arc;

use realfft::num_complex::Complex;
use realfft::{RealFftPlanner, RealToComplex};

/// Transforms that a thread remembers: those of the dominant frequency and of the spectrum, of this ride and of the one before.
const REMEMBERED: usize = 4;

/// Longest transform that is remembered: 12 MB.
const LONGEST: usize = 1 << 18;

/// A transform of one length with its storage.
struct Prepared {
    transform: Arc<dyn RealToComplex<f64>>,
    values: Vec<f64>,
    lines: Vec<Complex<f64>>,
    scratch: Vec<Complex<f64>>,
}

thread_local! {
    static LAST: RefCell<Vec<Prepared>> = const { RefCell::new(Vec::new()) };
}

/// Squared magnitude of each line of the transform of values, with zeros behind them up to a length; `None` for no line.
///
/// A thread remembers its last few transforms, because preparing one takes longer than transforming.
pub(crate) fn powers(values: impl Iterator<Item = f64>, length: usize) -> Option<Vec<f64>> {
    LAST.with_borrow_mut(|last| {
        let known = last.iter().position(|prepared| prepared.values.len() == length);
        let mut prepared = known.map_or_else(|| Prepared::of(length), |place| last.remove(place));
        let powers = prepared.powers(values);
        if length <= LONGEST {
            last.push(prepared);
            let forgotten = last.len().saturating_sub(REMEMBERED);
            last.drain(..forgotten);
        }
        powers
    })
}

impl Prepared {
    fn of(length: usize) -> Self {
        let transform = RealFftPlanner::new().plan_fft_forward(length);
        let (lines, scratch) = (transform.make_output_vec(), transform.make_scratch_vec());
        Prepared { values: vec![0.0; length], lines, scratch, transform }
    }

    fn powers(&mut self, values: impl Iterator<Item = f64>) -> Option<Vec<f64>> {
        let padded = values.chain(std::iter::repeat(0.0));
        self.values.iter_mut().zip(padded).for_each(|(place, value)| *place = value);
        self.transform.process_with_scratch(&mut self.values, &mut self.lines, &mut self.scratch).ok()?;
        Some(self.lines.iter().map(|line| line.norm_sqr()).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_remembered_transform_gives_what_a_new_one_does() {
        for length in [16, 20, 33, 16, 64, 128, 20, 16, 256, 512, 33] {
            let values = || (0..length - 3).map(|i| (i as f64).sqrt());
            assert_eq!(powers(values(), length), Prepared::of(length).powers(values()), "{length}");
        }
    }

    #[test]
    fn lines_hold_the_sum_and_the_energy_of_the_values() {
        let values = [3.0, -1.0, 2.0, 0.5, 4.0];
        let powers = powers(values.into_iter(), 8).unwrap();
        assert!((powers[0] - 8.5 * 8.5).abs() < 1e-12);
        let energy = (powers[0] + 2.0 * powers[1..4].iter().sum::<f64>() + powers[4]) / 8.0;
        assert!((energy - values.iter().map(|value| value * value).sum::<f64>()).abs() < 1e-12);
    }
}
