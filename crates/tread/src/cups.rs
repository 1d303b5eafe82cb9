//! Cups round a tire: their count, the frequency that prints them, and what may explain it.

use std::f64::consts::TAU;

use crate::TreadError;
use crate::error::positive;
use crate::suspect::{Explanation, Suspect, explanations};

/// Result of [`cups`].
#[derive(Debug, Clone, PartialEq)]
pub struct Cups {
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
    /// What may have printed them, the likeliest first.
    pub explanations: Vec<Explanation>,
}

/// Turns a second of a tire of rolling radius R at speed v, `v/(2πR)`, Hz.
///
/// - `speed`: m/s
/// - `radius`: m
pub fn wheel_frequency(speed: f64, radius: f64) -> f64 {
    speed / (TAU * radius)
}

/// The frequency that prints `count` cups round a tire of rolling radius R at speed v, `f = N v/(2πR)`, held against
/// what has a frequency near it.
///
/// - `speed`: m/s, above 0
/// - `radius`: m, above 0
/// - `suspects`: what may have printed them, such as modes of the axle and [`Suspect::wheel_turn`]
///
/// # Errors
/// [`TreadError::Value`] for a count of zero, and a speed or radius that is not a finite value above zero.
pub fn cups(count: u16, speed: f64, radius: f64, suspects: Vec<Suspect>) -> Result<Cups, TreadError> {
    positive("number of cups", f64::from(count), "")?;
    positive("speed", speed, "m/s")?;
    positive("rolling radius", radius, "m")?;
    let wheel_frequency = wheel_frequency(speed, radius);
    let of_count = |count: f64| count * wheel_frequency;
    let frequency = of_count(f64::from(count));
    let fewer = count.checked_sub(1).filter(|fewer| *fewer > 0);
    Ok(Cups {
        count,
        speed,
        radius,
        spacing: TAU * radius / f64::from(count),
        frequency,
        misread: [fewer.map(|fewer| of_count(f64::from(fewer))), Some(of_count(f64::from(count) + 1.0))],
        wheel_frequency,
        explanations: explanations(frequency, wheel_frequency, suspects),
    })
}

impl Cups {
    /// The same with the growth (1/m of mean tread worn) of the wave that each source would print, by its whole count: what
    /// prints waves that the tires level comes after all others.
    pub fn with_growth(mut self, growth: impl Fn(u16) -> Option<f64>) -> Cups {
        self.explanations.iter_mut().for_each(|own| own.growth = growth(own.count()));
        self.explanations.sort_by_key(Explanation::is_leveled);
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// v = 29.06 m/s, f = 10.4 Hz: 2.794 m from cup to cup, and R = 0.5 m: 1.12 cups a turn (arithmetic). The
    /// whole count nearest is one cup at v/(2πR).
    #[test]
    fn spacing_and_frequency_are_one_relation() {
        let outcome = cups(1, 29.06, 0.5, vec![Suspect::wheel_turn(1, 29.06 / (TAU * 0.5))]).unwrap();
        assert!((outcome.frequency - 29.06 / (TAU * 0.5)).abs() < 1e-12);
        assert!((10.4 / outcome.wheel_frequency - 1.12).abs() < 0.005);
        assert!((outcome.speed / 10.4 - 2.794).abs() < 0.0005);
        assert!((outcome.spacing * outcome.frequency - outcome.speed).abs() < 1e-12);
        assert_eq!(outcome.misread[0], None);
        assert_eq!(outcome.explanations.len(), 1);
    }

    /// At 20 m/s a tire of 0.5 m turns 6.366 times a second: 20 Hz prints 3.14 cups, 14.8 Hz 2.32, 23 Hz 3.61.
    #[test]
    fn sources_whose_waves_are_leveled_come_last() {
        let mode = |frequency: f64, weight: f64| Suspect {
            kind: crate::SuspectKind::Mode,
            name: frequency.to_string(),
            frequency,
            weight,
            why: String::new(),
        };
        let found = cups(3, 20.0, 0.5, vec![mode(20.0, 1.0), mode(14.8, 0.2), mode(23.0, 0.9)]).unwrap();
        let order = |cups: &Cups| cups.explanations.iter().map(Explanation::count).collect::<Vec<_>>();
        assert_eq!(order(&found), [3, 4, 2]);
        let grown = found.with_growth(|count| (count != 9).then(|| 5.0 - 2.0 * f64::from(count)));
        assert_eq!(order(&grown), [2, 3, 4]);
        assert_eq!(
            grown.explanations.iter().map(|own| own.growth).collect::<Vec<_>>(),
            [1.0, -1.0, -3.0].map(Some)
        );
        let level = Explanation { growth: Some(0.0), cups: 0.2, ..grown.explanations[0].clone() };
        assert!(level.is_leveled() && level.count() == 1);
    }

    #[test]
    fn a_speed_of_zero_is_refused() {
        for speed in [0.0, -1.0, f64::NAN] {
            assert!(cups(5, speed, 0.5, Vec::new()).is_err());
        }
        assert!(cups(0, 25.0, 0.5, Vec::new()).is_err());
    }
}
