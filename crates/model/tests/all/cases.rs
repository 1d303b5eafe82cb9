//! Case sheets: what is accepted, and that everything wrong is said at once with its place.

use std::path::{Path, PathBuf};

use axlebow_axle::{Side, TireSlot};
use axlebow_model::{CaseSheet, FeltFeather, Problems, case_starter};

const CAUSES: [&str; 2] = ["normal", "toe"];

fn cases() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/cases")
}

fn read(text: &str) -> Result<CaseSheet, Problems> {
    CaseSheet::from_bytes(text.as_bytes(), ("case.toml", &cases()), &CAUSES)
}

#[test]
fn every_demo_sheet_is_read_and_marked_as_invented() {
    let mut count = 0;
    for entry in std::fs::read_dir(cases()).unwrap() {
        let text = std::fs::read_to_string(entry.unwrap().path()).unwrap();
        let sheet = read(&text).unwrap_or_else(|problems| panic!("{}", problems.render()));
        assert!(sheet.invented && text.starts_with("# Demonstration case, invented"), "{}", sheet.name);
        count += 1;
    }
    assert!(count >= 4);
}

#[test]
fn a_sheet_says_what_was_seen_in_si() {
    let text = "name = \"x\"\naxle = \"trailer-5-inch-duals\"\nnew_depth = \"20/32 in\"\npriors = { toe = 3 }\n[[tire]]\n\
                side = \"left\"\nplace = \"inner\"\ndepths = [\"16/32 in\", \"-\", \"10 mm\", \"10 mm\", \"10 mm\"]\ncups = 0\n\
                feather = \"none\"\n[[wheel_end]]\nside = \"right\"\nendplay = \"0.004 in\"\n";
    let sheet = read(text).unwrap_or_else(|problems| panic!("{}", problems.render()));
    let tire = &sheet.tires[0];
    assert_eq!((tire.side, tire.slot, tire.cups), (Side::Left, TireSlot::Inner, Some(0)));
    assert_eq!(tire.feather, Some(FeltFeather::None));
    assert!((tire.depths[0].unwrap() - 0.0127).abs() < 1e-12 && tire.depths[1].is_none());
    assert!((sheet.new_depth.unwrap() - 0.015875).abs() < 1e-12);
    assert!(
        (sheet.ends.right.endplay.unwrap() - 0.1016e-3).abs() < 1e-12 && sheet.ends.left.endplay.is_none()
    );
    assert_eq!((sheet.priors[0].cause.as_str(), sheet.priors[0].weight), ("toe", 3.0));
    assert_eq!([sheet.distance, sheet.axle_load, sheet.skew, sheet.wall], [None; 4]);
}

#[test]
fn a_sheet_that_contradicts_itself_is_refused_with_all_its_problems() {
    let text = "name = \"x\"\naxle = \"trailer-5-inch-wide-base-outset\"\ntires = \"dual\"\nnew_depth = \"16 mm\"\nwall = \"40 mm\"\n\
                priors = { toes = 1 }\n[[tire]]\nside = \"left\"\nplace = \"inner\"\ndepths = [\"25 mm\", \"8 mm\"]\n\
                circumference = \"1 m\"\n[[tire]]\nside = \"left\"\nplace = \"inner\"\ndepths = [\"9 miles\", \"-\", \"-\", \"-\", \"-\"]\n\
                [[wheel_end]]\nside = \"left\"\n[[wheel_end]]\nside = \"left\"\n";
    let told = read(text).unwrap_err().render();
    for part in [
        "the sheet says `dual` tires, and the axle has `wide-base` ones",
        "the axle has no left inner tire: its tires are single",
        "2 depths are given, and the tire has 5 ribs",
        "a tread is not 25 mm deep",
        "1000 mm round the tire is not a tire of this axle",
        "the left inner tire is there twice",
        "the left wheel end is there twice",
        "a wall of 40 mm is not that of this axle",
        "there is no cause `toes`",
        "did you mean `toe`?",
        "case.toml:9",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
}

#[test]
fn a_sheet_without_depths_or_axle_says_what_it_needs() {
    let starter = case_starter("x");
    let told = read(&starter).unwrap_err().render();
    assert!(told.contains("no tread depth is filled in"), "{told}");
    let filled =
        starter.replace("[\"-\", \"-\", \"-\", \"-\", \"-\"]", "[\"9 mm\", \"-\", \"-\", \"-\", \"9 mm\"]");
    assert!(read(&filled).is_ok());
    let told = read(&filled.replace("trailer-5-inch-duals", "trailer-5-inch-dual")).unwrap_err().render();
    assert!(told.contains("did you mean `trailer-5-inch-duals`?"), "{told}");
    let told = read("name = \"x\"\naxle = \"no/such.toml\"\n[[tire]]\nside = \"left\"\nplace = \"single\"\n");
    assert!(told.unwrap_err().render().contains("no/ does not exist"));
}

/// Lines that only comment a key out are good once the mark is taken away.
#[test]
fn every_line_of_the_starter_can_be_filled_in() {
    let starter = case_starter("x")
        .replace("[\"-\", \"-\", \"-\", \"-\", \"-\"]", "[\"9 mm\", \"-\", \"-\", \"-\", \"9 mm\"]");
    let is_key = |line: &str| {
        line.starts_with('[')
            || line.split(" = ").next().is_some_and(|key| {
                line.contains(" = ")
                    && key.chars().all(|letter| letter.is_ascii_lowercase() || "_-".contains(letter))
            })
    };
    let opened: Vec<&str> = starter
        .lines()
        .map(|line| line.strip_prefix("# ").filter(|rest| is_key(rest)).unwrap_or(line))
        .collect();
    let text = opened.join("\n").replace("loose-bearings = 2", "toe = 2");
    let sheet = read(&text).unwrap_or_else(|problems| panic!("{}", problems.render()));
    assert!(sheet.distance.is_some() && sheet.ends.left.toe.is_some() && sheet.damper.is_some());
}
