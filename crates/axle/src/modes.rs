//! Natural modes of the axle on its tires and suspension, named by what moves.

use axlebow_fe::{Mode, NodeId, Spring, SpringId, natural_modes};

use crate::at_rest::AtRest;
use crate::frame::RX;
use crate::load_case::Ground;
use crate::mode_name::{ModeNames, Motion, Strain};
use crate::vibration::{TireContact, VibrationModel};
use crate::{Axle, AxleError, Side, Sides};

/// Result of [`modes`].
#[derive(Debug, Clone, PartialEq)]
pub struct ModesOutcome {
    /// Mass of the vehicle body that this axle carries, kg.
    pub sprung_mass: f64,
    /// The lowest modes, by rising frequency.
    pub modes: Vec<ModeOutcome>,
    /// Frequency below which modes were counted, Hz.
    pub limit: f64,
    /// Modes found below the limit.
    pub found_below: usize,
    /// Modes below the limit by Sturm's count, which misses none.
    pub counted_below: usize,
}

/// One natural mode.
#[derive(Debug, Clone, PartialEq)]
pub struct ModeOutcome {
    /// What moves, such as `wheel hop`; numbered where several are alike.
    pub name: String,
    /// Undamped natural frequency, Hz.
    pub frequency: f64,
    /// Damping over critical damping, from tires and suspension: `φᵀCφ/(2ω φᵀMφ)`.
    pub damping_ratio: f64,
    /// Mass that, at the place of largest motion, has the mode's kinetic energy, kg.
    pub modal_mass: f64,
    /// Unbalanced over inertia forces.
    pub residual: f64,
    /// Where the strain energy is; the parts make 1.
    pub strain: Strain,
    /// Where the kinetic energy is; the parts make 1.
    pub motion: Motion,
    /// The axle line from left to right; the largest motion of all is +1 m, a rotation counting as its motion at
    /// the tire's loaded radius.
    pub shape: Vec<ShapePoint>,
    /// Camber of each wheel against the road, rad, for the same shape.
    pub camber: Sides<f64>,
    /// Motion of the vehicle body for the same shape: heave (m) and roll (rad).
    pub body: [f64; 2],
}

/// A point of the axle line in a mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShapePoint {
    /// Position, m.
    pub y: f64,
    /// Displacement ux, uy, uz (m) and rotation rx, ry, rz (rad).
    pub motion: [f64; 6],
}

/// The lowest natural modes of an axle that carries `axle_load` (N) on the road.
///
/// Tires that touch the road at rest stand on it without leaving it, the body heaves and rolls, wheels roll freely.
///
/// # Errors
/// [`AxleError::LoadBelowWeight`] when the load does not reach the weight of what is between road and
/// suspension; [`AxleError::Fe`] when nothing holds the axle somewhere.
pub fn modes(axle: &Axle, axle_load: f64, count: usize) -> Result<ModesOutcome, AxleError> {
    let standing = Standing::of(axle, axle_load)?;
    let found = natural_modes(&standing.model.frame.structure, count)?;
    let mut names = ModeNames::default();
    let modes = found.modes.iter().map(|mode| standing.outcome(mode, &mut names)).collect();
    Ok(ModesOutcome {
        sprung_mass: standing.model.sprung_mass,
        modes,
        limit: found.limit,
        found_below: found.found_below,
        counted_below: found.counted_below,
    })
}

/// The axle with tires, suspension and body.
struct Standing<'a> {
    model: VibrationModel<'a>,
    tires: Vec<(TireContact, SpringId)>,
}

impl<'a> Standing<'a> {
    fn of(axle: &'a Axle, axle_load: f64) -> Result<Self, AxleError> {
        let mut model = VibrationModel::of(axle, axle_load, "modes")?;
        let mut tires = Vec::with_capacity(4);
        let on_road = AtRest::under(axle, axle_load)?.on_road;
        for (contact, _) in model.contacts().into_iter().zip(on_road).filter(|(_, on_road)| *on_road) {
            let tire = axle.wheels.of(contact.side).tire();
            let lateral = if axle.ground == Ground::Standing { tire.lateral_stiffness } else { 0.0 };
            let rates = [0.0, lateral, tire.vertical_stiffness, 0.0, 0.0, 0.0];
            let spring = model.frame.structure.add_spring(Spring::to_ground(contact.at, rates))?;
            tires.push((contact, spring));
        }
        Ok(Standing { model, tires })
    }

    fn outcome(&self, mode: &Mode, names: &mut ModeNames) -> ModeOutcome {
        let largest = self.largest_motion(mode);
        let motion_of = |node: NodeId| mode.motion(node).map(|value| value / largest);
        let (strain, motion) = (self.strain(mode), self.motion(mode));
        let hubs = Sides::each(|side| motion_of(*self.model.frame.hubs.of(side)));
        let in_phase = |freedom: usize| hubs.left[freedom] * hubs.right[freedom] >= 0.0;
        let places = self.model.frame.places.iter().zip(&self.model.frame.line).rev();
        let body = motion_of(self.model.body);
        ModeOutcome {
            name: names.name(&strain, &motion, in_phase, body[2].abs() >= body[RX].abs()),
            frequency: mode.frequency,
            damping_ratio: self.damping_ratio(mode),
            modal_mass: largest.powi(-2),
            residual: mode.residual,
            strain,
            motion,
            shape: places.map(|(place, node)| ShapePoint { y: place.y, motion: motion_of(*node) }).collect(),
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
        let stretches = self.model.frame.stretches.iter();
        Strain {
            beam: stretches.map(|stretch| mode.strain_share_of_beam(structure, stretch.beam)).sum(),
            // What the sprung weight gives back as the body rolls, the seats have to hold.
            seats: both(&self.model.frame.seats) + spring(self.model.weight_above),
            bearings: both(&self.model.frame.inner_bearings)
                + both(&self.model.frame.outer_bearings)
                + both(&self.model.frame.brakes),
            tires: self.tires.iter().map(|(_, tire)| spring(*tire)).sum(),
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
        let mut power = 0.0;
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
        power / (2.0 * std::f64::consts::TAU * mode.frequency)
    }
}
