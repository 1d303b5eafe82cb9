//! The numbers of a study's designs as named columns.

use axlebow_study::{Measure, Row, StudyKind, StudyOutcome};

use crate::study_words::share;

/// A column of a table of designs: its name with its SI unit, and what stands in it.
pub(crate) struct StudyColumn<'o> {
    pub heading: String,
    from: Source<'o>,
}

enum Source<'o> {
    /// Value of a varied key, by its place.
    Varied(usize),
    Result(&'o Measure),
    /// A result as a share of the baseline's.
    OfBaseline(&'o Measure),
}

impl StudyColumn<'_> {
    /// What stands there for a design, SI.
    pub fn value(&self, row: &Row, baseline: Option<&Row>) -> Option<f64> {
        match self.from {
            Source::Varied(place) => row.values.get(place).copied(),
            Source::Result(measure) => row.value(measure),
            Source::OfBaseline(measure) => share(row.value(measure), baseline?.value(measure)),
        }
    }

    /// Whether few values come again and again in it.
    #[cfg(feature = "parquet")]
    pub fn is_repeating(&self) -> bool {
        matches!(self.from, Source::Varied(_))
    }
}

/// The varied keys, then the results; side by side, each result is followed by its share of the baseline's.
pub(crate) fn study_columns(outcome: &StudyOutcome) -> Vec<StudyColumn<'_>> {
    let varied = outcome.varied.iter().enumerate().map(|(place, varied)| {
        let heading = match varied.kind.si() {
            "" => varied.path.clone(),
            unit => format!("{} ({unit})", varied.path),
        };
        StudyColumn { heading, from: Source::Varied(place) }
    });
    let is_beside = matches!(outcome.kind, StudyKind::SideBySide { .. });
    let results = outcome.measures.iter().flat_map(move |measure| {
        let heading = heading(outcome, measure);
        let shares = format!("{heading}_of_baseline");
        let own = StudyColumn { heading, from: Source::Result(measure) };
        let share = is_beside.then_some(StudyColumn { heading: shares, from: Source::OfBaseline(measure) });
        [own].into_iter().chain(share)
    });
    varied.chain(results).collect()
}

fn heading(outcome: &StudyOutcome, measure: &Measure) -> String {
    let ride = measure.ride.and_then(|ride| outcome.rides.get(ride));
    ride.map_or(measure.key(), |ride| format!("{}.{}", ride.name, measure.key()))
}
