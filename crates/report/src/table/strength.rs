//! The table of strength checks.

use axlebow_axle::{Governing, PlacedCheck, StrengthCase, StrengthOutcome, WeldBand};
use axlebow_strength::{Bound, Check, Verdict};

use super::cautions::{clamping, welding};
use super::flex::{WIDTH, warnings};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use super::preheat::preheat;
use super::weld_band::weld_bands;
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed};

/// Checks that a case shows when all are not asked for: those that use most of their limit.
const FEW: usize = 3;

/// Share of its limit below which a value is shown as 0.
const NOTHING: f64 = 1e-3;

/// For each load case the checks that use most of their limit, or all; then walls, the band of welds, sources, what was
/// assumed, warnings and cautions.
pub fn strength(outcome: &StrengthOutcome, bands: &[WeldBand], card: &ModelCard, all: bool) -> String {
    let numbers = Numbers { system: card.system };
    let invented = &card.invented_line();
    let factor = fixed(outcome.ask.safety_factor, 2);
    let asked = format!(
        "Safety factor {factor}: every strength (yield, weld, clamp crush, local buckling) is divided by it. Welds and classes of walls by {}.",
        outcome.ask.rules.title()
    );
    let mut text = paragraph(&card.name, WIDTH, 0) + invented + &paragraph(&asked, WIDTH, 0);
    for case in &outcome.cases {
        text += &format!("\n{}: {}\n", case.name, case.description);
        text += &case_table(case, numbers, all);
    }
    if !outcome.walls.is_empty() {
        text += "\nWalls\n";
        text += &check_table(outcome.walls.iter(), numbers);
    }
    text += &preheat(&outcome.preheat);
    text += &verdict(outcome);
    text += &weld_bands(bands, numbers);
    text += &sources(outcome);
    for assumption in &outcome.assumptions {
        text += &paragraph(&format!("Assumed: {assumption}"), WIDTH, 2);
    }
    text += &(assumed(card) + &warnings(&outcome.warnings) + &welding());
    if outcome.clamped { text + &clamping() } else { text }
}

fn case_table(case: &StrengthCase, n: Numbers, all: bool) -> String {
    if case.checks.is_empty() {
        return "nothing could be checked\n".to_owned();
    }
    if all {
        return check_table(case.checks.iter(), n);
    }
    let mut most: Vec<&PlacedCheck> = case.checks.iter().collect();
    most.sort_by(|a, b| b.check.utilization().total_cmp(&a.check.utilization()));
    check_table(most.into_iter().take(FEW), n)
}

fn check_table<'a>(checks: impl Iterator<Item = &'a PlacedCheck>, n: Numbers) -> String {
    let heading = ["Place", "check", "verdict", "y", "value", "limit", "util."];
    let units = ["", "", "", n.unit(Shown::Place), "", "", "%"];
    let names = heading.iter().zip(units).map(|(name, unit)| format!("{name}\n{unit}"));
    let mut grid = Grid::new(3, names);
    for PlacedCheck { place, y, check } in checks {
        let value = |value: f64| n.significant(value, check.kind);
        let shown = if check.value.abs() < NOTHING * check.limit.abs() { 0.0 } else { check.value };
        let sign = if check.bound == Bound::AtMost { "<= " } else { ">= " };
        grid.row([
            place.clone(),
            check.what.clone(),
            word(check),
            y.map_or("-".to_owned(), |y| n.bare(y, Shown::Place)),
            value(shown),
            format!("{sign}{}", value(check.limit)),
            fixed(100.0 * check.utilization(), 0),
        ]);
    }
    grid.text()
}

/// The verdict, in capitals where the check fails.
fn word(check: &Check) -> String {
    let verdict = check.verdict();
    if verdict == Verdict::Fails { verdict.word().to_uppercase() } else { verdict.word().to_owned() }
}

/// What all checks together say, and by what rule.
fn verdict(outcome: &StrengthOutcome) -> String {
    let Some(Governing { placed, case }) = outcome.governing() else { return String::new() };
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
    format!("\n{}", paragraph(&text, WIDTH, 2))
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
fn sources(outcome: &StrengthOutcome) -> String {
    let all = outcome.cases.iter().flat_map(|case| &case.checks).chain(&outcome.walls);
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
    if lines.is_empty() {
        return String::new();
    }
    let lines: String = lines.iter().map(|line| paragraph(line, WIDTH, 2)).collect();
    format!("\nSources\n{lines}")
}
