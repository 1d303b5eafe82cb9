//! What a study shows, a sentence each.

use axlebow_study::{Limit, Measure, Row, StudyKind, StudyOutcome, name};
use axlebow_units::Kind;

use super::seat::seat_findings;
use super::study::StudyWords;
use super::uncertainty::uncertainty_findings;
use crate::ModelCard;
use crate::number::Numbers;

/// What a study shows, a sentence each, made from its numbers: the designs that lean least and most, what the
/// best and the worst line do at an equal axle mass, and how many designs have no result. Where there is a summary, it says
/// the first and the last.
///
/// Camber change is that of the left wheel; the less it is, of either sign, the better.
pub fn study_findings(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    let range = match (outcome.kind, words.leads().first()) {
        (StudyKind::SideBySide { .. } | StudyKind::Uncertainty | StudyKind::Search, _) => None,
        (_, None) => words.range(),
        (_, Some(lead)) => words.range_of(lead),
    };
    let seats = seat_findings(&words);
    let others = [range, words.equal_mass()].into_iter().flatten();
    let told = uncertainty_findings(&words);
    if outcome.summary.is_some() {
        return told.into_iter().chain(words.equal_mass()).collect();
    }
    told.into_iter().chain(others).chain(seats).chain(words.limits()).chain(words.failures()).collect()
}

impl StudyWords<'_> {
    fn range(&self) -> Option<String> {
        let (least, most) = self.extremes(&self.outcome.rows)?;
        let whose = if self.sides_alike() { "" } else { " of the left wheel" };
        Some(format!(
            "The least camber change{whose}, {}; the most, {}.",
            self.place_of(least),
            self.place_of(most)
        ))
    }

    fn place_of(&self, row: &Row) -> String {
        format!(
            "{}, is that of {} and an axle mass of {}",
            self.lean(self.standing(row, name::LEFT_CAMBER_CHANGE)),
            self.settings(row),
            self.numbers.full(self.standing(row, name::AXLE_MASS), Kind::Mass),
        )
    }

    /// A row in words: its line, and the value of the key that varies fastest.
    fn settings(&self, row: &Row) -> String {
        let last = self.outcome.varied.last().zip(row.values.last());
        let last = last.map(|(varied, &value)| format!(" with {}", self.setting(varied, value)));
        format!("{}{}", self.line(row), last.unwrap_or_default())
    }

    /// Whose result a row has: that of a variant, if there are several, or that at a setting.
    fn whose(&self, row: &Row) -> String {
        if self.outcome.variants.len() > 1 || row.values.is_empty() {
            return format!("that of {}", self.settings(row));
        }
        let settings = self.outcome.varied.iter().zip(&row.values);
        let settings: Vec<String> = settings.map(|(varied, &value)| self.setting(varied, value)).collect();
        format!("at {}", settings.join(" and "))
    }

    /// The designs in which a measure is least and most, of either sign.
    pub fn range_of(&self, measure: &Measure) -> Option<String> {
        let found = || self.outcome.rows.iter().filter_map(|row| Some((row, row.value(measure)?.abs())));
        let least = found().min_by(|one, other| one.1.total_cmp(&other.1))?;
        // The first of equals, as for the least.
        let most = found().rev().max_by(|one, other| one.1.total_cmp(&other.1))?;
        let [least, most] = [least, most].map(|(row, _)| {
            let value = row.value(measure).unwrap_or(f64::NAN);
            format!("{}, is {}", self.told(measure, value), self.whose(row))
        });
        Some(format!("The least {}, {least}; the most, {most}.", self.measure(measure)))
    }

    /// The line that leans least against the one that leans most, at the middle one of the masses that at
    /// least two lines reach.
    fn equal_mass(&self) -> Option<String> {
        let shared: Vec<_> =
            self.outcome.constant_mass.iter().filter(|equal| equal.points.len() > 1).collect();
        let equal = *shared.get(shared.len() / 2)?;
        let (best, worst) = self.extremes(&equal.points)?;
        let angle = |value: f64| self.numbers.full(value, Kind::Angle);
        let stress = |row: &Row| self.numbers.full(self.standing(row, name::PEAK_STRESS).abs(), Kind::Stress);
        let [less_camber, more_camber] =
            [best, worst].map(|row| self.standing(row, name::LEFT_CAMBER_CHANGE));
        let [less_bending, more_bending] =
            [best, worst].map(|row| self.standing(row, name::LEFT_BENDING).abs());
        let varied = self.outcome.varied.last()?;
        let value = |row: &Row| row.values.last().map_or(0.0, |value| *value);
        Some(format!(
            "At an equal axle mass of {}, {} leans {} less than {} ({} against {}), {} of it in bending of the \
             beam, with {} instead of {} and a peak stress of {} instead of {}.",
            self.mass(equal.mass),
            self.line(best),
            angle(more_camber.abs() - less_camber.abs()),
            self.line(worst),
            self.lean(less_camber),
            self.lean(more_camber),
            angle(more_bending - less_bending),
            self.setting(varied, value(best)),
            self.rounded(value(worst), varied.kind),
            stress(best),
            stress(worst),
        ))
    }

    /// The designs whose left wheel leans least and most.
    fn extremes<'r>(&self, rows: &'r [Row]) -> Option<(&'r Row, &'r Row)> {
        let lean = |row: &Row| self.standing(row, name::LEFT_CAMBER_CHANGE).abs();
        let mut found = None;
        for row in rows.iter().filter(|row| row.result.is_ok()) {
            let (least, most) = found.unwrap_or((row, row));
            found = Some((
                if lean(row) < lean(least) { row } else { least },
                if lean(row) > lean(most) { row } else { most },
            ));
        }
        found
    }

    /// How many designs meet the limits.
    fn limits(&self) -> Option<String> {
        let StudyOutcome { limits, rows, measures, .. } = self.outcome;
        if limits.is_empty() || self.outcome.kind == StudyKind::Uncertainty {
            return None;
        }
        let met = |limit: &Limit| rows.iter().filter(|row| limit.is_met(row, measures)).count();
        let each: Vec<_> = limits.iter().map(|limit| (limit, met(limit))).collect();
        let meeting = rows.iter().filter(|row| self.outcome.meets(row)).count();
        Some(self.limits_met((meeting, rows.len()), &each))
    }

    fn failures(&self) -> Option<String> {
        let failed = || self.outcome.rows.iter().filter(|row| row.result.is_err());
        let first = failed().next()?;
        Some(format!(
            "{} of {} designs have no result; the first is {}: {}.",
            failed().count(),
            self.outcome.rows.len(),
            self.design(first.variant, &first.values),
            first.result.as_ref().err().map_or("", |reason| reason.as_str()),
        ))
    }
}
