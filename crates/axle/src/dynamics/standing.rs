//! The axle standing on its tires, and its modes.

use axlebow_fe::{Mode, NodeId, Spring, SpringId};

use crate::dynamics::at_rest::AtRest;
use crate::dynamics::loss_factor::loss_factor;
use crate::dynamics::mode_name::{ModeNames, Motion, Strain};
use crate::dynamics::mode_outcome::{ModeOutcome, ShapePoint};
use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::parts::freedoms::RX;
use crate::parts::load_case::Ground;
use crate::{Axle, AxleError, Side, Sides};

/// The axle with tires, suspension and body.
pub(crate) struct Standing<'a> {
    pub model: VibrationModel<'a>,
    tires: Vec<(TireContact, SpringId)>,
}

impl<'a> Standing<'a> {
    /// Its elements are no longer than `longest` (m).
    pub(crate) fn of(axle: &'a Axle, axle_load: f64, longest: f64) -> Result<Self, AxleError> {
        let mut model = VibrationModel::of(axle, axle_load, longest)?;
        let mut tires = Vec::with_capacity(4);
        let on_road = AtRest::under(axle, axle_load)?.on_road;
        for (contact, _) in model.contacts().into_iter().zip(on_road).filter(|(_, on_road)| *on_road) {
            let tire = axle.wheels.of(contact.side).tire();
            let lateral = if axle.ground == Ground::Standing { tire.lateral_stiffness } else { 0.0 };
            let rates = [0.0, lateral, contact.stiffness, 0.0, 0.0, 0.0];
            let spring = model.frame.structure.add_spring(Spring::to_ground(contact.at, rates))?;
            tires.push((contact, spring));
        }
        Ok(Standing { model, tires })
    }

    pub(crate) fn longest_element(&self) -> f64 {
        let stretches = self.model.frame.stretches.iter();
        stretches.map(|stretch| stretch.end_y - stretch.start_y).fold(0.0, f64::max)
    }

    pub(crate) fn outcome(&self, mode: &Mode, names: &mut ModeNames) -> ModeOutcome {
        let largest = self.largest_motion(mode);
        let motion_of = |node: NodeId| mode.motion(node).map(|value| value / largest);
        let (strain, motion) = (self.strain(mode), self.motion(mode));
        let hubs = Sides::each(|side| motion_of(*self.model.frame.hubs.of(side)));
        let in_phase = |freedom: usize| hubs.left[freedom] * hubs.right[freedom] >= 0.0;
        let stations = self.model.frame.stations().rev();
        let body = motion_of(self.model.body);
        ModeOutcome {
            name: names.name(&strain, &motion, in_phase, body[2].abs() >= body[RX].abs()),
            frequency: mode.frequency,
            damping_ratio: self.damping_ratio(mode),
            modal_mass: largest.powi(-2),
            residual: mode.residual,
            strain,
            motion,
            shape: stations.map(|(place, node)| ShapePoint { y: place.y, motion: motion_of(node) }).collect(),
            camber: Sides::each(|side| -side.sign() * hubs.of(side)[RX]),
            body: [body[2], body[RX]],
        }
    }

    /// Largest motion of any node, signed: a displacement, or a rotation times the tire's loaded radius, so
    /// that a mode that only turns has a size too.
    fn largest_motion(&self, mode: &Mode) -> f64 {
        let radius = self.model.axle.wheels.left.tire().loaded_radius;
        let mut largest = 0.0_f64;
        for node in self.model.frame.structure.nodes() {
            for (i, part) in mode.motion(node).into_iter().enumerate() {
                let size = if i < RX { part } else { part * radius };
                largest = if size.abs() > largest.abs() { size } else { largest };
            }
        }
        largest
    }

    fn strain(&self, mode: &Mode) -> Strain {
        let structure = &self.model.frame.structure;
        let spring = |spring: SpringId| mode.strain_share_of_spring(structure, spring);
        let both = |springs: &Sides<SpringId>| spring(springs.left) + spring(springs.right);
        let beams =
            self.model.frame.beams().map(|beam| mode.strain_share_of_beam(structure, beam)).sum::<f64>();
        let Sides { left, right } = self.model.frame.discs;
        let discs = [left, right].into_iter().flatten();
        Strain {
            beam: beams + self.model.frame.welds().map(spring).sum::<f64>(),
            seats: both(&self.model.frame.seats),
            bearings: both(&self.model.frame.inner_bearings)
                + both(&self.model.frame.outer_bearings)
                + both(&self.model.frame.brakes)
                + discs.map(spring).sum::<f64>(),
            tires: self.tires.iter().map(|(_, tire)| spring(*tire)).sum(),
            rest_of_vehicle: spring(self.model.rest_of_vehicle) + spring(self.model.weight_above),
        }
    }

    fn motion(&self, mode: &Mode) -> Motion {
        let mut motion = Motion::default();
        for node in self.model.frame.structure.nodes() {
            let [ux, uy, uz, rx, ry, rz] = mode.kinetic_share(node);
            if node == self.model.body {
                motion.body = ux + uy + uz + rx + ry + rz;
                continue;
            }
            motion.vertical += uz + rx;
            motion.fore_aft += ux + rz;
            motion.lateral += uy;
            motion.twist += ry;
        }
        motion
    }

    fn damping_ratio(&self, mode: &Mode) -> f64 {
        if mode.frequency == 0.0 {
            return 0.0;
        }
        let body = mode.motion(self.model.body);
        let mut power = self.model.axle.body_roll_damping * body[RX].powi(2);
        for side in Side::BOTH {
            let (node, y) = self.model.seat(side);
            let axle = mode.motion(node)[2];
            let damping = self.model.axle.seats.of(side).mean_damping();
            power += damping * (axle - body[2] - body[RX] * y).powi(2);
        }
        for (contact, _) in &self.tires {
            let hub = mode.motion(contact.hub);
            let damping = self.model.axle.wheels.of(contact.side).tire().damping;
            power += damping * (hub[2] + hub[RX] * contact.across).powi(2);
        }
        power / (2.0 * std::f64::consts::TAU * mode.frequency) + 0.5 * loss_factor(&self.model, mode)
    }
}
