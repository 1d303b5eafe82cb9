//! What a study will do, before it does it.

use axlebow_study::{DesignCost, Distribution, SearchOptions, Spread, Study, StudyKind, Together, Varied};

use crate::ModelCard;
use crate::number::{Numbers, significant};
use crate::page::{Block, Column, Page, Table};
use crate::words::study::{key_words, varied_words};
use crate::words::uncertainty::drawn;

/// How many designs, what is varied, about how long it takes and how much it writes.
///
/// Arguments: `cost` of a design, if it was tried; `threads` that run them.
pub fn study_size(study: &Study, (cost, threads): (&DesignCost, usize), card: &ModelCard) -> Page {
    let title = format!("{}: {}", study.name, kind(study));
    let mut page =
        Page { title: Some(title), answer: size_answer(study, (cost, threads)), ..Page::default() };
    if !study.varied.is_empty() {
        page.add_table(varied_table(study, Numbers { system: card.system }));
    }
    page.extend(study.links.iter().map(|link| {
        let keys = link.paths.iter().map(|path| key_words(path)).collect::<Vec<_>>().join(", ");
        Block::note(format!("{keys} follows: {}.", link.value.text()))
    }));
    page
}

/// How many designs there are, and how long they take.
fn size_answer(study: &Study, (cost, threads): (&DesignCost, usize)) -> Vec<String> {
    let each = time(cost.time.as_secs_f64());
    match &study.search {
        Some(ask) => {
            vec![format!("{}.", searched(study, ask)), format!("A design takes about {each} on one thread.")]
        }
        None => {
            let size = study_time(study.count(), (cost, threads));
            let tried = format!("{} designs were tried: {each} each on one thread", cost.tried);
            vec![format!("{}.", counted(study)), format!("{size} ({tried}).")]
        }
    }
}

fn varied_table(study: &Study, numbers: Numbers) -> Table {
    let mut table = Table::new(["Varied", "values"].map(Column::words));
    study.varied.iter().for_each(|own| table.add_row([varied_words(own), values(study, own, numbers)]));
    table
}

/// The size of so many designs in a line, such as "1000000 designs, about 9 s on 2 threads, 700 MB as CSV".
pub fn study_time(designs: usize, (cost, threads): (&DesignCost, usize)) -> String {
    let count = designs as f64;
    let seconds = count * cost.time.as_secs_f64() / threads.max(1) as f64;
    let threads = if threads == 1 { "one thread".to_owned() } else { format!("{threads} threads") };
    format!("{designs} designs, about {} on {threads}, {} as CSV", time(seconds), size(count * cost.bytes))
}

fn kind(study: &Study) -> &'static str {
    match study.kind {
        StudyKind::Sweep => "a sweep",
        StudyKind::SideBySide { .. } => "variants side by side",
        StudyKind::Uncertainty => "an uncertainty",
        StudyKind::Search => "a search",
    }
}

/// How its designs were drawn, as provenance says it, such as "sample: 1000 rows of Sobol's sequence, seed 1"; none where a
/// study draws nothing.
pub fn sampling(study: &Study) -> Option<String> {
    match (&study.search, &study.together) {
        (Some(ask), _) => Some(format!("search: {} starts, seed {}", ask.starts, ask.seed)),
        (None, Together::Sampled(plan)) => {
            Some(format!("sample: {} rows of {}, seed {}", plan.rows, spread(plan.spread), plan.seed))
        }
        (None, Together::Grid | Together::List) => None,
    }
}

fn spread(spread: Spread) -> &'static str {
    match spread {
        Spread::LatinHypercube => "a Latin hypercube",
        Spread::Sobol => "Sobol's sequence",
        Spread::Random => "a random sample",
    }
}

/// How the number of designs comes about.
fn counted(study: &Study) -> String {
    let variants = match study.variants.len() {
        1 => "1 variant".to_owned(),
        several => format!("{several} variants"),
    };
    let each = match &study.together {
        _ if study.varied.is_empty() => String::new(),
        Together::Grid => {
            let counts = study.varied.iter().map(|varied| varied.values.len().to_string());
            format!(
                " × {} combinations ({})",
                study.count_of_variant(),
                counts.collect::<Vec<_>>().join(" × ")
            )
        }
        Together::List => format!(" × {} of a list", study.count_of_variant()),
        Together::Sampled(plan) if plan.with_indices => format!(
            " × {} rows of {} (seed {}) × {} designs for the indices",
            plan.rows,
            spread(plan.spread),
            plan.seed,
            plan.each()
        ),
        Together::Sampled(plan) => {
            format!(" × {} points of {} (seed {})", plan.rows, spread(plan.spread), plan.seed)
        }
    };
    let rides = match study.rides.len() {
        0 => String::new(),
        1 => ", each driven over a road".to_owned(),
        several => format!(", each driven over {several} roads"),
    };
    format!("{} designs: {variants}{each}{rides}", study.count())
}

/// What a search goes through.
fn searched(study: &Study, ask: &SearchOptions) -> String {
    let several = |count: usize, thing: &str| format!("{count} {thing}{}", if count == 1 { "" } else { "s" });
    let continuous = study.varied.iter().filter(|varied| varied.distribution.is_some()).count();
    let combinations = several(study.count(), "combination");
    match continuous {
        0 => format!("{combinations} of variants, choices and listed values, all solved"),
        _ => format!(
            "{combinations} of variants, choices and listed values; in each {} looked for from {}, some tens of designs a place",
            several(continuous, "continuous key"),
            several(ask.starts, "place")
        ),
    }
}

fn values(study: &Study, varied: &Varied, numbers: Numbers) -> String {
    use Distribution::{LogUniform, Uniform};
    let show = |value: f64| numbers.short(value, varied.kind);
    if let (Some(_), Some(Uniform { from, to } | LogUniform { from, to })) =
        (&study.search, &varied.distribution)
    {
        return format!("any from {} to {}", show(*from), show(*to));
    }
    match (varied.values.as_slice(), varied.choices.as_slice()) {
        (_, choices @ [_, ..]) => {
            let names: Vec<&str> = choices.iter().map(|choice| choice.name.as_str()).collect();
            names.join(", ").replace(char::is_control, "\u{fffd}")
        }
        ([], _) => drawn(varied, numbers),
        (values, _) if values.len() <= 4 => {
            values.iter().map(|value| show(*value)).collect::<Vec<_>>().join(", ")
        }
        (values, _) => {
            format!("{} from {} to {}", values.len(), show(values[0]), show(values[values.len() - 1]))
        }
    }
}

/// A time in words, to two digits.
fn time(seconds: f64) -> String {
    match seconds {
        s if s < 1e-3 => format!("{} µs", significant(s * 1e6, 2)),
        s if s < 1.0 => format!("{} ms", significant(s * 1e3, 2)),
        s if s < 120.0 => format!("{} s", significant(s, 2)),
        s if s < 7200.0 => format!("{} min", significant(s / 60.0, 2)),
        s => format!("{} h", significant(s / 3600.0, 2)),
    }
}

fn size(bytes: f64) -> String {
    match bytes {
        b if b < 1e6 => format!("{} kB", significant(b / 1e3, 2)),
        b if b < 1e9 => format!("{} MB", significant(b / 1e6, 2)),
        b => format!("{} GB", significant(b / 1e9, 2)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_and_sizes_are_short() {
        assert_eq!(
            [8.3e-6, 0.0123, 12.3, 600.0, 90000.0].map(time),
            ["8.3 µs", "12 ms", "12 s", "10 min", "25 h"]
        );
        assert_eq!([1234.0, 7.04e8, 2e9].map(size), ["1.2 kB", "704 MB", "2.0 GB"]);
    }
}
