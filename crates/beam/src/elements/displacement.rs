//! Elements with assumed deflections.

use crate::elements::element::{Field, Shapes};
use crate::elements::member::Member;

/// An element with assumed deflections.
#[derive(Debug, Clone, Copy)]
pub enum Displacement {
    /// Cubic deflection and quadratic slope that leave the shear constant: with Φ = 12 EI/(κGA h²) the exact shapes of
    /// the uniform member, with Φ = 0 Hermite's cubics.
    ///
    /// Source: J. N. Reddy, "On locking-free shear deformable beam finite elements", *Computer Methods in Applied
    /// Mechanics and Engineering* 149 (1997) 113-132 (from memory; worked out again from the equations of the crate).
    Cubic {
        /// Φ of the middle section.
        shear: f64,
    },
    /// Linear deflection and slope; the shear is that of the middle, so that it does not lock.
    ///
    /// Source: T. J. R. Hughes, R. L. Taylor & W. Kanoknukulchai, "A simple and efficient finite element for plate
    /// bending", *International Journal for Numerical Methods in Engineering* 11 (1977) 1529-1543 (from memory).
    Linear,
}

impl Displacement {
    /// The cubic element of a member.
    pub fn cubic(member: &Member) -> Self {
        let (h, middle) = (member.length, 0.5 * member.length);
        let shear = 12.0 * member.bending_stiffness(middle) * member.shear_flexibility(middle) / (h * h);
        Self::Cubic { shear }
    }

    /// Forces up and moments on the two ends for unit end displacements: ∫ EI θ'ᵢ θ'ⱼ + κGA γᵢ γⱼ, γ = w' − θ.
    pub fn stiffness(&self, member: &Member) -> [[f64; 4]; 4] {
        let mut stiffness = [[0.0; 4]; 4];
        for (row, line) in stiffness.iter_mut().enumerate() {
            *line = member.integral(member.length, |s| {
                let shapes = self.shapes(member, s);
                let bending = member.bending_stiffness(s) * shapes[row].curvature;
                let shear = match self {
                    Self::Cubic { .. } => shear_stiffness(member, s) * shapes[row].strain(),
                    Self::Linear => 0.0,
                };
                std::array::from_fn(|i| bending * shapes[i].curvature + shear * shapes[i].strain())
            });
        }
        if matches!(self, Self::Linear) {
            let middle = self.shapes(member, 0.5 * member.length);
            let shear = member.length * shear_stiffness(member, 0.5 * member.length);
            for (line, own) in stiffness.iter_mut().zip(&middle) {
                for (entry, other) in line.iter_mut().zip(&middle) {
                    *entry += shear * own.strain() * other.strain();
                }
            }
        }
        stiffness
    }

    /// Shapes of unit end displacements at s.
    pub fn shapes(&self, member: &Member, s: f64) -> Shapes {
        let (h, x) = (member.length, s / member.length);
        match *self {
            Self::Cubic { shear } => cubic_shapes(h, x, shear),
            Self::Linear => {
                let field = |deflection, slope, rise, curvature| Field { deflection, slope, rise, curvature };
                [
                    field(1.0 - x, 0.0, -1.0 / h, 0.0),
                    field(0.0, 1.0 - x, 0.0, -1.0 / h),
                    field(x, 0.0, 1.0 / h, 0.0),
                    field(0.0, x, 0.0, 1.0 / h),
                ]
            }
        }
    }
}

/// κGA, zero without shear, whose strain then is zero as well.
fn shear_stiffness(member: &Member, s: f64) -> f64 {
    let flexibility = member.shear_flexibility(s);
    if flexibility > 0.0 { 1.0 / flexibility } else { 0.0 }
}

/// Shapes on a member of length h at the share x of it.
fn cubic_shapes(h: f64, x: f64, phi: f64) -> Shapes {
    let scale = 1.0 / (1.0 + phi);
    let translation = Field {
        deflection: scale * ((2.0 * x - 3.0) * x * x - phi * x),
        slope: scale * 6.0 * x * (x - 1.0) / h,
        rise: scale * (6.0 * x * (x - 1.0) - phi) / h,
        curvature: scale * 6.0 * (2.0 * x - 1.0) / (h * h),
    };
    let start = Field { deflection: 1.0 + translation.deflection, ..translation };
    let turn_start = Field {
        deflection: scale * h * x * ((x - 2.0 - 0.5 * phi) * x + 1.0 + 0.5 * phi),
        slope: scale * ((3.0 * x - 4.0 - phi) * x + 1.0 + phi),
        rise: scale * ((3.0 * x - 4.0 - phi) * x + 1.0 + 0.5 * phi),
        curvature: scale * (6.0 * x - 4.0 - phi) / h,
    };
    let turn_end = Field {
        deflection: scale * h * x * ((x - 1.0 + 0.5 * phi) * x - 0.5 * phi),
        slope: scale * (3.0 * x - 2.0 + phi) * x,
        rise: scale * ((3.0 * x - 2.0 + phi) * x - 0.5 * phi),
        curvature: scale * (6.0 * x - 2.0 + phi) / h,
    };
    [start, turn_start, translation.times(-1.0), turn_end]
}
