//! `axlebow fit`.

use axlebow_model::{Document, Model, ReadingSheet, given_file};
use axlebow_report::plot::fit_figure;
use axlebow_report::{json, table};
use axlebow_study::{FitOutcome, fit, usual_unknowns};
use std::path::{Path, PathBuf};

use crate::args::Fit;
use crate::failure::{Exit, Failure};
use crate::{input, output};

pub fn run(arguments: &Fit) -> Result<Exit, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    let path = fitted_path(arguments)?;
    let document = input::plain_document(&arguments.model)?;
    let model = Model::of(&document)?;
    let sheet = sheet(arguments, &model)?;
    let (notes, readings) = (sheet.notes(), sheet.readings);
    input::say_notes(model.notes.iter().chain(&notes).cloned());
    let unknowns = if arguments.unknowns.is_empty() {
        usual_unknowns(&document, &readings)
    } else {
        arguments.unknowns.clone()
    };
    output::check_places(&[&arguments.plot, &Some(path.clone())])?;
    let outcome = fit(&document, &readings, &unknowns).map_err(|error| Failure::Input(error.to_string()))?;
    let mut card = input::card_of(&model, arguments.units);
    card.settings.extend(notes);
    if let Some(path) = &arguments.plot {
        output::write_picture(
            path,
            fit_figure(&outcome, &card)?.with_warnings(&outcome.estimate.warnings),
            &card,
        )?;
    }
    let doubt = outcome.estimate.doubt();
    if doubt.is_none() || arguments.doubtful {
        output::write_file(&path, fitted_text(&document, &outcome, arguments)?.as_bytes())?;
    }
    output::print(&match arguments.json {
        true => json::fit_document(&outcome, &card),
        false => table::fit(&outcome, &card).text(),
    })?;
    Ok(doubt.map_or(Exit::Done, |why| doubtful(why, arguments)))
}

/// The readings and the removals that were filled in.
fn sheet(arguments: &Fit, model: &Model) -> Result<ReadingSheet, Failure> {
    let read = |path: &Option<PathBuf>, of: Reader| {
        let Some(path) = path.as_ref().map(|path| given_file(path, "csv")) else { return Ok(None) };
        let bytes = input::read_file(&path)?;
        Ok::<_, Failure>(Some(of(&bytes, &path.display().to_string(), model)?))
    };
    let readings = read(&arguments.readings, ReadingSheet::from_bytes)?;
    let removals = read(&arguments.removals, ReadingSheet::of_removals)?;
    // One of both was asked for.
    Ok(readings.into_iter().chain(removals).reduce(ReadingSheet::and).unwrap_or_default())
}

/// A way to read a sheet.
type Reader = fn(&[u8], &str, &Model) -> Result<ReadingSheet, axlebow_model::Problems>;

/// Says why no model was written, or why it is not to be gone by.
fn doubtful(why: &str, arguments: &Fit) -> Exit {
    let then = match arguments.doubtful {
        true => "the fitted model was written all the same",
        false => "no model was written; see the warnings, or write it all the same by --doubtful",
    };
    output::say(&format!("{why}: {then}"));
    Exit::CheckFails
}

/// Where the fitted model goes: by default never over a file.
fn fitted_path(arguments: &Fit) -> Result<PathBuf, Failure> {
    output::check_kind("--output", arguments.output.as_deref(), "toml")?;
    if let Some(path) = &arguments.output {
        return Ok(path.clone());
    }
    let model = given_file(&arguments.model, "toml");
    let stem = model.file_stem().unwrap_or_default().to_string_lossy();
    let path = model.with_file_name(format!("{stem}-fitted.toml"));
    if path.exists() {
        let path = path.display();
        return Err(Failure::Input(format!("{path} exists; give another file by -o")));
    }
    Ok(path)
}

/// The model's text with the fitted values, under a word on where they are from.
fn fitted_text(document: &Document, outcome: &FitOutcome, arguments: &Fit) -> Result<String, Failure> {
    let values: Vec<(String, f64)> =
        outcome.unknowns.iter().map(|own| (own.unknown.path.clone(), own.value)).collect();
    let text = document.rewritten(&values).map_err(|error| Failure::Input(error.to_string()))?;
    let paths: Vec<&str> = values.iter().map(|(path, _)| path.as_str()).collect();
    let name =
        |path: &Path| path.file_name().unwrap_or_default().to_string_lossy().replace(char::is_control, "?");
    let sheets = arguments.readings.iter().chain(&arguments.removals);
    let sheets: Vec<String> = sheets.map(|sheet| name(&given_file(sheet, "csv"))).collect();
    let text = format!(
        "# Fitted by axlebow fit to the readings {} from the model {}: {}.\n# Fitted values hold with their intervals only; see \
         the fit.\n{text}",
        sheets.join(" and "),
        name(&given_file(&arguments.model, "toml")),
        paths.join(", ")
    );
    // What is written must be a model as it stands.
    Model::from_bytes(text.as_bytes(), "the fitted model")?;
    Ok(text)
}
