//! Sheets of removed tires: what is read, and what is refused where.

use std::path::Path;

use axlebow_axle::{Side, TireSlot};
use axlebow_model::{Document, MODEL, Model, ReadQuantity, ReadingSheet, RemovedRib, read_bytes};

const HEADING: &str = "wheel,tire,load,distance,rib 1,rib 2,rib 3,rib 4,rib 5,standard error,note\n";
const ROW: &str = "left,inner,rated-load,150000 km,4.1 mm,5.2 mm,5.4 mm,5.3 mm,4.9 mm,0.3 mm,\n";

fn document() -> Document {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/trailer-152-thin-dual.toml");
    read_bytes(&std::fs::read(path).unwrap(), "model", &MODEL).unwrap()
}

fn model() -> Model {
    Model::of(&document()).unwrap()
}

/// Underlined text, message and what is accepted of every problem of a sheet.
fn problems(sheet: &str) -> Vec<(String, String, String)> {
    let refused = ReadingSheet::of_removals(sheet.as_bytes(), "removals.csv", &model()).unwrap_err();
    let each = refused.iter().map(|problem| {
        let accepted = problem.accepted.clone().unwrap_or_default();
        (sheet[problem.span.clone()].to_owned(), problem.message.clone(), accepted)
    });
    each.collect()
}

/// The one problem of the row with a piece replaced.
#[track_caller]
fn check((old, new): (&str, &str), (underlined, message): (&str, &str)) -> String {
    let sheet = format!("{HEADING}{ROW}");
    assert!(sheet.contains(old), "{old}");
    let found = problems(&sheet.replacen(old, new, 1));
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!((found[0].0.as_str(), found[0].1.as_str()), (underlined, message));
    found[0].2.clone()
}

#[test]
fn each_rib_is_a_reading_of_what_it_had_left() {
    let blank = "right,outer,60 kN,90000 mi,,,,,,0.3 mm,not measured\n";
    let us = "right,outer,60 kN,90000 mi,5/32 in,7/32 in,7/32 in,7/32 in,6/32 in,0.02 in,\n";
    let text = format!("# invented\n{HEADING}{ROW}{blank}{us}");
    let sheet = ReadingSheet::of_removals(text.as_bytes(), "removals.csv", &model()).unwrap();
    assert_eq!((sheet.readings.len(), sheet.blank_lines.as_slice()), (10, &[4][..]));
    let depths = [4.1e-3, 5.2e-3, 5.4e-3, 5.3e-3, 4.9e-3];
    for (rib, (reading, depth)) in sheet.readings.iter().zip(depths).enumerate() {
        let expected = RemovedRib::of((Side::Left, TireSlot::Inner), rib, 1.5e8);
        assert_eq!(reading.quantity, ReadQuantity::TreadDepth(expected));
        assert!((reading.value - depth).abs() < 1e-12 && (reading.standard_error - 3e-4).abs() < 1e-12);
        assert_eq!((reading.load.name.as_str(), reading.line), ("rated-load", 3));
    }
    let last = &sheet.readings[9];
    assert_eq!((last.quantity.of(), last.quantity.word()), ("right outer tire, rib 5", "tread-depth"));
    assert!((last.load.actions.axle_load - 60e3).abs() < 1e-9 && last.line == 5);
    let ReadQuantity::TreadDepth(rib) = &last.quantity else { panic!("{last:?}") };
    assert!((rib.distance - 90_000.0 * 1609.344).abs() < 1e-3);
}

#[test]
fn a_removal_without_its_distance_is_refused_in_its_row() {
    let accepted = check(
        ("150000 km", ""),
        (
            &ROW.trim_end().replace("150000 km", ""),
            "the removal has no distance, without which wear has no rate",
        ),
    );
    assert_eq!(accepted, "such as `150000 km`");
    check(("150000 km", "0 km"), ("0 km", "the distance `0 km` is impossible"));
    let missing = problems(&format!("{HEADING}{ROW}").replace("distance,", "").replace("150000 km,", ""));
    assert_eq!(missing[0].1, "there is no column `distance`");
}

#[test]
fn too_few_and_unlike_ribs_are_refused() {
    let few = "wheel,tire,load,distance,rib 1,standard error\nleft,inner,rated-load,150000 km,4 mm,0.3 mm\n";
    assert_eq!(problems(few)[0].1, "one rib by itself does not say where a tire wears");
    let none = "wheel,tire,load,distance,standard error\nleft,inner,rated-load,150000 km,0.3 mm\n";
    assert_eq!(problems(none)[0].1, "there is no column `rib 1`");
    let four = format!("{HEADING}{ROW}").replace("rib 5,", "").replace("4.9 mm,", "");
    let found = &problems(&four)[0];
    assert_eq!(found.1, "the sheet has 4 ribs, the model's tread 5");
    assert_eq!(found.2, "a column for every rib, or `tread.ribs` of the model as the tire has them");
    check(
        ("5.3 mm", ""),
        (&ROW.trim_end().replace("5.3 mm", ""), "a rib is not filled in beside others of its tire"),
    );
    let gap = format!("{HEADING}{ROW}").replace("rib 3,", "").replace("5.4 mm,", "");
    assert_eq!(problems(&gap)[0].1, "there is no column `rib 3` before those after it");
}

#[test]
fn what_a_tire_cannot_have_is_refused() {
    let accepted = check(("5.2 mm", "25 mm"), ("25 mm", "the depth `25 mm` is impossible"));
    assert_eq!(accepted, "0 to 16 mm, the depth of the model's new tread (`tread.depth`)");
    check(("5.2 mm", "-1 mm"), ("-1 mm", "the depth `-1 mm` is impossible"));
    assert_eq!(check(("inner", "single"), ("single", "`single` is not known here")), "`outer`, `inner`");
    check(("rated-load", "rated"), ("rated", "the model has no load case `rated`"));
    check(("0.3 mm", "0 mm"), ("0 mm", "the standard error `0 mm` is impossible"));
    check(("note", "tyre"), ("tyre", "removals have no column `tyre`"));
    check(("rib 2", "rib 1"), ("rib 1", "there are two columns `rib 1`"));
    let short = problems(&format!("{HEADING}left,inner\n"));
    assert_eq!(short[0].1, "the row has 2 cells");
    assert_eq!(problems("")[0].1, "there are no removals");
    assert_eq!(problems(HEADING)[0].1, "no removal is filled in");
}

#[test]
fn speeds_held_that_deviate_to_a_standstill_are_refused_where_they_are_written() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/trailer-152-thin-dual.toml");
    let demo = std::fs::read_to_string(path).unwrap();
    for (running, underlined) in
        [("held_speed = \"12 km/h\"", "\"12 km/h\""), ("held_speed_deviation = \"40 km/h\"", "\"40 km/h\"")]
    {
        let text = format!("{demo}\n[running]\n{running}\n");
        let problems = Model::from_bytes(text.as_bytes(), "model").unwrap_err();
        let problem = problems.iter().next().unwrap();
        assert_eq!(&text[problem.span.clone()], underlined);
        assert!(problem.message.starts_with("speeds held about"), "{}", problem.message);
        assert!(problem.accepted.as_ref().unwrap().contains("a third of `held_speed`"));
    }
}

/// A model that has no `[running]` gets its fitted keys before all tables, and is a model again.
#[test]
fn keys_of_a_table_that_the_file_leaves_out_are_written_before_all_others() {
    let values = [("running.severity".to_owned(), 1.25), ("running.abrasion".to_owned(), 4.5e-11)];
    let text = document().rewritten(&values).unwrap();
    assert!(
        text.starts_with("running.") && text.contains("running.abrasion = \"0.045 mm3/(N m)\""),
        "{text}"
    );
    let again = Model::from_bytes(text.as_bytes(), "fitted").unwrap();
    assert!((again.axle.running.abrasion.unwrap() - 4.5e-11).abs() < 1e-20);
    let forces = |model: &Model| model.axle.running.duty.parts()[0].side;
    assert!((forces(&again) / forces(&model()) - 1.25).abs() < 1e-12);
    assert_eq!(model().axle.running.abrasion, None);
}
