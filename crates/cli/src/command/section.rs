//! `axlebow section`.

use axlebow_axle::{FlexOutcome, LoadCase};
use axlebow_model::Model;
use axlebow_report::plot::section_figure;
use axlebow_report::{SectionCard, StiffenedCard, json, table};

use crate::args::Section;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Section) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let card = input::card(&model, &arguments.model);
    let sections = SectionCard::all_of(&model.axle);
    let case = case(&model, arguments.case.as_ref())?;
    let flexed = |case: &LoadCase| axlebow_axle::flex(&model.axle, std::slice::from_ref(case));
    let loaded: Option<FlexOutcome> = case.as_ref().map(flexed).transpose()?;
    let warnings = loaded.as_ref().map_or(&[][..], |outcome| outcome.warnings.as_slice());
    let stiffened = StiffenedCard::all_of(&model.axle, case.as_ref())?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(section_figure(&sections, &stiffened, &card)?.with_warnings(warnings))
    })?;
    let document = || json::section_document(&sections, &stiffened, warnings, &card);
    let page = || table::sections(&sections, &stiffened, warnings, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, document)?;
    Ok(Exit::Done)
}

/// The load case that was asked for, if one was.
fn case(model: &Model, name: Option<&String>) -> Result<Option<LoadCase>, Failure> {
    let Some(name) = name else { return Ok(None) };
    Ok(super::flex::chosen(model, std::slice::from_ref(name))?.into_iter().next())
}
