//! A system for small motions about a place.

use super::law::MOST;
use super::stamped::stamped;
use super::system::DynamicSystem;
use crate::FeError;
use crate::model::direction::Direction;

impl DynamicSystem {
    /// The system without loads, its laws replaced by how their forces change with small motions about
    /// displacements (m, rad) with the bases where they are at a time (s).
    ///
    /// A damper of two slopes gets their mean, which takes as much energy from a harmonic motion.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] when the displacements have the wrong length.
    pub fn linearized(&self, displacements: &[f64], time: f64) -> Result<DynamicSystem, FeError> {
        if displacements.len() != self.order() {
            let (what, value) = ("number of displacements", displacements.len() as f64);
            return Err(FeError::ImpossibleDynamics { what, value, accepted: "the order of the system" });
        }
        let mut tangents: Vec<(Direction, [f64; 2])> = Vec::new();
        for law in &self.laws {
            let mut delta = [0.0; MOST];
            delta.iter_mut().zip(&law.directions).for_each(|(delta, b)| *delta = -b.dot(displacements));
            delta[0] += law.base_at(time)[0];
            tangents.extend(law.tangents(delta));
        }
        let part = |i: usize| tangents.iter().map(|(b, values)| (b, values[i])).collect::<Vec<_>>();
        let stiffness = stamped(&self.stiffness, &part(0));
        let damping = match &self.damping {
            Some(damping) => stamped(damping, &part(1)),
            None => stamped(&self.stiffness.plus(-1.0, &self.stiffness), &part(1)),
        };
        let linear = DynamicSystem::new(stiffness, self.mass.clone())?.with_damping(damping)?;
        Ok(DynamicSystem { dampers: self.dampers.clone(), ..linear })
    }
}
