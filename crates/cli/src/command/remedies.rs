//! `axlebow remedies`.

use axlebow_model::{Document, given_file};
use axlebow_report::plot::remedies_figure;
use axlebow_report::{json, table};
use axlebow_study::{OwnRemedy, RemedyOptions, own_remedies, remedies};

use super::flex::chosen;
use super::payback;
use crate::args::{Rank, Remedies};
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output, road_input};

pub fn run(arguments: &Remedies) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let document = input::document(&arguments.model)?;
    let model = input::built(&document, &arguments.model)?;
    let case = chosen(&model, std::slice::from_ref(&arguments.case))?.swap_remove(0);
    let mut card = input::card(&model, &arguments.model);
    let ride = road_input::quick_ride(&arguments.drive, &model.axle, &mut card)?;
    if arguments.rank == Rank::Money && arguments.prices.is_none() {
        let text = "remedies cannot be ranked by money without prices; give --prices with a payback study";
        return Err(Failure::Input(text.to_owned()));
    }
    let own = own(arguments, &document)?;
    output::check_places(&[&arguments.plot, &arguments.model.page])?;
    let prices = arguments.prices.as_deref().map(payback::prices).transpose()?;
    let rank = arguments.rank.into();
    let options = RemedyOptions { case: &case.name, ride: ride.as_ref(), own, rank, prices: prices.as_ref() };
    let outcome = remedies(&document, &options).map_err(|why| Failure::Input(why.to_string()))?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(remedies_figure(&outcome, &card)?)
    })?;
    let page = || table::remedies(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::remedies_document(&outcome, &card))?;
    Ok(Exit::Done)
}

/// The user's own remedies.
fn own(arguments: &Remedies, document: &Document) -> Result<Vec<OwnRemedy>, Failure> {
    let Some(path) = &arguments.remedies else { return Ok(Vec::new()) };
    let path = given_file(path, "toml");
    let bytes = input::read_file(&path)?;
    own_remedies(&bytes, &path.display().to_string(), document)
        .map_err(|problems| input::misread(problems, &bytes, input::FileKind::Remedies))
}
