//! Displacements, velocities and accelerations at one time.

/// Motion of all freedoms at one time.
#[derive(Debug, Clone, PartialEq)]
pub struct Motion {
    /// Displacements, m and rad.
    pub u: Vec<f64>,
    /// Velocities, m/s and rad/s.
    pub v: Vec<f64>,
    /// Accelerations, m/s² and rad/s².
    pub a: Vec<f64>,
}

impl Motion {
    /// No displacement, no velocity, no acceleration.
    pub fn rest(order: usize) -> Self {
        Motion { u: vec![0.0; order], v: vec![0.0; order], a: vec![0.0; order] }
    }

    /// Displacements after a time (s) in which the accelerations stay.
    pub(super) fn extrapolated(&self, time: f64, displacements: &mut [f64]) {
        let now = self.u.iter().zip(self.v.iter().zip(&self.a));
        let after = |(u, (v, a)): (&f64, (&f64, &f64))| u + time * (v + 0.5 * time * a);
        displacements.iter_mut().zip(now).for_each(|(x, now)| *x = after(now));
    }
}
