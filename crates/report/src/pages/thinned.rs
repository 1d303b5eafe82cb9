//! Which of many designs a table shows, and numbers below one another with their points in line.

use crate::number::fixed;

/// Rows of a line that are shown, about.
pub(super) const ROWS: usize = 12;

/// Places of about [`ROWS`] rows out of `count`, evenly spaced, both ends among them.
pub(super) fn thinned(count: usize) -> impl Iterator<Item = usize> {
    let last = count.saturating_sub(1);
    let steps = if count <= ROWS + 2 { last } else { evenest(last) };
    (0..=steps).map(move |i| (i * last + steps / 2).checked_div(steps).unwrap_or(0))
}

/// The number of steps, about [`ROWS`], that divides `last`; else one less than [`ROWS`].
fn evenest(last: usize) -> usize {
    (ROWS - 4..=ROWS + 1).rev().find(|steps| last.is_multiple_of(*steps)).unwrap_or(ROWS - 1)
}

/// Decimals that the numbers need to be told to so many significant digits, zeros at their ends left out.
pub(super) fn decimals(values: impl Iterator<Item = f64>, digits: i32) -> usize {
    let needed = |value: f64| {
        let most = (digits - 1 - value.abs().max(1e-9).log10().floor() as i32).clamp(0, 9) as usize;
        fixed(value, most).trim_end_matches('0').split_once('.').map_or(0, |(_, decimals)| decimals.len())
    };
    values.map(needed).max().unwrap_or(0)
}

/// Numbers of up to five digits with as many decimals each as the longest one needs.
pub(super) fn aligned(values: &[f64]) -> Vec<String> {
    let decimals = decimals(values.iter().copied(), 5);
    values.iter().map(|value| fixed(*value, decimals)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_lines_are_thinned_evenly_and_keep_their_ends() {
        assert_eq!(thinned(1).collect::<Vec<_>>(), [0]);
        assert_eq!(thinned(14).count(), 14);
        assert_eq!(thinned(41).collect::<Vec<_>>(), [0, 4, 8, 12, 16, 20, 24, 28, 32, 36, 40]);
        for count in [15, 30, 42, 1000, 1_000_000] {
            let places: Vec<_> = thinned(count).collect();
            assert_eq!((places[0], places[places.len() - 1]), (0, count - 1));
            assert!((8..=14).contains(&places.len()) && places.is_sorted());
        }
    }

    #[test]
    fn numbers_are_aligned_at_their_points() {
        assert_eq!(aligned(&[6.0, 6.25, 10.0]), ["6.00", "6.25", "10.00"]);
        assert_eq!(aligned(&[127.0, 152.4]), ["127.0", "152.4"]);
        assert_eq!(aligned(&[0.0, 1e7]), ["0", "10000000"]);
    }
}
