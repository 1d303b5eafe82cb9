//! Names in a row that keep their distance.

/// Places for labels that want to stand at `wanted`, at least `gap` apart and moved as little as can be.
///
/// With q_i = p_i - i gap the labels must only keep their order, so the answer is the least-squares
/// non-decreasing fit to q: neighbors out of order are pooled at their mean (Ayer et al., *Annals of
/// Mathematical Statistics* 26, 1955).
///
/// - `wanted`: places in increasing order
pub(crate) fn spread(wanted: &[f64], gap: f64) -> Vec<f64> {
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (i, place) in wanted.iter().enumerate() {
        let mut pool = (place - i as f64 * gap, 1);
        while let Some(&(mean, count)) = pools.last().filter(|last| last.0 > pool.0) {
            pools.pop();
            let total = count + pool.1;
            pool = ((mean * count as f64 + pool.0 * pool.1 as f64) / total as f64, total);
        }
        pools.push(pool);
    }
    let means = pools.iter().flat_map(|&(mean, count)| std::iter::repeat_n(mean, count));
    means.enumerate().map(|(i, mean)| mean + i as f64 * gap).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_that_have_room_stay() {
        assert_eq!(spread(&[0.0, 20.0, 50.0], 10.0), [0.0, 20.0, 50.0]);
    }

    #[test]
    fn crowded_labels_spread_about_their_mean() {
        assert_eq!(spread(&[10.0, 10.0, 10.0], 10.0), [0.0, 10.0, 20.0]);
    }

    #[test]
    fn pools_that_meet_join() {
        let places = spread(&[0.0, 1.0, 12.0, 13.0], 10.0);
        assert!(places.windows(2).all(|pair| pair[1] - pair[0] >= 10.0 - 1e-12));
        assert_eq!(places, [-8.5, 1.5, 11.5, 21.5]);
    }
}
