//! What a result was made from stands in every output that has room for it.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow_in, demo, root};

#[test]
fn document_picture_and_field_file_say_what_they_were_made_from() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual-shell");
    let asked =
        ["--set", "tube.wall=9.5 mm", "--case", "rated-load", "--plot", "a.svg", "--vtu", "a.vtu", "--json"];
    let run = axlebow_in(folder.path(), &[&["flex", &model][..], &asked].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    let document: Value = serde_json::from_str(&run.out).expect("JSON");
    let own = &document["model"];
    assert_eq!(own["settings"], serde_json::json!(["set tube.wall=9.5 mm"]));
    assert!(document["program"].as_str().expect("a program").starts_with("axlebow "));
    let hash = own["hash"].as_str().expect("a hash");
    for file in ["a.svg", "a.vtu"] {
        let text = std::fs::read_to_string(folder.path().join(file)).expect("the output");
        for line in
            ["setting: set tube.wall=9.5 mm", &format!("model hash: {hash}"), "default: ", "units: SI"]
        {
            assert!(text.contains(line), "{line} in {file}");
        }
    }
}

#[test]
fn a_ride_names_its_road_and_what_was_changed_in_it() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual");
    let asked = ["--over", "pothole", "--road", "depth=30 mm", "--speed", "40 km/h"];
    let ride = |files: &[&str]| {
        let run = axlebow_in(folder.path(), &[&["ride", &model, "--reduced"][..], &asked, files].concat());
        assert!(run.code <= 1, "{}", run.err);
        run.out
    };
    ride(&["--plot", "a.svg", "--csv", "a.csv"]);
    let text = |file: &str| std::fs::read_to_string(folder.path().join(file)).expect("a file");
    for line in ["setting: over pothole", "setting: road depth=30 mm", "setting: speed 40 km/h"] {
        assert!(text("a.svg").contains(line), "{line}");
        assert!(text("a.csv").contains(&format!("# {line}\r\n")), "{line}");
    }
    ride(&["--csv", "plain.csv", "--plain-csv"]);
    let rows =
        |file: &str| text(file).lines().filter(|line| !line.starts_with('#')).map(str::to_owned).collect();
    let [with, without]: [Vec<String>; 2] = ["a.csv", "plain.csv"].map(rows);
    assert!(text("plain.csv").starts_with("time_s,") && with == without);
}

#[test]
fn rows_say_what_is_doubtful_about_them() {
    let folder = TempDir::new().expect("a folder");
    let axle = demo("trailer-152-thin-dual");
    let lane = root().join("models/roads/measured-lane.csv").display().to_string();
    let asked = ["ride", &axle, "--over", &lane, "--speed", "200 km/h", "--csv", "a.csv", "--json"];
    let run = axlebow_in(folder.path(), &asked);
    let document: Value = serde_json::from_str(&run.out).expect("JSON");
    let rows = std::fs::read_to_string(folder.path().join("a.csv")).expect("the rows");
    let warnings = document["warnings"].as_array().expect("warnings");
    assert!(!warnings.is_empty());
    for warning in warnings {
        let text = warning["text"].as_str().expect("a text");
        assert!(rows.contains(&format!("# warning: {text}")), "{text}");
    }
}
