//! Road, tires and body: how loads are shared, and when a vehicle stands.

use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, CaseOutcome, Flexing, Ground, LoadCase, Ride, Side, Sides, StaticDesign, Suspension, TireLayout,
    flex, ride, standard_cases, tires,
};
use axlebow_road::{Road, Track};

use crate::example::{self, axle, stiffen_bearings, wheel};

const G: f64 = 9.80665;

fn named(axle: &Axle, name: &str) -> LoadCase {
    standard_cases(axle).into_iter().find(|case| case.name == name).unwrap()
}

fn solved(axle: &Axle, name: &str) -> Result<CaseOutcome, String> {
    let case = named(axle, name);
    StaticDesign::of(axle).and_then(|design| design.case(&case)).map_err(|error| error.to_string())
}

fn on_singles() -> Axle {
    let single = wheel(TireLayout::WideBase, 0.0);
    Axle { wheels: Sides { left: single, right: single }, ..axle() }
}

fn with_side_force(axle: &Axle, ratio: f64) -> Axle {
    let mut axle = axle.clone();
    axle.loading.side_force_ratio = ratio;
    axle
}

/// Once it tips it stays tipped, and short of that the road carries the load: one tire left no longer looks like an answer.
#[test]
fn a_vehicle_that_tips_over_has_no_answer() {
    for start in [axle(), on_singles()] {
        for height in [1.2, 1.9, 2.6] {
            let start = Axle { body_height: height, ..start.clone() };
            let mut tipped = false;
            for step in 1..=400 {
                match solved(&with_side_force(&start, 0.005 * f64::from(step)), "side-load") {
                    Err(error) => {
                        assert!(error.contains("tips over"), "{error}");
                        tipped = true;
                    }
                    Ok(case) => {
                        let load = case.wheels.left.vertical_load + case.wheels.right.vertical_load;
                        assert!(!tipped, "stands again at {step}");
                        assert!((load / 89e3 - 1.0).abs() < 1e-9 && case.axle_roll.abs() < 0.2);
                        assert!(case.equilibrium_residual < 1e-6, "{}", case.equilibrium_residual);
                    }
                }
            }
            assert!(tipped);
        }
    }
}

/// An axle and a suspension that do not give: the roll is that of the tires. The sprung mass takes its share of the side
/// force at its own height h, the rest at the axle's, r; the sprung weight goes aside with the roll.
#[test]
fn side_load_is_shared_by_mass_and_the_sprung_weight_goes_aside() {
    let mut axle = on_singles();
    for side in Side::BOTH {
        let seat = axle.seats.of_mut(side);
        (seat.at, seat.rotational_stiffness) = (0.7, 1e12);
        seat.suspension =
            Suspension::Leaf { vertical: 1e12, lateral: 1e12, fore_aft: 1e12, wind_up: 1e12, yaw: 1e12 };
        stiffen_bearings(axle.wheel_ends.of_mut(side), 1e12);
    }
    axle.body = axle.body.with_flexing(Flexing { bending: 1e-4, shear: 1e-4, ..Flexing::default() });
    let outcome = solved(&axle, "side-load").unwrap();
    let (load, side, track) = (89e3, 0.2 * 89e3, 2.0 * 0.92);
    let unsprung = axle.unsprung_mass() * G;
    let (height, radius) = (1.9, 0.49);
    let moment = side * height - side * unsprung / load * (height - radius);
    let stiffness = 2.0 * 0.9e6 * 0.92_f64.powi(2);
    let roll = moment / (stiffness - (load - unsprung) * (height - radius));
    let shift = 0.5 * stiffness * roll / (0.5 * track);
    assert_relative_eq!(outcome.axle_roll, roll, max_relative = 2e-3);
    let shifted = 0.5 * (outcome.wheels.right.vertical_load - outcome.wheels.left.vertical_load);
    assert_relative_eq!(shifted, shift, max_relative = 2e-3);
    // What the unsprung mass takes of the side force never reaches the seats.
    let lateral = outcome.wheels.left.lateral_load + outcome.wheels.right.lateral_load;
    assert_relative_eq!(lateral, side, max_relative = 1e-9);
}

/// `tire` and `flex` share the load of a dual alike, a tire off the road and manufactured camber or not.
#[test]
fn one_contact_model_shares_the_load_of_duals() {
    for degrees in [-5.5_f64, -0.5, 0.0, 0.8, 4.0] {
        let mut axle = axle();
        axle.wheel_ends.left.camber = degrees.to_radians();
        for ground in [Ground::Rolling, Ground::Standing] {
            axle.ground = ground;
            let cases = standard_cases(&axle);
            let (flexed, worn) = (flex(&axle, &cases).unwrap(), tires(&axle, &cases).unwrap());
            for (case, faces) in flexed.cases.iter().zip(&worn.cases) {
                for side in Side::BOTH {
                    let contacts = &case.wheels.of(side).contacts;
                    for (contact, tire) in contacts.iter().zip(&faces.wheels.of(side).worn.tires) {
                        let (one, other) = (contact.vertical_load, tire.load);
                        assert!((one - other).abs() < 1e-6 * 89e3, "{} {one} {other}", case.name);
                    }
                }
            }
        }
    }
}

/// Two springs under one hub: they differ by k s times the camber against the road.
#[test]
fn manufactured_camber_loads_one_tire_of_a_dual() {
    let mut axle = axle();
    axle.wheel_ends.right.camber = -0.009;
    let outcome = solved(&axle, "rated-load").unwrap();
    for side in Side::BOTH {
        let wheel = outcome.wheels.of(side);
        let against_road = wheel.camber - side.sign() * outcome.axle_roll;
        let [outer, inner] = &wheel.contacts[..] else { panic!("a dual has two tires") };
        let difference = outer.vertical_load - inner.vertical_load;
        assert_relative_eq!(difference, 0.9e6 * 0.33 * against_road, max_relative = 1e-9);
    }
}

/// A ride begins where statics are, manufactured camber in the share of the duals or not, a tire off the road or not.
#[test]
fn a_ride_begins_at_the_static_answer() {
    for camber in [-0.1, -0.012] {
        let mut axle = axle();
        for side in Side::BOTH {
            axle.wheel_ends.of_mut(side).camber = camber;
        }
        let statics = solved(&axle, "unladen").unwrap();
        let level = Road { left: Track::flat(), right: Track::flat() };
        let asked = Ride { speed: 10.0, to: 0.1, axle_load: 25e3, ..example::ride_over(level) };
        let driven = ride(&axle, &asked).unwrap();
        for side in Side::BOTH {
            let camber = driven.history.camber.of(side)[0];
            assert_relative_eq!(camber, statics.wheels.of(side).camber_change, max_relative = 1e-6);
        }
    }
}

/// Statics of a hub on its bearings: each tire brakes by its load, hub and wheels push on by their own mass.
#[test]
fn duals_brake_by_their_load() {
    let mut axle = axle();
    axle.wheel_ends.left.camber = -0.03;
    let outcome = solved(&axle, "braking").unwrap();
    let (end, wheel) = (axle.wheel_ends.left, outcome.wheels.left);
    let ratio = -0.5;
    let [outer, inner] = &wheel.contacts[..] else { panic!("a dual has two tires") };
    assert!(inner.vertical_load > 1.3 * outer.vertical_load);
    assert_relative_eq!(wheel.longitudinal_load, ratio * wheel.vertical_load, max_relative = 1e-9);
    // Moment about the inner bearing's line, along Z.
    let arm = |y: f64| y - end.inner_bearing;
    let middle = 0.5 * (end.inner_bearing + end.outer_bearing);
    let tires = ratio * (outer.vertical_load * arm(outer.y) + inner.vertical_load * arm(inner.y));
    let mass = -ratio * G * (end.hub_mass * arm(middle) + 150.0 * arm(end.mounting_face));
    let expected = (tires + mass) / arm(end.outer_bearing);
    let found =
        outcome.bearings.iter().find(|bearing| bearing.side == Side::Left && bearing.place == "outer");
    assert_relative_eq!(found.unwrap().fore_aft, expected, max_relative = 1e-8);
}

#[test]
fn a_dual_off_the_road_is_a_warning() {
    let mut axle = axle();
    axle.wheel_ends.left.camber = -0.09;
    let case = named(&axle, "unladen");
    for warnings in
        [flex(&axle, std::slice::from_ref(&case)).unwrap().warnings, tires(&axle, &[case]).unwrap().warnings]
    {
        assert!(
            warnings.iter().any(|own| own.text == "in case unladen the left outer tire is off the road"),
            "{warnings:?}"
        );
    }
}

/// Tire loads, camber and toe of one dense frame with tires, seats and body in it: `scripts/recompute_ground.py`.
#[test]
fn road_and_body_agree_with_one_dense_frame() {
    let of = |name: &str, left: f64, right: f64| {
        let mut axle = axle();
        (axle.wheel_ends.left.camber, axle.wheel_ends.right.camber) = (left, right);
        solved(&axle, name).unwrap()
    };
    let cases = [
        (
            of("side-load", 0.0, 0.0),
            [9.7001929856e3, 1.5450993736e4, 3.2725558747e4, 3.1123254532e4],
            [-7.6788994988e-3, -6.2891023009e-3, 0.0, 0.0],
        ),
        (
            of("braking", -0.02, 0.0),
            [1.8413928177e4, 2.6612002044e4, 2.0704797150e4, 2.3269272629e4],
            [-7.9205330282e-3, -8.3170068602e-3, -4.0591641863e-3, -4.2571095908e-3],
        ),
        (
            of("rated-load", -0.0087, -0.0087),
            [1.9744777979e4, 2.4755222021e4, 1.9744777979e4, 2.4755222021e4],
            [-8.1701819572e-3, -8.1701819572e-3, 0.0, 0.0],
        ),
    ];
    for (case, loads, angles) in cases {
        let Sides { left, right } = &case.wheels;
        let load = |wheel: &axlebow_axle::WheelOutcome, place: usize| wheel.contacts[place].vertical_load;
        let own = [load(left, 0), load(left, 1), load(right, 0), load(right, 1)];
        for (own, kept) in own.into_iter().zip(loads) {
            assert_relative_eq!(own, kept, max_relative = 1e-8);
        }
        let own = [left.camber_change, right.camber_change, left.toe_change, right.toe_change];
        for (own, kept) in own.into_iter().zip(angles) {
            assert_relative_eq!(own, kept, max_relative = 1e-8, epsilon = 1e-10);
        }
    }
}

/// A drive shaft turns its wheel and not the axle: outboard of the seats nothing is twisted, and half of the reaction at
/// the carrier goes to each seat. The pull turns the spindles toe-in.
#[test]
fn drive_torque_is_met_at_the_carrier() {
    let axle = crate::force_method::driven();
    let outcome = solved(&axle, "traction").unwrap();
    let torsion = |name: &str| {
        let station = outcome.stations.iter().find(|station| station.name == name).unwrap();
        station.resultants.torsion
    };
    let torque = 0.3 * 89e3 * 0.49;
    assert!(torsion("left-tube-end").abs() < 1e-6 * torque, "{}", torsion("left-tube-end"));
    assert_relative_eq!(torsion("center").abs(), 0.5 * torque, max_relative = 1e-6);
    assert!(outcome.wheels.left.toe_change > 0.0 && outcome.wheels.right.toe_change > 0.0);
    // The propeller shaft presses the left wheel's side of the axle down, away from its spring.
    let moment = outcome.seats.left.vertical - outcome.seats.right.vertical;
    assert!(moment > 0.0, "{moment}");
    assert!(standard_cases(&crate::example::axle()).iter().all(|case| case.name != "traction"));
}
