//! An invented trailer axle that the tests change to taste.

#![allow(dead_code)] // each test takes what it needs

pub mod stiffening;

use axlebow_axle::{
    Axle, BearingStiffness, Body, Fixing, Ground, Loading, RecordOptions, Ride, RideBasis, Running, Seat,
    SeatBracket, SeatLayouts, Sides, Spindle, SpindleStep, Suspension, Tire, TireLayout, USUAL_SCHEME,
    WallBy, Wheel, WheelEnd,
};
use axlebow_road::Road;
use axlebow_sections::{Material, Profile, RoundBar, RoundTube};

/// Stiffness of each bearing.
pub const BEARING: BearingStiffness = BearingStiffness { radial: 1e9, axial: 4e8 };

/// Gives both bearings of an end another radial stiffness, N/m.
pub fn stiffen_bearings(end: &mut WheelEnd, radial: f64) {
    for stiffness in [&mut end.inner_stiffness, &mut end.outer_stiffness] {
        stiffness.radial = radial;
    }
}

pub fn steel() -> Material {
    Material::new("steel", 200e9, 0.3, 7850.0).unwrap()
}

pub fn tube(od: f64, wall: f64) -> Profile {
    RoundTube::new(od, wall).unwrap().into()
}

pub fn bar(diameter: f64) -> Profile {
    RoundBar::new(diameter).unwrap().into()
}

pub fn leaf() -> Suspension {
    Suspension::Leaf { vertical: 1.5e6, lateral: 4e6, fore_aft: 8e6, wind_up: 60e3, yaw: 80e3 }
}

pub fn trailing_arm() -> Suspension {
    Suspension::TrailingArm {
        pivot_ahead: 0.5,
        pivot_above: 0.05,
        bush_radial: 20e6,
        bush_axial: 5e6,
        spring_behind: 0.38,
        spring_rate: 120e3,
    }
}

pub fn seat() -> Seat {
    Seat {
        at: 0.48,
        width: 0.12,
        fixing: Fixing::Clamped,
        composite_fraction: 0.0,
        suspension: leaf(),
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
        loss_factor: 0.0,
        damping: 12e3,
        rebound_damping: 12e3,
        bump_stop: None,
    }
}

pub fn wheel_end() -> WheelEnd {
    WheelEnd {
        inner_bearing: 0.84,
        outer_bearing: 0.95,
        mounting_face: 0.92,
        inner_stiffness: BEARING,
        outer_stiffness: BEARING,
        endplay: 0.0,
        preload: 0.0,
        cup_angle: 15_f64.to_radians(),
        inner_rating: None,
        outer_rating: None,
        hub_mass: 75.0,
        camber: 0.0,
        toe: 0.0,
    }
}

pub fn tire() -> Tire {
    Tire {
        loaded_radius: 0.49,
        vertical_stiffness: 0.9e6,
        lateral_stiffness: 0.35e6,
        width: 0.28,
        damping: 700.0,
    }
}

pub fn wheel(layout: TireLayout, outset: f64) -> Wheel {
    Wheel::new(layout, outset, tire(), 150.0).unwrap()
}

pub fn loading() -> Loading {
    Loading {
        rated_load: 89e3,
        unladen_load: 25e3,
        raise: 0.05,
        side_force_ratio: 0.2,
        braking_force_ratio: 0.5,
        curb_force_ratio: 0.3,
        traction_force_ratio: 0.3,
        final_drive_ratio: 4.0,
        dynamic_factors: [1.0; 7],
    }
}

pub fn body(tube: Profile) -> Body {
    let spindle = Spindle {
        material: steel(),
        steps: vec![
            SpindleStep { length: 0.09, profile: bar(0.09), fillet: None },
            SpindleStep { length: 0.12, profile: bar(0.07), fillet: None },
        ],
    };
    Body::trailer_tube(tube, 1.6, steel(), &spindle).unwrap()
}

pub fn axle() -> Axle {
    Axle {
        body: body(tube(0.127, 0.0127)),
        wheel_ends: Sides { left: wheel_end(), right: wheel_end() },
        wheels: Sides {
            left: wheel(TireLayout::Dual { spacing: 0.33 }, 0.0),
            right: wheel(TireLayout::Dual { spacing: 0.33 }, 0.0),
        },
        seats: Sides { left: seat(), right: seat() },
        stiffeners: Vec::new(),
        weld_keep_out: 0.05,
        fixed_masses: Vec::new(),
        body_height: 1.9,
        body_roll_radius: 0.8,
        body_roll_stiffness: 0.0,
        body_roll_damping: 0.0,
        ground: Ground::Rolling,
        loading: loading(),
        running: Running::default(),
        stations: Vec::new(),
        seat_tables: Vec::new(),
        seat_layouts: SeatLayouts::default(),
    }
    .checked()
    .unwrap()
}

/// The same axle seen in a mirror on the vehicle's center line.
pub fn mirrored(axle: &Axle) -> Axle {
    fn swapped<T: Copy>(sides: &Sides<T>) -> Sides<T> {
        Sides { left: sides.right, right: sides.left }
    }
    Axle {
        wheel_ends: swapped(&axle.wheel_ends),
        wheels: swapped(&axle.wheels),
        seats: swapped(&axle.seats),
        ..axle.clone()
    }
}

/// A ride over a road that a test changes to taste: one second at 20 m/s under the example's rated load.
pub fn ride_over(road: Road) -> Ride {
    Ride {
        name: "test".to_owned(),
        road,
        repeats: false,
        speed: 20.0,
        contact_length: 0.2,
        from: 0.0,
        to: 20.0,
        step: 1e-3,
        axle_load: 89e3,
        basis: RideBasis::Full,
        scheme: USUAL_SCHEME,
        keep: RecordOptions::default(),
    }
}
