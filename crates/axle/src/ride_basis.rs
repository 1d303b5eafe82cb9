//! In which motions a ride is solved, and how it advances in time.

use axlebow_fe::{DynamicSystem, FeError, ReducedBasis, Scheme};

/// Step formulas of a ride unless asked otherwise: a little damping of what the step cannot resolve, because
/// bearings and spindles ring in the kilohertz.
pub const USUAL_SCHEME: Scheme = Scheme::GeneralizedAlpha { spectral_radius: 0.8 };

/// Steps in a period of the fastest natural mode of a reduced basis: fewer do not draw its motion.
const STEPS_A_PERIOD: f64 = 10.0;

/// The motions that a ride is solved in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RideBasis {
    /// Every freedom of the finite elements.
    #[default]
    Full,
    /// The natural modes that the time step can follow, and what each load and each law of force does at rest.
    Reduced,
}

/// How a ride was solved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RideMethod {
    /// The motions that it was solved in.
    pub basis: RideBasis,
    /// How many they were: freedoms of the full basis or shapes of a reduced one.
    pub unknowns: usize,
    /// Frequency up to which a reduced basis has all natural modes that the ride can move, Hz.
    pub modes_up_to: Option<f64>,
    /// Step formulas.
    pub scheme: Scheme,
    /// Length of a time step, s.
    pub step: f64,
}

/// Frequency up to which natural modes are kept for a time step (s), Hz.
pub(crate) fn modes_up_to(step: f64) -> f64 {
    1.0 / (STEPS_A_PERIOD * step)
}

/// The shapes of a ride with steps of a length (s).
pub(crate) fn shapes(system: &DynamicSystem, step: f64) -> Result<ReducedBasis, FeError> {
    ReducedBasis::up_to(modes_up_to(step), system, 0.0)
}
