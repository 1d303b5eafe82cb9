//! Outcomes as comma-separated values (RFC 4180): SI units named in the heading, full precision.

mod response;
mod ride;
mod search;
mod study;

pub use response::response;
pub use ride::write_ride;
pub use search::search;
pub use study::{study, study_heading, study_rows};

fn add(text: &mut String, cell: &str) {
    text.push(',');
    text.push_str(cell);
}

/// Text between quotes if it holds what would end a cell.
fn cell(text: &str) -> String {
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_quoted_where_they_must_be() {
        assert_eq!(cell("127 mm tube"), "127 mm tube");
        assert_eq!(cell("a, \"b\"\n"), "\"a, \"\"b\"\"\n\"");
    }
}
