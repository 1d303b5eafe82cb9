//! The tables of a life.

use axlebow_axle::{BearingLife, DetailLife, LifeOutcome};
use axlebow_strength::MeanStress;
use axlebow_units::Kind;

use super::cautions::welding;
use super::notes::{JSON, defaults, warnings};
use super::strength::not_made;
use crate::ModelCard;
use crate::answer::{life_answer, years_words};
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};

/// Years to a crack at each detail with its category, where the damage comes from, bearings, and what was not checked.
pub fn life(outcome: &LifeOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, life_answer(outcome, card));
    page.add(Block::Paragraph(how(outcome, n)));
    if !outcome.details.is_empty() {
        page.add_table(details(outcome, n));
        page.add(Block::note(SPREAD));
        page.add_table(damage(outcome));
        page.add(Block::note(SPECTRAL));
    }
    if !outcome.bearings.is_empty() {
        page.add_table(bearings(outcome, n));
    }
    page.extend(not_made(&outcome.not_made));
    page.extend(categories(outcome));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.warnings));
    page.add(welding());
    page
}

const SPREAD: &str = "Years until 5 %, half and 95 % of such details have cracked, by the scatter of the S-N curve alone; the duty and \
     the loads scatter too.";

const SPECTRAL: &str = "Spectral / counted: damage of the random roads by their spectra (Dirlik) over that by counted cycles. Far from \
     1: tires leave the road, a sample is short, or only its rarest cycles pass the cut-off. Not given where compression counts less.";

fn how(outcome: &LifeOutcome, n: Numbers) -> String {
    format!(
        "Duty: {}, {} a year. Each random road is driven over a sample, each bump once; cycles are counted by ASTM E1049 and \
         added by Miner's rule with the curve of each detail, {}. Scatter of log10 N: {}.",
        outcome.duty,
        n.distance(outcome.distance),
        match outcome.mean_stress {
            MeanStress::Ignored => "as welded (the mean stress does not count)",
            MeanStress::Unwelded =>
                "as welded, but in steel without weld 60 % of compression count (EN 1993-1-9, 7.2.1)",
            MeanStress::Relieved => "as stress-relieved: 60 % of compression count (EN 1993-1-9, 7.2.1)",
        },
        fixed(outcome.scatter, 2)
    )
}

/// Years in a cell.
fn years(value: f64) -> String {
    years_words(value).trim_end_matches(" years").replace("more than ", "> ").replace("less than ", "< ")
}

fn details(outcome: &LifeOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Detail"),
        Column::shown("y", Shown::Place, n),
        Column::shown("category", Kind::Stress, n),
        Column::shown("greatest range", Kind::Stress, n),
        Column::number("5 %", "years"),
        Column::number("median", "years"),
        Column::number("95 %", "years"),
    ]);
    for own in &outcome.details {
        let stresses = [own.detail.category, own.greatest_range].map(|stress| n.bare(stress, Kind::Stress));
        let cells = [own.name.clone(), n.bare(own.y, Shown::Place)];
        table.add_row(cells.into_iter().chain(stresses).chain(own.years.map(years)));
    }
    table
}

fn damage(outcome: &LifeOutcome) -> Table {
    let shares = ["roads", "bumps", "braking, turns", "loading"].map(|head| Column::number(head, "%"));
    let ratio = Column::plain("spectral / counted");
    let mut table = Table::new([Column::words("Damage of")].into_iter().chain(shares).chain([ratio]));
    for DetailLife { name, shares, spectral_ratio, .. } in &outcome.details {
        let parts = [shares.roads, shares.bumps, shares.events, shares.loadings];
        let parts = parts.map(|share| fixed(100.0 * share, 0));
        let ratio = spectral_ratio.map_or("-".to_owned(), |ratio| fixed(ratio, 2));
        table.add_row([name.clone()].into_iter().chain(parts).chain([ratio]));
    }
    table
}

fn bearings(outcome: &LifeOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Wheel bearing"),
        Column::shown("mean equivalent load", Kind::Force, n),
        Column::plain("distance"),
        Column::number("life", "years"),
    ]);
    for BearingLife { place, mean_load, distance, years: own, .. } in &outcome.bearings {
        table.add_row([place.clone(), n.bare(*mean_load, Kind::Force), n.distance(*distance), years(*own)]);
    }
    let caption = format!(
        "Life that {} of such bearings reach (ISO 281), roads and events together; bumps do not count",
        outcome.reliability.word()
    );
    table.with_caption(caption)
}

/// Each category once, with what chose it.
fn categories(outcome: &LifeOutcome) -> Vec<Block> {
    let mut lines: Vec<String> = Vec::new();
    for DetailLife { name, detail, geometry, .. } in &outcome.details {
        let line = format!(
            "{name}: {geometry}: \"{}\", {} Table {}.",
            detail.words,
            detail.rules.source().split(',').next().unwrap_or_default(),
            detail.table
        );
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    if lines.is_empty() {
        return Vec::new();
    }
    lines.push("Categories are from memory: look them up before a report goes out.".to_owned());
    vec![Block::heading("Categories and what chose them"), Block::List(lines)]
}
