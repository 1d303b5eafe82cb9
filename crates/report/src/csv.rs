//! Outcomes as comma-separated values (RFC 4180): SI units named in the heading, full precision.

mod beam;
mod explain;
mod growth;
mod life;
mod payback;
mod provenance;
mod rating;
mod response;
mod ride;
mod search;
mod study;
mod textbook;

pub use beam::beam;
pub use explain::explain;
pub use growth::growth;
pub use life::life;
pub use payback::payback;
pub use provenance::provenance;
pub use rating::rating;
pub use response::response;
pub use ride::write_ride;
pub use search::search;
pub use study::{study, study_heading, study_rows};
pub use textbook::textbook;

fn add(text: &mut String, cell: &str) {
    text.push(',');
    text.push_str(cell);
}

/// A text as a cell: after an apostrophe if a spreadsheet would take it for a formula and run it, and between quotes if it
/// holds what would end a cell.
fn cell(text: &str) -> String {
    let is_formula = text.starts_with(['=', '+', '-', '@', '\t', '\r']) && text.parse::<f64>().is_err();
    let text = if is_formula { format!("'{text}") } else { text.to_owned() };
    if text.contains([',', '"', '\n', '\r']) { format!("\"{}\"", text.replace('"', "\"\"")) } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_quoted_where_they_must_be() {
        assert_eq!(cell("127 mm tube"), "127 mm tube");
        assert_eq!(cell("a, \"b\"\n"), "\"a, \"\"b\"\"\n\"");
    }

    #[test]
    fn cells_are_no_formulas() {
        assert_eq!(cell("=HYPERLINK(\"x\",1)"), "\"'=HYPERLINK(\"\"x\"\",1)\"");
        assert_eq!(["+a", "-25 mm", "@a", "\t=1"].map(cell), ["'+a", "'-25 mm", "'@a", "'\t=1"]);
        assert_eq!(["-25", "+1e3", "a=b", "0 - 1"].map(cell), ["-25", "+1e3", "a=b", "0 - 1"]);
    }
}
