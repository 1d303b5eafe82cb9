//! One wheel mass on one contact: the closed form of cups that grow by motion alone.

use nalgebra::Complex;

/// A mass m on a contact stiffness k_t with a support k_s and a damper c, whose tread wears in proportion to its load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneMass {
    /// m, kg.
    pub mass: f64,
    /// k_t, N/m.
    pub contact_stiffness: f64,
    /// k_s, N/m.
    pub support_stiffness: f64,
    /// c, N s/m.
    pub damping: f64,
}

impl OneMass {
    /// Load over the radius wave and the contact stiffness, `(k_s + iωc − mω²)/(k_s + k_t + iωc − mω²)`, at ω (rad/s). The
    /// wave grows where its real part is below zero.
    pub fn load_ratio(&self, omega: f64) -> Complex<f64> {
        let held = Complex::new(self.support_stiffness - self.mass * omega * omega, self.damping * omega);
        held / (held + self.contact_stiffness)
    }

    /// Angular frequencies (rad/s) between which waves grow: `(k_s − mω²)(k_s + k_t − mω²) + c²ω² < 0`, our derivation;
    /// none from [`OneMass::threshold_damping`] on.
    pub fn growing_band(&self) -> Option<[f64; 2]> {
        let (low, high) = (self.support_stiffness, self.support_stiffness + self.contact_stiffness);
        // u² − (k_s + k_s + k_t − c²/m) u + k_s (k_s + k_t) < 0 with u = mω².
        let half = 0.5 * (low + high - self.damping * self.damping / self.mass);
        let square = half * half - low * high;
        let band = [half - square.sqrt(), half + square.sqrt()];
        (half > 0.0 && square > 0.0).then(|| band.map(|u| (u / self.mass).sqrt()))
    }

    /// Damping from which on no wave grows, `√m (√(k_s + k_t) − √k_s)`, N s/m.
    pub fn threshold_damping(&self) -> f64 {
        let (low, high) = (self.support_stiffness, self.support_stiffness + self.contact_stiffness);
        self.mass.sqrt() * (high.sqrt() - low.sqrt())
    }
}
