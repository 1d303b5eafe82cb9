//! Differences of readings, to both sides of a value or to the one that is open.

use axlebow_axle::CaseReadings;

/// Derivative at `at` by differences of `step`.
///
/// Central of fourth order, `(8 f(x+h) − 8 f(x−h) − f(x+2h) + f(x−2h))/12h`; where f fails on one side, of second order on
/// the other, `±(4 f(x±h) − f(x±2h) − 3 f(x))/2h`.
///
/// # Errors
/// That of the upper side where f fails on both.
pub(crate) fn slope<E>(
    (at, step): (f64, f64),
    readings: impl Fn(f64) -> Result<CaseReadings, E>,
) -> Result<CaseReadings, E> {
    // f(x) the same way as the others, so that what does not change leaves no rounding to be divided by the step.
    let one_sided = |near: CaseReadings, step: f64| {
        let (here, far) = (readings(at)?, readings(at + 2.0 * step)?);
        Ok(near.times(4.0).plus(&far, -1.0).plus(&here, -3.0).times(0.5 / step))
    };
    match (readings(at - step), readings(at + step)) {
        (Ok(less), Ok(more)) => {
            let near = more.plus(&less, -1.0);
            let far =
                readings(at + 2.0 * step).and_then(|more| Ok(more.plus(&readings(at - 2.0 * step)?, -1.0)));
            // Beyond a bound that lies between one step and two, the near ones do.
            Ok(far.map_or(near.times(0.5 / step), |far| {
                near.times(8.0).plus(&far, -1.0).times(1.0 / (12.0 * step))
            }))
        }
        (Err(_), Ok(more)) => one_sided(more, step),
        (Ok(less), Err(_)) => one_sided(less, -step),
        (Err(_), Err(why)) => Err(why),
    }
}
