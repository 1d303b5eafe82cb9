//! A table as text: words to the left, numbers to the right, a rule under the headings.

use comfy_table::{CellAlignment, ContentArrangement, ContentLineStyle, LineStyle, TableStyle};

use super::{Column, Table, paragraph};

/// No borders; one rule under the heading.
const STYLE: TableStyle = TableStyle::new()
    .header_lines(ContentLineStyle::none())
    .header_separator(LineStyle::none().fill('-').junction('-'))
    .content_lines(ContentLineStyle::none());

/// Widest table.
const WIDEST: usize = 100;
/// Letters of a line of a heading over numbers, half as many as over words: the first that leave the table narrow enough.
const HEADINGS: [usize; 5] = [16, 14, 12, 10, 8];
/// Letters of a line of a column of words that is broken, at least.
const NARROWEST: usize = 24;

/// The table under its caption.
pub(super) fn table_text(table: &Table, width: usize) -> String {
    let caption = table.caption.as_ref().map_or(String::new(), |caption| paragraph(caption, width, 2));
    caption + &rows_text(table)
}

/// The table without its caption; every line ends in a new line and in no blank.
pub(super) fn rows_text(table: &Table) -> String {
    let cells = Cells::fitting(table);
    let mut drawn = comfy_table::Table::new();
    drawn.load_style(STYLE).set_content_arrangement(ContentArrangement::Disabled);
    drawn.set_header(cells.headings);
    for row in cells.rows {
        drawn.add_row(row);
    }
    for (place, column) in drawn.column_iter_mut().enumerate() {
        let is_words = table.columns.get(place).is_some_and(|own| own.is_words);
        column.set_cell_alignment(if is_words { CellAlignment::Left } else { CellAlignment::Right });
        column.set_padding(if place == 0 { (0, 0) } else { (1, 0) });
    }
    drawn.lines().map(|line| format!("{}\n", line.trim_end())).collect()
}

/// What is written, in lines.
struct Cells {
    headings: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Cells {
    /// Headings broken only as far as the table needs, then the widest column of words.
    fn fitting(table: &Table) -> Self {
        let plain = |cell: &String| cell.chars().filter(|letter| !letter.is_control()).collect::<String>();
        let mut rows: Vec<Vec<String>> =
            table.rows.iter().map(|row| row.iter().map(plain).collect()).collect();
        let (mut headings, mut width) = (Vec::new(), 0);
        for limit in HEADINGS {
            headings = headings_within(limit, &table.columns, &rows);
            width = total(&table.columns, &headings, &rows);
            if width <= WIDEST {
                break;
            }
        }
        if width > WIDEST {
            narrow(&table.columns, &mut rows, width - WIDEST);
            headings = headings_within(HEADINGS[HEADINGS.len() - 1], &table.columns, &rows);
        }
        Cells { headings: on_one_floor(&headings, &table.columns), rows }
    }
}

/// Breaks the cells of the widest column of words so that it is narrower by so many letters, if it can be.
fn narrow(columns: &[Column], rows: &mut [Vec<String>], excess: usize) {
    let widths = |place: usize| rows.iter().filter_map(move |row| row.get(place)).map(|cell| letters(cell));
    let words = columns.iter().enumerate().filter(|(_, column)| column.is_words);
    let widest = words.map(|(place, _)| (widths(place).max().unwrap_or(0), place)).max();
    let Some((width, place)) = widest.filter(|(width, _)| *width > NARROWEST) else { return };
    let limit = width.saturating_sub(excess).max(NARROWEST);
    for cell in rows.iter_mut().filter_map(|row| row.get_mut(place)).filter(|cell| letters(cell) > limit) {
        *cell = paragraph(&breakable(cell, limit), limit, 2).trim_end().to_owned();
    }
}

/// Text in which words that are too long for a line, such as keys, may break after their last point.
fn breakable(text: &str, limit: usize) -> String {
    let word = |word: &str| match word.rsplit_once('.') {
        Some((table, key)) if letters(word) > limit => format!("{table}. {key}"),
        _ => word.to_owned(),
    };
    text.split(' ').map(word).collect::<Vec<_>>().join(" ")
}

/// Lines of each heading, the unit not among them.
fn headings_within(limit: usize, columns: &[Column], rows: &[Vec<String>]) -> Vec<String> {
    let cells = |place: usize| {
        rows.iter().filter_map(|row| row.get(place)).map(|cell| letters(cell)).max().unwrap_or(0)
    };
    let lines = |(place, column): (usize, &Column)| {
        let least = if column.is_words { 2 * limit } else { limit };
        paragraph(&column.heading, cells(place).max(least), 0).trim_end().to_owned()
    };
    columns.iter().enumerate().map(lines).collect()
}

/// Letters of the longest line of a text.
fn letters(text: &str) -> usize {
    text.lines().map(|line| line.chars().count()).max().unwrap_or(0)
}

/// Width of a table.
fn total(columns: &[Column], headings: &[String], rows: &[Vec<String>]) -> usize {
    let column = |(place, heading): (usize, &String)| {
        let cells = rows.iter().filter_map(|row| row.get(place)).map(|cell| letters(cell));
        cells.chain([letters(heading), letters(&columns[place].unit)]).max().unwrap_or(0) + 2
    };
    headings.iter().enumerate().map(column).sum::<usize>().saturating_sub(2)
}

/// Headings that all end on the lowest line, units under them.
fn on_one_floor(headings: &[String], columns: &[Column]) -> Vec<String> {
    let height = |heading: &str| heading.matches('\n').count();
    let most = headings.iter().map(|heading| height(heading)).max().unwrap_or(0);
    let has_units = columns.iter().any(|column| !column.unit.is_empty());
    let whole = |(heading, column): (&String, &Column)| {
        let unit = if has_units { format!("\n{}", column.unit) } else { String::new() };
        "\n".repeat(most - height(heading)) + heading + &unit
    };
    headings.iter().zip(columns).map(whole).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(columns: &[Column], rows: &[&[&str]]) -> Table {
        let mut table = Table::new(columns.iter().cloned());
        rows.iter().for_each(|row| table.add_row(row.iter()));
        table
    }

    #[test]
    fn numbers_stand_to_the_right() {
        let own =
            table(&[Column::words("place"), Column::plain("load")], &[&["left", "9.5"], &["right", "110.0"]]);
        assert_eq!(rows_text(&own), "place   load\n------------\nleft     9.5\nright  110.0\n");
    }

    #[test]
    fn headings_stand_on_one_floor_and_units_under_them() {
        let columns =
            [Column::words("wheel"), Column::number("camber, peak to peak", "deg"), Column::plain("cups")];
        let own = table(&columns, &[&["left", "0.1", "6"]]);
        let text = "       camber, peak to\nwheel             peak  cups\n                   deg\n\
                    ----------------------------\nleft               0.1     6\n";
        assert_eq!(rows_text(&own), text);
    }

    #[test]
    fn a_table_that_is_too_wide_breaks_its_widest_words() {
        let long = "a place with a name of many words ".repeat(5);
        let own = table(&[Column::words("place"), Column::plain("load")], &[&[long.trim(), "1"]]);
        let text = rows_text(&own);
        assert!(text.lines().all(|line| line.chars().count() <= WIDEST), "{text}");
    }

    #[test]
    fn long_keys_break_after_a_point() {
        let key = "wheel_end[both].inner_bearing_roller_length";
        assert_eq!(breakable(key, 30), "wheel_end[both]. inner_bearing_roller_length");
        assert_eq!(breakable("tube.wall", 30), "tube.wall");
    }

    #[test]
    fn control_codes_do_not_reach_the_terminal() {
        let own = table(&[Column::words("place")], &[&["a\u{1b}[31mb\nc"]]);
        assert!(!rows_text(&own).contains('\u{1b}') && rows_text(&own).contains("a[31mbc"));
    }
}
