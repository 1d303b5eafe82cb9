//! Natural modes of the axle on its tires and suspension, named by what moves.

use axlebow_fe::{Mode, Modes, NodeId, Spring, SpringId, natural_modes};

use crate::dynamics::at_rest::AtRest;
use crate::dynamics::hysteresis::loss_factor;
use crate::dynamics::mode_name::{ModeNames, Motion, Strain};
use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::mesh::frame::RX;
use crate::parts::load_case::Ground;
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
    /// The elements that they were found on.
    pub mesh: ModeMesh,
}

/// How fine the elements of modes are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModeMesh {
    /// Length of the longest element, m.
    pub longest_element: f64,
    /// Greatest change of a frequency, as a share of it, when the elements were last halved.
    pub change: f64,
}

impl ModeMesh {
    /// Whether the last halving moved no frequency by more than 0.1 %.
    pub fn is_settled(&self) -> bool {
        self.change <= SETTLED
    }
}

/// Change of a frequency, as a share of it, below which elements are short enough.
const SETTLED: f64 = 1e-3;

/// Most halvings: a stretch of a meter is then cut into pieces of 16 mm.
const MOST_HALVINGS: usize = 6;

/// One natural mode.
#[derive(Debug, Clone, PartialEq)]
pub struct ModeOutcome {
    /// What moves, such as `wheel hop`; numbered where several are alike.
    pub name: String,
    /// Undamped natural frequency, Hz.
    pub frequency: f64,
    /// Damping over critical damping: `φᵀCφ/(2ω φᵀMφ)` from tires, dampers and the rest of the vehicle, and half the loss
    /// factor of steel, bushes and leaves, each by its share of the strain.
    pub damping_ratio: f64,
    /// Mass that, at the place of largest motion, has the mode's kinetic energy, kg.
    pub modal_mass: f64,
    /// Residual over inertia forces.
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
/// Tires that touch the road at rest stand on it without leaving it, the body heaves and rolls and the rest of the vehicle
/// resists its roll, wheels roll freely.
///
/// # Errors
/// [`AxleError::LoadBelowWeight`] when the load does not reach the weight of what is between road and
/// suspension; [`AxleError::Fe`] when nothing holds the axle somewhere.
pub fn modes(axle: &Axle, axle_load: f64, count: usize) -> Result<ModesOutcome, AxleError> {
    let Settled { standing, found, mesh } = Settled::of(axle, axle_load, count)?;
    let mut names = ModeNames::default();
    let modes = found.modes.iter().map(|mode| standing.outcome(mode, &mut names)).collect();
    Ok(ModesOutcome {
        sprung_mass: standing.model.sprung_mass,
        modes,
        limit: found.limit,
        found_below: found.found_below,
        counted_below: found.counted_below,
        mesh,
    })
}

/// The modes of an axle on elements that are short enough for them.
struct Settled<'a> {
    standing: Standing<'a>,
    found: Modes,
    mesh: ModeMesh,
}

impl<'a> Settled<'a> {
    /// Halves the elements until no frequency moves by more than [`SETTLED`]. Their errors fall with the fourth power of
    /// the length (`crates/fe/tests/convergence.rs`), so that what is left then is a fifteenth of that.
    fn of(axle: &'a Axle, axle_load: f64, count: usize) -> Result<Self, AxleError> {
        let mut standing = Standing::of(axle, axle_load, f64::INFINITY)?;
        let mut found = natural_modes(&standing.model.frame.structure, count)?;
        let mut mesh = ModeMesh { longest_element: standing.longest_element(), change: f64::INFINITY };
        for _ in 0..MOST_HALVINGS {
            let finer = Standing::of(axle, axle_load, 0.5 * mesh.longest_element)?;
            let again = natural_modes(&finer.model.frame.structure, count)?;
            mesh = ModeMesh {
                longest_element: finer.longest_element(),
                change: greatest_change(&found, &again),
            };
            (standing, found) = (finer, again);
            if mesh.is_settled() {
                break;
            }
        }
        Ok(Settled { standing, found, mesh })
    }
}

/// Greatest change of a frequency as a share of it; infinite where there are more modes than before.
fn greatest_change(before: &Modes, now: &Modes) -> f64 {
    if before.modes.len() != now.modes.len() {
        return f64::INFINITY;
    }
    let pairs = before.modes.iter().zip(&now.modes).filter(|(_, now)| now.frequency > 0.0);
    pairs.map(|(before, now)| (before.frequency / now.frequency - 1.0).abs()).fold(0.0, f64::max)
}

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
            let rates = [0.0, lateral, tire.vertical_stiffness, 0.0, 0.0, 0.0];
            let spring = model.frame.structure.add_spring(Spring::to_ground(contact.at, rates))?;
            tires.push((contact, spring));
        }
        Ok(Standing { model, tires })
    }

    fn longest_element(&self) -> f64 {
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
        power / (2.0 * std::f64::consts::TAU * mode.frequency) + 0.5 * loss_factor(self, mode)
    }
}
