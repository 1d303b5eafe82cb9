//! Stiffness of a shell.

use nalgebra::{Matrix3, Matrix4, SMatrix, Vector3};

use super::layer::SurfacePoint;
use super::strain::{PointStrains, Row, ShellStrains, put};
use super::{DRILLING, GAUSS, ShellMatrix, ShellMember, Wall, gauss_points};

/// Part of the transverse shear stiffness that counts (E. Reissner, J. Appl. Mech. 12 (1945) A69-A77, from
/// memory).
const SHEAR_CORRECTION: f64 = 5.0 / 6.0;

/// Enhanced parameters per motion of the corners, turned to minus.
pub(super) type EnhancedResponse = SMatrix<f64, 4, 24>;

/// Stiffness of a shell at its corners, global axes.
pub(crate) struct ShellStiffness {
    /// Forces per motion.
    pub(crate) matrix: ShellMatrix,
    /// The enhanced strains follow as minus this times the motion.
    pub(super) enhanced: EnhancedResponse,
}

/// Stress per strain of a wall.
pub(super) struct Elasticity {
    /// Plane stress: 11, 22, 12 on 11, 22, 2·12.
    pub(super) in_plane: Matrix3<f64>,
    /// 13 on 2·13, corrected.
    pub(super) shear: f64,
}

impl Elasticity {
    pub(super) fn of(wall: &Wall) -> Self {
        let nu = wall.poisson_ratio;
        let in_plane = Matrix3::new(1.0, nu, 0.0, nu, 1.0, 0.0, 0.0, 0.0, 0.5 * (1.0 - nu));
        let in_plane = in_plane * (wall.elastic_modulus / (1.0 - nu * nu));
        Elasticity { in_plane, shear: SHEAR_CORRECTION * wall.shear_modulus() }
    }
}

/// Sums over the points of a shell.
struct Sums {
    matrix: ShellMatrix,
    /// Force on the enhanced parameters per motion.
    coupling: EnhancedResponse,
    enhanced: Matrix4<f64>,
}

impl ShellStiffness {
    /// Two by two by two Gauss points; the enhanced strains are eliminated.
    pub(crate) fn of(shell: &ShellMember) -> Self {
        let (strains, elasticity) = (ShellStrains::of(shell), Elasticity::of(&shell.wall));
        let zero = (ShellMatrix::zeros(), EnhancedResponse::zeros(), Matrix4::zeros());
        let mut sums = Sums { matrix: zero.0, coupling: zero.1, enhanced: zero.2 };
        let half = 0.5 * shell.wall.thickness;
        for place in gauss_points() {
            let point = SurfacePoint::at(shell, place);
            for z in [-half * GAUSS, half * GAUSS] {
                sums.add_point(&strains.at(&point, z), &elasticity, half);
            }
            sums.add_drilling(&point, &strains.axes, &shell.wall);
        }
        sums.condensed()
    }
}

impl Sums {
    fn add_point(&mut self, at: &PointStrains, elasticity: &Elasticity, half: f64) {
        let weight = at.layer.area * half;
        let stress = in_plane_stress(&at.in_plane, &(elasticity.in_plane * weight));
        for k in 0..3 {
            self.add_product(&at.in_plane[k], &stress[k]);
        }
        for row in &at.shear {
            self.add_product(row, &row.map(|x| x * elasticity.shear * weight));
        }
        let on_enhanced = elasticity.in_plane * at.enhanced * weight;
        self.enhanced += at.enhanced.transpose() * on_enhanced;
        for i in 0..4 {
            for j in 0..24 {
                self.coupling[(i, j)] += (0..3).map(|k| at.enhanced[(k, i)] * stress[k][j]).sum::<f64>();
            }
        }
    }

    /// `α·G·t·(θ·n − ½·curl u·n)²`, n square to the middle surface.
    fn add_drilling(&mut self, point: &SurfacePoint, axes: &[Vector3<f64>; 3], wall: &Wall) {
        let layer = point.layer(0.0, axes);
        let mut row = [0.0; 24];
        for corner in 0..4 {
            let slope = |a: usize| (0..2).map(|i| layer.dual[a][i] * point.slopes[i][corner]).sum::<f64>();
            let turning = (layer.axes[0] * slope(1) - layer.axes[1] * slope(0)) * 0.5;
            put(&mut row, corner, &turning, &(layer.axes[2] * point.shapes[corner]));
        }
        let rate = DRILLING * wall.shear_modulus() * wall.thickness * layer.area;
        self.add_product(&row, &row.map(|x| x * rate));
    }

    /// Adds `strain·stressᵀ`.
    fn add_product(&mut self, strain: &Row, stress: &Row) {
        for (column, stress) in self.matrix.as_mut_slice().as_chunks_mut::<24>().0.iter_mut().zip(stress) {
            column.iter_mut().zip(strain).for_each(|(sum, strain)| *sum += strain * stress);
        }
    }

    fn condensed(self) -> ShellStiffness {
        let inverse = self.enhanced.try_inverse().unwrap_or_else(Matrix4::zeros);
        let enhanced = inverse * self.coupling;
        ShellStiffness { matrix: self.matrix - self.coupling.transpose() * enhanced, enhanced }
    }
}

fn in_plane_stress(strain: &[Row; 3], elasticity: &Matrix3<f64>) -> [Row; 3] {
    std::array::from_fn(|k| {
        std::array::from_fn(|i| (0..3).map(|l| elasticity[(k, l)] * strain[l][i]).sum::<f64>())
    })
}
