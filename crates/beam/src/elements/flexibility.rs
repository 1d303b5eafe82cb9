//! The element whose stiffness follows from flexibility integrals.
//!
//! With the moment M₀ and the shear V₀ at its start, M(s) = M₀ + V₀ s + m(s), V(s) = V₀ + v(s), where v and m come from
//! the load on the part before s, so that
//!
//! ```text
//! θ(s) = θ₀ + M₀ ∫1/EI + V₀ ∫t/EI + ∫(m/EI + κ₀)
//! w(s) = w₀ + θ₀ s + M₀ ∫(s−t)/EI + V₀ (∫(s−t)t/EI − ∫1/κGA) + ∫(s−t)(m/EI + κ₀) − ∫v/κGA
//! ```
//!
//! M₀ and V₀ follow from the four end displacements. Nothing is approximated but the quadrature along a taper, and a
//! foundation, whose pressure acts on the shapes of the element without one.
//! Source: J. S. Przemieniecki, *Theory of Matrix Structural Analysis*, McGraw-Hill 1968, ch. 5 (from memory), here
//! with a section that varies.

use crate::elements::element::{Field, Shapes};
use crate::elements::member::Member;

/// The element of a member.
#[derive(Debug, Clone, Copy)]
pub struct Flexibility {
    /// M₀ and V₀ of each unit end displacement.
    starts: [[f64; 2]; 4],
    /// M₀ and V₀ of the load with both ends held.
    held: [f64; 2],
}

/// The integrals of the [module](self) over 0 to s.
struct Integrals {
    /// Of M₀ and V₀ in θ.
    turn: [f64; 2],
    /// Of M₀ and V₀ in w.
    rise: [f64; 2],
    /// Of the load in θ and w.
    load: [f64; 2],
}

impl Flexibility {
    /// The element of a member.
    pub fn of(member: &Member) -> Self {
        let h = member.length;
        let whole = Integrals::over(member, h);
        let unit = [[0.0, -1.0], [-1.0, -h], [0.0, 1.0], [1.0, 0.0]];
        Self {
            starts: unit.map(|relative| whole.start_forces(relative)),
            held: whole.start_forces([-whole.load[0], -whole.load[1]]),
        }
    }

    /// Forces up and moments on the two ends for unit end displacements.
    pub fn stiffness(&self, member: &Member) -> [[f64; 4]; 4] {
        let force = |row: usize, [m, v]: [f64; 2]| match row {
            0 => v,
            1 => -m,
            2 => -v,
            _ => m + v * member.length,
        };
        std::array::from_fn(|row| std::array::from_fn(|column| force(row, self.starts[column])))
    }

    /// Shapes of unit end displacements at s.
    pub fn shapes(&self, member: &Member, s: f64) -> Shapes {
        let upto = Integrals::over(member, s);
        let (bending, shear) = (1.0 / member.bending_stiffness(s), member.shear_flexibility(s));
        let first = [[1.0, 0.0], [s, 1.0], [0.0; 2], [0.0; 2]];
        let field = |i: usize| {
            let ([m, v], [w, turn]) = (self.starts[i], first[i]);
            let slope = turn + m * upto.turn[0] + v * upto.turn[1];
            Field {
                deflection: w + m * upto.rise[0] + v * upto.rise[1],
                slope,
                rise: slope - v * shear,
                curvature: (m + v * s) * bending,
            }
        };
        std::array::from_fn(field)
    }

    /// What the load adds at s with both ends held.
    pub fn particular(&self, member: &Member, s: f64) -> Field {
        let upto = Integrals::over(member, s);
        let [m, v] = self.held;
        let [load_shear, load_moment] = member.load_resultants(s, |t| member.load_at(t));
        let slope = m * upto.turn[0] + v * upto.turn[1] + upto.load[0];
        Field {
            deflection: m * upto.rise[0] + v * upto.rise[1] + upto.load[1],
            slope,
            rise: slope - (v + load_shear) * member.shear_flexibility(s),
            curvature: (m + v * s + load_moment) / member.bending_stiffness(s) + member.curvature,
        }
    }
}

impl Integrals {
    fn over(member: &Member, s: f64) -> Self {
        let [a, b, c, d, shear, turn, rise] = member.integral(s, |t| {
            let (bending, shear) = (1.0 / member.bending_stiffness(t), member.shear_flexibility(t));
            let [load_shear, load_moment] = member.load_resultants(t, |x| member.load_at(x));
            let free = load_moment * bending + member.curvature;
            let arm = s - t;
            [
                bending,
                t * bending,
                arm * bending,
                arm * t * bending,
                shear,
                free,
                arm * free - load_shear * shear,
            ]
        });
        Self { turn: [a, b], rise: [c, d - shear], load: [turn, rise] }
    }

    /// M₀ and V₀ for a turn and a rise of the end relative to the start.
    fn start_forces(&self, [turn, rise]: [f64; 2]) -> [f64; 2] {
        let ([a, b], [c, d]) = (self.turn, self.rise);
        let determinant = a * d - b * c;
        [(d * turn - b * rise) / determinant, (a * rise - c * turn) / determinant]
    }
}
