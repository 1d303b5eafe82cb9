//! The shells of a seat as they move and what they carry, to be drawn.

use axlebow_fe::Face;

use crate::seat_stress::{SeatResultants, SolvedSeat, end_loads};

/// Points and quadrilaterals of a wall with their motions and stresses; the origin is the seat's center.
#[derive(Debug, Clone, PartialEq)]
pub struct WallPicture {
    /// Places on the middle surface, m.
    pub points: Vec<[f64; 3]>,
    /// Corners of each quadrilateral, by the numbers of points.
    pub quads: Vec<[usize; 4]>,
    /// Displacement of each point against bracket or saddle, m.
    pub displacements: Vec<[f64; 3]>,
    /// Von Mises stress at each point on the outer and on the inner face, Pa.
    pub stress: Vec<[f64; 2]>,
}

impl SolvedSeat {
    /// The wall under what the axle carries beside the seat.
    pub fn picture(&self, carried: &SeatResultants) -> WallPicture {
        let (mesh, factors) = (&self.mesh, end_loads(self.half_length, carried));
        let state = self.solved.combined(&mesh.structure, &factors);
        let faces = [Face::Upper, Face::Lower].map(|face| state.face_stress(&mesh.shells, face));
        let moved = mesh.nodes.iter().map(|node| {
            let [x, y, z, ..] = state.motion(*node);
            [x, y, z]
        });
        let stress = mesh
            .nodes
            .iter()
            .map(|node| [0, 1].map(|face: usize| faces[face].get(node).map_or(0.0, crate::crush::von_mises)));
        WallPicture {
            points: mesh.nodes.iter().map(|node| mesh.structure.position(*node)).collect(),
            quads: mesh
                .shells
                .iter()
                .map(|shell| mesh.structure.shell_nodes(*shell).map(|n| n.index()))
                .collect(),
            displacements: moved.collect(),
            stress: stress.collect(),
        }
    }
}
