//! The numbers of a study's designs as named columns.

use axlebow_study::{Choice, Measure, Row, StudyKind, StudyOutcome, Varied};

use crate::words::study::share;

/// A column of a table of designs: its name with its SI unit, and what stands in it.
pub(crate) struct StudyColumn<'o> {
    pub heading: String,
    from: Source<'o>,
}

enum Source<'o> {
    /// Value of a varied key, by its place.
    Varied(usize),
    /// Choice of a catalogue, by the place of its key.
    Choice(&'o [Choice], usize),
    Result(&'o Measure),
    /// A result as a share of the baseline's.
    OfBaseline(&'o Measure),
    /// Whether every limit is met.
    Limits(&'o StudyOutcome),
}

impl StudyColumn<'_> {
    /// What stands there for a design as a word, if it is no number.
    pub fn word(&self, row: &Row) -> Option<&str> {
        match self.from {
            Source::Choice(choices, place) => {
                choices.get(row.values[place] as usize).map(|choice| choice.name.as_str())
            }
            Source::Limits(outcome) => Some(if outcome.meets(row) { "yes" } else { "no" }),
            _ => None,
        }
    }

    /// What stands there for a design as a number, SI: of a choice its place from 0, of limits 1 where all are met.
    pub fn value(&self, row: &Row, baseline: Option<&Row>) -> Option<f64> {
        match self.from {
            Source::Varied(place) | Source::Choice(_, place) => row.values.get(place).copied(),
            Source::Limits(outcome) => Some(f64::from(u8::from(outcome.meets(row)))),
            Source::Result(measure) => row.value(measure),
            Source::OfBaseline(measure) => share(row.value(measure), baseline?.value(measure)),
        }
    }

    /// Whether few values come again and again in it.
    #[cfg(feature = "parquet")]
    pub fn is_repeating(&self) -> bool {
        matches!(self.from, Source::Varied(_) | Source::Choice(..) | Source::Limits(_))
    }
}

/// The varied keys, then the results, then whether limits are met, if there are any; side by side, each result is followed by
/// its share of the baseline's.
pub(crate) fn study_columns(outcome: &StudyOutcome) -> Vec<StudyColumn<'_>> {
    let varied = outcome.varied.iter().enumerate().map(|(place, varied)| {
        let heading = varied_heading(varied);
        let from = match varied.choices.as_slice() {
            [] => Source::Varied(place),
            choices => Source::Choice(choices, place),
        };
        StudyColumn { heading, from }
    });
    let is_beside = matches!(outcome.kind, StudyKind::SideBySide { .. });
    let results = outcome.measures.iter().flat_map(move |measure| {
        let heading = heading(outcome, measure);
        let shares = format!("{heading}_of_baseline");
        let own = StudyColumn { heading, from: Source::Result(measure) };
        let share = is_beside.then_some(StudyColumn { heading: shares, from: Source::OfBaseline(measure) });
        [own].into_iter().chain(share)
    });
    let limits = StudyColumn { heading: "meets_limits".to_owned(), from: Source::Limits(outcome) };
    varied.chain(results).chain((!outcome.limits.is_empty()).then_some(limits)).collect()
}

/// A varied key with its SI unit, such as `tube.wall (m)`.
pub(crate) fn varied_heading(varied: &Varied) -> String {
    match varied.kind.si() {
        "" => varied.path.clone(),
        unit => format!("{} ({unit})", varied.path),
    }
}

fn heading(outcome: &StudyOutcome, measure: &Measure) -> String {
    let ride = measure.ride.and_then(|ride| outcome.rides.get(ride));
    ride.map_or(measure.key(), |ride| format!("{}.{}", ride.name, measure.key()))
}
