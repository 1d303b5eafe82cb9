//! Stresses at the nodes of a wall.
//!
//! Stresses are best at the centers of the shells. At a node they are read off the plane that fits the centers round
//! it (O. C. Zienkiewicz & J. Z. Zhu, Int. J. Numer. Methods Eng. 33 (1992) 1331-1364, from memory), at the edge of
//! the wall off those of two rows.

use std::collections::{BTreeMap, BTreeSet};

use nalgebra::{Matrix3, Rotation3, Vector3};

use crate::element::shell::Face;
use crate::model::state::State;
use crate::node::ids::{NodeId, ShellId};

/// Fewest shells round a node whose centers place it inside.
const AROUND: usize = 4;

/// Least of the pivots of a fit of a plane, of patches of size 1, below which the centers lie on a line.
const ON_A_LINE: f64 = 1e-6;

/// Stress at the center of a shell.
struct Center {
    position: Vector3<f64>,
    normal: Vector3<f64>,
    stress: Matrix3<f64>,
}

impl State<'_> {
    /// Stress tensor (Pa, global axes) on a face of a smooth surface at each of its nodes.
    ///
    /// Where a stress is infinite in theory, at a sharp corner or a point load, the values grow as the mesh is
    /// refined; read such a place from points beside it (hot-spot extrapolation).
    pub fn face_stress(&self, surface: &[ShellId], face: Face) -> BTreeMap<NodeId, [[f64; 3]; 3]> {
        let centers: Vec<Center> = surface.iter().map(|shell| self.center(*shell, face)).collect();
        let mut touching: BTreeMap<NodeId, Vec<usize>> = BTreeMap::new();
        for (place, shell) in surface.iter().enumerate() {
            self.structure
                .shell_nodes(*shell)
                .iter()
                .for_each(|node| touching.entry(*node).or_default().push(place));
        }
        let at_node = |node: &NodeId| {
            let mut patch: BTreeSet<usize> = touching[node].iter().copied().collect();
            if patch.len() < AROUND {
                let neighbors = patch.iter().flat_map(|place| self.structure.shell_nodes(surface[*place]));
                patch = neighbors.flat_map(|node| touching[&node].iter().copied()).collect();
            }
            let normal = self.node_normal(surface[touching[node][0]], *node);
            let patch: Vec<&Center> = patch.iter().map(|place| &centers[*place]).collect();
            let stress = fitted(&patch, &self.structure.position(*node).into(), &normal);
            std::array::from_fn(|i| std::array::from_fn(|j| stress[(i, j)]))
        };
        touching.keys().map(|node| (*node, at_node(node))).collect()
    }

    fn center(&self, shell: ShellId, face: Face) -> Center {
        let member = &self.structure.shells[shell.0];
        let tensor = |forces: &crate::WallForces| {
            let stress = forces.stress_tensor(face);
            Matrix3::from_fn(|i, j| stress[i][j])
        };
        Center {
            position: member.corners.iter().sum::<Vector3<f64>>() / 4.0,
            normal: member.normals.iter().sum::<Vector3<f64>>(),
            stress: self.wall_forces(shell).iter().map(tensor).sum::<Matrix3<f64>>() / 4.0,
        }
    }

    fn node_normal(&self, shell: ShellId, node: NodeId) -> Vector3<f64> {
        let member = &self.structure.shells[shell.0];
        let corner = member.nodes.iter().position(|corner| *corner == node).unwrap_or(0);
        member.normals[corner]
    }
}

/// Value at a point of the plane a + b·x + c·y that fits stresses at centers, each turned with its normal into the
/// tangent plane there; their mean where the centers lie on a line.
fn fitted(patch: &[&Center], at: &Vector3<f64>, normal: &Vector3<f64>) -> Matrix3<f64> {
    let turn = Rotation3::rotation_between(&Vector3::z(), normal).unwrap_or_else(Rotation3::identity);
    let places: Vec<Vector3<f64>> =
        patch.iter().map(|center| turn.inverse() * (center.position - at)).collect();
    let size = places.iter().map(|place| place.xy().norm()).fold(f64::MIN_POSITIVE, f64::max);
    let rows: Vec<_> = places.iter().map(|p| Vector3::new(1.0, p[0] / size, p[1] / size)).collect();
    let turned = patch.iter().map(|center| {
        let turn = Rotation3::rotation_between(&center.normal, normal).unwrap_or_else(Rotation3::identity);
        turn * center.stress * turn.transpose()
    });
    let normal_matrix: Matrix3<f64> = rows.iter().map(|row| row * row.transpose()).sum();
    let count = patch.len() as f64;
    let inverse =
        normal_matrix.try_inverse().filter(|_| normal_matrix.symmetric_eigenvalues().min() > ON_A_LINE);
    let weight = |row: &Vector3<f64>| inverse.map_or(1.0 / count, |inverse| (inverse * row)[0]);
    rows.iter().zip(turned).map(|(row, stress)| stress * weight(row)).sum()
}
