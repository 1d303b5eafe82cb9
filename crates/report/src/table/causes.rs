//! The tables of causes.

use axlebow_study::{Cause, CausesOutcome, Contribution};

use super::cautions::welding;
use super::flex::{WIDTH, warnings};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::causes_words::{self, UNLIKE_FLEX, angles, rolls, subject, wheels};
use crate::number::{Numbers, Shown, fixed};

/// For each subject what each cause contributes to camber and toe, and what would remove it; how far a hub can endplay_tilt
/// within its endplay; what was assumed, warnings and cautions.
pub fn causes(outcomes: &[CausesOutcome], card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let invented = &card.invented_line();
    let mut text = paragraph(&card.name, WIDTH, 0) + invented;
    for outcome in outcomes {
        text += &format!("\n{}", paragraph(&subject(outcome, n), WIDTH, 2));
        for (wheel, causes) in wheels(outcome, n) {
            for (angle, contribution) in angles(causes) {
                text += &format!("\n{}", split(&format!("{wheel}, {angle}"), contribution, n));
            }
            text += &rigid_roll(outcome, wheel, n);
        }
    }
    let how = "Shares are means over all orders in which the causes could come in (Shapley), so that they sum to the whole; \
               what removing one alone takes off differs where causes act together. Uncertain by: half of how far the \
               whole moves with that input's tolerance.";
    text += &format!("\n{}{}", paragraph(how, WIDTH, 2), paragraph(UNLIKE_FLEX, WIDTH, 2));
    if let Some(first) = outcomes.first() {
        text += &(remedies(first) + &endplay_tilt(first, n) + &absent(first));
        text += &(assumed(card) + &warnings(&causes_words::warnings(outcomes)));
    }
    text + &welding()
}

fn split(title: &str, contribution: &Contribution, n: Numbers) -> String {
    let unit = n.unit(Shown::Angle);
    let heading = [
        format!("\n{title}"),
        format!("share\n{unit}"),
        "share\n%".to_owned(),
        format!("uncertain\nby, {unit}"),
        format!("by itself\n{unit}"),
        format!("removing it\ntakes off, {unit}"),
    ];
    let mut grid = Grid::new(1, heading);
    let angle = |value: f64| n.bare(value, Shown::Angle);
    for share in &contribution.shares {
        let of = percent(share.share, contribution.total);
        let values = [share.uncertainty, share.alone, share.removing].map(angle);
        grid.row([share.cause.words().to_owned(), angle(share.share), of].into_iter().chain(values));
    }
    let row = |name: &str, value: f64| [name.to_owned(), angle(value), percent(value, contribution.total)];
    let blank = || std::iter::repeat_n(String::new(), 3);
    grid.row(row("rest", contribution.rest).into_iter().chain(blank()));
    grid.row(row("all", contribution.total).into_iter().chain(blank()));
    let apart = format!(
        "{title}: acting together, beyond what each takes off by itself: {}.",
        n.full(contribution.interaction(), Shown::Angle)
    );
    grid.text() + &paragraph(&apart, WIDTH, 2)
}

/// The axle's rigid roll as a line of its own; none where it is nothing.
fn rigid_roll(outcome: &CausesOutcome, wheel: &str, n: Numbers) -> String {
    let side = if wheel.starts_with("right") { &outcome.rigid_roll.right } else { &outcome.rigid_roll.left };
    if !rolls(outcome) {
        return String::new();
    }
    let text = format!(
        "{wheel}, rigid roll of the axle on tires and road: {}. It is no flex, none of the causes above, and not in their sum.",
        n.full(*side, Shown::Angle)
    );
    paragraph(&text, WIDTH, 2)
}

fn percent(part: f64, whole: f64) -> String {
    if whole.abs() < 1e-9 { "-".to_owned() } else { fixed(100.0 * part / whole, 1) }
}

fn remedies(outcome: &CausesOutcome) -> String {
    let shares = &outcome.wheels.left.camber.shares;
    let line = |cause: Cause| {
        let text =
            format!("- {}: {} (taken as known within {}).", cause.words(), cause.remedy(), cause.tolerance());
        paragraph(&text, WIDTH, 2)
    };
    let lines: String = shares.iter().map(|share| line(share.cause)).collect();
    format!("\nWhat would remove it\n{lines}")
}

/// How far a hub tilts freely within its endplay.
fn endplay_tilt(outcome: &CausesOutcome, n: Numbers) -> String {
    let endplay_tilt = &outcome.endplay_tilt.left;
    let [least, most] = endplay_tilt.accepted.map(|angle| n.bare(angle, Shown::Angle));
    let text = format!(
        "A hub wobbles freely within its endplay by up to ±{} in camber and toe (radial play over the span of the \
         bearings); the 0.025 to 0.127 mm that TMC RP 618 accepts make ±{least} to ±{most}.",
        n.full(endplay_tilt.own, Shown::Angle),
    );
    format!("\n{}", paragraph(&text, WIDTH, 2))
}

/// Causes that the model does not have.
fn absent(outcome: &CausesOutcome) -> String {
    let has = |cause: &Cause| outcome.wheels.left.camber.shares.iter().any(|share| share.cause == *cause);
    let absent: Vec<&str> =
        Cause::ALL.iter().filter(|cause| !has(cause)).map(|cause| cause.words()).collect();
    if absent.is_empty() {
        return String::new();
    }
    let text = format!("Not in this model, because its value is zero: {}.", absent.join(", "));
    paragraph(&text, WIDTH, 2)
}
