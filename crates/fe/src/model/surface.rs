//! Smooth surfaces of shells: the normals that neighbors share.

use std::collections::BTreeMap;

use nalgebra::Vector3;

use crate::FeError;
use crate::element::shell::{CORNERS, ShellMember, SurfacePoint, Wall};
use crate::model::structure::Structure;
use crate::node::ids::{NodeId, ShellId};

/// Cosine of the widest angle between the normal of a node and that of a quadrilateral at its corner there: 60°.
const WIDEST_FOLD: f64 = 0.5;

impl Structure {
    /// Adds quadrilaterals that meet smoothly, each by its four corners in turn, counter-clockwise as seen from
    /// where its normal points; the normal at a node is the mean of those of the quadrilaterals that meet there.
    ///
    /// Where walls meet at a fold, each side is a surface of its own.
    ///
    /// # Errors
    /// [`FeError::ImpossibleWall`] when the wall cannot exist; [`FeError::ImpossibleQuadrilateral`] when one has a
    /// corner of 180° or more, or turns by more than 60° from its neighbors.
    ///
    /// A strip of 1 m × 0.1 m × 5 mm pulled by 1 kN stretches by F·L/(E·A):
    /// ```
    /// use axlebow_fe::{Attachment, Freedom, Loads, StaticSystem, Structure, Wall};
    /// let mut structure = Structure::new();
    /// let corners = [[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 0.1, 0.0], [0.0, 0.1, 0.0]];
    /// let nodes = corners.map(|at| structure.add_node("strip", at));
    /// let shells = structure.add_surface(&[nodes], &Wall::new(0.005, 200e9, 0.3))?;
    /// structure.hold(nodes[0], &Freedom::ALL);
    /// structure.hold(nodes[3], &[Freedom::Ux, Freedom::Uz]);
    /// let mut loads = Loads::new(&structure, 1);
    /// loads.add_edge_load(&structure, 0, (shells[0], 1), [1000.0 / 0.1, 0.0, 0.0]);
    /// let mut system = StaticSystem::new();
    /// system.prepare(&structure)?;
    /// let stretch = system.solve(&structure, loads)?.of(nodes[1], 0)[0];
    /// assert!((stretch - 1000.0 / (200e9 * 0.0005)).abs() < 1e-15);
    /// # Ok::<(), axlebow_fe::FeError>(())
    /// ```
    pub fn add_surface(&mut self, quads: &[[NodeId; 4]], wall: &Wall) -> Result<Vec<ShellId>, FeError> {
        let mut sums: BTreeMap<NodeId, Vector3<f64>> = BTreeMap::new();
        for quad in quads {
            for corner in 0..4 {
                *sums.entry(quad[corner]).or_default() += self.corner_normal(quad, corner)?;
            }
        }
        self.add_shells(quads, wall, |node| sums[&node])
    }

    /// As [`Structure::add_surface`], for a surface whose normal (of any length) is known at each node: at the edges
    /// of a curved surface the neighbors of one side alone do not give it.
    ///
    /// # Errors
    /// As [`Structure::add_surface`].
    pub fn add_surface_facing(
        &mut self,
        quads: &[[NodeId; 4]],
        wall: &Wall,
        normal: impl Fn(NodeId) -> [f64; 3],
    ) -> Result<Vec<ShellId>, FeError> {
        self.add_shells(quads, wall, |node| normal(node).into())
    }

    fn add_shells(
        &mut self,
        quads: &[[NodeId; 4]],
        wall: &Wall,
        normal: impl Fn(NodeId) -> Vector3<f64>,
    ) -> Result<Vec<ShellId>, FeError> {
        if let Some((what, value, accepted)) = wall.impossible_quantity() {
            return Err(FeError::ImpossibleWall { what, value, accepted });
        }
        let mut members = Vec::with_capacity(quads.len());
        for quad in quads {
            let (corners, normals) = (self.corners(quad), quad.map(|node| normal(node).normalize()));
            self.refuse_fold(quad, &normals)?;
            members.push(ShellMember { nodes: *quad, corners, normals, wall: *wall });
        }
        let first = self.shells.len();
        self.shells.extend(members);
        Ok((first..self.shells.len()).map(ShellId).collect())
    }

    /// Refuses a quadrilateral whose corners stand askew to the normals of their nodes.
    fn refuse_fold(&self, quad: &[NodeId; 4], normals: &[Vector3<f64>; 4]) -> Result<(), FeError> {
        for corner in 0..4 {
            let along = self.corner_normal(quad, corner)?.dot(&normals[corner]);
            if !(along >= WIDEST_FOLD) {
                let why = "it is folded by more than 60 deg there, or its corners run the other way round";
                return Err(self.impossible_quadrilateral(quad[corner], why));
            }
        }
        Ok(())
    }

    fn corners(&self, quad: &[NodeId; 4]) -> [Vector3<f64>; 4] {
        quad.map(|node| self.position(node).into())
    }

    /// Unit normal of a quadrilateral at one corner.
    fn corner_normal(&self, quad: &[NodeId; 4], corner: usize) -> Result<Vector3<f64>, FeError> {
        let corners = self.corners(quad);
        let flat =
            ShellMember { nodes: *quad, corners, normals: [Vector3::z(); 4], wall: Wall::new(1.0, 1.0, 0.0) };
        let square = |place| {
            let [r, s] = SurfacePoint::at(&flat, place).tangents;
            r.cross(&s)
        };
        let (here, center) = (square(CORNERS[corner]), square([0.0; 2]));
        if !(here.dot(&center) > 0.0) {
            return Err(self.impossible_quadrilateral(quad[corner], "its corner there is 180 deg or more"));
        }
        Ok(here.normalize())
    }

    fn impossible_quadrilateral(&self, node: NodeId, why: &'static str) -> FeError {
        FeError::ImpossibleQuadrilateral { station: self.station(node).to_owned(), why }
    }
}
