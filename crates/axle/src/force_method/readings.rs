//! The few numbers that studies ask of a static case.

use axlebow_fe::StaticSystem;

use super::chain::{Chain, Link};
use super::line_sections::LineSection;
use super::seated_chain::{LineLoads, SeatedChain, first};
use super::state::LineState;
use crate::outcome::static_readings::{StaticReadings, WheelReadings};
use crate::outcome::stiffening_outcome::WeldForce;
use crate::road_contact::ground::{Case, GroundModel, Hubs};
use crate::statics::along::{larger_stress, points_from_left};
use crate::statics::split::camber_load;
use crate::statics::stiffening::weld_peaks;
use crate::{Axle, AxleError, CamberSplit, LoadCase, Side, Sides, StaticDesign};

impl StaticReadings {
    /// Solves one case of an axle: by forces where that reaches, else by finite elements in the storage of `system`.
    ///
    /// # Errors
    /// As [`StaticDesign::of`] and [`StaticDesign::case`].
    pub fn of(axle: &Axle, case: &LoadCase, system: &mut StaticSystem) -> Result<Self, AxleError> {
        let Some(chain) = Chain::of(axle)? else { return by_elements(axle, case, system) };
        match SeatedChain::of(chain)? {
            Some(seated) => seated.readings(case),
            None => by_elements(axle, case, system),
        }
    }
}

fn by_elements(axle: &Axle, case: &LoadCase, system: &mut StaticSystem) -> Result<StaticReadings, AxleError> {
    let design = StaticDesign::with_system(axle, system)?;
    let (_, state) = design.loaded(case)?;
    let weld_peak = weld_peaks(&design, &state).iter().map(WeldForce::magnitude).reduce(f64::max);
    Ok(StaticReadings { weld_peak, ..StaticReadings::from(&design.case(case)?) })
}

impl SeatedChain<'_> {
    fn readings(&self, case: &LoadCase) -> Result<StaticReadings, AxleError> {
        let axle = self.chain.axle;
        let case = Case::of(axle, case);
        let loads = self.line_loads(case.own);
        let ground = GroundModel::answering(axle, self.compliance);
        let own_motion = self.own_motion(&loads);
        let contact = ground.contact(&case, &own_motion)?;
        let forces = Hubs::from_fn(|i, _| contact.factors[i]);
        let (motion, state) = (self.compliance * forces + own_motion, self.state(&forces, &loads));
        let distance = axle.hub_distance();
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
        let load = camber_load(side, self.chain.axle.hub_distance());
        let unit = self.state(&Hubs::from_fn(|i, _| load[i]), &LineLoads::default());
        let mut split = CamberSplit::default();
        for (number, link) in self.chain.links.iter().enumerate() {
            let (one, other) = (unit.beam_forces(number, link), real.beam_forces(number, link));
            let (bending, shear) = link.flexibility.work(&one, &other);
            split.bending += bending;
            split.shear += shear;
        }
        for end in Side::BOTH {
            let (force, motion) = (unit.seat_forces.of(end), real.seat_motions.of(end));
            split.seat += force.iter().zip(motion).map(|(f, u)| f * u).sum::<f64>();
            split.wall += self.chain.walls.of(end).work(force, real.seat_forces.of(end));
            let hub = self.hubs.of(end);
            split.bearing += unit.bearings.of(end).work_on(real.bearings.of(end), hub);
            split.disc += hub.disc_work(unit.discs.of(end), real.discs.of(end));
        }
        split
    }

    fn bow(&self, state: &LineState, hubs: &Hubs) -> f64 {
        let axle = self.chain.axle;
        let ends = &axle.wheel_ends;
        let (left, right) = (hubs[2] * ends.right.mounting_face, hubs[8] * ends.left.mounting_face);
        let center = state.leftward(&self.chain, Side::Right, self.chain.center());
        center[2] - (left + right) / axle.hub_distance()
    }

    /// Stress of largest magnitude and its position.
    fn peak_stress(&self, state: &LineState) -> (f64, f64) {
        let mut peak = (0.0, 0.0);
        for (number, link) in self.chain.links.iter().enumerate().rev() {
            let forces = state.beam_forces(number, link);
            let uniform = self.chain.sections.uniform(link.piece);
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
        }
        peak
    }

    fn section(&self, link: &Link, share: f64) -> LineSection {
        self.chain.sections.at(link.piece, (link.start + share * link.length).abs())
    }
}
