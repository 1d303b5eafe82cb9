//! `axlebow tire`, and cups held against axle, road and wheel.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, changed, demo, on_text, root};

fn json(arguments: &[&str]) -> Value {
    let run = axlebow(arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("one JSON document")
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn path(place: &str) -> String {
    root().join("models").join(place).display().to_string()
}

#[test]
fn tire_prints_every_case_and_the_ribs_of_the_first() {
    let run = axlebow(&["tire", &demo("trailer-152-thin-dual")]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    assert!(run.out.contains("curb") && run.out.contains("Ribs, rated-load"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(
        run.out.contains("no promise of mileage") && run.out.contains("Demonstration data"),
        "{}",
        run.out
    );
}

#[test]
fn rib_loads_of_the_document_sum_to_the_wheel_load() {
    let document = json(&["tire", &demo("drive-housing-9.5-dual"), "--json"]);
    assert_eq!(document["schema"], "axlebow/tire/1");
    for case in document["cases"].as_array().expect("cases") {
        for side in ["left", "right"] {
            let face = &case["wheels"][side];
            let tires = face["tires"].as_array().expect("tires");
            let ribs = tires.iter().flat_map(|tire| tire["ribs"].as_array().expect("ribs"));
            let sum: f64 = ribs.map(|rib| number(&rib["load_n"])).sum();
            assert!((sum - number(&face["load_n"])).abs() < 1e-6 * sum, "{} {side}", case["name"]);
        }
    }
    let assumed = document["assumed"].as_array().expect("assumed");
    assert!(assumed.iter().any(|used| used["path"] == "wheel[0].tread.width"));
}

#[test]
fn a_tire_file_changes_the_tread() {
    let tire = path("tires/fuel-saving.toml");
    let model = demo("trailer-152-thin-wide-base-zeroset");
    let scuff = |arguments: &[&str]| {
        let face = &json(arguments)["cases"][0]["wheels"]["left"]["tires"][0];
        number(&face["ribs"][0]["scuff_j_per_m"])
    };
    let own = scuff(&["tire", &model, "--json"]);
    assert!(scuff(&["tire", &model, "--tire", &tire, "--json"]) > 1.3 * own);
    assert!(scuff(&["tire", &model, "--set", "wheel[0].tread.depth=11 mm", "--json"]) > 1.2 * own);
    let run = axlebow(&["tire", &model, "--tire", &tire, "--case", "rated-load"]);
    assert!(run.out.contains("on stiff-treaded, fuel-saving tires"), "{}", run.out);
}

#[test]
fn over_a_washboard_the_document_has_a_map_round_each_tire() {
    let model = demo("trailer-152-thin-dual");
    let document = json(&["tire", &model, "--over", &path("roads/washboard.toml"), "--json"]);
    let face = &document["ride"]["wheels"]["left"];
    assert_eq!(face["round"].as_array().expect("maps").len(), 2);
    assert_eq!(face["round"][0][0].as_array().expect("parts").len(), 72);
    let cups = &face["wave"]["cups"];
    let (count, spacing) = (number(&cups["count"]), number(&cups["spacing_m"]));
    assert!((number(&cups["frequency_hz"]) * spacing - number(&cups["speed_m_s"])).abs() < 1e-9);
    assert!(count >= 1.0 && !cups["explanations"].as_array().expect("explanations").is_empty());
}

#[test]
fn tire_pictures_are_written() {
    let folder = TempDir::new().expect("a folder");
    let arguments = ["tire", &demo("trailer-152-thin-dual"), "--over", "pothole", "--plot", "tire.svg"];
    let run = axlebow_in(folder.path(), &arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    let text = std::fs::read_to_string(folder.path().join("tire.svg")).expect("the picture");
    assert!(text.contains("Wear round the tires") && text.contains("inner tire"));
}

#[test]
fn cups_are_ranked_by_axle_road_and_wheel() {
    let model = demo("trailer-127-thick-dual");
    let washboard = path("roads/washboard.toml");
    let run = axlebow(&["cups", &model, "--count", "2", "--speed", "80 km/h", "--over", &washboard]);
    assert_eq!(run.code, 0, "{}", run.err);
    for name in ["washboard", "wheel hop", "wheel turn, order 2", "score"] {
        assert!(run.out.contains(name), "{name}\n{}", run.out);
    }
    let document =
        json(&["cups", &model, "--count", "2", "--speed", "80 km/h", "--over", &washboard, "--json"]);
    assert_eq!(document["schema"], "axlebow/cups/2");
    let scores: Vec<f64> = document["explanations"]
        .as_array()
        .expect("a list")
        .iter()
        .map(|one| number(&one["score"]))
        .collect();
    assert!(scores.len() >= 3 && scores.windows(2).all(|pair| pair[0] >= pair[1]), "{scores:?}");
}

#[test]
fn treads_that_cannot_be_are_refused_with_their_place() {
    for (line, said) in [
        ("[wheel.tread]\ndepth = \"-3 mm\"\n", "depth"),
        ("[wheel.tread]\nwidth = \"400 mm\"\n", "tread width is 0.4 m"),
        ("[wheel.tread]\nribs = 1\n", "2 to 1000"),
        ("[wheel.tread]\ninflation = 7.6\n", "unit"),
        ("[wheel.tread]\nshear_modulous = \"1 MPa\"\n", "shear_modulus"),
    ] {
        let run = on_text("tire", &changed("[[seat]]", &format!("{line}\n[[seat]]")));
        assert_eq!(run.code, 2, "{line}");
        assert!(run.err.contains(said), "{line}\n{}", run.err);
    }
}

#[test]
fn a_file_of_another_kind_is_named() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["tire", &model, "--tire", &model]);
    assert!(run.code == 2 && run.err.contains("looks like a model file"), "{}", run.err);
    let run = axlebow(&["flex", &path("tires/deep-treaded.toml")]);
    assert!(run.code == 2 && run.err.contains("looks like a tire file"), "{}", run.err);
    let run = axlebow(&["tire", &model, "--tire", "no-such-tire.toml"]);
    assert!(run.code == 2 && run.err.contains("no-such-tire.toml"), "{}", run.err);
}
