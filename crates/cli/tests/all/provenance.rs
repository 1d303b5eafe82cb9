//! What a result was made from stands in every output that has room for it.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow_in, demo};

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
    let asked = ["--over", "pothole", "--road", "depth=30 mm", "--speed", "40 km/h", "--plot", "a.svg"];
    let run = axlebow_in(folder.path(), &[&["ride", &model, "--reduced"][..], &asked].concat());
    assert!(run.code <= 1, "{}", run.err);
    let text = std::fs::read_to_string(folder.path().join("a.svg")).expect("the picture");
    for line in ["setting: over pothole", "setting: road depth=30 mm", "setting: speed 40 km/h"] {
        assert!(text.contains(line), "{line}");
    }
}
