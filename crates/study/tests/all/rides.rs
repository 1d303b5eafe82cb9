//! Studies that ride: sweeps over keys of the road, and variants side by side.

use std::path::{Path, PathBuf};

use axlebow_axle::{Input, ResponseOptions, Ride, RideBasis, RidingAxle, Side, response, ride};
use axlebow_model::{Model, Problems, RoadFile};
use axlebow_study::{DrawnRide, DrawnRides, QUANTITIES, Quantity, Study, StudyKind, StudyOutcome};
use rayon::ThreadPoolBuilder;

const MAP: &str = r#"name = "invented"
kind = "sweep"
model = "../models/trailer-127-thick-dual.toml"
case = "rated-load"
show = ["camber-peak-to-peak", "bow"]
[[ride]]
road = "../models/roads/haversine-bump.toml"
change = { run_out = "0.2 s" }
[[vary]]
path = "road.speed"
values = ["40 km/h", "90 km/h"]
[[vary]]
path = "road.length"
values = ["0.6 m", "1 m"]
"#;

const BESIDE: &str = r#"name = "invented"
kind = "side-by-side"
case = "rated-load"
baseline = "thin"
[[variant]]
name = "thick"
model = "../models/trailer-127-thick-dual.toml"
[[variant]]
name = "thin"
model = "../models/trailer-152-thin-dual.toml"
[[variant]]
name = "thinner"
model = "../models/trailer-152-thin-dual.toml"
change = { "tube.wall" = "7 mm" }
[[ride]]
road = "../models/roads/haversine-bump.toml"
speed = "50 km/h"
change = { run_out = "0.2 s" }
[[ride]]
name = "hole, unladen"
road = "../models/roads/pothole.toml"
load = "unladen"
change = { run_out = "0.2 s" }
"#;

fn studies() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies")
}

fn read(text: &str) -> Result<Study, Problems> {
    Study::from_bytes(text.as_bytes(), "study.toml", &studies())
}

fn run(text: &str) -> StudyOutcome {
    read(text).unwrap_or_else(|problems| panic!("{problems}")).run(&|_, _| ())
}

/// Underlined text and message of the one problem of a study with a piece replaced.
#[track_caller]
fn check(text: &str, (old, new): (&str, &str), (underlined, message): (&str, &str)) {
    assert!(text.contains(old), "{old}");
    let text = text.replacen(old, new, 1);
    let problems = read(&text).expect_err("refused");
    let found: Vec<_> =
        problems.iter().map(|problem| (&text[problem.span.clone()], problem.message.as_str())).collect();
    assert_eq!(found, [(underlined, message)], "{problems}");
}

#[test]
fn a_design_that_rides_says_what_that_ride_says() {
    let outcome = run(MAP);
    assert_eq!(outcome.rows.len(), 4);
    let file = |name: &str| std::fs::read_to_string(studies().join("../models").join(name)).unwrap();
    let model = Model::from_bytes(file("trailer-127-thick-dual.toml").as_bytes(), "model.toml").unwrap();
    let road = file("roads/haversine-bump.toml").replace("\"1 m\"", "\"0.6 m\"") + "run_out = \"0.2 s\"\n";
    let road = RoadFile::from_bytes(road.as_bytes(), "road.toml", std::path::Path::new("")).unwrap();
    let direct = ride(&model.axle, &road.ride(model.axle.loading.rated_load, 25.0)).unwrap();
    assert_eq!(outcome.rows[2].values, [25.0, 0.6]);
    let value = |name: &str| outcome.rows[2].value(outcome.riding(0, name).unwrap());
    let [left, right] = [&direct.wheels.left, &direct.wheels.right];
    assert_eq!(value("camber-rms"), Some(left.camber_rms.max(right.camber_rms)));
    assert_eq!(value("camber-peak"), Some(left.camber_peak.min(right.camber_peak)), "both lean inward");
    assert_eq!(value("dynamic-load-factor"), Some(left.dynamic_load_factor.max(right.dynamic_load_factor)));
    // Both wheels lean alike but for rounding; either may be the one that leans more.
    assert!([left, right].iter().any(|wheel| value("camber-frequency") == wheel.dominant_frequency));
}

#[test]
fn variants_of_several_models_stand_side_by_side() {
    let outcome = run(BESIDE);
    assert_eq!(outcome.kind, StudyKind::SideBySide { baseline: 1 });
    assert_eq!(outcome.variants, ["thick", "thin", "thinner"]);
    assert_eq!(
        outcome.rides.iter().map(|ride| ride.name.as_str()).collect::<Vec<_>>(),
        ["haversine-bump", "hole, unladen"]
    );
    let mass = outcome.standing("axle-mass").unwrap();
    assert!(outcome.rows.windows(2).all(|pair| pair[1].value(mass) < pair[0].value(mass)));
    assert_eq!(outcome.rides[0].speed, Some(50.0 / 3.6));
    for row in &outcome.rows {
        let [bump, hole] = [0, 1].map(|i| row.value(outcome.riding(i, "camber-peak").unwrap()).unwrap());
        assert!(hole.abs() < bump.abs(), "unladen: {hole} against {bump}");
    }
}

#[test]
fn what_is_shown_is_what_the_file_says_ride_by_ride() {
    let names = |outcome: &StudyOutcome| -> Vec<(String, Option<usize>)> {
        outcome.shown.iter().map(|measure| (measure.name.clone(), measure.ride)).collect()
    };
    let own = |name: &str, ride| (name.to_owned(), ride);
    assert_eq!(names(&run(MAP)), [own("camber-peak-to-peak", Some(0)), own("bow", None)]);
    let beside = run(&BESIDE.replace("baseline", "show = [\"camber-rms\", \"bow\"]\nbaseline"));
    assert_eq!(names(&beside), [own("camber-rms", Some(0)), own("camber-rms", Some(1)), own("bow", None)]);
    let of_rides = QUANTITIES.iter().filter(|quantity| quantity.is_of_ride()).count();
    let is_extra = |own: &&Quantity| !own.cost.is_always_paid();
    let not_asked = QUANTITIES.iter().filter(is_extra).count();
    assert_eq!(beside.measures.len(), QUANTITIES.len() + of_rides - not_asked, "two rides");
}

#[test]
fn every_quantity_has_a_name_and_a_key_of_its_own() {
    for (i, quantity) in QUANTITIES.iter().enumerate() {
        assert_eq!(Quantity::named(&quantity.name), Ok(quantity));
        assert!(QUANTITIES[..i].iter().all(|other| other.key() != quantity.key()), "{}", quantity.name);
    }
    assert_eq!(Quantity::named("camber-rms").unwrap().key(), "camber_rms_rad");
    assert_eq!(Quantity::named("cups-per-turn").unwrap().key(), "cups_per_turn");
    assert_eq!(Quantity::named("camber-rmz"), Err(Some("camber-rms".to_owned())));
}

#[test]
fn a_ride_that_fails_is_a_row_with_its_reason() {
    // 2 kN do not reach the weight of what is between road and suspension.
    let change = "[[variant]]\nname = \"full\"\n[[variant]]\nname = \"empty\"\n\
                  change = { \"loads.unladen_load\" = \"2 kN\" }\n[[ride]]\nload = \"unladen\"";
    let outcome = run(&MAP.replace("[[ride]]", change));
    let reasons: Vec<_> = outcome.rows.iter().map(|row| row.result.as_ref().err()).collect();
    assert!(reasons[..4].iter().all(Option::is_none), "{reasons:?}");
    assert!(
        reasons[4..].iter().all(|reason| reason.is_some_and(|text| text.contains("tires weigh"))),
        "{reasons:?}"
    );
}

#[test]
fn any_number_of_threads_says_the_same_of_rides() {
    let on = |threads| {
        let pool = ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        format!("{:?}", pool.install(|| run(MAP)))
    };
    assert!(on(1) == on(2), "one thread and two disagree");
}

#[test]
fn a_coarse_study_keeps_the_ends() {
    let study =
        read(&MAP.replace("values = [\"0.6 m\", \"1 m\"]", "from = \"0.5 m\"\nto = \"2 m\"\npoints = 31"));
    let study = study.unwrap().coarse(3);
    assert_eq!(study.varied[1].values, [0.5, 1.25, 2.0]);
    assert_eq!(study.count(), 6);
}

#[test]
fn misfits_of_rides_and_variants_are_reported() {
    let no_key = "`lenth` leads nowhere: road file has no key `lenth`";
    check(MAP, ("\"road.length\"", "\"road.lenth\""), ("\"road.lenth\"", no_key));
    check(MAP, ("\"1 m\"", "\"1 kg\""), ("\"1 kg\"", "`length`: `kg` measures mass; length is wanted"));
    check(MAP, ("\"bow\"", "\"bowe\""), ("\"bowe\"", "no result is named \"bowe\""));
    let twice = "\"road.speed\" is changed here and varied too";
    check(MAP, ("change =", "speed = \"9 km/h\"\nchange ="), ("\"9 km/h\"", twice));
    check(MAP, ("\"0.2 s\"", "\"2 m\""), ("\"2 m\"", "`run_out`: `m` measures length; time is wanted"));
    check(BESIDE, ("baseline = \"thin\"", "baseline = \"thn\""), ("\"thn\"", "no variant is named \"thn\""));
    check(
        BESIDE,
        ("name = \"hole, unladen\"", "name = \"haversine-bump\""),
        ("[[ride]]", "two rides are named \"haversine-bump\""),
    );
    let start = MAP.find("[[ride]]").unwrap();
    let rideless =
        format!("{}{}", &MAP[..start], &MAP[MAP.find("[[vary]]").unwrap()..]).replace("road.", "loads.");
    let problems = read(&rideless).unwrap_err().render();
    assert!(
        problems.contains("\"camber-peak-to-peak\" is a result of a ride, and the study has none"),
        "{problems}"
    );
    let problems = read(&MAP.replace("haversine-bump.toml", "haversin-bump.toml")).unwrap_err().render();
    assert!(problems.contains("`road` names") && problems.contains("did you mean"), "{problems}");
}

#[test]
fn a_kind_of_study_has_the_tables_that_it_needs() {
    let varied = BESIDE.to_owned() + "[[vary]]\npath = \"road.speed\"\nvalues = [\"9 km/h\"]\n";
    let problems = read(&varied).unwrap_err().render();
    assert!(problems.contains("nothing is varied side by side"), "{problems}");
    let problems = read(&MAP[..MAP.find("[[vary]]").unwrap()]).unwrap_err().render();
    assert!(problems.contains("a sweep varies no key"), "{problems}");
    let problems = read(&MAP.replace("case =", "baseline = \"x\"\ncase =")).unwrap_err().render();
    assert!(problems.contains("a sweep has no baseline"), "{problems}");
    let problems = read(&BESIDE.replacen("model = ", "note = ", 1)).unwrap_err().render();
    assert!(problems.contains("variant has no key `note`"), "{problems}");
    let without = BESIDE.replacen("model = \"../models/trailer-127-thick-dual.toml\"\n", "", 1);
    let problems = read(&without).unwrap_err().render();
    assert!(problems.contains("the variant \"thick\" has no model"), "{problems}");
}

/// Rides in time and answers in frequency are two ways to the same rms: the mean over draws holds it within its interval.
/// On a smooth road no tire leaves the ground, which spectra do not know.
#[test]
fn rides_over_random_roads_agree_with_the_response_within_their_interval() {
    let model = include_bytes!("../../../../models/trailer-152-thin-dual.toml");
    let axle = Model::from_bytes(model, "trailer").unwrap().axle;
    let (load, speed) = (axle.loading.rated_load, 25.0);
    let road =
        "kind = \"random-road\"\nclass = \"A\"\nlength = \"200 m\"\nrun_out = \"0 s\"\nrun_up = \"0 m\"";
    let road = RoadFile::from_bytes(road.as_bytes(), "road", Path::new("")).unwrap();
    let over = road.random_ride(speed).unwrap();
    let ask = ResponseOptions {
        axle_load: load,
        input: Input::Both,
        frequencies: [0.5, 60.0],
        points: 10,
        stations: Vec::new(),
        over,
    };
    let random = response(&axle, &ask).unwrap().random.unwrap();
    let ready = RidingAxle::of(&axle, load).unwrap();
    let rides: Vec<DrawnRide> = (0..12)
        .map(|further| {
            let drawn = road.redrawn(further).unwrap().unwrap().ride(load, speed);
            let outcome = ready.ride(&Ride { basis: RideBasis::Reduced, ..drawn }).unwrap();
            assert_eq!((outcome.contact_changes, &outcome.partial), (0, &None));
            DrawnRide::from(&outcome)
        })
        .collect();
    let draws = DrawnRides::of(&rides).unwrap();
    for side in Side::BOTH {
        let (wheel, load) = (draws.wheels.of(side), 0.5 * load);
        for (mean, rms) in [
            (wheel.dynamic_load_coefficient, random.load.of(side).rms / load),
            (wheel.camber_rms, random.camber.of(side).rms),
        ] {
            let [low, high] = mean.interval.unwrap();
            assert!((low..=high).contains(&rms), "{rms} is not in {mean:?}");
            // The interval says something: it is narrow beside the mean.
            assert!(high - low < 0.3 * mean.value, "{mean:?}");
        }
    }
}
