//! What was measured along a ride: a CSV file with the columns that a ride writes, or some of them.

use axlebow_axle::Side;
use axlebow_units::{Kind, parse};

use crate::faults::{Problems, likely};
use crate::read::{LARGEST_SERIES, Row, rows, text_of};

/// What was measured along a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredRide {
    /// Whether each row has its time (s), else its distance (m).
    pub by_time: bool,
    /// Times or distances, not falling.
    pub along: Vec<f64>,
    /// A column each.
    pub series: Vec<MeasuredSeries>,
}

/// A column of what was measured.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredSeries {
    /// What was measured.
    pub of: RideQuantity,
    /// Of which wheel; none of the whole axle.
    pub side: Option<Side>,
    /// Values in SI; none where a cell is empty.
    pub values: Vec<Option<f64>>,
}

/// What is measured along a ride.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RideQuantity {
    /// Road height, m.
    Road,
    /// Wheel load, N.
    Load,
    /// Camber change, rad.
    CamberChange,
    /// Largest fiber stress along the axle, Pa.
    Stress,
}

impl RideQuantity {
    /// All of them, as a picture of a ride has them from top to bottom.
    pub const ALL: [Self; 4] = [Self::Road, Self::Load, Self::CamberChange, Self::Stress];

    fn word(self) -> &'static str {
        match self {
            Self::Road => "road",
            Self::Load => "load",
            Self::CamberChange => "camber_change",
            Self::Stress => "stress",
        }
    }

    /// What kind of quantity it is, and the units of its columns.
    fn units(self) -> (Kind, &'static [&'static str]) {
        match self {
            Self::Road => (Kind::Length, &["m", "mm", "in"]),
            Self::Load => (Kind::Force, &["N", "kN", "lbf"]),
            Self::CamberChange => (Kind::Angle, &["rad", "deg"]),
            Self::Stress => (Kind::Stress, &["Pa", "MPa", "ksi"]),
        }
    }
}

/// A column that was recognized: what it is, of which wheel, and the size of its unit.
type Column = (RideQuantity, Option<Side>, f64);

/// What a ride is measured along, and the size of the unit.
const ALONG: [(&str, f64); 3] = [("time_s", 1.0), ("distance_m", 1.0), ("distance_ft", 0.3048)];

impl MeasuredRide {
    /// Reads a file: its first column `time_s` or `distance_m` (`distance_ft`), then any of `left_road_mm`, `right_load_kn`,
    /// `left_camber_change_deg`, `stress_mpa` and the like; others are left alone, as are cells that are empty.
    ///
    /// # Errors
    /// Every problem at its place: no such columns, cells that are no numbers, times or distances that fall.
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<MeasuredRide, Problems> {
        let text = text_of(bytes, file_name, LARGEST_SERIES)?.trim_start_matches('\u{feff}');
        let mut problems = Problems::new(file_name, text.into());
        let mut rows = rows(text).map_while(Result::ok);
        let Some(heading) = rows.next() else {
            problems.push(0..0, "the file is empty", Some("a heading and rows of numbers".to_owned()));
            return Err(problems);
        };
        let Some((by_time, unit)) = along(&heading, &mut problems) else { return Err(problems) };
        let columns: Vec<(usize, Column)> =
            (1..heading.width()).filter_map(|place| Some((place, column(heading.cell(place))?))).collect();
        if columns.is_empty() {
            let accepted =
                "a column such as left_load_kn, right_camber_change_deg, left_road_mm or stress_mpa";
            problems.push(heading.span(), "no column is one that a ride has", Some(accepted.to_owned()));
            return Err(problems);
        }
        let mut read =
            MeasuredRide { by_time, along: Vec::new(), series: columns.iter().map(series).collect() };
        for row in rows {
            if problems.is_full() {
                break;
            }
            read.take(&row, (unit, &columns), &mut problems);
        }
        if problems.is_empty() { Ok(read) } else { Err(problems) }
    }

    fn take(&mut self, row: &Row<'_>, (unit, columns): (f64, &[(usize, Column)]), problems: &mut Problems) {
        let Some(at) = number(row, 0, problems) else { return };
        if self.along.last().is_some_and(|last| unit * at < *last) {
            let message = format!("{at} is less than the row before");
            problems.push(row.span_of(0), message, Some("times or distances that do not fall".to_owned()));
            return;
        }
        self.along.push(unit * at);
        for (own, (place, (_, _, size))) in self.series.iter_mut().zip(columns) {
            let empty = row.cell(*place).is_empty();
            let value = if empty { None } else { number(row, *place, problems) };
            own.values.push(value.map(|value| size * value));
        }
    }
}

fn series((_, (of, side, _)): &(usize, Column)) -> MeasuredSeries {
    MeasuredSeries { of: *of, side: *side, values: Vec::new() }
}

/// Whether the first column is a time, and the size of its unit.
fn along(heading: &Row<'_>, problems: &mut Problems) -> Option<(bool, f64)> {
    let name = heading.cell(0).to_ascii_lowercase();
    let found = ALONG.iter().find(|(own, _)| *own == name);
    if found.is_none() {
        let names = ALONG.map(|(own, _)| own);
        let message = format!("the first column is `{}`", heading.cell(0));
        problems.push_likely(
            heading.span_of(0),
            message,
            (Some(names.join(", ")), likely(&name, names.into_iter())),
        );
    }
    found.map(|(own, unit)| (*own == "time_s", *unit))
}

/// What a column's name says; none of one that is no column of a ride.
fn column(name: &str) -> Option<Column> {
    let name = name.to_ascii_lowercase();
    let of_side = Side::BOTH.into_iter().find_map(|side| {
        name.strip_prefix(side.word()).and_then(|rest| rest.strip_prefix('_')).map(|rest| (Some(side), rest))
    });
    let (side, rest) = of_side.unwrap_or((None, &name));
    let of = RideQuantity::ALL.into_iter().find(|own| rest.starts_with(own.word()))?;
    if side.is_some() == (of == RideQuantity::Stress) {
        return None;
    }
    let unit = rest.strip_prefix(of.word())?.strip_prefix('_')?;
    let (kind, units) = of.units();
    let unit = units.iter().find(|own| own.eq_ignore_ascii_case(unit))?;
    let size = parse(&format!("1 {unit}"), kind).ok()?.value;
    Some((of, side, size))
}

fn number(row: &Row<'_>, place: usize, problems: &mut Problems) -> Option<f64> {
    let text = row.cell(place);
    let value = text.parse::<f64>().ok().filter(|value| value.is_finite());
    if value.is_none() {
        let message = format!("{text:?} is no number");
        problems.push(row.span_of(place), message, Some("a number such as 12.5".to_owned()));
    }
    value
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<MeasuredRide, String> {
        MeasuredRide::from_bytes(text.as_bytes(), "m.csv").map_err(|problems| problems.render())
    }

    #[test]
    fn columns_are_taken_in_their_units_and_others_left_alone() {
        let own = read(
            "distance_ft,note,left_load_kn,right_camber_change_deg,stress_ksi\n0,x,40,-0.5,20\n10,,,1,\n",
        );
        let own = own.unwrap();
        assert_eq!((own.by_time, &*own.along), (false, &[0.0, 3.048][..]));
        assert_eq!(own.series.len(), 3);
        assert_eq!(own.series[0].values, [Some(40e3), None]);
        assert_eq!(own.series[1].side, Some(Side::Right));
        assert!((own.series[1].values[0].unwrap() + 0.5_f64.to_radians()).abs() < 1e-15);
        let stress = own.series[2].values[0].unwrap();
        assert!(
            (stress / (20.0 * 6_894_757.293_168) - 1.0).abs() < 1e-12 && own.series[2].values[1].is_none()
        );
    }

    #[test]
    fn what_is_no_measured_ride_is_told_at_its_place() {
        let told = |text: &str| read(text).unwrap_err();
        assert!(told("").contains("empty"));
        assert!(told("times,left_load_n\n0,1\n").contains("time_s"));
        assert!(told("time_s,left_lode_n\n0,1\n").contains("no column"));
        assert!(told("time_s,load_n\n0,1\n").contains("no column"), "a load has a side");
        let text = told("time_s,left_load_n\n0,1\n1,seven\n0.5,2\n");
        assert!(text.contains("seven") && text.contains("less than the row before"), "{text}");
        assert!(told("time_s,left_load_n\n0,inf\n").contains("no number"));
    }
}
