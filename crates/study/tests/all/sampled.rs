//! Samples, choices, links, derived results and limits of studies, and what an uncertainty says.

use std::path::{Path, PathBuf};

use axlebow_model::Problems;
use axlebow_study::{Row, Study, StudyOutcome};

const GOOD: &str = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
[sample]
method = "latin-hypercube"
designs = 20
[[vary]]
path = "tube.wall"
from = "8 mm"
to = "16 mm"
[[vary]]
path = "seat[0].at"
name = "seat"
values = ["450 mm", "480 mm"]
[[link]]
path = "tube.od"
as = "0.1 + 2 * wall"
[[derived]]
name = "camber-per-mass"
as = "camber_change / axle_mass"
unit = "deg/kg"
[[limit]]
of = "camber-change"
within = "0.5 deg"
"#;

const UNCERTAIN: &str = r#"name = "invented"
kind = "uncertainty"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
show = ["camber-change", "axle-mass"]
[sample]
method = "sobol"
designs = 128
[[vary]]
path = "tube.wall"
distribution = "normal"
mean = "12.7 mm"
deviation = "0.3 mm"
from = "11.5 mm"
[[vary]]
path = "loads.rated_load"
distribution = "triangular"
from = "80 kN"
likely = "90 kN"
to = "110 kN"
[[limit]]
of = "camber-change"
within = "0.5 deg"
[uncertainty]
percentiles = [5, 95]
indices = true
"#;

fn studies() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies")
}

fn read(text: &str) -> Result<Study, Problems> {
    Study::from_bytes(text.as_bytes(), "study.toml", &studies())
}

fn good(text: &str) -> Study {
    read(text).unwrap_or_else(|problems| panic!("{problems}"))
}

fn run(text: &str) -> StudyOutcome {
    good(text).run(&|_, _| ())
}

fn value(outcome: &StudyOutcome, row: &Row, name: &str) -> f64 {
    row.value(outcome.standing(name).expect("a result of that name")).expect("a design with a result")
}

/// The one problem of a file with a piece replaced: line, underlined text, message; gives back what is accepted and likely.
#[track_caller]
fn check((file, old, new): (&str, &str, &str), wanted: (usize, &str, &str)) -> (String, String) {
    assert!(file.contains(old), "{old}");
    let text = file.replacen(old, new, 1);
    let problems = read(&text).expect_err("refused");
    let all: Vec<_> = problems.iter().collect();
    assert_eq!(all.len(), 1, "{problems}");
    let found = (all[0].line, &text[all[0].span.clone()], all[0].message.as_str());
    assert_eq!(found, wanted);
    (all[0].accepted.clone().unwrap_or_default(), all[0].likely.clone().unwrap_or_default())
}

#[test]
fn a_sample_has_its_strata_its_links_its_derived_results_and_its_limits() {
    let outcome = run(GOOD);
    assert_eq!(outcome.rows.len(), 20);
    let mut strata: Vec<usize> =
        outcome.rows.iter().map(|row| ((row.values[0] - 0.008) / 0.0004) as usize).collect();
    strata.sort_unstable();
    assert_eq!(strata, (0..20).collect::<Vec<_>>());
    assert_eq!(outcome.rows.iter().filter(|row| row.values[1] == 0.45).count(), 10);
    for row in &outcome.rows {
        let [camber, mass] = ["camber-change", "axle-mass"].map(|name| value(&outcome, row, name));
        assert_eq!(value(&outcome, row, "camber-per-mass"), camber / mass);
        assert_eq!(outcome.meets(row), camber.abs() <= 0.5_f64.to_radians());
    }
    // The diameter follows the wall: a model that says so has the same mass.
    let row = &outcome.rows[3];
    let bytes = std::fs::read(studies().join("../models/trailer-127-thick-dual.toml")).unwrap();
    let mut document = axlebow_model::read_bytes(&bytes, "model.toml", &axlebow_model::MODEL).unwrap();
    document.set_number("tube.wall", row.values[0]).unwrap();
    document.set_number("tube.od", 0.1 + 2.0 * row.values[0]).unwrap();
    document.set_number("seat[0].at", row.values[1]).unwrap();
    let model = axlebow_model::Model::of(&document).unwrap();
    assert_eq!(value(&outcome, row, "axle-mass"), model.axle.mass());
}

#[test]
fn several_keys_take_one_value() {
    let two = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
[[vary]]
paths = ["wheel_end[0].bearing_radial_stiffness", "wheel_end[0].bearing_axial_stiffness"]
name = "bearing"
from = "100 kN/mm"
to = "400 kN/mm"
points = 3
spacing = "log"
"#;
    let outcome = run(two);
    let values: Vec<f64> = outcome.rows.iter().map(|row| row.values[0]).collect();
    assert_eq!((values[0], values[2]), (1e8, 4e8));
    assert!((values[1] / 2e8 - 1.0).abs() < 1e-14);
    let bearing: Vec<f64> = outcome.rows.iter().map(|row| value(&outcome, row, "left-bearing")).collect();
    // Nearly four times: a softer wheel end hands a little of its load from one bearing to the other.
    assert!((3.5..4.0).contains(&(bearing[0] / bearing[2])), "both stiffnesses follow: {bearing:?}");
    check(
        (two, "\"100 kN/mm\"", "\"0 kN/mm\""),
        (8, "\"0 kN/mm\"", "`wheel_end[0].bearing_radial_stiffness` is 0 N/mm"),
    );
    let kinds = "\"wheel_end[0].bearing_radial_stiffness\" measures stiffness, and \"tube.od\" length";
    check((two, "wheel_end[0].bearing_axial_stiffness", "tube.od"), (6, "\"tube.od\"", kinds));
}

#[test]
fn a_list_takes_first_with_first() {
    let text = GOOD
        .replace("method = \"latin-hypercube\"\ndesigns = 20", "method = \"list\"")
        .replace("to = \"16 mm\"", "to = \"16 mm\"\npoints = 2");
    let outcome = run(&text);
    assert_eq!(
        outcome.rows.iter().map(|row| row.values.clone()).collect::<Vec<_>>(),
        [[0.008, 0.45], [0.016, 0.48]]
    );
    let longer = "\"seat[0].at\" has 2 values in a list, and \"tube.wall\" has 3";
    check((&text, "points = 2", "points = 3"), (12, "[[vary]]", longer));
}

#[test]
fn choices_set_several_keys_and_are_told_by_name() {
    let text = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
show = ["axle-mass"]
[[vary]]
name = "tube"
[[vary.choice]]
name = "thick"
change = { "tube.od" = "127 mm", "tube.wall" = "12.7 mm" }
[[vary.choice]]
name = "thin"
change = { "tube.od" = "152.4 mm", "tube.wall" = "8 mm" }
[[vary]]
path = "loads.rated_load"
values = ["80 kN", "100 kN"]
"#;
    let outcome = run(text);
    assert_eq!(outcome.rows.iter().map(|row| row.values[0]).collect::<Vec<_>>(), [0.0, 0.0, 1.0, 1.0]);
    let plain = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
[[variant]]
name = "thin"
change = { "tube.od" = "152.4 mm", "tube.wall" = "8 mm" }
[[vary]]
path = "loads.rated_load"
values = ["80 kN", "100 kN"]
"#;
    for (own, wanted) in outcome.rows[2..].iter().zip(&run(plain).rows) {
        // Side by side as text, because what has no value is not equal to itself.
        assert_eq!(format!("{:?}", own.result), format!("{:?}", wanted.result));
    }
    let file = text;
    check((file, "\"thin\"", "\"thick\""), (12, "\"thick\"", "two choices are named \"thick\""));
    check(
        (file, "\"8 mm\"", "\"8 kg\""),
        (13, "\"8 kg\"", "`tube.wall`: `kg` measures mass; length is wanted"),
    );
    check(
        (file, "name = \"tube\"", "name = \"tube\"\npoints = 3"),
        (8, "3", "a choice has no use for `points`"),
    );
    check((file, "loads.rated_load", "tube.wall"), (15, "\"tube.wall\"", "\"tube.wall\" is varied twice"));
}

#[test]
fn an_uncertainty_tells_of_what_was_asked() {
    let outcome = run(UNCERTAIN);
    assert_eq!(outcome.rows.len(), 128 * 4);
    let told = outcome.uncertainty.as_ref().unwrap();
    let [variant] = told.variants.as_slice() else { panic!("one variant") };
    assert_eq!((variant.designs, variant.failed), (256, 0));
    let [camber, mass] = variant.results.as_slice() else { panic!("two results") };
    assert_eq!((camber.measure.name.as_str(), mass.measure.name.as_str()), ("camber-change", "axle-mass"));
    assert!(
        camber.percentiles[0].value < camber.mean.value && camber.mean.value < camber.percentiles[1].value
    );
    // The mass knows nothing of the load.
    assert_eq!((mass.indices[1].first.value, mass.indices[1].total.value), (0.0, 0.0));
    assert!((mass.indices[0].total.value - 1.0).abs() < 0.05, "{:?}", mass.indices);
    // Camber goes by load over wall, nearly a product: shares sum to about 1.
    let sum: f64 = camber.indices.iter().map(|index| index.first.value).sum();
    assert!((sum - 1.0).abs() < 0.1, "{sum}");
    let met =
        outcome.rows.iter().enumerate().filter(|(i, row)| [0, 3].contains(&(i % 4)) && outcome.meets(row));
    assert_eq!(variant.limits[0].value, met.count() as f64 / 256.0);
    assert_eq!(variant.all_limits, Some(variant.limits[0]));
}

#[test]
fn any_number_of_threads_says_the_same() {
    let study = good(UNCERTAIN);
    let on = |threads| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        format!("{:?}", pool.install(|| study.run(&|_, _| ())))
    };
    assert!(on(1) == on(2), "one thread and two disagree");
}

#[test]
fn defaults_of_a_sample_are_listed() {
    let start = UNCERTAIN.find("[sample]").unwrap();
    let end = UNCERTAIN.find("[[vary]]").unwrap();
    let study = good(&format!("{}{}", &UNCERTAIN[..start], &UNCERTAIN[end..]));
    let listed: Vec<_> = study.assumed.iter().map(|own| format!("{} = {}", own.path, own.text)).collect();
    let wanted = [
        "uncertainty.confidence = 95 %",
        "sample.method = sobol",
        "sample.designs = 1024",
        "sample.seed = 1",
    ];
    assert_eq!(listed, wanted);
}

#[test]
fn samples_that_cannot_be_are_reported() {
    let sweep = |old, new, wanted| check((GOOD, old, new), wanted);
    sweep("designs = 20", "", (5, "[sample]", "it is not said how many designs are sampled"));
    sweep(
        "to = \"16 mm\"",
        "to = \"16 mm\"\npoints = 4",
        (12, "4", "a uniform distribution has no use for `points`"),
    );
    sweep("to = \"16 mm\"", "", (8, "[[vary]]", "it is not plain which values \"tube.wall\" takes"));
    let own = |old, new, wanted| check((UNCERTAIN, old, new), wanted);
    own("designs = 128", "designs = 100", (8, "100", "an uncertainty is not told from 100 designs"));
    own("\"sobol\"", "\"grid\"", (7, "\"grid\"", "an uncertainty is told from a sample"));
    own("\"0.3 mm\"", "\"0 mm\"", (13, "\"0 mm\"", "\"0 mm\" is not above 0"));
    own("\"0.3 mm\"", "\"0.3 kg\"", (13, "\"0.3 kg\"", "`kg` measures mass; length is wanted"));
    own("\"11.5 mm\"", "\"19 mm\"", (14, "\"19 mm\"", "hardly any value lies from `from` to `to`"));
    own("\"90 kN\"", "\"120 kN\"", (19, "\"120 kN\"", "the likeliest value 120 kN lies outside"));
    own("[5, 95]", "[5, 100]", (25, "100", "`uncertainty.percentiles[1]` is 100"));
    let (accepted, _) = own(
        "distribution = \"normal\"",
        "",
        (9, "[[vary]]", "it is not plain which values \"tube.wall\" takes"),
    );
    assert!(accepted.contains("`mean` and `deviation`"), "{accepted}");
}

#[test]
fn links_derived_results_and_limits_that_cannot_be_are_reported() {
    let own = |old, new, wanted| check((GOOD, old, new), wanted);
    let (accepted, likely) = own("2 * wall\"", "2 * wal\"", (18, "wal", "no number is named `wal`"));
    assert_eq!((accepted.as_str(), likely.as_str()), ("wall, seat", "wall"));
    own("0.1 + 2 * wall", "0.1 +", (18, "\"", "the expression ends where a number, a name or `(` is wanted"));
    own("tube.od", "tube.wall", (17, "\"tube.wall\"", "\"tube.wall\" is varied twice"));
    own("tube.od", "tube.odd", (17, "\"tube.odd\"", "`tube.odd` leads nowhere: tube has no key `odd`"));
    let (_, likely) = own("/ axle_mass", "/ axle_mas", (21, "axle_mas", "no number is named `axle_mas`"));
    assert_eq!(likely, "axle_mass");
    own(
        "\"deg/kg\"",
        "\"deg/kg/s\"",
        (22, "\"deg/kg/s\"", "\"deg/kg/s\" is no unit of anything that is shown"),
    );
    own(
        "\"camber-per-mass\"",
        "\"axle-mass\"",
        (20, "\"axle-mass\"", "something else is called \"axle_mass\" already"),
    );
    own("name = \"seat\"", "name = \"bow\"", (14, "\"bow\"", "a result is called \"bow\" already"));
    let (_, likely) = own(
        "of = \"camber-change\"",
        "of = \"camber-chang\"",
        (24, "\"camber-chang\"", "no result is named \"camber-chang\""),
    );
    assert_eq!(likely, "camber-change");
    own("\"0.5 deg\"", "\"0.5 mm\"", (25, "\"0.5 mm\"", "`mm` measures length; angle is wanted"));
    own("within = \"0.5 deg\"", "", (23, "[[limit]]", "the limit is not said"));
    let crossed = "least = \"2 deg\"\nmost = \"1 deg\"";
    own("within = \"0.5 deg\"", crossed, (23, "[[limit]]", "no value can meet this limit"));
}
