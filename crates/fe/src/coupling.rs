//! The one kernel behind beams and springs: six forces at a point between two rigid arms.
//!
//! A coupling joins a near and a far node (or the ground). Both reach a common point by rigid arms; the
//! deformation is the near side's motion at that point less the far side's, and the stiffness there is a
//! symmetric 6 × 6 matrix. Rigid arms need neither penalty nor multiplier this way.

use nalgebra::{Matrix3, Matrix6, Vector3, Vector6};

use crate::structure::NodeId;

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

    /// `row_armᵀ · stiffness · column_arm`, the block that joins two nodes through their arms.
    pub(crate) fn block(&self, row_arm: &Vector3<f64>, column_arm: &Vector3<f64>) -> Matrix6<f64> {
        let k = &self.stiffness;
        let (a, b): (Matrix3<f64>, Matrix3<f64>) =
            (k.fixed_view::<3, 3>(0, 0).into(), k.fixed_view::<3, 3>(0, 3).into());
        let (bt, c): (Matrix3<f64>, Matrix3<f64>) =
            (k.fixed_view::<3, 3>(3, 0).into(), k.fixed_view::<3, 3>(3, 3).into());
        let column = column_arm.cross_matrix();
        let (upper_right, lower_right) = (b - a * column, c - bt * column);
        let row = row_arm.cross_matrix();
        let mut block = Matrix6::zeros();
        block.fixed_view_mut::<3, 3>(0, 0).copy_from(&a);
        block.fixed_view_mut::<3, 3>(0, 3).copy_from(&upper_right);
        block.fixed_view_mut::<3, 3>(3, 0).copy_from(&(bt + row * a));
        block.fixed_view_mut::<3, 3>(3, 3).copy_from(&(lower_right + row * upper_right));
        block
    }
}
