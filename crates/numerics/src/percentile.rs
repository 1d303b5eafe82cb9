//! Percentiles, and the order statistics between which they lie.

use statrs::distribution::{Binomial, DiscreteCDF};

/// The value that a share of sorted values stays below, in a straight line between neighbors.
///
/// ```text
/// h = share (n − 1),   x = x_⌊h⌋ + (h − ⌊h⌋)(x_⌊h⌋₊₁ − x_⌊h⌋)
/// ```
///
/// Arguments: `sorted`, rising; `share`, from 0 to 1. Not a number if there are no values.
///
/// Source: R. J. Hyndman, Y. Fan, American Statistician 50 (1996) 361-365, definition 7 (from memory); the usual one of
/// numerical libraries.
pub fn percentile(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return f64::NAN };
    let place = share * last as f64;
    let below = (place.floor() as usize).min(last);
    let next = sorted[(below + 1).min(last)];
    sorted[below] + (place - below as f64) * (next - sorted[below])
}

/// Places of the two sorted values between which a percentile lies with a confidence, whatever the distribution.
///
/// ```text
/// P(x_r ≤ ξ ≤ x_s) = Σ C(n, i) pⁱ(1 − p)ⁿ⁻ⁱ for i from r to s − 1, each tail at most (1 − confidence)/2
/// ```
///
/// Arguments: `count`, n, of independent values; `share`, p, above 0 and below 1; `confidence`, above 0 and below 1.
///
/// Returns places from 0; `None` where so few values have no such two.
///
/// Source: H. A. David, H. N. Nagaraja, Order Statistics, 3rd ed. 2003, section 7.1 (from memory).
pub fn order_interval(count: usize, share: f64, confidence: f64) -> Option<[usize; 2]> {
    let tail = 0.5 * (1.0 - confidence);
    let below = Binomial::new(share, count as u64).ok()?;
    // The largest r with P(fewer than r below) ≤ tail, and the least s with P(fewer than s below) ≥ 1 − tail, from 1.
    let first = below.inverse_cdf(tail) as usize;
    let first = if below.cdf(first as u64) <= tail { first + 1 } else { first };
    let last = below.inverse_cdf(1.0 - tail) as usize + 1;
    (first >= 1 && last <= count).then(|| [first - 1, last - 1])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_are_between_neighbors() {
        let sorted = [1.0, 2.0, 4.0, 8.0];
        assert_eq!(percentile(&sorted, 0.0), 1.0);
        assert_eq!(percentile(&sorted, 1.0), 8.0);
        assert_eq!(percentile(&sorted, 0.5), 3.0);
        assert_eq!(percentile(&sorted, 0.25), 1.75);
        assert!(percentile(&[], 0.5).is_nan());
    }

    /// The median of 10 lies between the 2nd and the 9th value with 0.979, of 20 between the 6th and the 15th with 0.959;
    /// fewer than 6 values have no interval of 95 % (tables of the sign test, from memory).
    #[test]
    fn median_intervals_match_tables_of_the_sign_test() {
        assert_eq!(order_interval(10, 0.5, 0.95), Some([1, 8]));
        assert_eq!(order_interval(20, 0.5, 0.95), Some([5, 14]));
        assert_eq!(order_interval(6, 0.5, 0.95), Some([0, 5]));
        assert_eq!(order_interval(5, 0.5, 0.95), None);
    }

    /// S. S. Wilks: 59 values for the 95th percentile on one side at 95 %; on both sides at 90 % that is 59 too.
    #[test]
    fn an_outer_percentile_wants_many_values() {
        assert_eq!(order_interval(58, 0.95, 0.90), None);
        assert_eq!(order_interval(59, 0.95, 0.90).map(|ends| ends[1]), Some(58));
    }
}
