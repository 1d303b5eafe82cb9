//! Sensitivities on the command line.

use serde_json::Value;

use crate::program::{axlebow, axlebow_in, demo};

#[test]
fn the_most_telling_key_comes_first_in_both_unit_systems() {
    for (units, step) in [("si", "1 mm"), ("us", "1/16 in")] {
        let run = axlebow(&["flex", &demo("trailer-152-thin-dual"), "--sensitivities", "--units", units]);
        assert_eq!((run.code, run.err.as_str()), (0, ""));
        assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
        let first = run.out.lines().skip_while(|line| !line.starts_with("---")).nth(1).expect("a row");
        assert!(first.starts_with("tube.wall") && first.contains(step), "{first}");
    }
}

#[test]
fn the_document_has_every_key_and_the_slopes_of_whole_solutions() {
    let model = demo("drive-housing-9.5-dual");
    let json = |arguments: &[&str]| -> Value {
        let run = axlebow(arguments);
        assert_eq!(run.code, 0, "{}", run.err);
        serde_json::from_str(&run.out).expect("JSON")
    };
    let document = json(&["flex", &model, "--sensitivities", "--case", "side-load", "--json"]);
    assert_eq!(document["schema"], "axlebow/sensitivities/2");
    let case = &document["cases"][0];
    let key = |path: &str| {
        let keys = case["keys"].as_array().expect("keys");
        keys.iter().find(|key| key["path"] == path).unwrap_or_else(|| panic!("{path}"))
    };
    let camber = |wall: &str| {
        let set = format!("housing.wall={wall}");
        let run = json(&["flex", &model, "--case", "side-load", "--set", &set, "--json"]);
        run["cases"][0]["wheels"]["left"]["camber_change_rad"].as_f64().expect("a number")
    };
    let whole = (camber("9.51 mm") - camber("9.49 mm")) / 2e-5;
    let wall = key("housing.wall");
    let slope = wall["slope"]["left_camber_change_rad"].as_f64().expect("a number");
    assert!((slope / whole - 1.0).abs() < 1e-4, "{slope} {whole}");
    assert_eq!(
        (&wall["unit"], &wall["by"], &wall["assumed"]),
        (&"m".into(), &"adjoint".into(), &false.into())
    );
    assert!(wall["camber_per_mass_rad_per_kg"].is_number());
    assert!(
        case["without_effect"].as_array().expect("paths").iter().any(|path| path == "strength.safety_factor")
    );
}

#[test]
fn sensitivities_are_drawn_and_do_not_mix_with_other_tables() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let model = demo("trailer-127-thick-wide-base-outset");
    let run = axlebow_in(folder.path(), &["flex", &model, "--sensitivities", "--plot", "s.svg"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let picture = std::fs::read_to_string(folder.path().join("s.svg")).expect("a picture");
    assert!(picture.contains("tube.wall") && picture.contains("Demonstration data, invented."));
    assert_eq!(axlebow(&["flex", &model, "--sensitivities", "--detail"]).code, 2);
    let unknown = axlebow(&["flex", &model, "--sensitivities", "--case", "rated-laod"]);
    assert!(unknown.code == 2 && unknown.err.contains("the model has no such load case"), "{}", unknown.err);
}
