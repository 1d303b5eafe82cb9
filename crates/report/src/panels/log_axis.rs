//! An axis of equal ratios.

/// An axis on which equal ratios are equally long.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LogAxis {
    /// Values at its ends, above 0.
    pub values: [f64; 2],
    /// Canvas coordinates of its ends.
    pub ends: [f64; 2],
}

impl LogAxis {
    /// Where a value stands; beyond the ends at the end.
    pub fn at(&self, value: f64) -> f64 {
        let [low, high] = self.values;
        let share = (value / low).ln() / (high / low).ln();
        self.ends[0] + share.clamp(0.0, 1.0) * (self.ends[1] - self.ends[0])
    }

    /// Whether a value is on the axis.
    pub fn holds(&self, value: f64) -> bool {
        let [low, high] = self.values;
        (low.min(high)..=low.max(high)).contains(&value)
    }

    /// Multiples of powers of ten on the axis by rising value, such as 1, 2, 5, 10 ...
    pub fn rounds(&self, digits: &[u8]) -> Vec<f64> {
        let [low, high] = self.values;
        let powers = low.min(high).log10().floor() as i32..=low.max(high).log10().ceil() as i32;
        // By way of text, so that 5e-4 is the 0.0005 that is written beside it.
        let round = |power: i32, digit: u8| format!("{digit}e{power}").parse::<f64>().unwrap_or(f64::NAN);
        let all = powers.flat_map(|power| digits.iter().map(move |digit| round(power, *digit)));
        all.filter(|value| self.holds(*value)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_ratios_are_equally_long() {
        let axis = LogAxis { values: [0.1, 100.0], ends: [50.0, 350.0] };
        for (value, place) in
            [(0.1, 50.0), (1.0, 150.0), (10.0, 250.0), (100.0, 350.0), (1e9, 350.0), (0.0, 50.0)]
        {
            assert!((axis.at(value) - place).abs() < 1e-9, "{value}");
        }
    }

    #[test]
    fn round_values_lie_on_the_axis_either_way() {
        let axis = LogAxis { values: [0.4, 30.0], ends: [0.0, 1.0] };
        assert_eq!(axis.rounds(&[1, 2, 5]), [0.5, 1.0, 2.0, 5.0, 10.0, 20.0]);
        let falling = LogAxis { values: [30.0, 0.4], ends: [0.0, 1.0] };
        assert_eq!(falling.rounds(&[1]), [1.0, 10.0]);
    }
}
