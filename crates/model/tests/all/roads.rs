//! Road files and measured profiles: what is read, what is assumed, and what is refused at its place.

use std::path::Path;

use axlebow_model::{Problems, RoadFile, road_events};
use axlebow_road::Event;
use tempfile::TempDir;

/// Reads a road file that names a profile beside it.
fn measured(keys: &str, profile: &str) -> Result<RoadFile, Problems> {
    let folder = TempDir::new().unwrap();
    std::fs::write(folder.path().join("lane.csv"), profile).unwrap();
    let text = format!("kind = \"measured-profile\"\nprofile = \"lane.csv\"\n{keys}");
    RoadFile::from_bytes(text.as_bytes(), "lane.toml", folder.path())
}

/// Messages and what is accepted, by line.
fn problems(profile: &str) -> Vec<String> {
    let problems = measured("", profile).unwrap_err();
    let text = |text: &Option<String>| text.clone().unwrap_or_default();
    problems
        .iter()
        .map(|p| {
            format!("{}:{} {} | {} | {}", p.line, p.column, p.message, text(&p.accepted), text(&p.likely))
        })
        .collect()
}

fn samples(event: &Event) -> (Vec<f64>, Vec<f64>) {
    let Event::Profile(profile) = event else { panic!("a profile") };
    (profile.distances().to_vec(), profile.heights().to_vec())
}

fn refused(text: &str) -> String {
    RoadFile::from_bytes(text.as_bytes(), "road.toml", Path::new("")).unwrap_err().render()
}

#[test]
fn columns_in_any_order_and_unit_are_read_and_count_from_the_first_row() {
    let road = measured("", "# survey\nright [in],distance [ft],left [cm]\n1,0,4.54\n2,0.5,3.54\n").unwrap();
    let ((x, left), (_, right)) = (samples(road.road.left.event()), samples(road.road.right.event()));
    let close = |a: &[f64], b: [f64; 2]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-12);
    // The first row has 45.4 mm and 25.4 mm: zero lies between, at 35.4 mm.
    assert!(close(&x, [0.0, 0.1524]) && close(&left, [0.01, 0.0]) && close(&right, [-0.01, 0.0154]));
}

#[test]
fn one_track_is_met_by_the_wheels_that_the_file_says() {
    let profile = "distance [m],height [mm]\n0,0\n0.25,10\n0.5,0\n";
    let both = measured("lag = \"1 m\"", profile).unwrap().road;
    assert_eq!((both.left.height(0.25), both.right.height(1.25)), (0.01, 0.01));
    let right = measured("wheels = \"right\"", profile).unwrap();
    assert_eq!((right.road.left.height(0.25), right.road.right.height(0.25)), (0.0, 0.01));
    assert!(!right.assumed.iter().any(|assumed| ["lag", "wheels"].contains(&assumed.path.as_str())));
}

#[test]
fn an_uneven_profile_is_kept_as_it_is_and_said_to_be_so() {
    let even = measured("", "distance [m],height [mm]\n0,0\n0.1,1\n0.2,0\n0.3,0\n").unwrap();
    let uneven = measured("", "distance [m],height [mm]\n0,0\n0.05,1\n0.3,0\n").unwrap();
    let said = |road: &RoadFile| road.assumed.iter().find(|a| a.path == "profile").map(|a| a.text.clone());
    assert_eq!(said(&uneven).as_deref(), Some("straight between rows that lie 50 mm to 250 mm apart"));
    assert_eq!(said(&even), None);
    assert_eq!(samples(uneven.road.left.event()).0, [0.0, 0.05, 0.3]);
}

#[test]
fn every_fault_of_a_profile_is_told_with_its_line() {
    let found =
        problems("distance [m],height [mm]\n0,0\n0.1,abc\n0.1,nan\n0.05,1\n0.2,\n0.3\n\n# x\n0.4,1e999\n");
    let starts = [
        "3:5 `abc` is not a number",
        "4:1 the distance `0.1` repeats that of the row before",
        "4:5 `nan` is not a finite number",
        "5:1 the distance `0.05` goes back from 100 mm in the row before",
        "6:1 cell 2 of the row is empty",
        "7:1 the row has 1 cell | 2 cells, as in the heading",
        "10:5 `1e999` is not a finite number",
    ];
    assert_eq!(found.len(), starts.len(), "{found:#?}");
    for (found, start) in found.iter().zip(starts) {
        assert!(found.starts_with(start), "{found}");
    }
}

#[test]
fn holes_are_told_once_with_the_widest_and_its_line() {
    let found = problems("distance [m],height [mm]\n0,0\n0.1,0\n0.6,0\n0.7,0\n2.7,0\n");
    assert_eq!(
        found,
        ["6:1 this row is 2000 mm from the one before; 1 gap wider than accepted besides | \
          rows at most 300 mm apart, or another `widest_gap` of the road | "]
    );
    assert!(measured("widest_gap = \"2 m\"", "distance [m],height [mm]\n0,0\n2,0\n").is_ok());
}

#[test]
fn headings_need_a_known_word_and_a_unit_of_length() {
    let one = |heading: &str| problems(&format!("{heading}\n0,0\n1,0\n")).remove(0);
    for (heading, part) in [
        ("distance [m],hieght [mm]", "1:14 a profile has no column `hieght`"),
        ("distance [m],hieght [mm]", "| height"),
        ("distance,height [mm]", "1:1 the heading `distance` has no unit"),
        ("distance,height [mm]", "| distance [m]"),
        ("distance [m],height [kg]", "measures mass; length is wanted"),
        ("distance [m],height []", "has no unit"),
        ("distance [m],height [mn]", "unknown unit `mn`"),
        ("0,1", "the first row has numbers where the heading is wanted"),
        ("distance [m];height [mm]", "columns are parted by `;`"),
        ("distance [m],left [mm]", "`left` without `right`"),
        ("distance [m],distance [m]", "two columns `distance`"),
        ("left [mm],right [mm]", "no column `distance`"),
        ("distance [m]", "no column of heights"),
    ] {
        assert!(one(heading).contains(part), "{part}\n{}", one(heading));
    }
    assert!(
        problems("distance [m],height [mm],left [mm]\n0,0,0\n")[0].contains("`height` for one track and")
    );
}

#[test]
fn profiles_without_rows_and_of_other_bytes_are_refused() {
    assert!(problems("")[0].contains("the profile is empty"));
    assert!(problems("distance [m],height [mm]\n")[0].contains("no row under its heading"));
    assert!(problems("distance [m],height [mm]\n0,1\n")[0].contains("1 row under its heading"));
    let many = "1,x\n".repeat(200);
    assert_eq!(problems(&format!("distance [m],height [mm]\n{many}")).len(), 50);
    assert!(problems("distance [m],height [km]\n0,0\n0.1,11\n")[0].starts_with("3:1 height in row 2"));
}

#[test]
fn a_profile_that_is_not_there_is_named_with_the_likely_one() {
    let folder = TempDir::new().unwrap();
    std::fs::write(folder.path().join("lane.csv"), "").unwrap();
    let text = b"kind = \"measured-profile\"\nprofile = \"lnae.csv\"\n";
    let problems = RoadFile::from_bytes(text, "road.toml", folder.path()).unwrap_err().render();
    assert!(problems.contains("lnae.csv") && problems.contains("did you mean `lane.csv`?"), "{problems}");
}

#[test]
fn keys_that_a_kind_has_no_use_for_are_refused() {
    let random = "kind = \"random-road\"\nclass = \"C\"\nlength = \"200 m\"\n";
    assert!(refused(&format!("{random}lag = \"1 m\"")).contains("`lag` does nothing for a random-road"));
    assert!(refused(&format!("{random}wheels = \"left\"")).contains("`wheels` does nothing"));
    let step = "kind = \"step\"\nheight = \"20 mm\"\n";
    assert!(refused(&format!("{step}depth = \"1 m\"")).contains("`depth` does nothing for a step"));
    assert!(refused(&format!("{step}wheels = \"left\"\nlag = \"1 m\"")).contains("`lag` does nothing: "));
    let sides = "distance [m],left [mm],right [mm]\n0,0,0\n0.1,0,0\n";
    let problems = measured("wheels = \"left\"\nlag = \"1 m\"", sides).unwrap_err();
    assert_eq!(problems.iter().count(), 2, "{}", problems.render());
}

#[test]
fn every_event_has_its_sizes_listed_as_assumed_and_named() {
    for event in road_events() {
        let document = RoadFile::event(event).unwrap();
        let road = RoadFile::of(&document, Path::new("")).unwrap_or_else(|p| panic!("{}", p.render()));
        assert!(road.name.starts_with(&event.replace('-', " ")), "{}", road.name);
        assert!(!road.assumed.iter().any(|assumed| ["kind", "profile"].contains(&assumed.path.as_str())));
        let sizes = ["height", "depth", "amplitude", "class"];
        assert!(road.assumed.iter().any(|assumed| sizes.contains(&assumed.path.as_str())), "{event}");
    }
    let mut bump = RoadFile::event("haversine-bump").unwrap();
    let road = RoadFile::of(&bump, Path::new("")).unwrap();
    assert_eq!(road.name, "haversine bump, height 40 mm, length 1 m");
    assert!(!road.assumed.iter().any(|assumed| assumed.path == "seed" || assumed.path == "edge_slope"));
    bump.set("height", "1 in").unwrap();
    let road = RoadFile::of(&bump, Path::new("")).unwrap();
    assert_eq!(road.name, "haversine bump, height 25.4 mm, length 1 m");
    assert!(!road.assumed.iter().any(|assumed| assumed.path == "height"));
    assert!(RoadFile::event("measured-profile").is_none() && RoadFile::event("bump").is_none());
}
