//! Lines of a structured mesh that crowd toward marks.

/// Size of elements by the distance from the nearest mark.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Grading {
    /// Size at a mark, m.
    pub finest: f64,
    /// Growth of the size with the distance.
    pub growth: f64,
    /// Largest size, m.
    pub coarsest: f64,
}

/// Largest size at a place, m.
pub(crate) type Limit<'a> = &'a dyn Fn(f64) -> f64;

/// Parts of an interval over which the wanted number of elements is summed.
const PARTS: usize = 64;

impl Grading {
    fn size(&self, at: f64, marks: &[f64]) -> f64 {
        let distance = marks.iter().map(|mark| (mark - at).abs()).fold(f64::INFINITY, f64::min);
        (self.finest + self.growth * distance).min(self.coarsest)
    }

    /// Lines from the first to the last stop with a line at each: between two stops as many as the sizes ask for,
    /// sizes by the distance from the nearest of the marks and by a limit of the place.
    pub(crate) fn lines(&self, stops: &[f64], marks: &[f64], limit: Limit) -> Vec<f64> {
        let mut lines: Vec<f64> = stops.first().copied().into_iter().collect();
        for pair in stops.windows(2) {
            let [from, to] = [pair[0], pair[1]];
            // Number of elements from `from` on, by the midpoint rule.
            let step = (to - from) / PARTS as f64;
            let mut counted = vec![0.0];
            for part in 0..PARTS {
                let at = from + (part as f64 + 0.5) * step;
                let size = self.size(at, marks).min(limit(at));
                counted.push(counted[part] + step / size);
            }
            let count = (counted[PARTS] - 1e-6).ceil().max(1.0);
            for number in 1..count as usize {
                let wanted = counted[PARTS] * number as f64 / count;
                let part = counted.partition_point(|sum| *sum < wanted).clamp(1, PARTS);
                let share = (wanted - counted[part - 1]) / (counted[part] - counted[part - 1]);
                lines.push(from + (part as f64 - 1.0 + share) * step);
            }
            lines.push(to);
        }
        lines
    }
}

/// Sorted stops without those that lie closer than `least` to one before them in the list given.
pub(crate) fn apart(wanted: impl IntoIterator<Item = f64>, least: f64) -> Vec<f64> {
    let mut kept: Vec<f64> = Vec::new();
    for stop in wanted {
        if kept.iter().all(|other| (other - stop).abs() >= least) {
            kept.push(stop);
        }
    }
    kept.sort_by(f64::total_cmp);
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_meet_the_stops_and_the_sizes_asked_for() {
        let grading = Grading { finest: 1.0, growth: 0.25, coarsest: 10.0 };
        let lines = grading.lines(&[0.0, 30.0, 100.0], &[30.0], &|_| f64::INFINITY);
        assert!(lines.contains(&0.0) && lines.contains(&30.0) && lines.contains(&100.0));
        for pair in lines.windows(2) {
            let middle = 0.5 * (pair[0] + pair[1]);
            let wanted = grading.size(middle, &[30.0]);
            assert!(pair[1] - pair[0] <= 1.02 * wanted, "{pair:?}: {wanted}");
            assert!(pair[1] - pair[0] > 0.6 * wanted, "{pair:?}: {wanted}");
        }
    }

    #[test]
    fn crowded_stops_give_way_to_those_named_before_them() {
        assert_eq!(apart([5.0, 0.0, 4.9, 7.0, 0.05], 0.2), [0.0, 5.0, 7.0]);
    }
}
