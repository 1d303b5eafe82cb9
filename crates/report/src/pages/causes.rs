//! The tables of causes.

use axlebow_study::{Cause, CausesOutcome, Contribution};
use axlebow_units::Kind;

use super::cautions::welding;
use super::notes::{JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::causes_answer;
use crate::number::{Numbers, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::causes::{self, UNLIKE_FLEX, Wheels, angles, rolls, subject, wheels};

/// For each subject what each cause contributes to camber and toe, and what would remove it; how far a hub can tilt
/// within its endplay; warnings, defaults and cautions.
pub fn causes(outcomes: &[CausesOutcome], card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, causes_answer(outcomes, card));
    page.extend(outcomes.iter().flat_map(|outcome| shares(outcome, n)));
    page.extend([HOW, UNLIKE_FLEX].map(Block::paragraph));
    if let Some(first) = outcomes.first() {
        page.extend(remedies(first));
        page.add(Block::Paragraph(endplay_tilt(first, n)));
        page.extend(absent(first).map(Block::Note));
        page.extend(defaults(card, JSON));
        page.extend(warnings(&causes::warnings(outcomes)));
    }
    page.add(welding());
    page
}

const HOW: &str = "Shares are means over all orders in which the causes could come in (Shapley), so that they sum to the whole; \
    what removing one by itself takes off differs where causes act together. Uncertain by: half of how far the whole moves with \
    that input's tolerance. Camber is negative where tops lean in, toe positive where it is toe-in.";

/// The shares of each wheel and angle of a subject.
fn shares(outcome: &CausesOutcome, n: Numbers) -> Vec<Block> {
    let mut blocks = vec![Block::Heading(subject(outcome, n))];
    for wheel in wheels(outcome, n) {
        for (angle, contribution) in angles(wheel.causes) {
            blocks.extend(split(&format!("{}, {angle}", wheel.words), contribution, n));
        }
        blocks.extend(rigid_roll(outcome, &wheel, n));
    }
    blocks
}

fn split(title: &str, contribution: &Contribution, n: Numbers) -> [Block; 2] {
    let mut table = Table::new([
        Column::words(title),
        Column::shown("share", Kind::Angle, n),
        Column::number("share", "%"),
        Column::shown("uncertain by", Kind::Angle, n),
        Column::shown("by itself", Kind::Angle, n),
        Column::shown("removing it takes off", Kind::Angle, n),
    ]);
    let angle = |value: f64| n.bare(value, Kind::Angle);
    for share in &contribution.shares {
        let of = percent(share.share, contribution.total);
        let values = [share.uncertainty, share.alone, share.removing].map(angle);
        table.add_row([share.cause.words().to_owned(), angle(share.share), of].into_iter().chain(values));
    }
    let row = |name: &str, value: f64| [name.to_owned(), angle(value), percent(value, contribution.total)];
    let blank = || std::iter::repeat_n(String::new(), 3);
    table.add_row(row("rest", contribution.rest).into_iter().chain(blank()));
    table.add_row(row("all", contribution.total).into_iter().chain(blank()));
    let apart = format!(
        "{title}: acting together, beyond what each takes off by itself: {}.",
        n.full(contribution.interaction(), Kind::Angle)
    );
    [Block::Table(table), Block::Note(apart)]
}

/// The axle's rigid roll as a line of its own; none where it is nothing.
fn rigid_roll(outcome: &CausesOutcome, wheel: &Wheels<'_>, n: Numbers) -> Option<Block> {
    let text = format!(
        "{}, rigid roll of the axle on tires and road: {}. It is no flex, none of the causes above, and not in their sum.",
        wheel.words,
        n.full(wheel.rigid_roll, Kind::Angle)
    );
    rolls(outcome).then_some(Block::Note(text))
}

fn percent(part: f64, whole: f64) -> String {
    if whole.abs() < 1e-9 { "-".to_owned() } else { fixed(100.0 * part / whole, 1) }
}

fn remedies(outcome: &CausesOutcome) -> [Block; 2] {
    let line = |cause: Cause| {
        format!("{}: {} (taken as known within {}).", cause.words(), cause.remedy(), cause.tolerance())
    };
    let lines = outcome.wheels.left.camber.shares.iter().map(|share| line(share.cause));
    [Block::heading("What would remove it"), Block::List(lines.collect())]
}

/// How far a hub tilts freely within its endplay.
fn endplay_tilt(outcome: &CausesOutcome, n: Numbers) -> String {
    let endplay_tilt = &outcome.endplay_tilt.left;
    let [least, most] = endplay_tilt.accepted.map(|angle| n.bare(angle, Kind::Angle));
    format!(
        "A hub tilts freely within its endplay by up to ±{} in camber and toe (radial play over the span of the \
         bearings); the 0.025 to 0.127 mm that TMC RP 618 accepts make ±{least} to ±{most}.",
        n.full(endplay_tilt.own, Kind::Angle),
    )
}

/// Causes that the model does not have.
fn absent(outcome: &CausesOutcome) -> Option<String> {
    let has = |cause: &Cause| outcome.wheels.left.camber.shares.iter().any(|share| share.cause == *cause);
    let absent: Vec<&str> =
        Cause::ALL.iter().filter(|cause| !has(cause)).map(|cause| cause.words()).collect();
    let text = format!("Not in this model, because its value is zero: {}.", absent.join(", "));
    (!absent.is_empty()).then_some(text)
}
