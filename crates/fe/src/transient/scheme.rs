//! Step formulas of the generalized-alpha family.
//!
//! J. Chung, G. M. Hulbert, A time integration algorithm for structural dynamics with improved numerical
//! dissipation: the generalized-α method, J. Appl. Mech. 60 (1993) 371-375; N. M. Newmark, A method of
//! computation for structural dynamics, J. Eng. Mech. Div. ASCE 85 (EM3) (1959) 67-94; both from memory.
//!
//! Equilibrium holds at `t + (1 − α_f)h` with the displacement `w = (1 − α_f)u₁ + α_f u₀` there, and the
//! acceleration `(1 − α_m)a₁ + α_m a₀`. With w as the unknown the stiffness multiplies nothing that is known,
//! whatever the α:
//! ```text
//! (K + c_m M + c_v C) w = F + M·p + C·q
//! p = c_m u₀ + p_v v₀ + p_a a₀        q = c_v u₀ − e_v v₀ − e_a a₀        ẇ = c_v w − q
//! ```

use super::motion::Motion;

/// Which member of the family advances the time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Scheme {
    /// Average acceleration (β = 1/4, γ = 1/2): no numerical damping, energy of a linear system kept.
    AverageAcceleration,
    /// Generalized-alpha: motions far faster than the step decay by this factor in each step.
    GeneralizedAlpha {
        /// ρ∞, 0 (gone in one step) to 1 (kept).
        spectral_radius: f64,
    },
}

impl Scheme {
    /// α_m, α_f, β, γ.
    fn constants(self) -> [f64; 4] {
        match self {
            Scheme::AverageAcceleration => [0.0, 0.0, 0.25, 0.5],
            Scheme::GeneralizedAlpha { spectral_radius: rho } => {
                let (m, f) = ((2.0 * rho - 1.0) / (rho + 1.0), rho / (rho + 1.0));
                [m, f, 0.25 * (1.0 - m + f).powi(2), 0.5 - m + f]
            }
        }
    }

    /// Formulas of a step of length h.
    pub(super) fn formulas(self, h: f64) -> StepFormulas {
        let [alpha_m, alpha_f, beta, gamma] = self.constants();
        let (m, f) = (1.0 - alpha_m, 1.0 - alpha_f);
        let late = 1.0 / (2.0 * beta) - 1.0;
        StepFormulas {
            place: f,
            mass: m / (f * beta * h * h),
            rate: gamma / (beta * h),
            p: [m / (beta * h), m * late - alpha_m],
            q: [1.0 - f * gamma / beta, f * h * (1.0 - gamma / (2.0 * beta))],
            a: [1.0 / (f * beta * h * h), 1.0 / (beta * h), late],
            v: [h * (1.0 - gamma), h * gamma],
        }
    }
}

/// Coefficients of one length of step.
#[derive(Debug, Clone, Copy)]
pub(super) struct StepFormulas {
    /// 1 − α_f, where in the step equilibrium holds.
    pub place: f64,
    /// c_m.
    pub mass: f64,
    /// c_v.
    pub rate: f64,
    /// p_v, p_a.
    p: [f64; 2],
    /// e_v, e_a.
    q: [f64; 2],
    /// a₁ per w − u₀, −v₀, −a₀.
    a: [f64; 3],
    /// v₁ − v₀ per a₀, a₁.
    v: [f64; 2],
}

impl StepFormulas {
    /// p and q.
    pub fn known_parts(&self, now: &Motion, p: &mut [f64], q: &mut [f64]) {
        let n = p.len();
        let (q, u, v, a) = (&mut q[..n], &now.u[..n], &now.v[..n], &now.a[..n]);
        for i in 0..n {
            p[i] = self.mass * u[i] + self.p[0] * v[i] + self.p[1] * a[i];
            q[i] = self.rate * u[i] - self.q[0] * v[i] - self.q[1] * a[i];
        }
    }

    /// u₁, v₁, a₁ from w.
    pub fn advance(&self, now: &Motion, w: &[f64], next: &mut Motion) {
        let n = w.len();
        let (u0, v0, a0) = (&now.u[..n], &now.v[..n], &now.a[..n]);
        let (u, v, a) = (&mut next.u[..n], &mut next.v[..n], &mut next.a[..n]);
        let share = 1.0 / self.place;
        for i in 0..n {
            let change = w[i] - u0[i];
            u[i] = u0[i] + share * change;
            a[i] = self.a[0] * change - self.a[1] * v0[i] - self.a[2] * a0[i];
            v[i] = v0[i] + self.v[0] * a0[i] + self.v[1] * a[i];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_numerical_damping_at_a_spectral_radius_of_one() {
        let [m, f, beta, gamma] = Scheme::GeneralizedAlpha { spectral_radius: 1.0 }.constants();
        assert_eq!([m, f, beta, gamma], [0.5, 0.5, 0.25, 0.5]);
    }

    #[test]
    fn the_motion_at_the_place_of_equilibrium_is_what_the_unknown_says() {
        let formulas = Scheme::GeneralizedAlpha { spectral_radius: 0.7 }.formulas(0.02);
        let now = Motion { u: vec![0.3], v: vec![-1.2], a: vec![4.0] };
        let (w, mut p, mut q, mut next) = ([0.31], [0.0], [0.0], Motion::rest(1));
        formulas.known_parts(&now, &mut p, &mut q);
        formulas.advance(&now, &w, &mut next);
        let between = |now: f64, next: f64| formulas.place * next + (1.0 - formulas.place) * now;
        assert!((between(now.u[0], next.u[0]) - w[0]).abs() < 1e-15);
        assert!((between(now.v[0], next.v[0]) - (formulas.rate * w[0] - q[0])).abs() < 1e-12);
        let m = 1.0 - (2.0 * 0.7 - 1.0) / 1.7;
        assert!((m * next.a[0] + (1.0 - m) * now.a[0] - (formulas.mass * w[0] - p[0])).abs() < 1e-9);
    }
}
