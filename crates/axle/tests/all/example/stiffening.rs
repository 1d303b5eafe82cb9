//! An invented angle on the axle of the tests.

use axlebow_axle::{
    Actions, Axle, CaseOutcome, LoadCase, Orientation, Side, Sides, Stiffener, StiffenerEnd, StiffenerForm,
    StiffenerWeld, Suspension, TireLayout, WeldPattern, flex,
};
use axlebow_sections::Shape;
use axlebow_sections::shape::Angle;

use super::{axle, steel, wheel};

pub fn angle() -> Shape {
    Shape::Angle(Angle {
        height: 0.0762,
        width: 0.0762,
        thickness: 0.0095,
        root_radius: 0.0,
        toe_radius: 0.0,
    })
}

pub fn weld() -> StiffenerWeld {
    StiffenerWeld { leg: 0.006, pattern: WeldPattern::Continuous, both_sides: true, stiffness: 5e10 }
}

pub fn stiffener(name: &str, shape: &Shape, orientation: Orientation) -> Stiffener {
    Stiffener {
        name: name.to_owned(),
        form: StiffenerForm::of_shape(shape, orientation).unwrap(),
        material: steel(),
        clock: 0.0,
        from: -0.35,
        to: 0.35,
        end: StiffenerEnd::Square,
        weld: weld(),
    }
}

pub fn tent() -> Stiffener {
    stiffener("angle", &angle(), Orientation::ToesDown)
}

/// An axle whose seats take neither moment nor thrust, so that the moment between them is the same everywhere.
pub fn loose_seats(stiffeners: Vec<Stiffener>) -> Axle {
    let mut axle = axle();
    for side in Side::BOTH {
        let seat = axle.seats.of_mut(side);
        seat.rotational_stiffness = 0.0;
        // Seats that held the axle sideways would put a thrust on a stiffener away from the axle's line.
        seat.suspension =
            Suspension::Leaf { vertical: 1.5e6, lateral: 20.0, fore_aft: 8e6, wind_up: 60e3, yaw: 80e3 };
    }
    // The tires of a dual would share the load anew as the camber changes.
    let single = wheel(TireLayout::Single, 0.0);
    axle.wheels = Sides { left: single, right: single };
    axle.stiffeners = stiffeners;
    axle.checked().unwrap()
}

pub fn under_load(axle: &Axle, load: f64) -> CaseOutcome {
    let actions = Actions { axle_load: load, ..Actions::default() };
    let only = LoadCase { name: "load".into(), description: String::new(), dynamic_factor: 1.0, actions };
    flex(axle, &[only]).unwrap().cases.remove(0)
}
