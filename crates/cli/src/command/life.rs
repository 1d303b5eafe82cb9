//! `axlebow life`.

use axlebow_axle::LifeOptions;
use axlebow_model::{DutyFile, given_file};
use axlebow_report::plot::life_figure;
use axlebow_report::{InventedInput, csv, json, table};

use crate::args::Life;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Life) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    let path = given_file(&arguments.duty, "toml");
    let bytes = input::read_file(&path)?;
    let file = DutyFile::from_bytes(&bytes, &path.display().to_string()).map_err(Failure::File)?;
    let refused = |error: axlebow_model::ModelError| Failure::Input(format!("{}: {error}", path.display()));
    let duty = file.duty(&model.axle).map_err(refused)?;
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.model.page])?;
    let ask = LifeOptions::with_reliability(model.strength.bearing_reliability);
    let outcome = axlebow_axle::life(&model.axle, &duty, ask)?;
    let mut card = input::card(&model, &arguments.model);
    card.assumed.extend(file.assumed.iter().map(|assumed| input::assumed("duty.", assumed)));
    card.settings.push(format!("duty {}", path.display()));
    card.add_input(InventedInput::Duty, file.invented);
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &outcome.warnings);
        output::write_file(path, (head + &csv::life(&outcome)).as_bytes())?;
    }
    let picture =
        output::picture(&arguments.plot, &arguments.model.page, &card, || Ok(life_figure(&outcome, &card)?))?;
    let page = || table::life(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::life_document(&outcome, &card))?;
    Ok(Exit::Done)
}
