//! Outcomes as comma-separated values (RFC 4180): SI units named in the heading, full precision.

mod response;
mod ride;

pub use response::response;
pub use ride::ride;

use axlebow_study::{Design, StudyOutcome};

type Column = (&'static str, fn(&Design) -> f64);

/// Heading and value of each column of a result.
const COLUMNS: [Column; 15] = [
    ("axle_mass_kg", |design| design.axle_mass),
    ("left_camber_change_rad", |design| design.camber_change.left),
    ("left_bending_rad", |design| design.split.left.bending),
    ("left_shear_rad", |design| design.split.left.shear),
    ("left_seat_rad", |design| design.split.left.seat),
    ("left_bearing_rad", |design| design.split.left.bearing),
    ("left_clearance_rad", |design| design.split.left.clearance),
    ("right_camber_change_rad", |design| design.camber_change.right),
    ("right_bending_rad", |design| design.split.right.bending),
    ("right_shear_rad", |design| design.split.right.shear),
    ("right_seat_rad", |design| design.split.right.seat),
    ("right_bearing_rad", |design| design.split.right.bearing),
    ("right_clearance_rad", |design| design.split.right.clearance),
    ("peak_stress_pa", |design| design.peak_stress),
    ("bow_m", |design| design.bow),
];

/// The designs of a study, a line each; a design without a result has its reason in the last column.
pub fn study(outcome: &StudyOutcome) -> String {
    let varied = outcome.varied.iter().map(|varied| match varied.kind.si() {
        "" => cell(&varied.path),
        unit => cell(&format!("{} ({unit})", varied.path)),
    });
    let mut text = String::from("variant");
    varied.chain(COLUMNS.map(|(heading, _)| heading.to_owned())).for_each(|heading| add(&mut text, &heading));
    text.push_str(",reason\r\n");
    for row in &outcome.rows {
        text.push_str(&cell(&outcome.variants[row.variant]));
        row.values.iter().for_each(|value| add(&mut text, &format!("{value:?}")));
        for (_, value) in COLUMNS {
            add(
                &mut text,
                &row.result.as_ref().map_or(String::new(), |design| format!("{:?}", value(design))),
            );
        }
        add(&mut text, &row.result.as_ref().err().map_or(String::new(), |reason| cell(reason)));
        text.push_str("\r\n");
    }
    text
}

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
