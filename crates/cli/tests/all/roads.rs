//! What is driven over: measured profiles, events by their name, and what is refused.

use std::path::Path;

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{Run, axlebow, axlebow_in, demo, root};

/// Rides over a road from a folder.
fn ride(folder: &Path, over: &str, more: &[&str]) -> Run {
    axlebow_in(folder, &[&["ride", &demo("trailer-127-thick-dual"), "--over", over], more].concat())
}

fn document(run: &Run) -> Value {
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("one JSON document")
}

fn with_profile(text: &str) -> TempDir {
    let folder = TempDir::new().expect("a folder");
    std::fs::write(folder.path().join("lane.csv"), text).expect("the profile");
    folder
}

fn refused(run: &Run, words: &[&str]) {
    assert_eq!((run.code, run.out.as_str()), (2, ""), "{}", run.err);
    for word in words {
        assert!(run.err.contains(word), "`{word}` missing in\n{}", run.err);
    }
}

fn assumed(document: &Value, path: &str) -> Option<String> {
    let entries = document["assumed"].as_array().expect("a list");
    let entry = entries.iter().find(|entry| entry["path"] == path)?;
    entry["value"].as_str().map(str::to_owned)
}

#[test]
fn a_mirrored_profile_gives_the_mirrored_ride() {
    let text = std::fs::read_to_string(root().join("models/roads/measured-lane.csv")).expect("the demo lane");
    let swapped =
        text.replace("left [mm]", "@").replace("right [mm]", "left [mm]").replacen('@', "right [mm]", 1);
    let rides = [text, swapped].map(|text| {
        let folder = with_profile(&text);
        document(&ride(folder.path(), "lane.csv", &["--json"]))["wheels"].clone()
    });
    let number = |wheels: &Value, side: &str, key: &str| wheels[side][key].as_f64().expect("a number");
    for key in ["largest_load_n", "camber_peak_to_peak_rad", "camber_rms_rad", "roughness_index"] {
        for (side, other) in [("left", "right"), ("right", "left")] {
            let (a, b) = (number(&rides[0], side, key), number(&rides[1], other, key));
            assert!((a - b).abs() < 1e-6 * a.abs(), "{key} {side}: {a} {b}");
        }
        assert_ne!(number(&rides[0], "left", key), number(&rides[0], "right", key), "{key}");
    }
}

#[test]
fn a_profile_is_driven_by_itself_and_by_its_road_file_alike() {
    let lane = |name: &str| root().join("models/roads").join(name).display().to_string();
    let here = TempDir::new().expect("a folder");
    let [own, named] = ["measured-lane.csv", "measured-lane.toml"]
        .map(|name| document(&ride(here.path(), &lane(name), &["--json"])));
    assert_eq!((&own["wheels"], &own["stations"]), (&named["wheels"], &named["stations"]));
    assert_eq!(own["road"], "measured-lane");
    assert_eq!(assumed(&own, "road.widest_gap").as_deref(), Some("300 mm"));
    assert_eq!((assumed(&own, "road.wheels"), assumed(&own, "road.lag")), (None, None));
    let table = ride(here.path(), &lane("measured-lane.toml"), &[]);
    assert!(table.out.contains("international roughness index of the road, m/km"), "{}", table.out);
}

#[test]
fn events_are_known_by_name_with_their_sizes_listed() {
    let here = TempDir::new().expect("a folder");
    let bump = document(&ride(here.path(), "haversine-bump", &["--json"]));
    assert_eq!(bump["road"], "haversine bump, height 40 mm, length 1 m");
    assert_eq!(assumed(&bump, "road.height").as_deref(), Some("40 mm"));
    let lower = document(&ride(here.path(), "haversine-bump", &["--json", "--road", "height=30 mm"]));
    assert_eq!(lower["road"], "haversine bump, height 30 mm, length 1 m");
    assert_eq!(assumed(&lower, "road.height"), None);
    let load = |ride: &Value| ride["wheels"]["left"]["largest_load_n"].as_f64().expect("a number");
    assert!(load(&lower) < load(&bump));
    let file = root().join("models/roads/pothole.toml").display().to_string();
    let changed = document(&ride(here.path(), &file, &["--json", "--road", "depth=\"20 mm\""]));
    assert!(changed["road"].as_str().is_some_and(|name| name.ends_with(", with depth=\"20 mm\"")));
}

#[test]
fn what_is_neither_a_file_nor_an_event_lists_the_events() {
    let here = TempDir::new().expect("a folder");
    refused(
        &ride(here.path(), "haversine-bumb", &[]),
        &["no such file", "`washboard`", "mean `haversine-bump`"],
    );
    refused(
        &ride(here.path(), "roads/none.toml", &[]),
        &["roads/none.toml", "roads/ does not exist", "`step`"],
    );
    refused(&ride(here.path(), "none.csv", &[]), &["none.csv", "no such file"]);
    let help = axlebow(&["ride", "--help"]).out;
    for event in ["half-sine-bump", "haversine-bump", "ramp", "step", "pothole", "washboard", "random-road"] {
        assert!(help.contains(event), "{event}");
        assert_eq!(ride(here.path(), event, &["--road", "run_out=0.1 s"]).code, 0, "{event}");
    }
}

#[test]
fn faults_of_a_profile_are_told_at_their_lines_with_nothing_written() {
    for (text, words) in [
        ("distance [m],height\n0,0\n", &["lane.csv:1:14", "has no unit", "height [mm]"][..]),
        ("distance [m],heigth [mm]\n0,0\n", &["no column `heigth`", "did you mean `height`?"]),
        ("distance [m],height [kN]\n0,0\n", &["measures force"]),
        ("distance [m],height [mm]\n0,0\n0.1,inf\n0.2,x\n", &["lane.csv:3:5", "finite", "lane.csv:4:5"]),
        ("distance [m],height [mm]\n0,0\n0.9,0\n", &["lane.csv:3:1", "900 mm from the one before", "300 mm"]),
        ("distance [m],height [mm]\n0,0\n0.1,0\n0.1,0\n0,0\n", &["repeats", "goes back"]),
        ("distance [m],height [mm]\n0,0\n", &["1 row", "two rows or more"]),
    ] {
        let folder = with_profile(text);
        refused(&ride(folder.path(), "lane.csv", &["--csv", "out.csv"]), words);
        assert!(!folder.path().join("out.csv").exists());
    }
}

#[test]
fn keys_and_changes_that_do_nothing_are_refused() {
    let here = TempDir::new().expect("a folder");
    refused(
        &ride(here.path(), "random-road", &["--road", "lag=1 m"]),
        &["`lag` does nothing for a random-road"],
    );
    refused(&ride(here.path(), "pothole", &["--road", "lag=1 m"]), &["`lag` does nothing", "one side only"]);
    refused(&ride(here.path(), "pothole", &["--road", "dept=1 m"]), &["--road dept=1 m", "mean `depth`?"]);
    refused(&ride(here.path(), "pothole", &["--road", "depth"]), &["KEY=VALUE"]);
    refused(&ride(here.path(), &demo("trailer-127-thick-dual"), &[]), &["looks like a model file"]);
    refused(
        &axlebow(&["flex", &root().join("models/roads/pothole.toml").display().to_string()]),
        &["road file"],
    );
}

#[test]
fn a_road_that_the_ride_cannot_feel_is_doubted_in_table_and_document() {
    let here = TempDir::new().expect("a folder");
    let short = ["--road", "length=150 mm", "--road", "run_out=0.1 s"];
    let table = ride(here.path(), "half-sine-bump", &short);
    assert!(table.code == 0 && table.out.contains("Warning: the bump is 150 mm long"), "{}", table.out);
    let fast = document(&ride(here.path(), "step", &["--json", "--road", "time_step=3 ms"]));
    let advice = fast["warnings"][0]["advice"].as_str().expect("an advice");
    assert!(advice.contains("time_step of 2.25 ms"), "{advice}");
}
