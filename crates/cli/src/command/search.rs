//! `axlebow study` of a search.

use axlebow_report::json::search_document;
use axlebow_report::plot::search_figure;
use axlebow_report::{ModelCard, table};
use axlebow_study::Study as StudyFile;

use super::progress::Progress;
use crate::args::{Study, StudyOutput};
use crate::failure::{Exit, Failure};
use crate::output::{self, Shown};

/// Most combinations of listed values that are tried.
const MOST_COMBINATIONS: usize = 1_000_000;
/// Most of them, times starts, where continuous values are searched in each.
const MOST_DESCENTS: usize = 20_000;

/// Runs a search; exit code 1 where no design meets the limits.
pub fn run(study: &StudyFile, arguments: &Study, card: &ModelCard) -> Result<Exit, Failure> {
    check_size(study)?;
    check_files(arguments)?;
    let progress = Progress::over(study.count());
    let outcome = study.search(&|done, of| progress.at_of(done, of));
    progress.end();
    let outcome = outcome.ok_or_else(|| Failure::Input("the study asks for no search".to_owned()))?;
    let StudyOutput { plot, page, json, csv, .. } = &arguments.output;
    if plot.is_some() && study.search.as_ref().is_some_and(|ask| ask.against.is_empty()) {
        let why = "a search is drawn where it trades; give `against` in `[search]`";
        return Err(Failure::Input(format!("--plot: {why}")));
    }
    let picture = match outcome.front.is_empty() {
        true => None,
        false => {
            let draw = || Ok(search_figure(&outcome, card)?);
            output::picture(plot, page, card, draw)?
        }
    };
    if let Some(path) = csv {
        let head = output::csv_head(arguments.output.plain_csv, Some(card), &[]);
        output::write_file(path, (head + &axlebow_report::csv::search(&outcome)).as_bytes())?;
    }
    let result = || table::search(&outcome, card).with_figures(picture);
    Shown { json: *json, page }.print(card, result, || search_document(&outcome, card))?;
    Ok(if outcome.best.is_some() { Exit::Done } else { Exit::CheckFails })
}

/// A search has no designs in an order that could be saved.
fn check_files(arguments: &Study) -> Result<(), Failure> {
    let asked = [
        ("--resume", arguments.resume),
        ("--restart", arguments.restart),
        ("--part", arguments.part.is_some()),
        ("--parquet", arguments.output.parquet.is_some()),
    ];
    match asked.iter().find(|(_, is_asked)| *is_asked) {
        Some((option, _)) => {
            let text = format!("{option}: a search has none; --csv writes what it found");
            Err(Failure::Input(text))
        }
        None => Ok(()),
    }
}

fn check_size(study: &StudyFile) -> Result<(), Failure> {
    let continuous = study.varied.iter().any(|varied| varied.distribution.is_some());
    let starts = study.search.as_ref().map_or(1, |ask| ask.starts);
    let (count, most, what) = match continuous {
        true => (study.count().saturating_mul(starts), MOST_DESCENTS, "descents (combinations times starts)"),
        false => (study.count(), MOST_COMBINATIONS, "combinations"),
    };
    if count <= most {
        return Ok(());
    }
    let advice = "list fewer values, or make a listed key continuous by `from` and `to` without `points`";
    Err(Failure::Input(format!("the search has {count} {what}; {most} at most are accepted: {advice}")))
}
