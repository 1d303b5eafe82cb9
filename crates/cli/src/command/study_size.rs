//! The size of a study, before it runs.

use std::time::Duration;

use axlebow_report::{ModelCard, table};
use axlebow_study::{MOST_DESIGNS, Part, Study as StudyFile, threads};

use crate::failure::Failure;
use crate::output;

/// Seconds beyond which a run tells its size first.
const LONG: f64 = 3.0;
/// Designs below which a study that only stands is not worth the trial.
const FEW: usize = 2_000;
/// How long the designs of a dry run are tried.
const DRY_RUN: Duration = Duration::from_millis(400);
/// The same before a run, which all cores wait for.
const TRIAL: Duration = Duration::from_millis(25);

/// Refuses more designs than anybody wants by accident.
pub fn check(study: &StudyFile, large: bool) -> Result<(), Failure> {
    let count = study.count();
    if large || count <= MOST_DESIGNS as usize {
        return Ok(());
    }
    Err(Failure::Input(format!(
        "the study has {count} designs; accepted: at most {MOST_DESIGNS}, or --large; --dry-run tells how long \
         they take, --coarse takes fewer"
    )))
}

/// What a study will do, as a text.
pub fn told(study: &StudyFile, card: &ModelCard) -> String {
    table::study_size(study, (&study.design_cost(DRY_RUN), threads()), card).text()
}

/// Tells the size of a long study, or of a long part of it, on standard error.
pub fn announce(study: &StudyFile, part: Option<Part>) {
    let designs = study.head(part.unwrap_or(Part::WHOLE)).own_designs();
    if study.rides.is_empty() && designs < FEW {
        return;
    }
    let (cost, threads) = (study.design_cost(TRIAL), threads());
    if designs as f64 * cost.time.as_secs_f64() > LONG * threads as f64 {
        let part = part.map_or(String::new(), |part| format!("part {part}: "));
        output::say(&format!("{part}{}", table::study_time(designs, (&cost, threads))));
    }
}
