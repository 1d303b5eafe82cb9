//! `axlebow strength`.

use axlebow_axle::StrengthOptions;
use axlebow_report::plot::strength_figure;
use axlebow_report::{json, table};

use super::flex::chosen;
use crate::args::Strength;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Strength) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let cases = chosen(&model, &arguments.cases)?;
    let ask = StrengthOptions {
        safety_factor: arguments.safety_factor.unwrap_or(model.strength.safety_factor),
        rules: arguments.rules.map_or(model.strength.rules, Into::into),
        ..model.strength
    };
    let outcome = axlebow_axle::strength(&model.axle, &cases, ask)?;
    let bands = axlebow_axle::weld_bands(&model.axle, &cases, ask)?;
    let card = input::card(&model, &arguments.model);
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(strength_figure((&outcome, &model.axle), &card)?)
    })?;
    let page = || table::strength(&outcome, &bands, &card, arguments.all).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::strength_document(&outcome, &bands, &card))?;
    Ok(if outcome.holds() { Exit::Done } else { Exit::CheckFails })
}
