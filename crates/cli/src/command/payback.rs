//! `axlebow study` of a payback.

use axlebow_model::given_file;
use axlebow_report::json::payback_document;
use axlebow_report::plot::payback_figure;
use axlebow_report::{InventedInput, ModelCard, csv, table};
use axlebow_study::{PaybackError, PaybackStudy};
use std::path::{Path, PathBuf};

use crate::args::{Study, StudyOutput};
use crate::failure::{Exit, Failure};
use crate::input;
use crate::output::{self, Shown};

/// Whether the study file asks for a payback.
pub fn is_asked(arguments: &Study) -> Result<bool, Failure> {
    Ok(PaybackStudy::is_asked(&input::read_file(&path(arguments))?))
}

/// Runs a payback.
pub fn run(arguments: &Study) -> Result<Exit, Failure> {
    check_options(arguments)?;
    let study = prices(&arguments.input.study)?;
    let StudyOutput { plot, page, json, csv, parquet, plain_csv, .. } = &arguments.output;
    output::check_places(&[csv, parquet, plot, page])?;
    let card = card(&study, arguments);
    let outcome = study.run().map_err(|error| match error {
        PaybackError::Axle(error) => Failure::from(error),
        other => Failure::Input(other.to_string()),
    })?;
    let picture = output::picture(plot, page, &card, || Ok(payback_figure(&outcome, &card)?))?;
    if let Some(path) = csv {
        let head = output::csv_head(*plain_csv, Some(&card), &outcome.warnings);
        output::write_file(path, (head + &csv::payback(&outcome)).as_bytes())?;
    }
    let result = || table::payback(&outcome, &card).with_figures(picture);
    Shown { json: *json, page }.print(&card, result, || payback_document(&outcome, &card))?;
    Ok(Exit::Done)
}

fn path(arguments: &Study) -> PathBuf {
    given_file(&arguments.input.study, "toml")
}

/// The payback study of a file.
pub fn prices(path: &Path) -> Result<PaybackStudy, Failure> {
    let path = given_file(path, "toml");
    let bytes = input::read_file(&path)?;
    let folder = path.parent().unwrap_or(Path::new(""));
    let study =
        PaybackStudy::from_bytes(&bytes, &path.display().to_string(), folder).map_err(Failure::File)?;
    study.files.iter().for_each(|path| input::remember_read(path));
    input::say_notes(study.notes.iter().cloned());
    Ok(study)
}

fn card(study: &PaybackStudy, arguments: &Study) -> ModelCard {
    let mut card = input::card_of(&study.base, arguments.output.units);
    card.settings = study.notes.clone();
    let draws = &study.draws;
    card.settings.push(format!("sample: {} draws, seed {}", draws.count, draws.seed));
    card.assumed.extend(study.assumed.iter().map(|used| input::assumed("study: ", used)));
    card.add_input(InventedInput::OtherAxle, study.remedied.invented);
    card
}

/// A payback has two axles, and no designs that could be thinned, shown or saved.
fn check_options(arguments: &Study) -> Result<(), Failure> {
    let asked = [
        ("--resume", arguments.resume),
        ("--restart", arguments.restart),
        ("--part", arguments.part.is_some()),
        ("--dry-run", arguments.dry_run),
        ("--parquet", arguments.output.parquet.is_some()),
        ("--show", !arguments.input.show.is_empty()),
    ];
    if let Some((option, _)) = asked.iter().find(|(_, is_asked)| *is_asked) {
        let text = format!(
            "{option}: a payback compares two axles and has no list of designs; --csv writes its inputs"
        );
        return Err(Failure::Input(text));
    }
    if arguments.input.coarse.is_some() {
        input::say_notes(["--coarse has no say in a payback, which has two axles".to_owned()]);
    }
    Ok(())
}
