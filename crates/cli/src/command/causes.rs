//! `axlebow causes`.

use axlebow_report::plot::causes_figure;
use axlebow_report::{json, table};
use axlebow_study::{causes, causes_over};

use super::flex::chosen;
use super::progress::Progress;
use crate::args::Causes;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output, road_input};

pub fn run(arguments: &Causes) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    let case = chosen(&model, std::slice::from_ref(&arguments.case))?.swap_remove(0);
    let mut card = input::card(&model, &arguments.model);
    let ride = road_input::ride(&arguments.drive, &model.axle, &mut card)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let mut outcomes = vec![causes(&model.axle, &case)?];
    if let Some(ride) = ride {
        let progress = Progress::over(0);
        outcomes.push(causes_over(&model.axle, &ride, &|done, of| progress.at_of(done, of))?);
        progress.end();
    }
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(causes_figure(&outcomes, &card)?)
    })?;
    let page = || table::causes(&outcomes, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::causes_document(&outcomes, &card))?;
    Ok(Exit::Done)
}
