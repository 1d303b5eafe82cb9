//! The largest values along a beam.

use crate::solving::solution::{Solution, Station};

/// Stations among which the largest are looked for, before they are narrowed down.
const STATIONS: usize = 240;

/// Halvings by which a place is narrowed down: to the last digit.
const HALVINGS: usize = 60;

/// Values closer than this part are equally large; the first one counts.
const EQUAL: f64 = 1e-9;

/// What is largest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PeakKind {
    /// Deflection.
    Deflection,
    /// Slope.
    Slope,
    /// Shear.
    Shear,
    /// Moment.
    Moment,
    /// Bending stress.
    Stress,
}

/// The largest value along a beam, by magnitude.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peak {
    /// What is largest.
    pub kind: PeakKind,
    /// It, with its sign (m, rad, N, N m, Pa).
    pub value: f64,
    /// Where; the first place of several (m).
    pub at: f64,
}

impl PeakKind {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Deflection, Self::Slope, Self::Shear, Self::Moment, Self::Stress];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Deflection => "deflection",
            Self::Slope => "slope",
            Self::Shear => "shear",
            Self::Moment => "moment",
            Self::Stress => "bending stress",
        }
    }

    /// It at a station; none where there is none.
    pub fn of(self, station: &Station) -> Option<f64> {
        match self {
            Self::Deflection => Some(station.deflection),
            Self::Slope => Some(station.slope),
            Self::Shear => Some(station.shear),
            Self::Moment => Some(station.moment),
            Self::Stress => station.stress,
        }
    }
}

/// The largest values along a beam, those that there are.
pub fn peaks(solution: &Solution) -> Vec<Peak> {
    let mut stations = solution.places(STATIONS);
    for (element, own) in stations.iter_mut().enumerate() {
        let level = |f: fn(&Station) -> f64| level_places(solution, element, own, f);
        let more = [level(|station| station.rise), level(|station| station.shear)].concat();
        own.extend(more);
    }
    let all = stations.concat();
    PeakKind::ALL.into_iter().filter_map(|kind| largest(kind, &all)).collect()
}

fn largest(kind: PeakKind, stations: &[Station]) -> Option<Peak> {
    let values = stations.iter().filter_map(|station| Some((station.at, kind.of(station)?)));
    let larger = |best: Option<(f64, f64)>, (at, value): (f64, f64)| match best {
        Some((_, best_value)) if value.abs() <= best_value.abs() * (1.0 + EQUAL) => best,
        _ => Some((at, value)),
    };
    values.fold(None, larger).map(|(at, value)| Peak { kind, value, at })
}

/// Stations of an element between which something changes sign, where it vanishes.
fn level_places(
    solution: &Solution,
    element: usize,
    own: &[Station],
    f: fn(&Station) -> f64,
) -> Vec<Station> {
    let mut found = Vec::new();
    for pair in own.windows(2) {
        let (mut low, mut high) = (pair[0], pair[1]);
        if f(&low) * f(&high) >= 0.0 {
            continue;
        }
        for _ in 0..HALVINGS {
            let middle = solution.in_element(element, 0.5 * (low.at + high.at));
            if f(&middle) * f(&low) > 0.0 { low = middle } else { high = middle }
        }
        found.push(low);
    }
    found
}
