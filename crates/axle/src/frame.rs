//! The axle as finite elements, held by its seats to a vehicle body at rest.
//!
//! Tires and road are left out on purpose: what the road does is a handful of forces on the hubs
//! ([`crate::ground`]), so that one factorization serves every load case, and the camber change splits
//! among parts of the axle only.

use std::sync::Arc;

use axlebow_fe::{
    Attachment, Beam, BeamId, Flexibility, Freedom, LumpedMass, NodeId, RigidBody, Rigidity, Spring,
    SpringId, Structure,
};
use axlebow_sections::{Material, SectionProperties};

use crate::bearing_play::{BearingPlace, BearingRates};
use crate::body::Piece;
use crate::seat::{Seat, Suspension};
use crate::stations::{HUB, Place, nearest, places};
use crate::stiffened::StiffenedSection;
use crate::stiffener::Stiffener;
use crate::{Axle, AxleError, Side, Sides};

/// Torsional stiffness of hub against spindle through the brake, N m/rad: stiff against everything else; it
/// carries no torque unless the wheel is braked.
const BRAKE_STIFFNESS: f64 = 1e7;

/// Parts of a tapered stretch that are integrated apart: two leave 2e-9 of the deflection when a stretch
/// tapers two to one (`crates/fe/tests/convergence.rs`), and stations divide a taper further.
const TAPER_PARTS: usize = 2;

/// Freedom about X in a six-vector.
pub(crate) const RX: usize = 3;

/// A stretch of axle between two neighbouring places.
#[derive(Debug, Clone)]
pub(crate) struct Stretch {
    pub beam: BeamId,
    /// Node at its right end.
    pub start: NodeId,
    /// Node at its left end.
    pub end: NodeId,
    pub start_y: f64,
    pub end_y: f64,
    /// Piece of the body that it belongs to.
    pub piece: Piece,
    /// The section with stiffeners on it; none where the axle is bare.
    pub stiffened: Option<Stiffened>,
}

/// A stiffened section and how its beam lies.
#[derive(Debug, Clone)]
pub(crate) struct Stiffened {
    pub section: Arc<StiffenedSection>,
    /// Angle of its stiff axis from X, rad.
    pub angle: f64,
}

/// The finite-element model of an axle and where its parts are in it.
#[derive(Debug)]
pub(crate) struct Frame {
    pub structure: Structure,
    pub places: Vec<Place>,
    /// Node of each place.
    pub line: Vec<NodeId>,
    pub stretches: Vec<Stretch>,
    pub hubs: Sides<NodeId>,
    pub inner_bearings: Sides<SpringId>,
    pub outer_bearings: Sides<SpringId>,
    pub brakes: Sides<SpringId>,
    pub seats: Sides<SpringId>,
    /// Node of the vehicle body where it is free to move.
    pub body: Option<NodeId>,
}

/// What the vehicle body does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum VehicleBody {
    /// It rests, and its seats with it.
    AtRest,
    /// It heaves and rolls; its mass is the caller's to add.
    Free,
}

impl Frame {
    /// Builds the model with bearings without play.
    pub(crate) fn of(axle: &Axle, vehicle_body: VehicleBody) -> Result<Frame, AxleError> {
        Frame::with_rates(axle, vehicle_body, &BearingRates::tight(axle))
    }

    /// Builds the model with bearings of given radial stiffness.
    pub(crate) fn with_rates(
        axle: &Axle,
        vehicle_body: VehicleBody,
        rates: &BearingRates,
    ) -> Result<Frame, AxleError> {
        let places = places(axle);
        let mut structure = Structure::new();
        let Nodes { line, hubs, body } = add_nodes(axle, &places, vehicle_body, &mut structure);
        let stretches = add_stretches(axle, &places, &line, &mut structure)?;
        let node_at = |y: f64| line[nearest(&places, y)];
        let mut bearing = |side: Side, place: BearingPlace| {
            let end = axle.wheel_ends.of(side);
            let y = side.sign() * end.bearing_at(place);
            let face = side.sign() * end.mounting_face;
            let hub_point = Attachment::on_arm(*hubs.of(side), [0.0, y - face, 0.0]);
            let [forward, up] = rates.of(side, place);
            let rates = [forward, end.axial_stiffness, up, 0.0, 0.0, 0.0];
            structure.add_spring(Spring::between(hub_point, Attachment::at(node_at(y)), rates))
        };
        let inner_bearings = both(|side| bearing(side, BearingPlace::Inner))?;
        let outer_bearings = both(|side| bearing(side, BearingPlace::Outer))?;
        let brakes = both(|side| {
            let spindle = node_at(side.sign() * axle.wheel_ends.of(side).inner_bearing);
            let rates = [0.0, 0.0, 0.0, 0.0, BRAKE_STIFFNESS, 0.0];
            // A pure couple: the point at which it acts does not matter.
            structure.add_spring(Spring::between(
                Attachment::at(*hubs.of(side)),
                Attachment::at(spindle),
                rates,
            ))
        })?;
        let seats = both(|side| {
            let seat = axle.seats.of(side);
            let y = side.sign() * seat.at;
            let far = body.map(|body| Attachment::on_arm(body, [0.0, y, 0.0]));
            structure.add_spring(Spring { far, ..seat_spring(seat, node_at(y)) })
        })?;
        add_masses(axle, &hubs, node_at, &mut structure);
        Ok(Frame {
            structure,
            places,
            line,
            stretches,
            hubs,
            inner_bearings,
            outer_bearings,
            brakes,
            seats,
            body,
        })
    }

    /// The spring of a bearing.
    pub(crate) fn bearing(&self, side: Side, place: BearingPlace) -> SpringId {
        match place {
            BearingPlace::Inner => *self.inner_bearings.of(side),
            BearingPlace::Outer => *self.outer_bearings.of(side),
        }
    }
}

fn both(
    mut make: impl FnMut(Side) -> Result<SpringId, axlebow_fe::FeError>,
) -> Result<Sides<SpringId>, AxleError> {
    Ok(Sides { left: make(Side::Left)?, right: make(Side::Right)? })
}

struct Nodes {
    line: Vec<NodeId>,
    hubs: Sides<NodeId>,
    body: Option<NodeId>,
}

/// Line nodes from right to left, each hub's node next to its outer bearing's and the body's in the middle, so
/// that the band stays narrow.
fn add_nodes(axle: &Axle, places: &[Place], vehicle_body: VehicleBody, structure: &mut Structure) -> Nodes {
    let mut body = None;
    let centre = nearest(places, 0.0);
    let mut line = Vec::with_capacity(places.len());
    let mut hubs = Sides { left: None, right: None };
    let mut hub = |side: Side, structure: &mut Structure| {
        let y = side.sign() * axle.wheel_ends.of(side).mounting_face;
        *hubs.of_mut(side) = Some(structure.add_node(*HUB.of(side), [0.0, y, 0.0]));
    };
    let bearings = Sides::each(|side| nearest(places, side.sign() * axle.wheel_ends.of(side).outer_bearing));
    for (number, place) in places.iter().enumerate() {
        if number == bearings.left {
            hub(Side::Left, structure);
        }
        line.push(structure.add_node(place.name().clone(), [0.0, place.y, 0.0]));
        if number == bearings.right {
            hub(Side::Right, structure);
        }
        if number == centre && vehicle_body == VehicleBody::Free {
            let node = structure.add_node("vehicle-body", [0.0, 0.0, 0.0]);
            structure.hold(node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
            body = Some(node);
        }
    }
    let of = |node: Option<NodeId>| node.expect("every axle has its outer bearings among its places");
    Nodes { line, hubs: Sides { left: of(hubs.left), right: of(hubs.right) }, body }
}

fn add_stretches(
    axle: &Axle,
    places: &[Place],
    line: &[NodeId],
    structure: &mut Structure,
) -> Result<Vec<Stretch>, AxleError> {
    let mut stretches = Vec::with_capacity(places.len());
    for (ends, nodes) in places.windows(2).zip(line.windows(2)) {
        let (start_y, end_y) = (ends[0].y, ends[1].y);
        let piece = piece_at(axle, 0.5 * (start_y + end_y));
        let stiffened = stiffened(axle, &piece, (start_y, end_y))?;
        if let Some(stiffened) = stiffened {
            let beam = stiffened_beam(axle, &piece, (start_y, end_y), (&stiffened, nodes))?;
            let beam = structure.add_beam(beam)?;
            let (start, end, stiffened) = (nodes[0], nodes[1], Some(stiffened));
            stretches.push(Stretch { beam, start, end, start_y, end_y, piece, stiffened });
            continue;
        }
        let share = clamped_share(axle, start_y, end_y);
        let flexibility = flexibility(axle, &piece, (start_y, end_y)).scaled(1.0 - share);
        let (near, far) = (start_y.abs().min(end_y.abs()), start_y.abs().max(end_y.abs()));
        let mass = axle.body.mass_of(&piece, near, far) / (far - near);
        let beam = Beam::between(nodes[0], nodes[1], [0.0, 0.0, 1.0], flexibility)
            .with_mass(mass)
            .with_inertia(rotary_inertia(axle, &piece, 0.5 * (near + far)));
        let beam = structure.add_beam(beam)?;
        let (start, end) = (nodes[0], nodes[1]);
        stretches.push(Stretch { beam, start, end, start_y, end_y, piece, stiffened: None });
    }
    Ok(stretches)
}

/// The section in the middle of a stretch, where stiffeners run over it.
fn stiffened(axle: &Axle, piece: &Piece, ends: (f64, f64)) -> Result<Option<Stiffened>, AxleError> {
    let middle = 0.5 * (ends.0 + ends.1);
    let section = stiffened_section(axle, piece, middle)?;
    Ok(section.map(|section| Stiffened { angle: section.axes().angle, section: Arc::new(section) }))
}

fn stiffened_section(axle: &Axle, piece: &Piece, y: f64) -> Result<Option<StiffenedSection>, AxleError> {
    let shares = axle.stiffeners.iter().map(|stiffener| (stiffener, stiffener.share_at(y)));
    let present: Vec<(&Stiffener, f64)> = shares.filter(|(_, share)| *share > 0.0).collect();
    if present.is_empty() {
        return Ok(None);
    }
    StiffenedSection::of(axle, piece, y.abs(), &present).map(Some)
}

/// The beam of a stiffened stretch, along the centroid in its middle.
fn stiffened_beam(
    axle: &Axle,
    piece: &Piece,
    (start_y, end_y): (f64, f64),
    (stiffened, nodes): (&Stiffened, &[NodeId]),
) -> Result<Beam, AxleError> {
    let (section, angle, length) = (&stiffened.section, stiffened.angle, end_y - start_y);
    let even = |y: f64| axle.stiffeners.iter().all(|stiffener| [0.0, 1.0].contains(&stiffener.share_at(y)));
    let inside = 1e-9 * length;
    let flexibility = if !piece.is_tapered() && even(start_y + inside) && even(end_y - inside) {
        Flexibility::uniform(length, &section.rigidity(angle))
    } else {
        let at = |share: f64| stiffened_section(axle, piece, start_y + share * length);
        // Shares at which a beam is integrated lie within it, where the middle's stiffeners are too.
        Flexibility::varying(length, TAPER_PARTS, |share| match at(share) {
            Ok(Some(there)) => there.rigidity(angle),
            _ => section.rigidity(angle),
        })
    };
    let [x, z] = section.area.centroid;
    let (sine, cosine) = angle.sin_cos();
    let mut beam = Beam::between(nodes[0], nodes[1], [-sine, 0.0, cosine], flexibility)
        .with_mass(section.mass_per_length)
        .with_inertia(section.rotary_inertia(angle));
    beam.start = Attachment::on_arm(nodes[0], [x, 0.0, z]);
    beam.end = Attachment::on_arm(nodes[1], [x, 0.0, z]);
    Ok(beam)
}

/// Mass moments of inertia per length about the beam's axes Y, Z, X, in the middle of a stretch.
fn rotary_inertia(axle: &Axle, piece: &Piece, middle: f64) -> [f64; 3] {
    let section = axle.body.properties(piece, middle);
    let density = axle.body.material(piece.part).density();
    let (about_x, about_z) = (density * section.second_moment_x, density * section.second_moment_z);
    [about_x + about_z, about_z, about_x]
}

pub(crate) fn piece_at(axle: &Axle, y: f64) -> Piece {
    let pieces = axle.body.pieces();
    let inside = |piece: &&Piece| y.abs() <= piece.to;
    *pieces.iter().find(inside).unwrap_or(&pieces[pieces.len() - 1])
}

/// Share by which a clamp over this stretch takes its flexibility away.
fn clamped_share(axle: &Axle, start_y: f64, end_y: f64) -> f64 {
    let middle = 0.5 * (start_y + end_y);
    let seat = axle.seats.of(if middle < 0.0 { Side::Right } else { Side::Left });
    let under = (seat.inner_edge()..seat.outer_edge()).contains(&middle.abs());
    if under { seat.composite_fraction } else { 0.0 }
}

fn flexibility(axle: &Axle, piece: &Piece, (start_y, end_y): (f64, f64)) -> Flexibility {
    let material = axle.body.material(piece.part);
    let length = end_y - start_y;
    if piece.is_tapered() {
        let at = |share: f64| (start_y + share * length).abs();
        Flexibility::varying(length, TAPER_PARTS, |share| {
            rigidity(&axle.body.properties(piece, at(share)), material)
        })
    } else {
        Flexibility::uniform(length, &rigidity(&axle.body.properties(piece, piece.from), material))
    }
}

/// Local axes of the axle line: 1 = Y, 2 = Z, 3 = X.
fn rigidity(section: &SectionProperties, material: &Material) -> Rigidity {
    let (e, g) = (material.elastic_modulus(), material.shear_modulus());
    Rigidity {
        axial: e * section.area,
        torsion: g * section.torsion_constant,
        bending_2: e * section.second_moment_z,
        bending_3: e * section.second_moment_x,
        shear_2: section.shear_coefficient_z * g * section.area,
        shear_3: section.shear_coefficient_x * g * section.area,
    }
}

/// The path from the axle's wall to the vehicle body: arm or spring pack, then the wall in series.
fn seat_spring(seat: &Seat, node: NodeId) -> Spring {
    let at = Attachment::at(node);
    let about_x = seat.rotational_stiffness;
    let spring = match seat.suspension {
        Suspension::Leaf { vertical, lateral, fore_aft, wind_up, yaw } => {
            Spring::to_ground(at, [fore_aft, lateral, vertical, about_x, wind_up, yaw])
        }
        Suspension::TrailingArm {
            pivot_ahead,
            pivot_above,
            bush_radial,
            bush_axial,
            spring_behind,
            spring_rate,
        } => Spring::to_ground(at, [0.0, 0.0, 0.0, about_x, 0.0, 0.0])
            .with_rates_at(
                [pivot_ahead, 0.0, pivot_above],
                [bush_radial, bush_axial, bush_radial, 0.0, 0.0, 0.0],
            )
            .with_rates_at([-spring_behind, 0.0, 0.0], [0.0, 0.0, spring_rate, 0.0, 0.0, 0.0]),
    };
    spring.in_series(RX, seat.wall_flexibility)
}

fn add_masses(axle: &Axle, hubs: &Sides<NodeId>, node_at: impl Fn(f64) -> NodeId, structure: &mut Structure) {
    for side in Side::BOTH {
        let (end, wheel) = (axle.wheel_ends.of(side), axle.wheels.of(side));
        let hub = *hubs.of(side);
        let middle = 0.5 * (end.inner_bearing + end.outer_bearing) - end.mounting_face;
        let place = Attachment::on_arm(hub, [0.0, side.sign() * middle, 0.0]);
        structure.add_mass(RigidBody::with_moments(place, end.hub_mass, [0.0; 3]));
        let place = Attachment::on_arm(hub, [0.0, side.sign() * wheel.outset(), 0.0]);
        // A rolling wheel does not take part in the axle's rotation about Y.
        let tilt = wheel.mass() * wheel.tilt_radius().powi(2);
        structure.add_mass(RigidBody::with_moments(place, wheel.mass(), [tilt, 0.0, tilt]));
    }
    for fixed in &axle.fixed_masses {
        let node = node_at(fixed.y);
        let arm = [0.0, fixed.y - structure.position(node)[1], 0.0];
        structure.add_mass(LumpedMass { place: Attachment::on_arm(node, arm), mass: fixed.mass });
    }
}
