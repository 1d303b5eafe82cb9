//! Statics of a whole axle: closed forms, signs of the trade, and what must hold for any axle.

use crate::example::{self, axle, bar, loading, mirrored, seat, steel, tube, wheel, wheel_end};
use approx::assert_relative_eq;
use axlebow_axle::{
    Actions, Axle, AxleError, Body, CaseOutcome, Ground, LoadCase, Side, Sides, Spindle, SpindleStep,
    StaticReadings, TireLayout, WheelEnd, flex, standard_cases, static_warnings,
};

fn case(name: &str, axle: &Axle) -> CaseOutcome {
    let cases = standard_cases(axle);
    let wanted: Vec<_> = cases.into_iter().filter(|case| case.name == name).collect();
    flex(axle, &wanted).unwrap().cases.remove(0)
}

/// Source: Roark's Formulas for Stress and Strain, 9th ed. 2020, Table 8.1 (overhanging beam), and the
/// shear addition P/κGA; the hub's tilt is the chord of the spindle between its bearings.
#[test]
fn camber_change_matches_the_overhanging_beam() {
    let profile = tube(0.127, 0.0127);
    let mut axle = axle();
    let spindle =
        Spindle { material: steel(), steps: vec![SpindleStep { length: 0.21, profile, fillet: None }] };
    axle.body = Body::trailer_tube(profile, 1.6, steel(), &spindle).unwrap();
    let mut end = wheel_end();
    (end.mounting_face, end.hub_mass) = (0.95, 0.0);
    let mut seat = seat();
    seat.rotational_stiffness = 0.0;
    axle.wheel_ends = Sides { left: end, right: end };
    axle.seats = Sides { left: seat, right: seat };
    let wheel = wheel(TireLayout::Single, 0.0);
    axle.wheels = Sides { left: wheel, right: wheel };
    let load = 90e3;
    let actions = Actions { axle_load: load, ..Actions::default() };
    let only = LoadCase { name: "load".into(), description: String::new(), dynamic_factor: 1.0, actions };
    let outcome = flex(&axle, &[only]).unwrap().cases.remove(0);

    let section = profile.properties(0.3);
    let (p, a, s) = (0.5 * load, 0.95 - 0.48, 0.96);
    let ei = 200e9 * section.second_moment_x;
    let shear = 200e9 / 2.6 * section.area * section.shear_coefficient_z;
    let rise =
        |x: f64| p * a * s / (2.0 * ei) * x + p * (3.0 * a * x * x - x * x * x) / (6.0 * ei) + p * x / shear;
    let inner = 0.84 - 0.48;
    let chord = (rise(a) - rise(inner)) / (a - inner);
    // The load passes through the outer bearing, which gives way by P/k and so tilts the hub over its spread.
    let (give, spread) = (p / 1e9, a - inner);
    let tilt = chord + give / spread;
    assert_relative_eq!(outcome.wheels.left.camber_change, -tilt, max_relative = 1e-9);
    assert_relative_eq!(outcome.wheels.right.camber_change, -tilt, max_relative = 1e-9);
    let seat_station = outcome.stations.iter().find(|station| station.name == "left-seat").unwrap();
    assert_relative_eq!(seat_station.resultants.moment_x, p * a, max_relative = 1e-9);
    assert_relative_eq!(seat_station.stress.abs(), p * a / section.section_modulus_x(), max_relative = 1e-9);
    let bow = -(p * a * s * s / (8.0 * ei) + rise(a) + give);
    assert_relative_eq!(outcome.bow, bow, max_relative = 1e-9);
    assert_relative_eq!(outcome.wheels.left.hub_rise, rise(a) + give, max_relative = 1e-9);
    assert_relative_eq!(outcome.wheels.right.hub_rise, rise(a) + give, max_relative = 1e-9);
    let split = outcome.wheels.left.split;
    assert_relative_eq!(split.shear, -p / shear, max_relative = 1e-9);
    assert_relative_eq!(split.bearing, -give / spread, max_relative = 1e-9);
    assert!(split.seat.abs() < 1e-12, "a seat without stiffness carries no moment");
}

/// The spindle has its section change at 0.89 m; the outer bearing just beside it is one place with it.
#[test]
fn a_bearing_beside_a_section_change_bends_both_sides_alike_and_as_one_farther_off() {
    let changed = |beside: f64| {
        let mut axle = axle();
        for side in Side::BOTH {
            let end = axle.wheel_ends.of_mut(side);
            end.inner_bearing = 0.84;
            end.outer_bearing = 0.89 + beside;
        }
        let outcome = case("rated-load", &axle.checked().unwrap());
        Side::BOTH.map(|side| outcome.wheels.of(side).camber_change)
    };
    // Straight through what lies 0.11 mm to both sides, where no places merge, which leaves 1e-6.
    let [near, far] = [-1.1e-4, 1.1e-4].map(|beside| changed(beside)[0]);
    for beside in [-9e-5, -5e-5, 5e-5, 9e-5] {
        let [left, right] = changed(beside);
        assert_relative_eq!(left, right, max_relative = 1e-9);
        let between = near + (far - near) * (beside + 1.1e-4) / 2.2e-4;
        // The section change moves with the merged place: 1.3 kN m over 0.09 mm of bars of 90 and 70 mm turns the hub by
        // 3 to 4e-7 rad, 3 to 4e-5 of its camber change.
        assert_relative_eq!(left, between, max_relative = 5e-5);
    }
}

#[test]
fn stations_beside_the_center_are_one_with_it() {
    let own = case("rated-load", &axle()).bow;
    let at = |y: f64| axlebow_axle::UserStation { name: format!("at {y}"), y };
    let mut crowded = axle();
    crowded.stations = [5e-5, -5e-5, 9e-5].map(at).to_vec();
    assert_relative_eq!(case("rated-load", &crowded.checked().unwrap()).bow, own, max_relative = 1e-9);
}

/// A disc leans by its flexibility times the couple about the mounting face: the road's load and the wheel's weight on the
/// lever of the outset. What the rest of a determinate axle does stays as it is.
#[test]
fn a_flexible_disc_leans_by_its_leverage_and_by_nothing_else() {
    let (outset, flexibility, load) = (0.051, 8e-8, 90e3);
    let mut axle = axle();
    let wheel = wheel(TireLayout::WideBase, outset);
    axle.wheels = Sides { left: wheel, right: wheel };
    let actions = Actions { axle_load: load, gravity: 1.0, ..Actions::default() };
    let only = LoadCase { name: "load".into(), description: String::new(), dynamic_factor: 1.0, actions };
    let rigid = flex(&axle, std::slice::from_ref(&only)).unwrap().cases.remove(0);
    let soft = wheel.with_disc_flexibility(flexibility).unwrap();
    axle.wheels = Sides { left: soft, right: soft };
    let leaning = flex(&axle, &[only]).unwrap().cases.remove(0);
    let couple = outset * (0.5 * load - wheel.mass() * axlebow_axle::STANDARD_GRAVITY);
    for side in Side::BOTH {
        let (rigid, leaning) = (rigid.wheels.of(side), leaning.wheels.of(side));
        assert_relative_eq!(leaning.split.disc, -flexibility * couple, max_relative = 1e-8);
        let change = leaning.camber_change - rigid.camber_change;
        assert_relative_eq!(change, leaning.split.disc, max_relative = 1e-7);
        assert_relative_eq!(leaning.split.bending, rigid.split.bending, max_relative = 1e-9);
        assert_eq!(rigid.split.disc, 0.0);
    }
}

#[test]
fn camber_split_sums_to_the_total_in_every_case() {
    for ground in [Ground::Rolling, Ground::Standing] {
        let mut axle = axle();
        axle.ground = ground;
        axle.seats.left.wall_flexibility = 1e-6;
        axle.seats.right.suspension = example::trailing_arm();
        for outcome in flex(&axle, &standard_cases(&axle)).unwrap().cases {
            for side in Side::BOTH {
                let wheel = outcome.wheels.of(side);
                let split = wheel.split;
                assert_relative_eq!(split.sum(), wheel.camber_change, max_relative = 1e-8, epsilon = 1e-12);
            }
            assert!(outcome.equilibrium_residual < 1e-9, "{} {}", outcome.name, outcome.equilibrium_residual);
        }
    }
}

/// Moment about X at the axle's line of road, inertia and sprung weight; none where only this axle holds the body.
///
/// The sprung mass takes side forces at its own height and goes aside with the body's roll, the rest takes its share at
/// the axle's. The body rolls by what the springs of the seats say, here without moment of their own about X.
fn moment_about_the_center_line(axle: &Axle, outcome: &CaseOutcome, load: f64) -> f64 {
    let contacts = || Side::BOTH.iter().flat_map(|side| &outcome.wheels.of(*side).contacts);
    let (height, radius) = (axle.body_height, axle.wheels.left.tire().loaded_radius);
    let aside: f64 = contacts().map(|tire| tire.lateral_load).sum();
    let unsprung = axle.unsprung_mass() * axlebow_axle::STANDARD_GRAVITY;
    let sprung = load - unsprung;
    // Rise of the axle against the body at each seat by its leaf, and the axle's roll on the road.
    let rise = |side: Side| -outcome.seats.of(side).vertical / 1.5e6;
    let hub = |name: &str| outcome.stations.iter().find(|station| station.name == name).unwrap();
    let (left, right) = (hub("left-hub"), hub("right-hub"));
    // Stations are against the line through the seats.
    let lean = (rise(Side::Left) - rise(Side::Right)) / (2.0 * axle.seats.left.at)
        + (left.displacement[2] - right.displacement[2]) / (left.y - right.y);
    let roll = outcome.axle_roll - lean;
    let on_road: f64 = contacts().map(|tire| tire.y * tire.vertical_load + radius * tire.lateral_load).sum();
    on_road + (height - radius) * (aside * sprung / load + sprung * roll)
}

#[test]
fn road_carries_the_axle_load_and_balances_about_the_center_line() {
    let axle = axle();
    for outcome in flex(&axle, &standard_cases(&axle)).unwrap().cases {
        let wheels = &outcome.wheels;
        let load = if outcome.name == "unladen" { 25e3 } else { 89e3 };
        assert_relative_eq!(
            wheels.left.vertical_load + wheels.right.vertical_load,
            load,
            max_relative = 1e-10
        );
        let moment = moment_about_the_center_line(&axle, &outcome, load);
        assert!(moment.abs() < 1e-6 * load, "{}: {moment}", outcome.name);
    }
}

#[test]
fn a_mirrored_axle_gives_the_mirrored_answer() {
    let mut axle = axle();
    axle.wheels.left = wheel(TireLayout::Single, 0.05);
    axle.seats.right.at = 0.5;
    let (plain, mirror) = (case("rated-load", &axle), case("rated-load", &mirrored(&axle)));
    for (a, b) in [(&plain.wheels.left, &mirror.wheels.right), (&plain.wheels.right, &mirror.wheels.left)] {
        assert_relative_eq!(a.camber_change, b.camber_change, max_relative = 1e-9);
        assert_relative_eq!(a.vertical_load, b.vertical_load, max_relative = 1e-9);
    }
}

/// Signs: common practice, no source.
#[test]
fn load_leans_the_tops_in_and_outset_worsens_it() {
    let camber = |outset: f64| {
        let mut axle = axle();
        let wheel = wheel(TireLayout::Single, outset);
        axle.wheels = Sides { left: wheel, right: wheel };
        let outcome = case("rated-load", &axle);
        assert_relative_eq!(
            outcome.wheels.left.camber_change,
            outcome.wheels.right.camber_change,
            max_relative = 1e-9
        );
        outcome.wheels.left.camber_change
    };
    let (inset, zero, outset) = (camber(-0.026), camber(0.0), camber(0.051));
    assert!(outset < zero && zero < inset && inset < 0.0, "{outset} {zero} {inset}");
}

#[test]
fn a_raised_wheel_takes_load_when_the_rest_of_the_vehicle_resists_roll() {
    let mut axle = axle();
    let free = case("one-wheel-raised", &axle);
    axle.body_roll_stiffness = 600e3;
    let resisted = case("one-wheel-raised", &axle);
    assert!(resisted.wheels.left.vertical_load > free.wheels.left.vertical_load + 1e3);
    let side = case("side-load", &axle);
    let shift = moment_about_the_center_line(&axle, &side, 89e3);
    assert!(shift.abs() < 1e-6 * 89e3, "side loads are this axle's own to carry: {shift}");
}

#[test]
fn flex_loads_the_inner_tire_of_a_dual() {
    let outcome = case("rated-load", &axle());
    let [outer, inner] = &outcome.wheels.left.contacts[..] else { panic!("a dual has two tires") };
    assert!(inner.vertical_load > outer.vertical_load);
    assert!(outcome.bow < 0.0);
}

#[test]
fn a_stiffer_seat_flexes_less_and_a_softer_wall_more() {
    let camber = |stiffness: f64, wall: f64| {
        let mut axle = axle();
        for side in Side::BOTH {
            axle.seats.of_mut(side).rotational_stiffness = stiffness;
            axle.seats.of_mut(side).wall_flexibility = wall;
        }
        case("rated-load", &axle).wheels.left
    };
    let (free, held, softened) = (camber(0.0, 0.0), camber(500e3, 0.0), camber(500e3, 4e-6));
    assert!(free.camber_change < softened.camber_change && softened.camber_change < held.camber_change);
    assert!(softened.split.wall < 0.0 && held.split.wall == 0.0 && held.split.seat < 0.0);
}

#[test]
fn a_clamp_shortens_the_flexing_length() {
    let mut clamped = axle();
    for side in Side::BOTH {
        clamped.seats.of_mut(side).composite_fraction = 0.8;
    }
    let bare = case("rated-load", &axle()).wheels.left.camber_change;
    assert!(case("rated-load", &clamped).wheels.left.camber_change > bare);
}

#[test]
fn braking_and_curb_turn_the_right_way() {
    let axle = axle();
    let braking = case("braking", &axle);
    assert!(braking.wheels.left.longitudinal_load < 0.0);
    // The road pushes the wheels rearward, so that the spindles toe out on both sides alike.
    assert!(braking.wheels.left.toe_change < 0.0);
    assert_relative_eq!(braking.wheels.left.toe_change, braking.wheels.right.toe_change, max_relative = 1e-9);
    let curb = case("curb", &axle);
    assert!(curb.wheels.left.lateral_load < 0.0 && curb.wheels.right.lateral_load == 0.0);
    let side = case("side-load", &axle);
    assert!(side.wheels.right.vertical_load > side.wheels.left.vertical_load);
}

#[test]
fn a_standing_tire_holds_its_contact() {
    let mut standing = axle();
    standing.ground = Ground::Standing;
    let rolling = case("rated-load", &axle());
    let standing = case("rated-load", &standing);
    // Tops lean in, so contacts move out and the floor pushes them in.
    assert!(standing.wheels.left.lateral_load < 0.0);
    assert!(standing.wheels.left.camber_change > rolling.wheels.left.camber_change);
    assert_eq!(rolling.wheels.left.lateral_load, 0.0);
}

#[test]
fn a_tire_that_would_pull_leaves_the_road() {
    let mut axle = axle();
    axle.loading.side_force_ratio = 0.45;
    let outcome = case("side-load", &axle);
    let off: Vec<_> =
        outcome.wheels.left.contacts.iter().filter(|tire| tire.off_road).map(|tire| tire.slot).collect();
    for tire in &outcome.wheels.left.contacts {
        assert!(tire.vertical_load >= 0.0);
    }
    assert!(off.len() < 2, "{off:?}");
    axle.loading.side_force_ratio = 0.8;
    let cases = standard_cases(&axle);
    let error = flex(&axle, &cases[3..4]).unwrap_err();
    assert!(matches!(error, AxleError::NoEquilibrium { .. }), "{error}");
}

#[test]
fn bearing_forces_balance_the_wheel() {
    let outcome = case("rated-load", &axle());
    let vertical: f64 = outcome
        .bearings
        .iter()
        .filter(|bearing| bearing.side == Side::Left)
        .map(|bearing| bearing.vertical)
        .sum();
    let hub_weight = 225.0 * axlebow_axle::STANDARD_GRAVITY;
    assert_relative_eq!(vertical, outcome.wheels.left.vertical_load - hub_weight, max_relative = 1e-9);
    let moment: f64 = outcome
        .bearings
        .iter()
        .filter(|bearing| bearing.side == Side::Right)
        .map(|bearing| (bearing.y + 0.92) * bearing.vertical)
        .sum();
    // The dual is zeroset, so the load passes through the mounting face; hub mass sits between the bearings.
    let duals: f64 =
        outcome.wheels.right.contacts.iter().map(|tire| (tire.y + 0.92) * tire.vertical_load).sum();
    let hub = -75.0 * axlebow_axle::STANDARD_GRAVITY * (0.92 - 0.895);
    assert_relative_eq!(moment, duals + hub, max_relative = 1e-7);
}

#[test]
fn results_beyond_yield_and_small_rotations_are_doubted() {
    let mut axle = axle();
    assert!(flex(&axle, &standard_cases(&axle)).unwrap().warnings.is_empty());
    let spindle = Spindle {
        material: steel().with_yield(100e6).unwrap(),
        steps: vec![SpindleStep { length: 0.21, profile: bar(0.09), fillet: None }],
    };
    let weak = steel().with_yield(100e6).unwrap();
    axle.body = Body::trailer_tube(tube(0.127, 0.0001), 1.6, weak, &spindle).unwrap();
    let warnings = flex(&axle, &standard_cases(&axle)).unwrap().warnings;
    assert!(
        warnings.iter().any(|warning| warning.text.contains("yield strength of 100 MPa")),
        "{warnings:?}"
    );
    assert!(warnings.iter().any(|warning| warning.text.contains("small")), "{warnings:?}");
}

/// What studies ask of a case carries the same doubts, whether forces or elements solve it.
#[test]
fn the_readings_of_studies_have_the_warnings_of_the_whole_result() {
    let weak = {
        let spindle = Spindle {
            material: steel().with_yield(100e6).unwrap(),
            steps: vec![SpindleStep { length: 0.21, profile: bar(0.09), fillet: None }],
        };
        let weak = steel().with_yield(100e6).unwrap();
        Axle { body: Body::trailer_tube(tube(0.127, 0.0001), 1.6, weak, &spindle).unwrap(), ..axle() }
    };
    let end = |axle: &Axle| WheelEnd { endplay: 0.3e-3, ..axle.wheel_ends.left };
    let loose = Axle { wheel_ends: Sides::each(|_| end(&weak)), ..weak.clone() };
    for (axle, least) in [(axle(), 0), (weak, 2), (loose, 3)] {
        for case in standard_cases(&axle) {
            let readings = StaticReadings::of(&axle, &case).unwrap();
            let own = static_warnings(&axle, &case, &readings).unwrap();
            assert_eq!(own, flex(&axle, std::slice::from_ref(&case)).unwrap().warnings, "{}", case.name);
            assert!(case.name != "rated-load" || own.len() >= least, "{own:?}");
        }
    }
}

#[test]
fn misfits_are_all_named() {
    let mut axle = axle();
    axle.seats.left.at = 1.2;
    axle.wheel_ends.right.outer_bearing = 0.5;
    axle.loading.rated_load = f64::NAN;
    let errors = axle.checked().unwrap_err();
    let text: Vec<String> = errors.iter().map(ToString::to_string).collect();
    let all = text.join("\n");
    for part in ["left seat's outer edge", "wheel's inner tire center", "outer bearing", "rated load"] {
        assert!(all.contains(part), "{part} missing in\n{all}");
    }
}

#[test]
fn a_load_below_the_weight_of_wheels_and_axle_is_refused() {
    let mut axle = axle();
    axle.loading = loading();
    axle.loading.unladen_load = 1000.0;
    let error = flex(&axle, &standard_cases(&axle)).unwrap_err();
    assert!(error.to_string().contains("unladen"), "{error}");
    let _ = bar(0.1);
}
