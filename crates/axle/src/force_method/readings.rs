//! The few numbers that studies ask of a static case.

use axlebow_fe::EndForce;

use super::chain::Link;
use super::line_sections::LineSection;
use super::seated_chain::{OwnAnswer, SeatedChain, first};
use super::standing_chain::StandingChain;
use super::state::LineState;
use crate::outcome::static_readings::{StaticReadings, WheelReadings};
use crate::road_contact::ground::{Case, GroundModel, Hubs};
use crate::statics::along::{larger_stress, points_from_left};
use crate::{Axle, AxleError, CamberSplit, LoadCase, Side, Sides};

/// Share by which a bound must be below a known stress to be passed over: far above rounding, and above what counts as equal.
const BELOW: f64 = 1e-6;

impl SeatedChain {
    /// One case of the axle whose line this is.
    pub(crate) fn readings(&mut self, axle: &Axle, case: &LoadCase) -> Result<StaticReadings, AxleError> {
        let case = Case::of(axle, case);
        let own = self.under(case.own);
        StandingChain::of(axle, self).readings(&case, &own)
    }
}

impl StandingChain<'_> {
    fn readings(&self, case: &Case, own: &OwnAnswer) -> Result<StaticReadings, AxleError> {
        let ground = GroundModel::answering(self.axle, self.compliance);
        let own_motion = self.own_motion(own);
        let contact = ground.contact(case, &own_motion)?;
        let forces = Hubs::from_fn(|i, _| contact.factors[i]);
        let (motion, state) = (self.compliance * forces + own_motion, self.state(&forces, &own.loads));
        let distance = self.axle.hub_distance();
        let (lean, turn) = ((motion[2] - motion[8]) / distance, -(motion[0] - motion[6]) / distance);
        let wheels = Sides::each(|side| {
            let own = ground.tires.iter().zip(&contact.tires).filter(|(tire, _)| tire.side == side);
            let mut off_road = own.clone().map(|(_, force)| force.off_road);
            let mut off = || off_road.next().unwrap_or(false);
            WheelReadings {
                off_road: [off(), off()],
                camber_change: -side.sign() * (motion[first(side) + 3] - lean),
                toe_change: -side.sign() * (motion[first(side) + 5] - turn),
                vertical_load: own.map(|(_, force)| force.vertical).sum(),
                split: self.split(side, &state),
            }
        });
        let (peak_stress, peak_stress_y) = self.peak_stress(&state);
        Ok(StaticReadings {
            wheels,
            peak_stress,
            peak_stress_y,
            bow: self.bow(&state, &motion),
            axle_roll: lean + contact.body_roll,
            residual: contact.residual,
            weld_peak: None,
        })
    }

    /// Camber change of a wheel by source: the work of its unit state, as in [`crate::statics::split`].
    fn split(&self, side: Side, real: &LineState) -> CamberSplit {
        let (chain, unit) = (&self.seated.chain, self.camber_units().of(side));
        let mut split = CamberSplit::default();
        for (number, link) in chain.links.iter().enumerate() {
            let (one, other) = (unit.beam_forces(number, link), real.beam_forces(number, link));
            let (bending, shear) = link.flexibility.work(&one, &other);
            split.bending += bending;
            split.shear += shear;
        }
        for end in Side::BOTH {
            let (force, motion) = (unit.seat_forces.of(end), real.seat_motions.of(end));
            split.seat += force.iter().zip(motion).map(|(f, u)| f * u).sum::<f64>();
            split.wall += chain.walls.of(end).work(force, real.seat_forces.of(end));
            let hub = self.hubs.of(end);
            split.bearing += unit.bearings.of(end).work_on(real.bearings.of(end), hub);
            split.disc += hub.disc_work(unit.discs.of(end), real.discs.of(end));
        }
        split
    }

    fn bow(&self, state: &LineState, hubs: &Hubs) -> f64 {
        let (chain, ends) = (&self.seated.chain, &self.axle.wheel_ends);
        let (left, right) = (hubs[2] * ends.right.mounting_face, hubs[8] * ends.left.mounting_face);
        let center = state.leftward(chain, Side::Right, chain.center());
        center[2] - (left + right) / self.axle.hub_distance()
    }

    /// Stress of largest magnitude and its position; of equal ones the leftmost. Stretches whose stress stays below what is
    /// known of another one are passed over.
    fn peak_stress(&self, state: &LineState) -> (f64, f64) {
        let links = || self.seated.chain.links.iter().enumerate();
        let bounds: Vec<f64> =
            links().map(|(number, link)| self.stress_bound((number, link), state)).collect();
        let promising = links().max_by(|(one, _), (other, _)| bounds[*one].total_cmp(&bounds[*other]));
        let known = promising.map_or(0.0, |link| self.peak_along(link, state, (0.0, 0.0)).0.abs());
        let may_hold = |number: usize| bounds[number] >= known * (1.0 - BELOW);
        let held = links().rev().filter(|(number, _)| may_hold(*number));
        held.fold((0.0, 0.0), |peak, link| self.peak_along(link, state, peak))
    }

    /// A stress (Pa) that no point of a stretch exceeds.
    fn stress_bound(&self, (number, link): (usize, &Link), state: &LineState) -> f64 {
        let Some(section) = self.seated.chain.sections.uniform(link.piece) else { return f64::INFINITY };
        let forces = state.beam_forces(number, link);
        let (start, end) = (forces.at(0.0), forces.at(link.length));
        let [_, q2, q3] = forces.line_load.map(|load| load.abs() * link.length * link.length / 8.0);
        let larger = |one: f64, other: f64| one.abs().max(other.abs());
        let force = EndForce {
            axial: larger(start.axial, end.axial),
            bending_2: larger(start.bending_2, end.bending_2) + q3,
            bending_3: larger(start.bending_3, end.bending_3) + q2,
            ..EndForce::default()
        };
        section.extreme_stress(&force).abs()
    }

    /// The larger of a peak and the stress along a stretch, with its position.
    fn peak_along(
        &self,
        (number, link): (usize, &Link),
        state: &LineState,
        mut peak: (f64, f64),
    ) -> (f64, f64) {
        let forces = state.beam_forces(number, link);
        let uniform = self.seated.chain.sections.uniform(link.piece);
        for share in points_from_left() {
            let here;
            let section = match uniform {
                Some(section) => section,
                None => {
                    here = self.section(link, share);
                    &here
                }
            };
            let stress = section.extreme_stress(&forces.at(share * link.length));
            if larger_stress(peak.0, stress) != peak.0 {
                peak = (stress, link.start + share * link.length);
            }
        }
        peak
    }

    fn section(&self, link: &Link, share: f64) -> LineSection {
        let distance = (link.start + share * link.length).abs();
        self.seated.chain.sections.at(&self.axle.body, link.piece, distance)
    }
}
