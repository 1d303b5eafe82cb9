//! What a study says.

use super::summary::StudySummary;
use super::uncertainty::Uncertainty;
use super::warnings::DesignWarning;
use crate::ask::{Limit, StudyKind, Varied};
use crate::solve::{Measure, NaturalMode};

/// Result of [`Study::run`](crate::Study::run).
#[derive(Debug, Clone, PartialEq)]
pub struct StudyOutcome {
    /// What the study is called.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// What it does.
    pub kind: StudyKind,
    /// Name of the load case that was run.
    pub case: String,
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Keys that were varied, the last one fastest.
    pub varied: Vec<Varied>,
    /// Whether every combination of the values was run.
    pub is_grid: bool,
    /// What results may be.
    pub limits: Vec<Limit>,
    /// The rides, in order.
    pub rides: Vec<RideName>,
    /// Every result that the designs have, those of the static load case first, then ride by ride.
    pub measures: Vec<Measure>,
    /// Those that tables and pictures show, as the file says or else the usual ones.
    pub shown: Vec<Measure>,
    /// What the designs are ranked by, largest first, if they are.
    pub ranked_by: Option<Measure>,
    /// Whether any design has stiffeners, so that its reader may come to weld.
    pub stiffened: bool,
    /// Main modes of each variant, where speed and a length of the road are varied and nothing else.
    pub natural_modes: Vec<Vec<NaturalMode>>,
    /// Of each table of seats in use, the error of a seat's rotation where each seat is left out of it in turn: the
    /// largest, and that of the median.
    pub seat_table_errors: Vec<[f64; 2]>,
    /// The designs, in the order of [`Study::points`](crate::Study::points); where there is a summary, some of them.
    pub rows: Vec<Row>,
    /// What an uncertainty study says.
    pub uncertainty: Option<Uncertainty>,
    /// Designs of equal axle mass, in the order of the masses asked for.
    pub constant_mass: Vec<EqualMass>,
    /// Warnings of the designs and of their rides, those of most designs first.
    pub warnings: Vec<DesignWarning>,
    /// All designs in brief, where they are too many to be listed; then the rows are a selection.
    pub summary: Option<StudySummary>,
}

/// What a ride is called.
#[derive(Debug, Clone, PartialEq)]
pub struct RideName {
    /// Name of the ride in results.
    pub name: String,
    /// Name of the road.
    pub road: String,
    /// Speed, m/s; `None` when it is varied.
    pub speed: Option<f64>,
}

/// A design and its result.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Place of its variant in [`StudyOutcome::variants`].
    pub variant: usize,
    /// Values of [`StudyOutcome::varied`], SI.
    pub values: Vec<f64>,
    /// Its readings, one for each of [`StudyOutcome::measures`], SI, NaN where there is none; or why there are none.
    pub result: Result<Box<[f64]>, String>,
}

/// Designs of equal axle mass, at most one of each line.
#[derive(Debug, Clone, PartialEq)]
pub struct EqualMass {
    /// Mass of the bare axle that was asked for, kg.
    pub mass: f64,
    /// Designs that have it; lines that do not reach it are left out.
    pub points: Vec<Row>,
}

impl StudyOutcome {
    /// Designs that meet every limit with their value of what they are ranked by, largest first; none without such a value.
    pub fn ranked(&self) -> Vec<(&Row, f64)> {
        let Some(measure) = &self.ranked_by else { return Vec::new() };
        let mut ranked: Vec<(&Row, f64)> = self
            .rows
            .iter()
            .filter(|row| self.meets(row))
            .filter_map(|row| Some((row, row.value(measure)?)))
            .collect();
        ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
        ranked
    }

    /// How many designs there are, listed or not.
    pub fn designs(&self) -> usize {
        self.summary.as_ref().map_or(self.rows.len(), |summary| summary.designs)
    }

    /// How many of them meet every limit.
    pub fn meeting(&self) -> usize {
        let listed = || self.rows.iter().filter(|row| self.meets(row)).count();
        self.summary.as_ref().map_or_else(listed, |summary| summary.meeting)
    }

    /// The result of a name of the static load case.
    pub fn standing(&self, name: &str) -> Option<&Measure> {
        self.measures.iter().find(|measure| measure.ride.is_none() && measure.name == name)
    }

    /// The result of a name of one ride.
    pub fn riding(&self, ride: usize, name: &str) -> Option<&Measure> {
        self.measures.iter().find(|measure| measure.ride == Some(ride) && measure.name == name)
    }

    /// The design that variants side by side are compared with.
    pub fn baseline(&self) -> Option<&Row> {
        let StudyKind::SideBySide { baseline } = self.kind else { return None };
        self.rows.get(baseline)
    }

    /// Whether a design meets every limit; one without a result does not.
    pub fn meets(&self, row: &Row) -> bool {
        self.limits.iter().all(|limit| limit.is_met(row, &self.measures))
    }

    /// Why a design has no result, or why a result by an expression has no number in it.
    pub fn reason(&self, row: &Row) -> Option<String> {
        if let Err(reason) = &row.result {
            return Some(reason.clone());
        }
        let missing = self.measures.iter().filter(|own| row.value(own).is_none());
        let each: Vec<String> = missing.filter_map(|own| self.why_missing(own, row)).collect();
        (!each.is_empty()).then(|| each.join("; "))
    }

    /// Why a result by an expression has no number; none of another result.
    fn why_missing(&self, measure: &Measure, row: &Row) -> Option<String> {
        let Measure { name, meaning, .. } = measure;
        let mut used = measure.uses.as_ref()?.iter().map(|place| &self.measures[*place]);
        Some(match used.find(|own| row.value(own).is_none()) {
            Some(none) => format!("{name} has no value, because {} has none", none.name),
            None => format!("{name} is not a number: {meaning}"),
        })
    }

    /// The rows in lines along the key that varies fastest: same variant, same values of the other keys; in a sample, a line
    /// of each variant.
    pub fn lines(&self) -> impl Iterator<Item = &[Row]> {
        let whole = self.rows.len() / self.variants.len().max(1);
        let own = self.varied.last().map_or(1, |last| last.values.len());
        self.rows.chunks(if self.is_grid { own } else { whole }.max(1))
    }
}

impl Row {
    /// A result of the design, SI; none where it has none.
    pub fn value(&self, measure: &Measure) -> Option<f64> {
        let readings = self.result.as_ref().ok()?;
        readings.get(measure.place).copied().filter(|value| value.is_finite())
    }

    /// Whether another row is of the same line: same variant, same values of all keys but the last.
    pub fn is_in_line_with(&self, other: &Row) -> bool {
        let fixed = |row: &Row| row.values.len().saturating_sub(1);
        self.variant == other.variant && self.values[..fixed(self)] == other.values[..fixed(other)]
    }
}
