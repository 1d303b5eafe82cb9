//! How many values fall into each of equal steps.

use crate::percentile;

/// Steps of a histogram.
const STEPS: [f64; 2] = [8.0, 60.0];

/// Values counted in equal steps.
#[derive(Debug, Clone, PartialEq)]
pub struct Histogram {
    /// Lower end of the first step.
    pub from: f64,
    /// Upper end of the last step; that of the first where all values are one.
    pub to: f64,
    /// Values in each step.
    pub counts: Vec<usize>,
}

impl Histogram {
    /// Counts values in steps of about 2 (upper less lower quartile)/∛n, from the least to the greatest value.
    ///
    /// Arguments: `sorted`, rising, at least one.
    ///
    /// Source: D. Freedman, P. Diaconis, Z. Wahrscheinlichkeitstheorie 57 (1981) 453-476 (from memory).
    pub fn of(sorted: &[f64]) -> Histogram {
        let [from, to] = [0.0, 1.0].map(|share| percentile(sorted, share));
        if from == to {
            return Histogram { from, to, counts: vec![sorted.len()] };
        }
        let width =
            2.0 * (percentile(sorted, 0.75) - percentile(sorted, 0.25)) / (sorted.len() as f64).cbrt();
        // Infinitely many where half of all values are one.
        let steps = ((to - from) / width).ceil().clamp(STEPS[0], STEPS[1]) as usize;
        let mut counts = vec![0; steps];
        for value in sorted {
            let place = ((value - from) / (to - from) * steps as f64) as usize;
            counts[place.min(steps - 1)] += 1;
        }
        Histogram { from, to, counts }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_is_in_a_step() {
        let values: Vec<f64> = (0..1000).map(|i| f64::from(i) * 0.01).collect();
        let own = Histogram::of(&values);
        assert_eq!(own.counts.iter().sum::<usize>(), 1000);
        // 2 · 4.995/10 = 0.999 goes ten times into 9.99, but for round-off.
        assert_eq!((own.from, own.to), (0.0, 9.99));
        assert!((10..=11).contains(&own.counts.len()));
        assert_eq!(Histogram::of(&[2.0; 5]).counts, [5]);
        let mostly_one: Vec<f64> = [1.0; 90].into_iter().chain((0..10).map(|i| 2.0 + f64::from(i))).collect();
        assert_eq!(Histogram::of(&mostly_one).counts.len(), 60);
    }
}
