//! Studies run, keep what fails, and say the same on any number of threads.

use std::path::{Path, PathBuf};

use axlebow_axle::flex;
use axlebow_model::Problems;
use axlebow_study::{Row, Study, StudyOutcome};
use rayon::ThreadPoolBuilder;

const GOOD: &str = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
[[variant]]
name = "thin"
change = { "tube.od" = "127 mm" }
[[variant]]
name = "wide"
change = { "tube.od" = "152.4 mm" }
[[vary]]
path = "tube.wall"
from = "6 mm"
to = "16 mm"
points = 5
[constant_mass]
masses = ["65 kg", "80 kg"]
"#;

fn studies() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies")
}

fn read(text: &str) -> Result<Study, Problems> {
    Study::from_bytes(text.as_bytes(), "study.toml", &studies())
}

fn good() -> Study {
    read(GOOD).unwrap_or_else(|problems| panic!("{problems}"))
}

fn run(study: &Study) -> StudyOutcome {
    study.run(&|_, _| ())
}

/// The one problem of a study with a piece replaced: line, underlined text, message, accepted, likely.
#[track_caller]
fn check(old: &str, new: &str, wanted: (usize, &str, &str)) -> (String, String) {
    assert!(GOOD.contains(old), "{old}");
    let text = GOOD.replacen(old, new, 1);
    let problems = read(&text).expect_err("refused");
    let all: Vec<_> = problems.iter().collect();
    assert_eq!(all.len(), 1, "{problems}");
    let found = (all[0].line, &text[all[0].span.clone()], all[0].message.as_str());
    assert_eq!(found, wanted);
    (all[0].accepted.clone().unwrap_or_default(), all[0].likely.clone().unwrap_or_default())
}

/// A result of the static load case.
fn value(outcome: &StudyOutcome, row: &Row, name: &str) -> f64 {
    let measure = outcome.standing(name).expect("a result of that name");
    row.value(measure).expect("a design with a result")
}

#[test]
fn designs_are_in_order_and_ends_are_exact() {
    let study = good();
    let points: Vec<_> = study.points().collect();
    assert_eq!((points.len(), study.count()), (10, 10));
    for variant in 0..2 {
        let line = &points[5 * variant..5 * (variant + 1)];
        assert!(line.iter().all(|point| point.variant == variant));
        assert_eq!((line[0].values[0], line[4].values[0]), (0.006, 0.016));
    }
}

#[test]
fn the_last_key_varies_fastest() {
    let more =
        "[[vary]]\npath = \"seat[0].at\"\nvalues = [\"450 mm\", \"485 mm\", \"500 mm\"]\n[constant_mass]";
    let study = read(&GOOD.replace("[constant_mass]", more)).unwrap();
    assert_eq!(study.count(), 30);
    assert_eq!(study.point(1).values, [0.006, 0.485]);
    assert_eq!(study.point(3).values, [0.0085, 0.45]);
    assert_eq!(study.point(15).variant, 1);
    let outcome = run(&study);
    assert_eq!(outcome.lines().count(), 10);
    assert!(outcome.lines().all(|line| line.iter().all(|row| row.is_in_line_with(&line[0]))));
    assert!(outcome.constant_mass[0].points.is_empty(), "no seat place changes the mass");
}

#[test]
fn a_row_is_what_a_static_run_of_that_design_says() {
    let study = good();
    let outcome = run(&study);
    let bytes = std::fs::read(studies().join("../models/trailer-127-thick-dual.toml")).unwrap();
    let text = String::from_utf8(bytes).unwrap().replace("\"127 mm\"", "\"152.4 mm\"");
    let text = text.replace("\"12.7 mm\"", "\"11 mm\"");
    let model = axlebow_model::Model::from_bytes(text.as_bytes(), "model.toml").unwrap();
    let direct = flex(&model.axle, &model.cases).unwrap();
    let own = |name: &str| value(&outcome, &outcome.rows[7], name);
    let case = &direct.cases[0];
    assert_eq!(own("axle-mass"), direct.axle_mass);
    // The short way of studies differs from finite elements by rounding.
    let same = |name: &str, value: f64| approx::assert_relative_eq!(own(name), value, max_relative = 1e-10);
    same("left-camber-change", case.wheels.left.camber_change);
    let split = case.wheels.right.split;
    same("right-bending", split.bending);
    same("right-seat", split.seat);
    same("peak-stress", case.peak_stress);
    same("bow", case.bow);
}

#[test]
fn designs_that_fail_are_rows_with_their_reason() {
    let study = read(&GOOD.replace("to = \"16 mm\"", "to = \"90 mm\"")).unwrap();
    let outcome = run(&study);
    let reasons: Vec<_> = outcome.rows.iter().map(|row| row.result.as_ref().err().cloned()).collect();
    assert_eq!(reasons.iter().flatten().count(), 3, "{reasons:?}");
    assert!(reasons[4].as_ref().unwrap().contains("wall"), "{reasons:?}");
    assert_eq!(outcome.rows[4].values, [0.09]);
    assert_eq!(outcome.constant_mass[1].points.len(), 2);
}

#[test]
fn designs_that_share_a_line_are_as_each_alone() {
    let with = |load: &str, wall: &str, spacing: &str| {
        let keys = format!(
            "[[vary]]\npath = \"loads.rated_load\"\nvalues = {load}\n[[vary]]\npath = \"tube.wall\"\nvalues = {wall}\n\
             [[vary]]\npath = \"wheel[0].dual_spacing\"\nvalues = {spacing}\n"
        );
        let (before, after) =
            (GOOD.split("[[vary]]").next().unwrap(), "[constant_mass]\nmasses = [\"65 kg\"]\n");
        run(&read(&format!("{before}{keys}{after}")).unwrap_or_else(|problems| panic!("{problems}")))
    };
    // No axle has a wall of 80 mm.
    let (loads, walls, spacings) =
        (["\"60 kN\"", "\"89 kN\""], ["\"9 mm\"", "\"80 mm\"", "\"12 mm\""], ["\"320 mm\"", "\"340 mm\""]);
    let list = |values: &[&str]| format!("[{}]", values.join(", "));
    let all = with(&list(&loads), &list(&walls), &list(&spacings));
    let mut rows = all.rows.chunks(12).map(|variant| variant.iter());
    let [mut thin, mut wide] = [rows.next().unwrap(), rows.next().unwrap()];
    for load in loads {
        for wall in walls {
            for spacing in spacings {
                let alone = with(&list(&[load]), &list(&[wall]), &list(&[spacing]));
                // Written out, what is not a number is like itself.
                let written = |rows: [Option<&Row>; 2]| format!("{rows:?}");
                assert_eq!(
                    written([thin.next(), wide.next()]),
                    written([alone.rows.first(), alone.rows.get(1)])
                );
            }
        }
    }
}

#[test]
fn any_number_of_threads_says_the_same() {
    let study = read(&GOOD.replace("points = 5", "points = 300").replace("16 mm", "70 mm")).unwrap();
    let on = |threads| {
        let pool = ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        format!("{:?}", pool.install(|| run(&study)))
    };
    assert!(on(1) == on(2), "one thread and two disagree");
}

#[test]
fn progress_counts_every_design() {
    let told = std::cell::RefCell::new(Vec::new());
    let study = read(&GOOD.replace("points = 5", "points = 300")).unwrap();
    study.run(&|done, of| told.borrow_mut().push((done, of)));
    assert_eq!(*told.borrow(), [(512, 600), (600, 600)]);
}

/// The tolerance is that of the requirement; the halving ends at neighboring numbers.
#[test]
fn designs_of_equal_mass_have_that_mass() {
    let outcome = run(&good());
    for equal in &outcome.constant_mass {
        assert_eq!(equal.points.len(), 2);
        for row in &equal.points {
            assert!((value(&outcome, row, "axle-mass") / equal.mass - 1.0).abs() < 1e-6, "{row:?}");
        }
        let [thin, wide] = [0, 1].map(|i| value(&outcome, &equal.points[i], "left-camber-change"));
        assert!(equal.points[0].values[0] > equal.points[1].values[0]);
        assert!(wide > thin, "more diameter bends less");
    }
    assert!((outcome.constant_mass[0].mass, outcome.constant_mass[1].mass) == (65.0, 80.0));
}

#[test]
fn a_mass_that_a_line_does_not_reach_or_has_at_an_end_is_told_apart() {
    let outcome = run(&good());
    let end = value(&outcome, &outcome.rows[0], "axle-mass");
    let outcome = run(&read(&GOOD.replace("\"65 kg\"", &format!("\"{end:?} kg\", \"500 kg\""))).unwrap());
    assert_eq!(outcome.constant_mass[0].points.len(), 1);
    assert_eq!(outcome.constant_mass[0].points[0].values, [0.006]);
    assert!(outcome.constant_mass[1].points.is_empty());
}

#[test]
fn a_study_without_variants_is_of_the_model_itself() {
    let start = GOOD.find("[[variant]]").unwrap();
    let end = GOOD.find("[[vary]]").unwrap();
    let study = read(&format!("{}{}", &GOOD[..start], &GOOD[end..])).unwrap();
    assert_eq!(study.variants[0].name, "127 mm thick-wall trailer tube, dual, zeroset");
    assert_eq!(study.count(), 5);
}

#[test]
fn wrong_paths_are_reported_with_the_likely_key() {
    let nowhere = "`tube.wal` leads nowhere: tube has no key `wal`";
    let (accepted, likely) = check("\"tube.wall\"", "\"tube.wal\"", (12, "\"tube.wal\"", nowhere));
    assert_eq!((accepted.as_str(), likely.as_str()), ("`od`, `wall`, `length`, `weld_keep_out`", "wall"));
    let nowhere = "`tube.odd` leads nowhere: tube has no key `odd`";
    check("\"tube.od\"", "\"tube.odd\"", (7, "\"tube.odd\"", nowhere));
    check("\"tube.wall\"", "\"kind\"", (12, "\"kind\"", "`kind` is not a number"));
    check("\"tube.wall\"", "\"housing.wall\"", (12, "\"housing.wall\"", "the file has nothing at `housing`"));
    let both = "\"tube.wall\" is changed here and varied too";
    check("\"tube.od\"", "\"tube.wall\"", (7, "\"tube.wall\"", both));
}

#[test]
fn wrong_values_are_reported() {
    let kind = "`tube.wall`: `kg` measures mass; length is wanted";
    check("\"6 mm\"", "\"6 kg\"", (13, "\"6 kg\"", kind));
    check("\"6 mm\"", "\"-6 mm\"", (13, "\"-6 mm\"", "`tube.wall` is -6 mm"));
    check(
        "\"152.4 mm\"",
        "\"152.4 kg\"",
        (10, "\"152.4 kg\"", "`tube.od`: `kg` measures mass; length is wanted"),
    );
    check("\"16 mm\"", "\"6 mm\"", (14, "\"6 mm\"", "`from` and `to` are both 6 mm"));
    check("points = 5", "points = 1", (15, "1", "`vary[0].points` is 1"));
    check("points = 5", "points = 10000001", (15, "10000001", "`vary[0].points` is 10000001"));
    let unclear = "it is not plain which values \"tube.wall\" takes";
    check("points = 5", "", (11, "[[vary]]", unclear));
    let no_use = "a list of values has no use for `from`";
    check("points = 5", "points = 5\nvalues = [\"6 mm\"]", (13, "\"6 mm\"", no_use));
    check("\"65 kg\"", "\"65 mm\"", (17, "\"65 mm\"", "`mm` measures length; mass is wanted"));
    check("\"65 kg\"", "\"0 kg\"", (17, "\"0 kg\"", "the mass is \"0 kg\""));
    check("\"wide\"", "\"thin\"", (9, "\"thin\"", "two variants are named \"thin\""));
}

#[test]
fn wrong_cases_and_models_are_reported() {
    let (accepted, likely) = check(
        "\"rated-load\"",
        "\"rated-lod\"",
        (4, "\"rated-lod\"", "the model has no load case \"rated-lod\""),
    );
    assert!(accepted.contains("braking-in-a-bend"), "{accepted}");
    assert_eq!(likely, "rated-load");
    let text = GOOD.replace("127-thick-dual", "127-thik-dual");
    let problems = read(&text).unwrap_err();
    let problem = problems.iter().next().unwrap();
    assert_eq!(problem.line, 3);
    assert!(problem.message.contains("cannot be read"), "{problems}");
    assert_eq!(problem.likely.as_deref(), Some("../models/trailer-127-thick-dual.toml"));
    let problems = read(&GOOD.replace("trailer-127-thick-dual.toml", "")).unwrap_err();
    assert!(problems.render().contains("not a file"), "{problems}");
    let problems =
        read(&GOOD.replace("../models/trailer-127-thick-dual.toml", "wall-sweep.toml")).unwrap_err();
    assert!(problems.render().contains("model file has no key `case`"), "{problems}");
}

/// Endplay beyond what the trade accepts is a doubt of every design; a wheel far outboard only of some.
#[test]
fn warnings_are_counted_with_the_first_design_that_has_them() {
    let text = GOOD.replace(
        "[constant_mass]\nmasses = [\"65 kg\", \"80 kg\"]",
        "[[vary]]\npath = \"wheel_end[0].endplay\"\nvalues = [\"0.1 mm\", \"0.2 mm\"]",
    );
    let study = read(&text).unwrap_or_else(|problems| panic!("{problems}"));
    let outcome = run(&study);
    let endplay: Vec<_> =
        outcome.warnings.iter().filter(|own| own.warning.text.contains("0.20 mm of endplay")).collect();
    assert_eq!(endplay.len(), 1, "{:?}", outcome.warnings);
    assert_eq!((endplay[0].designs, &endplay[0].first), (study.count() / 2, &study.point(1)));
    let counted: f64 = outcome.rows.iter().map(|row| value(&outcome, row, "warnings")).sum();
    assert_eq!(counted, outcome.warnings.iter().map(|own| own.designs).sum::<usize>() as f64);
}

/// One over zero has no value: it is told for the design, and is a warning.
#[test]
fn a_result_that_is_not_a_number_has_its_reason() {
    let text = GOOD
        .replace("[[vary]]", "[[derived]]\nname = \"odd\"\nas = \"1 / (axle_mass - axle_mass)\"\n[[vary]]");
    let study = read(&text).unwrap_or_else(|problems| panic!("{problems}"));
    let outcome = run(&study);
    let why = outcome.reason(&outcome.rows[0]);
    assert_eq!(why.as_deref(), Some("odd is not a number: 1 / (axle_mass - axle_mass)"));
    let own = outcome.warnings.iter().find(|own| own.warning.text.contains("odd is not a number"));
    assert_eq!(own.map(|own| own.designs), Some(study.count()));
    let text = text.replace("axle_mass - axle_mass)", "camber_removed)");
    let outcome = run(&read(&text).unwrap_or_else(|problems| panic!("{problems}")));
    let why = outcome.reason(&outcome.rows[0]);
    assert_eq!(why.as_deref(), Some("odd has no value, because camber-removed has none"));
    assert!(outcome.warnings.iter().all(|own| !own.warning.text.contains("odd")), "{:?}", outcome.warnings);
}
