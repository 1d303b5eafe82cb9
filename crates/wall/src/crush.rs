//! A tube pressed between saddle and block by U-bolts.

use axlebow_fe::{Face, Freedom, Loads, ShellId, State, StaticSystem};

use crate::WallError;
use crate::error::positive;
use crate::seat_wall::SeatWall;
use crate::spread::Spread;
use crate::tube_mesh::Fineness;

/// What a clamp force does to a wall, per newton.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClampCrush {
    /// Largest von Mises stress on the faces of the wall per clamp force, Pa/N.
    pub stress: f64,
    /// Approach of block and saddle, the mean of the wall under them, per clamp force, m/N.
    pub flattening: f64,
    /// Growth of the width across the clamp at the seat's center per clamp force, m/N.
    pub widening: f64,
}

impl ClampCrush {
    /// Clamp force at which the wall begins to yield, N.
    ///
    /// - `yield_strength`: Pa
    pub fn elastic_limit(&self, yield_strength: f64) -> f64 {
        yield_strength / self.stress
    }
}

/// Clamp force of tightened bolts, `n·T/(K·d)`, N.
///
/// - `legs`: n, legs of all U-bolts
/// - `torque`: T on each nut (N m), above 0
/// - `nut_factor`: K, 0.2 for dry steel (common practice, no source), above 0
/// - `diameter`: d (m), above 0
///
/// Valid up to the bolts' proof load; a torque gives the force within about ±30 % (common practice, no source).
///
/// # Errors
/// [`WallError::Value`].
pub fn clamp_force(legs: u32, torque: f64, nut_factor: f64, diameter: f64) -> Result<f64, WallError> {
    let torque = positive("torque of the U-bolt nuts", torque, "N m")?;
    let nut_factor = positive("nut factor", nut_factor, "")?;
    let diameter = positive("U-bolt diameter", diameter, "m")?;
    Ok(f64::from(legs) * torque / (nut_factor * diameter))
}

impl SeatWall {
    /// What the force of a clamp does to the wall, block and saddle pressing evenly on it, nothing else acting; none
    /// without a clamp.
    ///
    /// # Errors
    /// As [`SeatWall::compliance`].
    pub fn crush(&self, fineness: &Fineness) -> Result<Option<ClampCrush>, WallError> {
        let patches = self.patches();
        let [saddle, block] = patches.as_slice() else { return Ok(None) };
        let mut mesh = self.mesh(fineness)?;
        let [below, above] = [saddle, block].map(|patch| Spread::over(&mesh, patch));
        mesh.structure.hold(mesh.nodes[0], &Freedom::ALL);
        let mut loads = Loads::new(&mesh.structure, 1);
        let up = Freedom::Uz.index();
        below.add(&mut loads, 0, (up, 1.0));
        above.add(&mut loads, 0, (up, -1.0));
        let mut system = StaticSystem::new();
        system.prepare(&mesh.structure)?;
        let solved = system.solve(&mesh.structure, loads)?;
        let state = solved.state(&mesh.structure, 0);
        let near = mesh.shells_within(0.5 * self.width + mesh.line.outside());
        let middle = mesh.nearest_ring(0.0);
        let sideways = mesh.ring(middle).iter().map(|node| solved.of(*node, 0)[0]);
        let (low, high) = sideways.fold((0.0_f64, 0.0_f64), |(low, high), x| (low.min(x), high.max(x)));
        Ok(Some(ClampCrush {
            stress: largest_stress(&state, &near),
            flattening: below.motion(&solved, 0, up) - above.motion(&solved, 0, up),
            widening: high - low,
        }))
    }
}

/// Largest von Mises stress on both faces of shells.
fn largest_stress(state: &State, shells: &[ShellId]) -> f64 {
    let faces = [Face::Upper, Face::Lower].map(|face| {
        let stress = state.face_stress(shells, face);
        stress.values().map(von_mises).fold(0.0, f64::max)
    });
    faces[0].max(faces[1])
}

/// Von Mises stress of a tensor.
pub(crate) fn von_mises(stress: &[[f64; 3]; 3]) -> f64 {
    let [[x, xy, xz], [_, y, yz], [_, _, z]] = *stress;
    let normal = (x - y).powi(2) + (y - z).powi(2) + (z - x).powi(2);
    (0.5 * normal + 3.0 * (xy * xy + yz * yz + xz * xz)).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn torque_turns_into_clamp_force() {
        // Four legs of 22 mm at 400 N m and K = 0.2 press with 4·400/(0.2·0.022) N.
        assert!((clamp_force(4, 400.0, 0.2, 0.022).unwrap() - 363_636.363_636).abs() < 1e-3);
        for (torque, factor, diameter) in [(0.0, 0.2, 0.02), (1.0, 0.0, 0.02), (1.0, 0.2, f64::NAN)] {
            assert!(clamp_force(4, torque, factor, diameter).is_err());
        }
    }
}
