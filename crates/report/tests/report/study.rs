//! Table, figure, JSON and CSV of a study: a real one, and made-up ones for what it does not show.

use std::path::Path;

use axlebow_axle::{CamberSplit, Sides};
use axlebow_report::json::{study_document, study_schema};
use axlebow_report::plot::study_figure;
use axlebow_report::{ModelCard, ReportError, csv, study_findings, table};
use axlebow_study::{Design, EqualMass, Row, Study, StudyOutcome, Varied};
use axlebow_units::{Kind, UnitSystem};
use serde_json::Value;

use crate::figures::keep;
use crate::made_up::card;

fn wall_sweep(system: UnitSystem) -> (StudyOutcome, ModelCard) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    let bytes = std::fs::read(folder.join("wall-sweep.toml")).unwrap();
    let study = Study::from_bytes(&bytes, "wall-sweep.toml", &folder).unwrap();
    let (name, hash) = (study.base.name.clone(), study.base.hash.clone());
    (study.run(&|_, _| ()), ModelCard { name, hash, system, invented: study.base.invented, assumed: vec![] })
}

fn design(camber: f64, mass: f64) -> Design {
    let split =
        CamberSplit { bending: 0.8 * camber, shear: 0.1 * camber, seat: 0.1 * camber, ..Default::default() };
    Design {
        axle_mass: mass,
        camber_change: Sides { left: camber, right: camber },
        split: Sides { left: split, right: split },
        peak_stress: -2e8,
        bow: 0.002,
    }
}

/// Three walls of one variant; the thickest has no result, and both sides lean apart if asked.
fn small(right: f64) -> StudyOutcome {
    let row = |value: f64, result| Row { variant: 0, values: vec![0.4, value], result };
    let mut first = design(-0.01, 60.0);
    first.camber_change.right *= right;
    StudyOutcome {
        name: "Small, \"quoted\"".to_owned(),
        note: None,
        case: "rated-load".to_owned(),
        variants: vec!["tube, thin".to_owned()],
        varied: vec![
            Varied { path: "seat[0].at".to_owned(), kind: Kind::Length, values: vec![0.4] },
            Varied { path: "tube.wall".to_owned(), kind: Kind::Length, values: vec![0.006, 0.008, 0.07] },
        ],
        rows: vec![
            row(0.006, Ok(first)),
            row(0.008, Ok(design(-0.008, 70.0))),
            row(0.07, Err("the wall is too thick".to_owned())),
        ],
        constant_mass: vec![EqualMass { mass: 65.0, points: vec![] }],
    }
}

#[test]
fn wall_sweep_is_drawn_and_tabled_in_both_unit_systems() {
    for (name, system) in [("wall-sweep", UnitSystem::Si), ("wall-sweep-us", UnitSystem::Us)] {
        let (outcome, card) = wall_sweep(system);
        let svg = study_figure(&outcome, &card).unwrap();
        assert_eq!(svg, study_figure(&outcome, &card).unwrap());
        keep(name, &svg);
        let text = table::study(&outcome, &card);
        println!("{text}");
        assert!(text.lines().all(|line| line.chars().count() <= 100 && line == line.trim_end()));
        assert!(text.contains("Demonstration data, invented.") && text.contains("82 designs in all"));
    }
}

#[test]
fn sentences_come_from_the_numbers() {
    let (mut outcome, card) = wall_sweep(UnitSystem::Si);
    let said = study_findings(&outcome, &card);
    assert_eq!(said.len(), 2);
    assert!(
        said[1].contains("75 kg, 152.4 mm tube leans ") && said[1].contains("less than 127 mm tube"),
        "{said:?}"
    );
    outcome.variants.swap(0, 1);
    assert!(study_findings(&outcome, &card)[1].contains("75 kg, 127 mm tube leans "));
}

#[test]
fn failures_are_told_in_a_sentence_a_gap_and_a_dash() {
    let (outcome, card) = (small(1.0), card(UnitSystem::Si));
    let said = study_findings(&outcome, &card).join(" ");
    let failure = "1 of 3 designs have no result; the first is tube, thin with seat[0] at 400 mm, tube wall 70 mm: \
                   the wall is too thick.";
    assert!(said.contains(failure), "{said}");
    let text = table::study(&outcome, &card);
    assert!(text.contains("not reached") && text.contains("tube, thin, seat[0] at 400 mm"), "{text}");
    assert!(
        text.lines().any(|line| line.split_whitespace().eq(["70", "-", "-", "-", "-", "-", "-", "-", "-"])),
        "{text}"
    );
    assert!(study_figure(&outcome, &card).unwrap().text().contains("tube, thin, seat[0] at 400 mm"));
}

#[test]
fn wheels_that_lean_apart_have_a_column_each() {
    let (outcome, card) = (small(0.5), card(UnitSystem::Us));
    let text = table::study(&outcome, &card);
    assert!(text.contains("camber, left") && text.contains("camber, right"), "{text}");
    assert!(study_findings(&outcome, &card)[0].contains("of the left wheel"));
    assert!(study_figure(&outcome, &card).unwrap().text().contains("camber change of the left wheel, deg"));
}

#[test]
fn a_study_without_results_is_not_drawn_but_tabled() {
    let mut outcome = small(1.0);
    outcome.rows.drain(..2);
    let card = card(UnitSystem::Si);
    assert!(matches!(study_figure(&outcome, &card), Err(ReportError::Empty { .. })));
    assert!(table::study(&outcome, &card).contains("1 of 1 designs have no result"));
}

#[test]
fn document_is_si_and_as_its_schema_says() {
    let text = study_document(&small(1.0), &card(UnitSystem::Us));
    let document: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(document["schema"], "axlebow/study/1");
    assert_eq!(document["varied"][1]["unit"], "m");
    assert_eq!(document["rows"][1]["values"][1], 0.008);
    assert_eq!(document["rows"][1]["design"]["left"]["camber_change_rad"], -0.008);
    assert!(document["rows"][1]["reason"].is_null() && document["rows"][2]["design"].is_null());
    assert_eq!(document["rows"][2]["reason"], "the wall is too thick");
    assert_eq!(document["constant_mass"][0]["mass_kg"], 65.0);
    let schema: Value = serde_json::from_str(&study_schema()).unwrap();
    let declared: Vec<_> = schema["properties"].as_object().unwrap().keys().collect();
    assert_eq!(declared, document.as_object().unwrap().keys().collect::<Vec<_>>());
}

#[test]
fn csv_has_a_line_for_each_design() {
    let text = csv::study(&small(1.0));
    let lines: Vec<_> = text.split("\r\n").collect();
    assert!(
        lines[0].starts_with("variant,seat[0].at (m),tube.wall (m),axle_mass_kg,left_camber_change_rad,")
    );
    assert!(lines[1].starts_with("\"tube, thin\",0.4,0.006,60.0,-0.01,"));
    assert!(lines[3].ends_with(",,the wall is too thick"));
    assert_eq!((lines.len(), lines[4]), (5, ""));
}
