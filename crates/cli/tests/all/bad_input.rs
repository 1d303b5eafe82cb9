//! Bad input: a clear message with a place, exit code 2, no panic, nothing written.

use tempfile::TempDir;

use crate::program::{Run, axlebow, axlebow_in, changed, demo, on_text};

/// The run was refused with each of the words in its message, and printed no result.
fn refused(run: &Run, words: &[&str]) {
    assert_eq!(run.code, 2, "out: {}\nerr: {}", run.out, run.err);
    assert_eq!(run.out, "");
    for word in words {
        assert!(run.err.contains(word), "`{word}` missing in\n{}", run.err);
    }
    assert!(!run.err.contains("panicked"), "{}", run.err);
}

fn flexed(from: &str, to: &str) -> Run {
    on_text("flex", &changed(from, to))
}

#[test]
fn zero_and_negative_and_non_finite_lengths_are_refused_at_their_place() {
    for value in ["0 mm", "-3 mm", "nan mm", "inf mm", "1e999 mm"] {
        refused(&flexed(r#"wall = "12.7 mm""#, &format!(r#"wall = "{value}""#)), &["file.toml:15:", "wall"]);
    }
}

#[test]
fn a_wall_thicker_than_the_radius_is_refused() {
    refused(&flexed(r#"wall = "12.7 mm""#, r#"wall = "70 mm""#), &["wall", "70 mm", "63.5 mm"]);
}

#[test]
fn seats_outboard_of_the_wheels_are_refused() {
    refused(&flexed(r#"at = "485 mm""#, r#"at = "1200 mm""#), &["seat", "outboard of", "wheel"]);
}

#[test]
fn a_missing_unit_names_what_is_accepted() {
    refused(&flexed(r#"od = "127 mm""#, "od = 127"), &["od", "mm"]);
    refused(&flexed(r#"od = "127 mm""#, r#"od = "127""#), &["unit", "mm"]);
}

#[test]
fn a_unit_of_the_wrong_kind_says_what_it_measures() {
    refused(&flexed(r#"od = "127 mm""#, r#"od = "127 kg""#), &["mass", "length"]);
}

#[test]
fn a_misspelt_key_is_answered_with_the_likely_one() {
    refused(
        &flexed("rotational_stiffness", "rotational_stifness"),
        &["rotational_stifness", "rotational_stiffness"],
    );
}

#[test]
fn impossible_play_and_bump_stops_are_refused_at_their_place() {
    let end = |endplay: &str| flexed("hub_mass", &format!("endplay = \"{endplay}\"\nhub_mass"));
    refused(&end("-0.1 mm"), &["endplay", "-0.1 mm", "from 0 mm to 5 mm"]);
    refused(&end("6 mm"), &["endplay", "6 mm", "from 0 mm to 5 mm"]);
    refused(
        &flexed("hub_mass", "bearing_cup_angle = \"60 deg\"\nhub_mass"),
        &["bearing_cup_angle", "45 deg"],
    );
    let stop = |keys: &str| flexed("[seat.", &format!("[seat.bump_stop]\n{keys}\n\n[seat."));
    refused(&stop("clearance = \"-5 mm\"\nrate = \"1500 N/mm\""), &["clearance", "-5 mm"]);
    refused(&stop("clearance = \"900 mm\"\nrate = \"1500 N/mm\""), &["clearance", "from 0 mm to 500 mm"]);
    refused(&stop("clearance = \"60 mm\"\nrate = \"0 N/mm\""), &["rate", "more than 0 N/mm"]);
    refused(&stop("clearance = \"60 mm\""), &["rate"]);
    refused(
        &flexed("at = \"485 mm\"", "at = \"485 mm\"\nrebound_damping = \"-1 kN s/m\""),
        &["rebound_damping", "-1 kN s/m"],
    );
}

#[test]
fn two_stations_of_one_name_are_refused() {
    let twice = "[[station]]\nname = \"crack\"\nat = \"10 mm\"\n[[station]]\nname = \"crack\"\nat = \"20 mm\"\n[loads]";
    refused(&flexed("[loads]", twice), &["two stations are named crack"]);
}

#[test]
fn an_empty_file_and_noise_are_refused() {
    refused(&on_text("flex", b""), &["empty"]);
    let noise: Vec<u8> = (0..10_000_000_u32).map(|i| (i.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
    refused(&on_text("flex", &noise), &["file.toml"]);
    refused(&on_text("study", &noise), &["file.toml"]);
}

#[test]
fn all_problems_are_reported_at_once() {
    let text = String::from_utf8(changed(r#"od = "127 mm""#, r#"od = "127 kg""#)).expect("text");
    let text = text.replace(r#"width = "180 mm""#, "width = 180").replace("hub_mass", "hubmass");
    refused(&on_text("flex", text.as_bytes()), &["127 kg", "180", "hubmass"]);
}

#[test]
fn a_missing_file_and_a_folder_are_named() {
    refused(&axlebow(&["flex", "nowhere.toml"]), &["nowhere.toml"]);
    refused(&axlebow(&["flex", "."]), &["."]);
}

#[test]
fn a_change_that_leads_nowhere_is_refused() {
    let model = demo("trailer-127-thick-dual");
    refused(&axlebow(&["flex", &model, "--set", "tube.wal=9 mm"]), &["tube.wal", "wall"]);
    refused(&axlebow(&["flex", &model, "--set", "tube.wall"]), &["KEY=VALUE"]);
}

#[test]
fn a_file_of_another_kind_is_recognised() {
    let study = crate::program::root().join("studies/wall-sweep.toml").display().to_string();
    refused(&axlebow(&["flex", &study]), &["looks like a study file"]);
    refused(&axlebow(&["study", &demo("trailer-127-thick-dual")]), &["looks like a model file"]);
}

#[test]
fn problems_that_a_change_brings_name_the_change() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["flex", &model, "--set", "seat[0].at=2 m"]);
    refused(&run, &["outboard of", "read with --set seat[0].at=2 m"]);
    let quoted = axlebow(&["flex", &model, "--set", "tube.wall=\"9 mm\"", "--case", "rated-load"]);
    assert_eq!(quoted.code, 0, "{}", quoted.err);
}

#[test]
fn nothing_is_half_written() {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(folder.path(), &["flex", "nowhere.toml", "--plot", "picture.svg"]);
    assert_eq!(run.code, 2);
    let left = std::fs::read_dir(folder.path()).expect("the folder").count();
    assert_eq!(left, 0);
    let model = demo("trailer-127-thick-dual");
    let run = axlebow_in(folder.path(), &["flex", &model, "--plot", "no-such-folder/picture.svg"]);
    refused(&Run { out: String::new(), ..run }, &["no-such-folder"]);
}

#[test]
fn a_vehicle_that_tips_over_has_no_solution() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["flex", &model, "--set", "loads.side_force_ratio=0.9"]);
    assert_eq!(run.code, 3, "{}", run.err);
    assert!(run.err.contains("side-load") && run.err.contains("tips over"), "{}", run.err);
}

#[test]
fn a_ride_refuses_impossible_speeds_and_settings_of_time() {
    let model = demo("trailer-127-thick-dual");
    let road = crate::program::root().join("models/roads/haversine-bump.toml").display().to_string();
    let ride = |more: &[&str]| {
        axlebow(&[["ride", model.as_str(), "--over", road.as_str()].as_slice(), more].concat())
    };
    refused(&ride(&["--speed", "0 km/h"]), &["speed is 0 m/s", "greater than zero"]);
    refused(&ride(&["--speed=-50 km/h"]), &["speed is -13.8", "greater than zero"]);
    refused(&ride(&["--speed", "50"]), &["--speed 50", "unit"]);
    refused(&ride(&["--spectral-radius", "1.5"]), &["spectral radius is 1.5", "from 0 to 1"]);
    let both = ["--scheme", "average-acceleration", "--spectral-radius", "0.5"];
    refused(&ride(&both), &["--spectral-radius belongs to --scheme generalized-alpha"]);
    refused(&ride(&["--scheme", "leapfrog"]), &["generalized-alpha", "average-acceleration"]);
}
