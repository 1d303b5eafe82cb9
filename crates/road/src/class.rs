//! Roughness classes of ISO 8608.

/// A roughness class of ISO 8608, A (smoothest) to H.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RoughnessClass {
    /// Class A, smoothest.
    A,
    /// Class B.
    B,
    /// Class C.
    C,
    /// Class D.
    D,
    /// Class E.
    E,
    /// Class F.
    F,
    /// Class G.
    G,
    /// Class H, roughest.
    H,
}

/// Gd(n0) at the geometric mean of class A (m³).
const MEAN_OF_A: f64 = 16e-6;

impl RoughnessClass {
    /// Every class, smoothest first.
    pub const ALL: [Self; 8] = [Self::A, Self::B, Self::C, Self::D, Self::E, Self::F, Self::G, Self::H];

    /// Displacement density Gd(n0) at 0.1 cycle/m, geometric mean of the class (m³).
    ///
    /// Gd(n0) = 16e-6 · 4^i, i = 0 for A to 7 for H
    ///
    /// Source: ISO 8608:2016, Table C.1.
    pub fn geometric_mean(self) -> f64 {
        MEAN_OF_A * 4_f64.powi(self as i32)
    }

    /// Lower limit of Gd(n0), half the mean (m³); class A has none. Source: as the mean.
    pub fn lower_limit(self) -> Option<f64> {
        (self != Self::A).then_some(0.5 * self.geometric_mean())
    }

    /// Upper limit of Gd(n0), twice the mean (m³); class H has none. Source: as the mean.
    pub fn upper_limit(self) -> Option<f64> {
        (self != Self::H).then_some(2.0 * self.geometric_mean())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use RoughnessClass::*;
    use approx::assert_relative_eq;

    #[test]
    fn limits_match_iso_8608_table_c1() {
        // (class, lower, mean, upper) in 1e-6 m³; the printed integers are exact.
        let printed = [
            (A, None, 16.0, Some(32.0)),
            (B, Some(32.0), 64.0, Some(128.0)),
            (C, Some(128.0), 256.0, Some(512.0)),
            (D, Some(512.0), 1024.0, Some(2048.0)),
            (E, Some(2048.0), 4096.0, Some(8192.0)),
            (F, Some(8192.0), 16384.0, Some(32768.0)),
            (G, Some(32768.0), 65536.0, Some(131072.0)),
            (H, Some(131072.0), 262144.0, None),
        ];
        for (class, lower, mean, upper) in printed {
            assert_relative_eq!(class.geometric_mean() * 1e6, mean, max_relative = 1e-15);
            for (ours, theirs) in [(class.lower_limit(), lower), (class.upper_limit(), upper)] {
                assert_eq!(ours.is_some(), theirs.is_some(), "{class:?}");
                assert_relative_eq!(
                    ours.unwrap_or(1.0),
                    theirs.map_or(1.0, |x| x * 1e-6),
                    max_relative = 1e-15
                );
            }
        }
    }

    #[test]
    fn classes_leave_no_gap() {
        for pair in RoughnessClass::ALL.windows(2) {
            assert_eq!(pair[0].upper_limit(), pair[1].lower_limit());
        }
    }
}
