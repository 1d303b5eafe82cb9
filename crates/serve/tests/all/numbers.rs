//! The page's numbers are those of the command line's calls; what it saves says the same.

use std::path::{Path, PathBuf};

use axlebow_axle::{flex, strength, tires};
use axlebow_model::{Document, MODEL, Model, read_bytes};
use axlebow_report::{ModelCard, json as documents};
use serde_json::{Value, json};

use crate::page::Page;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models").join(name)
}

fn document(path: &Path, sets: &[(&str, &str)]) -> Document {
    let bytes = std::fs::read(path).unwrap();
    let mut document = read_bytes(&bytes, &path.display().to_string(), &MODEL).unwrap();
    sets.iter().for_each(|(path, text)| document.set(path, text).unwrap());
    document
}

/// What `axlebow flex --json` and `axlebow tire --json` print for a case.
fn printed(document: &Document, case: &str, sets: &[(&str, &str)]) -> [Value; 2] {
    let model = Model::of(document).unwrap();
    let mut card = ModelCard::of(&model, None);
    card.settings.splice(..0, sets.iter().map(|(path, text)| format!("set {path}={text}")));
    let cases: Vec<_> = model.cases.iter().filter(|own| own.name == case).cloned().collect();
    let flexed = documents::flex_document(&flex(&model.axle, &cases).unwrap(), &card);
    let faces = documents::tire_document(&tires(&model.axle, &cases).unwrap(), None, &card);
    [flexed, faces].map(|text| serde_json::from_str(&text).unwrap())
}

#[test]
fn a_slider_gives_the_numbers_of_the_command_line() {
    let file = demo("trailer-152-thin-wide-base-outset.toml");
    let page = Page::of(Some(file.clone()));
    let begun = page.begin("file");
    let values = json!({ "wall": 11.5, "wheel-offset": -20.0, "endplay": 0.12, "inflation": 700.0, "wheel-reversed": true });
    let asked = json!({ "revision": begun["revision"], "values": values, "case": "side-load" });
    let answer = page.post("figures", &asked);
    assert_eq!(answer.status, 200, "{answer:?}");
    let sets = [
        ("tube.wall", "11.5 mm"),
        ("wheel[0].position", "inset"),
        ("wheel[0].offset", "20 mm"),
        ("wheel[0].reversed", "true"),
        ("wheel_end[0].endplay", "0.12 mm"),
        ("wheel[0].inflation", "700 kPa"),
    ];
    let own = document(&file, &sets);
    let [flexed, faces] = printed(&own, "side-load", &sets);
    let answer = answer.json();
    assert_eq!(answer["flex"], flexed);
    assert_eq!(answer["tire"], faces);
    assert_eq!(answer["set"][0], "tube.wall=11.5 mm");
    let model = Model::of(&own).unwrap();
    let checked = strength(&model.axle, &model.cases, model.strength).unwrap();
    let shown = page.post("checks", &asked).json();
    assert_eq!(shown["worst"]["utilization"].as_f64(), checked.greatest_use());
    assert_eq!(shown["holds"], checked.holds());
}

#[test]
fn every_slider_stands_on_the_value_of_its_file_and_moves_it() {
    for from in axlebow_model::TYPICAL.map(|own| own.name) {
        let page = Page::of(None);
        let begun = page.begin(from);
        let case = "side-load";
        let ask = |values: Value| {
            let asked = json!({ "revision": begun["revision"], "values": values, "case": case });
            let answer = page.post("figures", &asked);
            assert_eq!(answer.status, 200, "{from} {values}: {answer:?}");
            let answer = answer.json();
            [
                answer["flex"]["cases"].clone(),
                answer["tire"]["cases"].clone(),
                answer["flex"]["axle_mass_kg"].clone(),
            ]
        };
        let first = ask(json!({}));
        for control in begun["controls"].as_array().unwrap() {
            let (key, form) = (control["key"].as_str().unwrap(), &control["form"]);
            if form["kind"] != "slider" || key == "stiffener-length" {
                continue;
            }
            let (step, value) = (form["step"].as_f64().unwrap(), form["value"].as_f64().unwrap());
            let up = value + 2.0 * step;
            assert!(
                up <= form["max"].as_f64().unwrap() && form["min"].as_f64().unwrap() <= value,
                "{control}"
            );
            assert_ne!(ask(json!({ key: up })), first, "{from}: {key} does nothing");
        }
    }
}

#[test]
fn values_that_make_no_axle_are_told_with_what_is_accepted() {
    let page = Page::of(None);
    let begun = page.begin("trailer-5-inch-duals");
    let ask = |values: Value| {
        page.post(
            "figures",
            &json!({ "revision": begun["revision"], "values": values, "case": "rated-load" }),
        )
    };
    let thick = ask(json!({ "wall": 80.0 }));
    assert_eq!(thick.status, 422, "{thick:?}");
    assert!(thick.json()["problems"][0]["line"].as_u64().is_some_and(|line| line > 5), "{thick:?}");
    assert_eq!(ask(json!({ "wall": "thick" })).status, 400);
    assert_eq!(ask(json!({ "no-such-control": 1.0 })).status, 400);
}

#[test]
fn a_file_with_problems_is_told_line_by_line_and_a_changed_one_is_seen() {
    let folder = tempfile::TempDir::new().unwrap();
    let path = folder.path().join("<script>alert(1)<script>.toml");
    let good = std::fs::read_to_string(demo("trailer-152-thin-dual.toml")).unwrap();
    std::fs::write(&path, good.replace("wall = \"9 mm\"", "wal = \"9 mm\"")).unwrap();
    let page = Page::of(Some(path.clone()));
    let told = page.get("controls");
    assert_eq!(told.status, 422);
    let problems = told.json()["problems"].clone();
    assert!(
        problems.as_array().unwrap().iter().any(|own| own["likely"] == "wall" && own["line"].is_u64()),
        "{problems}"
    );
    let before = page.get("disk").json()["revision"].clone();
    std::fs::write(&path, &good).unwrap();
    let after = page.get("disk").json()["revision"].clone();
    assert_ne!(before, after);
    assert_eq!(page.begin("file")["revision"], after);
    std::fs::remove_file(&path).unwrap();
    assert_eq!(page.get("disk").json()["revision"], Value::Null);
}

#[test]
fn what_is_saved_says_the_same_and_replaces_nothing() {
    let folder = tempfile::TempDir::new().unwrap();
    let path = folder.path().join("mine.toml");
    let text = std::fs::read_to_string(demo("trailer-152-thin-dual.toml")).unwrap();
    std::fs::write(&path, &text).unwrap();
    let page = Page::of(Some(path.clone()));
    let begun = page.begin("file");
    let values = json!({ "wall": 11.0, "wheel-offset": 40.0, "stiffener-size": "L75x75x8", "stiffener-length": 700.0 });
    let axle = json!({ "revision": begun["revision"], "values": values, "case": "rated-load" });
    let shown = page.post("figures", &axle).json();
    for number in ["mine-changed.toml", "mine-changed-2.toml"] {
        let answer = page.post("save", &json!({ "axle": axle, "write": true }));
        assert_eq!(answer.status, 200, "{answer:?}");
        assert!(answer.json()["written"].as_str().unwrap().ends_with(number), "{answer:?}");
        let saved = document(&folder.path().join(number), &[]);
        let [flexed, _] = printed(&saved, "rated-load", &[]);
        assert_eq!(shown["flex"]["cases"], flexed["cases"]);
        assert!(flexed["cases"][0]["stiffening"]["stiffeners"][0]["name"].is_string());
    }
    assert_eq!(std::fs::read_to_string(&path).unwrap(), text, "the original stays");
    let handed = page.post("save", &json!({ "axle": axle, "write": false })).json();
    assert_eq!(handed["written"], Value::Null);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 3);
}

#[test]
fn slower_questions_are_answered_too() {
    let page = Page::of(None);
    let begun = page.begin("trailer-5-inch-duals");
    let axle = json!({ "revision": begun["revision"], "values": { "wall": 14.0 }, "case": "rated-load" });
    assert_eq!(page.post("rating", &axle).json()["schema"], "axlebow/rating/1");
    assert_eq!(page.post("money", &axle).json(), Value::Null);
    let bump = json!({ "axle": axle, "height": "40 mm", "speed": "80 km/h", "wheels": "left" });
    let frames = page.post("bump", &bump).json();
    let own = &frames["frames"];
    assert_eq!(own["time"].as_array().unwrap().len(), own["bends"].as_array().unwrap().len());
    assert!(
        own["road"]["left"].as_array().unwrap().iter().any(|height| height.as_i64() > Some(3000)),
        "40 mm in hundredths"
    );
    assert_eq!(
        page.post("bump", &json!({ "axle": axle, "height": "40 kg", "speed": "80 km/h", "wheels": "left" }))
            .status,
        422
    );
    let ask: String = axle.to_string().bytes().map(|byte| format!("%{byte:02x}")).collect();
    let report = page.get(&format!("report?ask={ask}"));
    assert!(
        report.status == 200
            && report.head.contains("style-src 'unsafe-inline'")
            && !report.head.contains("script-src"),
        "{report:?}"
    );
}
