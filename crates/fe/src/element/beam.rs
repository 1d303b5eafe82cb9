//! Straight Timoshenko beam between two nodes, uniform or tapered, with optional rigid end arms.

use nalgebra::{Matrix3, Matrix6, Vector3, Vector6};

use crate::element::beam_forces::BeamForces;
use crate::element::flexibility::Flexibility;
use crate::node::coupling::{Attachment, Coupling, brought};
use crate::node::ids::NodeId;

/// A beam to be added to a structure.
#[derive(Debug, Clone)]
pub struct Beam {
    /// Start of the flexible length.
    pub start: Attachment,
    /// End of the flexible length.
    pub end: Attachment,
    /// Direction from which local axis 2 is made.
    pub up: [f64; 3],
    /// Flexibility integrals; their length must be the distance between start and end.
    pub flexibility: Flexibility,
    /// Mass per length, uniform over the element, kg/m.
    pub mass_per_length: f64,
    /// Rotary inertia per length (ρJp, ρI₂, ρI₃) about axes 1, 2, 3, uniform over the element, kg m.
    pub inertia_per_length: [f64; 3],
}

impl Beam {
    /// A massless beam from node to node.
    pub fn between(start: NodeId, end: NodeId, up: [f64; 3], flexibility: Flexibility) -> Self {
        let (start, end) = (Attachment::at(start), Attachment::at(end));
        Beam { start, end, up, flexibility, mass_per_length: 0.0, inertia_per_length: [0.0; 3] }
    }

    /// The same beam with a mass per length, kg/m.
    pub fn with_mass(mut self, mass_per_length: f64) -> Self {
        self.mass_per_length = mass_per_length;
        self
    }

    /// The same beam with a rotary inertia per length (ρJp, ρI₂, ρI₃) about axes 1, 2, 3, kg m; of a tapered
    /// beam give the mean.
    pub fn with_inertia(mut self, inertia_per_length: [f64; 3]) -> Self {
        self.inertia_per_length = inertia_per_length;
        self
    }
}

/// A beam in place: its coupling, its local axes and its flexibility.
#[derive(Debug, Clone)]
pub(crate) struct BeamMember {
    pub coupling: Coupling,
    /// Columns are the local axes 1, 2, 3 in global components.
    pub axes: Matrix3<f64>,
    pub flexibility: Flexibility,
    pub mass_per_length: f64,
    pub inertia_per_length: [f64; 3],
    /// Rigid arm from the end node to the end of the flexible length.
    pub end_arm: Vector3<f64>,
}

impl BeamMember {
    /// Places a beam whose flexible length runs from `start` to `end` (global positions).
    pub(crate) fn placed(beam: &Beam, start: Vector3<f64>, end: Vector3<f64>) -> Self {
        let (near_arm, end_arm) = (Vector3::from(beam.start.arm), Vector3::from(beam.end.arm));
        let axes = local_axes(&(end - start), &Vector3::from(beam.up));
        let coupling = Coupling {
            near: beam.start.node,
            far: Some(beam.end.node),
            near_arm,
            far_arm: end_arm - (end - start),
            stiffness: start_stiffness(&beam.flexibility, &axes),
        };
        BeamMember {
            coupling,
            axes,
            flexibility: beam.flexibility,
            mass_per_length: beam.mass_per_length,
            inertia_per_length: beam.inertia_per_length,
            end_arm,
        }
    }

    /// Nodal loads (start node, end node) that are equivalent to a uniform load per length `q` (global).
    pub(crate) fn equivalent_loads(&self, q: &Vector3<f64>) -> (Vector6<f64>, Vector6<f64>) {
        let l = self.flexibility.length;
        let start = -self.held_start_force(q);
        let force = start.fixed_rows::<3>(0).into_owned();
        let moment = start.fixed_rows::<3>(3).into_owned();
        let along = self.axes.column(0).into_owned();
        let end_force = q * l - force;
        let end_moment = -(along * -l).cross(&force) - moment + (along * (-0.5 * l)).cross(&(q * l));
        let mut end = Vector6::zeros();
        end.fixed_rows_mut::<3>(0).copy_from(&end_force);
        end.fixed_rows_mut::<3>(3).copy_from(&end_moment);
        (brought(&start, &self.coupling.near_arm), brought(&end, &self.end_arm))
    }

    /// Force on the start (global) that holds both ends still under a uniform load `q` (global).
    fn held_start_force(&self, q: &Vector3<f64>) -> Vector6<f64> {
        -(self.coupling.stiffness * self.free_start_motion(q))
    }

    /// Motion of a free start (global) under a uniform load `q` (global), the end held.
    fn free_start_motion(&self, q: &Vector3<f64>) -> Vector6<f64> {
        let q = self.axes.transpose() * q;
        let f = &self.flexibility;
        let (v2, r3) = f.plane_12.uniform_load_motion();
        let (v3, r2) = f.plane_13.uniform_load_motion();
        let motion = Vector6::new(q[0] * f.axial[1], q[1] * v2, q[2] * v3, 0.0, -q[2] * r2, q[1] * r3);
        self.turned(&motion)
    }

    /// Local six-vector to global axes.
    pub(crate) fn turned(&self, local: &Vector6<f64>) -> Vector6<f64> {
        let mut global = Vector6::zeros();
        for half in [0, 3] {
            let part = self.axes * local.fixed_rows::<3>(half);
            global.fixed_rows_mut::<3>(half).copy_from(&part);
        }
        global
    }

    /// What the beam carries when its deformation is `deformation` (global) under a uniform load `q` (global).
    pub(crate) fn forces(&self, deformation: &Vector6<f64>, q: &Vector3<f64>) -> BeamForces {
        let mut elastic = *deformation;
        if *q != Vector3::zeros() {
            elastic -= self.free_start_motion(q);
        }
        let force = self.coupling.stiffness * elastic;
        let mut start = [0.0; 6];
        for half in [0, 3] {
            let part = self.axes.tr_mul(&force.fixed_rows::<3>(half));
            start[half..half + 3].copy_from_slice(part.as_slice());
        }
        BeamForces { start, line_load: self.axes.tr_mul(q).into() }
    }
}

/// Axes 1 along the beam, 2 toward `up`, 3 = 1 × 2. A beam parallel to `up` takes the global axis that is
/// least along it instead.
fn local_axes(along: &Vector3<f64>, up: &Vector3<f64>) -> Matrix3<f64> {
    let first = along.normalize();
    let square = |direction: &Vector3<f64>| direction - first * first.dot(direction);
    let mut second = square(up);
    if second.norm() <= 1e-9 * up.norm().max(f64::MIN_POSITIVE) {
        let mut spare = Vector3::zeros();
        spare[first.iamin()] = 1.0;
        second = square(&spare);
    }
    let second = second.normalize();
    Matrix3::from_columns(&[first, second, first.cross(&second)])
}

/// Stiffness at the start in global axes, the end held.
fn start_stiffness(flexibility: &Flexibility, axes: &Matrix3<f64>) -> Matrix6<f64> {
    let (a2, b2, c3) = flexibility.plane_12.start_stiffness();
    let (a3, b3, c2) = flexibility.plane_13.start_stiffness();
    let turn =
        |diagonal: [f64; 3]| axes * Matrix3::from_diagonal(&Vector3::from(diagonal)) * axes.transpose();
    let (second, third) = (axes.column(1), axes.column(2));
    // Deflection along 2 goes with rotation about 3, along 3 with rotation about −2.
    let cross = second * third.transpose() * b2 - third * second.transpose() * b3;
    let mut k = Matrix6::zeros();
    k.fixed_view_mut::<3, 3>(0, 0).copy_from(&turn([1.0 / flexibility.axial[0], a2, a3]));
    k.fixed_view_mut::<3, 3>(3, 3).copy_from(&turn([1.0 / flexibility.torsion, c2, c3]));
    k.fixed_view_mut::<3, 3>(0, 3).copy_from(&cross);
    k.fixed_view_mut::<3, 3>(3, 0).copy_from(&cross.transpose());
    k
}
