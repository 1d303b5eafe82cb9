//! Tables: what they say, and that they fit a terminal.

use axlebow_report::table;
use axlebow_units::UnitSystem;

use crate::made_up::{card, cornering, outcome, raised, rated, sections, stiffened};

fn widest(text: &str) -> usize {
    text.lines().map(|line| line.chars().count()).max().unwrap_or(0)
}

#[test]
fn flex_tables_fit_into_100_columns_in_both_unit_systems() {
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let text = table::flex(&outcome(vec![rated(), raised(), cornering()]), &card(system)).text();
        println!("{text}");
        assert!(widest(&text) <= 100, "{} columns", widest(&text));
        assert!(text.is_ascii(), "only plain letters");
        assert!(text.lines().all(|line| line == line.trim_end()));
    }
}

#[test]
fn flex_tables_say_camber_loads_and_what_was_assumed() {
    let text = table::flex(&outcome(vec![rated()]), &card(UnitSystem::Si)).text();
    for words in [
        "camber change, deg",
        "-0.296  -0.296",
        "vertical load, kN",
        "45.00   45.00",
        "peak bending stress",
        "104.3 MPa at y = ",
        "bow of the axle's center above the hubs  -2.714 mm",
        "tube.elastic-modulus = 206 GPa: modulus of elasticity of the tube",
        "Warning: the fiber stress under the left seat is 71 % of yield; check",
        "Demonstration data, invented.",
    ] {
        assert!(text.contains(words), "`{words}` is missing in\n{text}");
    }
}

#[test]
fn stiffeners_come_with_both_models_their_weld_force_and_the_cautions() {
    for (system, words) in [
        (
            UnitSystem::Si,
            ["top-angle: angle, toes down, 7.5 kg, from y = -350.0 to 350.0 mm", "1008", "0.0104"],
        ),
        (UnitSystem::Us, ["16.4 lb, from y = -13.78 to 13.78 in", "5756", "0.0047"]),
    ] {
        for text in [table::flex, table::flex_brief]
            .map(|table| table(&outcome(vec![stiffened()]), &card(system)).text())
        {
            println!("{text}");
            assert!(widest(&text) <= 100, "{} columns", widest(&text));
            for said in
                words.into_iter().chain(["19.9", "15.5", "is short", "written approval", "licensed engineer"])
            {
                assert!(text.contains(said), "`{said}` is missing in\n{text}");
            }
        }
    }
    assert!(!table::flex(&outcome(vec![rated()]), &card(UnitSystem::Si)).text().contains("STIFFENERS"));
}

#[test]
fn parts_of_the_camber_change_are_written_as_shares() {
    let text = table::flex(&outcome(vec![rated()]), &card(UnitSystem::Si)).text();
    let all = text.lines().find(|line| line.starts_with("all ")).unwrap();
    assert_eq!(all.matches("100.0").count(), 2, "{all}");
}

#[test]
fn section_table_gives_a_column_to_each_section() {
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let text = table::sections(&sections(), &[], &[], &card(system)).text();
        println!("{text}");
        assert!(widest(&text) <= 100);
        assert!(text.starts_with(&card(system).name));
        for words in [
            "\nSection",
            "Demonstration data, invented.",
            "left spindle",
            "box",
            "torsion constant",
            "mass per length",
        ] {
            assert!(text.contains(words), "{words}");
        }
    }
}
