//! `axlebow response`.

use axlebow_axle::{Input, RandomRide, ResponseOptions};
use axlebow_model::RoadFile;
use axlebow_report::plot::response_figure;
use axlebow_report::{InventedInput, csv, json, table};
use axlebow_units::Kind;

use crate::args::{MovedWheels, Response};
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output, road_input};

pub fn run(arguments: &Response) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    let road = arguments.over.as_deref().map(|over| road_input::road(over, &[])).transpose()?;
    let loading = &model.axle.loading;
    let ask = ResponseOptions {
        axle_load: if arguments.unladen { loading.unladen_load } else { loading.rated_load },
        input: arguments.wheels.into(),
        frequencies: [arguments.from, arguments.to],
        points: arguments.points.into(),
        stations: arguments.stations.clone(),
        over: road.as_ref().map(|road| random_ride(road, arguments)).transpose()?,
    };
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.model.page])?;
    let outcome = axlebow_axle::response(&model.axle, &ask)?;
    let mut card = input::card(&model, &arguments.model);
    if let Some(road) = &road {
        card.assumed.extend(road.assumed.iter().map(|assumed| input::assumed("road.", assumed)));
        card.add_input(InventedInput::Road, road.invented);
    }
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(response_figure(&outcome, &card)?.with_warnings(&outcome.warnings))
    })?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &outcome.warnings);
        output::write_file(path, (head + &csv::response(&outcome)).as_bytes())?;
    }
    let page = || table::response(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::response_document(&outcome, &card))?;
    Ok(Exit::Done)
}

fn random_ride(road: &RoadFile, arguments: &Response) -> Result<RandomRide, Failure> {
    let speed = match &arguments.speed {
        Some(text) => input::quantity("--speed", text, Kind::Speed)?.0,
        None => road.speed,
    };
    road.random_ride(speed)?.ok_or_else(|| {
        Failure::Input(format!(
            "the road \"{}\" is a {}, which has no spectrum; --over accepts a random-road here, and \
             `axlebow ride` drives over every kind",
            road.name,
            road.kind()
        ))
    })
}

impl From<MovedWheels> for Input {
    fn from(wheels: MovedWheels) -> Self {
        match wheels {
            MovedWheels::Both => Input::Both,
            MovedWheels::Left => Input::Left,
            MovedWheels::Right => Input::Right,
            MovedWheels::Opposed => Input::Opposed,
        }
    }
}
