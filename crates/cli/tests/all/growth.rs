//! `axlebow growth`.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, demo};

const QUICK: [&str; 4] = ["--steps", "3", "--counts", "1..4"];

fn grown(arguments: &[&str]) -> Value {
    let all: Vec<&str> =
        ["growth"].iter().chain(arguments).chain(&QUICK).chain(&["--json"]).copied().collect();
    let run = axlebow(&all);
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("one JSON document")
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

#[test]
fn growth_begins_with_the_count_that_wins() {
    let run = axlebow(&[&["growth", &demo("trailer-152-thin-dual")], &QUICK[..]].concat());
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    assert!(run.out.contains("cups a turn grow fastest") && run.out.contains("by itself"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(run.out.contains("Demonstration data") && run.out.contains("no promise"), "{}", run.out);
}

#[test]
fn the_map_and_the_held_speed_meet_and_both_ends_are_alike() {
    let model = demo("trailer-152-thin-dual");
    let document = grown(&[&model, "--speeds", "80..100 km/h", "--held", "90 km/h", "--spread", "0 km/h"]);
    let growth = &document["axles"][0]["growth"];
    for (i, speed) in [80.0, 90.0, 100.0].into_iter().enumerate() {
        assert!((number(&growth["speeds_m_per_s"][i]) - speed / 3.6).abs() < 1e-12);
    }
    let left = &growth["wheels"]["left"];
    for (i, held) in left["held"].as_array().expect("counts").iter().enumerate() {
        let (map, held) = (number(&left["map_1_per_m"][i][1]), number(&held["growth_1_per_m"]));
        assert!((map / held - 1.0).abs() < 1e-9, "{map} {held}");
        let right = number(&growth["wheels"]["right"]["map_1_per_m"][i][1]);
        assert!((map / right - 1.0).abs() < 1e-6, "{map} {right}");
    }
}

/// Scrubbing work levels most of what a light duty grows, and leaves a larger part of the growth to the axle's motion.
#[test]
fn a_heavier_duty_levels_waves() {
    let model = demo("trailer-152-thin-dual");
    let fastest = |duty: &str| {
        let document = grown(&[&model, "--set", &format!("running.duty={duty}")]);
        let growth = &document["axles"][0]["growth"];
        assert_eq!(growth["duty"], duty);
        let held = growth["wheels"]["left"]["held"].as_array().expect("counts");
        let rates =
            |held: &Value| ["growth_1_per_m", "growth_hub_held_1_per_m"].map(|key| number(&held[key]));
        held.iter().map(rates).reduce(|a, b| if b[0] > a[0] { b } else { a }).expect("a count")
    };
    let ([light, light_alone], [heavy, heavy_alone]) = (fastest("line-haul"), fastest("city"));
    assert!(light > 3.0 * heavy && heavy > 0.0, "{light} {heavy}");
    assert!(light_alone / light > heavy_alone / heavy, "{light_alone} {heavy_alone}");
}

#[test]
fn several_axles_stand_beside_each_other_with_map_and_picture() {
    let folder = TempDir::new().expect("a folder");
    let (thin, thick) = (demo("trailer-152-thin-dual"), demo("trailer-127-thick-dual"));
    let outputs = ["--csv", "map.csv", "--plain-csv", "--plot", "map.svg"];
    let run = axlebow_in(folder.path(), &[&["growth", &thin, &thick], &QUICK[..], &outputs[..]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    let words = run.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("waves grow most on 127 mm thick-wall trailer tube"), "{}", run.out);
    let csv = std::fs::read_to_string(folder.path().join("map.csv")).expect("a map");
    assert_eq!(csv.lines().count(), 1 + 2 * 3 * 4);
    assert!(csv.starts_with("axle,speed_m_per_s,count,left_growth_per_m,right_growth_per_m"));
    let picture = std::fs::read_to_string(folder.path().join("map.svg")).expect("a picture");
    assert!(picture.contains("On which axle cups grow") && picture.contains("axle tramp"));
}

#[test]
fn what_no_fleet_drives_is_refused() {
    let model = demo("trailer-152-thin-dual");
    let cases: [(&[&str], &str); 8] = [
        (&["--counts", "0..4"], "least count is 0 cups"),
        (&["--counts", "5..4"], "highest count is 4 cups"),
        (&["--counts", "many"], "two whole numbers"),
        (&["--speeds", "0..90 km/h"], "lowest speed is 0 m/s"),
        (&["--speeds", "90 km/h"], "two speeds"),
        (&["--held", "0 km/h"], "mean of the speeds held is 0 m/s"),
        (&["--held", "50 km/h", "--spread", "20 km/h"], "less than a third of their mean"),
        (&["--case", "kerb"], "curb"),
    ];
    for (arguments, text) in cases {
        let run = axlebow(&[&["growth", &model], arguments].concat());
        assert_eq!(run.code, 2, "{arguments:?}: {}", run.out);
        assert!(run.err.contains(text), "{arguments:?}: {}", run.err);
    }
}
