//! Camber change by source: the unit-load theorem on the axle as its seats hold it.
//!
//! The camber change of a wheel is its rotation about X less the lean of the line through the two hubs, so
//! it is the work of a unit couple at that hub and an opposite pair of forces at both. That load is in
//! balance by itself. Its force field in every part, times the part's real deformation, summed over the
//! parts, is the camber change:
//! `θ = Σ ∫ m·M/EI + Σ ∫ v·V/κGA + Σ welds f·δ + Σ seats f·δ + Σ bearings f·(δ − g) + Σ bearings f·g + Σ discs f·δ`,
//! where g is what a hub takes up of its bearing's play. Beams are those of the axle and of its stiffeners; what the
//! welds between them slip counts as shear.
//! Because the field is the elastic answer of the same structure, a part's term is also what the camber
//! change would lose, to first order, were the part stiffer in proportion: −∂θ/∂ln k.

use axlebow_fe::State;

use crate::assembly::bearing_play::TakenUp;
use crate::outcome::CamberSplit;
use crate::road_contact::ground::{COLUMNS, Contact};
use crate::statics::static_design::StaticDesign;
use crate::{Side, Sides};

/// Unit states of both wheels' camber.
pub(crate) struct CamberUnits<'a> {
    states: Sides<State<'a>>,
}

impl<'a> CamberUnits<'a> {
    pub(crate) fn of(design: &'a StaticDesign) -> Self {
        CamberUnits {
            states: Sides::each(|side| design.state(&camber_load(side, design.axle.hub_distance()))),
        }
    }

    /// The unit state of one wheel's camber.
    pub(crate) fn state(&self, side: Side) -> &State<'a> {
        self.states.of(side)
    }

    /// Parts of both wheels' camber change.
    pub(crate) fn splits(
        &self,
        design: &StaticDesign,
        real: &State,
        contact: &Contact,
    ) -> Sides<CamberSplit> {
        let frame = &design.frame;
        let mut splits = Sides::<CamberSplit>::default();
        for beam in frame.beams() {
            let carried = real.beam_forces(beam);
            for side in Side::BOTH {
                let (bending, shear) = self.states.of(side).beam_work_on(&carried, beam);
                let split = splits.of_mut(side);
                split.bending += bending;
                split.shear += shear;
            }
        }
        for side in Side::BOTH {
            self.add_springs(design, side, real, splits.of_mut(side));
            let clearance = self.clearance_work(design, side, contact);
            let split = splits.of_mut(side);
            split.bearing -= clearance;
            split.clearance = clearance;
        }
        splits
    }

    /// Work of the unit state's bearing forces on what the hubs have taken up.
    fn clearance_work(&self, design: &StaticDesign, side: Side, contact: &Contact) -> f64 {
        let of = |end: Side| {
            contact.endplay_contact.of(end).map_or(0.0, |TakenUp { bearing, motion: [forward, up] }| {
                let [x, _, z, ..] =
                    self.states.of(side).spring_force(design.frame.bearing(end, bearing.place));
                x * forward + z * up
            })
        };
        of(Side::Left) + of(Side::Right)
    }

    fn add_springs(&self, design: &StaticDesign, side: Side, real: &State, split: &mut CamberSplit) {
        let (unit, frame) = (self.states.of(side), &design.frame);
        split.shear += frame.welds().map(|weld| unit.spring_work(real, weld)).sum::<f64>();
        for end in Side::BOTH {
            let seat = *frame.seats.of(end);
            split.seat += unit.spring_work(real, seat);
            split.wall += frame.walls.of(end).work(&unit.spring_force(seat), &real.spring_force(seat));
            for springs in [&frame.inner_bearings, &frame.outer_bearings, &frame.brakes] {
                split.bearing += unit.spring_work(real, *springs.of(end));
            }
            split.disc += frame.discs.of(end).map_or(0.0, |disc| unit.spring_work(real, disc));
        }
    }
}

/// Factors of the unit columns whose work is the camber change of one wheel.
pub(crate) fn camber_load(side: Side, hub_distance: f64) -> [f64; COLUMNS] {
    let (left, right) = (0, 6);
    let own = if side == Side::Left { left } else { right };
    let mut factors = [0.0; COLUMNS];
    factors[own + 3] = -side.sign();
    factors[left + 2] += side.sign() / hub_distance;
    factors[right + 2] -= side.sign() / hub_distance;
    factors
}
