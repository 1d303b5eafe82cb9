//! `axlebow study`.

use axlebow_study::{Results, Study as StudyFile};

use super::{payback, search, study_input, study_output, study_saving, study_size};
use crate::args::Study;
use crate::failure::{Exit, Failure};
use crate::output;

pub fn run(arguments: &Study) -> Result<Exit, Failure> {
    study_output::check(&arguments.output)?;
    if payback::is_asked(arguments)? {
        return payback::run(arguments);
    }
    let study = study_input::study(&arguments.input)?;
    let card = study_output::card(&study, arguments.output.units);
    if arguments.dry_run {
        output::print(&study_size::told(&study, &card))?;
        return Ok(Exit::Done);
    }
    study_output::check_places(&arguments.output)?;
    study_size::check(&study, arguments.large)?;
    if study.search.is_some() {
        return search::run(&study, arguments, &card);
    }
    study_size::announce(&study, arguments.part);
    run_designs(&study.ready(), arguments)
}

/// Runs every design, or those of a part.
fn run_designs(study: &StudyFile, arguments: &Study) -> Result<Exit, Failure> {
    let saved = study_saving::saved(study, arguments)?;
    if arguments.part.is_some() {
        output::say(&format!("wrote {}", saved.path().display()));
        return Ok(Exit::Done);
    }
    let results = Results::of(vec![saved])?;
    let written = study_output::write(study, &results, &arguments.output)?;
    if let Some(path) = study_saving::path(&arguments.output, None) {
        std::fs::remove_file(&path).map_err(|error| Failure::on_file("remove", &path, &error))?;
    }
    output::print(&written.text)?;
    written.picture?;
    Ok(Exit::Done)
}
