//! Duty files.

use std::path::Path;

use axlebow_model::{DutyFile, Model};

const DUTY: &str = "name = \"test\"
distance_per_year = \"100000 km\"
[[road]]
class = \"B\"
share = 0.75
speed = \"80 km/h\"
[[road]]
class = \"C\"
share = 0.25
speed = \"50 km/h\"
load = \"unladen\"
[[bump]]
height = \"30 mm\"
length = \"0.5 m\"
per_km = 0.2
speed = \"60 km/h\"
[[event]]
kind = \"turn-right\"
force_ratio = 0.2
per_km = 0.5
length = \"40 m\"
";

fn read(text: &str) -> Result<DutyFile, String> {
    DutyFile::from_bytes(text.as_bytes(), "duty.toml").map_err(|problems| problems.render())
}

fn refused(old: &str, new: &str) -> String {
    assert!(DUTY.contains(old), "{old}");
    read(&DUTY.replace(old, new)).map(|_| ()).unwrap_err()
}

fn model() -> Model {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/trailer-127-thick-dual.toml");
    Model::from_bytes(&std::fs::read(path).unwrap(), "model").unwrap_or_else(|p| panic!("{}", p.render()))
}

#[test]
fn a_duty_is_what_its_file_says() {
    let duty = read(DUTY).unwrap().duty(&model().axle).unwrap();
    assert_eq!((duty.distance, duty.loadings), (1e8, 0.0));
    let [first, second] = &duty.roads[..] else { panic!("two roads") };
    assert_eq!((first.share, second.share), (0.75, 0.25));
    assert_eq!((first.ride.axle_load, second.ride.axle_load), (89e3, 27e3));
    assert!((first.ride.speed - 80.0 / 3.6).abs() < 1e-12 && first.ride.repeats);
    assert!((first.ride.to - first.ride.from - 1000.0).abs() < 1e-9);
    assert_ne!(first.ride.road, second.ride.road);
    let bump = &duty.bumps[0];
    assert!((bump.per_distance - 2e-4).abs() < 1e-15 && !bump.ride.repeats);
    let event = &duty.events[0];
    assert_eq!((event.actions.side_force, event.length), (-0.2 * 89e3, 40.0));
}

#[test]
fn shares_that_do_not_sum_to_one_are_refused() {
    let text = refused("share = 0.25", "share = 0.3");
    assert!(text.contains("sum to 1.0500") && text.contains("shares that sum to 1"), "{text}");
}

#[test]
fn a_class_that_does_not_exist_is_refused() {
    let text = refused("class = \"C\"", "class = \"K\"");
    assert!(text.contains('K') && text.contains("`H`"), "{text}");
}

#[test]
fn events_that_last_longer_than_the_road_and_bumps_of_no_height_are_refused() {
    let text = refused("per_km = 0.5\nlength = \"40 m\"", "per_km = 30\nlength = \"40 m\"");
    assert!(text.contains("1.20 times as long as the road"), "{text}");
    assert!(refused("height = \"30 mm\"", "height = \"0 mm\"").contains("no height"));
}

#[test]
fn a_distance_without_unit_and_a_missing_road_are_refused() {
    assert!(refused("\"100000 km\"", "100000").contains("distance_per_year"));
    assert!(read("name = \"x\"\ndistance_per_year = \"1000 km\"\n").is_err());
}

#[test]
fn the_demo_duties_can_be_driven() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/duties");
    let mut count = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let text = std::fs::read_to_string(entry.unwrap().path()).unwrap();
        let file = read(&text).unwrap_or_else(|problems| panic!("{problems}"));
        assert!(file.invented);
        file.duty(&model().axle).unwrap();
        count += 1;
    }
    assert_eq!(count, 2);
}
