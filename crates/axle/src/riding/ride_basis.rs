//! In which motions a ride is solved, and how it advances in time.

use axlebow_fe::{DynamicSystem, FeError, ReducedBasis, Scheme};

/// Step formulas of a ride unless asked otherwise: a little damping of what the step cannot resolve, because
/// bearings and spindles ring in the kilohertz.
pub const USUAL_SCHEME: Scheme = Scheme::GeneralizedAlpha { spectral_radius: 0.8 };

/// Frequency up to which a reduced basis has all natural modes, Hz.
///
/// A tire takes the mean road over its contact, which wipes out v/L: 150 Hz for 0.2 m at 30 m/s, a contact and
/// a speed of highway trucks (common practice, no source). What is faster follows the tires as if at rest, and
/// that part each basis has exactly.
pub(crate) const FASTEST_MODE: f64 = 150.0;

/// The motions that a ride is solved in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RideBasis {
    /// All degrees of freedom of the finite elements.
    #[default]
    Full,
    /// The natural modes up to 150 Hz, and what each load and each law of force does at rest.
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

/// The shapes that a system rides in.
pub(crate) fn shapes(system: &DynamicSystem) -> Result<ReducedBasis, FeError> {
    ReducedBasis::up_to(FASTEST_MODE, system, 0.0)
}
