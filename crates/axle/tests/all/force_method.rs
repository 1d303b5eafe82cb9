//! The short way of studies gives the numbers of the finite elements.

use crate::example::{self, bar, steel, trailing_arm};
use axlebow_axle::{
    Axle, BearingStiffness, Body, FixedMass, Ground, HousingPoint, LoadCase, Seat, Side, Sides, Spindle,
    SpindleStep, StaticDesign, StaticReadings, StaticSolver, TireLayout, UserStation, Wheel, WheelEnd,
    WheelReadings, standard_cases,
};
use axlebow_sections::RectangularTube;
use proptest::prelude::*;

/// Share of the largest number of its kind by which two ways may differ by rounding: the elements' equations lose five
/// to six digits between the stiffness of a bearing and that of a seat. The worst of 40,000 axles drawn was 2.2e-10.
const ROUNDING: f64 = 1e-9;

fn close(one: f64, other: f64, scale: f64) -> bool {
    (one - other).abs() <= ROUNDING * scale
}

/// The largest difference of two answers, each number against the largest of its kind.
fn assert_alike(axle: &Axle, case: &LoadCase) {
    let short = StaticReadings::of(axle, case).map_err(|error| error.to_string());
    let whole = StaticDesign::of(axle).and_then(|design| design.case(case));
    let whole = whole.map(|case| StaticReadings::from(&case)).map_err(|error| error.to_string());
    let (short, whole) = match (short, whole) {
        (Ok(short), Ok(whole)) => (short, whole),
        (short, whole) => return assert_eq!(short, whole, "{}", case.name),
    };
    assert!(close(short.peak_stress, whole.peak_stress, whole.peak_stress.abs()), "{short:?} {whole:?}");
    assert!((short.peak_stress_y - whole.peak_stress_y).abs() < 1e-9, "{short:?} {whole:?}");
    assert!(close(short.bow, whole.bow, whole.bow.abs().max(1e-4)), "{short:?} {whole:?}");
    let angles = |of: &WheelReadings| {
        let split = of.split;
        let parts = [split.bending, split.shear, split.seat, split.wall, split.bearing, split.disc];
        [&[of.camber_change, of.toe_change][..], &parts].concat()
    };
    let largest = Side::BOTH.into_iter().flat_map(|side| angles(whole.wheels.of(side)));
    let largest = largest.map(f64::abs).fold(1e-4, f64::max);
    assert!(close(short.axle_roll, whole.axle_roll, largest), "{short:?} {whole:?}");
    for side in Side::BOTH {
        let (one, other) = (short.wheels.of(side), whole.wheels.of(side));
        for (one, other) in angles(one).into_iter().zip(angles(other)) {
            assert!(close(one, other, largest), "{} {side:?}: {short:?} {whole:?}", case.name);
        }
        assert!(close(one.vertical_load, other.vertical_load, case.actions.axle_load));
        assert_eq!(one.off_road, other.off_road, "{} {side:?}", case.name);
    }
}

fn housing() -> Body {
    let section = |height: f64| RectangularTube::new(0.12, height, 0.011, 0.03).unwrap();
    let point = |at, height| HousingPoint { at, section: section(height) };
    let points = [point(0.0, 0.3), point(0.2, 0.28), point(0.35, 0.14), point(0.8, 0.13)];
    let steps = [(0.09, 0.09), (0.12, 0.07)]
        .map(|(length, od)| SpindleStep { length, profile: bar(od), fillet: None })
        .to_vec();
    Body::drive_housing(&points, steel(), &Spindle { material: steel(), steps }).unwrap()
}

/// A drive axle, both sides alike.
pub fn driven() -> Axle {
    Axle { body: housing(), ..example::axle() }.checked().unwrap()
}

/// An axle on whose sides different things happen.
fn lopsided([seat, share, turning, outset, mass]: [f64; 5], arm: bool, tapered: bool) -> Axle {
    let axle = example::axle();
    let suspension = if arm { trailing_arm() } else { example::leaf() };
    let left = Seat {
        at: seat,
        composite_fraction: share,
        suspension,
        rotational_stiffness: turning,
        wall_flexibility: 2e-7,
        ..example::seat()
    };
    let right = Seat { at: seat + 0.031, suspension, ..example::seat() };
    let wheels: Sides<Wheel> = Sides {
        left: example::wheel(TireLayout::WideBase, outset).with_disc_flexibility(8e-8).unwrap(),
        right: example::wheel(TireLayout::Dual { spacing: 0.33 }, 0.0),
    };
    let outer_stiffness = BearingStiffness { radial: 0.6e9, axial: 1.1e8 };
    let unlike_bearings = WheelEnd { outer_stiffness, ..example::wheel_end() };
    Axle {
        body: if tapered { housing() } else { axle.body.clone() },
        seats: Sides { left, right },
        wheel_ends: Sides { left: unlike_bearings, right: example::wheel_end() },
        wheels,
        fixed_masses: vec![FixedMass { y: -0.21, mass }, FixedMass { y: 0.7, mass: 12.0 }],
        stations: vec![UserStation { name: "gauge".to_owned(), y: 0.1 }],
        ground: if arm { Ground::Standing } else { Ground::Rolling },
        body_roll_stiffness: 1e5,
        ..axle
    }
    .checked()
    .unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_case_has_the_numbers_of_the_finite_elements(
        numbers in [0.3..0.65_f64, 0.0..0.9_f64, 0.0..1e6_f64, -0.1..0.1_f64, 0.0..200.0_f64],
        arm: bool,
        tapered: bool,
        number in 0..7_usize,
        camber in -0.05..0.05_f64,
    ) {
        let mut axle = lopsided(numbers, arm, tapered);
        axle.wheel_ends.right.camber = camber;
        let cases = standard_cases(&axle);
        assert_alike(&axle, &cases[number.min(cases.len() - 1)]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn a_line_that_is_kept_answers_as_a_new_one_to_the_last_bit(
        numbers in [0.3..0.65_f64, 0.0..0.9_f64, 0.0..1e6_f64, -0.1..0.1_f64, 0.0..200.0_f64],
        arm: bool,
        tapered: bool,
        outset in -0.1..0.1_f64,
        stiffness in 0.5..2.0_f64,
        load in 0.7..1.3_f64,
    ) {
        let mut solver = StaticSolver::default();
        let mut axle = lopsided(numbers, arm, tapered);
        for changed in [false, true] {
            if changed {
                axle.wheels.right = example::wheel(TireLayout::Single, outset);
                axle.wheel_ends.left.inner_stiffness.radial *= stiffness;
                axle.wheel_ends.left.outer_stiffness.axial *= stiffness;
                axle.loading.rated_load *= load;
            }
            for case in standard_cases(&axle) {
                let kept = solver.readings(&axle, &case).map_err(|error| error.to_string());
                let anew = StaticReadings::of(&axle, &case).map_err(|error| error.to_string());
                prop_assert_eq!(kept, anew);
            }
        }
        axle.seats.left.at += 0.01;
        solver.new_line();
        let case = &standard_cases(&axle)[0];
        prop_assert_eq!(solver.readings(&axle, case).ok(), StaticReadings::of(&axle, case).ok());
    }
}

#[test]
fn what_forces_do_not_reach_is_left_to_the_elements() {
    let axle = example::axle();
    let mut loose = axle.clone();
    loose.wheel_ends.left.endplay = 1e-4;
    let mut crowded = axle.clone();
    crowded.stations = vec![UserStation { name: "beside".to_owned(), y: 0.48 + 3e-5 }];
    for axle in [loose, crowded, Axle { stiffeners: vec![example::stiffening::tent()], ..axle }] {
        let axle = axle.checked().unwrap();
        for case in standard_cases(&axle) {
            assert_alike(&axle, &case);
        }
    }
}

#[test]
fn what_has_no_answer_has_the_same_reason() {
    let axle = example::axle();
    let mut cases = standard_cases(&axle);
    cases[0].actions.axle_load = 1.0;
    cases[3].actions.side_force *= 50.0;
    let mut floating = axle.clone();
    for side in Side::BOTH {
        floating.seats.of_mut(side).suspension = axlebow_axle::Suspension::Leaf {
            vertical: 0.0,
            lateral: 0.0,
            fore_aft: 0.0,
            wind_up: 0.0,
            yaw: 0.0,
        };
    }
    assert_alike(&axle, &cases[0]);
    assert_alike(&axle, &cases[3]);
    assert_alike(&floating, &cases[1]);
}
