//! `axlebow section`.

use std::process::ExitCode;

use axlebow_axle::{Axle, DiagramPoint, FlexOutcome, Piece, StiffenedStretch};
use axlebow_model::Model;
use axlebow_report::plot::section_figure;
use axlebow_report::{SectionCard, SectionStress, StiffenedCard, json, table};

use crate::args::Section;
use crate::failure::Failure;
use crate::{input, output};

pub fn run(arguments: &Section) -> Result<ExitCode, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.plot])?;
    let card = input::card(&model, &arguments.model);
    let sections = sections(&model.axle);
    let loaded = loaded(&model, arguments.case.as_ref())?;
    let warnings = loaded.as_ref().map_or(&[][..], |outcome| outcome.warnings.as_slice());
    let stiffened = stiffened(&model, loaded.as_ref())?;
    if let Some(path) = &arguments.plot {
        let figure = section_figure(&sections, &stiffened, &card)?;
        output::write_picture(path, &figure.with_warnings(warnings))?;
    }
    let text = match arguments.model.json {
        true => json::section_document(&sections, &stiffened, warnings, &card),
        false => table::sections(&sections, &stiffened, warnings, &card),
    };
    output::print(&text)?;
    Ok(ExitCode::SUCCESS)
}

/// The axle under the load case that was asked for, if one was.
fn loaded(model: &Model, case: Option<&String>) -> Result<Option<FlexOutcome>, Failure> {
    let Some(name) = case else { return Ok(None) };
    let cases = super::flex::chosen(model, std::slice::from_ref(name))?;
    Ok(Some(axlebow_axle::flex(&model.axle, &cases)?))
}

/// Every stretch with stiffeners, with its stress in the load case.
fn stiffened(model: &Model, loaded: Option<&FlexOutcome>) -> Result<Vec<StiffenedCard>, Failure> {
    let case = loaded.and_then(|outcome| outcome.cases.first());
    let cards = model.axle.stiffened_stretches()?.into_iter().map(|stretch| {
        let bent_most = case.and_then(|case| bent_most(&case.diagram, &stretch));
        let stress = case.zip(bent_most).map(|(case, point)| SectionStress {
            case: case.name.clone(),
            y: point.y,
            field: stretch.section.stress_field(&point.resultants),
        });
        StiffenedCard { stretch, stress }
    });
    Ok(cards.collect())
}

/// The point of a stretch with the largest bending moment.
fn bent_most<'d>(diagram: &'d [DiagramPoint], stretch: &StiffenedStretch) -> Option<&'d DiagramPoint> {
    let moment = |point: &DiagramPoint| point.resultants.moment_x.hypot(point.resultants.moment_z);
    let there = diagram.iter().filter(|point| (stretch.from..=stretch.to).contains(&point.y));
    there.max_by(|a, b| moment(a).total_cmp(&moment(b)))
}

/// Every section from the centre outward: stretches of one section, and the ends of tapers.
fn sections(axle: &Axle) -> Vec<SectionCard> {
    let mut cards: Vec<SectionCard> = Vec::new();
    for piece in axle.body.pieces() {
        if !piece.is_tapered() {
            cards.push(card(axle, piece, [piece.to, piece.from]));
            continue;
        }
        for end in [piece.from, piece.to] {
            // The start of a taper is most often the section that the last piece ended with.
            if cards.last().is_none_or(|last| last.profile != piece.profile_at(end)) {
                cards.push(card(axle, piece, [end, end]));
            }
        }
    }
    number_alike(&mut cards);
    cards
}

fn card(axle: &Axle, piece: &Piece, reach: [f64; 2]) -> SectionCard {
    let properties = axle.body.properties(piece, reach[1]);
    SectionCard {
        name: piece.part.word().to_owned(),
        reach,
        profile: piece.profile_at(reach[1]),
        properties,
        mass_per_length: properties.mass_per_length(axle.body.material(piece.part).density()),
    }
}

/// Numbers the sections of a part that has several.
fn number_alike(cards: &mut [SectionCard]) {
    let names: Vec<String> = cards.iter().map(|card| card.name.clone()).collect();
    for (i, card) in cards.iter_mut().enumerate() {
        if names.iter().filter(|name| **name == names[i]).count() > 1 {
            let number = names[..=i].iter().filter(|name| **name == names[i]).count();
            card.name = format!("{} {number}", names[i]);
        }
    }
}
