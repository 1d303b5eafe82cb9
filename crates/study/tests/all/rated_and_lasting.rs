//! Rating and life as results of studies are those of the commands.

use std::path::Path;

use axlebow_axle::{CheckedPart, LifeOptions, life};
use axlebow_model::{DUTY, DutyFile, MODEL, Model, Problems, read_bytes};
use axlebow_study::{Lasting, RatingOptions, Study, StudyOutcome, rating};

/// A short road and a bump that cracks welds soon.
const DUTY_FILE: &str = r#"name = "short and rough"
distance_per_year = "60000 km"
sample = "100 m"
[[road]]
class = "D"
share = 1.0
speed = "60 km/h"
[[bump]]
height = "60 mm"
length = "0.6 m"
per_km = 0.5
speed = "40 km/h"
"#;

const SWEEP: &str = r#"name = "two walls"
kind = "sweep"
model = "MODELS/trailer-152-thin-dual.toml"
duty = "duty.toml"
case = "rated-load"
strength_cases = ["rated-load", "braking"]
show = ["rating", "years-to-crack", "yearly-damage", "bearing-years"]
[[vary]]
path = "tube.wall"
values = ["8 mm", "10 mm"]
[[limit]]
of = "yearly-damage"
most = "0.02"
"#;

fn models() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models")
}

fn read(text: &str) -> Result<Study, Problems> {
    read_under(DUTY_FILE, text)
}

fn read_under(duty: &str, text: &str) -> Result<Study, Problems> {
    let folder = tempfile::TempDir::new().unwrap();
    std::fs::write(folder.path().join("duty.toml"), duty).unwrap();
    let text = text.replace("MODELS", models().to_str().unwrap());
    Study::from_bytes(text.as_bytes(), "study.toml", folder.path())
}

fn value(outcome: &StudyOutcome, name: &str, row: usize) -> Option<f64> {
    outcome.rows[row].value(outcome.standing(name).unwrap())
}

#[test]
fn a_design_has_the_rating_and_the_life_of_its_axle() {
    let outcome = read(SWEEP).unwrap_or_else(|problems| panic!("{problems}")).run(&|_, _| ());
    let bytes = std::fs::read(models().join("trailer-152-thin-dual.toml")).unwrap();
    for (row, wall) in [(0, "8 mm"), (1, "10 mm")] {
        let mut document = read_bytes(&bytes, "model", &MODEL).unwrap();
        document.set("tube.wall", wall).unwrap();
        let cases = ["rated-load", "braking"].map(str::to_owned).to_vec();
        let rated = rating(&document, &RatingOptions { offsets: Vec::new(), cases, lasting: None }).unwrap();
        assert_eq!(value(&outcome, "rating", row), rated.own().unwrap().load, "{wall}");
        let axle = Model::of(&document).unwrap();
        let duty = DutyFile::of(&read_bytes(DUTY_FILE.as_bytes(), "duty", &DUTY).unwrap()).unwrap();
        let ask = LifeOptions::from(&axle.strength);
        let lasts = life(&axle.axle, &duty.duty(&axle.axle).unwrap(), ask).unwrap();
        let first = lasts.first_to_crack().unwrap();
        assert_eq!(value(&outcome, "years-to-crack", row), Some(first.years[1]), "{wall}");
        assert_eq!(value(&outcome, "yearly-damage", row), Some(1.0 / first.years[1]), "{wall}");
        assert_eq!(value(&outcome, "bearing-years", row), Some(lasts.bearings[0].years), "{wall}");
        assert_eq!(outcome.meets(&outcome.rows[row]), 1.0 / first.years[1] <= 0.02, "{wall}");
    }
    assert!(value(&outcome, "years-to-crack", 0) < value(&outcome, "years-to-crack", 1));
}

/// The years that the axle lasts under another load are asked of the rating: it finds a load under which it lasts as long. There may be
/// several, because bounce over bumps does not simply follow the load.
#[test]
fn under_the_load_of_fatigue_the_first_detail_lasts_as_long_as_asked() {
    let bytes = std::fs::read(models().join("trailer-152-thin-dual.toml")).unwrap();
    let document = read_bytes(&bytes, "model", &MODEL).unwrap();
    let duty = DutyFile::of(&read_bytes(DUTY_FILE.as_bytes(), "duty", &DUTY).unwrap()).unwrap();
    let years = |load: f64| {
        let mut document = document.clone();
        document.set_number("loads.rated_load", load).unwrap();
        let axle = Model::of(&document).unwrap();
        let options = LifeOptions::from(&axle.strength);
        let lasts = life(&axle.axle, &duty.duty(&axle.axle).unwrap(), options).unwrap();
        lasts.details.iter().map(|detail| detail.years[0]).fold(f64::INFINITY, f64::min)
    };
    let wanted = years(120e3);
    let lasting = Some(Lasting { duty: duty.clone(), years: wanted });
    let ask = RatingOptions { offsets: Vec::new(), cases: vec!["rated-load".to_owned()], lasting };
    let rated = rating(&document, &ask).unwrap();
    let own = rated.own().unwrap();
    let load = own.load_of(CheckedPart::Fatigue).unwrap();
    // The load is found within 0.1 %, which moves years by less than ten times that.
    assert!((years(load) / wanted - 1.0).abs() < 1e-2 && own.load.unwrap() <= load, "{load} N");
    assert_eq!(rated.lasting.unwrap().0, "short and rough");
}

#[test]
fn an_axle_past_its_limit_at_any_load_is_rated_at_nothing() {
    let soft = "change = { \"material.yield_strength\" = \"2 MPa\" }\n";
    let text = SWEEP.replace("[[vary]]", &format!("[[variant]]\nname = \"soft\"\n{soft}[[vary]]"));
    let outcome = read(&text).unwrap_or_else(|problems| panic!("{problems}")).run(&|_, _| ());
    assert_eq!(value(&outcome, "rating", 0), Some(0.0));
}

#[test]
fn a_result_of_a_duty_wants_a_duty() {
    let without = SWEEP.replace("duty = \"duty.toml\"\n", "");
    let problems = read(&without).unwrap_err();
    let first = problems.iter().next().unwrap();
    assert!(first.message.contains("is a result of a duty, and the study has none"), "{problems}");
    assert_eq!(first.accepted.as_deref(), Some("a `duty` file"));
    let other = read(&SWEEP.replace("duty.toml", "duties.toml")).unwrap_err();
    assert!(other.to_string().contains("duties.toml"), "{other}");
}

#[test]
fn what_the_duty_says_is_part_of_the_hash() {
    let hash = |duty: &str| read_under(duty, SWEEP).unwrap().hash();
    assert_eq!(hash(DUTY_FILE), hash(&format!("# as before\n{DUTY_FILE}")));
    assert_ne!(hash(DUTY_FILE), hash(&DUTY_FILE.replace("60000 km", "70000 km")));
}
