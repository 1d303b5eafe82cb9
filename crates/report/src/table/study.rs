//! Tables of a study.

use axlebow_study::{Row, StudyKind, StudyOutcome};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed};
use crate::study_words::{StudyWords, shown, study_findings};

/// Width of running text.
const WIDTH: usize = 98;
/// Rows of a line that are shown, about.
const ROWS: usize = 12;
/// Lines that are shown.
const LINES: usize = 20;

/// The tables of a study: what it shows in sentences, designs of equal mass, and about twelve designs of each
/// line.
///
/// Plain text in the units of `card.system`; camber is positive with the tire's top outward.
pub fn study(outcome: &StudyOutcome, card: &ModelCard) -> String {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    let beside = matches!(outcome.kind, StudyKind::SideBySide { .. });
    let model = if beside { String::new() } else { format!("{}, ", card.name) };
    let mut text = paragraph(&format!("{}: {model}case {}", outcome.name, outcome.case), WIDTH, 2);
    text.push_str(&card.invented_line());
    let notes = outcome.note.iter().map(|note| format!("Note: {note}"));
    let tables = outcome.seat_table_errors.iter().map(|[largest, median]| {
        format!(
            "Walls at seats are read off a table of shells; each of its seats left out in turn, the others miss its rotation by {:.1} % at most, half of them by less than {:.1} %.",
            100.0 * largest,
            100.0 * median
        )
    });
    for sentence in study_findings(outcome, card).into_iter().chain(notes).chain(tables) {
        text.push('\n');
        text.push_str(&paragraph(&sentence, WIDTH, 2));
    }
    text.push_str(&rides(&words));
    if let Some(summary) = &outcome.summary {
        text.push_str(&match outcome.uncertainty {
            Some(_) => {
                super::study_summary::failures(&words, summary) + &super::uncertainty::uncertainty(&words)
            }
            None => super::study_summary::summary(&words, summary) + &equal_mass(&words),
        });
        return text + &warnings(&words) + &cautions(outcome) + &super::flex_brief::assumed(card);
    }
    if let StudyKind::SideBySide { baseline } = outcome.kind {
        text.push_str(&super::study_beside::side_by_side(&words, baseline));
        return text + &ending(&words, card);
    }
    text.push_str(&equal_mass(&words));
    if let Some(lead) = words.mapped() {
        text.push_str(&super::study_map::maps(&words, lead));
        return text + &ending(&words, card);
    }
    if outcome.uncertainty.is_some() {
        return text + &super::uncertainty::uncertainty(&words) + &ending(&words, card);
    }
    if !outcome.is_grid {
        return text + &super::study_sample::samples(&words) + &ending(&words, card);
    }
    for line in outcome.lines().take(LINES) {
        text.push('\n');
        text.push_str(&if outcome.shown.is_empty() { designs(&words, line) } else { measures(&words, line) });
    }
    text.push_str(&left_out(outcome));
    text + &ending(&words, card)
}

/// What every study ends with.
fn ending(words: &StudyWords<'_>, card: &ModelCard) -> String {
    let (warnings, cautions) = (warnings(words), cautions(words.outcome));
    format!("{}{warnings}{cautions}{}", super::study_rank::ranked(words), super::flex_brief::assumed(card))
}

fn warnings(words: &StudyWords<'_>) -> String {
    words.warnings().iter().map(|sentence| super::flex::warning(sentence)).collect()
}

fn cautions(outcome: &StudyOutcome) -> String {
    if outcome.stiffened { super::cautions::welding() } else { String::new() }
}

/// The rides, a paragraph each.
fn rides(words: &StudyWords<'_>) -> String {
    let rides = words.outcome.rides.iter().enumerate();
    let lines =
        rides.map(|(i, ride)| paragraph(&format!("Ride {}: {}.", ride.name, words.ride(i)), WIDTH, 2));
    let worse = "What a ride says is that of the worse wheel.\n";
    let text: String = lines.collect();
    if text.is_empty() { text } else { format!("\n{text}{worse}") }
}

/// Designs of a line with what the study shows.
fn measures(words: &StudyWords<'_>, line: &[Row]) -> String {
    let rows: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let along = along(words, &rows);
    let columns = &words.outcome.shown;
    let heading = columns.iter().map(|measure| {
        let unit = words.numbers.unit(shown(measure));
        stacked(&words.measure(measure), unit)
    });
    let axis = words.axis();
    let (key, unit) = axis.rsplit_once(", ").unwrap_or((&axis, ""));
    let heading: Vec<String> = [stacked(key, unit)].into_iter().chain(heading).collect();
    let mut grid = Grid::new(0, on_one_floor(&heading));
    for (row, along) in rows.into_iter().zip(along) {
        let cells = columns.iter().map(|measure| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        grid.row([along].into_iter().chain(cells));
    }
    format!("{}{}", paragraph(&words.line(&line[0]), WIDTH, 2), grid.text())
}

/// Values of the key that varies fastest.
fn along(words: &StudyWords<'_>, rows: &[&Row]) -> Vec<String> {
    super::study_sample::cells(words, rows, words.outcome.varied.len().saturating_sub(1))
}

fn left_out(outcome: &StudyOutcome) -> String {
    let lines = outcome.lines().count();
    let long = outcome.lines().any(|line| line.len() > ROWS);
    let more = if lines > LINES { format!("The first {LINES} of {lines} lines. ") } else { String::new() };
    if long || lines > LINES {
        format!("\n{more}{} designs in all; JSON and CSV have every one.\n", outcome.rows.len())
    } else {
        String::new()
    }
}

fn designs(words: &StudyWords<'_>, line: &[Row]) -> String {
    let alike = words.sides_alike();
    let shown: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let along = along(words, &shown);
    let tight = line.iter().all(|row| row.result.is_err() || words.standing(row, CLEARANCE) == 0.0);
    let columns = COLUMNS.into_iter().filter(|column| column.when.is_none_or(|on| on == alike));
    let columns: Vec<Column> = columns.filter(|column| !(tight && column.of == CLEARANCE)).collect();
    let heading =
        columns.iter().map(|column| format!("{}\n{}", column.heading, words.numbers.unit(column.shown)));
    let axis = words.axis();
    let (key, unit) = axis.rsplit_once(", ").unwrap_or((&axis, ""));
    let mut grid = Grid::new(0, [format!("{key}\n{unit}")].into_iter().chain(heading));
    for (row, along) in shown.into_iter().zip(along) {
        let cell = |column: &Column| match &row.result {
            Ok(_) => words.numbers.bare(words.standing(row, column.of), column.shown),
            Err(_) => "-".to_owned(),
        };
        grid.row([along].into_iter().chain(columns.iter().map(cell)));
    }
    format!("{}{}", paragraph(&words.line(&line[0]), WIDTH, 2), grid.text())
}

/// Result that only bearings with play have.
const CLEARANCE: &str = "left-clearance";

/// A column of the table of designs, and whether it is for wheels that lean alike or apart.
struct Column {
    heading: &'static str,
    shown: Shown,
    /// Name of the result.
    of: &'static str,
    when: Option<bool>,
}

const fn column(heading: &'static str, shown: Shown, of: &'static str, when: Option<bool>) -> Column {
    Column { heading, shown, of, when }
}

const COLUMNS: [Column; 11] = [
    column("axle mass", Shown::Mass, "axle-mass", None),
    column("camber change", Shown::Angle, "left-camber-change", Some(true)),
    column("of it bending", Shown::Angle, "left-bending", Some(true)),
    column("shear", Shown::Angle, "left-shear", Some(true)),
    column("seats", Shown::Angle, "left-seat", Some(true)),
    column("bearings", Shown::Angle, "left-bearing", Some(true)),
    column("bearing clearance", Shown::Angle, CLEARANCE, Some(true)),
    column("camber, left", Shown::Angle, "left-camber-change", Some(false)),
    column("camber, right", Shown::Angle, "right-camber-change", Some(false)),
    column("peak stress", Shown::Stress, "peak-stress", None),
    column("bow", Shown::Deflection, "bow", None),
];

fn equal_mass(words: &StudyWords<'_>) -> String {
    let outcome = words.outcome;
    if outcome.constant_mass.is_empty() {
        return String::new();
    }
    let n = &words.numbers;
    let heading =
        [words.axis(), n.heading("camber change", Shown::Angle), n.heading("peak stress", Shown::Stress)];
    let mut grid = Grid::new(2, ["Equal axle mass".to_owned(), String::new()].into_iter().chain(heading));
    let values = outcome.constant_mass.iter().flat_map(|equal| &equal.points).map(|row| words.along(row));
    let decimals = decimals(values, 4);
    for equal in &outcome.constant_mass {
        for (i, line) in outcome.lines().take(LINES).enumerate() {
            let mass = if i == 0 { words.mass(equal.mass) } else { String::new() };
            let found = equal.points.iter().find(|point| point.is_in_line_with(&line[0]));
            let cells = found.filter(|row| row.result.is_ok()).map(|row| {
                let camber = n.bare(words.standing(row, "left-camber-change"), Shown::Angle);
                let stress = n.bare(words.standing(row, "peak-stress"), Shown::Stress);
                [fixed(words.along(row), decimals), camber, stress]
            });
            let missing = || ["not reached", "-", "-"].map(str::to_owned);
            grid.row([mass, words.line(&line[0])].into_iter().chain(cells.unwrap_or_else(missing)));
        }
    }
    format!("\n{}", grid.text())
}

/// Places of about [`ROWS`] rows out of `count`, evenly spaced, both ends among them.
pub(super) fn thinned(count: usize) -> impl Iterator<Item = usize> {
    let last = count.saturating_sub(1);
    let steps = if count <= ROWS + 2 { last } else { evenest(last) };
    (0..=steps).map(move |i| (i * last + steps / 2).checked_div(steps).unwrap_or(0))
}

/// The number of steps, about [`ROWS`], that divides `last`; else one less than [`ROWS`].
fn evenest(last: usize) -> usize {
    (ROWS - 4..=ROWS + 1).rev().find(|steps| last.is_multiple_of(*steps)).unwrap_or(ROWS - 1)
}

/// Decimals that the numbers need to be told to so many significant digits, zeros at their ends left out.
fn decimals(values: impl Iterator<Item = f64>, digits: i32) -> usize {
    let needed = |value: f64| {
        let most = (digits - 1 - value.abs().max(1e-9).log10().floor() as i32).clamp(0, 9) as usize;
        fixed(value, most).trim_end_matches('0').split_once('.').map_or(0, |(_, decimals)| decimals.len())
    };
    values.map(needed).max().unwrap_or(0)
}

/// Numbers of up to five digits with as many decimals each as the longest one needs.
pub(super) fn aligned(values: &[f64]) -> Vec<String> {
    let decimals = decimals(values.iter().copied(), 5);
    values.iter().map(|value| fixed(*value, decimals)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_lines_are_thinned_evenly_and_keep_their_ends() {
        assert_eq!(thinned(1).collect::<Vec<_>>(), [0]);
        assert_eq!(thinned(14).count(), 14);
        assert_eq!(thinned(41).collect::<Vec<_>>(), [0, 4, 8, 12, 16, 20, 24, 28, 32, 36, 40]);
        for count in [15, 30, 42, 1000, 1_000_000] {
            let places: Vec<_> = thinned(count).collect();
            assert_eq!((places[0], places[places.len() - 1]), (0, count - 1));
            assert!((8..=14).contains(&places.len()) && places.is_sorted());
        }
    }

    #[test]
    fn numbers_are_aligned_at_their_points() {
        assert_eq!(aligned(&[6.0, 6.25, 10.0]), ["6.00", "6.25", "10.00"]);
        assert_eq!(aligned(&[127.0, 152.4]), ["127.0", "152.4"]);
        assert_eq!(aligned(&[0.0, 1e7]), ["0", "10000000"]);
    }
}
