//! `axlebow life`.

use axlebow_axle::LifeOptions;
use axlebow_report::plot::life_figure;
use axlebow_report::{csv, json, table};

use crate::args::Life;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Life) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    let mut card = input::card(&model, &arguments.model);
    let file = input::duty(&arguments.duty, &mut card)?;
    let refused = |error: axlebow_model::ModelError| Failure::Input(format!("duty {}: {error}", file.name));
    let duty = file.duty(&model.axle).map_err(refused)?;
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.model.page])?;
    let ask = LifeOptions::from(&model.strength);
    let outcome = axlebow_axle::life(&model.axle, &duty, ask)?;
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
