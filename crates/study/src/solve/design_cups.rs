//! Waves of wear on the tires of a design.

use axlebow_axle::{
    Axle, AxleError, GrowthOptions, LoadCase, Side, Sides, WheelGrowth, threshold_damping, wheel_growth,
    worse_end,
};

/// Cups that studies look at: shorter waves do not win, as the contact takes them away.
const COUNTS: [u16; 2] = [1, 12];

/// What grows on the tires of a design over the speeds that its fleet holds.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DesignCups {
    wheels: Sides<WheelGrowth>,
    /// Damping at each seat from which on no wave grows, N s/m, where it was asked for.
    pub threshold_damping: Option<f64>,
}

impl DesignCups {
    /// The waves of an axle in a load case; `with_threshold` looks for the damping that would end them, which costs some
    /// twenty times as much where the tires do not grow waves by themselves.
    pub fn of(axle: &Axle, case: &LoadCase, with_threshold: bool) -> Result<Self, AxleError> {
        let options = GrowthOptions::over(axle.running.held, case.clone(), COUNTS);
        let wheels = wheel_growth(axle, &options)?;
        let threshold = with_threshold.then(|| threshold_damping(axle, &options, &wheels)).transpose()?;
        Ok(DesignCups { wheels, threshold_damping: threshold.flatten() })
    }

    /// The wheel end whose wave grows fastest.
    pub fn worse(&self) -> &WheelGrowth {
        self.wheels.of(worse_end(&self.wheels))
    }

    /// The lesser margin of both wheel ends between the standing and the critical camber, rad.
    pub fn least_margin(&self) -> Option<f64> {
        Side::BOTH.into_iter().filter_map(|side| self.wheels.of(side).camber_margin()).reduce(f64::min)
    }
}
