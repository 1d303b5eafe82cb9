//! The load at which a check reaches its limit.

/// Most steps; bisection alone would need half as many.
const MOST_STEPS: usize = 100;
/// What stands for the logarithm of a utilization that cannot be worked out, under a load that nothing can be solved under.
const BEYOND: f64 = f64::INFINITY;
/// A utilization that is farther below 1 has not reached it.
const REACHED: f64 = 1e-4;
/// Loads beyond so many times the first one are not looked at.
const FARTHEST: f64 = 20.0;

/// The load at which a check reaches its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum LimitLoad {
    /// N.
    At(f64),
    /// It is past its limit at the least load that there is.
    Always,
    /// It is within its limit at twenty times the first load, or up to a load that nothing can be solved under.
    Never,
}

/// The load at which a utilization that grows with the load is 1, by bracketing and regula falsi in logarithms.
///
/// - `used`: utilization at a load (N); it may fail at loads above the first
/// - `first`: a load to begin with, N; `least`: the least one, N
/// - `near`: how near the load is found, as a share of it
///
/// # Errors
/// That of `used` at the first load.
pub(super) fn limit_load<E>(
    mut used: impl FnMut(f64) -> Result<f64, E>,
    [first, least]: [f64; 2],
    near: f64,
) -> Result<LimitLoad, E> {
    let mut gap = |load: f64| match used(load) {
        Ok(used) => Ok(used.max(1e-300).ln()),
        Err(_) if load > first => Ok(BEYOND),
        Err(error) => Err(error),
    };
    let (mut low, mut high) = (None, None);
    let mut load = first.max(least);
    while low.is_none() || high.is_none() {
        let here = gap(load)?;
        if here < 0.0 {
            low = Some((load, here));
            if load > FARTHEST * first {
                return Ok(LimitLoad::Never);
            }
        } else {
            high = Some((load, here));
            if load <= least {
                return Ok(LimitLoad::Always);
            }
        }
        // Most checks follow the load; a little beyond where they would bind the other end of the bracket is found.
        let step = (-here).clamp(-1.0, 1.0);
        load = (load * (step + 0.05_f64.copysign(step)).exp()).max(least);
    }
    let (Some(mut low), Some(mut high)) = (low, high) else { return Ok(LimitLoad::Never) };
    for number in 0..MOST_STEPS {
        if high.0 / low.0 - 1.0 <= near {
            break;
        }
        let share = if number % 3 == 2 || high.1 == BEYOND { 0.5 } else { -low.1 / (high.1 - low.1) };
        // A step that lands on an end would never close the other one in.
        let share = share.clamp(0.1 * near.sqrt(), 1.0 - 0.1 * near.sqrt());
        let load = low.0 * (high.0 / low.0).powf(share);
        let here = gap(load)?;
        if here.abs() < near {
            return Ok(LimitLoad::At(load));
        }
        if here < 0.0 { low = (load, here) } else { high = (load, here) }
    }
    // A check that has not reached its limit where nothing can be solved any more has none; one that jumps past it has.
    Ok(if high.1 == BEYOND && low.1 < -REACHED { LimitLoad::Never } else { LimitLoad::At(low.0) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(used: impl Fn(f64) -> f64) -> LimitLoad {
        limit_load(|load| Ok::<_, ()>(used(load)), [80e3, 10e3], 1e-8).unwrap()
    }

    #[test]
    fn loads_of_lines_powers_kinks_and_jumps_are_found() {
        for (used, expected) in [
            (&(|load: f64| load / 137e3) as &dyn Fn(f64) -> f64, 137e3),
            (&|load: f64| (load / 31e3).powf(10.0 / 3.0), 31e3),
            (&|load: f64| (0.2 + 0.8 * load / 95e3).max((load / 110e3).powi(3)), 95e3),
            (&|load: f64| 0.98 + 1e-6 * load, 20e3),
            (&|load: f64| if load < 61e3 { 0.4 } else { 1.7 }, 61e3),
        ] {
            let LimitLoad::At(load) = found(used) else { panic!("no load") };
            assert!((load / expected - 1.0).abs() < 1e-6, "{load} {expected}");
        }
    }

    #[test]
    fn a_check_that_no_load_moves_has_no_load() {
        assert_eq!(found(|_| 1.2), LimitLoad::Always);
        assert_eq!(found(|_| 0.7), LimitLoad::Never);
        assert_eq!(found(|_| f64::INFINITY), LimitLoad::Always);
        assert_eq!(limit_load(|_| Err(7), [80e3, 10e3], 1e-8), Err(7));
    }

    #[test]
    fn a_load_that_nothing_stands_under_is_no_limit_of_a_check() {
        let tips = |at: f64| move |load: f64| if load > 120e3 { Err(()) } else { Ok(load / at) };
        let Ok(LimitLoad::At(load)) = limit_load(tips(110e3), [80e3, 10e3], 1e-8) else { panic!("no load") };
        assert!((load / 110e3 - 1.0).abs() < 1e-6);
        assert_eq!(limit_load(tips(150e3), [80e3, 10e3], 1e-8), Ok(LimitLoad::Never));
    }
}
