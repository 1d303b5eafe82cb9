//! Shares that do not depend on an order: the mean over all orders in which causes could come in.
//!
//! Source: L. S. Shapley, A value for n-person games, Contributions to the Theory of Games II, Princeton 1953, 307-317
//! (from memory).

/// Share of each of n causes, `Σ_S |S|! (n−1−|S|)!/n! (v(S ∪ i) − v(S))` over the sets S without it; the shares sum to v of
/// all causes less v of none.
///
/// - `values`: v of every set, 2ⁿ of them; bit i of the place says whether cause i is in
///
/// # Panics
/// A number of values that is no power of two.
pub fn shapley(values: &[f64]) -> Vec<f64> {
    assert!(values.len().is_power_of_two(), "{} values belong to no number of causes", values.len());
    let count = values.len().trailing_zeros() as usize;
    let weights: Vec<f64> = (0..count).map(|size| weight(size, count)).collect();
    let share = |cause: usize| {
        let without = (0..values.len()).filter(|set| set >> cause & 1 == 0);
        without.map(|set| weights[set.count_ones() as usize] * (values[set | 1 << cause] - values[set])).sum()
    };
    (0..count).map(share).collect()
}

/// Share of the orders of `count` causes in which a given set of `size` comes just before a given cause: one over
/// `count` times the sets of that size among the others.
fn weight(size: usize, count: usize) -> f64 {
    let sets = (0..size).fold(1.0, |sets, i| sets * (count - 1 - i) as f64 / (i + 1) as f64);
    1.0 / (count as f64 * sets)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The airport game: a runway as long as the largest airplane needs. Those that need it share each further stretch
    /// alike: 12, 12 + 8, 12 + 8 + 10 for the costs 36, 52, 62 of three airplanes (S. C. Littlechild & G. Owen, A simple
    /// expression for the Shapley value in a special case, Management Science 20 (1973) 370-372; the rule from memory,
    /// the numbers ours).
    #[test]
    fn shares_match_littlechild_and_owen_1973() {
        let costs = [36.0, 52.0, 62.0];
        let cost = |set: usize| (0..3).filter(|i| set >> i & 1 == 1).map(|i| costs[i]).fold(0.0, f64::max);
        let values: Vec<f64> = (0..8).map(cost).collect();
        for (share, expected) in shapley(&values).into_iter().zip([12.0, 20.0, 30.0]) {
            assert!((share - expected).abs() < 1e-12, "{share} {expected}");
        }
    }

    #[test]
    fn shares_sum_to_the_whole_and_what_does_nothing_has_none() {
        let value = |set: usize| {
            let [a, b, c] = [0, 1, 2].map(|i| (set >> i & 1) as f64);
            3.0 + 2.0 * a - b + 5.0 * a * c
        };
        let shares = shapley(&(0..16).map(value).collect::<Vec<_>>());
        assert!((shares.iter().sum::<f64>() - 6.0).abs() < 1e-12);
        for (share, expected) in shares.iter().zip([4.5, -1.0, 2.5, 0.0]) {
            assert!((share - expected).abs() < 1e-12, "{shares:?}");
        }
        assert!(shapley(&[7.0]).is_empty());
    }
}
