//! The tables of an explained worn axle.

use axlebow_study::{ExplainOutcome, FITS, LEADS, RankedCause, TWO_AT_ONCE, Verdict};
use axlebow_units::Kind;

use super::notes::{JSON, defaults};
use crate::ModelCard;
use crate::answer::explain_answer;
use crate::number::{Numbers, fixed};
use crate::page::{Block, Caution, Column, Page, Table};
use crate::words::explain::{cause, how, remedy, size, weight};

/// Causes whose evidence is shown.
const SHOWN: usize = 4;
/// Pairs of causes that are shown, and the least probability of one.
const PAIRS: usize = 3;
const LEAST_PAIR: f64 = 0.05;
/// Checks that are shown.
const CHECKS: usize = 5;

/// Causes by rank, what speaks for and against the first ones, ribs as seen and predicted, checks to make, cautions.
pub fn explain(outcome: &ExplainOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, explain_answer(outcome, card));
    page.extend(outcome.position.iter().map(|own| Block::Paragraph(format!("Axle: {own}."))));
    page.add_table(ranking(outcome, n));
    page.add(Block::Note(how_ranked(outcome)));
    page.extend(together(outcome));
    page.add(Block::heading("What speaks for and against"));
    page.add_table(evidence(outcome));
    page.add(Block::note(
        "Each reading, all others known: how probable with the cause over how probable without; from 2 it speaks for or against, from \
         10 strongly.",
    ));
    if !outcome.ribs.is_empty() {
        page.add(Block::Heading(format!("Ribs as seen and as {} predicts", cause(outcome.leader().cause))));
        page.add_table(ribs(outcome, n));
    }
    page.extend(checks(outcome));
    page.add(Block::heading("What follows"));
    page.add(follows(outcome));
    page.extend(defaults(card, JSON));
    page.add(cautions());
    page
}

fn ranking(outcome: &ExplainOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("cause"),
        Column::number("probability", "%"),
        Column::number("before", "%"),
        Column::plain("fit"),
        Column::words("how large it would be"),
    ]);
    let share = |share: f64| fixed(100.0 * share, 1);
    for own in &outcome.causes {
        let fit = if own.fit < FITS { "none".to_owned() } else { fixed(own.fit, 2) };
        let size = size(own, n).unwrap_or_else(|| "-".to_owned());
        table.add_row([cause(own.cause).to_owned(), share(own.posterior), share(own.prior), fit, size]);
    }
    table
}

fn how_ranked(outcome: &ExplainOutcome) -> String {
    format!(
        "Before: weights of causes before the readings, invented; `priors` of the sheet changes them. Fit: probability that readings lie \
         as far from the prediction as these. A cause leads from {} %. Beside the errors of readings \
         the tire face itself is taken to be off by {} % between ribs and {} % between tires. \
         Toe: positive toe-in; camber: negative, tops lean in.",
        fixed(100.0 * LEADS, 0),
        fixed(100.0 * outcome.discrepancy.rib, 0),
        fixed(100.0 * outcome.discrepancy.tire, 0)
    )
}

/// Two causes at once.
fn together(outcome: &ExplainOutcome) -> Vec<Block> {
    let mut table = Table::new([
        Column::words("two causes at once"),
        Column::number("probability", "%"),
        Column::plain("times the better one"),
        Column::plain("fit"),
    ]);
    let rows = outcome.pairs.iter().filter(|own| own.posterior >= LEAST_PAIR).take(PAIRS);
    let mut any = false;
    for own in rows {
        any = true;
        let [first, second] = own.causes.map(cause);
        let gain = own.log_gain.exp();
        let times = if gain > 1000.0 { "> 1000".to_owned() } else { fixed(gain, 1) };
        let fit = if own.fit < FITS { "none".to_owned() } else { fixed(own.fit, 2) };
        table.add_row([format!("{first} + {second}"), fixed(100.0 * own.posterior, 1), times, fit]);
    }
    if !any {
        return Vec::new();
    }
    vec![
        Block::Table(table),
        Block::Note(format!(
            "Probability: among single causes and pairs, where {} % of worn axles have two causes at once (invented). Times: how much \
             more probable the readings are with both than with the better one alone. Wear of two causes is taken to multiply.",
            fixed(100.0 * TWO_AT_ONCE, 0)
        )),
    ]
}

fn shown(outcome: &ExplainOutcome) -> &[RankedCause] {
    &outcome.causes[..outcome.causes.len().min(SHOWN)]
}

/// A row for each kind of reading, a column for each of the first causes.
fn evidence(outcome: &ExplainOutcome) -> Table {
    let columns = shown(outcome).iter().map(|own| Column::words(cause(own.cause)));
    let mut table = Table::new(std::iter::once(Column::words("reading")).chain(columns));
    for (place, first) in outcome.leader().evidence.iter().enumerate() {
        let says = shown(outcome).iter().map(|own| weight(own.evidence[place].log_ratio).to_owned());
        table.add_row(std::iter::once(first.evidence.words()).chain(says));
    }
    table
}

fn ribs(outcome: &ExplainOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("tire"),
        Column::plain("rib from inner shoulder"),
        Column::shown("seen", Kind::Length, n),
        Column::shown("predicted", Kind::Length, n),
    ]);
    for own in &outcome.ribs {
        let depth = |depth: f64| {
            fixed(n.scaled(depth, Kind::Length), if n.unit(Kind::Length) == "mm" { 1 } else { 2 })
        };
        let tire = own.slot.of_side(own.side.word());
        table.add_row([tire, own.rib.to_string(), depth(own.seen), depth(own.predicted)]);
    }
    table
}

fn checks(outcome: &ExplainOutcome) -> Vec<Block> {
    let told = |information: f64| match outcome.entropy > 0.0 {
        true => fixed(100.0 * information / outcome.entropy, 0),
        false => "0".to_owned(),
    };
    let lines = outcome.checks.iter().take(CHECKS);
    let line = |own: &axlebow_study::NextCheck| {
        format!("{} ({} % of the doubt): {}", own.evidence.words(), told(own.information), how(own.evidence))
    };
    let items: Vec<String> = lines.map(line).collect();
    if items.is_empty() {
        return Vec::new();
    }
    vec![
        Block::heading("What to check next, what tells most first"),
        Block::List(items),
        Block::note(
            "Share of the doubt: expected fall of the entropy of the causes by the reading, of the entropy now.",
        ),
    ]
}

/// The remedies of the leaders; none where nothing fits.
fn follows(outcome: &ExplainOutcome) -> Block {
    if let (Verdict::NothingFits, Some(pair)) = (outcome.verdict, outcome.two_at_once()) {
        return Block::List(pair.causes.map(|own| format!("{}: {}", cause(own), remedy(own))).to_vec());
    }
    if outcome.verdict == Verdict::NothingFits {
        let none = "No remedy follows: the probabilities would hold if one of these causes alone had made these readings.";
        return Block::Paragraph(none.to_owned());
    }
    let leaders = outcome.leaders().iter().take(SHOWN);
    Block::List(leaders.map(|own| format!("{}: {}", cause(own.cause), remedy(own.cause))).collect())
}

fn cautions() -> Block {
    let items = [
        "These are probabilities of a model with invented weights; the readings at the axle decide, not this page.",
        "Chock the wheels, support the axle on rated stands, never work under a jack alone; let air out of springs by their maker's \
         procedure.",
        "Release a spring brake by its maker's procedure only; never open its chamber.",
        "Bearings, U-bolts and alignment go by the maker's torque and procedure; local codes and licensed practice come first.",
        "A tire with cuts, bulges, exposed cords or depth below the legal limit comes off before anything else.",
    ];
    let items = items.map(str::to_owned).to_vec();
    Block::Caution(Caution { heading: "Before anybody works at the axle:".to_owned(), items })
}
