//! Shop drawings from the command line.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

use std::path::PathBuf;

use axlebow_model::Model;
use axlebow_report::{DrawingOptions, ModelCard, Paper, ShopDrawing, WeldSymbols};
use axlebow_units::UnitSystem;

use crate::program::{axlebow, axlebow_in, demo};

/// Demos with all shapes that are welded on, and one of each kind without.
const DEMOS: [&str; 6] = [
    "trailer-152-thin-dual-angle",
    "trailer-152-thin-dual-angle-part",
    "trailer-152-thin-dual-angle-stitched",
    "trailer-152-thin-dual-sleeve",
    "trailer-127-thick-wide-base-outset",
    "drive-housing-9.5-dual",
];

fn card(model: &Model, system: UnitSystem) -> ModelCard {
    ModelCard {
        name: model.name.clone(),
        hash: model.hash.clone(),
        settings: Vec::new(),
        assumed: Vec::new(),
        system,
        invented: model.invented,
        typical: Vec::new(),
        invented_inputs: Vec::new(),
    }
}

fn model(name: &str) -> Model {
    let path = PathBuf::from(demo(name));
    Model::from_bytes(&std::fs::read(&path).unwrap(), name).unwrap()
}

fn drawing(model: &Model, (paper, symbols, system): (Paper, WeldSymbols, UnitSystem)) -> ShopDrawing {
    let options = DrawingOptions { paper, symbols, revision: "B".to_owned() };
    ShopDrawing::of((&model.axle, model.strength), options, &card(model, system)).unwrap()
}

fn every_kind() -> Vec<(Paper, WeldSymbols, UnitSystem)> {
    let papers = [Paper::A4, Paper::A3, Paper::Letter];
    let both = [(WeldSymbols::Iso, UnitSystem::Si), (WeldSymbols::Aws, UnitSystem::Us)];
    papers.into_iter().flat_map(|paper| both.map(|(symbols, system)| (paper, symbols, system))).collect()
}

/// On every demo, paper and symbols: texts inside the frame, none over another and no line through one.
#[test]
fn no_text_of_a_drawing_stands_over_another_or_outside_the_frame() {
    for name in DEMOS {
        let model = model(name);
        for kind in every_kind() {
            let frame = match kind.0 {
                Paper::A4 => [20.0, 10.0, 287.0, 200.0],
                Paper::A3 => [20.0, 10.0, 410.0, 287.0],
                Paper::Letter => [20.0, 10.0, 269.4, 205.9],
            };
            let drawing = drawing(&model, kind);
            assert_eq!(drawing.crossed_texts(), [""; 0], "{name} {kind:?}");
            for sheet in drawing.text_boxes() {
                for (i, (text, own)) in sheet.iter().enumerate() {
                    let inside =
                        own[0] >= frame[0] && own[1] >= frame[1] && own[2] <= frame[2] && own[3] <= frame[3];
                    assert!(inside, "{name} {kind:?}: {text} at {own:?}");
                    for (other, box_of) in &sheet[i + 1..] {
                        let apart = own[2] <= box_of[0]
                            || box_of[2] <= own[0]
                            || own[3] <= box_of[1]
                            || box_of[3] <= own[1];
                        assert!(apart, "{name} {kind:?}: {text} {own:?} over {other} {box_of:?}");
                    }
                }
            }
        }
    }
}

/// Code and value pairs of a DXF file, an entity each.
fn entities(dxf: &str) -> Vec<Vec<(u16, String)>> {
    let lines: Vec<&str> = dxf.lines().collect();
    let pairs = lines.chunks(2).map(|pair| (pair[0].trim().parse().unwrap(), pair[1].to_owned()));
    let mut entities: Vec<Vec<(u16, String)>> = Vec::new();
    for (code, value) in pairs {
        match (code, entities.last_mut()) {
            (0, _) | (_, None) => entities.push(vec![(code, value)]),
            (_, Some(last)) => last.push((code, value)),
        }
    }
    entities
}

/// Figures of dimensions with the length of the line right before each, at full size, mm.
fn dimensions(dxf: &str) -> Vec<(String, f64)> {
    let (mut line, mut found) = (None, Vec::new());
    for entity in entities(dxf) {
        let value = |code: u16| entity.iter().find(|own| own.0 == code).map(|own| own.1.clone());
        if value(8).as_deref() != Some("DIMENSION") {
            continue;
        }
        let number = |code: u16| value(code).unwrap().parse::<f64>().unwrap();
        match value(0).as_deref() {
            Some("LINE") => line = Some((number(11) - number(10)).abs()),
            Some("TEXT") => found.extend(line.map(|length| (value(1).unwrap(), length))),
            _ => {}
        }
    }
    found
}

#[test]
fn dimensions_read_back_from_the_dxf_file_are_those_of_the_model() {
    for name in DEMOS {
        let model = model(name);
        let own = drawing(&model, (Paper::A4, WeldSymbols::Iso, UnitSystem::Si));
        let found = dimensions(&own.dxf());
        for (text, length) in found.iter().filter(|(text, _)| !text.starts_with("%%c")) {
            // A section of a housing is drawn larger than the elevation.
            let ratios = [1.0, f64::from(own.scale) / f64::from(own.section_scale)];
            let figure: f64 = text.parse().unwrap();
            assert!(
                ratios.iter().any(|ratio| (length / ratio - figure).abs() <= 0.0501),
                "{name}: {text} over {length}"
            );
        }
        let axle = &model.axle;
        let seat = axle.seats.left;
        let steps = axle.body.pieces().iter().filter(|piece| piece.from >= axle.body.tube_end());
        let mut lengths: Vec<f64> = steps.map(|piece| piece.to - piece.from).collect();
        lengths.extend([2.0 * axle.body.spindle_end(), seat.at, seat.width]);
        for stiffener in &axle.stiffeners {
            lengths.extend([stiffener.length(), stiffener.to, stiffener.end.length()]);
            if let [first, second, ..] = stiffener.weld_runs()[..] {
                lengths.extend([first[1] - first[0], second[0] - first[1], second[0] - first[0]]);
            }
        }
        for length in lengths {
            let shown = |(text, line): &(String, f64)| {
                text.parse::<f64>().is_ok_and(|own| (own - 1e3 * length).abs() <= 0.0501)
                    && (line - 1e3 * length).abs() < 1e-3
            };
            assert!(found.iter().any(shown), "{name}: {length} m is on no figure of {found:?}");
        }
    }
}

/// ISO 2553 and AWS A2.4 (from memory): number, length and gap against length and pitch.
#[test]
fn stitches_are_written_as_each_standard_writes_them() {
    let model = model("trailer-152-thin-dual-angle-stitched");
    let texts = |symbols| {
        let own = drawing(&model, (Paper::A4, symbols, UnitSystem::Si));
        own.text_boxes().iter().flatten().map(|(text, _)| text.clone()).collect::<Vec<_>>()
    };
    // 830 mm with stitches of 60 at 200 at most: four gaps of 770/4, so 192.5 from middle to middle, 132.5 clear.
    let (iso, aws) = (texts(WeldSymbols::Iso), texts(WeldSymbols::Aws));
    assert!(iso.contains(&"5 \u{d7} 60 (132.5)".to_owned()) && iso.contains(&"z6".to_owned()), "{iso:?}");
    assert!(aws.contains(&"60-192.5".to_owned()) && !aws.contains(&"z6".to_owned()), "{aws:?}");
}

#[test]
fn questions_are_those_that_the_proposal_raises() {
    let subjects = |name: &str| {
        let own = drawing(&model(name), (Paper::A4, WeldSymbols::Iso, UnitSystem::Si));
        own.questions.iter().map(|own| (own.subject, own.text.clone())).collect::<Vec<_>>()
    };
    let has = |all: &[(&str, String)], subject: &str, words: &str| {
        all.iter().any(|own| own.0 == subject && own.1.contains(words))
    };
    let angle = subjects("trailer-152-thin-dual-angle");
    assert!(has(&angle, "Steel and weldability", "no composition"), "{angle:?}");
    // The tube ends at 840 mm, the angle at 415; the seat starts at 440; two welds of 830 mm.
    assert!(has(&angle, "Heat-treated zones", "425 mm"), "{angle:?}");
    assert!(has(&angle, "Places for welds", "25 mm"), "{angle:?}");
    assert!(has(&angle, "Residual stress", "1660 mm"), "{angle:?}");
    assert!(!has(&angle, "Wheel outset", "") && !has(&angle, "Stitches", "") && !has(&angle, "Sleeve", ""));
    let part = subjects("trailer-152-thin-dual-angle-part");
    assert!(has(&part, "Steel and weldability", "45 \u{b0}C"), "{part:?}");
    assert!(has(&subjects("trailer-152-thin-dual-angle-stitched"), "Stitches", "60 mm"));
    assert!(has(&subjects("trailer-152-thin-dual-sleeve"), "Sleeve", "152.4 mm"));
    let outset = subjects("trailer-127-thick-wide-base-outset");
    assert!(
        has(&outset, "Wheel outset", "51 mm") && !has(&outset, "Steel and weldability", ""),
        "{outset:?}"
    );
}

#[test]
fn a_drawing_is_written_in_the_kind_that_its_name_says() {
    let folder = tempfile::tempdir().unwrap();
    let angle = demo("trailer-152-thin-dual-angle");
    for (name, start) in [("a.dxf", &b"999\nMillimeters"[..]), ("a.pdf", b"%PDF-1."), ("a.svg", b"<svg")] {
        let run = axlebow_in(folder.path(), &["drawing", &angle, "-o", name]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert!(std::fs::read(folder.path().join(name)).unwrap().starts_with(start), "{name}");
    }
    let svg = std::fs::read_to_string(folder.path().join("a.svg")).unwrap();
    assert!(svg.contains(r#"width="297mm""#));
    let wrong = axlebow(&["drawing", &angle, "-o", "a.dwg"]);
    assert!(wrong.code == 2 && wrong.err.contains(".dxf, .svg, .pdf, .png"), "{}", wrong.err);
}
