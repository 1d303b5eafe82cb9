//! Four-node shell: a quadrilateral piece of wall, flat, curved or warped.
//!
//! A point of the wall lies at `x(r, s) + z·d(r, s)`, both interpolated bilinearly between the corners, with d the
//! normals at the nodes and −t/2 ≤ z ≤ t/2; it moves by `u + z·θ×d` (S. Ahmad, B. M. Irons & O. C. Zienkiewicz,
//! Int. J. Numer. Methods Eng. 2 (1970) 419-451). Elements that share a node of a smooth surface share its normal,
//! so that a curved wall is curved and a rigid motion strains no element, however warped.
//!
//! What keeps it from locking, each from memory:
//! - transverse shear tied at the middles of the edges: E. N. Dvorkin & K.-J. Bathe, Eng. Comput. 1 (1984) 77-88;
//!   K.-J. Bathe & E. N. Dvorkin, Int. J. Numer. Methods Eng. 21 (1985) 367-383;
//! - the part of the membrane strain that goes with the square of the warp, assumed from the other parts: Y. Ko,
//!   P.-S. Lee & K.-J. Bathe, Comput. Struct. 182 (2017) 404-418;
//! - four enhanced membrane strains for bending in the plane of the wall: J. C. Simo & M. S. Rifai, Int. J. Numer.
//!   Methods Eng. 29 (1990) 1595-1638.
//!
//! The rotation about the normal is tied to the turning of the wall in its plane by the energy `½·α·G·(θ·n − ω)²`
//! per volume (T. J. R. Hughes & F. Brezzi, Comput. Methods Appl. Mech. Eng. 72 (1989) 105-121) with
//! α = [`DRILLING`]; a smooth wall carries nothing through it.

mod buckle;
mod enhanced;
mod layer;
mod mass;
mod pressing;
mod stiffness;
mod strain;
mod stress;

use nalgebra::{SMatrix, SVector, Vector3};

use crate::node::ids::NodeId;
pub(crate) use buckle::geometric_stiffness;
pub(crate) use layer::SurfacePoint;
pub(crate) use mass::shell_mass;
pub(crate) use stiffness::ShellStiffness;
pub use stress::{Face, WallForces};

/// α of the penalty that holds the rotation about the normal.
pub const DRILLING: f64 = 1e-3;

/// Natural coordinates (r, s) of the corners.
pub(crate) const CORNERS: [[f64; 2]; 4] = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]];

/// Two-point Gauss rule on −1..1, of weights 1: 1/√3.
pub(crate) const GAUSS: f64 = 0.577_350_269_189_625_8;

/// The four Gauss points (r, s) of a wall, each nearest to the corner of its number.
pub(crate) fn gauss_points() -> [[f64; 2]; 4] {
    CORNERS.map(|corner| corner.map(|x| x * GAUSS))
}

/// Six motions at each of four corners.
pub(crate) type ShellMatrix = SMatrix<f64, 24, 24>;

/// Six motions, or forces, at each of four corners.
pub(crate) type ShellVector = SVector<f64, 24>;

/// A wall of isotropic elastic material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// Thickness t, m.
    pub thickness: f64,
    /// Elastic modulus E, Pa.
    pub elastic_modulus: f64,
    /// Poisson's ratio ν, above −1 and below 0.5.
    pub poisson_ratio: f64,
    /// Density, kg/m³; zero for a massless wall.
    pub density: f64,
}

impl Wall {
    /// A massless wall.
    pub fn new(thickness: f64, elastic_modulus: f64, poisson_ratio: f64) -> Self {
        Wall { thickness, elastic_modulus, poisson_ratio, density: 0.0 }
    }

    /// The same wall with a density, kg/m³.
    pub fn with_density(mut self, density: f64) -> Self {
        self.density = density;
        self
    }

    /// Shear modulus G, Pa.
    pub(crate) fn shear_modulus(&self) -> f64 {
        self.elastic_modulus / (2.0 * (1.0 + self.poisson_ratio))
    }

    /// A quantity, with its value and what is accepted, that no wall can have.
    pub(crate) fn impossible_quantity(&self) -> Option<(&'static str, f64, &'static str)> {
        let above_zero = |value: f64| value.is_finite() && value > 0.0;
        let (positive, not_negative) = ("a finite value greater than zero", "a finite value of zero or more");
        if !above_zero(self.thickness) {
            return Some(("thickness", self.thickness, positive));
        }
        if !above_zero(self.elastic_modulus) {
            return Some(("elastic modulus", self.elastic_modulus, positive));
        }
        if !(self.poisson_ratio > -1.0 && self.poisson_ratio < 0.5) {
            return Some(("Poisson's ratio", self.poisson_ratio, "a value above -1 and below 0.5"));
        }
        let sound = self.density.is_finite() && self.density >= 0.0;
        (!sound).then_some(("density", self.density, not_negative))
    }
}

/// A shell in place.
#[derive(Debug, Clone)]
pub(crate) struct ShellMember {
    pub nodes: [NodeId; 4],
    pub corners: [Vector3<f64>; 4],
    /// Unit normals of the surface at the corners.
    pub normals: [Vector3<f64>; 4],
    pub wall: Wall,
}

impl ShellMember {
    /// Mass, kg.
    pub(crate) fn mass(&self) -> f64 {
        self.wall.density * self.wall.thickness * self.areas().iter().sum::<f64>()
    }

    /// Part of the area of the middle surface that goes with each corner, `∫ N_i dA`.
    pub(crate) fn areas(&self) -> [f64; 4] {
        let mut areas = [0.0; 4];
        for place in gauss_points() {
            let point = SurfacePoint::at(self, place);
            let area = point.area(0.0);
            areas.iter_mut().zip(point.shapes).for_each(|(sum, shape)| *sum += shape * area);
        }
        areas
    }

    /// Joins values at the corners, six each.
    pub(crate) fn gathered(&self, value: impl Fn(NodeId) -> nalgebra::Vector6<f64>) -> ShellVector {
        let mut all = ShellVector::zeros();
        for (corner, node) in self.nodes.into_iter().enumerate() {
            all.fixed_rows_mut::<6>(6 * corner).copy_from(&value(node));
        }
        all
    }
}
