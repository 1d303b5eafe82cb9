//! How fast the cups of a speed grow.

use crate::tires::growth::wheel_growth;
use crate::{Axle, AxleError, GrowthOptions, HeldSpeed, LoadCase, Side};

/// Growth of the waves of 1 to `most` cups at one speed (m/s), 1/m of mean tread worn: of both wheel ends the faster one.
///
/// # Errors
/// As [`growth`](crate::growth()).
pub fn cup_growth(axle: &Axle, case: &LoadCase, (speed, most): (f64, u16)) -> Result<Vec<f64>, AxleError> {
    let one_speed = HeldSpeed { mean: speed, deviation: 0.0 };
    let wheels = wheel_growth(axle, &GrowthOptions::over(one_speed, case.clone(), [1, most]))?;
    let rate = |side: Side, place: usize| wheels.of(side).held[place].wave.rate;
    Ok((0..usize::from(most)).map(|place| rate(Side::Left, place).max(rate(Side::Right, place))).collect())
}
