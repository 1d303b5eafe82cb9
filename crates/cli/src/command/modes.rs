//! `axlebow modes`.

use axlebow_report::plot::modes_figure;
use axlebow_report::{json, modes_vtu, table};

use crate::args::Modes;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Modes) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    output::check_kind("--vtu", arguments.vtu.as_deref(), "vtu")?;
    output::check_places(&[&arguments.plot, &arguments.vtu, &arguments.model.page])?;
    let card = input::card(&model, &arguments.model);
    let loading = &model.axle.loading;
    let load = if arguments.unladen { loading.unladen_load } else { loading.rated_load };
    let outcome = axlebow_axle::modes(&model.axle, load, arguments.count.into())?;
    if let Some(path) = &arguments.vtu {
        output::write_file(path, modes_vtu(&outcome, &card).as_bytes())?;
    }
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(modes_figure(&outcome, &card)?)
    })?;
    let page = || table::modes(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::modes_document(&outcome, &card))?;
    let complete = outcome.found_below == outcome.counted_below && outcome.mesh.is_settled();
    Ok(if complete { Exit::Done } else { Exit::CheckFails })
}
