//! Words of a drawing, flowing through columns and sheets.

use super::letters::broken;
use super::paper::Paper;
use super::primitive::{Anchor, Layer, Place, Sheet};
use super::title_block::{BLOCK, TitleBlock};

/// A note on a sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Note {
    Heading(String),
    Item(String),
    /// A question, with a line to write the answer on.
    Question(String),
}

/// Height of letters and distance of lines, mm.
const LETTERS: f64 = 2.0;
const LINE: f64 = 3.5;
const HEADING: f64 = 2.5;
/// Least width of a column, room between columns and from the frame, mm.
const COLUMN: f64 = 115.0;
const BETWEEN: f64 = 6.0;
const EDGE: f64 = 4.0;
/// Room for an answer, mm.
const ANSWER: f64 = 5.5;

/// A line of a note and the height that it takes.
enum Line {
    Words(f64, String, f64),
    Rule,
}

impl Line {
    fn height(&self) -> f64 {
        match self {
            Line::Words(_, _, height) => *height,
            Line::Rule => ANSWER,
        }
    }
}

/// Columns of a sheet: where each starts, mm from the left, their width and their top and bottom.
struct Columns {
    lefts: Vec<f64>,
    width: f64,
    top: f64,
    bottom: f64,
}

impl Columns {
    fn of(paper: Paper) -> Self {
        let [[left, bottom], [right, top]] = paper.frame();
        let room = right - left - 2.0 * EDGE + BETWEEN;
        let count = (room / (COLUMN + BETWEEN)).floor().max(1.0);
        let width = room / count - BETWEEN;
        let lefts = (0..count as usize).map(|number| left + EDGE + (width + BETWEEN) * number as f64);
        Columns { lefts: lefts.collect(), width, top: top - EDGE, bottom: bottom + BLOCK[1] + EDGE }
    }
}

/// Lines of a note for a width.
fn lines(note: &Note, width: f64) -> Vec<Line> {
    let words = |text: &str, height: f64, line: f64| {
        broken(text, height, width)
            .into_iter()
            .map(|words| Line::Words(height, words, line))
            .collect::<Vec<_>>()
    };
    match note {
        Note::Heading(text) => words(text, HEADING, 5.5),
        Note::Item(text) => words(text, LETTERS, LINE),
        Note::Question(text) => words(text, LETTERS, LINE).into_iter().chain([Line::Rule]).collect(),
    }
}

/// For each sheet, its lines with where they start.
fn laid_out(notes: &[Note], paper: Paper) -> Vec<Vec<(Place, Line)>> {
    let columns = Columns::of(paper);
    let (mut sheets, mut column, mut level) = (vec![Vec::new()], 0, columns.top);
    for (number, note) in notes.iter().enumerate() {
        let own = lines(note, columns.width);
        let height: f64 = own.iter().map(Line::height).sum();
        // A heading stays with what it heads.
        let with = match (note, notes.get(number + 1)) {
            (Note::Heading(_), Some(next)) => lines(next, columns.width).iter().map(Line::height).sum(),
            _ => 0.0,
        };
        if level - height - with < columns.bottom && level < columns.top {
            (column, level) = (column + 1, columns.top);
        }
        for line in own {
            if level - line.height() < columns.bottom {
                (column, level) = (column + 1, columns.top);
            }
            if column == columns.lefts.len() {
                (column, level) = (0, columns.top);
                sheets.push(Vec::new());
            }
            level -= line.height();
            let last = sheets.len() - 1;
            sheets[last].push(([columns.lefts[column], level], line));
        }
        level -= if matches!(note, Note::Heading(_)) { 0.0 } else { 1.0 };
    }
    sheets
}

/// How many sheets notes take.
pub(super) fn sheet_count(notes: &[Note], paper: Paper) -> usize {
    laid_out(notes, paper).len()
}

/// The sheets of notes, after some others of all.
pub(super) fn sheets(notes: &[Note], block: &TitleBlock, [before, all]: [usize; 2]) -> Vec<Sheet> {
    let width = Columns::of(block.paper).width;
    let made = laid_out(notes, block.paper).into_iter().enumerate().map(|(number, lines)| {
        let mut sheet = block.sheet([before + number + 1, all]);
        for (at, line) in lines {
            match line {
                Line::Words(height, words, _) => {
                    sheet.text(Layer::Text, ([at[0], at[1] + 1.0], Anchor::Start), height, words);
                }
                Line::Rule => {
                    sheet.line(Layer::Text, [at[0] + 2.0, at[1] + 1.0], [at[0] + width, at[1] + 1.0])
                }
            }
        }
        sheet
    });
    made.collect()
}
