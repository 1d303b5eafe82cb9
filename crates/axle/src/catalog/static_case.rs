//! Results of a static run.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{
    BearingOutcome, CamberSplit, CaseOutcome, CaseReadings, ContactOutcome, FlexOutcome, SeatOutcome, Side,
    Sides, StationOutcome, WallAtSeat, WallBy, Warning, WheelOutcome,
};

impl Record for FlexOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "axle-mass",
            Kind::Mass,
            "Mass of the bare axle: tube or housing and spindles.",
            &Own(|run: &Self| run.axle_mass),
        ),
        number(
            "unsprung-mass",
            Kind::Mass,
            "Mass between the road and the suspension.",
            &Own(|run: &Self| run.unsprung_mass),
        ),
        part(
            "seat-walls",
            "The wall at each seat; null where both are simply given.",
            &Own(|run: &Self| solved_walls(&run.walls)),
        ),
        part("cases", "Load cases, in the order asked for.", &Part(|run: &Self| &run.cases)),
        part(
            "preheat",
            "What each steel says about preheat; empty without stiffeners.",
            &Part(|run: &Self| &run.preheat),
        ),
    ];
}

/// The walls, unless both are given.
fn solved_walls(walls: &Sides<WallAtSeat>) -> Option<Sides<WallAtSeat>> {
    Side::BOTH.iter().any(|side| walls.of(*side).by != WallBy::Given).then(|| walls.clone())
}

impl Record for Warning {
    const FIELDS: &'static [Field<Self>] = &[
        part("text", "What is doubtful.", &Text(|warning: &Self| &warning.text)),
        part("advice", "What to do.", &Text(|warning: &Self| &warning.advice)),
    ];
}

impl Record for CaseOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the case.", &Text(|case: &Self| &case.name)),
        part("description", "What acts.", &Text(|case: &Self| &case.description)),
        part(
            "dynamic-factor",
            "Dynamic factor on the static loads.",
            &Own(|case: &Self| case.dynamic_factor),
        ),
        part("wheels", "Each wheel end.", &Part(|case: &Self| &case.wheels)),
        part("bearings", "The bearings, from left to right.", &Part(|case: &Self| &case.bearings)),
        part("seats", "The axle seats.", &Part(|case: &Self| &case.seats)),
        part("stations", "Named stations, from left to right.", &Part(|case: &Self| &case.stations)),
        number(
            "peak-stress",
            Kind::Stress,
            "Fiber stress of largest magnitude along the axle, tension positive.",
            &Own(|case: &Self| case.peak_stress),
        ),
        number(
            "peak-stress-y",
            Kind::Length,
            "Position of the peak stress, left positive.",
            &Own(|case: &Self| case.peak_stress_y),
        ),
        number(
            "bow",
            Kind::Length,
            "Height of the axle's center above the line through the hubs.",
            &Own(|case: &Self| case.bow),
        ),
        number(
            "axle-roll",
            Kind::Angle,
            "Rigid roll of the line through the hubs, about X.",
            &Own(|case: &Self| case.axle_roll),
        ),
        part(
            "equilibrium-residual",
            "Largest unbalanced force over the largest applied one.",
            &Own(|case: &Self| case.equilibrium_residual),
        ),
        part(
            "stiffening",
            "What the stiffeners do; null without any.",
            &Part(|case: &Self| &case.stiffening),
        ),
    ];
}

impl Record for WheelOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "camber-change",
            Kind::Angle,
            "Change of camber by load, positive with the tire's top outward.",
            &Own(|wheel: &Self| wheel.camber_change),
        ),
        number(
            "camber",
            Kind::Angle,
            "Manufactured camber plus the change.",
            &Own(|wheel: &Self| wheel.camber),
        ),
        number(
            "toe-change",
            Kind::Angle,
            "Change of toe by load, positive toe-in.",
            &Own(|wheel: &Self| wheel.toe_change),
        ),
        number("toe", Kind::Angle, "Manufactured toe plus the change.", &Own(|wheel: &Self| wheel.toe)),
        number(
            "hub-rise",
            Kind::Length,
            "Rise of the hub against the line through the axle seats.",
            &Own(|wheel: &Self| wheel.hub_rise),
        ),
        number(
            "vertical-load",
            Kind::Force,
            "Force of the road, upward.",
            &Own(|wheel: &Self| wheel.vertical_load),
        ),
        number(
            "lateral-load",
            Kind::Force,
            "Force of the road, to the left.",
            &Own(|wheel: &Self| wheel.lateral_load),
        ),
        number(
            "longitudinal-load",
            Kind::Force,
            "Force of the road, forward.",
            &Own(|wheel: &Self| wheel.longitudinal_load),
        ),
        part("contacts", "Each tire, outer first.", &Part(|wheel: &Self| &wheel.contacts)),
        part("split", "Camber change by source.", &Part(|wheel: &Self| &wheel.split)),
    ];
}

impl Record for ContactOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "`single`, `outer` or `inner`.", &Text(|tire: &Self| tire.slot.word())),
        number("y", Kind::Length, "Position, left positive.", &Own(|tire: &Self| tire.y)),
        number(
            "vertical-load",
            Kind::Force,
            "Force of the road, upward.",
            &Own(|tire: &Self| tire.vertical_load),
        ),
        number(
            "lateral-load",
            Kind::Force,
            "Force of the road, to the left.",
            &Own(|tire: &Self| tire.lateral_load),
        ),
        part("off-road", "True when the tire has left the road.", &Own(|tire: &Self| tire.off_road)),
    ];
}

/// Bending, shear, seat, bearing, disc and clearance sum to the camber change.
impl Record for CamberSplit {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "bending",
            Kind::Angle,
            "Bending of tube, housing and spindle.",
            &Own(|split: &Self| split.bending),
        ),
        number("shear", Kind::Angle, "Transverse shear of the same.", &Own(|split: &Self| split.shear)),
        number("seat", Kind::Angle, "Seats, with the wall under them.", &Own(|split: &Self| split.seat)),
        number("wall", Kind::Angle, "The part of `seat` that is the wall.", &Own(|split: &Self| split.wall)),
        number(
            "bearing",
            Kind::Angle,
            "Deflection of the bearings under load.",
            &Own(|split: &Self| split.bearing),
        ),
        number(
            "disc",
            Kind::Angle,
            "The wheel's disc and the hub's flange.",
            &Own(|split: &Self| split.disc),
        ),
        number(
            "clearance",
            Kind::Angle,
            "Clearance of the bearings, as their hubs take it up.",
            &Own(|split: &Self| split.clearance),
        ),
    ];
}

/// Forces are those of the hub on the spindle.
impl Record for BearingOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("side", "`left` or `right`.", &Text(|bearing: &Self| bearing.side.word())),
        part("place", "`inner` or `outer`.", &Text(|bearing: &Self| bearing.place)),
        number("y", Kind::Length, "Position, left positive.", &Own(|bearing: &Self| bearing.y)),
        number(
            "vertical",
            Kind::Force,
            "Upward force of the hub on the spindle.",
            &Own(|bearing: &Self| bearing.vertical),
        ),
        number(
            "longitudinal",
            Kind::Force,
            "Forward force of the hub on the spindle.",
            &Own(|bearing: &Self| bearing.fore_aft),
        ),
        number(
            "axial",
            Kind::Force,
            "Force of the hub on the spindle, to the left.",
            &Own(|bearing: &Self| bearing.axial),
        ),
        number(
            "radial",
            Kind::Force,
            "Magnitude of the radial force.",
            &Own(|bearing: &Self| bearing.radial),
        ),
        number(
            "clearance",
            Kind::Length,
            "Radial clearance that this bearing has in this case; the play of a wheel end is all in one bearing.",
            &Own(|bearing: &Self| bearing.clearance),
        ),
    ];
}

/// Force and moment are those of the suspension on the axle.
impl Record for SeatOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        number("y", Kind::Length, "Position, left positive.", &Own(|seat: &Self| seat.y)),
        number(
            "vertical",
            Kind::Force,
            "Upward force of the suspension on the axle.",
            &Own(|seat: &Self| seat.vertical),
        ),
        number(
            "moment-x",
            Kind::Moment,
            "Moment of the suspension on the axle about X.",
            &Own(|seat: &Self| seat.moment_x),
        ),
        number("rotation", Kind::Angle, "Rotation of the axle about X.", &Own(|seat: &Self| seat.rotation)),
    ];
}

/// Resultants act on the face whose outward normal is to the left.
impl Record for StationOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the station.", &Text(|at: &Self| &at.name)),
        number("y", Kind::Length, "Position, left positive.", &Own(|at: &Self| at.y)),
        number("ux", Kind::Length, "Forward displacement.", &Own(|at: &Self| at.displacement[0])),
        number("uy", Kind::Length, "Displacement to the left.", &Own(|at: &Self| at.displacement[1])),
        number("uz", Kind::Length, "Upward displacement.", &Own(|at: &Self| at.displacement[2])),
        number("rx", Kind::Angle, "Rotation about X.", &Own(|at: &Self| at.displacement[3])),
        number("ry", Kind::Angle, "Rotation about Y.", &Own(|at: &Self| at.displacement[4])),
        number("rz", Kind::Angle, "Rotation about Z.", &Own(|at: &Self| at.displacement[5])),
        number("moment-x", Kind::Moment, "Bending moment about X.", &Own(|at: &Self| at.resultants.moment_x)),
        number("moment-z", Kind::Moment, "Bending moment about Z.", &Own(|at: &Self| at.resultants.moment_z)),
        number("shear-z", Kind::Force, "Shear along Z.", &Own(|at: &Self| at.resultants.shear_z)),
        number("shear-x", Kind::Force, "Shear along X.", &Own(|at: &Self| at.resultants.shear_x)),
        number("axial", Kind::Force, "Axial force, tension positive.", &Own(|at: &Self| at.resultants.axial)),
        number("torsion", Kind::Moment, "Torque about Y.", &Own(|at: &Self| at.resultants.torsion)),
        number(
            "stress",
            Kind::Stress,
            "Fiber stress of largest magnitude, tension positive.",
            &Own(|at: &Self| at.stress),
        ),
    ];
}

impl Record for WallAtSeat {
    const FIELDS: &'static [Field<Self>] = &[
        part("by", "`given`, `formula`, `shell` or `shell-spread`.", &Own(|wall: &Self| wall.by.word())),
        part(
            "composite-fraction",
            "Share of the flexibility under the seat that is taken away.",
            &Own(|wall: &Self| wall.composite_fraction),
        ),
        number(
            "rotational-flexibility",
            Kind::RotationalFlexibility,
            "Rotation about X per moment, beyond that of the beam.",
            &Own(|wall: &Self| wall.rotational_flexibility()),
        ),
        part(
            "compliance",
            "Motion (ux, uy, uz in m; rx, ry, rz in rad) per force (N) and moment (N m) through the seat, beyond \
             that of the beam whose flexibility under the seat is so reduced.",
            &Part(|wall: &Self| &wall.compliance),
        ),
        part("unknowns", "Unknowns of the shells; null without shells.", &Part(|wall: &Self| &wall.unknowns)),
    ];
}

impl Record for CaseReadings {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "left-camber-change",
            Kind::Angle,
            "Camber change of the left wheel.",
            &Own(|case: &Self| case.camber_change.left),
        ),
        number(
            "right-camber-change",
            Kind::Angle,
            "Camber change of the right wheel.",
            &Own(|case: &Self| case.camber_change.right),
        ),
        number(
            "bow",
            Kind::Length,
            "Height of the axle's center above the line through the hubs.",
            &Own(|case: &Self| case.bow),
        ),
        number(
            "peak-stress",
            Kind::Stress,
            "Fiber stress of largest magnitude along the axle, tension positive.",
            &Own(|case: &Self| case.peak_stress),
        ),
        number(
            "axle-mass",
            Kind::Mass,
            "Mass of the bare axle: tube or housing and spindles.",
            &Own(|case: &Self| case.axle_mass),
        ),
    ];
}
