//! `axlebow tire` of several axles, tires or offsets: which tire forgives which axle.

use axlebow_model::{Model, TireFile};
use axlebow_report::plot::compatibility_figure;
use axlebow_report::{InventedInput, json, table};
use axlebow_study::{Compatibility, TableAxle};
use axlebow_units::Kind;

use super::flex::chosen;
use super::tire::{duty_card, in_duty};
use crate::args::Tire;
use crate::failure::Failure;
use crate::output::Shown;
use crate::{input, output};

/// The load case of the table where none is asked for.
const CASE: &str = "rated-load";

/// Whether more than one face was asked for.
pub fn is_asked(arguments: &Tire) -> bool {
    !arguments.others.is_empty() || arguments.tires.len() > 1 || !arguments.offsets.is_empty()
}

pub fn run(arguments: &Tire) -> Result<(), Failure> {
    if arguments.drive.over.is_some() {
        let text = "--over takes one model and at most one --tire; the table of several is of a load case";
        return Err(Failure::Input(text.to_owned()));
    }
    if arguments.cases.len() > 1 {
        return Err(Failure::Input(
            "the table of several models, tires or offsets is of one --case".to_owned(),
        ));
    }
    let mut models = vec![in_duty(input::model(&arguments.model)?, arguments)];
    for path in &arguments.others {
        models.push(in_duty(input::plain_model(path)?, arguments));
    }
    let tires: Vec<TireFile> =
        arguments.tires.iter().map(|path| input::tire(path)).collect::<Result<_, _>>()?;
    let mut card = duty_card(input::card(&models[0], &arguments.model), arguments);
    card.add_input(InventedInput::OtherAxle, models[1..].iter().any(|model| model.invented));
    card.add_input(InventedInput::Tire, tires.iter().any(|tire| tire.invented));
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let outcome = table_of(arguments, &models, tires)?.run()?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(compatibility_figure(&outcome, &card)?.with_warnings(&outcome.warnings))
    })?;
    let page = || table::compatibility(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::compatibility_document(&outcome, &card))
}

fn table_of(arguments: &Tire, models: &[Model], tires: Vec<TireFile>) -> Result<Compatibility, Failure> {
    let name = arguments.cases.first().map_or(CASE, String::as_str).to_owned();
    let axle = |model: &Model| -> Result<TableAxle, Failure> {
        let case = chosen(model, std::slice::from_ref(&name))?.swap_remove(0);
        Ok(TableAxle { name: model.name.clone(), axle: model.axle.clone(), case })
    };
    Ok(Compatibility {
        axles: models.iter().map(axle).collect::<Result<_, Failure>>()?,
        tires,
        offsets: arguments.offsets.iter().map(|text| offset(text)).collect::<Result<_, Failure>>()?,
    })
}

/// An offset of the wheels, m, positive outboard.
fn offset(text: &str) -> Result<f64, Failure> {
    if text.trim() == "zeroset" {
        return Ok(0.0);
    }
    Ok(input::quantity("--offset", text, Kind::Length)?.0)
}
