//! The values that a number may take.

use axlebow_units::{Kind, UnitSystem, show};

/// The values that a number may take, in SI; infinities and NaN never.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bounds {
    /// Any finite value.
    Any,
    /// More than zero.
    Positive,
    /// Zero or more.
    NonNegative,
    /// From the first to the second, both included.
    Between(f64, f64),
}

impl Bounds {
    /// Whether a value is finite and within.
    pub fn admit(self, value: f64) -> bool {
        value.is_finite()
            && match self {
                Self::Any => true,
                Self::Positive => value > 0.0,
                Self::NonNegative => value >= 0.0,
                Self::Between(low, high) => (low..=high).contains(&value),
            }
    }

    /// The bounds in words, such as "more than 0 mm"; `None` for any value.
    pub fn words(self, kind: Kind, system: UnitSystem) -> Option<String> {
        let shown = |value| show(value, kind, system);
        match self {
            Self::Any => None,
            Self::Positive => Some(format!("more than {}", shown(0.0))),
            Self::NonNegative => Some(format!("{} or more", shown(0.0))),
            Self::Between(low, high) => Some(format!("from {} to {}", shown(low), shown(high))),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_are_in_or_out_as_documented() {
        assert!(Bounds::Between(1.0, 2.0).admit(1.0) && Bounds::Between(1.0, 2.0).admit(2.0));
        assert!(!Bounds::Between(1.0, 2.0).admit(2.0_f64.next_up()));
        assert!(!Bounds::Positive.admit(0.0) && Bounds::Positive.admit(f64::MIN_POSITIVE));
        assert!(Bounds::NonNegative.admit(0.0) && !Bounds::NonNegative.admit(-f64::MIN_POSITIVE));
        assert!(!Bounds::Any.admit(f64::NAN) && !Bounds::Any.admit(f64::INFINITY));
    }
}
