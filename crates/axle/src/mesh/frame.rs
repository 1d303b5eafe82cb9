//! The axle as finite elements, held by its seats to a vehicle body at rest.
//!
//! Tires and road are left out on purpose: what the road does is a handful of forces on the hubs
//! ([`crate::road_contact::ground`]), so that one factorization serves every load case, and the camber change splits
//! among parts of the axle only.

use std::sync::Arc;

use axlebow_fe::{
    Attachment, Beam, BeamId, EndForce, Flexibility, Freedom, LumpedMass, NodeId, RigidBody, Rigidity,
    Spring, SpringId, Structure,
};
use axlebow_sections::{Material, SectionProperties};

use crate::assembly::bearing_play::{BearingPlace, BearingRates};
use crate::assembly::stations::{HUB, Place, fine_places, nearest, places, places_with_welds};
use crate::assembly::wall_at_seat::{WallAtSeat, WallBy};
use crate::mesh::seated_bar::SeatedBar;
use crate::mesh::stiffened_beam::{stiffened, stiffened_beam};
use crate::mesh::straight_seats::straight_seats;
use crate::mesh::tied_stiffener::{Beside, TiedStiffener, reach, tie};
use crate::mesh::weld_line::{WeldPiece, pieces};
use crate::outcome::Resultants;
use crate::parts::body::Piece;
use crate::parts::seat::{Seat, Suspension};
use crate::parts::stiffener::{Seated, Stiffener};
use crate::parts::wheel::Wheel;
use crate::sections::stiffened::StiffenedSection;
use crate::{Axle, AxleError, Side, Sides};

/// Torsional stiffness of hub against spindle through the brake, N m/rad: stiff against everything else; it
/// carries no torque unless the wheel is braked.
pub(crate) const BRAKE_STIFFNESS: f64 = 1e7;

/// Stiffness of a wheel against its hub in every direction in which the disc does not lean, N/m and N m/rad: stiff
/// against bearings and brake.
pub(crate) const DISC_STIFFNESS: f64 = 1e10;

/// Parts of a tapered stretch that are integrated apart: two leave 2e-9 of the deflection when a stretch
/// tapers two to one (`crates/fe/tests/all/convergence.rs`), and stations divide a taper further.
pub(crate) const TAPER_PARTS: usize = 2;

/// Freedom about X in a six-vector.
pub(crate) const RX: usize = 3;

/// A stretch of axle between two neighboring places.
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
    /// The section with stiffeners, where they are one section with the axle.
    pub stiffened: Option<Stiffened>,
    /// Stiffeners that their welds tie to it.
    pub bars: Vec<BarBeam>,
}

impl Stretch {
    /// Where the axle's own beam runs.
    pub(crate) fn line(&self) -> BeamLine {
        let (angle, centroid) =
            self.stiffened.as_ref().map_or((0.0, [0.0; 2]), |own| (own.angle, own.section.area.centroid));
        BeamLine { beam: self.beam, angle, centroid }
    }

    /// The axle's own beam, then those of the stiffeners.
    pub(crate) fn lines(&self) -> impl Iterator<Item = BeamLine> {
        std::iter::once(self.line()).chain(self.bars.iter().map(|bar| bar.line))
    }
}

/// A beam, and where it runs in the section.
#[derive(Debug, Clone, Copy)]
pub(crate) struct BeamLine {
    pub beam: BeamId,
    /// Angle of its stiff axis from X, rad.
    pub angle: f64,
    /// (x, z) of its centroid from the axle's own line, m.
    pub centroid: [f64; 2],
}

impl BeamLine {
    /// What it carries, about the axle's own line: beam axes 1, 2, 3 are Y, Z, X, turned by its angle.
    pub(crate) fn resultants(&self, force: &EndForce) -> Resultants {
        let own = Resultants {
            axial: force.axial,
            shear_x: force.shear_3,
            shear_z: force.shear_2,
            moment_x: force.bending_3,
            moment_z: force.bending_2,
            torsion: force.torsion,
        };
        if self.angle == 0.0 && self.centroid == [0.0; 2] {
            return own;
        }
        own.turned(self.angle).moved(self.centroid)
    }
}

/// The beam of a tied stiffener beside a stretch.
#[derive(Debug, Clone)]
pub(crate) struct BarBeam {
    pub line: BeamLine,
    pub seated: Arc<Seated>,
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
    /// Where the wheels are bolted to their hubs; they move with the wheels.
    pub hubs: Sides<NodeId>,
    /// The hubs on their bearings; the same nodes where disc and flange are rigid.
    pub barrels: Sides<NodeId>,
    /// Disc and flange between hub and wheel, where they are not rigid.
    pub discs: Sides<Option<SpringId>>,
    pub inner_bearings: Sides<SpringId>,
    pub outer_bearings: Sides<SpringId>,
    pub brakes: Sides<SpringId>,
    pub seats: Sides<SpringId>,
    /// The wall at each seat.
    pub walls: Sides<WallAtSeat>,
    /// Node of the vehicle body where it is free to move.
    pub body: Option<NodeId>,
    /// Stiffeners that are beams of their own; none where they are one section with the axle.
    pub tied: Vec<TiedStiffener>,
}

/// How stiffeners are built in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum StiffenerModel {
    /// Each a beam of its own that its weld ties to the axle; fineness as of [`pieces`].
    Tied { fineness: f64 },
    /// One section with the axle over their length, as if no weld gave way: the upper bound of what they do.
    OneSection,
}

impl StiffenerModel {
    /// The model of every answer.
    pub(crate) const USUAL: Self = StiffenerModel::Tied { fineness: 1.0 };
}

/// What is built, and the places at which there are nodes.
struct Plan<'a> {
    axle: &'a Axle,
    places: Vec<Place>,
    vehicle_body: VehicleBody,
    stiffeners: StiffenerModel,
    /// Stiffeners that are beams of their own.
    tied: Vec<TiedPlan<'a>>,
}

/// A stiffener that is a beam of its own, with the pieces of its weld.
struct TiedPlan<'a> {
    stiffener: &'a Stiffener,
    bar: SeatedBar,
    weld: Vec<WeldPiece>,
}

impl<'a> Plan<'a> {
    /// Nodes at some places, and where the welds of tied stiffeners are held.
    fn of(
        axle: &'a Axle,
        vehicle_body: VehicleBody,
        (stiffeners, places): (StiffenerModel, Vec<Place>),
    ) -> Result<Self, AxleError> {
        let StiffenerModel::Tied { fineness } = stiffeners else {
            return Ok(Plan { axle, places, vehicle_body, stiffeners, tied: Vec::new() });
        };
        let bars = axle.stiffeners.iter().zip(SeatedBar::each(axle)?);
        let tied: Vec<TiedPlan> = bars
            .map(|(stiffener, bar)| {
                let weld = pieces(axle, stiffener, &bar, fineness);
                TiedPlan { stiffener, bar, weld }
            })
            .collect();
        let welds = tied.iter().flat_map(|own| &own.weld).map(|piece| piece.y);
        let places = places_with_welds(places, welds);
        Ok(Plan { axle, places, vehicle_body, stiffeners, tied })
    }
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
        Frame::fine(axle, vehicle_body, (rates, f64::INFINITY))
    }

    /// The same with elements no longer than `longest` (m).
    pub(crate) fn fine(
        axle: &Axle,
        vehicle_body: VehicleBody,
        (rates, longest): (&BearingRates, f64),
    ) -> Result<Frame, AxleError> {
        let stations = fine_places(axle, longest);
        Frame::built(Plan::of(axle, vehicle_body, (StiffenerModel::USUAL, stations))?, rates)
    }

    /// Builds the model with its stiffeners in a given way; the body rests and bearings have no play.
    pub(crate) fn with_stiffeners(axle: &Axle, stiffeners: StiffenerModel) -> Result<Frame, AxleError> {
        let plan = Plan::of(axle, VehicleBody::AtRest, (stiffeners, places(axle)))?;
        Frame::built(plan, &BearingRates::tight(axle))
    }

    fn built(plan: Plan, rates: &BearingRates) -> Result<Frame, AxleError> {
        let mut structure = Structure::new();
        let walls = Sides {
            left: WallAtSeat::of(plan.axle, Side::Left)?,
            right: WallAtSeat::of(plan.axle, Side::Right)?,
        };
        let Nodes { line, beside, hubs, barrels, body } = add_nodes(&plan, &mut structure);
        let mut stretches = add_stretches(&plan, &walls, &line, &mut structure)?;
        let tied = tie_stiffeners(&plan, (&line, &beside), &mut stretches, &mut structure)?;
        let Plan { axle, places, .. } = plan;
        // Where places are merged, what acts beside one does so on an arm.
        let on_line = |y: f64| {
            let number = nearest(&places, y);
            Attachment::on_arm(line[number], [0.0, y - places[number].y, 0.0])
        };
        let mut bearing = |side: Side, place: BearingPlace| {
            let end = axle.wheel_ends.of(side);
            let y = side.sign() * end.bearing_at(place);
            let face = side.sign() * end.mounting_face;
            let hub_point = Attachment::on_arm(*barrels.of(side), [0.0, y - face, 0.0]);
            let [forward, up] = rates.of(side, place);
            let rates = [forward, end.bearing_stiffness(place).axial, up, 0.0, 0.0, 0.0];
            Ok(structure.add_spring(Spring::between(hub_point, on_line(y), rates))?)
        };
        let inner_bearings = both(|side| bearing(side, BearingPlace::Inner))?;
        let outer_bearings = both(|side| bearing(side, BearingPlace::Outer))?;
        let brakes = both(|side| {
            let spindle = on_line(side.sign() * axle.wheel_ends.of(side).inner_bearing);
            let rates = [0.0, 0.0, 0.0, 0.0, BRAKE_STIFFNESS, 0.0];
            // A pure couple: the point at which it acts does not matter.
            Ok(structure.add_spring(Spring::between(Attachment::at(*barrels.of(side)), spindle, rates))?)
        })?;
        let mut discs = Sides::default();
        for side in Side::BOTH {
            if let Some(rates) = disc_rates(axle.wheels.of(side)) {
                let (barrel, wheel) = (Attachment::at(*barrels.of(side)), Attachment::at(*hubs.of(side)));
                *discs.of_mut(side) = Some(structure.add_spring(Spring::between(wheel, barrel, rates))?);
            }
        }
        let seats = both(|side| {
            let seat = axle.seats.of(side);
            let y = side.sign() * seat.at;
            let far = body.map(|body| Attachment::on_arm(body, [0.0, y, 0.0]));
            let spring =
                seat_spring(seat, walls.of(side), on_line(y)).ok_or(AxleError::SeatTooStiff { side })?;
            Ok(structure.add_spring(Spring { far, ..spring })?)
        })?;
        if axle.body.flexing().straight_between_seats {
            let nodes = Sides::each(|side| line[nearest(&places, side.sign() * axle.seats.of(side).at)]);
            structure.add_spring(straight_seats(axle, &nodes, &walls))?;
        }
        add_masses(axle, (&hubs, &barrels), on_line, &mut structure);
        Ok(Frame {
            structure,
            places,
            line,
            stretches,
            hubs,
            barrels,
            discs,
            inner_bearings,
            outer_bearings,
            brakes,
            seats,
            walls,
            body,
            tied,
        })
    }

    /// Every beam of axle and stiffeners.
    pub(crate) fn beams(&self) -> impl Iterator<Item = BeamId> {
        let bars = self.tied.iter().flat_map(|tied| &tied.beams).map(|bar| bar.beam);
        self.stretches.iter().map(|stretch| stretch.beam).chain(bars)
    }

    /// Every spring between a stiffener and the axle.
    pub(crate) fn welds(&self) -> impl Iterator<Item = SpringId> {
        self.tied.iter().flat_map(|tied| tied.springs.iter().copied())
    }

    /// The places at which results are given, with their nodes, from right to left.
    pub(crate) fn stations(&self) -> impl DoubleEndedIterator<Item = (&Place, NodeId)> {
        self.places.iter().zip(self.line.iter().copied()).filter(|(place, _)| place.is_station())
    }

    /// Of each place the number of its station, counted from the left; none where there is no station.
    pub(crate) fn station_numbers(&self) -> Vec<Option<usize>> {
        let mut left = self.stations().count();
        let mut number = |place: &Place| {
            left -= usize::from(place.is_station());
            place.is_station().then_some(left)
        };
        self.places.iter().map(&mut number).collect()
    }

    /// The spring of a bearing.
    pub(crate) fn bearing(&self, side: Side, place: BearingPlace) -> SpringId {
        match place {
            BearingPlace::Inner => *self.inner_bearings.of(side),
            BearingPlace::Outer => *self.outer_bearings.of(side),
        }
    }
}

fn both(mut make: impl FnMut(Side) -> Result<SpringId, AxleError>) -> Result<Sides<SpringId>, AxleError> {
    Ok(Sides { left: make(Side::Left)?, right: make(Side::Right)? })
}

struct Nodes {
    line: Vec<NodeId>,
    /// Nodes of each tied stiffener.
    beside: Vec<Vec<NodeId>>,
    hubs: Sides<NodeId>,
    barrels: Sides<NodeId>,
    body: Option<NodeId>,
}

/// Line nodes from right to left, those of tied stiffeners beside them, each hub's node next to its outer bearing's
/// and the body's in the middle, so that the band stays narrow.
fn add_nodes(plan: &Plan, structure: &mut Structure) -> Nodes {
    let Plan { axle, places, vehicle_body, .. } = plan;
    let mut body = None;
    let reaches: Vec<_> = plan.tied.iter().map(|own| reach(places, own.stiffener)).collect();
    let mut beside = vec![Vec::new(); reaches.len()];
    let center = nearest(places, 0.0);
    let mut line = Vec::with_capacity(places.len());
    let mut hubs = Sides { left: None, right: None };
    let mut barrels = hubs;
    let mut hub = |side: Side, structure: &mut Structure| {
        let y = side.sign() * axle.wheel_ends.of(side).mounting_face;
        let wheel = structure.add_node(*HUB.of(side), [0.0, y, 0.0]);
        let flexible = disc_rates(axle.wheels.of(side)).is_some();
        let barrel = if flexible { structure.add_node("hub barrel", [0.0, y, 0.0]) } else { wheel };
        (*hubs.of_mut(side), *barrels.of_mut(side)) = (Some(wheel), Some(barrel));
    };
    let bearings = Sides::each(|side| nearest(places, side.sign() * axle.wheel_ends.of(side).outer_bearing));
    for (number, place) in places.iter().enumerate() {
        if number == bearings.left {
            hub(Side::Left, structure);
        }
        line.push(structure.add_node(place.name().clone(), [0.0, place.y, 0.0]));
        for (nodes, _) in beside.iter_mut().zip(&reaches).filter(|(_, reach)| reach.contains(&number)) {
            nodes.push(structure.add_node("stiffener", [0.0, place.y, 0.0]));
        }
        if number == bearings.right {
            hub(Side::Right, structure);
        }
        if number == center && *vehicle_body == VehicleBody::Free {
            let node = structure.add_node("vehicle-body", [0.0, 0.0, 0.0]);
            structure.hold(node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
            body = Some(node);
        }
    }
    let each = |nodes: Sides<Option<NodeId>>| {
        Sides::each(|side| nodes.of(side).expect("every axle has its outer bearings among its places"))
    };
    Nodes { line, beside, hubs: each(hubs), barrels: each(barrels), body }
}

fn add_stretches(
    plan: &Plan,
    walls: &Sides<WallAtSeat>,
    line: &[NodeId],
    structure: &mut Structure,
) -> Result<Vec<Stretch>, AxleError> {
    let Plan { axle, places, .. } = plan;
    let mut stretches = Vec::with_capacity(places.len());
    for (ends, nodes) in places.windows(2).zip(line.windows(2)) {
        let (start_y, end_y) = (ends[0].y, ends[1].y);
        let piece = piece_at(axle, 0.5 * (start_y + end_y));
        let stiffened = match plan.stiffeners {
            StiffenerModel::OneSection => stiffened(axle, (start_y, end_y))?,
            StiffenerModel::Tied { .. } => None,
        };
        if let Some(stiffened) = stiffened {
            let beam = stiffened_beam(axle, &piece, (start_y, end_y), (&stiffened, nodes))?;
            let beam = structure.add_beam(beam)?;
            let (start, end, stiffened, bars) = (nodes[0], nodes[1], Some(stiffened), Vec::new());
            stretches.push(Stretch { beam, start, end, start_y, end_y, piece, stiffened, bars });
            continue;
        }
        let share = clamped_share(axle, walls, start_y, end_y);
        let section = |distance: f64| axle.body.properties(&piece, distance);
        let flexibility = stretch_flexibility(axle, &piece, (start_y, end_y), section).scaled(1.0 - share);
        let (near, far) = (start_y.abs().min(end_y.abs()), start_y.abs().max(end_y.abs()));
        let mass = axle.body.mass_of(&piece, near, far) / (far - near);
        let beam = Beam::between(nodes[0], nodes[1], [0.0, 0.0, 1.0], flexibility)
            .with_mass(mass)
            .with_inertia(rotary_inertia(axle, &piece, 0.5 * (near + far)));
        let beam = structure.add_beam(beam)?;
        let (start, end, bars) = (nodes[0], nodes[1], Vec::new());
        stretches.push(Stretch { beam, start, end, start_y, end_y, piece, stiffened: None, bars });
    }
    Ok(stretches)
}

/// Puts the stiffeners beside the axle's line, and their beams beside its stretches.
fn tie_stiffeners(
    plan: &Plan,
    (line, beside): (&[NodeId], &[Vec<NodeId>]),
    stretches: &mut [Stretch],
    structure: &mut Structure,
) -> Result<Vec<TiedStiffener>, AxleError> {
    let mut all = Vec::with_capacity(plan.tied.len());
    for (TiedPlan { stiffener, bar, weld }, own) in plan.tied.iter().zip(beside) {
        let reach = reach(&plan.places, stiffener);
        let first = *reach.start();
        let beside = Beside { places: &plan.places[reach.clone()], own, line: &line[reach], weld };
        let tied = tie(stiffener, bar, &beside, structure)?;
        for (own, stretch) in tied.beams.iter().zip(&mut stretches[first..]) {
            let line = bar.line(own.beam, (own.start_y, own.end_y));
            let seated = Arc::clone(bar.seated(0.5 * (own.start_y + own.end_y)));
            stretch.bars.push(BarBeam { line, seated });
        }
        all.push(tied);
    }
    Ok(all)
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
pub(crate) fn clamped_share(axle: &Axle, walls: &Sides<WallAtSeat>, start_y: f64, end_y: f64) -> f64 {
    let middle = 0.5 * (start_y + end_y);
    let side = if middle < 0.0 { Side::Right } else { Side::Left };
    let seat = axle.seats.of(side);
    let under = (seat.inner_edge()..seat.outer_edge()).contains(&middle.abs());
    if under { walls.of(side).composite_fraction } else { 0.0 }
}

/// Flexibility of a bare stretch; `section` gives the section at a distance from the center line.
pub(crate) fn stretch_flexibility(
    axle: &Axle,
    piece: &Piece,
    (start_y, end_y): (f64, f64),
    section: impl Fn(f64) -> SectionProperties,
) -> Flexibility {
    let material = axle.body.material(piece.part);
    let (length, flexing) = (end_y - start_y, axle.body.flexing());
    let rigidity = |distance: f64| flexing.of(rigidity(&section(distance), material));
    if piece.is_tapered() {
        let at = |share: f64| (start_y + share * length).abs();
        Flexibility::varying(length, TAPER_PARTS, |share| rigidity(at(share)))
    } else {
        Flexibility::uniform(length, &rigidity(piece.from))
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

/// The path from the axle's wall to the vehicle body: arm or spring pack, then the wall in series; none where the two
/// together have no stiffness.
pub(crate) fn seat_spring(seat: &Seat, wall: &WallAtSeat, at: Attachment) -> Option<Spring> {
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
    match wall.by {
        WallBy::Shell | WallBy::ShellSpread => spring.in_series_with(&wall.compliance),
        WallBy::Given | WallBy::Formula => Some(spring.in_series(RX, wall.rotational_flexibility())),
    }
}

/// Rates of disc and flange between hub and wheel; none where they are rigid.
fn disc_rates(wheel: &Wheel) -> Option<[f64; 6]> {
    let lean = (wheel.disc_flexibility() > 0.0).then(|| wheel.disc_flexibility().recip())?;
    let stiff = DISC_STIFFNESS;
    Some([stiff, stiff, stiff, lean, stiff, lean])
}

fn add_masses(
    axle: &Axle,
    (hubs, barrels): (&Sides<NodeId>, &Sides<NodeId>),
    on_line: impl Fn(f64) -> Attachment,
    structure: &mut Structure,
) {
    for side in Side::BOTH {
        let (end, wheel) = (axle.wheel_ends.of(side), axle.wheels.of(side));
        let hub = *hubs.of(side);
        let middle = 0.5 * (end.inner_bearing + end.outer_bearing) - end.mounting_face;
        let place = Attachment::on_arm(*barrels.of(side), [0.0, side.sign() * middle, 0.0]);
        structure.add_mass(RigidBody::with_moments(place, end.hub_mass, [0.0; 3]));
        let place = Attachment::on_arm(hub, [0.0, side.sign() * wheel.outset(), 0.0]);
        // A rolling wheel does not take part in the axle's rotation about Y.
        let tilt = wheel.mass() * wheel.tilt_radius().powi(2);
        structure.add_mass(RigidBody::with_moments(place, wheel.mass(), [tilt, 0.0, tilt]));
    }
    for fixed in &axle.fixed_masses {
        structure.add_mass(LumpedMass { place: on_line(fixed.y), mass: fixed.mass });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::StiffenerEnd;
    use crate::example::stiffening::{loose_seats, tent};

    /// However an end runs out and whatever stations cut it, what acts is what is reported.
    #[test]
    fn the_mass_that_acts_is_that_of_the_axle() {
        for end in [
            StiffenerEnd::Square,
            StiffenerEnd::Tapered { length: 0.1 },
            StiffenerEnd::Radiused { radius: 0.12 },
            StiffenerEnd::Radiused { radius: 0.35 },
        ] {
            let mut axle = loose_seats(vec![Stiffener { end, ..tent() }]);
            axle.stations.push(crate::UserStation { name: "in the run-out".into(), y: 0.31 });
            for stiffeners in [StiffenerModel::USUAL, StiffenerModel::OneSection] {
                let frame = Frame::with_stiffeners(&axle, stiffeners).unwrap();
                let (acting, reported) = (frame.structure.mass(), axle.unsprung_mass());
                assert!((acting / reported - 1.0).abs() < 1e-9, "{end:?}: {acting} kg, not {reported} kg");
            }
        }
    }
}
