//! Measured profiles: heights along one or both tracks, as columns of a CSV file.

use axlebow_road::{MeasuredProfile, RoadError};
use axlebow_units::{Kind, UnitSystem, show};

use super::profile_heading::Heading;
use crate::faults::{Problems, Span, quoted};
use crate::read::{Row, rows, text_of};

/// The longest profile that is read, bytes.
pub(crate) const LONGEST_PROFILE: usize = 50_000_000;

/// What a profile file gives.
#[derive(Debug, Clone)]
pub(crate) struct ProfileFile {
    /// One track, or the left and the right one.
    pub tracks: Vec<MeasuredProfile>,
    /// Least and greatest distance from row to row, m.
    pub spacing: [f64; 2],
    /// The system of its distances.
    pub system: UnitSystem,
}

impl ProfileFile {
    /// Reads a profile file; heights count from the first row.
    ///
    /// Arguments: `widest_gap`, the greatest distance from row to row that is no hole, m.
    ///
    /// # Errors
    /// Every problem at once, up to fifty: a file that is too long or empty, headings without a unit or of
    /// another kind, cells that are no numbers, distances that do not grow, holes, too few rows.
    pub fn from_bytes(bytes: &[u8], file_name: &str, widest_gap: f64) -> Result<Self, Problems> {
        let text = text_of(bytes, file_name, LONGEST_PROFILE)?.trim_start_matches('\u{feff}');
        let mut problems = Problems::new(file_name, text.into());
        let mut rows = rows(text).map_while(Result::ok);
        let Some(heading) = rows.next() else {
            problems.push(0..0, "the profile is empty", Some("a heading and two rows or more".to_owned()));
            return Err(problems);
        };
        let Some(heading) = Heading::of(&heading, &mut problems) else { return Err(problems) };
        let system = heading.distance.1.system.unwrap_or(UnitSystem::Si);
        let mut samples = Samples::of(&heading, widest_gap, system);
        for row in rows {
            if problems.is_full() {
                break;
            }
            samples.take(&row, &mut problems);
        }
        samples.finish(problems)
    }
}

/// A hole: distance from the row before, m, and the row after it.
type Gap = (f64, Span);

/// The rows read so far.
struct Samples<'h> {
    heading: &'h Heading,
    widest_gap: f64,
    system: UnitSystem,
    places: Vec<Span>,
    distances: Vec<f64>,
    heights: Vec<Vec<f64>>,
    /// The distance in the row before, if that was good.
    previous: Option<f64>,
    gaps: Vec<Gap>,
}

impl<'h> Samples<'h> {
    fn of(heading: &'h Heading, widest_gap: f64, system: UnitSystem) -> Self {
        let heights = vec![Vec::new(); heading.heights.len()];
        let (places, distances, gaps) = (Vec::new(), Vec::new(), Vec::new());
        Self { heading, widest_gap, system, places, distances, heights, previous: None, gaps }
    }

    fn take(&mut self, row: &Row<'_>, problems: &mut Problems) {
        self.places.push(row.span());
        let width = self.heading.width;
        if row.width() != width {
            let cells = if row.width() == 1 { "cell" } else { "cells" };
            let message = format!("the row has {} {cells}", row.width());
            problems.push(row.span(), message, Some(format!("{width} cells, as in the heading")));
            self.previous = None;
            return;
        }
        let distance = number(row, self.heading.distance, problems);
        let heights: Vec<_> =
            self.heading.heights.iter().map(|column| number(row, *column, problems)).collect();
        if let (Some(previous), Some(distance)) = (self.previous, distance) {
            self.check_step(row, [previous, distance], problems);
        }
        self.previous = distance;
        let Some(heights) = heights.into_iter().collect::<Option<Vec<_>>>() else { return };
        self.distances.extend(distance);
        self.heights.iter_mut().zip(heights).for_each(|(track, height)| track.push(height));
    }

    fn check_step(&mut self, row: &Row<'_>, [previous, distance]: [f64; 2], problems: &mut Problems) {
        let place = self.heading.distance.0;
        let before = show(previous, Kind::Length, self.system);
        let written = quoted(row.cell(place));
        let reason = match distance - previous {
            0.0 => format!("the distance {written} repeats that of the row before"),
            step if step < 0.0 => format!("the distance {written} goes back from {before} in the row before"),
            step => {
                // A spacing equal to the limit must not fail for its last digit.
                let wide = step > self.widest_gap * (1.0 + 1e-9);
                self.gaps.extend(wide.then(|| (step, row.span_of(place))));
                return;
            }
        };
        problems.push(row.span_of(place), reason, Some("distances that grow from row to row".to_owned()));
    }

    fn finish(self, mut problems: Problems) -> Result<ProfileFile, Problems> {
        self.push_gaps(&mut problems);
        if self.places.len() < 2 && problems.is_empty() {
            let last = self.places.last().cloned().unwrap_or(0..0);
            let message = format!("the profile has {} under its heading", counted(self.places.len(), "row"));
            problems.push(last, message, Some("two rows or more".to_owned()));
        }
        if !problems.is_empty() {
            return Err(problems);
        }
        let datum = self.heights.iter().map(|track| track[0]).sum::<f64>() / self.heights.len() as f64;
        let track = |heights: &Vec<f64>| {
            let heights: Vec<f64> = heights.iter().map(|height| height - datum).collect();
            MeasuredProfile::new(&self.distances, &heights, self.widest_gap)
        };
        let tracks: Result<Vec<_>, _> = self.heights.iter().map(track).collect();
        match tracks {
            Ok(tracks) => Ok(ProfileFile { tracks, spacing: spacing(&self.distances), system: self.system }),
            Err(error) => {
                problems.push(self.place_of(&error), error.to_string(), None);
                Err(problems)
            }
        }
    }

    /// One problem for all holes, at the widest.
    fn push_gaps(&self, problems: &mut Problems) {
        let Some((gap, place)) = self.gaps.iter().max_by(|a, b| a.0.total_cmp(&b.0)) else { return };
        let shown = |length| show(length, Kind::Length, self.system);
        let others = match self.gaps.len() - 1 {
            0 => String::new(),
            more => format!("; {} wider than accepted besides", counted(more, "gap")),
        };
        let message = format!("this row is {} from the one before{others}", shown(*gap));
        let accepted =
            format!("rows at most {} apart, or another `widest_gap` of the road", shown(self.widest_gap));
        problems.push(place.clone(), message, Some(accepted));
    }

    /// The row that the road found at fault.
    fn place_of(&self, error: &RoadError) -> Span {
        let row = match error {
            RoadError::Sample { row, .. }
            | RoadError::NotIncreasing { row, .. }
            | RoadError::Gap { row, .. } => *row,
            _ => 1,
        };
        self.places[row - 1].clone()
    }
}

/// The number in a cell, in SI.
fn number(
    row: &Row<'_>,
    (place, unit): (usize, axlebow_units::Parsed),
    problems: &mut Problems,
) -> Option<f64> {
    let cell = row.cell(place);
    match cell.parse::<f64>().map(|number| number * unit.value) {
        Ok(value) if value.is_finite() => return Some(value),
        Ok(_) => {
            let message = format!("{} is not a finite number", quoted(cell));
            problems.push(row.span_of(place), message, Some("a number such as 12.5".to_owned()));
        }
        Err(_) if cell.is_empty() => {
            let message = format!("cell {} of the row is empty", place + 1);
            problems.push(row.span_of(place), message, Some("a number, or no row at all".to_owned()));
        }
        Err(_) => {
            let message = format!("{} is not a number", quoted(cell));
            problems.push(row.span_of(place), message, Some("a plain number such as 12.5".to_owned()));
        }
    }
    None
}

/// Least and greatest distance between neighbors.
fn spacing(distances: &[f64]) -> [f64; 2] {
    let steps = distances.windows(2).map(|pair| pair[1] - pair[0]);
    steps.fold([f64::INFINITY, 0.0], |[least, most], step| [least.min(step), most.max(step)])
}

fn counted(count: usize, thing: &str) -> String {
    match count {
        0 => format!("no {thing}"),
        1 => format!("1 {thing}"),
        more => format!("{more} {thing}s"),
    }
}
