//! `axlebow ride`.

use std::process::ExitCode;

use axlebow_model::RoadFile;
use axlebow_report::plot::ride_figure;
use axlebow_report::{csv, json, table};
use axlebow_units::Kind;

use crate::args::Ride;
use crate::failure::{CHECK_FAILS, Failure};
use crate::{input, output};

pub fn run(arguments: &Ride) -> Result<ExitCode, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    let model = input::model(&arguments.model)?;
    let over = &arguments.over;
    let road = RoadFile::from_bytes(&input::read_file(over)?, &over.display().to_string())?;
    let speed = match &arguments.speed {
        Some(text) => input::quantity("--speed", text, Kind::Speed)?.0,
        None => road.speed,
    };
    let loading = &model.axle.loading;
    let load = if arguments.unladen { loading.unladen_load } else { loading.rated_load };
    let outcome = axlebow_axle::ride(&model.axle, &road.ride(load, speed))?;
    let mut card = input::card(&model, &arguments.model);
    card.assumed.extend(road.assumed.iter().map(|assumed| input::assumed("road.", assumed)));
    card.invented |= road.invented;
    if let Some(path) = &arguments.plot {
        output::write_picture(path, &ride_figure(&outcome, &card)?)?;
    }
    if let Some(path) = &arguments.csv {
        output::write_file(path, csv::ride(&outcome).as_bytes())?;
        eprintln!("wrote {}", path.display());
    }
    output::print(&match arguments.model.json {
        true => json::ride_document(&outcome, &card),
        false => table::ride(&outcome, &card),
    })?;
    if let Some(why) = &outcome.partial {
        eprintln!("warning: the ride is partial: {why}");
        return Ok(ExitCode::from(CHECK_FAILS));
    }
    Ok(ExitCode::SUCCESS)
}
