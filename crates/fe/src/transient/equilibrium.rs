//! Where a system rests, and how it starts.

use super::effective::Solver;
use super::law::MOST;
use super::motion::Motion;
use super::newton::{Newton, Trial};
use super::stamped::stamped;
use super::system::DynamicSystem;
use super::updated_factor::SolverRoom;
use crate::FeError;

/// Share by which the compressions at rest may differ from those of their forces.
const TOLERANCE: f64 = 1e-12;

impl DynamicSystem {
    /// Displacements at rest (m, rad) under the loads and on the bases of a time (s).
    ///
    /// `K u = Σ b F + Σ b f(δ, 0)`, by Newton's method on the laws beside the structure with all its contacts
    /// closed, so that the laws may be all that holds it.
    ///
    /// # Errors
    /// [`FeError::Loose`] when a motion is held by nothing even with all contacts closed;
    /// [`FeError::NoEquilibrium`] when the iteration does not converge, as when contacts that open leave
    /// nothing that holds.
    pub fn equilibrium(&self, time: f64) -> Result<Vec<f64>, FeError> {
        let reference = self.full_stiffnesses();
        let along: Vec<_> = self.directions().zip(reference.iter().copied()).collect();
        let closed = stamped(&self.stiffness, &along);
        let solver = Solver::new(&closed, &[], self)?;
        let mut u = vec![0.0; self.order()];
        self.loads.iter().for_each(|load| load.direction.add_to(load.at(time), &mut u));
        solver.factor.solve(&mut u, &mut SolverRoom::default());
        let mut free = vec![0.0; self.rows()];
        self.along_laws(&u, &mut free);
        let bases: Vec<_> = self.laws.iter().map(|law| [law.base_at(time)[0], 0.0]).collect();
        // Gaps pressed, because within a gap nothing says which way is out of it.
        let mut start = free.clone();
        solver.compliance.add_rows(&self.pressed_offsets(&free), &mut start);
        let trial = Trial {
            laws: &self.laws,
            bases: &bases,
            touching: &vec![true; self.laws.len()],
            compliance: &solver.compliance,
            start: &start,
            reference: &reference,
            free: &free,
            rate: 0.0,
            known_rate: &vec![0.0; free.len()],
        };
        let mut newton = Newton::new(self.laws.len(), free.len());
        newton.solve(&trial, TOLERANCE).map_err(|failure| FeError::NoEquilibrium { law: failure.law })?;
        solver.add_response(&newton.totals(&reference), &mut u);
        Ok(u)
    }

    /// Forces of gaps on top of their full stiffness when they are pressed along the motions x.
    fn pressed_offsets(&self, free: &[f64]) -> Vec<f64> {
        let mut offsets = Vec::with_capacity(free.len());
        for law in &self.laws {
            let (first, count) = (offsets.len(), law.directions.len());
            let mut delta = [0.0; MOST];
            delta.iter_mut().zip(&free[first..first + count]).for_each(|(delta, x)| *delta = -x);
            offsets.extend_from_slice(&law.pressed_offset(delta)[..count]);
        }
        offsets
    }

    /// Stiffness of each direction where its law presses.
    fn full_stiffnesses(&self) -> Vec<f64> {
        let of = |law: &super::LocalLaw| vec![law.full_stiffness(); law.directions.len()];
        self.laws.iter().flat_map(of).collect()
    }

    /// Accelerations that balance the forces at a time, by the mass alone or, where that is singular, with a
    /// little of the stiffness (that of a step of `step`).
    pub(super) fn accelerate(
        &self,
        motion: &mut Motion,
        forces: &[f64],
        (time, step): (f64, f64),
    ) -> Result<(), FeError> {
        let mut product = vec![0.0; self.order()];
        let a = &mut motion.a;
        a.fill(0.0);
        self.loads.iter().for_each(|load| load.direction.add_to(load.at(time), a));
        self.add_law_forces(forces, a);
        self.stiffness.multiply(&motion.u, &mut product);
        a.iter_mut().zip(&product).for_each(|(a, force)| *a -= force);
        if let Some(damping) = &self.damping {
            damping.multiply(&motion.v, &mut product);
            a.iter_mut().zip(&product).for_each(|(a, force)| *a -= force);
        }
        self.add_damper_forces(-1.0, &motion.v, a);
        let factor =
            self.mass.factor().or_else(|_| self.mass.plus(0.25 * step * step, &self.stiffness).factor());
        factor.map_err(|failure| FeError::Loose { equation: failure.index })?.solve(a);
        Ok(())
    }
}
