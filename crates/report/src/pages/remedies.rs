//! The tables of remedies.

use axlebow_study::{CupGrowth, Money, RankBy, RemediesOutcome, Standing, State, Tried};
use axlebow_units::Kind;

use super::cautions::welding;
use super::notes::{CAMBER_SIGN, JSON, defaults};
use crate::ModelCard;
use crate::answer::remedies_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, FAILS, Page, Table};
use crate::words::growth::amplified;
use crate::words::payback::may_cost;
use crate::words::remedies::{added_mass, change, done_by, excess_off, name, needs_and_risks, uses, welds};

/// Remedies by rank, those that checks refuse, those that do nothing or cannot be; what each needs and risks; cautions.
pub fn remedies(outcome: &RemediesOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, remedies_answer(outcome, card));
    page.add_table(ranking(outcome, n));
    page.add(Block::note(how(outcome)));
    page.extend(ranked_by(outcome));
    page.extend(outcome.money.as_ref().map(|money| Block::note(what_it_may_cost(money))));
    page.extend(needs(outcome, n));
    page.extend(left_out(outcome));
    page.extend(defaults(card, JSON));
    if outcome.helping.iter().chain(&outcome.idle).any(|tried| welds(&tried.remedy)) {
        page.add(welding());
    }
    page
}

fn ranking(outcome: &RemediesOutcome, n: Numbers) -> Table {
    let mut columns = vec![
        Column::words("remedy"),
        Column::words("done by"),
        Column::shown("camber", Kind::Angle, n),
        Column::plain("shoulder wear"),
        Column::number("excess off", "%"),
        Column::shown("mass", Kind::Mass, n),
        Column::number("utilization", "%"),
        cups_column(outcome, n),
    ];
    if outcome.road.is_some() {
        columns.insert(3, Column::shown("peak to peak", Kind::Angle, n));
    }
    if let Some(money) = &outcome.money {
        columns.push(Column::number("may cost", &money.currency));
    }
    let mut table = Table::new(columns);
    let row = |[name, by, off]: [String; 3], state: &State, worth: &str| {
        let mass = added_mass(outcome, state).map_or("0".to_owned(), |added| n.bare(added, Kind::Mass));
        let mut cells = vec![
            name,
            by,
            n.bare(state.camber.of_larger_magnitude(), Kind::Angle),
            fixed(state.shoulder.wear, 2),
            off,
            mass,
        ];
        if let Some(road) = &state.over_road {
            cells.insert(3, n.bare(road.camber_peak_to_peak, Kind::Angle));
        }
        let used = |used: f64| fixed(100.0 * used, 0);
        cells.push(state.binding.as_ref().map_or("-".to_owned(), |own| used(own.utilization)));
        cells.push(cups_cell(outcome, state, n));
        if outcome.money.is_some() {
            cells.push(worth.to_owned());
        }
        cells
    };
    let mark = if outcome.base.failing().is_some() { format!(" ({FAILS})") } else { String::new() };
    table.add_row(row([format!("as it is{mark}"), String::new(), "0".to_owned()], &outcome.base, ""));
    for tried in outcome.helping.iter().chain(&outcome.idle) {
        let mark = match tried.standing(&outcome.base) {
            Standing::Holds => String::new(),
            Standing::StillFails => format!(" (still {FAILS})"),
            Standing::Refused => format!(" ({FAILS})"),
        };
        let by = done_by(&tried.remedy).to_owned();
        table.add_row(row(
            [name(&tried.remedy) + &mark, by, excess_off(outcome, tried)],
            &tried.state,
            &tried.worth.map_or("-".to_owned(), may_cost),
        ));
    }
    table
}

/// How fast cups grow: in km for e-fold where removals have calibrated wear, else for each millimeter worn.
fn cups_column(outcome: &RemediesOutcome, n: Numbers) -> Column {
    match is_calibrated(outcome) {
        true => Column::shown("cups, e-fold in", Shown::RoadDistance, n),
        false => Column::plain("cups per mm"),
    }
}

fn cups_cell(outcome: &RemediesOutcome, state: &State, n: Numbers) -> String {
    let told = |cups: CupGrowth| match (is_calibrated(outcome), cups.distance_for_e_fold) {
        (true, Some(distance)) => n.bare(distance, Shown::RoadDistance),
        (true, None) => "leveled".to_owned(),
        (false, _) => amplified(cups.rate, 1e-3),
    };
    state.cups.map_or("-".to_owned(), told)
}

fn is_calibrated(outcome: &RemediesOutcome) -> bool {
    outcome.base.cups.is_some_and(|cups| cups.distance_for_e_fold.is_some())
}

fn what_it_may_cost(money: &Money) -> String {
    format!(
        "May cost: what a remedy is worth for each axle over {} years, discounted: what tires cost less, and its mass, by the fleet, tires \
         and prices of {}. Price, downtime and inspections together may come to so much; a dearer one does not pay. -: another tire, whose price is not in them.",
        fixed(money.years, 0),
        money.prices
    )
}

/// By what remedies are ranked, where it is not their wear.
fn ranked_by(outcome: &RemediesOutcome) -> Option<Block> {
    let by = match outcome.rank {
        RankBy::Wear => return None,
        RankBy::Cups => "growth of cups",
        RankBy::Camber => "camber under load",
        RankBy::Mass => "axle mass",
        RankBy::Money => "what they may cost",
    };
    Some(Block::Note(format!("Ranked by {by}, after how the checks stand.")))
}

fn how(outcome: &RemediesOutcome) -> String {
    let over = outcome.road.as_ref().map_or("standing".to_owned(), |road| format!("over {road}"));
    format!(
        "Shoulder wear: that of the shoulder that wears most {over}, over the same rib of today's tires upright and straight. \
         Excess off: share of what is above 1 that the remedy takes off. Utilization: greatest share of its limit that a check of \
         `axlebow strength` uses, in all load cases. Mass: axle mass added. Cups: growth of the wave that grows fastest over the \
         speeds held, its amplification for each millimeter of tread worn, 1 or less is leveled (`axlebow growth`). Camber: under load, as made and by load. {CAMBER_SIGN}"
    )
}

/// What each single remedy needs, changes and risks.
fn needs(outcome: &RemediesOutcome, n: Numbers) -> Vec<Block> {
    let mut blocks = vec![Block::heading("What each needs and risks")];
    for tried in outcome.helping.iter().filter(|tried| tried.remedy.parts().len() == 1) {
        let mut items = needs_and_risks(&tried.remedy);
        items.extend(geometry(outcome, tried, n));
        items.extend(refusal(outcome, tried));
        let changes: Vec<String> = tried.changes.iter().map(change).collect();
        items.push(format!("In the model: {}.", changes.join("; ")));
        blocks.push(Block::Paragraph(format!("{}:", name(&tried.remedy))));
        blocks.push(Block::List(items));
    }
    if blocks.len() == 1 { Vec::new() } else { blocks }
}

/// What a remedy that moves the wheels does to track and clearance.
fn geometry(outcome: &RemediesOutcome, tried: &Tried, n: Numbers) -> Option<String> {
    let narrower = outcome.base.track - tried.state.track;
    (narrower.abs() > 1e-6).then(|| {
        format!(
            "Track {} narrower; from tire to seat {} are left, drum, air lines and frame are not in the model.",
            n.full(narrower, Shown::Place),
            n.full(tried.state.seat_clearance, Shown::Place)
        )
    })
}

/// Which check refuses it.
fn refusal(outcome: &RemediesOutcome, tried: &Tried) -> Option<String> {
    if tried.state.seat_clearance <= 0.0 {
        return Some("The tire meets the seat.".to_owned());
    }
    let binding = tried.state.failing()?;
    let still = match tried.standing(&outcome.base) {
        Standing::StillFails => "still ",
        Standing::Holds | Standing::Refused => "",
    };
    Some(format!("{still}{FAILS}: {}.", uses(binding)))
}

/// Remedies that cannot be, and those that this axle does not need.
fn left_out(outcome: &RemediesOutcome) -> Vec<Block> {
    let mut items: Vec<String> =
        outcome.impossible.iter().map(|(remedy, why)| format!("{}: {why}.", name(remedy))).collect();
    if !outcome.not_needed.is_empty() {
        let all: Vec<String> = outcome.not_needed.iter().map(name).collect();
        items.push(format!("Nothing to do here for: {}.", all.join(", ")));
    }
    match items.is_empty() {
        true => Vec::new(),
        false => vec![Block::heading("Not tried"), Block::List(items)],
    }
}
