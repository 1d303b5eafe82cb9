//! What a file says about steel and welds, and what `strength` makes of it.

use serde_json::Value;

use crate::program::{Run, axlebow, demo, on_text};

const ANGLE: &str = "trailer-152-thin-dual-angle";

/// `strength` of the demo axle with an angle on top, in the rated case, with further arguments.
fn strength(arguments: &[&str]) -> Run {
    axlebow(&[&["strength", &demo(ANGLE), "--case", "rated-load"], arguments].concat())
}

/// The demo axle with an angle on top, more lines in its material.
fn of_steel(command: &str, lines: &str) -> Run {
    let text = std::fs::read_to_string(demo(ANGLE)).expect("the demo model");
    let yielding = "yield_strength = \"520 MPa\"\n";
    on_text(command, text.replacen(yielding, &format!("{yielding}{lines}\n"), 1).as_bytes())
}

fn document(run: &Run) -> Value {
    assert!(run.code < 2, "{}", run.err);
    serde_json::from_str(&run.out).expect("JSON")
}

/// Limits of a check in the first case, from left to right.
fn limits(document: &Value, what: &str) -> Vec<f64> {
    let checks = document["cases"][0]["checks"].as_array().expect("checks");
    checks.iter().filter(|check| check["what"] == what).filter_map(|check| check["limit"].as_f64()).collect()
}

fn refused(run: &Run, words: &[&str]) {
    assert_eq!(run.code, 2, "{}", run.out);
    for word in words {
        assert!(run.err.contains(word), "`{word}` missing in\n{}", run.err);
    }
}

#[test]
fn without_a_composition_the_preheat_is_not_known_and_it_is_said_whom_to_ask() {
    for run in [strength(&[]), axlebow(&["flex", &demo(ANGLE)])] {
        assert!(run.out.contains("carbon equivalent not known: ask the axle maker"), "{}", run.out);
    }
    let bare = axlebow(&["flex", &demo("trailer-152-thin-dual")]);
    assert!(!bare.out.contains("Preheat"), "{}", bare.out);
    let preheat = &document(&strength(&["--json"]))["preheat"][0];
    assert_eq!((&preheat["parts"], &preheat["need"]), (&"tube, top angle".into(), &"unknown".into()));
    assert!(preheat["carbon_equivalent_percent"].is_null());
}

/// 0.20 + 1.50/6 + 0.5/5 = 0.55 per cent.
#[test]
fn a_composition_gives_the_carbon_equivalent_and_the_prompt() {
    let composition =
        "[material.composition]\ncarbon = \"0.20 %\"\nmanganese = \"1.50 %\"\nchromium = \"0.5 %\"";
    for command in ["strength", "flex"] {
        let run = of_steel(command, composition);
        assert!(run.out.contains("carbon equivalent 0.55 %: preheat by a qualified weld"), "{}", run.out);
    }
    for (given, words) in [("0.39 %", "no preheat is normally needed"), ("0.61 %", "do not weld without")] {
        let run = of_steel("strength", &format!("carbon_equivalent = \"{given}\""));
        assert!(run.out.contains(words), "{}", run.out);
    }
}

#[test]
fn compositions_that_make_no_sense_are_refused() {
    let with = |lines: &str| of_steel("strength", lines);
    refused(&with("carbon_equivalent = 0.45"), &["carbon_equivalent", "per cent in quotes", "0.20 %"]);
    refused(&with("carbon_equivalent = \"0.45\""), &["is without its %"]);
    refused(&with("carbon_equivalent = \"45 %\""), &["is 45 %", "from 0 % to 2 %"]);
    refused(&with("[material.composition]\ncarbon = \"0.2 %\""), &["manganese", "missing"]);
    let both =
        "carbon_equivalent = \"0.4 %\"\n[material.composition]\ncarbon = \"0.2 %\"\nmanganese = \"1 %\"";
    refused(&with(both), &["both `carbon_equivalent` and `composition` are given"]);
    let weak = with("ultimate_strength = \"400 MPa\"");
    refused(&weak, &["400 MPa, is 120 MPa below the yield strength, 520 MPa"]);
    assert_eq!(weak.err.matches("error:").count(), 1, "{}", weak.err);
    let soft = strength(&["--set", "strength.electrode_strength=70 MPa"]);
    refused(&soft, &["is 70 MPa", "from 300 MPa to 1200 MPa"]);
}

#[test]
fn a_stiffener_of_its_own_steel_has_its_own_prompt() {
    let text = std::fs::read_to_string(demo(ANGLE)).expect("the demo model");
    let own = "[stiffener.material]\nname = \"mild\"\nyield_strength = \"250 MPa\"\ncarbon_equivalent = \"0.3 %\"\n\n[loads]";
    let run = on_text("strength", text.replacen("[loads]", own, 1).as_bytes());
    assert!(run.out.contains("tube: carbon equivalent not known"), "{}", run.out);
    assert!(run.out.contains("top angle: carbon equivalent 0.30 %: no preheat"), "{}", run.out);
}

/// 0.75 · 0.60 FEXX over the safety factor of 1.5, whichever way the load points: each foot has a fillet on one side only.
#[test]
fn the_electrode_of_the_file_sets_the_limit_of_the_throat() {
    let limit = |arguments: &[&str]| limits(&document(&strength(arguments)), "weld throat stress")[0];
    let usual = limit(&["--json"]);
    assert!((usual / (0.30 * 482.633e6) - 1.0).abs() < 1e-6, "{usual}");
    let strong = limit(&["--json", "--set", "strength.electrode_strength=80 ksi"]);
    assert!((strong / usual - 80.0 / 70.0).abs() < 1e-6, "{strong}");
    let assumed = document(&strength(&["--json"]))["assumed"].to_string();
    for key in ["strength.electrode_strength", "70 ksi", "strength.rules"] {
        assert!(assumed.contains(key), "{key}: {assumed}");
    }
}

#[test]
fn rules_of_the_file_hold_unless_the_command_says_otherwise() {
    let en = ["--json", "--set", "strength.rules=en"];
    assert_eq!(document(&strength(&en))["rules"], "en");
    assert_eq!(document(&strength(&[&en[..], &["--rules", "aisc"]].concat()))["rules"], "aisc");
    refused(&strength(&["--set", "strength.rules=iso"]), &["aisc", "en"]);
    let factor = ["--json", "--set", "strength.safety_factor=2"];
    assert_eq!(document(&strength(&factor))["safety_factor"], 2.0);
}

/// By EN the throat of a fillet on one side carries f_u/(√3 β_w γ_M2) = f_u/(√3 · 1.25) for a steel of 520 MPa, over the
/// safety factor.
#[test]
fn the_ultimate_strength_of_the_file_sets_the_limits_of_en() {
    let limit = |arguments: &[&str]| limits(&document(&strength(arguments)), "weld throat stress")[0];
    let expected = |ultimate: f64| ultimate / (3_f64.sqrt() * 1.25 * 1.5);
    assert!((limit(&["--json", "--rules", "en"]) / expected(520e6) - 1.0).abs() < 1e-9);
    let known = ["--json", "--rules", "en", "--set", "material.ultimate_strength=620 MPa"];
    assert!((limit(&known) / expected(620e6) - 1.0).abs() < 1e-9);
}

#[test]
fn strong_steel_under_a_stiffener_is_allowed_less_from_end_to_end() {
    let run = document(&strength(&["--json"]));
    let checks = run["cases"][0]["checks"].as_array().expect("checks");
    let at = |place: &str| {
        checks.iter().find(|check| check["place"] == place).expect("a check at the place").clone()
    };
    for place in ["top angle-left-end", "center", "top angle-right-end"] {
        assert_eq!(at(place)["what"], "fiber stress in HAZ", "{place}");
        assert!((at(place)["limit"].as_f64().expect("a limit") / (0.8 * 520e6 / 1.5) - 1.0).abs() < 1e-9);
    }
    assert_eq!(at("left-tube-end")["what"], "fiber stress");
    let stated = document(&strength(&["--json", "--set", "strength.haz_strength_factor=0.7"]));
    assert!((limits(&stated, "fiber stress in HAZ")[0] / (0.7 * 520e6 / 1.5) - 1.0).abs() < 1e-9);
    refused(&strength(&["--set", "strength.haz_strength_factor=1.2"]), &["from 0.1 to 1"]);
    let mild = document(&strength(&["--json", "--set", "material.yield_strength=355 MPa"]));
    assert!(limits(&mild, "fiber stress in HAZ").is_empty());
}

/// The angle's leg of 8 mm is thinner than the wall of 9 mm: 24 · 8 mm of spacing, and its own shear.
#[test]
fn stitches_on_an_angle_thinner_than_the_wall_are_held_to_the_angle() {
    let model = demo("trailer-152-thin-dual-angle-stitched");
    let set = ["--set", "stiffener[0].stitch_pitch=200 mm", "--case", "rated-load", "--json"];
    let document = document(&axlebow(&[&["strength", &model], &set[..]].concat()));
    let spacing = limits(&document, "stitch spacing");
    assert!((spacing[0] - 0.192).abs() < 1e-9, "{spacing:?}");
    assert_eq!(limits(&document, "stiffener shear, yielding"), limits(&document, "wall shear, yielding"));
}

/// Torque of the demo on its U-bolts, two legs a bolt.
#[test]
fn the_safety_factor_reaches_clamp_crush_and_the_file_s_haz_strength_factor_the_seat() {
    let walls = |arguments: &[&str]| {
        let model = demo("trailer-127-thick-dual-shell");
        let run = axlebow(&[&["strength", &model, "--case", "rated-load", "--json"], arguments].concat());
        document(&run)
    };
    let limit = |document: &Value, list: &Value, what: &str| {
        let checks = list.as_array().expect("checks");
        let found = checks.iter().find(|check| check["what"] == what);
        found.unwrap_or_else(|| panic!("{what} in {document}"))["limit"].as_f64().expect("a limit")
    };
    let (once, twice) = (walls(&[]), walls(&["--safety-factor", "3"]));
    let crush = |document: &Value| limit(document, &document["walls"], "clamp force of the U-bolts");
    assert!((crush(&once) / crush(&twice) - 2.0).abs() < 1e-9);
    let toe = |factor: &str| {
        let set = format!("strength.haz_strength_factor={factor}");
        let document = walls(&["--set", "seat[0].fixing=welded", "--set", &set]);
        limit(&document, &document["cases"][0]["checks"], "hot spot at the bracket's toe")
    };
    assert!((toe("0.5") / (0.5 * 520e6 / 1.5) - 1.0).abs() < 1e-9);
}

/// The default is a weld between rigid walls, whose forces are the largest.
#[test]
fn the_verdict_on_a_weld_is_shown_over_the_band_of_its_stiffness() {
    let run = document(&strength(&["--json"]));
    let band = &run["weld_bands"][0];
    let at = |end: &str, key: &str| band[end][key].as_f64().expect("a number");
    assert!(at("soft", "stiffness_n_per_m2") < 0.7 * at("stiff", "stiffness_n_per_m2"), "{band}");
    assert!(at("soft", "utilization") < at("modeled", "utilization"), "{band}");
    assert_eq!(band["modeled"], band["stiff"]);
    let text = strength(&[]).out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("as wide plates") && text.contains("the soft end for the camber"), "{text}");
}

#[test]
fn every_table_of_strength_fits_its_page() {
    for rules in ["aisc", "en"] {
        for units in ["si", "us"] {
            let run = strength(&["--all", "--rules", rules, "--units", units]);
            assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
        }
    }
}
