//! A rigid axle under a body that heaves and rolls against its recomputation by `scripts/recompute_vehicle.py` with
//! SciPy: natural modes with their damping, response and a ride.
//!
//! The rest of the vehicle puts a spring and a damper against roll, and seats turn energy into heat. The recomputation
//! has four freedoms where ours has a whole axle, stiffened a thousandfold and more: what that leaves is the
//! DIFFERENCE, parts of a thousandth. The vehicle is invented.

use axlebow_axle::{
    Axle, BearingStiffness, Body, Fixing, Ground, Input, Loading, RecordOptions, ResponseOptions, Ride,
    RideBasis, Running, Seat, SeatBracket, SeatLayouts, Sides, Spindle, SpindleStep, Suspension, Tire,
    TireLayout, USUAL_SCHEME, WallBy, Wheel, WheelEnd, modes, response, ride,
};
use axlebow_road::{HaversineBump, Road, Wheels};
use axlebow_textbook::sections::{Material, RoundBar, RoundTube};
use serde_json::Value;

fn kept(text: &str) -> Vec<Value> {
    let whole: Value = serde_json::from_str(text).unwrap();
    whole["vehicle"].as_array().unwrap().clone()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn modes_and_their_damping_agree_with_scipy() {
    let axle = vehicle();
    let found = modes(&axle, axle.loading.rated_load, 8).unwrap().modes;
    for kept in kept(include_str!("scipy_modes.json")) {
        let (frequency, damping) = (number(&kept["frequency"]), number(&kept["damping_ratio"]));
        // Other modes, of axle against springs fore, aft and sideways, are not in the plane.
        let near = found.iter().find(|mode| {
            (mode.frequency / frequency - 1.0).abs() < 1e-3
                && (mode.damping_ratio / damping - 1.0).abs() < 3e-3
        });
        assert!(near.is_some(), "{kept} among {found:?}");
    }
}

#[test]
fn loads_on_a_road_under_one_wheel_agree_with_scipy() {
    let axle = vehicle();
    let kept = kept(include_str!("scipy_response.json"));
    let largest = |side: usize| {
        let sizes = kept.iter().map(|kept| size(&kept["loads"][side]));
        sizes.fold(0.0, f64::max)
    };
    for kept in &kept {
        let frequency = number(&kept["frequency"]);
        let ask = ResponseOptions {
            axle_load: axle.loading.rated_load,
            input: Input::Left,
            frequencies: [frequency, 2.0 * frequency],
            points: 2,
            stations: Vec::new(),
            over: None,
        };
        let found = response(&axle, &ask).unwrap();
        for (side, transfer) in [&found.load.left, &found.load.right].into_iter().enumerate() {
            let [re, im] = transfer.values[0];
            let theirs = &kept["loads"][side];
            let error = (re - number(&theirs[0])).hypot(im - number(&theirs[1]));
            assert!(error < 3e-3 * largest(side), "{frequency} Hz: {re} {im} {theirs}");
        }
    }
}

fn size(pair: &Value) -> f64 {
    number(&pair[0]).hypot(number(&pair[1]))
}

#[test]
fn loads_and_roll_over_a_bump_of_one_wheel_agree_with_scipy() {
    let axle = vehicle();
    let kept = kept(include_str!("scipy_ride.json"));
    let (speed, step) = (10.0, 5e-4);
    let duration = number(&kept.last().unwrap()["time"]);
    let asked = Ride {
        name: "bump".to_owned(),
        road: Road::new(HaversineBump::new(0.01, 1.0).unwrap(), Wheels::Left).unwrap(),
        repeats: false,
        speed,
        contact_length: 0.2,
        from: -1.0,
        to: duration * speed - 1.0,
        step,
        axle_load: axle.loading.rated_load,
        basis: RideBasis::Full,
        scheme: USUAL_SCHEME,
        keep: RecordOptions::default(),
    };
    let history = ride(&axle, &asked).unwrap().history;
    let most = |key: &dyn Fn(&Value) -> f64| kept.iter().map(|kept| key(kept).abs()).fold(0.0, f64::max);
    let rest = 0.5 * axle.loading.rated_load;
    let load_swing = most(&|kept| number(&kept["loads"][0]) - rest);
    let roll_swing = most(&|kept| number(&kept["roll"]));
    for kept in &kept {
        let sample = (number(&kept["time"]) / step).round() as usize;
        let loads = [history.load.left[sample], history.load.right[sample]];
        for (side, load) in loads.into_iter().enumerate() {
            let theirs = number(&kept["loads"][side]);
            assert!((load - theirs).abs() < 5e-3 * load_swing, "{kept}: {side} {load}");
        }
        let roll = history.roll[sample];
        assert!((roll - number(&kept["roll"])).abs() < 5e-3 * roll_swing, "{kept}: {roll}");
    }
}

/// The axle of the script, rigid against tires and springs.
fn vehicle() -> Axle {
    let stiff = Material::new("stiff", 200e12, 0.3, 7850.0).unwrap();
    let bar = RoundBar::new(0.09).unwrap().into();
    let steps = vec![SpindleStep { length: 0.21, profile: bar, fillet: None }];
    let spindle = Spindle { material: stiff.clone(), steps };
    let tube = RoundTube::new(0.127, 0.0127).unwrap().into();
    let rigid = BearingStiffness { radial: 1e12, axial: 1e12 };
    let end = WheelEnd {
        inner_bearing: 0.84,
        outer_bearing: 0.95,
        mounting_face: 0.92,
        inner_stiffness: rigid,
        outer_stiffness: rigid,
        endplay: 0.0,
        preload: 0.0,
        cup_angle: 0.26,
        inner_rating: None,
        outer_rating: None,
        hub_mass: 75.0,
        camber: 0.0,
        toe: 0.0,
    };
    let tire = Tire {
        loaded_radius: 0.49,
        vertical_stiffness: 0.9e6,
        lateral_stiffness: 0.35e6,
        width: 0.28,
        damping: 700.0,
    };
    let wheel = Wheel::new(TireLayout::Single, 0.0, tire, 150.0).unwrap();
    let seat = Seat {
        at: 0.48,
        width: 0.12,
        fixing: Fixing::Clamped,
        composite_fraction: 0.0,
        suspension: Suspension::Leaf {
            vertical: 2.4e5,
            lateral: 4e6,
            fore_aft: 8e6,
            wind_up: 60e3,
            yaw: 80e3,
        },
        rotational_stiffness: 200e3,
        wall: WallBy::Given,
        wall_flexibility: 0.0,
        weld_keep_out: 0.0,
        bracket: SeatBracket {
            breadth: 0.09,
            u_bolt_diameter: 0.022,
            u_bolts: 2,
            torque: None,
            nut_factor: 0.2,
        },
        loss_factor: 0.1,
        damping: 9e3,
        rebound_damping: 9e3,
        bump_stop: None,
    };
    Axle {
        body: Body::trailer_tube(tube, 1.6, stiff, &spindle).unwrap(),
        wheel_ends: Sides { left: end, right: end },
        wheels: Sides { left: wheel, right: wheel },
        seats: Sides { left: seat, right: seat },
        stiffeners: Vec::new(),
        weld_keep_out: 0.05,
        fixed_masses: Vec::new(),
        body_height: 1.9,
        body_roll_radius: 0.8,
        body_roll_stiffness: 600e3,
        body_roll_damping: 20e3,
        ground: Ground::Rolling,
        loading: Loading {
            rated_load: 89e3,
            unladen_load: 25e3,
            raise: 0.05,
            side_force_ratio: 0.2,
            braking_force_ratio: 0.5,
            curb_force_ratio: 0.3,
            traction_force_ratio: 0.3,
            final_drive_ratio: 4.0,
            dynamic_factors: [1.0; 7],
        },
        running: Running::default(),
        stations: Vec::new(),
        seat_tables: Vec::new(),
        seat_layouts: SeatLayouts::default(),
    }
    .checked()
    .unwrap()
}
