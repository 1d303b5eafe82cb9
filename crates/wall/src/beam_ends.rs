//! The beam beside a piece of tube: motions of its two ends with its middle held.

use axlebow_fe::{Attachment, Beam, Flexibility, Freedom, Loads, Rigidity, StaticSystem, Structure};
use nalgebra::SMatrix;

use crate::WallError;

/// Motions of both ends (first the one at −Y) along unit loads there, each ux uy uz rx ry rz.
pub(crate) type EndCompliance = SMatrix<f64, 12, 12>;

/// A beam along Y about the origin.
#[derive(Debug, Clone, Copy)]
pub(crate) struct BeamPiece {
    pub half_length: f64,
    /// Width of the seat in the middle, m.
    pub width: f64,
    /// Local axes: 1 = Y, 2 = Z, 3 = X.
    pub rigidity: Rigidity,
}

impl BeamPiece {
    /// Motions of the ends when the middle is held and the length under the seat is less flexible by a share.
    pub(crate) fn ends(&self, stiffened_share: f64) -> Result<EndCompliance, WallError> {
        let mut structure = Structure::new();
        let half = 0.5 * self.width;
        let places = [-self.half_length, -half, 0.0, half, self.half_length];
        let nodes = places.map(|y| structure.add_node("beam", [0.0, y, 0.0]));
        for (number, pair) in nodes.windows(2).enumerate() {
            let under = number == 1 || number == 2;
            let length = places[number + 1] - places[number];
            let factor = if under { 1.0 - stiffened_share } else { 1.0 };
            let flexibility = Flexibility::uniform(length, &self.rigidity).scaled(factor);
            structure.add_beam(Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility))?;
        }
        structure.hold(nodes[2], &Freedom::ALL);
        let ends = [nodes[0], nodes[4]];
        let mut loads = Loads::new(&structure, 12);
        for column in 0..12 {
            let at = Attachment::at(ends[column / 6]);
            let mut unit = [0.0; 3];
            unit[column % 3] = 1.0;
            match column % 6 {
                0..3 => loads.add_force(column, &at, unit),
                _ => loads.add_moment(column, &at, unit),
            }
        }
        let mut system = StaticSystem::new();
        system.prepare(&structure)?;
        let solved = system.solve(&structure, loads)?;
        Ok(EndCompliance::from_fn(|i, j| solved.of(ends[i / 6], j)[i % 6]))
    }
}
