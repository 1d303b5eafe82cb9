//! The wall at a seat, as shells and formulas see it.

use std::sync::Arc;

use axlebow_sections::{Material, Profile};
use axlebow_wall::{Fineness, JointFlexibility, SeatWall, Tie, UBolts, joint_flexibility};

use crate::assembly::axle::SeatLayouts;
use crate::parts::seat::Fixing;
use crate::parts::wall_by::WallBy;
use crate::{Axle, AxleError, Side, Sides};

/// The seat of one side for shells of its wall.
pub fn seat_wall(axle: &Axle, side: Side) -> SeatWall {
    let seat = axle.seats.of(side);
    let (profile, material) = section_at(axle, side);
    let bolts = UBolts { diameter: seat.bracket.u_bolt_diameter, count: seat.bracket.u_bolts };
    SeatWall {
        profile,
        material: material.clone(),
        width: seat.width,
        breadth: seat.bracket.breadth,
        clamp: (seat.fixing == Fixing::Clamped).then_some(bolts),
        tie: if seat.wall == WallBy::ShellSpread { Tie::Spread } else { Tie::Rigid },
        layout: axle.seat_layouts.of(side).clone(),
    }
}

/// The layouts of an axle's shells, for axles near it that are compared with it; none where no shells are solved.
pub fn seat_layouts(axle: &Axle) -> SeatLayouts {
    Sides::each(|side| {
        let seat = seat_wall(axle, side);
        let solved =
            axle.seats.of(side).wall.is_shell() && axle.seat_tables.iter().all(|own| own.at(&seat).is_none());
        solved.then(|| seat.mesh_layout(&Fineness::USUAL).ok()).flatten().map(Arc::new)
    })
}

/// Refuses a seat whose wall no shells or formulas suit; does not solve shells.
pub(crate) fn check(axle: &Axle, side: Side) -> Result<(), AxleError> {
    match axle.seats.of(side).wall {
        WallBy::Given => Ok(()),
        WallBy::Formula => by_formula(axle, side).map(|_| ()),
        WallBy::Shell | WallBy::ShellSpread => {
            let seat = seat_wall(axle, side);
            seat.check(&Fineness::USUAL).map_err(|error| AxleError::Wall { side, error })
        }
    }
}

/// What formulas say about the wall at the seat of one side.
///
/// # Errors
/// [`AxleError::FormulaNeedsTube`], [`AxleError::Wall`].
pub(crate) fn by_formula(axle: &Axle, side: Side) -> Result<JointFlexibility, AxleError> {
    let (profile, material) = section_at(axle, side);
    let Profile::RoundTube(tube) = profile else { return Err(AxleError::FormulaNeedsTube { side }) };
    joint_flexibility(&tube, material, axle.seats.of(side).width)
        .map_err(|error| AxleError::Wall { side, error })
}

/// Yield strength of the axle at a seat, Pa, where it is known.
pub(crate) fn yield_strength_at(axle: &Axle, side: Side) -> Option<f64> {
    section_at(axle, side).1.yield_strength()
}

fn section_at(axle: &Axle, side: Side) -> (Profile, &Material) {
    let at = axle.seats.of(side).at;
    let piece = axle.body.piece_at(at);
    (piece.profile_at(at), axle.body.material(piece.part))
}
