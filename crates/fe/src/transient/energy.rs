//! Energy balance of a run.

use super::motion::Motion;
use crate::linalg::Rows;

/// Where the energy is, and how well it balances.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct EnergyBalance {
    /// Kinetic energy, J.
    pub kinetic: f64,
    /// Strain energy of the linear structure, J.
    pub strain: f64,
    /// Energy stored in the local laws, J.
    pub potential: f64,
    /// Energy turned into heat since the start, J.
    pub dissipated: f64,
    /// Work of loads and moving bases since the start, J.
    pub work: f64,
    /// Greatest lack of balance so far, `|kinetic + strain + potential + dissipated − work − start|`, J.
    pub greatest_error: f64,
    /// Greatest sum of stored and dissipated energy so far, J.
    pub greatest_energy: f64,
    /// Energy stored at the start, J.
    pub start: f64,
}

impl EnergyBalance {
    /// Greatest lack of balance as a share of the greatest energy; zero when there was none.
    pub fn drift(&self) -> f64 {
        if self.greatest_energy > 0.0 { self.greatest_error / self.greatest_energy } else { 0.0 }
    }

    /// Takes stock at a motion; the law energy is given.
    pub(super) fn take_stock(
        &mut self,
        (mass, stiffness): (&Rows, &Rows),
        motion: &Motion,
        potential: f64,
        room: &mut [f64],
    ) {
        let mut half = |matrix: &Rows, x: &[f64]| {
            matrix.multiply(x, room);
            0.5 * x.iter().zip(room.iter()).map(|(x, y)| x * y).sum::<f64>()
        };
        self.kinetic = half(mass, &motion.v);
        self.strain = half(stiffness, &motion.u);
        self.potential = potential;
        let stored = self.kinetic + self.strain + self.potential;
        self.greatest_energy = self.greatest_energy.max(stored + self.dissipated);
        let error = stored + self.dissipated - self.work - self.start;
        self.greatest_error = self.greatest_error.max(error.abs());
    }
}
