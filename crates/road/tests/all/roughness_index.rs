//! The roughness index against the frequency response of its quarter car.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use axlebow_road::{
    Coherence, MeasuredProfile, RandomRoad, RoughnessClass, RoughnessSpectrum, WaveBand,
    international_roughness_index, iso_8608_spectrum,
};
use realfft::num_complex::Complex;
use std::f64::consts::{FRAC_2_PI, PI, TAU};

/// |zs' - zu'| for a unit wave of slope of the averaged profile, from the equations of motion at p = 2πi n v.
fn stroke(wave_number: f64) -> f64 {
    let (k1, k2, c, mu, v) = (653.0, 63.3, 6.0, 0.15, 80.0 / 3.6);
    let p = Complex::new(0.0, TAU * wave_number * v);
    // Body: p² zs = -F; wheel: μ p² zu = F + k1 (u - zu); F = (k2 + c p)(zs - zu).
    let body = (c * p + k2) / (p * p + c * p + k2);
    let wheel = Complex::from(k1) / (mu * p * p + k1 + p * p * body);
    ((body - 1.0) * wheel).norm()
}

/// Gain of the 250 mm moving average.
fn average(wave_number: f64) -> f64 {
    let b = PI * wave_number * 0.25;
    (b.sin() / b).abs()
}

/// √(2/π) σ of a Gaussian stroke over a band, in m/m.
fn spectral_index(spectrum: RoughnessSpectrum, low: f64, high: f64) -> f64 {
    let steps = 40_000;
    let step = (high / low).ln() / f64::from(steps);
    let variance: f64 = (0..steps)
        .map(|i| low * ((f64::from(i) + 0.5) * step).exp())
        .map(|n| (stroke(n) * average(n) * TAU * n).powi(2) * spectrum.density(n) * n * step)
        .sum();
    (FRAC_2_PI * variance).sqrt()
}

/// Heights at even distances.
fn profile(spacing: f64, count: u32, height: impl Fn(f64) -> f64) -> MeasuredProfile {
    let (distances, heights): (Vec<f64>, Vec<f64>) =
        (0..count).map(|i| f64::from(i) * spacing).map(|x| (x, height(x))).unzip();
    MeasuredProfile::new(&distances, &heights, 0.3).unwrap()
}

/// Class means (m/km) and the unit of their last digit: computed before from the same quarter car, not published.
const CLASS_MEANS: [(RoughnessClass, f64, f64); 5] = [
    (RoughnessClass::A, 2.173, 1e-3),
    (RoughnessClass::B, 4.345, 1e-3),
    (RoughnessClass::C, 8.690, 1e-3),
    (RoughnessClass::D, 17.38, 1e-2),
    (RoughnessClass::E, 34.76, 1e-2),
];

#[test]
fn spectral_index_matches_the_class_means() {
    for (class, printed, last_digit) in CLASS_MEANS {
        let index = 1e3 * spectral_index(iso_8608_spectrum(class), 1e-4, 100.0);
        assert_abs_diff_eq!(index, printed, epsilon = 0.5 * last_digit);
    }
}

#[test]
fn the_band_of_a_random_road_holds_all_that_the_index_sees() {
    let (spectrum, band) = (iso_8608_spectrum(RoughnessClass::A), WaveBand::default());
    let whole = spectral_index(spectrum, 1e-4, 100.0);
    assert_relative_eq!(spectral_index(spectrum, band.low(), band.high()), whole, max_relative = 1e-4);
}

#[test]
fn index_of_five_kilometers_of_each_class_is_near_its_mean() {
    // One road of 5 km is a sample. The effective bandwidth of its stroke, (∫S)²/∫S², is
    // 0.65 cycle/m, so the standard error of its root mean square is 1/(2 √(0.65 · 5000)) = 0.9 %.
    // Held to three of these, and 0.3 % for the straight ground between samples.
    for (class, printed, _) in CLASS_MEANS {
        let road = RandomRoad {
            spectrum: iso_8608_spectrum(class),
            coherence: Coherence::isotropic(1.8).unwrap(),
            band: WaveBand::default(),
            length: 5000.0,
            spacing: 0.05,
            seed: 80 + class as u64,
        };
        for profile in road.profiles().unwrap() {
            let index = 1e3 * international_roughness_index(&profile).unwrap();
            assert_relative_eq!(index, printed, max_relative = 0.03);
        }
    }
}

#[test]
fn index_of_a_wave_is_the_gain_of_the_quarter_car() {
    let (spacing, amplitude) = (0.05, 0.002);
    for n in [0.021, 0.0637, 0.2019, 0.4513, 1.307] {
        // Index times length of two lengths, whose difference is free of the run-in.
        let travel = |count: u32| {
            let wave = profile(spacing, count, |x| amplitude * (TAU * n * x).sin());
            international_roughness_index(&wave).unwrap() * f64::from(count - 5) * spacing
        };
        let index = (travel(80_005) - travel(20_005)) / (60_000.0 * spacing);
        let held = (PI * n * spacing).sin() / (PI * n * spacing); // slope held over a spacing
        let expected = FRAC_2_PI * stroke(n) * average(n) * held * TAU * n * amplitude;
        // A mean of |sin| over 3 km that starts and ends within a wave is off by up to half a wave.
        assert_relative_eq!(index, expected, max_relative = 0.5 / (n * 3000.0));
    }
}

#[test]
fn an_even_slope_is_not_rough() {
    let slope = profile(0.1, 1000, |x| 0.04 * x);
    assert_abs_diff_eq!(international_roughness_index(&slope).unwrap(), 0.0, epsilon = 1e-12);
}

#[test]
fn index_grows_with_the_height_and_hardly_depends_on_the_spacing() {
    let height = |x: f64| 0.01 * (x / 1.7).sin() + 0.004 * (x / 0.6).sin();
    let index = |scale: f64, spacing: f64, count| {
        international_roughness_index(&profile(spacing, count, |x| scale * height(x))).unwrap()
    };
    assert_relative_eq!(index(2.0, 0.05, 4001), 2.0 * index(1.0, 0.05, 4001), max_relative = 1e-12);
    // Holding the slope over a spacing loses (π n Δ)²/6 of a wave, 1 % for 3.8 m and 0.25 m at the most.
    assert_relative_eq!(index(1.0, 0.25, 801), index(1.0, 0.05, 4001), max_relative = 0.011);
    // 0.07 m is not a part of 0.25 m.
    assert_relative_eq!(index(1.0, 0.07, 2858), index(1.0, 0.05, 4001), max_relative = 0.002);
}

/// The same straight ground told by few uneven rows, and by even ones of 5 mm that have all of these among them.
#[test]
fn index_of_uneven_rows_is_that_of_the_ground_between_them() {
    let mut distances = vec![0.0];
    for i in 0..1500_u32 {
        // Gaps of 5 to 240 mm, by a linear congruential generator's high digits.
        let step = 1 + (i.wrapping_mul(1_664_525).wrapping_add(1_013_904_223) >> 16) % 48;
        distances.push(distances[i as usize] + 0.005 * f64::from(step));
    }
    let height = |x: f64| 0.01 * (x / 1.7).sin() + 0.004 * (x / 0.6).sin() + 0.002 * (x / 0.21).sin();
    let heights: Vec<f64> = distances.iter().map(|x| height(*x)).collect();
    let uneven = MeasuredProfile::new(&distances, &heights, 0.3).unwrap();
    let even = uneven.resampled(0.005).unwrap();
    let [uneven, even] = [&uneven, &even].map(|own| international_roughness_index(own).unwrap());
    assert_relative_eq!(uneven, even, max_relative = 1e-6);
}
