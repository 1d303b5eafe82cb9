//! Cups round a tire: their count, the frequency that prints them, and the modes near it.

use std::f64::consts::TAU;

use crate::AxleError;
use crate::error::positive;
use crate::modes::ModeOutcome;

/// Share of the frequency within which a mode may have printed the cups: tires run at no one speed, and a
/// count is taken by eye (a judgement, no source).
const NEAR: f64 = 0.25;

/// Result of [`cups`].
#[derive(Debug, Clone, PartialEq)]
pub struct CupsOutcome {
    /// Cups counted.
    pub count: u16,
    /// Speed, m/s.
    pub speed: f64,
    /// Rolling radius, m.
    pub radius: f64,
    /// Distance from cup to cup along the tread, m.
    pub spacing: f64,
    /// Frequency that prints them, Hz.
    pub frequency: f64,
    /// Frequencies if one cup fewer or one more had been counted, Hz; none below one cup.
    pub misread: [Option<f64>; 2],
    /// Turns of the wheel per second, Hz.
    pub wheel_frequency: f64,
    /// Modes near the frequency, the nearest first.
    pub near: Vec<NearMode>,
}

/// A mode near the frequency of the cups.
#[derive(Debug, Clone, PartialEq)]
pub struct NearMode {
    /// Name of the mode.
    pub name: String,
    /// Its frequency, Hz.
    pub frequency: f64,
    /// Its frequency over that of the cups, less one.
    pub off_by: f64,
    /// Cups per turn that it would print at this speed.
    pub cups: f64,
}

/// The frequency that prints `count` cups round a tire of rolling radius R at speed v, `f = N·v/(2πR)`, and
/// the modes within a quarter of it.
///
/// - `speed`: m/s, above 0
/// - `radius`: m, above 0
/// - `modes`: of the axle; empty where no model is at hand
///
/// # Errors
/// [`AxleError::Value`] for a speed or radius that is not a finite value above zero.
pub fn cups(count: u16, speed: f64, radius: f64, modes: &[ModeOutcome]) -> Result<CupsOutcome, AxleError> {
    positive("speed", speed, "m/s")?;
    positive("rolling radius", radius, "m")?;
    let wheel_frequency = speed / (TAU * radius);
    let of_count = |count: f64| count * wheel_frequency;
    let frequency = of_count(f64::from(count));
    let fewer = count.checked_sub(1).filter(|fewer| *fewer > 0);
    let mut near: Vec<NearMode> = modes
        .iter()
        .map(|mode| NearMode {
            name: mode.name.clone(),
            frequency: mode.frequency,
            off_by: mode.frequency / frequency - 1.0,
            cups: mode.frequency / wheel_frequency,
        })
        .filter(|mode| mode.off_by.abs() <= NEAR)
        .collect();
    near.sort_by(|a, b| a.off_by.abs().total_cmp(&b.off_by.abs()));
    Ok(CupsOutcome {
        count,
        speed,
        radius,
        spacing: TAU * radius / f64::from(count),
        frequency,
        misread: [fewer.map(|fewer| of_count(f64::from(fewer))), Some(of_count(f64::from(count) + 1.0))],
        wheel_frequency,
        near,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// v = 29.06 m/s, f = 10.4 Hz: 2.794 m from cup to cup, and R = 0.5 m: 1.12 cups a turn (arithmetic). The
    /// whole count nearest is one cup at v/(2πR).
    #[test]
    fn spacing_and_frequency_are_one_relation() {
        let outcome = cups(1, 29.06, 0.5, &[]).unwrap();
        assert!((outcome.frequency - 29.06 / (TAU * 0.5)).abs() < 1e-12);
        assert!((10.4 / outcome.wheel_frequency - 1.12).abs() < 0.005);
        assert!((outcome.speed / 10.4 - 2.794).abs() < 0.0005);
        assert!((outcome.spacing * outcome.frequency - outcome.speed).abs() < 1e-12);
        assert_eq!(outcome.misread[0], None);
    }

    #[test]
    fn a_speed_of_zero_is_refused() {
        for speed in [0.0, -1.0, f64::NAN] {
            assert!(cups(5, speed, 0.5, &[]).is_err());
        }
    }
}
