//! Tables of the pages for readers that are made from the code: they say what the code says, or the test fails.
//!
//! With `AXLEBOW_REWRITE=1` in the environment the pages are rewritten instead.

use std::path::Path;

use axlebow_axle::{CaseOutcome, Side, flex};
use axlebow_model::{Document, MODEL, Model, read_bytes};
use axlebow_textbook::{Provenance, cases};

fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
}

/// Page with the tables of the demo models.
const MODELS: &str = "models/README.md";
/// Page with the textbook cases.
const CHECKS: &str = "tests/reference/README.md";

/// Holds the lines between `<!-- name: …` and `<!-- end -->` of a page against `table`.
fn check_block(page: &str, name: &str, table: &str) {
    let path = root().join(page);
    let text = std::fs::read_to_string(&path).expect("the page");
    let start = text.find(&format!("<!-- {name}:")).expect("the block's mark");
    let first = start + text[start..].find('\n').expect("a line's end") + 1;
    let end = first + text[first..].find("<!-- end -->").expect("the block's end");
    if text[first..end] == *table {
        return;
    }
    assert!(std::env::var_os("AXLEBOW_REWRITE").is_some(), "`{name}` of {page} should read\n{table}");
    std::fs::write(&path, format!("{}{table}{}", &text[..first], &text[end..])).expect("the page is written");
}

/// A row of the table of stiffeners: the demo axle at rated load.
fn stiffener_row(words: &str, name: &str) -> String {
    let rated = |name: &str| {
        let model = Model::of(&document(name)).expect("a good model");
        let mut outcome = flex(&model.axle, &model.cases[..1]).expect("a solution");
        (outcome.axle_mass, outcome.cases.remove(0))
    };
    let ((bare_mass, bare), (mass, case)) = (rated("trailer-152-thin-dual"), rated(name));
    let camber = |case: &CaseOutcome| case.wheels.left.camber_change;
    let removed = |own: f64| format!("{:.1} %", 100.0 * (1.0 - own / camber(&bare)));
    let most = case.stiffening.as_ref().map_or(camber(&case), |stiffening| stiffening.composite);
    let (added, own) = (mass - bare_mass, camber(&case));
    format!("| {words} | {added:.1} | {:.3} | {} | {} |\n", own.to_degrees(), removed(own), removed(most))
}

#[test]
fn stiffener_table_is_what_the_demo_models_say() {
    let mut table = String::from(
        "| 152.4 mm × 9 mm tube at rated load | added, kg | camber change, deg | removed | at most, by full composite action |\n\
         | --- | --- | --- | --- | --- |\n",
    );
    for (words, name) in [
        ("as it is", "trailer-152-thin-dual"),
        ("angle on top, 430 mm long", "trailer-152-thin-dual-angle-part"),
        ("angle on top, 830 mm, from seat to seat", "trailer-152-thin-dual-angle"),
        ("the same, its weld in stitches", "trailer-152-thin-dual-angle-stitched"),
        ("half pipe over the top, 830 mm", "trailer-152-thin-dual-sleeve"),
    ] {
        table.push_str(&stiffener_row(words, name));
    }
    check_block(MODELS, "stiffener", &table);
}

fn document(name: &str) -> Document {
    let bytes = std::fs::read(root().join(format!("models/{name}.toml"))).expect("the demo model");
    read_bytes(&bytes, name, &MODEL).expect("a good model")
}

/// Figures of one axle at rated load, as the table prints them.
fn figures(name: &str) -> [String; 9] {
    let mut plain = document(name);
    for (path, value) in [("seat[0].rotational_stiffness", "0 kN m/rad"), ("seat[0].composite_fraction", "0")]
    {
        plain.set(path, value).expect("a seat has these keys");
    }
    let rated = |document: &Document| {
        let model = Model::of(document).expect("a good model");
        let outcome = flex(&model.axle, &model.cases[..1]).expect("a solution");
        let piece = model.axle.body.pieces()[0];
        let second_moment = model.axle.body.properties(&piece, 0.0).second_moment_x;
        (second_moment, outcome.axle_mass, outcome.cases[0].wheels.of(Side::Left).clone())
    };
    let (_, _, beam) = rated(&plain);
    let mut soft = document(&format!("{name}-shell"));
    soft.set("seat[0].wall_flexibility", "shell-spread").expect("a seat has this key");
    let (_, _, soft) = rated(&soft);
    let (second_moment, mass, wheel) = rated(&document(name));
    let degrees = |angle: f64| format!("{:.3}", angle.to_degrees());
    [
        format!("{:.2}", second_moment * 1e6),
        format!("{mass:.1}"),
        degrees(beam.camber_change),
        degrees(wheel.camber_change - beam.camber_change),
        degrees(wheel.camber_change),
        degrees(wheel.split.bending + wheel.split.shear),
        format!("{}, of it wall {}", degrees(wheel.split.seat), degrees(wheel.split.wall)),
        degrees(wheel.split.bearing),
        degrees(soft.camber_change),
    ]
}

#[test]
fn the_readme_compares_thin_and_thick_as_the_code_does() {
    let (thick, thin) = (figures("trailer-127-thick-dual"), figures("trailer-152-thin-dual"));
    let names = [
        "second moment of the tube, 10⁶ mm⁴",
        "bare axle, kg",
        "camber change if the seats clamp nothing and take no moment, deg",
        "what the seats take off, deg",
        "**camber change, stiffest seats, deg**",
        "of it bending and shear, deg",
        "of it seats, deg",
        "of it bearings, deg",
        "**camber change, softest seats, deg**",
    ];
    let last = |column: &[String; 9]| column[8].parse::<f64>().expect("an angle");
    let stiffest_thick: f64 = thick[4].parse().expect("an angle");
    assert!(
        last(&thick) < stiffest_thick && stiffest_thick < last(&thin),
        "the page says so: {thick:?} {thin:?}"
    );
    let mut table =
        "| at rated load, dual wheels | 127 mm × 12.7 mm | 152.4 mm × 9 mm |\n| --- | --- | --- |\n"
            .to_owned();
    for ((name, thick), thin) in names.iter().zip(thick).zip(thin) {
        table.push_str(&format!("| {name} | {thick} | {thin} |\n"));
    }
    check_block(MODELS, "thin or thick", &table);
}

/// What a row of a table is called, its demo axle, and what it changes.
type SeatRow<'a> = (&'a str, &'a str, &'a [(&'a str, &'a str)]);

/// A row of the table of seats: a demo axle with changes at its seats.
fn seat_row(name: &str, changes: &[(&str, &str)]) -> String {
    let mut document = document(name);
    for (key, value) in changes {
        document.set(&format!("seat[0].{key}"), value).expect("a seat has these keys");
    }
    let model = Model::of(&document).expect("a good model");
    let outcome = flex(&model.axle, &model.cases[..1]).expect("a solution");
    let (wall, wheel) = (outcome.walls.of(Side::Left), outcome.cases[0].wheels.of(Side::Left));
    format!(
        "{:.0} % | {:.3} | {} | {}",
        100.0 * wall.composite_fraction,
        wall.rotational_flexibility() * 1e6,
        format_args!("{:.4}", wheel.split.wall.to_degrees()),
        format_args!("{:.3}", wheel.camber_change.to_degrees())
    )
}

#[test]
fn the_readme_compares_seats_as_the_code_does() {
    let (thick, thin) = ("trailer-127-thick-dual-shell", "trailer-152-thin-dual-shell");
    let narrow = ("width", "90 mm");
    let spread = ("wall_flexibility", "shell-spread");
    let rows: [SeatRow; 6] = [
        ("127 mm × 12.7 mm, clamped over 180 mm, bonded", thick, &[]),
        ("127 mm × 12.7 mm, clamped over 180 mm, slipping", thick, &[spread]),
        ("127 mm × 12.7 mm, welded over 90 mm", thick, &[("fixing", "welded"), narrow]),
        ("152.4 mm × 9 mm, clamped over 180 mm, bonded", thin, &[("fixing", "clamped"), ("width", "180 mm")]),
        ("152.4 mm × 9 mm, welded over 90 mm", thin, &[]),
        ("152.4 mm × 9 mm, welded over 90 mm, spreading its force", thin, &[spread]),
    ];
    let mut table = "| at rated load, dual wheels | flexibility under the seat taken away | wall turns, mrad/(kN m) | \
                     its part of the camber change, deg | camber change, deg |\n| --- | --- | --- | --- | --- |\n"
        .to_owned();
    for (words, name, changes) in rows {
        table.push_str(&format!("| {words} | {} |\n", seat_row(name, changes)));
    }
    check_block(MODELS, "seat walls", &table);
}

/// A row of the table of wheel ends: a demo axle with changes.
fn wheel_end_row(name: &str, changes: &[(&str, &str)]) -> String {
    let mut document = document(name);
    for (path, value) in changes {
        document.set(path, value).expect("the demo has these keys");
    }
    let model = Model::of(&document).expect("a good model");
    let outcome = flex(&model.axle, &model.cases[..1]).expect("a solution");
    let wheel = outcome.cases[0].wheels.of(Side::Left);
    let split = wheel.split;
    let [whole, beams, bearings, disc] =
        [wheel.camber_change, split.bending + split.shear, split.bearing, split.disc]
            .map(|angle| format!("{:.3}", angle.to_degrees()));
    format!("{:.1} | {whole} | {beams} | {bearings} | {disc}", outcome.axle_mass)
}

#[test]
fn the_readme_compares_wheel_ends_as_the_code_does() {
    let outset = "trailer-127-thick-wide-base-outset";
    let parallel = [
        ("spindle.step[1].od", "92 mm"),
        ("wheel_end[0].outer_bearing_rollers", "21"),
        ("wheel_end[0].outer_bearing_roller_length", "26 mm"),
    ];
    let rows: [SeatRow; 4] = [
        ("tapered spindles, dual", "trailer-127-thick-dual", &[]),
        ("parallel spindles, dual", "trailer-127-thick-dual-parallel", &[]),
        ("tapered spindles, wide-base, 51 mm outset", outset, &[]),
        ("parallel spindles, wide-base, 51 mm outset", outset, &parallel),
    ];
    let mut table = "| 127 mm × 12.7 mm tube at rated load | bare axle, kg | camber change, deg | of it bending and shear, deg | \
                     bearings, deg | wheel disc and hub flange, deg |\n| --- | --- | --- | --- | --- | --- |\n"
        .to_owned();
    for (words, name, changes) in rows {
        table.push_str(&format!("| {words} | {} |\n", wheel_end_row(name, changes)));
    }
    check_block(MODELS, "wheel ends", &table);
}

#[test]
fn the_readme_lists_the_textbook_cases_as_they_are() {
    let cases = cases();
    let mut topics: Vec<&str> = cases.iter().map(|case| case.topic).collect();
    topics.dedup();
    let mut table = "| topic | cases | reference values | sources |\n| --- | --- | --- | --- |\n".to_owned();
    for topic in topics {
        let own: Vec<_> = cases.iter().filter(|case| case.topic == topic).collect();
        let mut sources: Vec<&str> = own.iter().map(|case| case.source).collect();
        sources.sort_unstable();
        sources.dedup();
        let count = |provenance| own.iter().filter(|case| case.provenance == provenance).count();
        let provenances = Provenance::ALL.into_iter().filter(|provenance| count(*provenance) > 0);
        let provenances: Vec<_> =
            provenances.map(|provenance| format!("{} {}", count(provenance), provenance.label())).collect();
        let (number, provenances) = (own.len(), provenances.join(", "));
        table.push_str(&format!("| {topic} | {number} | {provenances} | {} |\n", sources.join("; ")));
    }
    check_block(CHECKS, "checks", &table);
}

#[test]
fn the_readme_counts_the_reference_values_as_they_are() {
    let cases = cases();
    let mut table = "| digits of the reference value | cases |\n| --- | --- |\n".to_owned();
    for provenance in Provenance::ALL {
        let count = cases.iter().filter(|case| case.provenance == provenance).count();
        table.push_str(&format!("| {} | {count} |\n", provenance.label()));
    }
    table.push_str(&format!("| all | {} |\n", cases.len()));
    check_block(CHECKS, "provenance", &table);
}
