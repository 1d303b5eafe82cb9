//! `axlebow flex`.

use axlebow_axle::LoadCase;
use axlebow_model::Model;
use axlebow_report::plot::{Drawing, flex_figure};
use axlebow_report::{json, table, vtu};

use crate::args::Flex;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Flex) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    output::check_kind("--vtu", arguments.vtu.as_deref(), "vtu")?;
    if arguments.sensitivities {
        return super::sensitivities::run(arguments);
    }
    let model = input::model(&arguments.model)?;
    let cases = chosen(&model, &arguments.cases)?;
    let card = input::card(&model, &arguments.model);
    output::check_places(&[&arguments.plot, &arguments.vtu, &arguments.model.page])?;
    let outcome = axlebow_axle::flex(&model.axle, &cases)?;
    if let Some(path) = &arguments.vtu {
        let case = &outcome.cases[0];
        let seats = axlebow_axle::seat_pictures(&model.axle, case)?;
        output::write_file(path, vtu(case, &model.axle, &seats, &card).as_bytes())?;
    }
    if !arguments.against.is_empty() {
        return super::flex_against::run(arguments, &model, outcome, &card);
    }
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        let figure = flex_figure(&outcome.cases[0], &Drawing::of(&model.axle), &card)?;
        Ok(figure.with_warnings(&outcome.warnings))
    })?;
    let brief = if arguments.detail { table::flex } else { table::flex_brief };
    let page = || brief(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::flex_document(&outcome, &card))?;
    Ok(Exit::Done)
}

/// The cases asked for in the order of the model; all when none is asked for.
pub fn chosen(model: &Model, names: &[String]) -> Result<Vec<LoadCase>, Failure> {
    let known = || model.cases.iter().map(|case| case.name.as_str()).collect::<Vec<_>>().join(", ");
    if let Some(name) = names.iter().find(|name| model.cases.iter().all(|case| case.name != **name)) {
        return Err(Failure::Input(format!(
            "--case {name}: the model has no such load case; it has {}",
            known()
        )));
    }
    let wanted = |case: &&LoadCase| names.is_empty() || names.contains(&case.name);
    Ok(model.cases.iter().filter(wanted).cloned().collect())
}
