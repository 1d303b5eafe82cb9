//! A model file from eight answers.

use axlebow_model::{GuidedQuestion, GuidedStart, MODEL, Model, read_bytes};

use GuidedQuestion::{AxleKind, AxleLoad, OutsideSize, SpringSeats, TireMiddles, Tires, Wall, WheelOffset};

fn answered(answers: &[(GuidedQuestion, &str)]) -> GuidedStart {
    let mut guided = GuidedStart::default();
    for (question, text) in answers {
        guided.answer(*question, text).unwrap_or_else(|refusal| panic!("{text}: {refusal}"));
    }
    guided
}

fn number(file: &str, path: &str) -> f64 {
    read_bytes(file.as_bytes(), "own", &MODEL)
        .unwrap_or_else(|p| panic!("{}", p.render()))
        .number(path)
        .unwrap()
}

fn model(file: &str) -> Model {
    Model::from_bytes(file.as_bytes(), "own").unwrap_or_else(|p| panic!("{}", p.render()))
}

/// Worked out by hand: half of 80 in is 1016 mm, less 2 in of outset 965.2 mm, which is 18.8 mm inboard of the typical face;
/// bearings follow it and the tube loses twice as much.
#[test]
fn answers_stand_in_the_file_and_the_rest_stays_typical() {
    let guided = answered(&[
        (AxleKind, "trailer"),
        (Tires, "445/50R22.5"),
        (WheelOffset, "2 in"),
        (TireMiddles, "80\""),
        (SpringSeats, "3' 2\""),
        (OutsideSize, "5-1/2 in"),
        (AxleLoad, "9 t"),
    ]);
    assert!(guided.in_us_units() && guided.typical_axle().name == "trailer-5-3-4-inch-wide-base-outset");
    let file = guided.file("own").unwrap();
    for (path, millimeters) in [
        ("wheel_end.mounting_face_at", 965.2),
        ("wheel_end.inner_bearing_at", 957.0 - 18.8),
        ("wheel_end.outer_bearing_at", 1067.0 - 18.8),
        ("tube.length", 1680.0 - 37.6),
        ("tube.od", 139.7),
        ("tube.wall", 11.1125),
        ("seat.at", 482.6),
        ("wheel.offset", 50.8),
        ("wheel.tire_width", 445.0),
    ] {
        assert!((1e3 * number(&file, path) - millimeters).abs() < 0.02, "{path}\n{file}");
    }
    assert!((number(&file, "loads.rated_load") - 9000.0 * 9.80665).abs() < 1e-6);
    let typical = model(&file).typical;
    let has = |key: &str| typical.iter().any(|own| own == key);
    assert!(
        has("tube.wall") && has("tube.length") && has("spindle") && has("wheel.loaded_radius"),
        "{typical:?}"
    );
    for measured in
        ["tube", "tube.od", "wheel.offset", "seat.at", "loads.rated_load", "wheel_end.mounting_face_at"]
    {
        assert!(!has(measured), "{measured} of {typical:?}");
    }
}

/// 0.5 x 22.5 in + 0.75 x 295 mm less a quarter of 20000 lb on 875 N/mm: 507.0 - 25.4 mm.
#[test]
fn a_size_on_the_sidewall_gives_width_and_loaded_radius() {
    let file = answered(&[(Tires, "295/75R22.5")]).file("own").unwrap();
    assert!((number(&file, "wheel.tire_width") - 0.295).abs() < 1e-9);
    assert!((number(&file, "wheel.loaded_radius") - (0.507 - 0.025_418)).abs() < 1e-5, "{file}");
    let single = model(&answered(&[(Tires, "single")]).file("own").unwrap());
    assert_eq!(single.axle.wheels.left.tires().count(), 1);
    assert!((single.axle.wheels.left.mass() - 95.0).abs() < 1e-9);
}

#[test]
fn a_housing_takes_height_and_width_of_its_arm() {
    let guided = answered(&[
        (AxleKind, "drive"),
        (OutsideSize, "5-1/8 in x 110 mm"),
        (Wall, "0.31\""),
        (TireMiddles, "1840 mm"),
    ]);
    let file = guided.file("own").unwrap();
    for (path, value) in [
        ("housing.profile[2].height", 0.130_175),
        ("housing.profile[3].height", 0.130_175),
        ("housing.profile[3].width", 0.110),
        ("housing.profile[3].at", 0.760),
        ("housing.wall", 0.007_874),
    ] {
        assert!((number(&file, path) - value).abs() < 1e-6, "{path}\n{file}");
    }
    let typical = model(&file).typical;
    assert!(
        typical.contains(&"housing.profile[0]".to_owned()) && !typical.contains(&"housing.wall".to_owned())
    );
}

#[test]
fn no_answer_at_all_is_the_typical_axle() {
    let file = GuidedStart::default().file("own").unwrap();
    let typical = axlebow_model::TYPICAL[0];
    let typical = model(&typical.called("own"));
    let own = model(&file);
    assert_eq!((own.typical, own.hash), (typical.typical, typical.hash));
}

#[test]
fn nonsense_is_refused_and_changes_nothing() {
    let mut guided = answered(&[(Tires, "dual")]);
    let before = guided.file("own").unwrap();
    for (question, text, says) in [
        (AxleKind, "boat", "trailer or drive"),
        (Tires, "round", "295/75R22.5"),
        (WheelOffset, "2", "in"),
        (WheelOffset, "2 kg", "length"),
        (TireMiddles, "77.5 mm", "typical"),
        (SpringSeats, "90 in", "seat"),
        (OutsideSize, "127", "mm"),
        (Wall, "70 mm", "wall"),
        (AxleLoad, "20000", "lb"),
        (AxleLoad, "20000 in", "force"),
    ] {
        let refusal = guided.answer(question, text).unwrap_err();
        assert!(refusal.contains(says), "{text}: {refusal}");
    }
    assert_eq!(guided.file("own").unwrap(), before);
}

#[test]
fn every_question_has_a_typical_answer_for_every_axle() {
    for kind in ["trailer", "drive"] {
        for tires in ["dual", "wide-base", "single"] {
            let guided = answered(&[(AxleKind, kind), (Tires, tires)]);
            for question in GuidedQuestion::ALL {
                let typical = guided.typical_answer(question);
                assert!(
                    !typical.is_empty() && !typical.contains("NaN"),
                    "{kind} {tires} {question:?} {typical}"
                );
            }
            axlebow_axle::flex(&model(&guided.file("own").unwrap()).axle, &[]).unwrap();
        }
    }
}
