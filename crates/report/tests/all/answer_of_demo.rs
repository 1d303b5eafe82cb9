//! Answers of runs of the demo axles: each number in them is that of the outcome.

use std::path::{Path, PathBuf};

use axlebow_axle::tread::{Suspect, cups};
use axlebow_axle::{Side, strength, tires};
use axlebow_model::{Document, MODEL, Model, read_bytes};
use axlebow_report::{ModelCard, TextbookRow, answer, study_findings};
use axlebow_study::{Compatibility, Study, TableAxle, causes, fit, sensitivities};
use axlebow_units::UnitSystem;

use crate::made_up;
use crate::study::small;

fn path(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(name)
}

fn document(name: &str) -> Document {
    read_bytes(&std::fs::read(path(name)).unwrap(), name, &MODEL).unwrap()
}

fn model(name: &str) -> Model {
    Model::of(&document(name)).unwrap()
}

fn card() -> ModelCard {
    made_up::card(UnitSystem::Si)
}

const THIN: &str = "models/trailer-152-thin-dual.toml";
const THICK: &str = "models/trailer-127-thick-dual.toml";

#[test]
fn strength_counts_its_checks_and_names_the_worst() {
    for name in [THIN, "models/trailer-152-thin-dual-angle-part.toml"] {
        let model = model(name);
        let outcome = strength(&model.axle, &model.cases, model.strength).unwrap();
        let answer = answer::strength_answer(&outcome, &card());
        let all = outcome.checks().count();
        let worst = outcome.governing().unwrap().placed;
        let used = format!(
            "{} at {}, {:.0} % of its limit",
            worst.check.what,
            worst.place,
            100.0 * worst.check.utilization()
        );
        assert!(answer[0].contains(&used) && answer[0].contains(&all.to_string()), "{used}: {answer:?}");
        let fails = answer[0].contains(" fails") || answer[0].contains(" fail,");
        assert_eq!(fails, !outcome.holds(), "{answer:?}");
    }
}

#[test]
fn a_single_failure_says_so_and_nothing_checked_is_no_pass() {
    let model = model(THIN);
    let mut outcome = strength(&model.axle, &model.cases[..1], model.strength).unwrap();
    outcome.bearings.clear();
    let mut check = outcome.governing().unwrap().placed.clone();
    check.check.limit = check.check.value / 1.27;
    outcome.walls.clear();
    outcome.cases[0].checks = vec![check];
    let answer = answer::strength_answer(&outcome, &card());
    assert!(
        answer[0].starts_with("One check of 1 fails: ") && answer[0].contains("127 % of its limit"),
        "{answer:?}"
    );
    assert!(answer[0].ends_with("the axle should not be loaded so."), "{answer:?}");
    outcome.cases[0].checks.clear();
    assert!(answer::strength_answer(&outcome, &card())[0].starts_with("Nothing could be checked"));
}

#[test]
fn tires_name_the_shoulder_that_wears_fastest() {
    let model = model(THIN);
    let outcome = tires(&model.axle, &model.cases[..1]).unwrap();
    let answer = answer::tire_answer(&outcome, None, &card());
    let case = &outcome.cases[0];
    let all = Side::BOTH.into_iter().flat_map(|side| &case.wheels.of(side).worn.tires);
    let shoulders = all.flat_map(|tire| [tire.inner_shoulder(), tire.outer_shoulder()]);
    let most = shoulders.filter_map(|rib| rib.against_upright).fold(0.0, f64::max);
    assert!(
        answer[0].contains(&format!("{:.0} % faster than upright", 100.0 * (most - 1.0))),
        "{most}: {answer:?}"
    );
    let camber = format!("{:.2} deg in case {}", case.wheels.left.pose.camber.to_degrees().abs(), case.name);
    assert!(answer[0].starts_with("Tops lean in ") && answer[0].contains(&camber), "{answer:?}");
    let inner = case.wheels.left.worn.tires[1].share;
    assert!(
        answer[1].contains(&format!("{:.0} % of the wheel's load", 100.0 * inner.max(1.0 - inner))),
        "{answer:?}"
    );
}

#[test]
fn tires_that_wear_nowhere_upright_are_not_compared() {
    let model = model(THIN);
    let mut outcome = tires(&model.axle, &model.cases[..1]).unwrap();
    for side in Side::BOTH {
        let wheels = &mut outcome.cases[0].wheels;
        let face = if side == Side::Left { &mut wheels.left } else { &mut wheels.right };
        let ribs = face.worn.tires.iter_mut().flat_map(|tire| &mut tire.ribs);
        ribs.for_each(|rib| rib.against_upright = None);
    }
    assert!(answer::tire_answer(&outcome, None, &card())[0].ends_with("wear cannot be compared."));
}

#[test]
fn causes_name_the_largest_share_and_its_remedy() {
    let model = model(THIN);
    let outcome = causes(&model.axle, &model.cases[0]).unwrap();
    let camber = &outcome.wheels.left.camber;
    let largest = camber.shares.iter().max_by(|a, b| a.share.abs().total_cmp(&b.share.abs())).unwrap();
    let answer = answer::causes_answer(std::slice::from_ref(&outcome), &card());
    let share = format!(
        "most of it comes from {}, {:.0} %",
        largest.cause.words(),
        100.0 * largest.share / camber.total
    );
    assert!(answer[0].contains(&share), "{share}: {answer:?}");
    assert!(answer[0].contains(&format!("{:.2} deg", camber.total.to_degrees().abs())), "{answer:?}");
    assert!(answer[1].contains(largest.cause.remedy()) && answer[1].contains("takes off"), "{answer:?}");
    assert!(answer::causes_answer(&[], &card()).is_empty());
}

#[test]
fn cups_name_the_likeliest_source_or_none() {
    let outcome =
        cups(6, 25.0, 0.5, vec![Suspect::wheel_turn(6, 25.0 / (std::f64::consts::TAU * 0.5))]).unwrap();
    let answer = answer::cups_answer(&outcome, false, UnitSystem::Si);
    assert!(
        answer[0].contains(&format!("shakes the tire {:.1} times a second", outcome.frequency)),
        "{answer:?}"
    );
    assert!(answer.last().unwrap().contains("Give a model file"), "{answer:?}");
    let none = cups(6, 25.0, 0.5, Vec::new()).unwrap();
    let answer = answer::cups_answer(&none, true, UnitSystem::Si);
    assert_eq!(answer[1], "Nothing that is known here shakes it so.");
    assert!(answer[2].starts_with("No mode of this axle"));
}

#[test]
fn a_fit_gives_values_with_intervals_and_what_is_not_identifiable() {
    let name = "models/readings";
    let sheet = std::fs::read_dir(path(name)).unwrap().map(|entry| entry.unwrap().path()).min().unwrap();
    let document = document(THIN);
    let own = Model::of(&document).unwrap();
    let bytes = std::fs::read(&sheet).unwrap();
    let readings = axlebow_model::readings(&bytes, "readings", &own).unwrap();
    let mut outcome = fit(&document, &readings, &["tube.wall".to_owned()]).unwrap();
    outcome.estimate.chance = None;
    let answer = answer::fit_answer(&outcome, &card());
    let value = outcome.unknowns[0].value;
    assert!(
        answer[0].starts_with(&format!("The readings give tube.wall = {:.3} mm (95 %: ", 1e3 * value)),
        "{answer:?}"
    );
    outcome.unknowns[0].interval = None;
    let answer = answer::fit_answer(&outcome, &card());
    assert_eq!(answer[0], "tube.wall is not identifiable from these readings.");
    outcome.estimate.converged = false;
    assert!(answer::fit_answer(&outcome, &card())[0].starts_with("Do not go by this fit"));
}

#[test]
fn a_table_of_tires_names_its_best_and_worst_pair() {
    let axle = |name: &str| {
        let model = model(name);
        TableAxle { name: name.to_owned(), case: model.cases[0].clone(), axle: model.axle }
    };
    let asked = Compatibility { axles: vec![axle(THIN), axle(THICK)], tires: vec![], offsets: vec![] };
    let outcome = asked.run().unwrap();
    let answer = answer::compatibility_answer(&outcome, &card());
    let wear: Vec<f64> = outcome.cells.iter().flatten().filter_map(|cell| cell.against_upright).collect();
    let [least, most] =
        [wear.iter().copied().fold(f64::INFINITY, f64::min), wear.iter().copied().fold(0.0, f64::max)];
    assert!(answer[0].ends_with(&format!("{least:.3} times as fast as upright.")), "{answer:?}");
    assert!(answer[1].ends_with(&format!("{most:.3} times as fast as upright.")), "{answer:?}");
    assert!(answer[2].contains("no promise of mileage"));
}

#[test]
fn sensitivities_name_the_key_of_largest_effect() {
    let document = document(THIN);
    let own = Model::of(&document).unwrap();
    let outcome = sensitivities(&document, (&own.axle, &own.cases[0]), document.numbers()).unwrap();
    let answer = answer::sensitivities_answer(std::slice::from_ref(&outcome), &card());
    let most = outcome.most_telling(UnitSystem::Si)[0];
    assert!(
        answer[1].contains(&format!(
            "{} has the largest effect: {} more",
            most.key.path,
            most.step_in_words(UnitSystem::Si)
        )),
        "{answer:?}"
    );
    let change = most.change(UnitSystem::Si).camber_change.left.abs().to_degrees();
    assert!(
        answer[1].contains(&format!("{change:.2}")) || answer[1].contains(&format!("{change:.3}")),
        "{answer:?}"
    );
}

#[test]
fn a_search_gives_the_goal_its_design_and_the_active_limits() {
    let bytes = std::fs::read(path("studies/lightest-tube.toml")).unwrap();
    let study = Study::from_bytes(&bytes, "lightest-tube.toml", &path("studies")).unwrap();
    let outcome = study.search(&|_, _| ()).unwrap();
    let answer = answer::search_answer(&outcome, &card());
    let best = outcome.best.as_ref().unwrap();
    let mass = best.value(&outcome.goal.measure).unwrap();
    assert!(answer[0].contains(&format!("within the limits: {mass:.2} kg, with ")), "{answer:?}");
    let active = outcome.limits.iter().filter(|own| own.active).count();
    let words = match active {
        0 => "No limit is active",
        1 => "One limit is active",
        _ => "Active limits are",
    };
    assert!(answer[1].starts_with(words), "{answer:?}");
}

#[test]
fn a_study_answers_with_its_first_findings_and_keeps_the_others() {
    let outcome = small(1.0);
    let all = [answer::study_answer(&outcome, &card()), answer::study_details(&outcome, &card())].concat();
    assert_eq!(all, study_findings(&outcome, &card()));
    assert!(answer::study_answer(&outcome, &card()).len() <= 3);
}

#[test]
fn textbook_counts_what_is_met_and_names_the_largest_error() {
    let rows: Vec<TextbookRow> = axlebow_textbook::cases().into_iter().take(5).map(TextbookRow::of).collect();
    let answer = answer::textbook_answer(&rows);
    assert_eq!(answer[0], "5 of 5 cases met.");
    let used = |row: &TextbookRow| row.outcome.as_ref().unwrap().error.abs() / row.tolerance();
    let most = rows.iter().map(used).fold(0.0, f64::max);
    assert!(answer[1].ends_with(&format!("{:.0} % of it.", 100.0 * most)), "{answer:?}");
    assert_eq!(answer::textbook_answer(&[]), ["No case was run."]);
}
