//! What a study says, from its rows.

use crate::ask::{Study, StudyKind, StudyRide, Together};
use crate::findings::{MOST_LISTED, RideName, Row, StudyOutcome};
use crate::solve::Measure;
use crate::solve::name;

/// Results of the static load case that are shown where the file does not say.
const USUAL: [&str; 4] = [name::AXLE_MASS, name::CAMBER_CHANGE, name::PEAK_STRESS, name::BOW];
/// The same, of each ride.
const USUAL_OF_RIDES: [&str; 5] = [
    name::CAMBER_PEAK_TO_PEAK,
    name::DYNAMIC_LOAD_FACTOR,
    name::TIME_OFF_ROAD,
    name::RIDE_PEAK_STRESS,
    name::CUPS_PER_TURN,
];

impl Study {
    pub(crate) fn outcome(&self, rows: Vec<Row>, measures: Vec<Measure>) -> StudyOutcome {
        let outcome = self.outcome_without_rows(measures);
        let gathered = self.gathering(&outcome.measures, &outcome.shown).map(|mut gathered| {
            rows.iter().for_each(|row| gathered.add(row));
            gathered
        });
        let uncertainty = gathered.and_then(|gathered| self.uncertainty_of(&gathered));
        StudyOutcome { rows, uncertainty, ..outcome }
    }

    /// An outcome before its designs are known.
    pub(crate) fn outcome_without_rows(&self, measures: Vec<Measure>) -> StudyOutcome {
        let shown = self.shown(&measures);
        StudyOutcome {
            name: self.name.clone(),
            note: self.note.clone(),
            kind: self.kind,
            case: self.case.clone(),
            variants: self.variants.iter().map(|variant| variant.name.clone()).collect(),
            varied: self.varied.clone(),
            is_grid: matches!(self.together, Together::Grid),
            limits: self.limits.clone(),
            rides: self.rides.iter().map(|ride| self.ride_name(ride)).collect(),
            shown,
            ranked_by: self
                .ranked_by
                .as_ref()
                .and_then(|lead| measures.iter().find(|own| own.name == *lead).cloned()),
            measures,
            stiffened: self.variants.iter().any(|variant| variant.is_stiffened()),
            natural_modes: self.natural_modes(),
            seat_table_errors: self.seat_tables.iter().map(|table| table.left_out).collect(),
            rows: Vec::new(),
            uncertainty: None,
            constant_mass: Vec::new(),
            warnings: Vec::new(),
            summary: None,
        }
    }

    fn ride_name(&self, ride: &StudyRide) -> RideName {
        let varied = self.varied.iter().any(|varied| varied.of_road() == Some("speed"));
        let speed = ride.speed.unwrap_or(ride.road.speed);
        RideName {
            name: ride.name.clone(),
            road: ride.road.name.clone(),
            speed: Some(speed).filter(|_| !varied),
        }
    }

    /// What the file says is shown, in its order; else the usual results, ride by ride. A plain sweep that names none shows none: its
    /// table and its picture are of the camber change and its parts.
    pub(crate) fn shown(&self, measures: &[Measure]) -> Vec<Measure> {
        let named = |name: &str| measures.iter().filter(|own| own.name == name).cloned().collect::<Vec<_>>();
        if !self.shown.is_empty() {
            return self.shown.iter().flat_map(|name| named(name)).collect();
        }
        let is_plain = self.kind == StudyKind::Sweep && self.rides.is_empty() && self.ranked_by.is_none();
        if is_plain && matches!(self.together, Together::Grid) && self.count() <= MOST_LISTED {
            return Vec::new();
        }
        let usual = USUAL.iter().chain(&USUAL_OF_RIDES);
        let mut shown: Vec<Measure> = usual.flat_map(|name| named(name)).collect();
        shown.sort_by_key(|measure| measure.ride);
        shown
    }
}
