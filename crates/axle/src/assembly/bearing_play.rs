//! Play of the wheel bearings: how much there is, and which bearing of a pair has it.
//!
//! A hub runs on two tapered bearings set against each other. Moving it along the axle by x opens the one that
//! it leaves by `x tan α` radially (α the angle of the cups) and closes the other, so that an endplay e leaves
//! the two radial clearances a sum of
//!
//! `c = e tan α`.
//!
//! A radial load F on a tapered bearing pushes the hub away along the axle, with the thrust `1.25 F tan α`
//! (0.5 F/Y with Y = 0.4 cot α). Of the two thrusts, with the side force of the road, the larger one opens its
//! own bearing and squeezes the other: the squeezed bearing has no play, and the open one all of it.
//! The inner bearing opens as the hub moves outboard. A handbook (Budynas & Nisbett) uses the same rule to
//! find which bearing carries the thrust. Small angles; the thrust of the springs' own axial give is left out.
//!
//! Source: R. G. Budynas & J. K. Nisbett, Shigley's Mechanical Engineering Design, 11th ed., sec. 11-9, and
//! ISO 281:2007 for Y; both from memory.

use crate::parts::bearing_place::{BearingPlace, Pair};
use crate::parts::bearing_stiffness::INDUCED_THRUST;
use crate::{Axle, Side, Sides};

/// The bearing of a wheel end that has the play.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct LooseBearing {
    pub place: BearingPlace,
    /// Distance that the hub can move from the middle in any radial direction, m.
    pub clearance: f64,
}

/// Motion that a hub has taken up at its loose bearing against the spindle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TakenUp {
    pub bearing: LooseBearing,
    /// Forward and up, m.
    pub motion: [f64; 2],
}

/// Whether any wheel end has play.
pub(crate) fn has_play(axle: &Axle) -> bool {
    Side::BOTH.iter().any(|side| axle.wheel_ends.of(*side).radial_play() > 0.0)
}

/// The bearing of one end that has the play, if there is any.
///
/// - `radial`: radial load of each bearing, N
/// - `outboard`: side force of the road on the wheel, outboard, N
pub(crate) fn loose_bearing(
    axle: &Axle,
    side: Side,
    radial: Pair<f64>,
    outboard: f64,
) -> Option<LooseBearing> {
    let end = axle.wheel_ends.of(side);
    let clearance = end.radial_play();
    let thrust = INDUCED_THRUST * end.cup_angle.tan() * (radial.inner - radial.outer) + outboard;
    let place = if thrust > 0.0 { BearingPlace::Inner } else { BearingPlace::Outer };
    (clearance > 0.0).then_some(LooseBearing { place, clearance })
}

/// Radial stiffness of each bearing of both ends, forward and up, N/m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct BearingRates(Sides<Pair<[f64; 2]>>);

impl BearingRates {
    /// Without play.
    pub(crate) fn tight(axle: &Axle) -> Self {
        BearingRates(Sides::each(|side| {
            let end = axle.wheel_ends.of(side);
            Pair { inner: [end.inner_stiffness.radial; 2], outer: [end.outer_stiffness.radial; 2] }
        }))
    }

    pub(crate) fn of(&self, side: Side, place: BearingPlace) -> [f64; 2] {
        *self.0.of(side).of(place)
    }

    /// The same with other rates at one bearing.
    pub(crate) fn with(mut self, side: Side, place: BearingPlace, rates: [f64; 2]) -> Self {
        *self.0.of_mut(side).of_mut(place) = rates;
        self
    }
}
