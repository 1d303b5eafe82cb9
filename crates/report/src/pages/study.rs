//! Tables of a study.

use axlebow_study::{Row, StudyKind, StudyOutcome, StudySummary, name};
use axlebow_units::Kind;

use super::notes::{CAMBER_SIGN, JSON, defaults};
use super::thinned::{ROWS, decimals, thinned};
use crate::ModelCard;
use crate::answer::{study_answer, study_details};
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::study::{StudyWords, shown, varied_words};

/// Lines that are shown.
const LINES: usize = 20;

/// The tables of a study: what it shows in sentences, designs of equal mass, and about twelve designs of each
/// line.
///
/// In the units of `card.system`; camber is positive with the tire's top outward.
pub fn study(outcome: &StudyOutcome, card: &ModelCard) -> Page {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    let beside = matches!(outcome.kind, StudyKind::SideBySide { .. });
    let model = if beside { String::new() } else { format!("{}, ", card.name) };
    let title = format!("{}: {model}case {}", outcome.name, outcome.case);
    let mut page = Page::titled(title, card, study_answer(outcome, card));
    let notes = outcome.note.iter().map(|note| format!("Note: {note}"));
    let details = study_details(outcome, card).into_iter().chain(notes).chain(seat_tables(outcome));
    page.extend(details.map(Block::Paragraph));
    page.extend(rides(&words));
    page.extend(designs(&words));
    page.add(Block::note(CAMBER_SIGN));
    if outcome.summary.is_none() {
        page.extend(super::study_rank::ranked(&words));
    }
    page.extend(words.warnings().into_iter().map(Block::Warning));
    page.extend(outcome.stiffened.then(super::cautions::welding));
    page.extend(defaults(card, JSON));
    page
}

/// The designs in the tables that fit the kind of study.
fn designs(words: &StudyWords<'_>) -> Vec<Block> {
    let outcome = words.outcome;
    match (&outcome.summary, outcome.kind) {
        (Some(summary), _) => summarized(words, summary),
        (None, StudyKind::SideBySide { baseline }) => super::study_beside::side_by_side(words, baseline),
        _ => equal_mass(words).into_iter().chain(listed(words)).collect(),
    }
}

/// Designs that are too many to list.
fn summarized(words: &StudyWords<'_>, summary: &StudySummary) -> Vec<Block> {
    use super::study_summary;
    let (first, then) = match words.outcome.uncertainty {
        Some(_) => (study_summary::failures(words, summary), super::uncertainty::uncertainty(words)),
        None => (study_summary::summary(words, summary), equal_mass(words).into_iter().collect()),
    };
    first.into_iter().chain(then).collect()
}

/// Designs as a map, a sample or lines.
fn listed(words: &StudyWords<'_>) -> Vec<Block> {
    let outcome = words.outcome;
    if let Some(lead) = words.mapped() {
        return super::study_map::maps(words, lead);
    }
    if outcome.uncertainty.is_some() {
        return super::uncertainty::uncertainty(words);
    }
    if !outcome.is_grid {
        return super::study_sample::samples(words);
    }
    let line = |line| match outcome.shown.is_empty() {
        true => Block::Table(usual(words, line)),
        false => Block::Table(measures(words, line)),
    };
    outcome.lines().take(LINES).map(line).chain(left_out(outcome)).collect()
}

/// How well tables of walls meet their own seats.
fn seat_tables(outcome: &StudyOutcome) -> impl Iterator<Item = String> {
    outcome.seat_table_errors.iter().map(|[largest, median]| {
        format!(
            "Walls at seats are read off a table of shells; each of its seats left out in turn, the others miss its rotation by {:.1} % at most, half of them by less than {:.1} %.",
            100.0 * largest,
            100.0 * median
        )
    })
}

/// The rides, a line each.
fn rides(words: &StudyWords<'_>) -> Vec<Block> {
    let rides = words.outcome.rides.iter().enumerate();
    let lines: Vec<String> =
        rides.map(|(i, ride)| format!("Ride {}: {}.", ride.name, words.ride(i))).collect();
    if lines.is_empty() {
        return Vec::new();
    }
    vec![Block::heading("Results of a ride are those of the worse wheel."), Block::List(lines)]
}

/// Designs of a line with what the study shows.
fn measures(words: &StudyWords<'_>, line: &[Row]) -> Table {
    let rows: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let along = along(words, &rows);
    let columns = &words.outcome.shown;
    let heading =
        columns.iter().map(|measure| Column::shown(words.measure(measure), shown(measure), words.numbers));
    let mut table = Table::new([axis_column(words)].into_iter().chain(heading));
    for (row, along) in rows.into_iter().zip(along) {
        let cells = columns.iter().map(|measure| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        table.add_row([along].into_iter().chain(cells));
    }
    table.with_caption(words.line(&line[0]))
}

/// Values of the key that varies fastest.
fn along(words: &StudyWords<'_>, rows: &[&Row]) -> Vec<String> {
    super::study_sample::cells(words, rows, words.outcome.varied.len().saturating_sub(1))
}

fn left_out(outcome: &StudyOutcome) -> Option<Block> {
    let lines = outcome.lines().count();
    let long = outcome.lines().any(|line| line.len() > ROWS);
    let more = if lines > LINES { format!("The first {LINES} of {lines} lines. ") } else { String::new() };
    let all = format!("{more}{} designs in all; JSON and CSV have every one.", outcome.rows.len());
    (long || lines > LINES).then_some(Block::Paragraph(all))
}

/// Designs of a line with the usual results.
fn usual(words: &StudyWords<'_>, line: &[Row]) -> Table {
    let alike = words.sides_alike();
    let shown: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let along = along(words, &shown);
    let tight = line.iter().all(|row| row.result.is_err() || words.standing(row, CLEARANCE) == 0.0);
    let columns = COLUMNS.into_iter().filter(|column| column.when.is_none_or(|on| on == alike));
    let columns: Vec<UsualColumn> = columns.filter(|column| !(tight && column.of == CLEARANCE)).collect();
    let heading = columns.iter().map(|own| Column::shown(own.heading, own.shown, words.numbers));
    let mut table = Table::new([axis_column(words)].into_iter().chain(heading));
    for (row, along) in shown.into_iter().zip(along) {
        let cell = |column: &UsualColumn| match &row.result {
            Ok(_) => words.numbers.bare(words.standing(row, column.of), column.shown),
            Err(_) => "-".to_owned(),
        };
        table.add_row([along].into_iter().chain(columns.iter().map(cell)));
    }
    table.with_caption(words.line(&line[0]))
}

/// Result that only bearings with play have.
const CLEARANCE: &str = name::LEFT_CLEARANCE;

/// A column of the table of designs, and whether it is for wheels that lean alike or apart.
struct UsualColumn {
    heading: &'static str,
    shown: Shown,
    /// Name of the result.
    of: &'static str,
    when: Option<bool>,
}

const fn column(heading: &'static str, shown: Shown, of: &'static str, when: Option<bool>) -> UsualColumn {
    UsualColumn { heading, shown, of, when }
}

const COLUMNS: [UsualColumn; 11] = [
    column("axle mass", Shown::Usual(Kind::Mass), name::AXLE_MASS, None),
    column("camber change", Shown::Usual(Kind::Angle), name::LEFT_CAMBER_CHANGE, Some(true)),
    column("of it bending", Shown::Usual(Kind::Angle), name::LEFT_BENDING, Some(true)),
    column("shear", Shown::Usual(Kind::Angle), name::LEFT_SHEAR, Some(true)),
    column("seats", Shown::Usual(Kind::Angle), name::LEFT_SEAT, Some(true)),
    column("bearings", Shown::Usual(Kind::Angle), name::LEFT_BEARING, Some(true)),
    column("bearing clearance", Shown::Usual(Kind::Angle), CLEARANCE, Some(true)),
    column("camber, left", Shown::Usual(Kind::Angle), name::LEFT_CAMBER_CHANGE, Some(false)),
    column("camber, right", Shown::Usual(Kind::Angle), name::RIGHT_CAMBER_CHANGE, Some(false)),
    column("peak stress", Shown::Usual(Kind::Stress), name::PEAK_STRESS, None),
    column("bow", Shown::Deflection, name::BOW, None),
];

fn equal_mass(words: &StudyWords<'_>) -> Option<Block> {
    let outcome = words.outcome;
    if outcome.constant_mass.is_empty() {
        return None;
    }
    let n = words.numbers;
    let mut table = Table::new([
        Column::words("Equal axle mass"),
        Column::words(""),
        axis_column(words),
        Column::shown("camber change", Kind::Angle, n),
        Column::shown("peak stress", Kind::Stress, n),
    ]);
    let values = outcome.constant_mass.iter().flat_map(|equal| &equal.points).map(|row| words.along(row));
    let decimals = decimals(values, 4);
    for equal in &outcome.constant_mass {
        for (i, line) in outcome.lines().take(LINES).enumerate() {
            let mass = if i == 0 { words.mass(equal.mass) } else { String::new() };
            let found = equal.points.iter().find(|point| point.is_in_line_with(&line[0]));
            let cells = found.filter(|row| row.result.is_ok()).map(|row| {
                let camber = n.bare(words.standing(row, name::LEFT_CAMBER_CHANGE), Kind::Angle);
                let stress = n.bare(words.standing(row, name::PEAK_STRESS), Kind::Stress);
                [fixed(words.along(row), decimals), camber, stress]
            });
            let missing = || ["not reached", "-", "-"].map(str::to_owned);
            table.add_row([mass, words.line(&line[0])].into_iter().chain(cells.unwrap_or_else(missing)));
        }
    }
    Some(Block::Table(table))
}

/// The column of the key that varies fastest.
fn axis_column(words: &StudyWords<'_>) -> Column {
    let Some(varied) = words.outcome.varied.last() else { return Column::plain("") };
    Column::number(varied_words(varied), words.unit_of(varied))
}
