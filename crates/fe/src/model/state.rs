//! What a structure does under one set of loads: motions and what each member carries.

use nalgebra::{Vector3, Vector6};

use crate::element::beam_forces::BeamForces;
use crate::element::shell::{ShellMember, ShellStiffness, WallForces};
use crate::model::loads::Loads;
use crate::model::structure::Structure;
use crate::model::ties::Ties;
use crate::node::coupling::{Attachment, Coupling};
use crate::node::ids::{BeamId, NodeId, ShellId, SpringId};

/// Motions and forces of a structure under one set of loads.
#[derive(Debug, Clone)]
pub struct State<'a> {
    pub(crate) structure: &'a Structure,
    pub(crate) motions: Vec<Vector6<f64>>,
    pub(crate) lines: Vec<Vector3<f64>>,
    pub(crate) loads: &'a Loads,
    /// Factors with which the load columns act.
    pub(crate) factors: Vec<f64>,
}

impl State<'_> {
    /// Motion of a node: ux uy uz (m), rx ry rz (rad).
    pub fn motion(&self, node: NodeId) -> [f64; 6] {
        self.motions[node.0].into()
    }

    /// What a beam carries.
    pub fn beam_forces(&self, beam: BeamId) -> BeamForces {
        let member = &self.structure.beams[beam.0];
        member.forces(&self.deformation(&member.coupling), &self.lines[beam.0])
    }

    /// Force and moment on the near side of a spring, at its point, global axes (N, N m).
    pub fn spring_force(&self, spring: SpringId) -> [f64; 6] {
        let coupling = &self.structure.springs[spring.0];
        (coupling.stiffness * self.deformation(coupling)).into()
    }

    /// Motion of the near side of a spring less that of its far side, at its point (m, rad).
    pub fn spring_deformation(&self, spring: SpringId) -> [f64; 6] {
        self.deformation(&self.structure.springs[spring.0]).into()
    }

    /// What a shell carries at its four Gauss points, each nearest to the corner of its number.
    pub fn wall_forces(&self, shell: ShellId) -> [WallForces; 4] {
        let member = &self.structure.shells[shell.0];
        member.carried_at_gauss(&member.gathered(|node| self.motions[node.0]))
    }

    /// What a shell carries at its four corners, extrapolated from its Gauss points.
    pub fn wall_forces_at_corners(&self, shell: ShellId) -> [WallForces; 4] {
        let member = &self.structure.shells[shell.0];
        member.carried_at_corners(&member.gathered(|node| self.motions[node.0]))
    }

    /// Force (N) and moment (N m) that the supports put on a node; zero at free freedoms.
    pub fn reaction(&self, node: NodeId) -> [f64; 6] {
        let held = self.structure.held(node.0);
        let carried = |corner: &NodeId| self.structure.carrier(&Attachment::at(*corner)).node == node;
        let touching = |shell: &&ShellMember| shell.nodes.iter().any(carried);
        let loads = self.loads.combined_nodal(&self.factors);
        let unbalanced = self.unbalanced(&loads, self.structure.shells.iter().filter(touching))[node.0];
        std::array::from_fn(|i| if held[i] { unbalanced[i] } else { 0.0 })
    }

    /// Work of this state's forces on the deformation of `real` in one beam, apart for bending (with twist and
    /// stretch) and shear: `∫ m·M/EI + ∫ t·T/GJ + ∫ n·N/EA` and `∫ v·V/κGA`. This state carries no line load.
    ///
    /// Summed over all members it is the motion of `real` along this state's loads (unit-load theorem).
    pub fn beam_work(&self, real: &State, beam: BeamId) -> (f64, f64) {
        self.beam_work_on(&real.beam_forces(beam), beam)
    }

    /// As [`State::beam_work`], for what the beam carries in the other state.
    pub fn beam_work_on(&self, real: &BeamForces, beam: BeamId) -> (f64, f64) {
        self.structure.beams[beam.0].flexibility.work(&self.beam_forces(beam), real)
    }

    /// Work of this state's force on the deformation of `real` in one spring.
    pub fn spring_work(&self, real: &State, spring: SpringId) -> f64 {
        let (force, deformation) = (self.spring_force(spring), real.spring_deformation(spring));
        force.iter().zip(deformation).map(|(f, d)| f * d).sum()
    }

    /// Largest unbalanced force or moment on a free freedom over the largest nodal load, from what each
    /// member carries and not from the assembled matrix. A moment counts over a length of one unit.
    pub fn equilibrium_residual(&self) -> f64 {
        let (mut worst, mut largest) = (0.0_f64, 0.0_f64);
        let loads = self.loads.combined_nodal(&self.factors);
        for (node, unbalanced) in self.unbalanced(&loads, self.structure.shells.iter()).iter().enumerate() {
            for i in 0..6 {
                largest = largest.max(loads[node][i].abs());
                if !self.structure.held(node)[i] {
                    worst = worst.max(unbalanced[i].abs());
                }
            }
        }
        if largest > 0.0 { worst / largest } else { worst }
    }

    /// Forces on each node of beams, springs and the given shells less its loads: with all shells of a node, zero at
    /// free freedoms and the reaction at held ones.
    fn unbalanced<'s>(
        &self,
        loads: &[Vector6<f64>],
        shells: impl Iterator<Item = &'s ShellMember>,
    ) -> Vec<Vector6<f64>> {
        let mut sum: Vec<_> = loads.iter().map(|load| -load).collect();
        for coupling in self.structure.couplings() {
            let (near, far) = coupling.nodal_forces(&(coupling.stiffness * self.deformation(coupling)));
            sum[coupling.near.0] += near;
            if let Some(node) = coupling.far {
                sum[node.0] += far;
            }
        }
        for shell in shells {
            let forces = ShellStiffness::of(shell).matrix * shell.gathered(|node| self.motions[node.0]);
            for (corner, node) in shell.nodes.iter().enumerate() {
                sum[node.0] += forces.fixed_rows::<6>(6 * corner);
            }
        }
        let mut ties = Ties::default();
        ties.read(self.structure);
        ties.bring(&mut sum);
        sum
    }

    pub(crate) fn deformation(&self, coupling: &Coupling) -> Vector6<f64> {
        let far = coupling.far.map_or_else(Vector6::zeros, |far| self.motions[far.0]);
        coupling.deformation(&self.motions[coupling.near.0], &far)
    }
}
