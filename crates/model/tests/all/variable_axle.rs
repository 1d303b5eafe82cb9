//! An axle whose numbers are set one after the other is the one that a file with these numbers describes.

use std::path::Path;

use axlebow_axle::Axle;
use axlebow_model::{Document, MODEL, Model, Problems, VariableAxle, changes_line, read_bytes};
use proptest::prelude::*;

/// Keys of each part of an axle, with the ends of the values that are tried: some that no axle can have.
const KEYS: [(&str, f64, f64); 14] = [
    ("tube.od", 0.02, 0.2),
    ("tube.wall", -0.001, 0.07),
    ("tube.length", 1.5, 1.75),
    ("material.poisson_ratio", 0.2, 0.6),
    ("material.elastic_modulus", 6e10, 2.1e11),
    ("spindle.step[0].od", 0.05, 0.1),
    ("wheel_end[0].endplay", 0.0, 1e-4),
    ("wheel_end[0].outer_bearing_at", 0.88, 1.05),
    ("wheel[0].dual_spacing", 0.2, 0.4),
    ("wheel[0].loaded_radius", 0.4, 0.6),
    ("seat[0].at", 0.0, 0.9),
    ("seat[0].composite_fraction", 0.0, 1.0),
    ("loads.rated_load", 1e4, 2e5),
    ("loads.raise", 0.0, 0.1),
];

fn document(name: &str) -> Document {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models").join(name);
    read_bytes(&std::fs::read(file).unwrap(), name, &MODEL).unwrap_or_else(|p| panic!("{}", p.render()))
}

fn words(problems: &Problems) -> String {
    problems.iter().map(|problem| problem.message.as_str()).collect::<Vec<_>>().join("; ")
}

/// The whole build, by way of the text that a file would have.
fn whole(document: &Document, case: &str) -> Result<String, String> {
    let model = Model::of(document).map_err(|problems| words(&problems))?;
    let case = model.cases.iter().find(|own| own.name == case).unwrap();
    Ok(format!("{:?} {case:?}", model.axle))
}

/// What stays where the line of an axle does.
fn line(axle: &Axle) -> String {
    let places = [&axle.wheel_ends.left, &axle.wheel_ends.right]
        .map(|end| (end.inner_bearing, end.outer_bearing, end.mounting_face, end.endplay));
    let Axle { body, seats, stiffeners, stations, fixed_masses, .. } = axle;
    format!("{places:?} {body:?} {seats:?} {stiffeners:?} {stations:?} {fixed_masses:?}")
}

fn compare(name: &str, case: &str, settings: &[(usize, f64)]) {
    let mut whole_way = document(name);
    for (path, ..) in KEYS {
        let own = whole_way.number(path).unwrap();
        whole_way.set_number(path, own).unwrap();
    }
    let mut variable = VariableAxle::of(&whole_way, &KEYS.map(|key| key.0), case).unwrap();
    let mut last_line = None;
    for (key, share) in settings {
        let (path, from, to) = KEYS[*key];
        let value = from + share * (to - from);
        let refused = whole_way.set_number(path, value).map_err(|refusal| refusal.to_string());
        assert_eq!(
            variable.set(*key, value).map_err(|refusal| refusal.to_string()),
            refused,
            "{path} {value}"
        );
        let keeps_line = variable.keeps_line();
        let built = variable.built().map_err(|problems| words(&problems));
        let new_line = built.as_ref().ok().map(|(axle, _)| line(axle));
        assert!(!keeps_line || new_line.is_none() || new_line == last_line, "{path} {value}");
        last_line = new_line.or(last_line);
        let built = built.map(|(axle, case)| format!("{axle:?} {case:?}"));
        assert_eq!(built, whole(&whole_way, case), "{path} {value}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn numbers_set_one_after_the_other_build_what_a_file_builds(
        settings in proptest::collection::vec((0..KEYS.len(), 0.0..1.0_f64), 1..24),
        case in prop::sample::select(vec!["rated-load", "one-wheel-raised", "braking-in-a-bend"]),
    ) {
        compare("trailer-127-thick-dual.toml", case, &settings);
    }

    #[test]
    fn the_same_holds_under_stiffeners(
        settings in proptest::collection::vec((0..KEYS.len(), 0.0..1.0_f64), 1..6),
    ) {
        compare("trailer-152-thin-dual-angle.toml", "rated-load", &settings);
    }
}

#[test]
fn loads_and_wheels_leave_the_line_as_it_is() {
    let keeps = |path: &&str| !changes_line(path);
    let kept: Vec<&str> = KEYS.iter().map(|key| key.0).filter(keeps).collect();
    let wanted = ["wheel[0].dual_spacing", "wheel[0].loaded_radius", "loads.rated_load", "loads.raise"];
    assert_eq!(kept, wanted);
    assert!(changes_line("running.skew"));
}

#[test]
fn a_number_that_is_not_there_has_no_place() {
    let refusal = VariableAxle::of(&document("trailer-127-thick-dual.toml"), &["tube.girth"], "rated-load");
    assert!(refusal.unwrap_err().to_string().contains("girth"));
}
