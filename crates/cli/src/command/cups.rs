//! `axlebow cups`.

use axlebow_axle::tread::{Cups, Explanation, Suspect, cups, wheel_frequency};
use axlebow_axle::{AxleError, cup_growth, mode_suspects, modes, road_suspect};
use axlebow_model::Model;
use axlebow_report::{json, table};
use axlebow_units::{Kind, UnitSystem};

use super::flex::chosen;
use crate::args;
use crate::failure::{Exit, Failure};
use crate::{input, output, road_input};

/// Modes that are looked at: more than enough to pass the range of cups.
const MODES: usize = 30;
/// Most cups whose growth is worked out.
const MOST_COUNT: u16 = 60;

pub fn run(arguments: &args::Cups) -> Result<Exit, Failure> {
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
    let mut suspects = model.as_ref().map_or(Ok(Vec::new()), mode_suspects_of)?;
    if let Some(over) = &arguments.over {
        suspects.extend(road_suspect(&road_input::road(over, &[])?.road.left, speed));
    }
    suspects.push(Suspect::wheel_turn(arguments.count, wheel_frequency(speed, radius)));
    let outcome = cups(arguments.count, speed, radius, suspects).map_err(AxleError::from)?;
    let outcome = match &model {
        Some(model) => grown(outcome, model)?,
        None => outcome,
    };
    let has_model = model.is_some();
    let system = model.as_ref().map(|model| model.system).or(system).unwrap_or(UnitSystem::Si);
    output::print(&match arguments.json {
        true => json::cups_document(&outcome, has_model, system),
        false => table::cups(&outcome, has_model, system).text(),
    })?;
    Ok(Exit::Done)
}

/// The cups with how fast each source's waves grow at the rated load; none of counts for which waves are not solved.
fn grown(outcome: Cups, model: &Model) -> Result<Cups, Failure> {
    let most = outcome.explanations.iter().map(Explanation::count).max().unwrap_or(1).min(MOST_COUNT);
    let case = chosen(model, &["rated-load".to_owned()])?.swap_remove(0);
    let rates = cup_growth(&model.axle, &case, (outcome.speed, most))?;
    Ok(outcome.with_growth(|count| rates.get(usize::from(count) - 1).copied()))
}

fn mode_suspects_of(model: &Model) -> Result<Vec<Suspect>, Failure> {
    Ok(mode_suspects(&modes(&model.axle, model.axle.loading.rated_load, MODES)?.modes))
}
