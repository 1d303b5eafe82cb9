//! `axlebow beam`.

use std::path::Path;

use axlebow_beam::{BeamError, BeamOutcome, work_out};
use axlebow_model::{BEAM, BeamFile, given_file, read_bytes};
use axlebow_report::plot::{beam_figure, beam_response_figure, convergence_figure};
use axlebow_report::{ModelCard, Svg, csv, json, table};

use crate::args::Beam;
use crate::failure::{Exit, Failure};
use crate::input::{self, FileKind};
use crate::output::{self, Shown};

const NO_ERRORS: &str = "--error-plot: every error is rounding, so that there is nothing to draw; choose another --element, \
     or more than one number of --elements";

const NO_RESPONSE: &str =
    "--response-plot: the file has no force that moves or shakes; give it `[moving]` or `[shaking]`";

pub fn run(arguments: &Beam) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.page)?;
    output::check_picture(arguments.error_plot.as_deref())?;
    output::check_picture(arguments.response_plot.as_deref())?;
    let file = read(&arguments.file, &arguments.changes)?;
    output::check_places(&[
        &arguments.csv,
        &arguments.plot,
        &arguments.response_plot,
        &arguments.error_plot,
        &arguments.page,
    ])?;
    let card = card(&file, arguments);
    let mut options = file.options;
    options.mesh.element = arguments.element.into();
    options.convergence = arguments.elements.iter().map(|count| usize::from(*count)).collect();
    let outcome = work_out(file.line, &options).map_err(failure)?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &[]);
        output::write_file(path, (head + &csv::beam(&outcome)).as_bytes())?;
    }
    let pictures = pictures(arguments, &outcome, &card)?;
    let page = || table::beam(&outcome, &card).with_figures(pictures);
    let shown = Shown { json: arguments.json, page: &arguments.page };
    shown.print(&card, page, || json::beam_document(&outcome, &card))?;
    Ok(if outcome.passed() { Exit::Done } else { Exit::CheckFails })
}

/// A beam file with changes made in it.
pub(super) fn read(path: &Path, changes: &[String]) -> Result<BeamFile, Failure> {
    let path = given_file(path, "toml");
    let bytes = input::read_file(&path)?;
    let mut document = read_bytes(&bytes, &path.display().to_string(), &BEAM)
        .map_err(|problems| input::misread(problems, &bytes, FileKind::Beam))?;
    for change in changes {
        input::set(&mut document, "--set", change)?;
    }
    let file = BeamFile::of(&document).map_err(|problems| input::changed(problems, "--set", changes))?;
    input::say_notes(file.notes.iter().cloned());
    Ok(file)
}

fn card(file: &BeamFile, arguments: &Beam) -> ModelCard {
    let mut settings: Vec<String> = arguments.changes.iter().map(|change| format!("set {change}")).collect();
    settings.push(format!("element {}", axlebow_beam::Element::from(arguments.element).word()));
    ModelCard {
        name: file.name.clone(),
        hash: file.hash.clone(),
        settings,
        assumed: file.assumed.iter().map(|used| input::assumed("", used)).collect(),
        system: arguments.units.map_or(file.system, Into::into),
        invented: file.invented,
        typical: Vec::new(),
        invented_inputs: Vec::new(),
    }
}

fn pictures(arguments: &Beam, outcome: &BeamOutcome, card: &ModelCard) -> Result<Vec<Svg>, Failure> {
    let page = &arguments.page;
    let bent = output::picture(&arguments.plot, page, card, || Ok(beam_figure(outcome, card)?))?;
    let mut pictures: Vec<Svg> = bent.into_iter().collect();
    match beam_response_figure(outcome, card)? {
        Some(drawn) => pictures.extend(output::picture(&arguments.response_plot, page, card, || Ok(drawn))?),
        None if arguments.response_plot.is_some() => return Err(Failure::Input(NO_RESPONSE.to_owned())),
        None => {}
    }
    if let Some(convergence) = &outcome.convergence {
        match convergence_figure(convergence, card)? {
            Some(drawn) => pictures.extend(output::picture(&arguments.error_plot, page, card, || Ok(drawn))?),
            None if arguments.error_plot.is_some() => return Err(Failure::Input(NO_ERRORS.to_owned())),
            None => {}
        }
    }
    Ok(pictures)
}

fn failure(error: BeamError) -> Failure {
    match error {
        BeamError::Mechanism { .. } | BeamError::Contact { .. } | BeamError::Unsolvable { .. } => {
            Failure::NoSolution(error.to_string())
        }
        _ => Failure::Input(error.to_string()),
    }
}
