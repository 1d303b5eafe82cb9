//! What goes to and comes from other programs: grids, measured series, cases of one's own.

use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, demo, root};

fn read(folder: &TempDir, name: &str) -> String {
    std::fs::read_to_string(folder.path().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

#[test]
fn modes_are_written_as_one_grid_and_a_ride_as_many() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual");
    let run = axlebow_in(folder.path(), &["modes", &model, "--count", "4", "--vtu", "m.vtu"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let grid = read(&folder, "m.vtu");
    assert_eq!(grid.matches("Name=\"mode_").count(), 4);
    let ride = ["ride", &model, "--over", "haversine-bump", "--reduced", "--pvd", "r.pvd"];
    let run = axlebow_in(folder.path(), &ride);
    assert_eq!(run.code, 0, "{}", run.err);
    let collection = read(&folder, "r.pvd");
    let named: Vec<&str> =
        collection.split("file=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    assert!((150..=250).contains(&named.len()), "{}", named.len());
    assert!(named.iter().all(|name| read(&folder, name).ends_with("</VTKFile>\n")));
    let run = axlebow_in(folder.path(), &["ride", &model, "--over", "haversine-bump", "--pvd", "r.vtu"]);
    assert_eq!(run.code, 2);
}

#[test]
fn stiffeners_are_in_the_grid_of_a_load_case() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual-angle");
    let run = axlebow_in(folder.path(), &["flex", &model, "--case", "rated-load", "--vtu", "a.vtu"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let grid = read(&folder, "a.vtu");
    let part = grid.split("Name=\"part\"").nth(1).and_then(|rest| rest.split("</DataArray>").next()).unwrap();
    assert!(part.lines().any(|line| line == "2e0"), "points of the stiffener");
    assert!(grid.contains("Name=\"moment_x_n_m\"") && !grid.contains("NaN"));
}

/// What the ride itself writes lies over it: its picture has two lines more in each panel, and the same ends.
#[test]
fn a_measured_series_is_drawn_over_a_ride() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual");
    let over = ["ride", &model, "--over", "haversine-bump", "--reduced"];
    let run = |more: &[&str]| axlebow_in(folder.path(), &[&over[..], more].concat());
    assert_eq!(run(&["--csv", "own.csv", "--plot", "alone.svg"]).code, 0);
    let drawn = run(&["--overlay", "own.csv", "--plot", "over.svg"]);
    assert_eq!(drawn.code, 0, "{}", drawn.err);
    let lines = |name: &str| read(&folder, name).matches("<polyline").count();
    assert_eq!(lines("over.svg") - lines("alone.svg"), 7);
    assert!(read(&folder, "over.svg").contains("measured: own.csv"));
    std::fs::write(folder.path().join("bad.csv"), "time,left_load_n\n0,1\n").expect("written");
    let refused = run(&["--overlay", "bad.csv", "--plot", "over.svg"]);
    assert_eq!(refused.code, 2);
    assert!(refused.err.contains("time_s"), "{}", refused.err);
    assert_eq!(run(&["--overlay", "own.csv"]).code, 2, "nothing to draw over");
}

#[test]
fn cases_of_ones_own_are_run_as_those_of_the_textbook() {
    let folder = root().join("studies/textbook");
    let run = axlebow(&["textbook", "--cases", &folder.display().to_string(), "--json"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    let cases = document["cases"].as_array().expect("cases");
    assert_eq!(document["passed"].as_u64(), Some(cases.len() as u64));
    assert!(cases.len() > 70 && cases.iter().all(|own| own["provenance"] == "stated in the file"));
    let own = TempDir::new().expect("a folder");
    let text = std::fs::read_to_string(folder.join("cantilever-end-force.toml")).expect("a beam");
    let off = text.replace("deflection = \"-0.4", "deflection = \"-0.5");
    assert_ne!(off, text);
    std::fs::write(own.path().join("off.toml"), &off).expect("written");
    let missed = axlebow_in(own.path(), &["textbook", "--cases", "off.toml"]);
    assert_eq!(missed.code, 1, "{}", missed.out);
    assert!(missed.out.contains("MISSED"));
    std::fs::write(own.path().join("none.toml"), text.split("[[check]]").next().unwrap()).expect("written");
    let none = axlebow_in(own.path(), &["textbook", "--cases", "none.toml"]);
    assert_eq!(none.code, 2);
    assert!(none.err.contains("[[check]]"), "{}", none.err);
}
