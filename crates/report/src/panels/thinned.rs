//! Long histories with fewer points.

use crate::svg::Point;

/// A line of at most about `most` points that looks like `points`: of each stretch the lowest and the highest
/// point stay, in their order, and so do both ends.
///
/// - `points`: by rising x; all of them come back when they are not more than `most`
pub(crate) fn thinned(points: &[Point], most: usize) -> Vec<Point> {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return Vec::new() };
    if points.len() <= most {
        return points.to_vec();
    }
    let stretches = points.chunks(points.len().div_ceil((most / 2).max(1)));
    let mut line = vec![*first];
    line.extend(stretches.flat_map(extremes));
    line.push(*last);
    line.dedup();
    line
}

/// The lowest and the highest point of a stretch, in their order.
fn extremes(stretch: &[Point]) -> [Point; 2] {
    let [mut lowest, mut highest] = [0, 0];
    for (i, point) in stretch.iter().enumerate() {
        lowest = if point[1] < stretch[lowest][1] { i } else { lowest };
        highest = if point[1] > stretch[highest][1] { i } else { highest };
    }
    [lowest.min(highest), lowest.max(highest)].map(|i| stretch[i])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn extremes_and_ends_stay() {
        let wave = |i: usize| [i as f64, (0.1 * i as f64).sin() + if i == 7777 { 9.0 } else { 0.0 }];
        let points: Vec<Point> = (0..30_001).map(wave).collect();
        let line = thinned(&points, 2000);
        assert!((1000..=2002).contains(&line.len()), "{} points", line.len());
        assert!(line.is_sorted_by(|a, b| a[0] < b[0]));
        assert!(line.contains(&points[7777]));
        assert_eq!([line[0], line[line.len() - 1]], [points[0], points[30_000]]);
    }

    #[test]
    fn short_lines_stay_as_they_are() {
        let points = [[0.0, 1.0], [1.0, 1.0], [2.0, 0.0]];
        assert_eq!(thinned(&points, 3), points);
        assert_eq!(thinned(&points, 0), [[0.0, 1.0], [2.0, 0.0]]);
        assert!(thinned(&[], 10).is_empty());
    }
}
