//! `axlebow tire`.

use axlebow_axle::tread::Duty;
use axlebow_axle::{Axle, Ride, TireRideOutcome, tires, tires_over};
use axlebow_model::{Model, TireFile};
use axlebow_report::plot::tire_figure;
use axlebow_report::{InventedInput, ModelCard, json, table};

use super::flex::chosen;
use super::tire_table;
use crate::args::Tire;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output, road_input};

pub fn run(arguments: &Tire) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    if tire_table::is_asked(arguments) {
        tire_table::run(arguments)?;
        return Ok(Exit::Done);
    }
    let model = in_duty(input::model(&arguments.model)?, arguments);
    let cases = chosen(&model, &arguments.cases)?;
    let mut card = duty_card(input::card(&model, &arguments.model), arguments);
    let tire = arguments.tires.first().map(|path| input::tire(path)).transpose()?;
    let axle = fitted(&model.axle, tire.as_ref(), &mut card)?;
    let ride = road_input::ride(&arguments.drive, &axle, &mut card)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let outcome = tires(&axle, &cases)?;
    let ride = ride.map(|ride| ridden(&axle, &ride)).transpose()?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        let figure = tire_figure(&outcome, ride.as_ref(), &card)?;
        let of_ride = ride.iter().flat_map(|ride| ride.warnings.clone());
        let warnings: Vec<_> = outcome.warnings.iter().cloned().chain(of_ride).collect();
        Ok(figure.with_warnings(&warnings))
    })?;
    let page = || table::tire(&outcome, ride.as_ref(), &card).with_figures(picture);
    Shown::from(&arguments.model)
        .print(&card, page, || json::tire_document(&outcome, ride.as_ref(), &card))?;
    Ok(Exit::Done)
}

/// The model in the duty that was asked for, or its own.
pub(super) fn in_duty(model: Model, arguments: &Tire) -> Model {
    match arguments.duty.and_then(Duty::usual) {
        Some(duty) => Model { axle: model.axle.in_duty(duty), ..model },
        None => model,
    }
}

/// What the card says of the duty.
pub(super) fn duty_card(mut card: ModelCard, arguments: &Tire) -> ModelCard {
    if let Some(duty) = arguments.duty {
        card.assumed.retain(|used| used.path != "running.duty");
        card.settings.push(format!("duty {}", duty.word()));
    }
    card
}

/// The axle on the tires that were asked for, and what the card says of them.
fn fitted(axle: &Axle, tire: Option<&TireFile>, card: &mut ModelCard) -> Result<Axle, Failure> {
    let Some(tire) = tire else { return Ok(axle.clone()) };
    card.name += &format!(", on {} tires", tire.name);
    card.add_input(InventedInput::Tire, tire.invented);
    card.assumed.retain(|used| !used.path.contains(".tread."));
    card.assumed.extend(tire.assumed.iter().map(|used| input::assumed("tire.", used)));
    Ok(tire.fitted(axle)?)
}

/// Wear over a road.
fn ridden(axle: &Axle, ride: &Ride) -> Result<TireRideOutcome, Failure> {
    let driven = axlebow_axle::ride(axle, ride)?;
    Ok(tires_over(axle, ride, &driven)?)
}
