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
}
