//! The beams of an axle and its stiffeners.

use std::sync::Arc;

use axlebow_fe::{Beam, Flexibility, NodeId, Rigidity, Structure};
use axlebow_sections::{Material, SectionProperties};

use crate::assembly::stations::reach;
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::plan::{Plan, StiffenerModel, TiedPlan};
use crate::mesh::stiffened_beam::{stiffened, stiffened_beam};
use crate::mesh::stretch::{BarBeam, Stretch, TAPER_PARTS};
use crate::mesh::tied_stiffener::{Beside, TiedStiffener, tie};
use crate::parts::body::Piece;
use crate::{Axle, AxleError, Side, Sides};

/// Adds the beams of the axle's own line, a stretch between each two neighboring places.
pub(crate) fn add_stretches(
    plan: &Plan,
    walls: &Sides<WallAtSeat>,
    line: &[NodeId],
    structure: &mut Structure,
) -> Result<Vec<Stretch>, AxleError> {
    let Plan { axle, places, .. } = plan;
    let mut stretches = Vec::with_capacity(places.len());
    for (ends, nodes) in places.windows(2).zip(line.windows(2)) {
        let (start_y, end_y) = (ends[0].y, ends[1].y);
        let piece = axle.body.piece_at(0.5 * (start_y + end_y));
        let stiffened = match plan.stiffeners {
            StiffenerModel::OneSection => stiffened(axle, (start_y, end_y))?,
            StiffenerModel::Tied { .. } => None,
        };
        let beam = match &stiffened {
            Some(stiffened) => stiffened_beam(axle, &piece, (start_y, end_y), (stiffened, nodes))?,
            None => bare_beam((axle, walls), &piece, (start_y, end_y), nodes),
        };
        let beam = structure.add_beam(beam)?;
        let (start, end, bars) = (nodes[0], nodes[1], Vec::new());
        stretches.push(Stretch { beam, start, end, start_y, end_y, piece, stiffened, bars });
    }
    Ok(stretches)
}

/// The beam of a stretch without stiffeners, or beside them.
fn bare_beam(
    (axle, walls): (&Axle, &Sides<WallAtSeat>),
    piece: &Piece,
    (start_y, end_y): (f64, f64),
    nodes: &[NodeId],
) -> Beam {
    let share = clamped_share(axle, walls, start_y, end_y);
    let section = |distance: f64| axle.body.properties(piece, distance);
    let flexibility = stretch_flexibility(axle, piece, (start_y, end_y), section).scaled(1.0 - share);
    let (near, far) = (start_y.abs().min(end_y.abs()), start_y.abs().max(end_y.abs()));
    let mass = axle.body.mass_of(piece, near, far) / (far - near);
    Beam::between(nodes[0], nodes[1], [0.0, 0.0, 1.0], flexibility)
        .with_mass(mass)
        .with_inertia(rotary_inertia(axle, piece, 0.5 * (near + far)))
}

/// Puts the stiffeners beside the axle's line, and their beams beside its stretches.
pub(crate) fn tie_stiffeners(
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
