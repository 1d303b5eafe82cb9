//! At which moments of a ride the shape of the axle is kept.

/// Which samples are among the moments kept.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Moments {
    wanted: usize,
    taken: usize,
    last: usize,
}

impl Moments {
    /// Moments of a ride whose samples are numbered from 0 to `last`.
    pub(crate) fn new(wanted: usize, last: usize) -> Self {
        Moments { wanted: wanted.min(last + 1), taken: 0, last }
    }

    /// Whether a sample is one of them; samples come in order.
    pub(crate) fn take(&mut self, sample: usize) -> bool {
        let due = self.taken < self.wanted && sample >= self.next();
        self.taken += usize::from(due);
        due
    }

    fn next(&self) -> usize {
        let gaps = self.wanted.saturating_sub(1).max(1);
        (self.taken * self.last + gaps / 2) / gaps
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn taken(wanted: usize, last: usize) -> Vec<usize> {
        let mut moments = Moments::new(wanted, last);
        (0..=last).filter(|sample| moments.take(*sample)).collect()
    }

    #[test]
    fn moments_are_spread_evenly_with_both_ends() {
        assert_eq!(taken(5, 100), [0, 25, 50, 75, 100]);
        assert_eq!(taken(4, 10), [0, 3, 7, 10]);
        assert_eq!(taken(2, 10), [0, 10]);
        assert_eq!(taken(1, 10), [0]);
        assert_eq!(taken(0, 10), [0; 0]);
    }

    #[test]
    fn a_short_ride_gives_every_sample() {
        assert_eq!(taken(100, 3), [0, 1, 2, 3]);
        for wanted in [7, 333, 600, 999, 1001] {
            assert_eq!(taken(wanted, 1000).len(), wanted);
        }
    }
}
