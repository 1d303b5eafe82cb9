//! One value held against its limit.

use axlebow_units::Kind;

/// A value past its limit by less than this share of it is at the limit: rounding, as of a leg from its throat.
pub(crate) const ROUNDING: f64 = 1e-9;

/// One value held against its limit, with what says so.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Check {
    /// What is checked, in words.
    pub what: String,
    /// The value (SI).
    pub value: f64,
    /// Its limit (SI).
    pub limit: f64,
    /// On which side of the limit the value must stay.
    pub bound: Bound,
    /// What value and limit measure.
    pub kind: Kind,
    /// Clause and edition, with "from memory" where the page was not at hand.
    pub source: &'static str,
    /// What to do where the limit is passed.
    pub advice: &'static str,
    /// What passing the limit means.
    pub weight: Weight,
}

/// On which side of its limit a value must stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// The value may be at most the limit.
    AtMost,
    /// The value must be at least the limit.
    AtLeast,
}

/// What passing a limit means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// The design fails.
    Binding,
    /// Somebody must look at it.
    Advisory,
}

/// What a check says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Within the limit.
    Passes,
    /// Past a limit that advises: somebody must look at it.
    Watch,
    /// Past a binding limit.
    Fails,
}

impl Verdict {
    /// The word of results.
    pub fn word(self) -> &'static str {
        match self {
            Self::Passes => "passes",
            Self::Watch => "watch",
            Self::Fails => "fails",
        }
    }
}

impl Check {
    /// A value that may be at most its limit.
    ///
    /// - `value`, `limit`: SI, of the kind `kind`
    pub fn at_most(what: impl Into<String>, kind: Kind, value: f64, limit: f64) -> Self {
        Self {
            what: what.into(),
            value,
            limit,
            bound: Bound::AtMost,
            kind,
            source: "",
            advice: "",
            weight: Weight::Binding,
        }
    }

    /// A value that must be at least its limit.
    ///
    /// - `value`, `limit`: SI, of the kind `kind`
    pub fn at_least(what: impl Into<String>, kind: Kind, value: f64, limit: f64) -> Self {
        Self { bound: Bound::AtLeast, ..Self::at_most(what, kind, value, limit) }
    }

    /// The same check with its source.
    pub fn sourced(self, source: &'static str) -> Self {
        Self { source, ..self }
    }

    /// The same check with what to do where it is not met.
    pub fn advising(self, advice: &'static str) -> Self {
        Self { advice, ..self }
    }

    /// The same check as one that advises and does not fail a design.
    pub fn advisory(self) -> Self {
        Self { weight: Weight::Advisory, ..self }
    }

    /// The same check of steel in the heat-affected zone of a weld.
    pub fn in_heat_affected_zone(self) -> Self {
        Self { what: format!("{} in HAZ", self.what), ..self }
    }

    /// The same check with its limit kept a safety factor away: a most allowed is divided by it, a least one
    /// multiplied.
    pub fn with_safety_factor(self, factor: f64) -> Self {
        let limit = match self.bound {
            Bound::AtMost => self.limit / factor,
            Bound::AtLeast => self.limit * factor,
        };
        Self { limit, ..self }
    }

    /// The same check at a named place.
    pub fn at(self, place: &str) -> Self {
        Self { what: format!("{} at {place}", self.what), ..self }
    }

    /// How much of the limit is used: value over limit, or limit over value where it is a least one.
    ///
    /// 1 at the limit. A least limit that a value of 0 must meet gives infinity, and 0 where the limit is 0 too.
    pub fn utilization(&self) -> f64 {
        let (part, whole) = match self.bound {
            Bound::AtMost => (self.value, self.limit),
            Bound::AtLeast => (self.limit, self.value),
        };
        if part == 0.0 { 0.0 } else { part / whole }
    }

    /// Whether the value is within its limit; no number never is.
    pub fn passed(&self) -> bool {
        let slack = ROUNDING * self.limit.abs();
        match self.bound {
            Bound::AtMost => self.value <= self.limit + slack,
            Bound::AtLeast => self.value >= self.limit - slack,
        }
    }

    /// What the check says.
    pub fn verdict(&self) -> Verdict {
        match (self.passed(), self.weight) {
            (true, _) => Verdict::Passes,
            (false, Weight::Advisory) => Verdict::Watch,
            (false, Weight::Binding) => Verdict::Fails,
        }
    }
}

/// The worst_verdict verdict of some checks; of none, that they pass.
pub fn worst_verdict<'a>(checks: impl IntoIterator<Item = &'a Check>) -> Verdict {
    checks.into_iter().map(Check::verdict).max().unwrap_or(Verdict::Passes)
}

/// The check that uses most of its limit, binding ones only; of equal ones the first.
pub fn governing<'a>(checks: impl IntoIterator<Item = &'a Check>) -> Option<&'a Check> {
    let binding = checks.into_iter().filter(|check| check.weight == Weight::Binding);
    let more = |a: &Check, b: &Check| b.utilization().total_cmp(&a.utilization()).is_gt();
    binding.reduce(|most, check| if more(most, check) { check } else { most })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stress(value: f64) -> Check {
        Check::at_most("fiber stress", Kind::Stress, value, 200e6)
    }

    #[test]
    fn a_value_at_its_limit_passes_and_just_past_it_fails() {
        assert_eq!(stress(200e6).verdict(), Verdict::Passes);
        assert_eq!(stress(200.001e6).verdict(), Verdict::Fails);
        assert_eq!(stress(200.001e6).advisory().verdict(), Verdict::Watch);
        assert_eq!(stress(f64::NAN).verdict(), Verdict::Fails);
    }

    #[test]
    fn a_least_limit_is_used_the_other_way() {
        let throat = |a| Check::at_least("throat", Kind::Length, a, 0.003);
        assert_eq!(throat(0.006).utilization(), 0.5);
        assert_eq!(throat(0.003).verdict(), Verdict::Passes);
        assert_eq!(throat(0.002).verdict(), Verdict::Fails);
        assert_eq!(throat(0.0).utilization(), f64::INFINITY);
    }

    #[test]
    fn a_safety_factor_keeps_a_limit_away_on_either_side() {
        let least = Check::at_least("local buckling factor", Kind::Ratio, 4.0, 2.0);
        for check in [stress(100e6), least] {
            let kept = check.clone().with_safety_factor(1.5);
            assert!((kept.utilization() / check.utilization() - 1.5).abs() < 1e-12);
        }
    }

    #[test]
    fn the_governing_check_is_the_binding_one_nearest_its_limit() {
        let seat = |side| stress(150e6).at(side);
        let checks = [stress(100e6), seat("left seat"), seat("right seat"), stress(900e6).advisory()];
        assert_eq!(governing(&checks).unwrap().what, "fiber stress at left seat");
        assert_eq!(worst_verdict(&checks), Verdict::Watch);
        assert_eq!(governing(&[]), None);
        assert_eq!(worst_verdict(&[]), Verdict::Passes);
    }
}
