//! How the hubs give way to forces at their tires, one frequency at a time.

use std::f64::consts::TAU;

use axlebow_fe::{Attachment, Direction, DynamicSystem, Excitation, ReducedBasis, TimedLoad};
use nalgebra::{Complex, DMatrix};

use crate::dynamics::vibration::{TireContact, VibrationModel};
use crate::frequency::small_motion::{MODES_BEYOND, Resting, resting};
use crate::riding::ride_laws::bump;
use crate::{Axle, AxleError, Side};

/// The axle about its rest as it answers at its hubs.
///
/// Each hub has two motions: its rise (m) in the middle of its tires, and its camber (rad), positive with the top outward;
/// forces on them are an upward force (N) and a moment (N m) that works on camber.
pub(crate) struct HubCompliance {
    system: DynamicSystem,
    /// Rise and camber of the left hub, then of the right.
    motions: Vec<Direction>,
    /// The tires that stand on the road.
    tires: Vec<Tire>,
}

/// A tire that stands on the road.
struct Tire {
    /// Number of its hub.
    hub: usize,
    /// Outboard of the middle of the hub's tires, m.
    outboard: f64,
    stiffness: f64,
    damping: f64,
}

impl HubCompliance {
    /// The axle with a load (N) on the road, for answers up to a frequency (Hz): in its natural modes and what unit forces on
    /// the hubs and of the dampers do at rest.
    pub(crate) fn of(axle: &Axle, axle_load: f64, up_to: f64) -> Result<Self, AxleError> {
        let whole = HubCompliance::full(axle, axle_load, up_to)?;
        let basis = ReducedBasis::up_to(MODES_BEYOND * up_to, &whole.system, 0.0)?;
        Ok(HubCompliance {
            system: basis.reduced(&whole.system)?,
            motions: whole.motions.iter().map(|motion| basis.direction(motion)).collect(),
            tires: whole.tires,
        })
    }

    /// The same in all degrees of freedom.
    fn full(axle: &Axle, axle_load: f64, up_to: f64) -> Result<Self, AxleError> {
        let Resting { model, mut system, rest } = resting(axle, (axle_load, up_to), "growth")?;
        let motions: Vec<Direction> = Side::BOTH.iter().flat_map(|side| motions(&model, *side)).collect();
        // Loads that push nothing, so that a basis answers forces there.
        for direction in motions.iter().cloned().chain(Side::BOTH.map(|side| bump(&model, side))) {
            system.add_load(TimedLoad::new(direction, |_| 0.0))?;
        }
        let structure = &model.frame.structure;
        let pressed = |contact: &TireContact| {
            Direction::at(structure, &contact.at, [0.0, 0.0, 1.0]).dot(&rest) + contact.rise < 0.0
        };
        let tires = model.contacts().into_iter().filter(pressed).map(|contact| Tire::of(&model, &contact));
        Ok(HubCompliance { tires: tires.collect(), motions, system })
    }

    /// C at frequencies (Hz): motions by forces, without the tires.
    ///
    /// # Errors
    /// [`AxleError::Fe`] at a resonance without damping.
    pub(crate) fn at(&self, frequencies: &[f64]) -> Result<Vec<DMatrix<Complex<f64>>>, AxleError> {
        let inputs: Vec<Excitation> = self.motions.iter().cloned().map(Excitation::force).collect();
        let answers = self.system.frequency_responses(&inputs, &self.motions, frequencies)?;
        let order = self.motions.len();
        let with_tires = |k: usize| {
            DMatrix::from_fn(order, order, |i, j| {
                let [real, imaginary] = answers[j].outputs[i][k];
                Complex::new(real, imaginary)
            })
        };
        Ok((0..frequencies.len()).map(|k| self.without_tires(with_tires(k), frequencies[k])).collect())
    }

    /// From G with the tires to C without: `C = (1 − G K)⁻¹ G` with the tires' stiffness K.
    fn without_tires(&self, with: DMatrix<Complex<f64>>, frequency: f64) -> DMatrix<Complex<f64>> {
        let order = self.motions.len();
        let mut tires = DMatrix::zeros(order, order);
        for tire in &self.tires {
            let own = Complex::new(tire.stiffness, TAU * frequency * tire.damping);
            let rise = [1.0, -tire.outboard];
            for (i, a) in rise.iter().enumerate() {
                for (j, b) in rise.iter().enumerate() {
                    tires[(2 * tire.hub + i, 2 * tire.hub + j)] += own * (a * b);
                }
            }
        }
        let left = DMatrix::identity(order, order) - &with * tires;
        left.lu().solve(&with).unwrap_or(with)
    }
}

impl Tire {
    fn of(model: &VibrationModel, contact: &TireContact) -> Self {
        let wheel = model.axle.wheels.of(contact.side);
        Tire {
            hub: match contact.side {
                Side::Left => 0,
                Side::Right => 1,
            },
            outboard: contact.side.sign() * contact.across - wheel.outset(),
            stiffness: contact.stiffness,
            damping: wheel.tire().damping,
        }
    }
}

/// Rise and camber of a hub in the middle of its tires.
pub(crate) fn motions(model: &VibrationModel, side: Side) -> [Direction; 2] {
    let hub = *model.frame.hubs.of(side);
    let middle = Attachment::on_arm(hub, [0.0, side.sign() * model.axle.wheels.of(side).outset(), 0.0]);
    let of = |motion| Direction::of_motion(&model.frame.structure, &middle, motion);
    [of([[0.0, 0.0, 1.0], [0.0; 3]]), of([[0.0; 3], [-side.sign(), 0.0, 0.0]])]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    /// Force on one hub moves the other as much as the other way round, and few shapes do as all degrees of freedom.
    #[test]
    fn compliance_is_reciprocal_and_that_of_all_degrees_of_freedom() {
        let axle = example::axle();
        let [few, all] = [HubCompliance::of, HubCompliance::full].map(|of| of(&axle, 90e3, 150.0).unwrap());
        let frequencies = [2.0, 9.0, 13.0, 18.0, 41.0, 77.0, 150.0];
        for (few, all) in few.at(&frequencies).unwrap().iter().zip(all.at(&frequencies).unwrap()) {
            let scale = |i: usize, j: usize| (all[(i, i)].norm() * all[(j, j)].norm()).sqrt();
            for i in 0..4 {
                for j in 0..4 {
                    assert!((few[(i, j)] - all[(i, j)]).norm() < 2e-3 * scale(i, j), "{i} {j}: {few} {all}");
                    assert!((all[(i, j)] - all[(j, i)]).norm() < 1e-6 * scale(i, j), "{i} {j}: {all}");
                }
            }
        }
    }

    /// Below all resonances but those of the body the hubs carry what is above them as a mass, and far above they are as
    /// heavy as themselves: with the tires put back, a slow push on one of two alike hubs meets its own tires.
    #[test]
    fn tires_are_taken_out_of_the_compliance() {
        let axle = example::axle();
        let hubs = HubCompliance::full(&axle, 90e3, 50.0).unwrap();
        let without = &hubs.at(&[0.05]).unwrap()[0];
        let alike = without[(0, 0)] + without[(0, 2)];
        // Half of the whole mass above the road on each side: C = -1/(m ω²).
        let omega = TAU * 0.05;
        let mass = 0.5 * 90e3 / crate::STANDARD_GRAVITY;
        assert!((alike.re * -mass * omega * omega - 1.0).abs() < 0.01, "{alike}");
    }
}
