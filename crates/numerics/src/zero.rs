//! Where a function of one number is zero.

/// Steps in which the way to each end of the range is walked.
const STEPS: usize = 256;
/// Halvings of an interval: more than the bits of its ends.
const HALVINGS: usize = 2100;

/// The zero of a continuous function that lies nearest to a start; none where its sign does not change.
///
/// The way from the start to each end of the range is walked in steps that begin short, `(k/256)³` of the way, until the
/// sign changes; the interval is then halved until its ends are neighbors. Two zeros within one step are not seen.
///
/// Arguments: `function`, finite over the range; `start`, in the range; `range`, least and most, both finite.
pub fn nearest_zero(function: impl Fn(f64) -> f64, start: f64, range: [f64; 2]) -> Option<f64> {
    let sign = function(start) > 0.0;
    if function(start) == 0.0 {
        return Some(start);
    }
    let toward = |end: f64| {
        let place = |k: usize| start + (end - start) * (k as f64 / STEPS as f64).powi(3);
        let has_changed = |k: &usize| function(place(*k)) == 0.0 || (function(place(*k)) > 0.0) != sign;
        (1..=STEPS).find(has_changed).map(|k| halved(&function, [place(k - 1), place(k)]))
    };
    let found = range.into_iter().filter_map(toward);
    found.min_by(|one, other| (one - start).abs().total_cmp(&(other - start).abs()))
}

/// The change of sign between two numbers, by halving; the end at which the function is smaller.
///
/// Source: any text of numerical analysis.
fn halved(function: impl Fn(f64) -> f64, [mut one, mut other]: [f64; 2]) -> f64 {
    let sign = function(one) > 0.0;
    for _ in 0..HALVINGS {
        let middle = one + 0.5 * (other - one);
        if middle == one || middle == other {
            break;
        }
        if (function(middle) > 0.0) == sign { one = middle } else { other = middle }
    }
    if function(one).abs() < function(other).abs() { one } else { other }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_zero_is_found_on_either_side() {
        let both = |x: f64| (x - 1.0) * (x - 4.0);
        assert_eq!(nearest_zero(both, 2.0, [0.0, 10.0]), Some(1.0));
        assert_eq!(nearest_zero(both, 3.0, [0.0, 10.0]), Some(4.0));
        assert_eq!(nearest_zero(both, 9.0, [0.0, 10.0]), Some(4.0));
    }

    #[test]
    fn a_zero_at_the_start_or_at_an_end_counts_and_none_is_none() {
        assert_eq!(nearest_zero(|x| x - 2.0, 2.0, [0.0, 5.0]), Some(2.0));
        assert_eq!(nearest_zero(|x| x - 5.0, 2.0, [0.0, 5.0]), Some(5.0));
        assert_eq!(nearest_zero(|x| x, 2.0, [0.0, 5.0]), Some(0.0));
        assert_eq!(nearest_zero(|x| x * x + 1.0, 2.0, [0.0, 5.0]), None);
        assert_eq!(nearest_zero(|x| x - 6.0, 5.0, [0.0, 5.0]), None);
    }

    #[test]
    fn a_zero_has_all_its_digits() {
        let found = nearest_zero(|x| x * x - 2.0, 1.0, [0.0, 1e3]).unwrap();
        assert!((found - 2.0_f64.sqrt()).abs() <= 2.0 * f64::EPSILON, "{found:?}");
    }
}
