//! Models fitted to shop readings.

use std::path::Path;

use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, demo, root};

fn demo_readings() -> String {
    root().join("models/readings/trailer-152-thin.csv").display().to_string()
}

/// A folder with the demo model in it.
fn folder() -> TempDir {
    let folder = TempDir::new().expect("a folder");
    std::fs::copy(demo("trailer-152-thin-dual"), folder.path().join("axle.toml")).expect("a copy");
    folder
}

fn text(folder: &Path, name: &str) -> String {
    std::fs::read_to_string(folder.join(name)).expect("the file is there")
}

/// Runs a fit to readings with these rows under the usual heading.
fn fit_to(rows: &str) -> crate::program::Run {
    let folder = folder();
    let sheet = format!("quantity,of,load,ground,value,standard error\n{rows}\n");
    std::fs::write(folder.path().join("sheet.csv"), sheet).expect("the file is written");
    let run =
        axlebow_in(folder.path(), &["fit", "axle.toml", "--readings", "sheet.csv", "--unknown", "tube.wall"]);
    assert_eq!(run.code != 0, !folder.path().join("axle-fitted.toml").exists(), "{}", run.err);
    run
}

#[test]
fn the_fitted_model_stands_beside_the_original_and_runs() {
    let folder = folder();
    let before = text(folder.path(), "axle.toml");
    let fit = ["fit", "axle.toml", "--readings", &demo_readings(), "--plot", "fit.svg"];
    let run = axlebow_in(folder.path(), &fit);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(
        run.out.contains("Demonstration data, invented.") && run.out.contains("Student's t"),
        "{}",
        run.out
    );
    assert_eq!(text(folder.path(), "axle.toml"), before);
    let fitted = text(folder.path(), "axle-fitted.toml");
    assert!(fitted.starts_with("# Fitted by axlebow fit to the readings trailer-152-thin.csv"), "{fitted}");
    assert!(
        fitted.contains("# arm in torsion with its bush") && !fitted.contains("wall = \"9 mm\""),
        "{fitted}"
    );
    assert!(text(folder.path(), "fit.svg").contains("initial value"));
    assert!(fitted.contains("[[wheel_end]]") && fitted.contains("\ncamber = \"-0.0"), "{fitted}");
    assert_eq!(axlebow_in(folder.path(), &["flex", "axle-fitted.toml"]).code, 0);
    let again = axlebow_in(folder.path(), &fit);
    assert_eq!(again.code, 2);
    assert!(again.err.contains("axle-fitted.toml exists; give another file by -o"), "{}", again.err);
    let over =
        axlebow_in(folder.path(), &["fit", "axle.toml", "--readings", &demo_readings(), "-o", "./axle.toml"]);
    assert_eq!((over.code, text(folder.path(), "axle.toml")), (2, before), "{}", over.err);
}

#[test]
fn the_document_of_a_fit_has_the_keys_of_its_schema() {
    let folder = folder();
    let run = axlebow_in(folder.path(), &["fit", "axle.toml", "--readings", &demo_readings(), "--json"]);
    let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    let schema = axlebow(&["schema", "fit"]);
    let schema: serde_json::Value = serde_json::from_str(&schema.out).expect("JSON");
    let declared: Vec<&String> = schema["properties"].as_object().expect("properties").keys().collect();
    let written: Vec<&String> = document.as_object().expect("members").keys().collect();
    assert_eq!(document["schema"], "axlebow/fit/2");
    assert!(written.iter().all(|key| declared.contains(key)), "{written:?}");
    assert_eq!(document["readings"].as_array().map(Vec::len), Some(9));
    let wall = &document["unknowns"][0];
    assert!(wall["interval"][0].as_f64() < wall["value"].as_f64() && wall["unit"] == "m", "{wall}");
}

#[test]
fn every_slip_in_a_sheet_is_shown_with_its_place() {
    let run = fit_to(
        "camber,left,rated-laod,rolling,-0.4 deg,0.02 deg\n\
         camber,left,-60 kN,rolling,-0.4 deg,0.02 deg\n\
         camber,middle,unladen,rolling,-0.4,-0.02 deg\n\
         cambre,left,unladen,rolling,-0.4 deg,0.02 deg\n\
         bow,middle,unladen,moving,-4 deg,0 mm\n\
         toe,left,unladen,standing,35 deg,nan deg\n\
         natural-frequency,wheel hop,braking,rolling,-11 Hz,0.1 Hz\n\
         bow,middle,unladen",
    );
    assert_eq!(run.code, 2);
    for words in [
        "sheet.csv:2:13",
        "no load case `rated-laod`",
        "did you mean `rated-load`?",
        "the load `-60 kN` is impossible",
        "`middle` is not known here",
        "the standard error `-0.02 deg` is impossible",
        "sheet.csv:4:31",
        "did you mean `camber`?",
        "`moving` is not known here",
        "measures angle; length is wanted",
        "the standard error `0 mm` is impossible",
        "toe `35 deg` is impossible",
        "natural frequencies are of an axle at rest on a level road, not of braking",
        "the row has 3 cells",
    ] {
        assert!(run.err.contains(words), "`{words}` missing in\n{}", run.err);
    }
}

#[test]
fn a_missing_unit_and_a_missing_mode_are_named() {
    let run = fit_to("camber,left,unladen,rolling,-0.1,0.02 deg");
    assert!(run.code == 2 && run.err.contains("deg"), "{}", run.err);
    let run = fit_to("natural-frequency,wheel hip,unladen,rolling,11 Hz,0.1 Hz");
    assert!(run.code == 2 && run.err.contains("line 2") && run.err.contains("wheel hop"), "{}", run.err);
    let run = fit_to("");
    assert!(run.code == 2 && run.err.contains("there are no readings under the heading"), "{}", run.err);
    let run = axlebow(&[
        "fit",
        &demo("trailer-152-thin-dual"),
        "--readings",
        &demo_readings(),
        "--unknown",
        "tube.wal",
    ]);
    assert!(run.code == 2 && run.err.contains("did you mean `wall`?"), "{}", run.err);
}

#[test]
fn a_reading_sheet_has_its_cautions_and_is_not_written_over() {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(folder.path(), &["start", "--readings", "bay-4"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let sheet = text(folder.path(), "bay-4.csv");
    for words in
        ["Chock", "only a jack holds", "axle and vehicle makers say", "quantity,of,load,ground,value"]
    {
        assert!(sheet.contains(words), "{words}");
    }
    assert_eq!(axlebow_in(folder.path(), &["start", "--readings", "bay-4"]).code, 2);
}

/// A wheel that leans in and one that leans out are of no wall.
#[test]
fn a_doubtful_fit_fails_and_writes_nothing_unless_asked() {
    let folder = folder();
    let rows = "quantity,of,load,ground,value,standard error\n\
                camber,left,rated-load,rolling,-0.9 deg,0.02 deg\ncamber,right,rated-load,rolling,0.5 deg,0.02 deg\n";
    std::fs::write(folder.path().join("sheet.csv"), rows).expect("the file is written");
    let fit = ["fit", "axle.toml", "--readings", "sheet.csv", "--unknown", "tube.wall"];
    let run = axlebow_in(folder.path(), &fit);
    assert_eq!(run.code, 1, "{}", run.err);
    assert!(run.err.contains("no model was written") && run.out.contains("Chi squared"), "{}", run.err);
    assert!(!folder.path().join("axle-fitted.toml").exists());
    let run = axlebow_in(folder.path(), &[fit.as_slice(), &["--doubtful"]].concat());
    assert!(run.code == 1 && run.err.contains("written all the same"), "{}", run.err);
    assert!(text(folder.path(), "axle-fitted.toml").contains("wall = "));
}
