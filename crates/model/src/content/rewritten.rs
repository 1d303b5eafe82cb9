//! The text of a file with other values in it.

use axlebow_units::{Kind, parse, parse_load};

use super::document::{Document, key_spec, owner};
use super::entry::Table;
use super::named_path::by_place;
use super::path::{Step, steps};
use crate::declare::{Bounds, Holds, Presence};
use crate::faults::{ModelError, Span};

impl Document {
    /// The values that the number at a path may take.
    ///
    /// # Errors
    /// A path that leads nowhere, a key that holds no number, and one that the file itself does not give.
    pub fn bounds(&self, path: &str) -> Result<Bounds, ModelError> {
        self.number(path)?;
        let place = &*by_place(self.root(), path)?;
        let steps = steps(place)?;
        let (table, rest) = owner(self.root(), place, &steps)?;
        match key_spec(table, place, rest[0].key)?.holds {
            Holds::Quantity { bounds, .. }
            | Holds::QuantityOr { bounds, .. }
            | Holds::Load { bounds }
            | Holds::Number { bounds } => Ok(bounds),
            Holds::Percent { most } => Ok(Bounds::Between(0.0, most / 100.0)),
            _ => Err(refused(path, "does not vary continuously", "a quantity, such as `tube.wall`")),
        }
    }

    /// The file's text with other numbers (SI) at some paths, each in the unit that it was written in and to six digits;
    /// everything else, comments too, stays as it is. A key of which the default is in use is written at the beginning of
    /// its table, in the unit of the default; of the file where that has no such table.
    ///
    /// # Errors
    /// As [`bounds`](Self::bounds); a key that the file leaves out and that has no default.
    pub fn rewritten(&self, values: &[(String, f64)]) -> Result<String, ModelError> {
        let source = self.problems();
        let edits = values.iter().map(|(path, value)| self.edit(path, *value)).collect::<Result<_, _>>()?;
        Ok(edited(source.source(), edits))
    }

    /// The file's text with other values at some paths, each as [`set`](Self::set) takes it; everything else, comments too,
    /// stays as it is. A key that the file leaves out is written as [`rewritten`](Self::rewritten) writes it.
    ///
    /// # Errors
    /// A path that leads nowhere, or to more than a key of its own; an entry of several that the file leaves out.
    pub fn with_texts(&self, values: &[(String, String)]) -> Result<String, ModelError> {
        let source = self.problems();
        let edits = values.iter().map(|(path, text)| self.text_edit(path, text)).collect::<Result<_, _>>()?;
        Ok(edited(source.source(), edits))
    }

    /// What is written at a path, and in place of which bytes.
    fn text_edit(&self, path: &str, text: &str) -> Result<(Span, String), ModelError> {
        let place = &*by_place(self.root(), path)?;
        let steps = steps(place)?;
        let (table, rest) = owner(self.root(), place, &steps)?;
        let [Step { key, index: None, .. }] = rest else {
            return Err(refused(path, "is not a key of its own", "a key, such as `tube.wall`"));
        };
        let bare = match key_spec(table, place, key)?.holds {
            Holds::Flag | Holds::Count { .. } | Holds::Number { .. } => true,
            Holds::Quantity { kind: Kind::Ratio, .. } => text.trim().parse::<f64>().is_ok(),
            _ => false,
        };
        let written = if bare { text.trim().to_owned() } else { quoted(text.trim()) };
        match table.entry(key).filter(|entry| !entry.assumed) {
            Some(entry) => Ok((entry.span.clone(), written)),
            None => self.new_line((path, &steps), table, &format!("{key} = {written}")),
        }
    }

    /// A key that the file leaves out, at the beginning of its table; of the file where that has no such table.
    fn new_line(
        &self,
        (path, steps): (&str, &[Step]),
        table: &Table,
        written: &str,
    ) -> Result<(Span, String), ModelError> {
        let outer = self.root().entry(steps[0].key);
        if steps.len() == 2 && outer.is_none_or(|outer| outer.assumed) {
            // Dotted keys stand before the first table.
            return Ok((0..0, format!("{}.{written}\n", steps[0].key)));
        }
        let problems = self.problems();
        let source = problems.source();
        let head = table.span();
        let line_end = source[head.end..].find('\n').map_or(source.len(), |end| head.end + end);
        match source.as_bytes().get(head.start) {
            Some(b'[') => Ok((line_end..line_end, format!("\n{written}"))),
            Some(b'{') => Ok((head.start + 1..head.start + 1, format!(" {written},"))),
            _ => Err(not_given(path)),
        }
    }

    /// What is written at a path, and in place of which bytes.
    fn edit(&self, path: &str, value: f64) -> Result<(Span, String), ModelError> {
        let place = &*by_place(self.root(), path)?;
        let steps = steps(place)?;
        let (table, rest) = owner(self.root(), place, &steps)?;
        let [Step { key, index: None, .. }] = rest else {
            return Err(refused(path, "is not a key of its own", "a quantity, such as `tube.wall`"));
        };
        let spec = key_spec(table, place, key)?;
        let kind = match spec.holds {
            Holds::Load { .. } => None,
            _ => Some(self.kind(path)?),
        };
        let problems = self.problems();
        let source = problems.source();
        if let Some(entry) = table.entry(key).filter(|entry| !entry.assumed) {
            return Ok((entry.span.clone(), in_unit_of(&source[entry.span.clone()], kind, value)));
        }
        let Presence::Default(default) = spec.presence else { return Err(not_given(path)) };
        self.new_line((path, &steps), table, &format!("{key} = {}", in_unit_of(default, kind, value)))
    }
}

/// A text with other bytes in some places, none of which overlap.
fn edited(source: &str, mut edits: Vec<(Span, String)>) -> String {
    let mut text = source.to_owned();
    edits.sort_by_key(|(span, _)| std::cmp::Reverse(span.start));
    for (span, written) in edits {
        text.replace_range(span, &written);
    }
    text
}

/// A text within the quotes of TOML.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

fn not_given(path: &str) -> ModelError {
    refused(path, "is not given in the file", "a key of the file; write it there with an initial value")
}

fn refused(path: &str, what: &str, accepted: &str) -> ModelError {
    ModelError::Refused {
        path: path.to_owned(),
        message: format!("`{path}` {what}"),
        accepted: Some(accepted.to_owned()),
        likely: None,
    }
}

/// A value as it is written now, quotes and unit kept.
///
/// Arguments: `kind`, what it measures; none for a load, whose unit may be one of mass.
fn in_unit_of(written: &str, kind: Option<Kind>, value: f64) -> String {
    let quote = written.chars().next().filter(|c| matches!(c, '"' | '\''));
    let inner = written.trim_matches(['"', '\'']);
    let mut ends = inner.char_indices().map(|(at, c)| at + c.len_utf8());
    let number_end = ends.rfind(|end| inner[..*end].trim().parse::<f64>().is_ok()).unwrap_or(0);
    let unit = inner[number_end..].trim();
    let one = format!("1 {unit}");
    let factor = match kind {
        Some(kind) => parse(&one, kind).map_or(1.0, |parsed| parsed.value),
        None => parse_load(&one).map_or(1.0, |load| load.force.value),
    };
    let shown = format!("{} {unit}", six_digits(value / factor));
    match quote {
        Some(quote) => format!("{quote}{}{quote}", shown.trim_end()),
        None => shown.trim_end().to_owned(),
    }
}

fn six_digits(value: f64) -> String {
    let rounded: f64 = format!("{value:.5e}").parse().unwrap_or(value);
    let text = format!("{rounded}");
    // A plain number in TOML may not end in its point, nor be a whole number where a decimal is wanted.
    if text.contains(['.', 'e']) { text } else { format!("{text}.0") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_written_where_they_stand_and_what_is_left_out_at_the_head_of_its_table() {
        let file = crate::TYPICAL[0].text();
        let document = crate::read_bytes(file.as_bytes(), "x", &crate::MODEL).unwrap();
        let sets = [
            ("tube.wall", "14 mm"),
            ("wheel.position", "outset"),
            ("wheel.offset", "51 mm"),
            ("wheel.reversed", "true"),
            ("loads.side_force_ratio", "0.3"),
            ("name", "a \"quoted\" name"),
        ];
        let mut set = document.clone();
        sets.iter().for_each(|(path, text)| set.set(path, text).unwrap());
        let owned = sets.map(|(path, text)| (path.to_owned(), text.to_owned()));
        let text = document.with_texts(&owned).unwrap();
        let read = crate::read_bytes(text.as_bytes(), "x", &crate::MODEL).unwrap();
        assert_eq!(read.hash(), set.hash(), "{text}");
        assert!(text.contains("wall = \"14 mm\"") && text.contains("reversed = true"), "{text}");
        let lines = |text: &str| text.lines().count();
        assert_eq!(lines(&text), lines(file) + 3, "offset, reversed and the ratio are new lines\n{text}");
        assert!(document.with_texts(&[("tube.wal".to_owned(), "1 mm".to_owned())]).is_err());
        let skewed = document.with_texts(&[("running.skew".to_owned(), "1 deg".to_owned())]).unwrap();
        assert!(skewed.starts_with("running.skew = \"1 deg\"\n"), "{skewed}");
    }

    #[test]
    fn a_value_keeps_its_unit_and_its_quotes() {
        assert_eq!(in_unit_of("\"9 mm\"", Some(Kind::Length), 0.008_432_17), "\"8.43217 mm\"");
        assert_eq!(
            in_unit_of("'3.5e2 kN m/rad'", Some(Kind::RotationalStiffness), 1.25e6),
            "'1250.0 kN m/rad'"
        );
        assert_eq!(in_unit_of("0.3", Some(Kind::Ratio), 0.25), "0.25");
        assert_eq!(in_unit_of("\"30 %\"", Some(Kind::Ratio), 0.25), "\"25.0 %\"");
        assert_eq!(in_unit_of("\"20000 lb\"", None, 100_000.0), "\"22480.9 lb\"");
    }
}
