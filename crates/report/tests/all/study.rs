//! Table, figure, JSON and CSV of a study: a real one, and made-up ones for what it does not show.

use std::path::Path;

use axlebow_report::json::{study_document, study_schema};
use axlebow_report::plot::study_figure;
use axlebow_report::{ModelCard, ReportError, csv, study_findings, table};
use axlebow_study::{
    EqualMass, Measure, NaturalMode, QUANTITIES, Quantity, RideName, Row, Study, StudyKind, StudyOutcome,
    Varied,
};
use axlebow_units::{Kind, UnitSystem};
use serde_json::Value;

use crate::figures::keep;
use crate::made_up::card;

fn wall_sweep(system: UnitSystem) -> (StudyOutcome, ModelCard) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    let bytes = std::fs::read(folder.join("wall-sweep.toml")).unwrap();
    let study = Study::from_bytes(&bytes, "wall-sweep.toml", &folder).unwrap();
    let (name, hash) = (study.base.name.clone(), study.base.hash.clone());
    (
        study.run(&|_, _| ()),
        ModelCard {
            name,
            hash,
            system,
            invented: study.base.invented,
            typical: vec![],
            invented_inputs: vec![],
            settings: vec![],
            assumed: vec![],
        },
    )
}

/// Readings by the names of their quantities, in the order of [`QUANTITIES`]; NaN for those without a name.
fn readings(named: &[(&str, f64)]) -> Box<[f64]> {
    let value = |quantity: &Quantity| named.iter().find(|(name, _)| *name == quantity.name);
    QUANTITIES.iter().map(|quantity| value(quantity).map_or(f64::NAN, |(_, value)| *value)).collect()
}

/// What a design without a ride has.
fn standing(camber: f64, right: f64, mass: f64) -> Vec<(&'static str, f64)> {
    vec![
        ("axle-mass", mass),
        ("camber-change", camber),
        ("left-camber-change", camber),
        ("right-camber-change", right * camber),
        ("left-bending", 0.8 * camber),
        ("left-shear", 0.1 * camber),
        ("left-seat", 0.1 * camber),
        ("left-bearing", 0.0),
        ("left-clearance", 0.0),
        ("peak-stress", -2e8),
        ("bow", 0.002),
    ]
}

/// A measure at its place among readings.
fn measure(name: &str) -> Measure {
    let place = QUANTITIES.iter().position(|quantity| quantity.name == name).unwrap();
    let quantity = &QUANTITIES[place];
    Measure {
        name: name.to_owned(),
        words: quantity.words.clone(),
        kind: quantity.kind,
        meaning: quantity.meaning.clone(),
        ride: quantity.is_of_ride().then_some(0),
        place,
        uses: None,
    }
}

fn measures(names: &[&str]) -> Vec<Measure> {
    names.iter().map(|name| measure(name)).collect()
}

fn measures_of_case() -> Vec<Measure> {
    let own = QUANTITIES.iter().filter(|quantity| !quantity.is_of_ride());
    own.map(|quantity| measure(&quantity.name)).collect()
}

/// Three walls of one variant; the thickest has no result, and both sides lean apart if asked.
pub fn small(right: f64) -> StudyOutcome {
    let row = |value: f64, result| Row { variant: 0, values: vec![0.4, value], result };
    StudyOutcome {
        name: "Small, \"quoted\"".to_owned(),
        note: None,
        kind: StudyKind::Sweep,
        is_grid: true,
        limits: vec![],
        uncertainty: None,
        rides: vec![],
        measures: measures_of_case(),
        shown: vec![],
        ranked_by: None,
        stiffened: false,
        natural_modes: vec![],
        seat_table_errors: Vec::new(),
        case: "rated-load".to_owned(),
        variants: vec!["tube, thin".to_owned()],
        varied: vec![
            Varied::of_key("seat[0].at", Kind::Length, vec![0.4]),
            Varied::of_key("tube.wall", Kind::Length, vec![0.006, 0.008, 0.07]),
        ],
        rows: vec![
            row(0.006, Ok(readings(&standing(-0.01, right, 60.0)))),
            row(0.008, Ok(readings(&standing(-0.008, 1.0, 70.0)))),
            row(0.07, Err("the wall is too thick".to_owned())),
        ],
        constant_mass: vec![EqualMass { mass: 65.0, points: vec![] }],
        warnings: vec![],
        summary: None,
    }
}

#[test]
fn wall_sweep_is_drawn_and_tabled_in_both_unit_systems() {
    for (name, system) in [("wall-sweep", UnitSystem::Si), ("wall-sweep-us", UnitSystem::Us)] {
        let (outcome, card) = wall_sweep(system);
        let svg = study_figure(&outcome, &card).unwrap();
        assert_eq!(svg, study_figure(&outcome, &card).unwrap());
        keep(name, &svg);
        let text = table::study(&outcome, &card).text();
        println!("{text}");
        assert!(text.lines().all(|line| line.chars().count() <= 100 && line == line.trim_end()));
        assert!(text.contains("Demonstration data, invented.") && text.contains("82 designs in all"));
        // Camber against the wall and against the mass, designs of equal mass joined.
        for words in
            ["Camber change against tube wall", "Camber change against axle mass", "Dashed: equal axle mass."]
        {
            assert!(svg.text().contains(words), "{words}");
        }
        assert!(svg.text().contains(r#"stroke-dasharray="5 4""#));
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
    let failure = "1 of 3 designs have no result; the first is tube, thin with first seat at 400 mm, tube wall 70 mm: \
                   the wall is too thick.";
    assert!(said.contains(failure), "{said}");
    let text = table::study(&outcome, &card).text();
    assert!(text.contains("not reached") && text.contains("tube, thin, first seat at 400 mm"), "{text}");
    assert!(
        text.lines().any(|line| line.split_whitespace().eq(["70", "-", "-", "-", "-", "-", "-", "-", "-"])),
        "{text}"
    );
    assert!(study_figure(&outcome, &card).unwrap().text().contains("tube, thin, first seat at 400 mm"));
}

#[test]
fn wheels_that_lean_apart_have_a_column_each() {
    let (outcome, card) = (small(0.5), card(UnitSystem::Us));
    let text = table::study(&outcome, &card).text();
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
    assert!(table::study(&outcome, &card).text().contains("1 of 1 designs have no result"));
}

#[test]
fn document_is_si_and_as_its_schema_says() {
    let text = study_document(&small(1.0), &card(UnitSystem::Us));
    let document: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(document["schema"], "axlebow/study-result/3");
    assert_eq!(document["varied"][1]["unit"], "m");
    assert_eq!(document["rows"][1]["values"][1], 0.008);
    assert_eq!(document["rows"][1]["results"]["case"]["left_camber_change_rad"], -0.008);
    assert!(document["rows"][1]["reason"].is_null() && document["rows"][2]["results"].is_null());
    assert_eq!(document["rows"][2]["reason"], "the wall is too thick");
    assert_eq!(document["constant_mass"][0]["axle_mass_kg"], 65.0);
    let schema: Value = serde_json::from_str(&study_schema()).unwrap();
    let declared: Vec<_> = schema["properties"].as_object().unwrap().keys().collect();
    assert_eq!(declared, document.as_object().unwrap().keys().collect::<Vec<_>>());
}

#[test]
fn csv_has_a_line_for_each_design() {
    let text = csv::study(&small(1.0));
    let lines: Vec<_> = text.split("\r\n").collect();
    assert!(lines[0].starts_with("variant,seat[0].at (m),tube.wall (m),axle_mass_kg,camber_change_rad,"));
    assert!(lines[1].starts_with("\"tube, thin\",0.4,0.006,60.0,-0.01,-0.01,"));
    assert!(lines[3].ends_with(",,the wall is too thick"));
    assert_eq!((lines.len(), lines[4]), (5, ""));
}

/// Fourteen made-up variants with a road; the last one but one has no result.
fn beside() -> StudyOutcome {
    let row = |variant: usize| {
        let size = 1.0 + 0.07 * variant as f64;
        let mut own = standing(-0.006 * size, 1.0, 60.0 + 3.0 * variant as f64);
        own.extend([
            ("dynamic-load-factor", 1.5 * size),
            ("dynamic-load-coefficient", 0.2),
            ("time-off-road", 0.02 * variant as f64),
            ("camber-peak", -0.01 * size),
            ("camber-peak-to-peak", 0.008 * size),
            ("camber-rms", 0.001),
            ("ride-peak-stress", 3e8),
            ("camber-frequency", 11.0),
            ("cups-per-turn", if variant == 3 { f64::NAN } else { 2.5 }),
            ("cup-spacing", 1.2),
        ]);
        Row {
            variant,
            values: vec![],
            result: if variant == 12 { Err("it has no seats".to_owned()) } else { Ok(readings(&own)) },
        }
    };
    let all: Vec<&str> = QUANTITIES.iter().map(|quantity| quantity.name.as_str()).collect();
    StudyOutcome {
        kind: StudyKind::SideBySide { baseline: 1 },
        variants: (0..14).map(|i| format!("variant {i} with a wide-base tire, outset")).collect(),
        varied: vec![],
        rides: vec![RideName { name: "bump".to_owned(), road: "a bump".to_owned(), speed: Some(20.0) }],
        measures: measures(&all),
        shown: measures(&[
            "axle-mass",
            "camber-change",
            "camber-peak-to-peak",
            "dynamic-load-factor",
            "time-off-road",
            "ride-peak-stress",
            "cups-per-turn",
        ]),
        rows: (0..14).map(row).collect(),
        constant_mass: vec![],
        summary: None,
        ..small(1.0)
    }
}

#[test]
fn variants_stand_side_by_side_in_rows_with_the_share_of_the_baseline() {
    let (outcome, card) = (beside(), card(UnitSystem::Si));
    let text = table::study(&outcome, &card).text();
    println!("{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 100 && line == line.trim_end()), "{text}");
    let row = text.lines().find(|line| line.starts_with("* ")).unwrap();
    assert!(row.contains("63.0  100"), "{row}");
    assert!(text.contains("Ride: a bump at 72 km/h") && text.contains("it has no seats"), "{text}");
    let document: Value = serde_json::from_str(&study_document(&outcome, &card)).unwrap();
    assert_eq!(document["baseline"], outcome.variants[1]);
    let share = document["rows"][0]["of_baseline"]["case"]["axle_mass_kg"].as_f64().unwrap();
    assert!((share - 60.0 / 63.0).abs() < 1e-15, "{share}");
    assert_eq!(document["rows"][1]["of_baseline"]["rides"][0]["camber_rms_rad"], 1.0);
    assert!(document["rows"][3]["results"]["rides"][0]["cups_per_turn"].is_null());
    let lines = csv::study(&outcome);
    assert!(lines.lines().next().unwrap().contains(",bump.camber_rms_rad,bump.camber_rms_rad_of_baseline,"));
}

#[test]
fn variants_side_by_side_are_drawn() {
    let (outcome, card) = (beside(), card(UnitSystem::Si));
    let svg = study_figure(&outcome, &card).unwrap();
    keep("beside", &svg);
    assert!(svg.text().contains("baseline") && svg.text().contains("no result"));
    let mut two = outcome;
    two.rows.truncate(2);
    two.variants.truncate(2);
    keep("beside-two", &study_figure(&two, &card).unwrap());
}

/// A map of three speeds by four lengths, one place of which has no result.
fn map() -> StudyOutcome {
    let (speeds, lengths) = (vec![8.0, 16.0, 24.0], vec![0.5, 1.0, 1.5, 2.0]);
    let varied = |path: &str, kind, values: &[f64]| Varied::of_key(path, kind, values.to_vec());
    let beside = beside();
    let row = |speed: f64, length: f64| {
        let mut own = beside.rows[2].result.clone().unwrap();
        own[measure("camber-peak-to-peak").place] *= 1.0 + speed / (10.0 * length) + length;
        let result = if (speed, length) == (16.0, 1.5) { Err("no".to_owned()) } else { Ok(own) };
        Row { variant: 0, values: vec![speed, length], result }
    };
    StudyOutcome {
        kind: StudyKind::Sweep,
        variants: vec!["tube".to_owned()],
        varied: vec![
            varied("road.speed", Kind::Speed, &speeds),
            varied("road.length", Kind::Length, &lengths),
        ],
        shown: measures(&["camber-peak-to-peak"]),
        natural_modes: vec![vec![NaturalMode { name: "wheel hop".to_owned(), frequency: 11.0 }]],
        seat_table_errors: Vec::new(),
        rows: speeds.iter().flat_map(|speed| lengths.iter().map(|length| row(*speed, *length))).collect(),
        ..beside
    }
}

#[test]
fn a_sweep_of_two_keys_with_a_ride_is_a_map() {
    for (name, system) in [("map", UnitSystem::Si), ("map-us", UnitSystem::Us)] {
        let svg = study_figure(&map(), &card(system)).unwrap();
        keep(name, &svg);
        assert!(svg.text().contains("wheel hop 11.0 Hz") && svg.text().contains("Gray: no value."));
    }
    let text = table::study(&map(), &card(UnitSystem::Si)).text();
    println!("{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    assert!(text.contains("camber, peak to peak, deg; road length, mm to the right"), "{text}");
    assert!(text.lines().any(|line| line.starts_with("      57.6") && line.contains(" -")), "{text}");
    let mut two = map();
    two.variants.push("thicker tube".to_owned());
    two.rows.extend(map().rows.into_iter().map(|row| Row { variant: 1, ..row }));
    keep("map-two", &study_figure(&two, &card(UnitSystem::Si)).unwrap());
}

#[test]
fn a_sweep_with_a_ride_has_a_panel_for_each_result() {
    let mut outcome = map();
    outcome.varied.remove(0);
    outcome.rows.truncate(4);
    outcome.rows.iter_mut().for_each(|row| row.values = vec![row.values[1]]);
    outcome.shown.push(measure("bow"));
    keep("ride-sweep", &study_figure(&outcome, &card(UnitSystem::Si)).unwrap());
    let text = table::study(&outcome, &card(UnitSystem::Si)).text();
    assert!(text.contains("peak to") && text.contains("bow"), "{text}");
}
