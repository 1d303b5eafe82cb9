//! How many digits a quantity gets.

use axlebow_units::{Kind, UnitSystem};

/// How a quantity is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shown {
    /// As its kind usually is.
    Usual(Kind),
    /// Position along the axle or size of a part.
    Place,
    /// Displacement.
    Deflection,
    /// Distance along a road, in km or miles.
    RoadDistance,
    /// Force of a weld per length of it.
    ForcePerLength,
    /// A count of years.
    Years,
    /// Of any size: four significant digits.
    Free(Kind),
}

impl From<Kind> for Shown {
    fn from(kind: Kind) -> Self {
        Self::Usual(kind)
    }
}

impl Shown {
    /// What is measured.
    pub(super) fn kind(self) -> Kind {
        match self {
            Self::Usual(kind) | Self::Free(kind) => kind,
            Self::Place | Self::Deflection | Self::RoadDistance => Kind::Length,
            // The same dimension, N/mm or lbf/in.
            Self::ForcePerLength => Kind::Stiffness,
            Self::Years => Kind::Ratio,
        }
    }

    /// Decimals in the display units of a system; none for what is written to four significant digits.
    pub(super) fn decimals(self, system: UnitSystem) -> Option<usize> {
        let (si, us) = match self {
            Self::Usual(kind) => usual_decimals(kind)?,
            Self::Place => (1, 2),
            Self::Deflection => (3, 4),
            Self::ForcePerLength | Self::RoadDistance => (0, 0),
            Self::Years => (1, 1),
            Self::Free(_) => return None,
        };
        Some(if system == UnitSystem::Si { si } else { us })
    }
}

/// Decimals of a kind in SI and in US customary display units; none for one that has values of any size.
fn usual_decimals(kind: Kind) -> Option<(usize, usize)> {
    Some(match kind {
        Kind::Stress => (1, 2),
        Kind::Mass => (1, 1),
        Kind::Force | Kind::Moment => (2, 0),
        Kind::MassPerLength | Kind::Frequency => (2, 2),
        Kind::Angle | Kind::Time | Kind::Ratio => (3, 3),
        Kind::AnglePerMass => (4, 4),
        Kind::RotationalFlexibility => (4, 5),
        _ => return None,
    })
}
