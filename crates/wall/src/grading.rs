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

/// Fewest elements between two places.
pub(crate) type Fewest<'a> = &'a dyn Fn(f64, f64) -> f64;

/// Parts of an interval over which the wanted number of elements is summed.
const PARTS: usize = 256;

impl Grading {
    fn size(&self, at: f64, marks: &[f64]) -> f64 {
        let distance = marks.iter().map(|mark| (mark - at).abs()).fold(f64::INFINITY, f64::min);
        (self.finest + self.growth * distance).min(self.coarsest)
    }

    /// Elements from each stop to the next: as many as the sizes ask for, sizes by the distance from the nearest of the
    /// marks, and at least so many between two places.
    pub(crate) fn counts(&self, stops: &[f64], marks: &[f64], fewest: Fewest) -> Vec<usize> {
        let count = |pair: &[f64]| {
            let counted = self.counted([pair[0], pair[1]], marks, fewest);
            (counted[PARTS] - 1e-6).ceil().max(1.0) as usize
        };
        stops.windows(2).map(count).collect()
    }

    /// Number of elements from a place on to the end of each part of the way to another, by the midpoint rule.
    fn counted(&self, [from, to]: [f64; 2], marks: &[f64], fewest: Fewest) -> Vec<f64> {
        let step = (to - from) / PARTS as f64;
        let mut counted = vec![0.0];
        for part in 0..PARTS {
            let at = from + (part as f64 + 0.5) * step;
            let by_size = step / self.size(at, marks);
            counted.push(counted[part] + by_size.max(fewest(at - 0.5 * step, at + 0.5 * step)));
        }
        counted
    }

    /// Lines from the first to the last stop with a line at each and so many elements from each to the next, their sizes in
    /// the proportions of [`Self::counts`].
    pub(crate) fn lines(
        &self,
        (stops, counts): (&[f64], &[usize]),
        marks: &[f64],
        fewest: Fewest,
    ) -> Vec<f64> {
        let mut lines: Vec<f64> = stops.first().copied().into_iter().collect();
        for (pair, count) in stops.windows(2).zip(counts) {
            let [from, to] = [pair[0], pair[1]];
            let step = (to - from) / PARTS as f64;
            let counted = self.counted([from, to], marks, fewest);
            for number in 1..*count {
                let wanted = counted[PARTS] * number as f64 / *count as f64;
                let part = counted.partition_point(|sum| *sum < wanted).clamp(1, PARTS);
                let share = (wanted - counted[part - 1]) / (counted[part] - counted[part - 1]);
                lines.push(from + (part as f64 - 1.0 + share) * step);
            }
            lines.push(to);
        }
        lines
    }
}

/// Numbers of the stops in rising order without those that lie closer than `least` to one before them in the list.
pub(crate) fn apart(wanted: &[f64], least: f64) -> Vec<usize> {
    let mut kept: Vec<usize> = Vec::new();
    for (number, stop) in wanted.iter().enumerate() {
        if kept.iter().all(|other| (wanted[*other] - stop).abs() >= least) {
            kept.push(number);
        }
    }
    kept.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_meet_the_stops_and_the_sizes_asked_for() {
        let grading = Grading { finest: 1.0, growth: 0.25, coarsest: 10.0 };
        let stops = [0.0, 30.0, 100.0];
        let counts = grading.counts(&stops, &[30.0], &|_, _| 0.0);
        let lines = grading.lines((&stops, &counts), &[30.0], &|_, _| 0.0);
        assert_eq!(lines.len(), counts.iter().sum::<usize>() + 1);
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
        assert_eq!(apart(&[5.0, 0.0, 4.9, 7.0, 0.05], 0.2), [1, 0, 3]);
    }
}
