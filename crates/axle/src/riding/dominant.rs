//! The frequency that dominates a history.

use crate::riding::transforms::powers;

/// Deviation, as a share of the history's largest magnitude, below which nothing dominates.
const STILL: f64 = 1e-9;

/// Lines of the spectrum that one line of the history's length is divided into by zeros appended to it.
const FINENESS: usize = 4;

/// Frequency (Hz) of the highest line of the spectrum of a history sampled every `step` seconds: mean taken
/// off, Hann window, finer lines by appended zeros, the peak by a parabola through three lines. `None` for a
/// history that hardly moves or has fewer than 16 samples.
///
/// The first two lines of the history's own length are left out: a drift is not a vibration.
pub(crate) fn dominant_frequency(history: &[f64], step: f64) -> Option<f64> {
    let count = history.len();
    let mean = history.iter().sum::<f64>() / count.max(1) as f64;
    let size = history.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
    let swing = history.iter().fold(0.0_f64, |most, value| most.max((value - mean).abs()));
    if count < 16 || swing <= STILL * size {
        return None;
    }
    let length = FINENESS * count.next_power_of_two();
    let window = |i: usize| 0.5 - 0.5 * (std::f64::consts::TAU * i as f64 / count as f64).cos();
    let power = powers(history.iter().enumerate().map(|(i, value)| window(i) * (value - mean)), length)?;
    let first = 2 * length / count;
    let top = (first..power.len()).max_by(|a, b| power[*a].total_cmp(&power[*b]))?;
    Some((top as f64 + shift(&power, top)) / (length as f64 * step))
}

/// Place of a parabola's top between three lines, -0.5 to 0.5.
fn shift(power: &[f64], top: usize) -> f64 {
    let (Some(left), Some(right)) = (top.checked_sub(1).and_then(|i| power.get(i)), power.get(top + 1))
    else {
        return 0.0;
    };
    let bend = left - 2.0 * power[top] + right;
    if bend < 0.0 { (0.5 * (left - right) / bend).clamp(-0.5, 0.5) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sine_on_a_slope_is_found() {
        let (step, frequency) = (1e-3, 11.37);
        let history: Vec<f64> = (0..3000)
            .map(|i| {
                let t = step * f64::from(i);
                5.0 + 0.1 * t + (std::f64::consts::TAU * frequency * t).sin()
            })
            .collect();
        let found = dominant_frequency(&history, step).unwrap();
        // A Hann window resolves to a fraction of a line, here 1/3 Hz.
        assert!((found - frequency).abs() < 0.02, "{found}");
    }

    #[test]
    fn nothing_dominates_a_history_at_rest() {
        assert_eq!(dominant_frequency(&[3.0; 100], 1e-3), None);
        assert_eq!(dominant_frequency(&[], 1e-3), None);
    }
}
