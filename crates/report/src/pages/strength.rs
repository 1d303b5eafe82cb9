//! The table of strength checks.

use axlebow_axle::{Governing, NotMade, PlacedCheck, StrengthCase, StrengthOutcome, WeldBand};
use axlebow_strength::{Bound, Check, Verdict};

use super::cautions::{clamping, welding};
use super::notes::{JSON, defaults, warnings};
use super::preheat::preheat;
use super::weld_band::weld_bands;
use crate::ModelCard;
use crate::answer::strength_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, FAILS, Page, Table};

/// Checks that a case shows when all are not asked for: those that use most of their limit.
const FEW: usize = 3;

/// Share of its limit below which a value is shown as 0.
const NOTHING: f64 = 1e-3;

/// For each load case the checks that use most of their limit, or all; then walls, the band of welds, sources, what was
/// assumed, warnings and cautions.
pub fn strength(outcome: &StrengthOutcome, bands: &[WeldBand], card: &ModelCard, all: bool) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, strength_answer(outcome, card));
    page.add(Block::Paragraph(options(outcome)));
    page.extend(outcome.cases.iter().flat_map(|case| case_blocks(case, n, all)));
    if !outcome.walls.is_empty() {
        page.add_table(check_table(outcome.walls.iter(), n).with_caption("Walls"));
    }
    if !outcome.bearings.is_empty() {
        let caption = format!(
            "Wheel bearings, running straight under the rated load; {} of them reach the distance",
            outcome.ask.bearing_reliability.word()
        );
        page.add_table(check_table(outcome.bearings.iter(), n).with_caption(caption));
    }
    page.extend(not_made(&outcome.not_made));
    page.extend(preheat(&outcome.preheat, card.system));
    page.extend(verdict(outcome).map(Block::Paragraph));
    page.extend(weld_bands(bands, n));
    page.extend(sources(outcome));
    page.extend(assumptions(outcome));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.warnings));
    page.add(welding());
    page.extend(outcome.clamped.then(clamping));
    page
}

/// Checks that could not be made, with what to do.
pub(super) fn not_made(list: &[NotMade]) -> Vec<Block> {
    if list.is_empty() {
        return Vec::new();
    }
    let line = |own: &NotMade| format!("{}: {}: {}; {}.", own.place, own.what, own.reason, own.advice);
    vec![Block::heading("Not made, which is no pass"), Block::List(list.iter().map(line).collect())]
}

/// What the checks were made with.
fn options(outcome: &StrengthOutcome) -> String {
    format!(
        "Safety factor {}: every strength (yield, weld, clamp crush, local buckling) is divided by it. Welds and classes of walls by {}.",
        fixed(outcome.ask.safety_factor, 2),
        outcome.ask.rules.title()
    )
}

fn assumptions(outcome: &StrengthOutcome) -> Vec<Block> {
    if outcome.assumptions.is_empty() {
        return Vec::new();
    }
    vec![Block::heading("Assumed"), Block::List(outcome.assumptions.clone())]
}

fn case_blocks(case: &StrengthCase, n: Numbers, all: bool) -> Vec<Block> {
    let title = format!("{}: {}", case.name, case.description);
    if case.checks.is_empty() {
        return vec![Block::Heading(title), Block::note("nothing could be checked")];
    }
    let mut shown: Vec<&PlacedCheck> = case.checks.iter().collect();
    shown.sort_by(|a, b| b.check.utilization().total_cmp(&a.check.utilization()));
    if !all {
        shown.truncate(FEW);
    }
    vec![Block::Table(check_table(shown.into_iter(), n).with_caption(title))]
}

fn check_table<'a>(checks: impl Iterator<Item = &'a PlacedCheck>, n: Numbers) -> Table {
    let words = ["Place", "check", "verdict"].map(Column::words);
    let numbers = [
        Column::shown("y", Shown::Place, n),
        Column::plain("value"),
        Column::plain("limit"),
        Column::number("util.", "%"),
    ];
    let mut table = Table::new(words.into_iter().chain(numbers));
    for PlacedCheck { place, y, check, .. } in checks {
        let value = |value: f64| n.checked(value, check.kind);
        let shown = if check.value.abs() < NOTHING * check.limit.abs() { 0.0 } else { check.value };
        let sign = if check.bound == Bound::AtMost { "<= " } else { ">= " };
        table.add_row([
            place.clone(),
            check.what.clone(),
            word(check),
            y.map_or("-".to_owned(), |y| n.bare(y, Shown::Place)),
            value(shown),
            format!("{sign}{}", value(check.limit)),
            fixed(100.0 * check.utilization(), 0),
        ]);
    }
    table
}

/// The verdict, in capitals where the check fails.
fn word(check: &Check) -> String {
    let verdict = check.verdict();
    if verdict == Verdict::Fails { FAILS.to_owned() } else { verdict.word().to_owned() }
}

/// What all checks together say, and by what rule.
fn verdict(outcome: &StrengthOutcome) -> Option<String> {
    let Governing { placed, case } = outcome.governing()?;
    let count = |verdict| outcome.checks().filter(|placed| placed.check.verdict() == verdict).count();
    let (all, failing) = (outcome.checks().count(), count(Verdict::Fails));
    let mut text = match failing {
        0 => "Passes: no check fails.".to_owned(),
        1 => format!("Fails: 1 check of {all} is past its limit."),
        _ => format!("Fails: {failing} checks of {all} are past their limits."),
    };
    let used = fixed(100.0 * placed.check.utilization(), 0);
    let case = case.map_or(String::new(), |case| format!(" in the case {}", case.name));
    text += &format!(
        " Most of its limit, {used} %, is used by the {} at {}{case}",
        placed.check.what, placed.place
    );
    if !placed.check.passed() {
        text += &format!("; {}", placed.check.advice);
    }
    text += &format!(".{} {RULE}", watched(outcome));
    Some(text)
}

const RULE: &str = "Any check that fails, in any case shown, makes the exit code 1; `watch` only advises.";

/// The checks that advise and are past their limits.
fn watched(outcome: &StrengthOutcome) -> String {
    let past = outcome.checks().filter(|placed| placed.check.verdict() == Verdict::Watch);
    let words = |placed: &PlacedCheck| {
        let used = fixed(100.0 * placed.check.utilization(), 0);
        format!("{} at {}, {used} %", placed.check.what, placed.place)
    };
    let past: Vec<String> = past.map(words).collect();
    if past.is_empty() { String::new() } else { format!(" To watch: {}.", past.join("; ")) }
}

/// Each source once.
fn sources(outcome: &StrengthOutcome) -> Vec<Block> {
    let all =
        outcome.cases.iter().flat_map(|case| &case.checks).chain(&outcome.walls).chain(&outcome.bearings);
    let steels = outcome.preheat.iter().filter_map(|steel| steel.check.as_ref());
    let mut named: Vec<(&str, &str)> = Vec::new();
    for Check { what, source, .. } in all.map(|placed| &placed.check).chain(steels) {
        // A check in a heat-affected zone goes by the source of the one outside it.
        let told = |own: &(&str, &str)| what.starts_with(own.0) && own.1 == *source;
        if !source.is_empty() && !named.iter().any(told) {
            named.push((what, source));
        }
    }
    let lines = named.iter().map(|(what, source)| format!("{what}: {}.", source.trim_end_matches('.')));
    let lines: Vec<String> = lines.collect();
    match lines.is_empty() {
        true => Vec::new(),
        false => vec![Block::heading("Sources"), Block::List(lines)],
    }
}
