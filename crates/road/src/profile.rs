//! Heights sampled along one track.

use std::sync::Arc;

use crate::RoadError;
use crate::error::{DISTANCES, accepted, accepted_count, accepted_length};
use crate::event::Shape;

/// Elevations that a survey may give, down or up to 10 km (m).
const ELEVATION: f64 = 1e4;

/// More samples than this are refused: 100 km at 1 cm.
pub(crate) const MOST_SAMPLES: usize = 10_000_000;

/// Heights sampled along one track, joined by straight lines; copies share the samples.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredProfile {
    distances: Arc<[f64]>,
    heights: Arc<[f64]>,
    /// Segments for each meter of length, 1/m.
    density: f64,
}

impl MeasuredProfile {
    /// A profile from samples.
    ///
    /// - `distances`: x (m), strictly increasing, 2 to 10 million of them, within 100 km
    /// - `heights`: z (m, up), one for each distance, within 10 km
    /// - `widest_gap`: the greatest distance between neighbors that is no hole (m)
    ///
    /// Errors, which name the row from 1: [`RoadError::Columns`], [`RoadError::Count`],
    /// [`RoadError::Sample`], [`RoadError::NotIncreasing`], [`RoadError::Gap`]; and
    /// [`RoadError::Range`] for `widest_gap`.
    pub fn new(distances: &[f64], heights: &[f64], widest_gap: f64) -> Result<Self, RoadError> {
        let widest_gap = accepted_length("widest gap of a profile", widest_gap)?;
        if distances.len() != heights.len() {
            return Err(RoadError::Columns { distances: distances.len(), heights: heights.len() });
        }
        accepted_count("count of samples in the profile", distances.len(), 2..=MOST_SAMPLES)?;
        accepted_samples("distance", distances, *DISTANCES.end())?;
        accepted_samples("height", heights, ELEVATION)?;
        for (index, pair) in distances.windows(2).enumerate() {
            accepted_pair(index + 2, pair[0], pair[1], widest_gap)?;
        }
        Ok(Self::of(distances.into(), heights.into()))
    }

    /// A profile from heights at 0, `spacing`, 2 `spacing` and so on that are known to be good.
    pub(crate) fn even(spacing: f64, heights: Vec<f64>) -> Self {
        let distances = (0..heights.len()).map(|index| index as f64 * spacing).collect();
        Self::of(distances, heights.into())
    }

    fn of(distances: Arc<[f64]>, heights: Arc<[f64]>) -> Self {
        let last = distances.len() - 1;
        let density = last as f64 / (distances[last] - distances[0]);
        Self { distances, heights, density }
    }

    /// Distances x of the samples (m).
    pub fn distances(&self) -> &[f64] {
        &self.distances
    }

    /// Heights z of the samples (m, up).
    pub fn heights(&self) -> &[f64] {
        &self.heights
    }

    /// Length from the first to the last sample (m).
    pub fn length(&self) -> f64 {
        self.end() - self.start()
    }

    /// Whether every sample is within a share of the mean spacing of where even samples would be.
    pub fn is_even(&self, share: f64) -> bool {
        let spacing = self.length() / (self.distances.len() - 1) as f64;
        let off = |(i, x): (usize, &f64)| (x - self.start() - i as f64 * spacing).abs();
        self.distances.iter().enumerate().map(off).all(|off| off <= share * spacing)
    }

    /// The same ground sampled evenly from its first sample on; a last piece shorter than the spacing is left off.
    ///
    /// - `spacing`: (m), 1 mm to the length of the profile
    ///
    /// Errors: [`RoadError::Range`], [`RoadError::Count`].
    pub fn resampled(&self, spacing: f64) -> Result<Self, RoadError> {
        let spacing = accepted("sample spacing", spacing, "m", 1e-3..=self.length())?;
        // A whole count of spacings must not lose its last one to rounding.
        let count = (self.length() / spacing + 1e-9) as usize;
        accepted_count("count of samples in the profile", count + 1, 2..=MOST_SAMPLES)?;
        let distances: Arc<[f64]> = (0..=count).map(|index| self.start() + index as f64 * spacing).collect();
        let heights = distances.iter().map(|&x| self.line(self.segment(x), x)).collect();
        Ok(Self::of(distances, heights))
    }

    /// The segment, between samples `i` and `i + 1`, that x lies in, or the nearest one.
    fn segment(&self, x: f64) -> usize {
        // Even samples lie where their share of the length says.
        let last = self.distances.len() - 2;
        let guess = (((x - self.start()) * self.density) as usize).min(last);
        // A guess may be off by one for its rounding.
        let near = [guess, guess.saturating_sub(1), (guess + 1).min(last)];
        let holds = |own: &usize| self.distances[*own] <= x && x < self.distances[own + 1];
        if let Some(own) = near.into_iter().find(holds) {
            return own;
        }
        let above = self.distances.partition_point(|&sample| sample <= x);
        above.clamp(1, self.distances.len() - 1) - 1
    }

    /// Height at x on the straight line through a segment, but not beyond its ends.
    fn line(&self, segment: usize, x: f64) -> f64 {
        let (x0, x1) = (self.distances[segment], self.distances[segment + 1]);
        let (z0, z1) = (self.heights[segment], self.heights[segment + 1]);
        let t = ((x - x0) / (x1 - x0)).clamp(0.0, 1.0);
        (1.0 - t) * z0 + t * z1
    }
}

impl Shape for MeasuredProfile {
    fn start(&self) -> f64 {
        self.distances[0]
    }

    fn end(&self) -> f64 {
        self.distances[self.distances.len() - 1]
    }

    fn before(&self) -> f64 {
        self.heights[0]
    }

    fn after(&self) -> f64 {
        self.heights[self.heights.len() - 1]
    }

    fn height(&self, x: f64) -> f64 {
        self.line(self.segment(x), x)
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        self.area_and_ends(from, to)[0]
    }

    /// Whole pieces between the first and the last have the heights of their samples: no line is asked for.
    fn area_and_ends(&self, from: f64, to: f64) -> [f64; 3] {
        let (first, last) = (self.segment(from), self.segment(to));
        let [at_from, at_to] = [self.line(first, from), self.line(last, to)];
        if first >= last {
            return [0.5 * (at_from + at_to) * (to - from), at_from, at_to];
        }
        let before = 0.5 * (at_from + self.heights[first + 1]) * (self.distances[first + 1] - from);
        let after = 0.5 * (self.heights[last] + at_to) * (to - self.distances[last]);
        let between =
            self.distances[first + 1..=last].windows(2).zip(self.heights[first + 1..=last].windows(2));
        let whole = |(x, z): (&[f64], &[f64])| 0.5 * (z[0] + z[1]) * (x[1] - x[0]);
        let area = between.map(whole).fold(before, |sum, area| sum + area) + after;
        [area, at_from, at_to]
    }
}

fn accepted_samples(column: &'static str, values: &[f64], most: f64) -> Result<(), RoadError> {
    match values.iter().position(|value| !(-most..=most).contains(value)) {
        None => Ok(()),
        Some(index) => {
            Err(RoadError::Sample { column, row: index + 1, value: values[index], low: -most, high: most })
        }
    }
}

fn accepted_pair(row: usize, previous: f64, value: f64, limit: f64) -> Result<(), RoadError> {
    if value <= previous {
        return Err(RoadError::NotIncreasing { row, value, previous });
    }
    let gap = value - previous;
    // A spacing equal to the limit must not fail for its last digit.
    if gap > limit * (1.0 + 1e-9) {
        return Err(RoadError::Gap { row, gap, limit });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Event;

    fn profile() -> MeasuredProfile {
        MeasuredProfile::new(&[1.0, 2.0, 4.0], &[0.5, 0.25, 1.25], 2.0).unwrap()
    }

    fn refusal(distances: &[f64], heights: &[f64]) -> String {
        MeasuredProfile::new(distances, heights, 0.5).unwrap_err().to_string()
    }

    #[test]
    fn samples_are_joined_by_lines_and_held_beyond_the_ends() {
        let event = Event::from(profile());
        assert_eq!((event.start(), event.end()), (1.0, 4.0));
        for (x, z) in
            [(-9.0, 0.5), (1.0, 0.5), (1.5, 0.375), (2.0, 0.25), (3.0, 0.75), (4.0, 1.25), (9.0, 1.25)]
        {
            assert_eq!(event.height(x), z, "{x}");
        }
        assert_eq!(event.mean_height(0.0, 5.0), (0.5 + 0.375 + 1.5 + 1.25) / 5.0);
        assert_eq!(event.mean_height(2.5, 3.5), 0.75);
    }

    #[test]
    fn resampling_keeps_the_lines_and_whole_spacings() {
        let even = profile().resampled(0.5).unwrap();
        assert_eq!(even.distances(), [1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0]);
        assert_eq!(even.heights(), [0.5, 0.375, 0.25, 0.5, 0.75, 1.0, 1.25]);
        assert_eq!(profile().resampled(0.8).unwrap().distances().len(), 4);
        assert_eq!(profile().resampled(0.1).unwrap().distances().len(), 31);
        assert!(profile().resampled(3.1).is_err());
        assert!(profile().resampled(f64::NAN).is_err());
    }

    #[test]
    fn refusals_name_the_row() {
        assert_eq!(
            refusal(&[0.0, 0.5, 0.5], &[0.0; 3]),
            "distance in row 3 of the measured profile is 0.5 m; accepted is above 0.5 m, the row before"
        );
        assert_eq!(
            refusal(&[0.0, 0.5, 1.25], &[0.0; 3]),
            "gap before row 3 of the measured profile is 0.75 m; accepted is 0.5 m or less"
        );
        assert_eq!(
            refusal(&[0.0, 0.5], &[0.0, f64::NAN]),
            "height in row 2 of the measured profile is NaN m; accepted is -10000 to 10000 m"
        );
        assert_eq!(
            refusal(&[0.0, f64::INFINITY], &[0.0; 2]),
            "distance in row 2 of the measured profile is inf m; accepted is -100000 to 100000 m"
        );
    }

    #[test]
    fn columns_must_be_as_long_as_each_other_and_hold_two_samples() {
        assert_eq!(
            refusal(&[0.0, 0.5], &[0.0]),
            "measured profile has 2 distances and 1 heights; accepted is as many of each"
        );
        assert_eq!(
            refusal(&[0.0], &[0.0]),
            "count of samples in the profile is 1; accepted is 2 to 10000000"
        );
        assert!(MeasuredProfile::new(&[0.0, 1.0], &[0.0, 0.0], 0.0).is_err());
    }
}
