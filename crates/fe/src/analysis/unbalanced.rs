//! Motions that need not be in balance with the loads: what an adjoint asks of a structure that is a little different.
//!
//! With K u = f solved once, a reading J(u) of another structure is to first order
//! `J'(u) + λ·(f' − K' u)`, where `K λ = ∂J/∂u`: no second solution.

use nalgebra::Vector6;

use crate::model::loads::Loads;
use crate::model::state::State;
use crate::model::structure::Structure;
use crate::node::coupling::Attachment;
use crate::node::ids::{BeamId, NodeId};

impl<'a> State<'a> {
    /// The state of given motions, which need not be in balance with the loads.
    ///
    /// - `motions`: ux uy uz rx ry rz of each node, m and rad
    /// - `factors`: with which the load columns act
    ///
    /// # Panics
    /// If there are not as many motions as nodes.
    pub fn of_motions(
        structure: &'a Structure,
        loads: &'a Loads,
        factors: &[f64],
        motions: &[[f64; 6]],
    ) -> Self {
        assert_eq!(motions.len(), structure.node_count(), "a motion for each node");
        State {
            structure,
            motions: motions.iter().copied().map(Vector6::from).collect(),
            lines: loads.combined_lines(structure.beams.len(), factors),
            loads,
            factors: factors.to_vec(),
        }
    }

    /// Motions of all nodes.
    pub fn all_motions(&self) -> Vec<[f64; 6]> {
        self.motions.iter().map(|motion| (*motion).into()).collect()
    }

    /// Work of the forces that beams and springs put on their nodes, less the loads, on other motions of the nodes; zero
    /// for a state in balance, N m. A structure of beams and springs only.
    ///
    /// Summed over members as force on deformation, so that what a member moves rigidly costs no digits.
    pub fn unbalanced_work(&self, on: &[[f64; 6]]) -> f64 {
        debug_assert!(self.structure.shells.is_empty(), "shells are not summed");
        let of = |node: NodeId| Vector6::from(on[node.0]);
        let members = self.structure.couplings().map(|coupling| {
            let far = coupling.far.map_or_else(Vector6::zeros, of);
            let deformation = coupling.deformation(&of(coupling.near), &far);
            (coupling.stiffness * self.deformation(coupling)).dot(&deformation)
        });
        let loads = self.loads.combined_nodal(&self.factors);
        let by_loads: f64 = loads.iter().zip(on).map(|(load, on)| load.dot(&Vector6::from(*on))).sum();
        members.sum::<f64>() - by_loads
    }
}

impl Loads {
    /// Adds the forces whose work on any motion of a beam's nodes is `Σ wᵢ fᵢ`, f being what the motion makes the beam
    /// carry at its start: the gradient of a reading of a beam.
    ///
    /// - `weights`: w of the three forces and the three moments in local axes, as of [`BeamForces::start`](crate::BeamForces::start)
    pub fn add_beam_reading(
        &mut self,
        structure: &Structure,
        column: usize,
        beam: BeamId,
        weights: [f64; 6],
    ) {
        let member = &structure.beams[beam.0];
        let force = member.coupling.stiffness * member.turned(&Vector6::from(weights));
        let (near, far) = member.coupling.nodal_forces(&force);
        for (node, force) in [(Some(member.coupling.near), near), (member.coupling.far, far)] {
            let Some(at) = node.map(Attachment::at) else { continue };
            self.add_force(column, &at, [force[0], force[1], force[2]]);
            self.add_moment(column, &at, [force[3], force[4], force[5]]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Beam, Flexibility, Freedom, Rigidity, StaticSystem};

    const LOAD: [f64; 3] = [300.0, -200.0, 1000.0];

    fn cantilever(length: f64) -> (Structure, NodeId, BeamId) {
        let rigidity =
            Rigidity { axial: 1e9, torsion: 1e6, bending_2: 2e6, bending_3: 3e6, shear_2: 1e8, shear_3: 2e8 };
        let mut structure = Structure::new();
        let root = structure.add_node("root", [0.0; 3]);
        let tip = structure.add_node("tip", [0.0, length, 0.0]);
        let flexibility = Flexibility::uniform(length, &rigidity);
        let beam = structure.add_beam(Beam::between(root, tip, [0.0, 0.0, 1.0], flexibility)).unwrap();
        structure.hold(root, &Freedom::ALL);
        (structure, tip, beam)
    }

    fn loads(structure: &Structure, tip: NodeId) -> Loads {
        let mut loads = Loads::new(structure, 1);
        loads.add_force(0, &Attachment::at(tip), LOAD);
        loads
    }

    /// dw/dL = F L²/EI + F/κGA, w = F L³/3EI + F L/κGA.
    #[test]
    fn tip_deflection_falls_with_length_as_the_closed_form_says() {
        let (length, step) = (2.0, 1e-4);
        let (structure, tip, _) = cantilever(length);
        let mut system = StaticSystem::new();
        system.prepare(&structure).unwrap();
        let solved = system.solve(&structure, loads(&structure, tip)).unwrap();
        let motions = solved.state(&structure, 0).all_motions();
        let mut unit = Loads::new(&structure, 1);
        unit.add_force(0, &Attachment::at(tip), [0.0, 0.0, 1.0]);
        let dual = system.solve(&structure, unit).unwrap().state(&structure, 0).all_motions();
        let reading = |length: f64| {
            let (structure, tip, _) = cantilever(length);
            let loads = loads(&structure, tip);
            let state = State::of_motions(&structure, &loads, &[1.0], &motions);
            state.motion(tip)[2] - state.unbalanced_work(&dual)
        };
        let found = (reading(length + step) - reading(length - step)) / (2.0 * step);
        let expected = LOAD[2] * (length * length / 3e6 + 1.0 / 1e8);
        assert!((found / expected - 1.0).abs() < 1e-7, "{found} {expected}");
    }

    #[test]
    fn work_of_a_beam_reading_is_the_reading() {
        let (structure, tip, beam) = cantilever(2.0);
        let mut system = StaticSystem::new();
        system.prepare(&structure).unwrap();
        let solved = system.solve(&structure, loads(&structure, tip)).unwrap();
        let state = solved.state(&structure, 0);
        let weights = [0.3, -0.7, 1.1, 0.2, 0.9, -0.4];
        let mut gradient = Loads::new(&structure, 1);
        gradient.add_beam_reading(&structure, 0, beam, weights);
        let still = vec![[0.0; 6]; 2];
        // Without motions, what is unbalanced is the load alone, with its sign turned.
        let work =
            -State::of_motions(&structure, &gradient, &[1.0], &still).unbalanced_work(&state.all_motions());
        let start = state.beam_forces(beam).start;
        let reading: f64 = start.iter().zip(weights).map(|(force, weight)| force * weight).sum();
        assert!((work - reading).abs() < 1e-9 * reading.abs(), "{work} {reading}");
    }
}
