//! `axlebow flex --sensitivities`.

use axlebow_report::plot::sensitivities_figure;
use axlebow_report::{json, table};
use axlebow_study::{SensitivityOutcome, sensitivities};

use super::flex::chosen;
use crate::args::Flex;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

/// The load case that is looked at where none is asked for.
const USUAL_CASE: &str = "rated-load";

pub fn run(arguments: &Flex) -> Result<Exit, Failure> {
    let document = input::document(&arguments.model)?;
    let model = input::built(&document, &arguments.model)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let usual = [USUAL_CASE.to_owned()];
    let asked = if arguments.cases.is_empty() { &usual[..] } else { &arguments.cases };
    let cases = chosen(&model, asked)?;
    let outcomes: Vec<SensitivityOutcome> = cases
        .iter()
        .map(|case| sensitivities(&document, (&model.axle, case), document.numbers()))
        .collect::<Result<_, _>>()?;
    let card = input::card(&model, &arguments.model);
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(sensitivities_figure(&outcomes[0], &card)?.with_warnings(&outcomes[0].warnings))
    })?;
    let page = || table::sensitivities(&outcomes, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::sensitivities_document(&outcomes, &card))?;
    Ok(Exit::Done)
}
