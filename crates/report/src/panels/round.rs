//! Round values for axes, levels and factors.

/// Round values within a range, five to ten of them.
pub(crate) fn levels([low, high]: [f64; 2]) -> Vec<f64> {
    let rough = (high - low) / 9.0;
    let power = 10f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].map(|step| step * power).into_iter().find(|step| *step >= rough);
    let step = step.unwrap_or(10.0 * power);
    let (first, last) = ((low / step).ceil() as i64, (high / step).floor() as i64);
    (first..=last).map(|i| i as f64 * step).collect()
}

/// The largest of 1, 2 and 5 times a power of ten that is not above a positive number.
pub(crate) fn round_down(value: f64) -> f64 {
    let power = 10f64.powi(value.log10().floor() as i32);
    [5.0, 2.0, 1.0].into_iter().map(|digit| digit * power).find(|round| *round <= value).unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn levels_are_round_and_within_the_range() {
        assert_eq!(levels([0.0, 1.0]), [0.0, 0.2, 0.4, 0.6000000000000001, 0.8, 1.0]);
        let found = levels([-3.3, 12.9]);
        assert_eq!(found, [-2.0, 0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0]);
    }

    #[test]
    fn factors_are_round() {
        assert_eq!(round_down(26.7), 20.0);
        assert_eq!(round_down(5.0), 5.0);
        assert_eq!(round_down(0.19), 0.1);
    }
}
