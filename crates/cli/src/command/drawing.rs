//! `axlebow drawing`.

use axlebow_axle::StrengthRules;
use axlebow_model::Model;
use axlebow_report::{DrawingOptions, ModelCard, Paper, ShopDrawing, WeldSymbols, json, table};
use axlebow_units::UnitSystem;
use std::path::Path;

use crate::args::Drawing;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Drawing) -> Result<Exit, Failure> {
    output::check_kinds("-o", arguments.out.as_deref(), &["dxf", "svg", "pdf", "png"])?;
    output::check_shown(&None, &arguments.model.page)?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.out, &arguments.model.page])?;
    let card = input::card(&model, &arguments.model);
    let drawing = of_model(&model, &card, arguments)?;
    if let Some(path) = &arguments.out {
        write(path, &drawing, &card)?;
    }
    let page = || table::drawing(&drawing, &card).with_figures([drawing.svg()]);
    Shown::from(&arguments.model).print(&card, page, || json::drawing_document(&drawing, &card))?;
    Ok(Exit::Done)
}

fn of_model(model: &Model, card: &ModelCard, arguments: &Drawing) -> Result<ShopDrawing, Failure> {
    let usual = usual_options(model, card);
    let options = DrawingOptions {
        paper: arguments.sheet.map_or(usual.paper, Into::into),
        symbols: arguments.symbols.map_or(usual.symbols, Into::into),
        revision: arguments.revision.clone(),
    };
    Ok(ShopDrawing::of((&model.axle, model.strength), options, card)?)
}

/// Paper by the reader's units, symbols by the rules of the file.
pub fn usual_options(model: &Model, card: &ModelCard) -> DrawingOptions {
    let paper = if card.system == UnitSystem::Us { Paper::Letter } else { Paper::A4 };
    let symbols = match model.strength.rules {
        StrengthRules::Aisc => WeldSymbols::Aws,
        StrengthRules::En => WeldSymbols::Iso,
    };
    DrawingOptions { paper, symbols, revision: "0".to_owned() }
}

/// Writes the drawing in the kind that the file name says.
fn write(path: &Path, drawing: &ShopDrawing, card: &ModelCard) -> Result<(), Failure> {
    match path.extension().map(|own| own.to_ascii_lowercase()).as_deref().and_then(|own| own.to_str()) {
        Some("dxf") => output::write_file(path, drawing.dxf().as_bytes()),
        Some("pdf") => output::write_file(path, &drawing.pdf()),
        _ => output::write_picture(path, drawing.svg(), card),
    }
}
