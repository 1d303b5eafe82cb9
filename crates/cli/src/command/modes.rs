//! `axlebow modes`.

use std::process::ExitCode;

use axlebow_report::plot::modes_figure;
use axlebow_report::{json, table};

use crate::args::Modes;
use crate::failure::{CHECK_FAILS, Failure};
use crate::{input, output};

pub fn run(arguments: &Modes) -> Result<ExitCode, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.plot])?;
    let card = input::card(&model, &arguments.model);
    let loading = &model.axle.loading;
    let load = if arguments.unladen { loading.unladen_load } else { loading.rated_load };
    let outcome = axlebow_axle::modes(&model.axle, load, arguments.count.into())?;
    if let Some(path) = &arguments.plot {
        output::write_picture(path, modes_figure(&outcome, &card)?, &card)?;
    }
    output::print(&match arguments.model.json {
        true => json::modes_document(&outcome, &card),
        false => table::modes(&outcome, &card).text(),
    })?;
    let complete = outcome.found_below == outcome.counted_below && outcome.mesh.is_settled();
    Ok(if complete { ExitCode::SUCCESS } else { ExitCode::from(CHECK_FAILS) })
}
