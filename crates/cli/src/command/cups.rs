//! `axlebow cups`.

use std::process::ExitCode;

use axlebow_axle::{CupsOutcome, ModeOutcome, cups, modes};
use axlebow_model::Model;
use axlebow_report::{json, table};
use axlebow_units::{Kind, UnitSystem};

use crate::args::Cups;
use crate::failure::Failure;
use crate::{input, output};

/// Modes that are looked at: more than enough to pass the range of cups.
const MODES: usize = 30;

pub fn run(arguments: &Cups) -> Result<ExitCode, Failure> {
    let (speed, system) = input::quantity("--speed", &arguments.speed, Kind::Speed)?;
    let model = arguments.model.as_deref().map(input::plain_model).transpose()?;
    let radius = match (&arguments.tire_radius, &model) {
        (Some(text), _) => input::quantity("--tire-radius", text, Kind::Length)?.0,
        (None, Some(model)) => model.axle.wheels.left.tire().loaded_radius,
        (None, None) => {
            let text = "give --tire-radius, such as \"490 mm\", or a model file that has it";
            return Err(Failure::Input(text.to_owned()));
        }
    };
    let modes = model.as_ref().map_or(Ok(Vec::new()), axle_modes)?;
    let outcome: CupsOutcome = cups(arguments.count, speed, radius, &modes)?;
    let has_model = model.is_some();
    let system = model.as_ref().map(|model| model.system).or(system);
    output::print(&match arguments.json {
        true => json::cups_document(&outcome),
        false => table::cups(&outcome, has_model, system.unwrap_or(UnitSystem::Si)),
    })?;
    Ok(ExitCode::SUCCESS)
}

fn axle_modes(model: &Model) -> Result<Vec<ModeOutcome>, Failure> {
    Ok(modes(&model.axle, model.axle.loading.rated_load, MODES)?.modes)
}
