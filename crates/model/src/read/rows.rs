//! A row of a CSV file, with its place in the text.

use csv::StringRecord;

use crate::faults::Span;

/// A row of a CSV file, with its place in the text.
#[derive(Debug)]
pub(crate) struct Row<'t> {
    text: &'t str,
    start: usize,
    record: StringRecord,
}

/// The rows of a file with commas between cells; empty lines and those that begin with # are skipped.
pub(crate) fn rows(text: &str) -> impl Iterator<Item = csv::Result<Row<'_>>> {
    let records = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .from_reader(text.as_bytes())
        .into_records();
    records.map(move |record| record.map(|record| Row { text, start: start_of(text, &record), record }))
}

/// Where a row starts: past the empty and skipped lines that the reader counts to it.
fn start_of(text: &str, record: &StringRecord) -> usize {
    let from = record.position().map_or(0, |position| position.byte() as usize);
    let mut rest = text.get(from..).unwrap_or_default();
    loop {
        rest = rest.trim_start_matches(['\r', '\n']);
        if !rest.starts_with('#') {
            return text.len() - rest.len();
        }
        rest = rest.find('\n').map_or("", |end| &rest[end..]);
    }
}

impl Row<'_> {
    /// Count of cells.
    pub fn width(&self) -> usize {
        self.record.len()
    }

    /// A cell without the blanks around it; empty if the row is too short.
    pub fn cell(&self, place: usize) -> &str {
        self.record.get(place).unwrap_or_default().trim()
    }

    /// Bytes of the row.
    pub fn span(&self) -> Span {
        let rest = &self.text[self.start..];
        let end = rest.find(['\r', '\n']).unwrap_or(rest.len());
        self.start..self.start + end
    }

    /// Bytes of a cell, or of the row where quotes or nothing stand in its way.
    pub fn span_of(&self, place: usize) -> Span {
        let (Some(range), cell) = (self.record.range(place), self.cell(place)) else { return self.span() };
        // Plain cells stand in the text as in the record, but for a comma after each.
        let from = self.start + range.start + place;
        let written = self.text.get(from..from + range.len()).filter(|written| written.trim() == cell);
        match written {
            Some(written) if !cell.is_empty() => {
                let blank = written.len() - written.trim_start().len();
                from + blank..from + blank + cell.len()
            }
            _ => self.span(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_found_in_the_text_past_what_is_skipped() {
        let text = "# note\n\na, bé ,c\r\n\r\n# more\r\n1,2 ,\"x,y\"\r\n";
        let rows: Vec<_> = rows(text).map(Result::unwrap).collect();
        let places = |row: &Row<'_>| -> Vec<String> {
            (0..row.width()).map(|place| text[row.span_of(place)].to_owned()).collect()
        };
        assert_eq!(rows.len(), 2);
        assert_eq!(places(&rows[0]), ["a", "bé", "c"]);
        assert_eq!(places(&rows[1])[..2], ["1", "2"]);
        assert_eq!((&text[rows[1].span_of(2)], rows[1].cell(2)), ("1,2 ,\"x,y\"", "x,y"));
        assert_eq!((&text[rows[1].span_of(7)], rows[1].cell(7)), ("1,2 ,\"x,y\"", ""));
    }
}
