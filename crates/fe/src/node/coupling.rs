//! The one kernel behind beams and springs: six forces at a point between two rigid arms.
//!
//! A coupling joins a near and a far node (or the ground). Both reach a common point by rigid arms; the
//! deformation is the near side's motion at that point less the far side's, and the stiffness there is a
//! symmetric 6 × 6 matrix. Rigid arms need neither penalty nor multiplier this way.

use nalgebra::{Matrix6, Vector3, Vector6};

use crate::node::ids::NodeId;

/// A point rigidly joined to a node.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attachment {
    /// Node.
    pub node: NodeId,
    /// From the node to the point.
    pub arm: [f64; 3],
}

impl Attachment {
    /// The node itself.
    pub fn at(node: NodeId) -> Self {
        Attachment { node, arm: [0.0; 3] }
    }

    /// A point at the end of a rigid arm from the node.
    pub fn on_arm(node: NodeId, arm: [f64; 3]) -> Self {
        Attachment { node, arm }
    }
}

/// Motion of the point at the end of `arm` when the node moves by `motion` (displacement, rotation).
pub(crate) fn carried(motion: &Vector6<f64>, arm: &Vector3<f64>) -> Vector6<f64> {
    let rotation = Vector3::new(motion[3], motion[4], motion[5]);
    let shift = rotation.cross(arm);
    let mut point = *motion;
    for i in 0..3 {
        point[i] += shift[i];
    }
    point
}

/// Force and moment at the node that balance in the same way as `force` (force, moment) at the end of `arm`.
pub(crate) fn brought(force: &Vector6<f64>, arm: &Vector3<f64>) -> Vector6<f64> {
    let push = Vector3::new(force[0], force[1], force[2]);
    let extra = arm.cross(&push);
    let mut node = *force;
    for i in 0..3 {
        node[i + 3] += extra[i];
    }
    node
}

/// Two nodes (or a node and the ground) joined at a point.
#[derive(Debug, Clone)]
pub(crate) struct Coupling {
    pub near: NodeId,
    pub far: Option<NodeId>,
    /// From the near node to the point.
    pub near_arm: Vector3<f64>,
    /// From the far node to the point.
    pub far_arm: Vector3<f64>,
    /// Force (force, moment) on the near side per motion of it.
    pub stiffness: Matrix6<f64>,
}

impl Coupling {
    /// Near motion less far motion at the point.
    pub(crate) fn deformation(&self, near: &Vector6<f64>, far: &Vector6<f64>) -> Vector6<f64> {
        carried(near, &self.near_arm) - carried(far, &self.far_arm)
    }

    /// Forces on the near and far nodes of the member that hold it in the deformed state with `force` at the
    /// point.
    pub(crate) fn nodal_forces(&self, force: &Vector6<f64>) -> (Vector6<f64>, Vector6<f64>) {
        (brought(force, &self.near_arm), -brought(force, &self.far_arm))
    }

    /// `Aᵀ(row_arm) · stiffness · A(column_arm)`, the block that joins two nodes through their arms.
    pub(crate) fn block(&self, row_arm: &Vector3<f64>, column_arm: &Vector3<f64>) -> Matrix6<f64> {
        let mut block = self.stiffness;
        carry_columns(&mut block, column_arm);
        bring_rows(&mut block, row_arm);
        block
    }
}

/// `block · A(arm)`, in place: a rotation of the node about axis j moves the point by `e_j × arm`.
pub(crate) fn carry_columns(block: &mut Matrix6<f64>, arm: &Vector3<f64>) {
    if *arm == Vector3::zeros() {
        return;
    }
    for (j, k, l) in [(0, 1, 2), (1, 2, 0), (2, 0, 1)] {
        for i in 0..6 {
            block[(i, 3 + j)] += block[(i, l)] * arm[k] - block[(i, k)] * arm[l];
        }
    }
}

/// `Aᵀ(arm) · block`, in place: each column is a force at the point, brought to the node.
pub(crate) fn bring_rows(block: &mut Matrix6<f64>, arm: &Vector3<f64>) {
    if *arm == Vector3::zeros() {
        return;
    }
    for j in 0..6 {
        for (i, k, l) in [(0, 1, 2), (1, 2, 0), (2, 0, 1)] {
            block[(3 + i, j)] += arm[k] * block[(l, j)] - arm[l] * block[(k, j)];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The matrix A(arm), column by column from the motion that it stands for.
    fn arm_matrix(arm: &Vector3<f64>) -> Matrix6<f64> {
        Matrix6::from_columns(&std::array::from_fn::<_, 6, _>(|j| {
            let mut unit = Vector6::zeros();
            unit[j] = 1.0;
            carried(&unit, arm)
        }))
    }

    #[test]
    fn blocks_are_the_products_with_the_arm_matrices() {
        let root = Matrix6::from_fn(|i, j| ((5 * i + 3 * j) % 7) as f64 - 2.5);
        let coupling = Coupling {
            near: NodeId(0),
            far: None,
            near_arm: Vector3::new(0.3, -0.7, 0.2),
            far_arm: Vector3::new(-1.1, 0.4, 0.9),
            stiffness: root * root.transpose(),
        };
        let zero = Vector3::zeros();
        for (row, column) in [
            (coupling.near_arm, coupling.near_arm),
            (coupling.near_arm, coupling.far_arm),
            (zero, coupling.far_arm),
            (coupling.near_arm, zero),
        ] {
            let product = arm_matrix(&row).transpose() * coupling.stiffness * arm_matrix(&column);
            assert!((coupling.block(&row, &column) - product).amax() < 1e-12 * product.amax());
        }
    }

    #[test]
    fn forces_and_motions_through_an_arm_do_the_same_work() {
        let arm = Vector3::new(0.3, -0.7, 0.2);
        let (force, motion) =
            (Vector6::new(1.0, -2.0, 3.0, 0.5, 0.7, -0.4), Vector6::new(0.3, 0.1, -0.2, 0.9, 0.4, 1.1));
        let work = force.dot(&carried(&motion, &arm));
        assert!((work - brought(&force, &arm).dot(&motion)).abs() < 1e-14);
    }
}
