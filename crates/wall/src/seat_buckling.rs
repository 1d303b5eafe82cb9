//! Local buckling of the wall at a seat under what the axle carries there.

use axlebow_fe::{Attachment, Loads, StaticSystem, buckling};

use crate::WallError;
use crate::seat_stress::{SeatResultants, end_loads};
use crate::seat_wall::SeatWall;
use crate::tube_mesh::Fineness;

impl SeatWall {
    /// By what factor the loads may grow before the perfect wall buckles; none where they cannot buckle it.
    ///
    /// Both ends of the piece of tube keep their shape, as the axle beyond makes them: a free end would buckle first, at
    /// half of the stress. A real wall buckles below a perfect one; design codes have the reductions.
    ///
    /// # Errors
    /// As [`SeatWall::compliance`].
    pub fn buckling_factor(
        &self,
        carried: &SeatResultants,
        fineness: &Fineness,
    ) -> Result<Option<f64>, WallError> {
        let mut mesh = self.mesh(fineness)?;
        let half_length = self.half_length(fineness);
        self.hold(&mut mesh)?;
        let mut hubs = Vec::new();
        for (ring, y) in [(0, -half_length), (mesh.along.len() - 1, half_length)] {
            let nodes = mesh.ring(ring).to_vec();
            let hub = mesh.structure.add_node("end of the piece of tube", [0.0, y, 0.0]);
            mesh.structure.tie(&nodes, hub)?;
            hubs.push(Attachment::at(hub));
        }
        let mut loads = Loads::new(&mesh.structure, 1);
        for (hub, six) in hubs.iter().zip(end_loads(half_length, carried).as_chunks::<6>().0) {
            let [fx, fy, fz, mx, my, mz] = *six;
            loads.add_force(0, hub, [fx, fy, fz]);
            loads.add_moment(0, hub, [mx, my, mz]);
        }
        let mut system = StaticSystem::new();
        system.prepare(&mesh.structure)?;
        let solved = system.solve(&mesh.structure, loads)?;
        let found = buckling(&solved.state(&mesh.structure, 0), 1)?;
        Ok(found.modes.first().map(|mode| mode.factor))
    }
}
