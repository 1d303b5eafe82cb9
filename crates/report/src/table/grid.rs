//! A plain table: first column to the left, numbers to the right, a rule under the heading.

use comfy_table::{CellAlignment, ContentArrangement, ContentLineStyle, LineStyle, Table, TableStyle};

/// No borders; one rule under the heading.
const STYLE: TableStyle = TableStyle::new()
    .header_lines(ContentLineStyle::none())
    .header_separator(LineStyle::none().fill('-').junction('-'))
    .content_lines(ContentLineStyle::none());

/// A table under construction.
pub(crate) struct Grid {
    table: Table,
    words: usize,
}

impl Grid {
    /// An empty table; the first `words` columns stand to the left, the others, numbers, to the right.
    pub fn new<T: ToString>(words: usize, heading: impl IntoIterator<Item = T>) -> Self {
        let mut table = Table::new();
        table.load_style(STYLE).set_content_arrangement(ContentArrangement::Disabled);
        table.set_header(heading.into_iter().map(|text| text.to_string()).collect::<Vec<_>>());
        Self { table, words }
    }

    /// Adds a row.
    pub fn row<T: ToString>(&mut self, cells: impl IntoIterator<Item = T>) {
        self.table.add_row(cells.into_iter().map(|text| text.to_string()).collect::<Vec<_>>());
    }

    /// The table as text that ends in a new line; no blanks at the ends of lines.
    pub fn text(mut self) -> String {
        for (i, column) in self.table.column_iter_mut().enumerate() {
            let left = i < self.words;
            column.set_cell_alignment(if left { CellAlignment::Left } else { CellAlignment::Right });
            column.set_padding(if i == 0 { (0, 0) } else { (1, 0) });
        }
        let lines = self.table.lines();
        lines.map(|line| format!("{}\n", line.trim_end())).collect()
    }
}

/// A narrow heading: words one over the other, the unit under them.
pub(crate) fn stacked(words: &str, unit: &str) -> String {
    const WIDTH: usize = 8;
    let lines = paragraph(words, WIDTH, 0);
    format!("{lines}{unit}").trim_end().to_owned()
}

/// Headings that all end on the lowest line.
pub(crate) fn on_one_floor(headings: &[String]) -> Vec<String> {
    let height = |heading: &str| heading.matches('\n').count();
    let most = headings.iter().map(|heading| height(heading)).max().unwrap_or(0);
    headings.iter().map(|heading| "\n".repeat(most - height(heading)) + heading).collect()
}

/// Text broken into lines of at most `width` letters, all but the first indented, without control codes.
pub(crate) fn paragraph(text: &str, width: usize, indent: usize) -> String {
    let mut lines = String::new();
    let mut used = 0;
    for word in text.split_whitespace() {
        let word: String = word.chars().filter(|letter| !letter.is_control()).collect();
        let letters = word.chars().count();
        if used > 0 && used + 1 + letters > width {
            lines.push('\n');
            lines.push_str(&" ".repeat(indent));
            used = indent;
        } else if used > 0 {
            lines.push(' ');
            used += 1;
        }
        lines.push_str(&word);
        used += letters;
    }
    lines.push('\n');
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_stand_to_the_right() {
        let mut grid = Grid::new(1, ["place", "load"]);
        grid.row(["left", "9.5"]);
        grid.row(["right", "110.0"]);
        assert_eq!(grid.text(), "place   load\n------------\nleft     9.5\nright  110.0\n");
    }

    #[test]
    fn headings_stand_on_one_floor() {
        assert_eq!(stacked("camber, peak to peak", "deg"), "camber,\npeak to\npeak\ndeg");
        let headings = [stacked("load factor", ""), "%".to_owned()];
        assert_eq!(on_one_floor(&headings), ["load\nfactor", "\n%"]);
    }

    #[test]
    fn paragraphs_keep_their_width() {
        assert_eq!(paragraph("one two three", 8, 2), "one two\n  three\n");
        assert_eq!(paragraph("", 8, 2), "\n");
        assert_eq!(paragraph("a\u{1b}[31m\nb", 8, 2), "a[31m b\n");
    }
}
