//! Forces and moments on a section.

/// Resultants on the face with outward normal +Y.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Resultants {
    /// Axial force, N.
    pub axial: f64,
    /// Shear along X, N.
    pub shear_x: f64,
    /// Shear along Z, N.
    pub shear_z: f64,
    /// Bending moment about X, N m.
    pub moment_x: f64,
    /// Bending moment about Z, N m.
    pub moment_z: f64,
    /// Torque about Y, N m.
    pub torsion: f64,
}

impl Resultants {
    /// These resultants and others about the same point.
    pub(crate) fn plus(&self, other: &Resultants) -> Resultants {
        Resultants {
            axial: self.axial + other.axial,
            shear_x: self.shear_x + other.shear_x,
            shear_z: self.shear_z + other.shear_z,
            moment_x: self.moment_x + other.moment_x,
            moment_z: self.moment_z + other.moment_z,
            torsion: self.torsion + other.torsion,
        }
    }

    /// The same resultants, given about axes that are turned by an angle (rad) from X, counter-clockwise in (x, z),
    /// about X and Z.
    pub(crate) fn turned(&self, angle: f64) -> Resultants {
        let (sine, cosine) = angle.sin_cos();
        let turn = |x: f64, z: f64| (cosine * x - sine * z, sine * x + cosine * z);
        let (shear_x, shear_z) = turn(self.shear_x, self.shear_z);
        let (moment_x, moment_z) = turn(self.moment_x, self.moment_z);
        Resultants { shear_x, shear_z, moment_x, moment_z, ..*self }
    }

    /// The same resultants, given about a point of the section at (x, z) (m), about the origin.
    pub(crate) fn moved(&self, [x, z]: [f64; 2]) -> Resultants {
        Resultants {
            moment_x: self.moment_x - z * self.axial,
            moment_z: self.moment_z + x * self.axial,
            torsion: self.torsion + z * self.shear_x - x * self.shear_z,
            ..*self
        }
    }
}
