//! Spectra: what they sum to, where a sine stands, agreement with SciPy, peaks named by modes.

use std::f64::consts::TAU;

use crate::example::axle;
use approx::assert_relative_eq;
use axlebow_axle::{Spectrum, modes};
use proptest::prelude::*;

const STEP: f64 = 1e-3;

const SCIPY_WELCH: [(usize, f64); 6] = [
    (0, 2.445672474414e-06),
    (1, 1.634741540338e-01),
    (15, 6.807303940415e-01),
    (84, 1.721275421219e-01),
    (300, 6.629055588722e-06),
    (1024, 3.358278986116e-06),
];
const SCIPY_PERIODOGRAM: [(usize, f64); 6] = [
    (1, 4.138012704298e-01),
    (2, 1.025188005814e-01),
    (15, 5.569523416194e-01),
    (82, 2.499337299172e-01),
    (300, 5.198532659920e-06),
    (1000, 2.441393869880e-06),
];

fn sine(count: usize, frequency: f64) -> Vec<f64> {
    (0..count).map(|i| 0.3 + 0.02 * (TAU * frequency * STEP * i as f64).sin()).collect()
}

fn variance(values: &[f64]) -> f64 {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / values.len() as f64
}

proptest! {
    /// Parseval's theorem.
    #[test]
    fn of_a_short_history_the_integral_is_the_variance(
        history in prop::collection::vec(-1.0..1.0_f64, 16..300)
    ) {
        let spectrum = Spectrum::of(&history, STEP).unwrap();
        prop_assert_eq!(spectrum.segments, 1);
        assert_relative_eq!(spectrum.variance(), variance(&history), max_relative = 1e-10);
    }

    /// Nothing is lost but the line at 0 Hz, which is empty about the mean.
    #[test]
    fn bands_hold_what_the_lines_hold(history in prop::collection::vec(-1.0..1.0_f64, 16..3000)) {
        let spectrum = Spectrum::of(&history, STEP).unwrap();
        let bands = spectrum.bands();
        let sum: f64 = bands.iter().map(|band| band.density * band.width).sum();
        assert_relative_eq!(sum, spectrum.variance(), max_relative = 1e-9);
        prop_assert!(bands.windows(2).all(|two| two[0].frequency < two[1].frequency));
    }
}

/// A sine of amplitude a has the variance a²/2; a Hann window spreads it over a noise bandwidth of 1.5 lines (F. J.
/// Harris, "On the use of windows for harmonic analysis", Proc. IEEE 66 (1978) 51-83, table I; from memory). A
/// segment of 2.048 s holds 26 whole turns here.
#[test]
fn a_long_sine_has_its_line_and_its_variance() {
    let spectrum = Spectrum::of(&sine(20_000, 26.0 / 2.048), STEP).unwrap();
    let variance = 0.5 * 0.02 * 0.02;
    assert_eq!((spectrum.density.len(), spectrum.segments), (1025, 18));
    assert_relative_eq!(spectrum.line_width, 1.0 / 2.048, max_relative = 1e-12);
    assert_relative_eq!(spectrum.variance(), variance, max_relative = 1e-9);
    assert_relative_eq!(spectrum.density[26], variance / (1.5 * spectrum.line_width), max_relative = 1e-9);
    let peaks = spectrum.peaks(&[], 5);
    assert_eq!((peaks.len(), &peaks[0].mode), (1, &None));
    assert_relative_eq!(peaks[0].frequency, 26.0 / 2.048, max_relative = 1e-12);
}

/// Values by `scipy.signal.welch` and `scipy.signal.periodogram`; `scripts/recompute_spectrum.py` prints them.
#[test]
fn densities_are_those_of_scipy() {
    let wave = |i: usize| {
        let t = STEP * i as f64;
        t + (TAU * 7.3 * t).sin() + 0.5 * (TAU * 41.0 * t).cos() + 0.1 * (i as f64 * i as f64 * 0.37).sin()
    };
    for (count, lines) in [(9001, SCIPY_WELCH), (2001, SCIPY_PERIODOGRAM)] {
        let history: Vec<f64> = (0..count).map(wave).collect();
        let spectrum = Spectrum::of(&history, STEP).unwrap();
        for (line, density) in lines {
            assert_relative_eq!(spectrum.density[line], density, max_relative = 1e-9);
        }
    }
}

#[test]
fn peaks_are_named_by_modes_that_move_the_camber() {
    let axle = axle();
    let found = modes(&axle, axle.loading.rated_load, 12).unwrap();
    let bow = found.modes.iter().find(|mode| mode.name == "vertical bow").unwrap();
    let history = sine(20_000, 1.02 * bow.frequency);
    let peaks = Spectrum::of(&history, STEP).unwrap().peaks(&found.modes, 5);
    assert_eq!(peaks[0].mode.as_deref(), Some("vertical bow"));
    let fore_aft = found.modes.iter().find(|mode| mode.name == "fore-aft shake").unwrap();
    assert!(fore_aft.camber.left.abs() < 1e-6);
}

#[test]
fn a_history_of_a_few_samples_has_no_spectrum() {
    assert_eq!(Spectrum::of(&[1.0; 15], STEP), None);
    assert!(Spectrum::of(&[1.0; 16], STEP).unwrap().peaks(&[], 5).is_empty());
}

#[test]
fn the_longest_ride_has_a_few_hundred_bands() {
    let lines = Spectrum { line_width: 0.1, density: vec![1.0; 2_500_001], segments: 1 };
    assert!(lines.bands().len() < 400, "{}", lines.bands().len());
}
