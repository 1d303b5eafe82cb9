//! From a solved state to the trade's words: bearings, stations, tire forces.

use std::borrow::Cow;

use axlebow_fe::{NodeId, State};

use crate::assembly::station_names::{HUB, INNER_TIRE_CONTACT, OUTER_TIRE_CONTACT, TIRE_CONTACT};
use crate::mesh::stretch::Stretch;
use crate::outcome::{BearingOutcome, ContactOutcome, Resultants, StationOutcome};
use crate::parts::bearing_place::BearingPlace;
use crate::road_contact::ground::{Contact, TireForce};
use crate::statics::along::{Cut, cut_through};
use crate::statics::seat_line::SeatLineFrame;
use crate::statics::static_design::StaticDesign;
use crate::{Side, Sides, TireSlot};

/// Loads of the four bearings.
pub(crate) fn bearings(design: &StaticDesign, state: &State, contact: &Contact) -> Vec<BearingOutcome> {
    let one = |side: Side, place: BearingPlace| {
        let end = design.axle.wheel_ends.of(side);
        // The spring's near side is the hub, so its force is the spindle's on the hub.
        let [x, axial, z, ..] = state.spring_force(design.frame.bearing(side, place));
        let endplay_contact =
            contact.endplay_contact.of(side).filter(|endplay_contact| endplay_contact.bearing.place == place);
        // What is taken up of the play presses nothing.
        let pressed = |force: f64, axis: usize| match endplay_contact {
            Some(endplay_contact) => {
                force - end.bearing_stiffness(place).radial * endplay_contact.motion[axis]
            }
            None => force,
        };
        let (fore_aft, vertical) = (pressed(x, 0), pressed(z, 1));
        BearingOutcome {
            side,
            place: place.word(),
            y: side.sign() * end.bearing_at(place),
            vertical,
            fore_aft,
            axial,
            radial: fore_aft.hypot(vertical),
            clearance: endplay_contact.map_or(0.0, |endplay_contact| endplay_contact.bearing.clearance),
        }
    };
    vec![
        one(Side::Left, BearingPlace::Outer),
        one(Side::Left, BearingPlace::Inner),
        one(Side::Right, BearingPlace::Inner),
        one(Side::Right, BearingPlace::Outer),
    ]
}

/// Each tire of one end, and their sum.
pub(crate) fn contacts(
    design: &StaticDesign,
    side: Side,
    contact: &Contact,
) -> (Vec<ContactOutcome>, TireForce) {
    let mut sum = TireForce::default();
    let mut each = Vec::with_capacity(2);
    for (tire, force) in design.tires().iter().zip(&contact.tires).filter(|(tire, _)| tire.side == side) {
        sum.longitudinal += force.longitudinal;
        sum.lateral += force.lateral;
        sum.vertical += force.vertical;
        each.push(ContactOutcome {
            slot: tire.slot,
            y: tire.y,
            vertical_load: force.vertical,
            lateral_load: force.lateral,
            off_road: force.off_road,
        });
    }
    (each, sum)
}

/// All named stations from left to right.
pub(crate) fn stations(
    design: &StaticDesign,
    state: &State,
    contact: &Contact,
    leveled: &SeatLineFrame,
) -> Vec<StationOutcome> {
    let mut stations = line_stations(design, state, leveled);
    for side in Side::BOTH {
        stations.extend(wheel_stations(design, (side, state), contact, leveled));
    }
    stations.sort_by(|a, b| b.y.total_cmp(&a.y));
    stations
}

fn line_stations(design: &StaticDesign, state: &State, leveled: &SeatLineFrame) -> Vec<StationOutcome> {
    let frame = &design.frame;
    let mut stations = Vec::new();
    for (i, place) in frame.places.iter().enumerate().filter(|(_, place)| place.is_station()) {
        let right = i.checked_sub(1).and_then(|before| frame.stretches.get(before));
        let left = frame.stretches.get(i);
        let Cut { whole: resultants, axle: axle_resultants, stress } =
            governing(design, state, [right, left], place.y);
        let displacement = leveled.taken_out(state.motion(frame.line[i]), place.y, 0.0);
        for name in place.names() {
            let (name, y) = (name.clone().into_owned(), place.y);
            stations.push(StationOutcome { name, y, displacement, resultants, axle_resultants, stress });
        }
    }
    stations
}

/// The cut at a place, with the stress of larger magnitude of both its sides. Of the two sides the one with
/// the larger bending moment counts, as at a seat; where the moment does not jump, the inboard side.
fn governing(design: &StaticDesign, state: &State, [right, left]: [Option<&Stretch>; 2], y: f64) -> Cut {
    let side = |stretch: &Stretch| {
        cut_through(design.axle, stretch, y, |beam| state.beam_forces(beam).at(y - stretch.start_y))
    };
    let (inboard, outboard) = if y < 0.0 { (left, right) } else { (right, left) };
    let (Some(inboard), Some(outboard)) = (inboard.map(side), outboard.map(side)) else {
        return inboard.or(outboard).map(side).unwrap_or_default();
    };
    let stress = if outboard.stress.abs() > inboard.stress.abs() { outboard.stress } else { inboard.stress };
    let moment = |force: &Resultants| force.moment_x.hypot(force.moment_z);
    // Rounding of a moment is far below a millionth of the forces' moment over a meter.
    let shears = inboard.whole.shear_z.abs() + outboard.whole.shear_z.abs();
    let rounding = 1e-6 * (moment(&inboard.whole) + shears);
    let jumps = moment(&outboard.whole) > moment(&inboard.whole) + rounding;
    Cut { stress, ..if jumps { outboard } else { inboard } }
}

/// The hub and its tire contacts: what the hub carries across a cut outboard of it.
fn wheel_stations(
    design: &StaticDesign,
    (side, state): (Side, &State),
    contact: &Contact,
    leveled: &SeatLineFrame,
) -> Vec<StationOutcome> {
    let hub = *design.frame.hubs.of(side);
    let face = side.sign() * design.axle.wheel_ends.of(side).mounting_face;
    let radius = design.axle.wheels.of(side).tire().loaded_radius;
    let own = || design.tires().iter().zip(&contact.tires).filter(move |(tire, _)| tire.side == side);
    let mut moment_x = 0.0;
    let mut sum = TireForce::default();
    let mut stations = Vec::with_capacity(3);
    for (tire, force) in own() {
        moment_x += (tire.y - face) * force.vertical + radius * force.lateral;
        sum.vertical += force.vertical;
        sum.lateral += force.lateral;
        sum.longitudinal += force.longitudinal;
        let displacement = leveled.taken_out(carried(state, hub, tire.y - face, -radius), tire.y, -radius);
        let pair: &Sides<&'static str> = match tire.slot {
            TireSlot::Outer => &OUTER_TIRE_CONTACT,
            TireSlot::Inner => &INNER_TIRE_CONTACT,
            TireSlot::Single => &TIRE_CONTACT,
        };
        stations.push(bare_station(pair.of(side), tire.y, displacement, cut(side, force, 0.0)));
    }
    let displacement = hub_displacement(design, side, state, leveled);
    stations.push(bare_station(HUB.of(side), face, displacement, cut(side, &sum, moment_x)));
    stations
}

/// Displacement and rotation of a hub against the line through the seats.
pub(crate) fn hub_displacement(
    design: &StaticDesign,
    side: Side,
    state: &State,
    leveled: &SeatLineFrame,
) -> [f64; 6] {
    let face = side.sign() * design.axle.wheel_ends.of(side).mounting_face;
    leveled.taken_out(state.motion(*design.frame.hubs.of(side)), face, 0.0)
}

fn bare_station(name: &str, y: f64, displacement: [f64; 6], resultants: Resultants) -> StationOutcome {
    let name = Cow::from(name).into_owned();
    StationOutcome { name, y, displacement, resultants, axle_resultants: resultants, stress: 0.0 }
}

/// Resultants on the face with outward normal +Y that the forces outboard of a cut put on the axle: outboard
/// is +Y of the cut on the left, −Y on the right.
fn cut(side: Side, force: &TireForce, moment_x: f64) -> Resultants {
    let sign = side.sign();
    Resultants {
        axial: sign * force.lateral,
        shear_x: sign * force.longitudinal,
        shear_z: sign * force.vertical,
        moment_x: sign * moment_x,
        ..Resultants::default()
    }
}

/// Motion of a point of the hub, `y` and `z` from it.
fn carried(state: &State, hub: NodeId, y: f64, z: f64) -> [f64; 6] {
    let [ux, uy, uz, rx, ry, rz] = state.motion(hub);
    [ux + ry * z - rz * y, uy - rx * z, uz + rx * y, rx, ry, rz]
}
