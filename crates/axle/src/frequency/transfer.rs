//! A transfer function and its resonances.

use nalgebra::Complex;

use crate::riding::peak_ground::peak_ground;
use crate::{Input, ModeOutcome};

/// Share of the greatest gain below which a peak is left out.
const SMALL: f64 = 0.02;
/// How many times a peak stands above the lower ground beside it.
const STANDS_OUT: f64 = 1.05;
/// Share of a peak's frequency within which a mode is held to make it: damping moves a peak off its mode.
const NEAR: f64 = 0.15;
/// Rise of a hub over the largest motion of a mode, below which the road does not reach the mode.
const REACHED: f64 = 0.02;

/// How a result answers a road of height `e^{iωt}`, in result per meter of height.
#[derive(Debug, Clone, PartialEq)]
pub struct TransferFunction {
    /// Answer at each frequency as `[real, imaginary]`.
    pub values: Vec<[f64; 2]>,
    /// Where it is largest, by rising frequency.
    pub resonances: Vec<Resonance>,
}

/// A peak of a transfer function.
#[derive(Debug, Clone, PartialEq)]
pub struct Resonance {
    /// Frequency, Hz.
    pub frequency: f64,
    /// Result per meter of road height.
    pub gain: f64,
    /// Name and undamped frequency (Hz) of the nearest mode that this road reaches.
    pub mode: Option<(String, f64)>,
}

impl TransferFunction {
    /// Amplitude of the result per meter of height at each frequency.
    pub fn gains(&self) -> Vec<f64> {
        self.values.iter().map(|[real, imaginary]| real.hypot(*imaginary)).collect()
    }

    pub(crate) fn of(
        frequencies: &[f64],
        values: Vec<Complex<f64>>,
        (input, modes): (Input, &[ModeOutcome]),
    ) -> Self {
        let gains: Vec<f64> = values.iter().map(|value| value.norm()).collect();
        let resonances = peaks(frequencies, &gains).into_iter().map(|[frequency, gain]| Resonance {
            frequency,
            gain,
            mode: nearest(modes, frequency, input),
        });
        let resonances = resonances.collect();
        TransferFunction { values: values.iter().map(|value| [value.re, value.im]).collect(), resonances }
    }
}

/// Frequency and height of the peaks of a curve.
pub(crate) fn peaks(frequencies: &[f64], values: &[f64]) -> Vec<[f64; 2]> {
    let largest = values.iter().copied().fold(0.0, f64::max);
    let tops = (1..values.len().saturating_sub(1)).filter(|i| {
        let top = values[*i];
        let rises = top > values[i - 1] && top >= values[i + 1] && top >= SMALL * largest;
        rises && top > STANDS_OUT * peak_ground(values, *i)
    });
    tops.map(|i| vertex([i - 1, i, i + 1].map(|i| [frequencies[i], values[i]]))).collect()
}

/// Top of the parabola through three points of which the middle one is highest.
fn vertex([a, b, c]: [[f64; 2]; 3]) -> [f64; 2] {
    let (left, right) = ((b[1] - a[1]) / (b[0] - a[0]), (c[1] - b[1]) / (c[0] - b[0]));
    let bend = (right - left) / (c[0] - a[0]);
    if bend >= 0.0 {
        return b;
    }
    let slope = left + bend * (b[0] - a[0]);
    let step = -slope / (2.0 * bend);
    [b[0] + step, b[1] + 0.5 * slope * step]
}

fn nearest(modes: &[ModeOutcome], frequency: f64, input: Input) -> Option<(String, f64)> {
    let off = |mode: &&ModeOutcome| (mode.frequency / frequency - 1.0).abs();
    let reached = modes.iter().filter(|mode| reach(mode, input) >= REACHED && off(mode) <= NEAR);
    let mode = reached.min_by(|a, b| off(a).total_cmp(&off(b)))?;
    Some((mode.name.clone(), mode.frequency))
}

/// Work of the road on a mode: rise of the axle's ends with that of the road.
fn reach(mode: &ModeOutcome, input: Input) -> f64 {
    let rise = input.rise();
    let end = |point: Option<&crate::ShapePoint>| point.map_or(0.0, |point| point.motion[2]);
    (rise.left * end(mode.shape.first()) + rise.right * end(mode.shape.last())).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn peaks_are_found_between_uneven_frequencies() {
        let frequencies: Vec<f64> = (0..200).map(|i| 0.05 * f64::from(i) + 2e-4 * f64::from(i * i)).collect();
        let curve = |f: f64| 3.0 - (f - 4.321).powi(2).min(2.0) + 0.5 * (-4.0 * (f - 9.0).powi(2)).exp();
        let values: Vec<f64> = frequencies.iter().map(|f| curve(*f)).collect();
        let found = peaks(&frequencies, &values);
        assert_eq!(found.len(), 2);
        assert!((found[0][0] - 4.321).abs() < 1e-9 && (found[0][1] - 3.0).abs() < 1e-9, "{found:?}");
        assert!((found[1][0] - 9.0).abs() < 0.01, "{found:?}");
    }

    #[test]
    fn ripples_and_ends_are_no_peaks() {
        let frequencies: Vec<f64> = (0..100).map(f64::from).collect();
        let ripple: Vec<f64> = frequencies.iter().map(|f| 100.0 - f + f64::from((*f as u8) % 3)).collect();
        assert!(peaks(&frequencies, &ripple).iter().all(|peak| peak[0] > 40.0));
        let rising: Vec<f64> = frequencies.iter().map(|f| f * f).collect();
        assert!(peaks(&frequencies, &rising).is_empty());
        assert!(peaks(&[], &[]).is_empty() && peaks(&[1.0], &[2.0]).is_empty());
    }
}
