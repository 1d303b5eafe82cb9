//! Answers of made-up outcomes: each number in them is that of the outcome.

use axlebow_axle::{CamberSplit, ModeMesh, ModesOutcome, Sides};
use axlebow_report::{BesideRide, answer, table};
use axlebow_units::UnitSystem;

use crate::made_up::{card, cornering, outcome, raised, rated, sections, stiffened};
use crate::{modes, response, ride};

fn degrees(angle: f64) -> String {
    let size = angle.to_degrees().abs();
    if size < 0.1 { format!("{size:.3} deg") } else { format!("{size:.2} deg") }
}

fn flex(cases: Vec<axlebow_axle::CaseOutcome>) -> Vec<String> {
    answer::flex_answer(&outcome(cases), &card(UnitSystem::Si))
}

#[test]
fn flex_says_how_far_tops_lean_and_what_makes_most_of_it() {
    let wheel = &rated().wheels.left;
    let share = 100.0 * wheel.split.bending / wheel.camber_change;
    let lean = degrees(wheel.camber_change);
    let expected = format!("Tops lean in {lean} in case rated-load, {share:.0} % of it bending of the axle.");
    let answer = flex(vec![rated()]);
    assert_eq!(answer[0], expected);
    let bow = format!("sags {:.2} mm against the hubs", -1e3 * rated().bow);
    let stress = format!("bending stress peaks at {:.0} MPa.", 1e-6 * rated().peak_stress);
    assert!(answer[1].contains(&bow) && answer[1].ends_with(&stress), "{answer:?}");
    assert!(answer[1].contains("the wheels turn 0.006 deg toward toe-in"), "{answer:?}");
    assert_eq!(
        answer[2],
        format!("Counting the manufactured setting, tops lean in {}.", degrees(wheel.camber))
    );
}

#[test]
fn flex_stands_first_on_its_pages_as_one_paragraph() {
    let all = outcome(vec![rated(), raised()]);
    for page in [table::flex(&all, &card(UnitSystem::Us)), table::flex_brief(&all, &card(UnitSystem::Us))] {
        assert_eq!(page.answer, answer::flex_answer(&all, &card(UnitSystem::Us)));
        assert!((1..=3).contains(&page.answer.len()));
        let text = page.text().replace('\n', " ");
        let (answer, table) = (page.answer.join(" "), text.find("----").unwrap());
        assert!(text.find(&answer).is_some_and(|place| place < table), "{answer}\n{text}");
    }
}

#[test]
fn flex_names_each_wheel_where_they_differ_and_the_worst_of_several_cases() {
    let case = raised();
    let answer = flex(vec![case.clone()]);
    let [left, right] = [&case.wheels.left, &case.wheels.right].map(|wheel| degrees(wheel.camber_change));
    let expected =
        format!("The left wheel's top leans in {left} and the right wheel's leans in {right} in case");
    assert!(answer[0].starts_with(&expected), "{answer:?}");
    assert!(answer[0].contains("of the left wheel's lean"), "{answer:?}");
    let answer = flex(vec![rated(), cornering(), raised()]);
    assert!(
        answer[2].starts_with("Of 3 cases left-wheel-raised is the worst: the left wheel's top leans"),
        "{answer:?}"
    );
    let answer = flex(vec![raised(), rated()]);
    assert!(
        !answer.iter().any(|sentence| sentence.contains("worst")),
        "the first case is the worst: {answer:?}"
    );
}

#[test]
fn flex_says_what_stiffeners_take_off() {
    let of = stiffened().stiffening.unwrap();
    let share = 100.0 * (1.0 - of.tied / of.without);
    let words =
        format!("Stiffeners of 7.46 kg take off {share:.0} % of the lean that the left wheel would have");
    assert!(flex(vec![stiffened()])[2].starts_with(&words));
}

#[test]
fn flex_of_nothing_says_so() {
    let mut still = rated();
    for wheel in [&mut still.wheels.left, &mut still.wheels.right] {
        (wheel.camber_change, wheel.camber, wheel.toe_change) = (0.0, 0.0, 0.0);
        wheel.split = CamberSplit::default();
    }
    (still.bow, still.peak_stress) = (0.0, 0.0);
    let answer = flex(vec![still]);
    assert_eq!(answer[0], "Neither wheel leans in case rated-load.");
    assert_eq!(answer[1], "The axle's center stays level with the hubs and bending stress peaks at 0 MPa.");
    assert!(flex(Vec::new()).is_empty());
}

#[test]
fn axles_beside_one_another_are_ranked_by_their_lean() {
    let axles = [("heavy".to_owned(), outcome(vec![rated()])), ("dual".to_owned(), outcome(vec![raised()]))];
    let answer = answer::flex_beside_answer(&axles, &card(UnitSystem::Si));
    let lean = |case: axlebow_axle::CaseOutcome| case.wheels.left.camber_change;
    let more = 100.0 * (lean(raised()) / lean(rated()) - 1.0);
    assert!(answer[0].starts_with("Of 2 axles (1), heavy, leans least"), "{answer:?}");
    assert!(answer[1].starts_with("(2), dual, leans most"), "{answer:?}");
    assert!(answer[1].ends_with(&format!("{more:.0} % more than (1).")), "{answer:?}");
    let alike = [axles[0].clone(), axles[0].clone()];
    assert!(answer::flex_beside_answer(&alike, &card(UnitSystem::Si))[0].ends_with("on every axle."));
}

#[test]
fn modes_name_the_one_that_moves_camber_most_and_doubt_an_incomplete_list() {
    let own = modes::outcome();
    let answer = answer::modes_answer(&own, &card(UnitSystem::Si));
    assert_eq!(answer[0], "The axle has 5 modes from 1.33 Hz (body bounce) to 79.7 Hz (seat rock).");
    let per_mm = own.modes[3].camber.left.to_degrees() / 1e3;
    assert!(answer[1].contains(&format!("{per_mm:.3} deg/mm")), "{answer:?}");
    assert!(answer[1].ends_with("damped by 7.6 %.") && !answer[1].contains("seat rock"), "{answer:?}");
    assert_eq!(answer.len(), 2);
    let missed = ModesOutcome { counted_below: 6, ..own.clone() };
    assert!(answer::modes_answer(&missed, &card(UnitSystem::Si))[2].contains("do not rely on this list"));
    let coarse = ModesOutcome { mesh: ModeMesh { change: 0.1, ..own.mesh }, ..own.clone() };
    assert!(answer::modes_answer(&coarse, &card(UnitSystem::Si))[2].contains("highest modes"));
    let none = ModesOutcome { modes: Vec::new(), ..own };
    assert_eq!(answer::modes_answer(&none, &card(UnitSystem::Si)), ["No mode was found."]);
}

#[test]
fn a_ride_says_the_peak_against_rest_the_load_and_the_cups() {
    let own = ride::outcome();
    let answer = answer::ride_answer(&own, BesideRide::default(), &card(UnitSystem::Si));
    let wheel = &own.wheels.left;
    let times = wheel.camber_peak / wheel.camber_at_rest;
    let peak = degrees(wheel.camber_peak);
    let expected =
        format!("tops lean in up to {peak}, {times:.2} times the lean at rest, 100 % of it bending");
    assert!(answer[0].contains(&expected), "{answer:?}");
    assert_eq!(
        answer[1],
        "Wheel load peaks at 2.21 times the load at rest, and a tire is off the road for 123 ms."
    );
    assert!(answer[2].contains("at 38.5 Hz, which would print 5.9 cups per turn"), "{answer:?}");
}

#[test]
fn a_partial_ride_says_so_first() {
    let mut own = ride::outcome();
    own.partial = Some("it stopped".to_owned());
    own.wheels.right.camber_peak = 0.02;
    own.wheels.right.dynamic_load_factor = 3.0;
    let answer = answer::ride_answer(&own, BesideRide::default(), &card(UnitSystem::Si));
    assert!(answer[0].starts_with("The ride ended early"), "{answer:?}");
    assert!(answer[1].contains("the right wheel's top leans out up to 1.15 deg, "), "{answer:?}");
    assert!(!answer[1].contains("at rest"), "the other way than at rest: {answer:?}");
    assert!(answer[2].starts_with("The right wheel's load peaks at 3.00 times"), "{answer:?}");
}

#[test]
fn a_response_names_the_resonance_of_camber_and_what_a_road_does() {
    let own = response::outcome(0.5);
    let answer = answer::response_answer(&own, &card(UnitSystem::Si));
    let gain = (0.3 * 6.7_f64).to_degrees() / 1e3;
    let expected = format!(
        "camber of the left wheel answers most at 40.0 Hz, nearest to the mode vertical bow at 40.8 Hz: {gain:.3} deg/mm of road."
    );
    assert!(answer[0].ends_with(&expected), "{answer:?}");
    let varies = format!(
        "camber varies by {:.3} deg rms and wheel load by 5.00 kN rms, 11 % of",
        2e-3_f64.to_degrees()
    );
    assert!(answer[1].contains(&varies), "{answer:?}");
    assert!(answer[2].starts_with("The strongest frequency of camber, 12.9 Hz,"), "{answer:?}");
    let mut quiet = own;
    (quiet.random, quiet.camber.left.resonances, quiet.camber.right.resonances) = (None, vec![], vec![]);
    let answer = answer::response_answer(&quiet, &card(UnitSystem::Si));
    assert_eq!(answer.len(), 1);
    assert!(answer[0].ends_with("camber has no resonance from 0.500 to 60.0 Hz."), "{answer:?}");
}

#[test]
fn sections_name_the_one_that_resists_bending_least() {
    let all = sections();
    let answer = answer::section_answer(&all, &[], &card(UnitSystem::Si));
    assert!(
        answer[0].starts_with(
            "Of 3 sections the one that resists vertical bending least is the left spindle at y = 800.0 mm:"
        ),
        "{answer:?}"
    );
    assert!(answer::section_answer(&[], &[], &card(UnitSystem::Si)).is_empty());
}

#[test]
fn tops_of_a_tilted_axle_lean_opposite_ways() {
    let mut tilted = rated();
    tilted.wheels = Sides { left: tilted.wheels.left.clone(), right: tilted.wheels.right.clone() };
    tilted.wheels.right.camber_change *= -1.0;
    let lean = degrees(tilted.wheels.left.camber_change);
    let words =
        format!("The left wheel's top leans in {lean} and the right wheel's leans out {lean} in case");
    assert!(flex(vec![tilted])[0].starts_with(&words));
}
