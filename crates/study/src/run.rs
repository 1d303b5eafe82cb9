//! Runs the designs of a study on all cores.

use std::ops::Range;

use rayon::prelude::*;

use crate::design::{Beside, Design};
use crate::measure::Columns;
use crate::solver::{Solver, Solvers};
use crate::warnings::{SolvedDesign, WarningCounts};
use crate::{
    MOST_LISTED, Measure, Point, RideName, Row, Study, StudyKind, StudyOutcome, StudyRide, Together,
};

/// Designs between two reports of progress.
const BATCH: usize = 512;
/// The same, where they ride.
const RIDING_BATCH: usize = 128;
/// Designs of one axle that one thread solves together, at most.
const TOGETHER: usize = 16;
/// Axles that one thread takes at a time, where they only stand.
const SHARE: usize = 32;
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
        self.clone().ready().run_when_ready(progress)
    }

    /// The study with its tables of seats, if it asks for any: made once, they need not be made for each run.
    pub fn ready(self) -> Study {
        Study { seat_tables: self.made_seat_tables(), ..self }
    }

    fn run_when_ready(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        let (of, asked) = (self.count(), self.asked());
        let batch = if self.rides.is_empty() { BATCH } else { RIDING_BATCH };
        let mut rows: Vec<Row> = Vec::with_capacity(of);
        let mut warnings = WarningCounts::default();
        while rows.len() < of {
            for solved in self.solved(rows.len()..of.min(rows.len() + batch), &asked) {
                warnings.add_design(rows.len(), &solved.warnings);
                rows.push(solved.row);
            }
            progress(rows.len(), of);
        }
        let outcome = self.outcome(rows, asked.columns.measures());
        self.with_equal_mass(StudyOutcome { warnings: warnings.of_study(self), ..outcome }, &asked)
    }

    /// Consecutive designs, solved on all cores.
    pub(crate) fn solved(&self, designs: Range<usize>, asked: &Asked) -> Vec<SolvedDesign> {
        let points: Vec<Point> = designs.map(|design| self.point(design)).collect();
        let alike = points.chunk_by(|one, other| self.is_one_axle(one, other));
        let together: Vec<&[Point]> = alike.flat_map(|points| points.chunks(TOGETHER)).collect();
        let shares = together.par_chunks(if self.rides.is_empty() { SHARE } else { 1 });
        let solved = shares.map(|share| {
            let designs = |solver: &mut Solver| {
                share.iter().flat_map(|points| self.solve(points, asked, solver)).collect::<Vec<_>>()
            };
            asked.solvers.lend(designs)
        });
        solved.flatten_iter().collect()
    }

    pub(crate) fn with_equal_mass(&self, outcome: StudyOutcome, asked: &Asked) -> StudyOutcome {
        let masses = self.masses.iter();
        let constant_mass = masses.map(|&mass| self.equal_mass(mass, (&outcome, asked))).collect();
        StudyOutcome { constant_mass, ..outcome }
    }

    /// What is asked of every design.
    pub(crate) fn asked(&self) -> Asked {
        Asked { columns: Columns::of(self), baseline: self.baseline(), solvers: Solvers::default() }
    }

    /// Side by side, the design that all are compared with, if it has a result.
    fn baseline(&self) -> Option<Beside> {
        let StudyKind::SideBySide { baseline } = self.kind else { return None };
        let point = Point { variant: baseline, values: Vec::new() };
        let design = self.standing(&point, &mut Solver::default()).ok()?;
        Some(Beside { axle_mass: design.axle_mass, camber_change: design.camber_change })
    }

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

    /// Solves designs of one axle.
    pub(crate) fn solve(&self, points: &[Point], asked: &Asked, solver: &mut Solver) -> Vec<SolvedDesign> {
        let results = self.designs(points, solver).into_iter();
        let solved = |(point, result): (&Point, Result<Design, String>)| {
            let mut warnings = result.as_ref().map_or(Vec::new(), |design| design.warnings(self));
            let result = result.map(|design| asked.readings(design, &point.values));
            warnings.extend(result.iter().flat_map(|readings| asked.columns.not_numbers(readings)));
            let row = Row { variant: point.variant, values: point.values.clone(), result };
            SolvedDesign { row, warnings }
        };
        points.iter().zip(results).map(solved).collect()
    }
}

/// What a study asks of every design.
#[derive(Debug)]
pub(crate) struct Asked {
    pub columns: Columns,
    pub solvers: Solvers,
    /// Side by side, what all designs are compared with.
    baseline: Option<Beside>,
}

impl Asked {
    /// The numbers that the study keeps of a design.
    fn readings(&self, design: Design, values: &[f64]) -> Box<[f64]> {
        let beside = self.baseline.or(design.beside);
        self.columns.readings(&Design { beside, ..design }, values)
    }
}
