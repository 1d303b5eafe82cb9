//! The numbers of the demos' seats are those of the shells that they were measured from.

use std::path::Path;

use axlebow_axle::{Side, WallAtSeat};
use axlebow_model::Model;

/// Each tube or housing with its seat, and how far bracket or saddle reach round the wall, as the files say beside the numbers.
const SEATS: [(&str, &str); 4] = [
    ("trailer-127-thick", "bracket_breadth = \"120 mm\""),
    ("trailer-152-thin", "bracket_breadth = \"115 mm\""),
    ("drive-housing-9.5", "bracket_breadth = \"100 mm\""),
    ("drive-housing-11", "bracket_breadth = \"100 mm\""),
];

/// The wall at a seat of a file's text.
fn wall(text: &str, name: &str) -> WallAtSeat {
    let model =
        Model::from_bytes(text.as_bytes(), name).unwrap_or_else(|problems| panic!("{}", problems.render()));
    WallAtSeat::of(&model.axle, Side::Left).unwrap()
}

/// The same file with the wall at its seats solved by shells.
fn by_shells(text: &str, breadth: &str) -> String {
    let lines = text.lines().filter(|line| !line.starts_with("composite_fraction"));
    let changed = lines.map(|line| match line.starts_with("wall_flexibility") {
        true => format!("wall_flexibility = \"shell\"\n{breadth}\n"),
        false => format!("{line}\n"),
    });
    changed.collect()
}

/// Both numbers are written with two digits, a share of 0.99 as the most that a file takes.
#[test]
fn seats_of_the_demos_are_those_of_their_shells() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models");
    for (kind, breadth) in SEATS {
        let mut shells: Option<WallAtSeat> = None;
        let mut count = 0;
        for file in std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()) {
            let name = file.file_name().unwrap().to_string_lossy().into_owned();
            if !name.starts_with(kind) || name.contains("shell") {
                continue;
            }
            let text = std::fs::read_to_string(&file).unwrap();
            let given = wall(&text, &name);
            let shells = shells.get_or_insert_with(|| wall(&by_shells(&text, breadth), &name));
            let (own, solved) = (given.rotational_flexibility(), shells.rotational_flexibility());
            println!(
                "{name}: {} {own} by shells {} {solved}",
                given.composite_fraction, shells.composite_fraction
            );
            assert!((given.composite_fraction - shells.composite_fraction).abs() <= 0.005, "{name}");
            let digit = 10f64.powf(own.log10().floor() - 1.0);
            assert!((own - solved).abs() <= 0.5 * digit, "{name}: {own} {solved}");
            count += 1;
        }
        assert!(count >= 4, "{kind}: {count}");
    }
}
