//! The table of a rating.

use axlebow_study::{Limiter, RatingOutcome, RatingPoint};
use axlebow_units::Kind;

use super::cautions::welding;
use super::notes::{JSON, defaults, warnings};
use super::strength::not_made;
use crate::ModelCard;
use crate::answer::rating_answer;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::page::{Block, Column, Page, Table};

/// The rating at each offset with its limiter, the load of each part, and what was not checked.
pub fn rating(outcome: &RatingOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, rating_answer(outcome, card));
    page.add(Block::Paragraph(options(outcome, n)));
    page.add_table(points(outcome, n));
    page.add(Block::note("Offset: positive, tires outboard of the hub's mounting face (outset)."));
    page.add_table(parts(outcome, n));
    page.extend(not_made(&outcome.not_made));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.warnings));
    page.add(welding());
    page
}

fn options(outcome: &RatingOutcome, n: Numbers) -> String {
    let bearings = outcome.ask.bearing_distance.map_or(String::new(), |distance| {
        let (distance, share) = (n.distance(distance), outcome.ask.bearing_reliability.word());
        format!(
            " {share} of the wheel bearings must reach {distance} (ISO 281), running straight under the load."
        )
    });
    let lasting = outcome.lasting.as_ref().map_or(String::new(), |(duty, years)| {
        format!(
            " On the duty {duty} no more than 5 % of the details that crack first may have a crack within {} years (`axlebow life`).",
            significant(*years, 3)
        )
    });
    format!(
        "The load at which the first binding check of `strength` reaches its limit; every case that is made from the \
         rated load moves with it. Safety factor {}.{bearings}{lasting}",
        fixed(outcome.ask.safety_factor, 2)
    )
}

fn points(outcome: &RatingOutcome, n: Numbers) -> Table {
    let own = outcome.own().and_then(|own| own.load);
    let mut table = Table::new([
        Column::shown("Offset", Shown::Place, n),
        Column::shown("rating", Kind::Force, n),
        Column::number("of the model's own", "%"),
        Column::words("limited by"),
    ]);
    for point in &outcome.points {
        let share = point.load.zip(own).map(|(load, own)| fixed(100.0 * load / own, 1));
        table.add_row([
            n.bare(point.offset, Shown::Place),
            point.load.map_or("-".to_owned(), |load| n.bare(load, Kind::Force)),
            share.unwrap_or("-".to_owned()),
            limited_by(point),
        ]);
    }
    table
}

fn limited_by(point: &RatingPoint) -> String {
    let words = |own: &Limiter| {
        let case = own.case.as_ref().map_or(String::new(), |case| format!(", {case}"));
        format!("{}: {} at {}{case}", own.part.word(), own.what, own.place)
    };
    let limiter = point.limiter.as_ref().map(words);
    match (&point.reason, limiter) {
        (Some(reason), Some(limiter)) => format!("{reason}: {limiter}"),
        (Some(reason), None) => reason.clone(),
        (None, limiter) => limiter.unwrap_or_default(),
    }
}

fn parts(outcome: &RatingOutcome, n: Numbers) -> Table {
    let parts = outcome.parts();
    let loads = parts.iter().map(|part| Column::shown(part.word(), Kind::Force, n));
    let mut table = Table::new(std::iter::once(Column::shown("Offset", Shown::Place, n)).chain(loads));
    for point in &outcome.points {
        let loads = parts
            .iter()
            .map(|part| point.load_of(*part).map_or("-".to_owned(), |load| n.bare(load, Kind::Force)));
        table.add_row(std::iter::once(n.bare(point.offset, Shown::Place)).chain(loads));
    }
    table.with_caption("Load at which the first check of each part binds")
}
