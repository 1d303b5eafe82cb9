//! `axlebow section`.

use std::process::ExitCode;

use axlebow_axle::{Axle, FlexOutcome, LoadCase, Piece, StiffenedStretch};
use axlebow_model::Model;
use axlebow_report::plot::section_figure;
use axlebow_report::{SectionCard, SectionStress, StiffenedCard, json, table};

use crate::args::Section;
use crate::failure::Failure;
use crate::{input, output};

pub fn run(arguments: &Section) -> Result<ExitCode, Failure> {
    output::check_picture(arguments.plot.as_deref())?;
    output::check_kind("--page", arguments.model.page.as_deref(), "html")?;
    let model = input::model(&arguments.model)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let card = input::card(&model, &arguments.model);
    let sections = sections(&model.axle);
    let case = case(&model, arguments.case.as_ref())?;
    let flexed = |case: &LoadCase| axlebow_axle::flex(&model.axle, std::slice::from_ref(case));
    let loaded: Option<FlexOutcome> = case.as_ref().map(flexed).transpose()?;
    let warnings = loaded.as_ref().map_or(&[][..], |outcome| outcome.warnings.as_slice());
    let stiffened = stiffened(&model.axle, case.as_ref())?;
    let picture = output::picture(arguments.plot.as_deref(), arguments.model.page.as_deref(), &card, || {
        Ok(section_figure(&sections, &stiffened, &card)?.with_warnings(warnings))
    })?;
    let page = table::sections(&sections, &stiffened, warnings, &card).with_figures(picture);
    let document = || json::section_document(&sections, &stiffened, warnings, &card);
    output::show(&arguments.model, &page, &card, document)?;
    Ok(ExitCode::SUCCESS)
}

/// The load case that was asked for, if one was.
fn case(model: &Model, name: Option<&String>) -> Result<Option<LoadCase>, Failure> {
    let Some(name) = name else { return Ok(None) };
    Ok(super::flex::chosen(model, std::slice::from_ref(name))?.into_iter().next())
}

/// Every stretch with stiffeners, with its stress in the load case.
fn stiffened(axle: &Axle, case: Option<&LoadCase>) -> Result<Vec<StiffenedCard>, Failure> {
    let card = |stretch: StiffenedStretch| {
        let stress = |case: &LoadCase| {
            let own = stretch.stress(axle, case)?;
            Ok::<_, Failure>(own.map(|own| SectionStress { case: case.name.clone(), own }))
        };
        let stress = case.map(stress).transpose()?.flatten();
        Ok(StiffenedCard { stretch, stress })
    };
    axle.stiffened_stretches()?.into_iter().map(card).collect()
}

/// Every section from the center outward: stretches of one section, and the ends of tapers.
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
