//! Table of the textbook cases.

use axlebow_textbook::Provenance;

use crate::TextbookRow;
use crate::answer::textbook_answer;
use crate::number::significant;
use crate::page::{Block, Column, Page, Table};

/// The textbook cases by topic: computed, reference, relative error, tolerance, provenance and source; with `formulas`,
/// the formula and the inputs of each under its topic.
pub fn textbook(rows: &[TextbookRow], formulas: bool) -> Page {
    let mut topics: Vec<&str> = rows.iter().map(|row| &*row.case.topic).collect();
    topics.dedup();
    let mut page = Page { answer: textbook_answer(rows), ..Page::default() };
    for topic in topics {
        let own: Vec<&TextbookRow> = rows.iter().filter(|row| row.case.topic == topic).collect();
        page.extend(one_topic(topic, &own, formulas));
    }
    page.add(Block::Paragraph(closing(rows)));
    page
}

fn closing(rows: &[TextbookRow]) -> String {
    let count = |provenance: Provenance| {
        let own = rows.iter().filter(|row| row.case.provenance == provenance).count();
        (own > 0).then(|| format!("{} {own}", provenance.label()))
    };
    let counts: Vec<String> =
        Provenance::ALL.into_iter().chain([Provenance::Stated]).filter_map(count).collect();
    format!(
        "Reference values: {}. Where a source is marked \"from memory\" its page was not at \
         hand. Error and tolerance are relative; of a reference of zero they are absolute (abs.).",
        counts.join(", ")
    )
}

fn one_topic(topic: &str, rows: &[&TextbookRow], formulas: bool) -> [Block; 2] {
    let mut sources: Vec<&str> = Vec::new();
    for row in rows {
        if !sources.contains(&&*row.case.source) {
            sources.push(&row.case.source);
        }
    }
    [Block::Table(table(topic, rows, &sources)), Block::List(notes(rows, &sources, formulas))]
}

/// One word or two for a column; the closing line has the whole.
fn brief(provenance: Provenance) -> &'static str {
    match provenance {
        Provenance::Printed => "printed",
        Provenance::ClosedForm => "closed form",
        Provenance::Independent => "independent",
        Provenance::Recalled => "memory",
        Provenance::Stated => "stated",
    }
}

fn table(topic: &str, rows: &[&TextbookRow], sources: &[&str]) -> Table {
    let numbers = ["computed", "reference", "relative error", "tolerance", "provenance", "source", ""];
    let words = [topic, "unit"].map(Column::words);
    let mut table = Table::new(words.into_iter().chain(numbers.map(Column::plain)));
    for row in rows {
        let case = &row.case;
        let (computed, error) = match &row.outcome {
            Ok(checked) => (
                significant(checked.computed, 9),
                checked
                    .relative_error
                    .map_or(format!("{:+.1e} abs.", checked.error), |error| format!("{error:+.1e}")),
            ),
            Err(_) => ("none".to_owned(), "-".to_owned()),
        };
        let tolerance = case.relative_tolerance();
        let tolerance =
            tolerance.map_or(format!("{:.1e} abs.", row.tolerance()), |share| format!("{share:.1e}"));
        let source = sources.iter().position(|source| *source == case.source).map_or(0, |place| place + 1);
        let (label, source, reference) = (label(row, rows), format!("[{source}]"), digits(case.reference));
        let verdict = if row.passed() { "met" } else { "MISSED" };
        let provenance = brief(case.provenance);
        table.add_row([
            &label, case.unit, &computed, &reference, &error, &tolerance, provenance, &source, verdict,
        ]);
    }
    table
}

/// A reference value without zeros behind its last digit.
fn digits(reference: f64) -> String {
    let text = significant(reference, 9);
    let (mantissa, power) = text.find('e').map_or((&*text, ""), |place| text.split_at(place));
    if !mantissa.contains('.') {
        return text;
    }
    format!("{}{power}", mantissa.trim_end_matches('0').trim_end_matches('.'))
}

/// What stands under the table of a topic.
fn notes(rows: &[&TextbookRow], sources: &[&str], formulas: bool) -> Vec<String> {
    let mut notes = if formulas { formula_notes(rows) } else { Vec::new() };
    notes.extend(sources.iter().zip(1..).map(|(source, place)| format!("[{place}] {source}")));
    let mut others: Vec<String> = Vec::new();
    for row in rows {
        let case = &row.case;
        others.extend(case.reason.map(|reason| format!("Tolerance: {reason}")));
        others.extend(case.difference.map(|difference| format!("Difference: {difference}")));
        others.extend(row.outcome.as_ref().err().map(|why| format!("{}: {why}", case.quantity)));
    }
    let mut seen = std::collections::BTreeSet::new();
    notes.extend(others.iter().filter(|note| seen.insert(note.as_str())).cloned());
    notes
}

/// The formula and the inputs of each row; what all rows share stands once.
fn formula_notes(rows: &[&TextbookRow]) -> Vec<String> {
    let shares = |part: fn(&TextbookRow) -> &str| {
        let first = rows.first().map(|row| part(row).to_owned());
        first.filter(|first| rows.len() > 1 && rows.iter().all(|row| part(row) == first))
    };
    let (formula, inputs) = (shares(|row| &row.case.formula), shares(|row| &row.case.inputs));
    let mut notes: Vec<String> = Vec::new();
    notes.extend(formula.as_ref().map(|formula| format!("Formula: {formula}")));
    notes.extend(inputs.as_ref().map(|inputs| format!("Inputs: {inputs}")));
    for row in rows.iter().filter(|_| formula.is_none() || inputs.is_none()) {
        let own = match (&formula, &inputs) {
            (Some(_), _) => row.case.inputs.to_string(),
            (None, Some(_)) => row.case.formula.to_string(),
            (None, None) => format!("{}. Inputs: {}", row.case.formula, row.case.inputs),
        };
        notes.push(format!("{}: {own}", label(row, rows)));
    }
    notes
}

/// What is asked, and where several rows of a topic ask the same, what tells this one apart in its id.
fn label(row: &TextbookRow, rows: &[&TextbookRow]) -> String {
    let quantity = &*row.case.quantity;
    let alike: Vec<&str> =
        rows.iter().filter(|other| other.case.quantity == quantity).map(|other| &*other.case.id).collect();
    if alike.len() == 1 {
        return quantity.to_owned();
    }
    // An id is `<quantity>_matches_<source>_<place>_<case>`.
    let (before, after) = halves(&row.case.id);
    let own = [
        distinct_words(before, &alike.iter().map(|id| halves(id).0).collect::<Vec<_>>()),
        distinct_words(after, &alike.iter().map(|id| halves(id).1).collect::<Vec<_>>()),
    ];
    let own: Vec<String> = own.into_iter().filter(|words| !words.is_empty()).collect();
    format!("{quantity}: {}", own.join(", "))
}

/// The parts of an id before and after the word in its middle.
fn halves(id: &str) -> (&str, &str) {
    id.split_once("_matches_").unwrap_or((id, ""))
}

/// The words of a part of an id from the first one that not all share; a number is shown whole, behind the word before it.
fn distinct_words(own: &str, all: &[&str]) -> String {
    let words = |id: &'_ str| -> Vec<String> { id.split('_').map(str::to_owned).collect() };
    let own = words(own);
    let all: Vec<Vec<String>> = all.iter().map(|id| words(id)).collect();
    let is_shared = |place: usize| all.iter().all(|other| other.get(place) == own.get(place));
    let mut first = (0..own.len()).find(|place| !is_shared(*place)).unwrap_or(own.len());
    while first > 0 && own.get(first).is_some_and(|word| is_number(word)) {
        first -= 1;
    }
    spoken(&own[first..])
}

fn is_number(word: &str) -> bool {
    word.bytes().all(|byte| byte.is_ascii_digit())
}

/// Words of an id, digits that follow one another joined by a point.
fn spoken(words: &[String]) -> String {
    let mut text = String::new();
    for (i, word) in words.iter().enumerate() {
        if i > 0 {
            text.push(if is_number(word) && is_number(&words[i - 1]) { '.' } else { ' ' });
        }
        text.push_str(word);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::{digits, distinct_words};

    #[test]
    fn references_keep_no_zeros_at_their_end() {
        let shown = [180_000.0, 0.154_202_27, 4.0, 1.8248e-5, 0.0, -1310.0, 1.803_472_03e12].map(digits);
        assert_eq!(shown, ["180000", "0.15420227", "4", "1.8248e-5", "0", "-1310", "1.80347203e12"]);
    }

    #[test]
    fn ids_tell_cases_apart_by_whole_numbers() {
        let all = ["root_1", "root_2"];
        assert_eq!(all.map(|own| distinct_words(own, &all)), ["root 1", "root 2"]);
        let all = ["rao_section_8_5_tip_mass_0_1", "rao_section_8_5_tip_mass_10"];
        assert_eq!(all.map(|own| distinct_words(own, &all)), ["mass 0.1", "mass 10"]);
        assert_eq!(distinct_words("peak", &["peak", "peak"]), "");
    }
}
