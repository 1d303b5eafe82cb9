//! What becomes of the results of a study: files, a picture, and what is printed.

use std::io::Write;
use std::path::Path;

use axlebow_report::plot::study_figure;
use axlebow_report::{InventedInput, ModelCard, csv, json, table};
use axlebow_study::{Results, Study as StudyFile, StudyOutcome};

use crate::args::{StudyOutput, Units};
use crate::failure::Failure;
use crate::output::Shown;
use crate::{input, output};

/// Refuses kinds of files that are not written.
pub fn check(arguments: &StudyOutput) -> Result<(), Failure> {
    output::check_shown(&arguments.plot, &arguments.page)?;
    output::check_parquet(arguments.parquet.as_deref())
}

/// Refuses places that cannot be written, before any work is done.
pub fn check_places(arguments: &StudyOutput) -> Result<(), Failure> {
    output::check_places(&[&arguments.csv, &arguments.parquet, &arguments.plot, &arguments.page])
}

/// What became of results.
pub struct Written {
    /// What is to be printed.
    pub text: String,
    /// Whether the picture was drawn, if one was asked for: one that cannot be must not stop the rest.
    pub picture: Result<(), Failure>,
}

/// Writes the files and the picture.
pub fn write(study: &StudyFile, results: &Results, arguments: &StudyOutput) -> Result<Written, Failure> {
    let card = card(study, arguments.units);
    let outcome = study.outcome_of(results)?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &[]) + &csv::study_heading(&outcome);
        output::stream_file(path, |file| {
            file.write_all(head.as_bytes()).map_err(|error| Failure::on_file("write", path, &error))?;
            write_rows(path, (study, results), &outcome, file)
        })?;
    }
    if let Some(path) = &arguments.parquet {
        write_parquet(path, (study, results), (&outcome, &card))?;
    }
    let picture =
        output::picture(&arguments.plot, &arguments.page, &card, || Ok(study_figure(&outcome, &card)?));
    let (picture, drawn) = match picture {
        Ok(picture) => (picture, Ok(())),
        Err(failure) => (None, Err(failure)),
    };
    let page = || table::study(&outcome, &card).with_figures(picture);
    let shown = Shown { json: arguments.json, page: &arguments.page };
    let text = shown.text(&card, page, || json::study_document(&outcome, &card))?;
    Ok(Written { text, picture: drawn })
}

/// Every design as a line.
fn write_rows(
    path: &Path,
    (study, results): (&StudyFile, &Results),
    outcome: &StudyOutcome,
    file: &mut dyn Write,
) -> Result<(), Failure> {
    let failed = |error: std::io::Error| Failure::on_file("write", path, &error);
    results.in_order(
        |chunk| csv::study_rows(outcome, &study.rows_of(&chunk)),
        |text| file.write_all(text.as_bytes()).map_err(failed),
    )
}

#[cfg(feature = "parquet")]
fn write_parquet(
    path: &Path,
    (study, results): (&StudyFile, &Results),
    (outcome, card): (&StudyOutcome, &ModelCard),
) -> Result<(), Failure> {
    output::stream_file(path, |file| {
        let mut parquet = axlebow_report::parquet::StudyParquet::begin(outcome, card, file)?;
        results.in_order(|chunk| study.rows_of(&chunk), |rows| parquet.add(rows).map_err(Failure::from))?;
        Ok(parquet.end()?)
    })
}

/// Never called: [`check`] refuses first.
#[cfg(not(feature = "parquet"))]
fn write_parquet(_: &Path, _: (&StudyFile, &Results), _: (&StudyOutcome, &ModelCard)) -> Result<(), Failure> {
    Ok(())
}

/// What results say about the models and roads of the study.
pub fn card(study: &StudyFile, units: Option<Units>) -> ModelCard {
    let mut card = input::card_of(&study.base, units);
    card.settings = study.notes.clone();
    card.settings.extend(table::sampling(study));
    card.assumed.extend(study.assumed.iter().map(|assumed| input::assumed("study: ", assumed)));
    if let Some(duty) = &study.duty {
        card.settings.push(format!("duty {}", duty.file.name));
        card.add_input(InventedInput::Duty, duty.file.invented);
        card.assumed.extend(duty.file.assumed.iter().map(|assumed| input::assumed("duty.", assumed)));
    }
    for ride in &study.rides {
        card.add_input(InventedInput::Road, ride.road.invented);
        let prefix = format!("ride {}: road.", ride.name);
        card.assumed.extend(ride.road.assumed.iter().map(|assumed| input::assumed(&prefix, assumed)));
    }
    card
}
