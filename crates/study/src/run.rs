//! Runs the designs of a study on all cores.

use axlebow_fe::StaticSystem;
use rayon::prelude::*;

use crate::{
    Beside, Measure, Point, QUANTITIES, Quantity, RideName, Row, Study, StudyKind, StudyOutcome, StudyRide,
};

/// Designs between two reports of progress.
const BATCH: usize = 512;
/// The same, where they ride.
const RIDING_BATCH: usize = 128;
/// Designs of one axle that one thread solves together, at most.
const TOGETHER: usize = 16;
/// Results of the static load case that are shown where the file does not say.
const USUAL: [&str; 4] = ["axle-mass", "camber-change", "peak-stress", "bow"];
/// The same, of each ride.
const USUAL_OF_RIDES: [&str; 5] =
    ["camber-peak-to-peak", "dynamic-load-factor", "time-off-road", "ride-peak-stress", "cups-per-turn"];

impl Study {
    /// Runs every design.
    ///
    /// Arguments: `progress`, told after each batch how many designs are done, and of how many.
    ///
    /// Returns a row for each design in the order of [`points`](Self::points); the same on any number of
    /// threads.
    pub fn run(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        Study { seat_tables: self.made_seat_tables(), ..self.clone() }.run_with_tables(progress)
    }

    fn run_with_tables(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        let of = self.count();
        let batch = if self.rides.is_empty() { BATCH } else { RIDING_BATCH };
        let mut rows: Vec<Row> = Vec::with_capacity(of);
        while rows.len() < of {
            let points: Vec<Point> =
                (rows.len()..of.min(rows.len() + batch)).map(|index| self.point(index)).collect();
            let alike = points.chunk_by(|one, other| self.is_one_axle(one, other));
            let together: Vec<&[Point]> = alike.flat_map(|points| points.chunks(TOGETHER)).collect();
            let solved = together
                .into_par_iter()
                .map_init(StaticSystem::new, |system, points| self.rows(points, system));
            rows.par_extend(solved.flatten_iter());
            progress(rows.len(), of);
        }
        self.hold_beside(&mut rows);
        let mut outcome = self.outcome(rows);
        outcome.constant_mass = self.masses.iter().map(|&mass| self.equal_mass(mass, &outcome)).collect();
        outcome
    }

    /// Side by side every design is held against the baseline.
    fn hold_beside(&self, rows: &mut [Row]) {
        let StudyKind::SideBySide { baseline } = self.kind else { return };
        let Some(Ok(design)) = rows.get(baseline).map(|row| &row.result) else { return };
        let beside = Beside { axle_mass: design.axle_mass, camber_change: design.camber_change };
        for design in rows.iter_mut().filter_map(|row| row.result.as_mut().ok()) {
            design.beside = Some(beside);
        }
    }

    fn outcome(&self, rows: Vec<Row>) -> StudyOutcome {
        StudyOutcome {
            name: self.name.clone(),
            note: self.note.clone(),
            kind: self.kind,
            case: self.case.clone(),
            variants: self.variants.iter().map(|variant| variant.name.clone()).collect(),
            varied: self.varied.clone(),
            rides: self.rides.iter().map(|ride| self.ride_name(ride)).collect(),
            measures: self.sorted(QUANTITIES.iter().filter(|own| self.has(own))),
            shown: self.shown(),
            ranked_by: self.ranked_by.and_then(|quantity| self.measures(quantity).next()),
            stiffened: rows.iter().filter_map(|row| row.result.as_ref().ok()).any(|design| design.stiffened),
            natural_modes: self.natural_modes(),
            seat_table_errors: self.seat_tables.iter().map(|table| table.left_out).collect(),
            rows,
            constant_mass: Vec::new(),
        }
    }

    /// Whether its designs have a quantity, which those that cost a solution of their own have only where asked for.
    fn has(&self, quantity: &Quantity) -> bool {
        let extra: [fn(&Quantity) -> bool; 2] = [Quantity::is_of_tied, Quantity::is_of_tires];
        extra.into_iter().all(|is| !is(quantity) || self.asks_for(is))
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

    /// What the file says is shown, in its order; else the usual results, ride by ride.
    fn shown(&self) -> Vec<Measure> {
        if self.shown.is_empty() {
            let usual = USUAL.iter().chain(&USUAL_OF_RIDES).filter_map(|name| Quantity::named(name).ok());
            return self.sorted(usual);
        }
        self.shown.iter().flat_map(|quantity| self.measures(quantity)).collect()
    }

    /// Quantities of the static load case, then those of each ride in turn.
    fn sorted(&self, quantities: impl Iterator<Item = &'static Quantity>) -> Vec<Measure> {
        let mut measures: Vec<Measure> = quantities.flat_map(|quantity| self.measures(quantity)).collect();
        measures.sort_by_key(|measure| (measure.quantity.is_of_ride(), measure.ride));
        measures
    }

    /// Rows of designs of one axle.
    pub(crate) fn rows(&self, points: &[Point], system: &mut StaticSystem) -> Vec<Row> {
        let results = self.designs(points, system).into_iter();
        let row = |(point, result): (&Point, _)| Row {
            variant: point.variant,
            values: point.values.clone(),
            result,
        };
        points.iter().zip(results).map(row).collect()
    }
}
