//! An axle's line with its hubs on it: how the hubs move per force on them.

use super::hub::{BearingForces, Hub};
use super::seated_chain::{LineLoads, Matrix12, OwnAnswer, SeatedChain, first};
use super::state::LineState;
use super::wrench::Wrench;
use crate::road_contact::ground::Hubs;
use crate::statics::split::camber_load;
use crate::{Axle, Side, Sides};

/// An axle's line with its hubs on it.
#[derive(Debug)]
pub(crate) struct StandingChain<'a> {
    pub axle: &'a Axle,
    pub seated: &'a SeatedChain,
    pub hubs: Sides<Hub>,
    /// Motion of both hubs per force on them.
    pub compliance: Matrix12,
}

impl<'a> StandingChain<'a> {
    /// - `seated`: the line of this axle
    pub(crate) fn of(axle: &'a Axle, seated: &'a SeatedChain) -> Self {
        let hubs = Sides::each(|side| Hub::of(axle, side, *seated.spindles.of(side)));
        let mut compliance = seated.at_faces;
        for side in Side::BOTH {
            let (o, own) = (first(side), hubs.of(side).flexibility(seated.overhangs.of(side)));
            (0..36).for_each(|k| compliance[(o + k / 6, o + k % 6)] += own[k / 6][k % 6]);
        }
        StandingChain { axle, seated, hubs, compliance }
    }

    /// What the line carries under forces on the hubs (left first) beside their weight, and loads of its own.
    pub(crate) fn state(&self, hub_forces: &Hubs, loads: &LineLoads) -> LineState {
        let field = loads.own.field;
        let discs =
            Sides::each(|side| self.hubs.of(side).disc_force(&hub_forces.as_slice()[first(side)..], field));
        let forces: Sides<Wrench> = Sides::each(|side| {
            let weight = self.hubs.of(side).weight_in(field);
            std::array::from_fn(|i| hub_forces[first(side) + i] + weight[i])
        });
        let bearings = Sides::each(|side| -> BearingForces {
            self.hubs.of(side).bearing_forces(forces.of(side), loads.stretch(side))
        });
        LineState { discs, ..self.seated.loaded(loads, &forces, bearings) }
    }

    /// Unit states of both wheels' camber. No side force acts in them, so that the stiffness of no bearing does.
    pub(crate) fn camber_units(&self) -> &'a Sides<LineState> {
        let unit = |side: Side| {
            let load = camber_load(side, self.axle.hub_distance());
            self.state(&Hubs::from_fn(|i, _| load[i]), &LineLoads::default())
        };
        self.seated.camber_units.get_or_init(|| Sides::each(unit))
    }

    /// Motion of both hubs under loads of the axle itself.
    pub(crate) fn own_motion(&self, answer: &OwnAnswer) -> Hubs {
        let field = answer.loads.own.field;
        let weight = Sides::each(|side| self.hubs.of(side).weight_in(field));
        let weight = Hubs::from_iterator(weight.left.into_iter().chain(weight.right));
        let mut motion = Hubs::zeros();
        for side in Side::BOTH {
            let hub = self.hubs.of(side);
            let carried = hub.carried(answer.inner.of(side), answer.outer.of(side));
            let relief = hub.disc_relief(field);
            (0..6).for_each(|i| motion[first(side) + i] = carried[i] + relief[i]);
        }
        self.compliance * weight + motion
    }
}
