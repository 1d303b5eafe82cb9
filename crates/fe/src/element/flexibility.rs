//! Flexibility of a straight member whose section may vary along it.
//!
//! The two-node stiffness follows from the member's flexibility with one end held (Przemieniecki, Theory of
//! Matrix Structural Analysis, 1968, ch. 5 for the uniform member with shear): with the far end held and a
//! force V and a moment M at the start,
//! `v = V·(∫s²/EI + ∫1/κGA) − M·∫s/EI`, `θ = M·∫1/EI − V·∫s/EI`, s measured from the start. The integrals
//! are closed for a uniform member and by Gauss–Legendre quadrature for a varying one, so nodal values are
//! exact for any variation that the quadrature integrates.

use crate::element::beam_forces::BeamForces;

/// Products of modulus and section constant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rigidity {
    /// EA, N.
    pub axial: f64,
    /// GJ, N m².
    pub torsion: f64,
    /// EI for bending about axis 2 (in the plane 1-3), N m².
    pub bending_2: f64,
    /// EI for bending about axis 3 (in the plane 1-2), N m².
    pub bending_3: f64,
    /// κGA for shear along axis 2, N.
    pub shear_2: f64,
    /// κGA for shear along axis 3, N.
    pub shear_3: f64,
}

/// Integrals along the member for one plane of bending.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlaneFlexibility {
    /// ∫ sⁿ/EI ds for n = 0, 1, 2, 3.
    pub bending: [f64; 4],
    /// ∫ sⁿ/κGA ds for n = 0, 1.
    pub shear: [f64; 2],
}

/// Flexibility integrals of a member, s from its start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flexibility {
    /// Length, m.
    pub length: f64,
    /// ∫ sⁿ/EA ds for n = 0, 1.
    pub axial: [f64; 2],
    /// ∫ 1/GJ ds.
    pub torsion: f64,
    /// Plane 1-2: deflection along 2, rotation about 3.
    pub plane_12: PlaneFlexibility,
    /// Plane 1-3: deflection along 3, rotation about −2.
    pub plane_13: PlaneFlexibility,
}

/// Six-point Gauss–Legendre rule on [0, 1]: place and weight. Abramowitz & Stegun, Table 25.4, n = 6.
pub const GAUSS: [(f64, f64); 6] = [
    (0.033_765_242_898_423_99, 0.085_662_246_189_585_17),
    (0.169_395_306_766_867_74, 0.180_380_786_524_069_3),
    (0.380_690_406_958_401_56, 0.233_956_967_286_345_52),
    (0.619_309_593_041_598_5, 0.233_956_967_286_345_52),
    (0.830_604_693_233_132_3, 0.180_380_786_524_069_3),
    (0.966_234_757_101_576, 0.085_662_246_189_585_17),
];

impl Flexibility {
    /// A member of one section: `length` in m.
    pub fn uniform(length: f64, rigidity: &Rigidity) -> Self {
        let l = length;
        let plane = |ei: f64, kga: f64| PlaneFlexibility {
            bending: [l / ei, l * l / (2.0 * ei), l * l * l / (3.0 * ei), l * l * l * l / (4.0 * ei)],
            shear: [l / kga, l * l / (2.0 * kga)],
        };
        Flexibility {
            length,
            axial: [l / rigidity.axial, l * l / (2.0 * rigidity.axial)],
            torsion: l / rigidity.torsion,
            plane_12: plane(rigidity.bending_3, rigidity.shear_2),
            plane_13: plane(rigidity.bending_2, rigidity.shear_3),
        }
    }

    /// A member whose section varies: `rigidity` gives the section's rigidity at the share 0..1 of the
    /// length from the start; `parts` equal parts are each integrated by a six-point rule.
    pub fn varying(length: f64, parts: usize, mut rigidity: impl FnMut(f64) -> Rigidity) -> Self {
        let mut sum = Flexibility {
            length,
            axial: [0.0; 2],
            torsion: 0.0,
            plane_12: PlaneFlexibility::default(),
            plane_13: PlaneFlexibility::default(),
        };
        let parts = parts.max(1);
        for part in 0..parts {
            for (place, weight) in GAUSS {
                let share = (part as f64 + place) / parts as f64;
                sum.add(share * length, weight * length / parts as f64, &rigidity(share));
            }
        }
        sum
    }

    fn add(&mut self, s: f64, ds: f64, rigidity: &Rigidity) {
        let bend = |plane: &mut PlaneFlexibility, ei: f64, kga: f64| {
            let (b, g) = (ds / ei, ds / kga);
            for (sum, term) in plane.bending.iter_mut().zip([b, b * s, b * s * s, b * s * s * s]) {
                *sum += term;
            }
            plane.shear[0] += g;
            plane.shear[1] += g * s;
        };
        bend(&mut self.plane_12, rigidity.bending_3, rigidity.shear_2);
        bend(&mut self.plane_13, rigidity.bending_2, rigidity.shear_3);
        self.axial[0] += ds / rigidity.axial;
        self.axial[1] += ds * s / rigidity.axial;
        self.torsion += ds / rigidity.torsion;
    }

    /// Work of one force field on the deformation of another, apart for bending (with twist and stretch) and
    /// shear: `∫ m·M/EI + ∫ t·T/GJ + ∫ n·N/EA` and `∫ v·V/κGA`; `unit` carries no line load.
    pub fn work(&self, unit: &BeamForces, real: &BeamForces) -> (f64, f64) {
        let (bend_12, shear_12) = plane_work(
            &self.plane_12,
            (unit.start[1], unit.start[5]),
            (real.start[1], real.start[5], real.line_load[1]),
        );
        let (bend_13, shear_13) = plane_work(
            &self.plane_13,
            (unit.start[2], -unit.start[4]),
            (real.start[2], -real.start[4], real.line_load[2]),
        );
        let stretch = unit.start[0] * (real.start[0] * self.axial[0] + real.line_load[0] * self.axial[1]);
        let twist = unit.start[3] * real.start[3] * self.torsion;
        (bend_12 + bend_13 + stretch + twist, shear_12 + shear_13)
    }

    /// The same member with its flexibility (not its length) multiplied by `factor`: less than one for a
    /// member that is stiffened over its length.
    pub fn scaled(mut self, factor: f64) -> Self {
        for plane in [&mut self.plane_12, &mut self.plane_13] {
            plane.bending.iter_mut().chain(plane.shear.iter_mut()).for_each(|x| *x *= factor);
        }
        self.axial.iter_mut().for_each(|x| *x *= factor);
        self.torsion *= factor;
        self
    }
}

/// Bending and shear work in one plane: unit state (v, m) on the real state (V, M, q), from
/// `m(s) = −m + s·v`, `M(s) = −M + s·V + q·s²/2`, `v(s) = −v`, `V(s) = −V − q·s`.
fn plane_work(plane: &PlaneFlexibility, unit: (f64, f64), real: (f64, f64, f64)) -> (f64, f64) {
    let [b0, b1, b2, b3] = plane.bending;
    let ((v, m), (big_v, big_m, q)) = (unit, real);
    let bending =
        m * big_m * b0 - (m * big_v + v * big_m) * b1 + v * big_v * b2 + 0.5 * q * (v * b3 - m * b2);
    (bending, v * (big_v * plane.shear[0] + q * plane.shear[1]))
}

impl PlaneFlexibility {
    /// Stiffness at the start with the end held: (force per deflection, force per rotation, moment per
    /// rotation), the inverse of the flexibility in the module's formula.
    pub(crate) fn start_stiffness(&self) -> (f64, f64, f64) {
        let [b0, b1, b2, _] = self.bending;
        let deflection = b2 + self.shear[0];
        let determinant = deflection * b0 - b1 * b1;
        (b0 / determinant, b1 / determinant, deflection / determinant)
    }

    /// Deflection and rotation of a free start under a uniform load of 1 along the deflection, end held.
    pub(crate) fn uniform_load_motion(&self) -> (f64, f64) {
        (0.5 * self.bending[3] + self.shear[1], -0.5 * self.bending[2])
    }
}
