//! `axlebow explain`.

use axlebow_model::{CaseSheet, given_file};
use axlebow_report::plot::explain_figure;
use axlebow_report::{ModelCard, csv, json, table};
use axlebow_study::{WearCause, explain};
use std::path::Path;

use crate::args::Explain;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Explain) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.page)?;
    let sheet = sheet(&arguments.sheet)?;
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.page])?;
    let card = card(&sheet, arguments);
    let outcome = explain(&sheet)?;
    let picture =
        output::picture(&arguments.plot, &arguments.page, &card, || Ok(explain_figure(&outcome, &card)?))?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &[]);
        output::write_file(path, (head + &csv::explain(&outcome)).as_bytes())?;
    }
    let page = || table::explain(&outcome, &card).with_figures(picture);
    let shown = Shown { json: arguments.json, page: &arguments.page };
    shown.print(&card, page, || json::explain_document(&outcome, &card))?;
    Ok(Exit::Done)
}

fn sheet(path: &Path) -> Result<CaseSheet, Failure> {
    let path = given_file(path, "toml");
    let bytes = input::read_file(&path)?;
    let folder = path.parent().unwrap_or(Path::new(""));
    CaseSheet::from_bytes(&bytes, (&path.display().to_string(), folder), &WearCause::words())
        .map_err(|problems| input::misread(problems, &bytes, input::FileKind::Case))
}

/// What results say of the sheet and its axle.
fn card(sheet: &CaseSheet, arguments: &Explain) -> ModelCard {
    ModelCard {
        name: sheet.name.clone(),
        hash: sheet.hash.clone(),
        settings: vec![format!("axle {}", sheet.model.name)],
        assumed: sheet.assumed.iter().map(|used| input::assumed("", used)).collect(),
        system: arguments.units.map_or(sheet.system, Into::into),
        invented: sheet.invented || sheet.model.invented,
        typical: sheet.model.typical.clone(),
        invented_inputs: Vec::new(),
    }
}
