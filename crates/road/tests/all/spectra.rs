//! Spectra of generated roads, estimated back by Welch's method.

use axlebow_road::{Coherence, RandomRoad, RoughnessClass, WaveBand, iso_8608_spectrum};
use realfft::RealFftPlanner;
use realfft::num_complex::Complex;
use std::f64::consts::TAU;

const LENGTH: f64 = 5000.0;
const SPACING: f64 = 0.125;
/// Samples in a segment, 256 m.
const SEGMENT: usize = 2048;
/// Lower ends of octave bands (cycle/m), from ten bins up: there the window smears the steep spectrum by 2 % at most.
const OCTAVES: [f64; 6] = [0.044, 0.088, 0.177, 0.354, 0.707, 1.414];

fn random_road(class: RoughnessClass, coherence: Coherence) -> RandomRoad {
    RandomRoad {
        spectrum: iso_8608_spectrum(class),
        coherence,
        band: WaveBand::default(),
        length: LENGTH,
        spacing: SPACING,
        seed: 8608 + class as u64,
    }
}

/// Transforms of the Hann-windowed half-overlapping segments, scaled so that |X|² is a one-sided density.
fn segments(heights: &[f64]) -> Vec<Vec<Complex<f64>>> {
    let window: Vec<f64> =
        (0..SEGMENT).map(|i| 0.5 - 0.5 * (TAU * i as f64 / SEGMENT as f64).cos()).collect();
    let scale = (2.0 * SPACING / window.iter().map(|w| w * w).sum::<f64>()).sqrt();
    let plan = RealFftPlanner::<f64>::new().plan_fft_forward(SEGMENT);
    let transform = |part: &[f64]| {
        let mut input: Vec<f64> = part.iter().zip(&window).map(|(z, w)| scale * z * w).collect();
        let mut output = plan.make_output_vec();
        plan.process(&mut input, &mut output).unwrap();
        output
    };
    heights.windows(SEGMENT).step_by(SEGMENT / 2).map(transform).collect()
}

/// Cross density of two tracks summed over the bins of an octave and averaged over the segments.
fn octave_sum(a: &[Vec<Complex<f64>>], b: &[Vec<Complex<f64>>], low: f64) -> Complex<f64> {
    let sum: Complex<f64> =
        a.iter().zip(b).map(|(a, b)| bins(low).map(|k| a[k].conj() * b[k]).sum::<Complex<f64>>()).sum();
    sum / a.len() as f64
}

fn bins(low: f64) -> impl Iterator<Item = usize> {
    (0..SEGMENT / 2).filter(move |&k| (low..2.0 * low).contains(&wave_number(k)))
}

fn wave_number(bin: usize) -> f64 {
    bin as f64 / (SEGMENT as f64 * SPACING)
}

/// Relative standard error of the mean density in an octave, 1/√(bandwidth × length).
fn standard_error(low: f64) -> f64 {
    1.0 / (low * LENGTH).sqrt()
}

#[test]
fn welch_density_of_classes_a_to_e_is_that_of_the_class() {
    let coherence = Coherence::isotropic(1.8).unwrap();
    for class in &RoughnessClass::ALL[..5] {
        let road = random_road(*class, coherence);
        for profile in road.profiles().unwrap() {
            let parts = segments(profile.heights());
            for low in OCTAVES {
                let found = octave_sum(&parts, &parts, low).re;
                let asked: f64 = bins(low).map(|k| road.spectrum.density(wave_number(k))).sum();
                let limit = 0.02 + 3.0 * standard_error(low);
                assert!((found / asked - 1.0).abs() < limit, "{class:?} {low}: {found} {asked} {limit}");
            }
        }
    }
}

#[test]
fn coherence_of_left_and_right_is_the_one_asked_for() {
    for coherence in [
        Coherence::isotropic(1.8).unwrap(),
        Coherence::isotropic(0.4).unwrap(),
        Coherence::exponential(3.0).unwrap(),
    ] {
        let road = random_road(RoughnessClass::C, coherence);
        let [left, right] = road.profiles().unwrap().map(|profile| segments(profile.heights()));
        for low in OCTAVES {
            let cross = octave_sum(&left, &right, low);
            let level = (octave_sum(&left, &left, low).re * octave_sum(&right, &right, low).re).sqrt();
            let density = |k| road.spectrum.density(wave_number(k));
            let asked = bins(low).map(|k| coherence.at(wave_number(k)) * density(k)).sum::<f64>()
                / bins(low).map(density).sum::<f64>();
            let limit = 0.02 + 3.0 * standard_error(low);
            assert!((cross.re / level - asked).abs() < limit, "{low}: {} {asked}", cross.re / level);
            assert!((cross.im / level).abs() < limit, "{low}: {} is not in phase", cross.im / level);
        }
    }
}

#[test]
fn nothing_lies_outside_the_band() {
    let coherence = Coherence::isotropic(1.8).unwrap();
    let band = WaveBand::new(0.05, 0.5).unwrap();
    let road = RandomRoad { band, ..random_road(RoughnessClass::D, coherence) };
    let [left, _] = road.profiles().unwrap();
    let parts = segments(left.heights());
    let inside = octave_sum(&parts, &parts, 0.2).re;
    for low in [0.01, 0.55, 1.2] {
        // A Hann window's power leaks with the sixth power of the distance in bins.
        assert!(octave_sum(&parts, &parts, low).re < 1e-4 * inside, "{low}");
    }
}
