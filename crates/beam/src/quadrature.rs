//! Integrals along an element.

use axlebow_fe::GAUSS;

/// `∫ f ds` from `from` to `to` of several functions at once, each of `parts` equal parts by a six-point rule.
pub fn integrate<const N: usize>(
    (from, to): (f64, f64),
    parts: usize,
    mut f: impl FnMut(f64) -> [f64; N],
) -> [f64; N] {
    let mut sums = [0.0; N];
    let step = (to - from) / parts as f64;
    for part in 0..parts {
        for (place, weight) in GAUSS {
            let values = f(from + (part as f64 + place) * step);
            for (sum, value) in sums.iter_mut().zip(values) {
                *sum += weight * step * value;
            }
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn polynomials_to_the_eleventh_power_are_exact() {
        let [eleventh, one] = integrate((0.5, 2.0), 1, |s| [s.powi(11), 1.0]);
        let exact = (2.0_f64.powi(12) - 0.5_f64.powi(12)) / 12.0;
        assert!((eleventh / exact - 1.0).abs() < 1e-14 && (one - 1.5).abs() < 1e-15);
        let [halves] = integrate((0.0, 1.0), 4, |s| [1.0 / (1.0 + s).powi(4)]);
        assert!((halves - 7.0 / 24.0).abs() < 1e-12);
    }
}
