//! What a result may be.

use axlebow_units::{Kind, UnitSystem, show};

/// What a result may be; of a ride, in every ride.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// Name of the result, such as `camber-change`.
    pub of: String,
    /// What it measures.
    pub kind: Kind,
    /// Least that is accepted, SI.
    pub least: Option<f64>,
    /// Most that is accepted, SI.
    pub most: Option<f64>,
    /// Most that its magnitude may be, SI.
    pub within: Option<f64>,
}

impl Limit {
    /// Whether a value is accepted.
    pub fn admits(&self, value: f64) -> bool {
        self.least.is_none_or(|least| value >= least)
            && self.most.is_none_or(|most| value <= most)
            && self.within.is_none_or(|within| value.abs() <= within)
    }

    /// The limit in words, such as "camber-change within 0.45 deg".
    pub fn words(&self, system: UnitSystem) -> String {
        let shown = |(word, value): (&str, Option<f64>)| {
            value.map(|value| format!("{word} {}", show(value, self.kind, system)))
        };
        let parts = [("at least", self.least), ("at most", self.most), ("within", self.within)];
        let parts: Vec<String> = parts.into_iter().filter_map(shown).collect();
        format!("{} {}", self.of, parts.join(" and "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_are_accepted() {
        let none = Limit { of: "bow".into(), kind: Kind::Length, least: None, most: None, within: None };
        assert!(none.admits(-1e9));
        let range = Limit { least: Some(1.0), most: Some(2.0), ..none.clone() };
        assert_eq!([0.999, 1.0, 2.0, 2.001].map(|value| range.admits(value)), [false, true, true, false]);
        let within = Limit { within: Some(0.002), ..none };
        assert_eq!([-0.0021, -0.002, 0.002].map(|value| within.admits(value)), [false, true, true]);
        assert_eq!(range.words(UnitSystem::Si), "bow at least 1000 mm and at most 2000 mm");
    }
}
