//! What the mean stress does to a range.

use super::{Cycle, Detail, DetailStress};

/// Share of compression that counts where no residual stress opens the crack: EN 1993-1-9:2005, 7.2.1 (2) (from memory).
const COMPRESSION: f64 = 0.6;

/// Which details have no residual stress near yield, so that the compressed part of a range counts by 60 %.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MeanStress {
    /// None: a range counts in full wherever it lies.
    #[default]
    Ignored,
    /// Steel without weld.
    Unwelded,
    /// All: the axle is stress-relieved after welding.
    Relieved,
}

impl MeanStress {
    /// All, in the order of their effect.
    pub const ALL: [Self; 3] = [Self::Ignored, Self::Unwelded, Self::Relieved];

    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            Self::Ignored => "ignored",
            Self::Unwelded => "unwelded",
            Self::Relieved => "relieved",
        }
    }

    /// Share of compression that counts at a detail. A shear stress has no compression and counts in full.
    pub fn compression(self, detail: &Detail) -> f64 {
        let relieved = match self {
            Self::Ignored => false,
            Self::Unwelded => !detail.welded,
            Self::Relieved => true,
        };
        if relieved && detail.stress != DetailStress::Shear { COMPRESSION } else { 1.0 }
    }
}

impl Cycle {
    /// The same cycle with the range that counts: its tension in full, its compression by a share of 0 to 1.
    ///
    /// Source: EN 1993-1-9:2005, 7.2.1 (2) (from memory).
    #[must_use]
    pub fn with_compression(self, share: f64) -> Self {
        let counted = |stress: f64| if stress < 0.0 { share * stress } else { stress };
        let [low, high] = [-0.5, 0.5].map(|side| self.mean + side * self.range);
        Self { range: counted(high) - counted(low), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(low: f64, high: f64, share: f64) -> f64 {
        let cycle = Cycle { range: high - low, mean: 0.5 * (high + low), count: 1.0, from: 0, to: 1 };
        cycle.with_compression(share).range
    }

    /// By hand from the rule: 40 of tension and 60 of compression count as 40 + 36.
    #[test]
    fn compression_counts_by_its_share() {
        assert_eq!(range(-60.0, 40.0, 0.6), 76.0);
        assert_eq!(range(20.0, 90.0, 0.6), 70.0);
        assert_eq!(range(-90.0, -20.0, 0.6), 42.0);
        assert_eq!(range(-60.0, 40.0, 1.0), 100.0);
    }

    #[test]
    fn only_details_without_residual_stress_are_spared() {
        let share = |own: MeanStress, name| own.compression(Detail::named(name).unwrap());
        for (name, shares) in [
            ("plain", [1.0, 0.6, 0.6]),
            ("attachment-long", [1.0, 1.0, 0.6]),
            ("root", [1.0, 1.0, 0.6]),
            ("throat-shear", [1.0, 1.0, 1.0]),
        ] {
            assert_eq!(MeanStress::ALL.map(|own| share(own, name)), shares, "{name}");
        }
    }
}
