//! The wall at the seats on the command line.

use serde_json::Value;

use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, axlebow_keeping, demo, root};

/// `flex` of the thin-wall demo axle at rated load with changes.
fn flex(changes: &[&str]) -> Value {
    let model = demo("trailer-152-thin-dual-shell");
    let mut arguments = vec!["flex", model.as_str(), "--case", "rated-load", "--json"];
    changes.iter().for_each(|change| arguments.extend(["--set", change]));
    let run = axlebow(&arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("JSON")
}

fn number(document: &Value, pointer: &str) -> f64 {
    document.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("{pointer}"))
}

const SHELL: &str = "seat[0].wall_flexibility=shell";
const TURN: &str = "/seat_walls/left/rotational_flexibility_rad_per_nm";
const CAMBER: &str = "/cases/0/wheels/left/camber_change_rad";
const SPLIT: &str = "/cases/0/wheels/left/split";

#[test]
fn shells_of_the_wall_take_part_in_the_split_of_the_camber_change() {
    let found = flex(&[SHELL]);
    assert_eq!(found["seat_walls"]["left"], found["seat_walls"]["right"]);
    assert!(number(&found, TURN) > 0.0);
    assert!((0.3..0.8).contains(&number(&found, "/seat_walls/left/composite_fraction")));
    let split = found.pointer(SPLIT).and_then(Value::as_object).expect("a split");
    let part = |name: &str| split[&format!("{name}_rad")].as_f64().expect("an angle");
    assert!(part("wall") < 0.0 && part("seat") < part("wall"));
    let sum = ["bending", "shear", "seat", "bearing", "disc"].map(part).iter().sum::<f64>();
    let camber = number(&found, CAMBER);
    assert!((sum - camber).abs() < 1e-9 * camber.abs());
}

#[test]
fn a_rigid_and_a_spreading_bracket_bound_the_camber_change() {
    let (rigid, spread) = (flex(&[SHELL]), flex(&["seat[0].wall_flexibility=shell-spread"]));
    assert!(number(&spread, CAMBER) < number(&rigid, CAMBER));
    assert!(number(&spread, "/seat_walls/left/composite_fraction") < 0.02);
}

#[test]
fn a_clamp_round_the_tube_stiffens_its_length() {
    let clamped =
        flex(&[SHELL, "seat[0].fixing=clamped", "seat[0].width=180 mm", "seat[0].bracket_breadth=140 mm"]);
    assert!(number(&clamped, "/seat_walls/left/composite_fraction") > 0.9);
    let assumed = clamped["assumed"].as_array().expect("a list");
    for key in ["seat[0].u_bolt_diameter", "seat[0].u_bolts"] {
        assert!(assumed.iter().any(|entry| entry["path"] == key), "{key}");
    }
}

#[test]
fn formulas_out_of_their_range_say_so_loudly() {
    let found = flex(&["seat[0].wall_flexibility=formula"]);
    assert!(number(&found, TURN) > 0.0);
    let warnings = found["warnings"].as_array().expect("a list");
    assert!(
        warnings
            .iter()
            .any(|warning| warning["text"].as_str().is_some_and(|text| text.contains("extrapolated")))
    );
}

#[test]
fn a_bracket_that_does_not_fit_is_refused_at_its_place() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["flex", &model, "--set", SHELL]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("composite_fraction") && run.err.contains("left out or 0"), "{}", run.err);
    let free = "seat[0].composite_fraction=0";
    let run =
        axlebow(&["flex", &model, "--set", SHELL, "--set", free, "--set", "seat[0].bracket_breadth=200 mm"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("the saddle and the clamp block overlap on the wall by"), "{}", run.err);
    let run = axlebow(&["flex", &model, "--set", "seat[0].wall_flexibility=shel"]);
    assert!(run.err.contains("`shell`"), "{}", run.err);
}

#[test]
fn a_study_of_tubes_and_seats_reads_its_own_numbers() {
    let study = root().join("studies/thin-or-thick.toml").display().to_string();
    let run = axlebow(&["study", &study]);
    assert_eq!(run.code, 0, "{}", run.err);
    let said = run.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in ["leans most, ", "Local wall deflection under a seat is at most ", "standing, with peaks "] {
        assert!(said.contains(words), "`{words}` missing in\n{}", run.out);
    }
}

#[test]
fn a_clamp_is_held_against_the_crush_of_its_tube_with_its_cautions() {
    let strength = |model: &str, changes: &[&str]| {
        let model = demo(model);
        let mut arguments = vec!["strength", model.as_str(), "--case", "rated-load", "--json"];
        changes.iter().for_each(|change| arguments.extend(["--set", change]));
        let run = axlebow(&arguments);
        let document: Value = serde_json::from_str(&run.out).expect("JSON");
        (run.code, document)
    };
    let (code, thick) = strength("trailer-127-thick-dual-shell", &[]);
    assert_eq!(code, 0);
    assert_eq!(clamp(&thick)["verdict"], "passes");
    assert!(thick["cautions"].to_string().contains("U-bolts"));
    // The same clamp crushes the thin wall.
    let bolts = ["seat[0].fixing=clamped", "seat[0].width=180 mm", "seat[0].u_bolt_torque=400 N m"];
    let (code, thin) = strength("trailer-152-thin-dual-shell", &bolts);
    assert_eq!(code, 1);
    assert_eq!(clamp(&thin)["verdict"], "fails");
    assert!(number(clamp(&thin), "/limit") < number(clamp(&thick), "/limit"));
}

/// One rule: what fails in the table is what the last words and the exit code speak of.
#[test]
fn a_hot_spot_past_its_limit_fails_in_table_summary_and_exit_code() {
    let run = axlebow(&["strength", &demo("trailer-152-thin-dual-shell"), "--case", "rated-load"]);
    assert_eq!(run.code, 1, "{}", run.err);
    let text = run.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "hot spot at the bracket's toe FAILS",
        "Fails: 2 checks of",
        // Both seats are alike.
        "Most of its limit, 105 %, is used by the hot spot at the bracket's toe at",
        "-seat in the case rated-load",
        "makes the exit code 1",
    ] {
        assert!(text.contains(words), "`{words}` missing in\n{}", run.out);
    }
    assert!(!text.contains("watch "), "{}", run.out);
}

fn clamp(document: &Value) -> &Value {
    let walls = document["walls"].as_array().expect("a list");
    walls.iter().find(|check| check["what"] == "clamp force of the U-bolts").expect("a clamp")
}

#[test]
fn a_sweep_reads_seats_off_a_table_that_is_kept() {
    let folder = TempDir::new().expect("a folder");
    let study = |walls: &str| {
        let model = demo("trailer-152-thin-dual-shell");
        let text = format!(
            "name = \"seats\"\nkind = \"sweep\"\nmodel = \"{model}\"\ncase = \"rated-load\"\n\
             seat_walls = \"{walls}\"\n[[vary]]\npath = \"tube.wall\"\nfrom = \"8 mm\"\nto = \"12 mm\"\npoints = 3\n"
        );
        let path = folder.path().join(format!("{walls}.toml")).display().to_string();
        std::fs::write(&path, text).expect("the study is written");
        let run = axlebow_keeping(&folder.path().join("kept"), &["study", &path, "--json"]);
        assert_eq!(run.code, 0, "{}", run.err);
        run.out
    };
    let (first, solved) = (study("table"), study("solved"));
    let kept = std::fs::read_dir(folder.path().join("kept")).expect("a folder").count();
    assert_eq!(kept, 1);
    assert_eq!(study("table"), first);
    let document = |text: &str| serde_json::from_str::<Value>(text).expect("JSON");
    let (first, solved) = (document(&first), document(&solved));
    let largest = number(&first, "/seat_table_errors/0/0");
    assert!(largest > 0.0 && largest < 0.05, "{largest}");
    for row in 0..3 {
        let pointer = format!("/rows/{row}/results/case/camber_change_rad");
        let (table, solved) = (number(&first, &pointer), number(&solved, &pointer));
        assert!((table - solved).abs() < 1e-3 * solved.abs(), "{table} {solved}");
    }
}

#[test]
fn axle_and_walls_are_written_as_a_grid() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-dual-shell");
    let run = axlebow_in(folder.path(), &["flex", &model, "--case", "rated-load", "--vtu", "axle.vtu"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let text = std::fs::read_to_string(folder.path().join("axle.vtu")).expect("a file");
    assert!(text.starts_with("<?xml") && text.ends_with("</VTKFile>\n"));
    assert!(text.lines().filter(|line| *line == "9").count() > 3000, "quadrilaterals of two seats");
    assert!(!text.contains("NaN"));
    let run = axlebow_in(folder.path(), &["flex", &model, "--vtu", "axle.png"]);
    assert_eq!(run.code, 2);
}
