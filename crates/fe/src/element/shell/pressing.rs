//! Loads on a shell, brought to its corners.

use nalgebra::Vector3;

use super::layer::SurfacePoint;
use super::{CORNERS, GAUSS, ShellMember, gauss_points};

impl ShellMember {
    /// Forces on the corners that do the same work as a pressure along the normal on the middle surface.
    pub(crate) fn pressed(&self, pressure: f64) -> [Vector3<f64>; 4] {
        let mut forces = [Vector3::zeros(); 4];
        for place in gauss_points() {
            let point = SurfacePoint::at(self, place);
            let push = point.tangents[0].cross(&point.tangents[1]) * pressure;
            forces.iter_mut().zip(point.shapes).for_each(|(force, shape)| *force += push * shape);
        }
        forces
    }

    /// Forces on the corners that do the same work as a load per length along the edge from corner `edge` to the
    /// next, uniform per length.
    pub(crate) fn pulled(&self, edge: usize, load: &Vector3<f64>) -> [Vector3<f64>; 4] {
        let (from, to) = (CORNERS[edge], CORNERS[(edge + 1) % 4]);
        let mut forces = [Vector3::zeros(); 4];
        for x in [-GAUSS, GAUSS] {
            let place = std::array::from_fn(|i| 0.5 * ((1.0 - x) * from[i] + (1.0 + x) * to[i]));
            let point = SurfacePoint::at(self, place);
            let along: Vector3<f64> = (0..2).map(|i| point.tangents[i] * (0.5 * (to[i] - from[i]))).sum();
            let length = along.norm();
            forces.iter_mut().zip(point.shapes).for_each(|(force, shape)| *force += load * (length * shape));
        }
        forces
    }
}
