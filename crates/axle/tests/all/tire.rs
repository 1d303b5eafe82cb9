//! Tire faces of an axle, standing and over a road.

use crate::example;
use approx::assert_relative_eq;
use axlebow_axle::tread::Tread;
use axlebow_axle::{
    Axle, Ride, Running, Side, Sides, TireFit, TireLayout, WheelEnd, flex, ride, standard_cases, tires,
    tires_over,
};
use axlebow_road::{HalfSineBump, Road, Track, Washboard};

fn without_crown(axle: Axle) -> Axle {
    let flat = |side: Side| {
        let wheel = *axle.wheels.of(side);
        wheel.with_tread(Tread { crown: 0.0, ..*wheel.tread() }).unwrap()
    };
    Axle { wheels: Sides::each(flat), ..axle.clone() }
}

/// Ribs without crown that all touch are together the tire's one spring: the duals share the load in every case as the
/// static solution says, which knows tires as points.
#[test]
fn duals_share_the_load_as_the_static_solution_says() {
    let axle = without_crown(example::axle());
    let cases = standard_cases(&axle);
    let (faces, solved) = (tires(&axle, &cases).unwrap(), flex(&axle, &cases).unwrap());
    for (faces, case) in faces.cases.iter().zip(&solved.cases) {
        for side in Side::BOTH {
            let contacts = &case.wheels.of(side).contacts;
            for (tire, contact) in faces.wheels.of(side).worn.tires.iter().zip(contacts) {
                // A point at the tire's bottom moves aside as the wheel leans: a share of the camber squared.
                assert_relative_eq!(tire.load, contact.vertical_load, max_relative = 1e-3);
            }
        }
    }
}

/// A tire of less air is softer and a smaller one stands higher: statics, which know tires as points, and the faces, which
/// know their ribs, share the load alike.
#[test]
fn unlike_duals_share_the_load_as_the_static_solution_says() {
    let unlike = |side: Side, axle: &Axle| {
        let fit = TireFit { inflation: [None, Some(560e3)], outer_less_inner: 0.003, ..TireFit::default() };
        axle.wheels.of(side).with_fit(fit).unwrap()
    };
    let plain = without_crown(example::axle());
    let axle = Axle { wheels: Sides::each(|side| unlike(side, &plain)), ..plain.clone() };
    let cases = standard_cases(&axle);
    let (faces, solved) = (tires(&axle, &cases[..1]).unwrap(), flex(&axle, &cases[..1]).unwrap());
    for side in Side::BOTH {
        let contacts = &solved.cases[0].wheels.of(side).contacts;
        let worn = &faces.cases[0].wheels.of(side).worn;
        for (tire, contact) in worn.tires.iter().zip(contacts) {
            assert_relative_eq!(tire.load, contact.vertical_load, max_relative = 1e-3);
        }
        assert!(worn.tires[0].share > 0.55, "{}", worn.tires[0].share);
    }
}

/// A skewed axle steers its left wheel in and its right one out, and nothing else.
#[test]
fn skew_is_toe_of_opposite_sign_at_both_ends() {
    let axle = example::axle();
    let skewed = Axle { running: Running { skew: 0.002, ..axle.running.clone() }, ..axle.clone() };
    let of = |axle: &Axle| tires(axle, &standard_cases(axle)[..1]).unwrap().cases[0].wheels.clone();
    let (straight, skewed) = (of(&axle), of(&skewed));
    assert_relative_eq!(skewed.left.pose.toe - straight.left.pose.toe, 0.002, max_relative = 1e-12);
    assert_relative_eq!(skewed.right.pose.toe - straight.right.pose.toe, -0.002, max_relative = 1e-12);
    assert_eq!(skewed.left.pose.camber, straight.left.pose.camber);
}

fn on_road(track: Track, to: f64) -> Ride {
    let road = Road { left: track.clone(), right: track };
    Ride { name: "road".to_owned(), speed: 22.0, from: -1.0, to, ..example::ride_over(road) }
}

/// At its start a ride stands as the rated load case does, toe and all.
#[test]
fn a_ride_starts_from_the_standing_face() {
    let end = WheelEnd { camber: 0.002, toe: -0.001, ..example::wheel_end() };
    let axle = Axle { wheel_ends: Sides { left: end, right: end }, ..example::axle() };
    let flat = Track::new(HalfSineBump::new(1e-6, 0.5).unwrap());
    let asked = on_road(flat, 0.5);
    let driven = ride(&axle, &asked).unwrap();
    let standing = tires(&axle, &standard_cases(&axle)[..1]).unwrap();
    let over = tires_over(&axle, &asked, &driven).unwrap();
    for side in Side::BOTH {
        let (still, moving) = (standing.cases[0].wheels.of(side), over.wheels.of(side));
        for (still, moving) in still.worn.tires.iter().zip(&moving.wear.mean.tires) {
            assert_relative_eq!(still.load, moving.load, max_relative = 1e-3);
            assert_relative_eq!(
                still.inner_shoulder().wear,
                moving.inner_shoulder().wear,
                max_relative = 2e-3
            );
        }
        assert!((still.pose.camber - moving.camber[1]).abs() < 1e-5);
        assert!((driven.history.toe.of(side)[0] + end.toe - still.pose.toe).abs() < 1e-6);
        assert!(moving.wave.is_none(), "half a meter is no turn");
    }
}

/// Crests as far apart as a third of the circumference print three cups, and the road is named first.
#[test]
fn a_washboard_in_step_with_the_wheel_prints_its_cups() {
    let axle = example::axle();
    let radius = tires(&axle, &standard_cases(&axle)[..1]).unwrap().cases[0].wheels.left.worn.radius;
    let wave = std::f64::consts::TAU * radius / 3.0;
    let asked = on_road(Track::new(Washboard::new(wave, 0.004, 30).unwrap()), 30.0 * wave);
    let over = tires_over(&axle, &asked, &ride(&axle, &asked).unwrap()).unwrap();
    let printed = over.wheels.left.wave.as_ref().unwrap();
    assert_eq!(printed.cups.count, 3);
    assert!(printed.visible, "{printed:?}");
    assert!(
        printed.cups.explanations[0].suspect.name.contains("washboard"),
        "{:?}",
        printed.cups.explanations
    );
    assert!(over.warnings.is_empty(), "{:?}", over.warnings);
}

#[test]
fn a_single_bump_is_said_not_to_come_back() {
    let axle = example::axle();
    let asked = on_road(Track::new(HalfSineBump::new(0.03, 0.6).unwrap()), 12.0);
    let over = tires_over(&axle, &asked, &ride(&axle, &asked).unwrap()).unwrap();
    assert!(over.warnings.iter().any(|warning| warning.text.contains("come back")), "{:?}", over.warnings);
}

#[test]
fn a_tread_wider_than_its_tire_is_refused() {
    let wheel = example::wheel(TireLayout::Single, 0.0);
    let error = wheel.with_tread(Tread::usual(0.3).unwrap()).unwrap_err();
    assert!(error.to_string().contains("tread width is 0.3 m"), "{error}");
}
