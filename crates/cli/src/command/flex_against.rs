//! `axlebow flex --against`.

use std::path::Path;

use axlebow_axle::{FlexOutcome, Warning};
use axlebow_model::Model;
use axlebow_report::plot::{AgainstAxle, Drawing, against_figure};
use axlebow_report::{InventedInput, ModelCard, json, table};

use super::flex::chosen;
use crate::args::Flex;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

/// An axle that is compared with others.
struct Compared {
    /// Name of its file, without folder and ending.
    file: String,
    drawing: Drawing,
}

/// The first case of this model and of the others, in one table and one drawing.
pub fn run(arguments: &Flex, model: &Model, own: FlexOutcome, card: &ModelCard) -> Result<Exit, Failure> {
    let case = own.cases[0].name.clone();
    let mut card = card.clone();
    let mut axles = vec![(card.name.clone(), own)];
    let mut drawn = vec![Compared::of(&arguments.model.model, model)];
    for path in &arguments.against {
        let other = input::plain_model(path)?;
        let cases = chosen(&other, std::slice::from_ref(&case))?;
        card.add_input(InventedInput::OtherAxle, other.invented);
        axles.push((other.name.clone(), axlebow_axle::flex(&other.axle, &cases)?));
        drawn.push(Compared::of(path, &other));
    }
    let card = &card;
    let picture = output::picture(&arguments.plot, &arguments.model.page, card, || {
        let each = drawn.iter().zip(&axles);
        let figure: Vec<AgainstAxle> = each
            .map(|(own, (_, outcome))| AgainstAxle {
                label: &own.file,
                case: &outcome.cases[0],
                drawing: &own.drawing,
            })
            .collect();
        let warnings: Vec<Warning> = axles.iter().flat_map(|(_, outcome)| outcome.warnings.clone()).collect();
        Ok(against_figure(&figure, card)?.with_warnings(&warnings))
    })?;
    let page = || table::flex_beside(&axles, card).with_figures(picture);
    Shown::from(&arguments.model).print(card, page, || json::flex_against_document(&axles, card))?;
    Ok(Exit::Done)
}

impl Compared {
    fn of(path: &Path, model: &Model) -> Self {
        let file = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        Compared { file, drawing: Drawing::of(&model.axle) }
    }
}
