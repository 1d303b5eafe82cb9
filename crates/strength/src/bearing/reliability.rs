//! How sure a life is.

/// Share of bearings that shall reach the life.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reliability {
    /// 90 per cent: the rating life L10.
    Ninety,
    /// 95 per cent.
    NinetyFive,
    /// 96 per cent.
    NinetySix,
    /// 97 per cent.
    NinetySeven,
    /// 98 per cent.
    NinetyEight,
    /// 99 per cent.
    NinetyNine,
}

impl Reliability {
    /// Every reliability, least first.
    pub const ALL: [Self; 6] = [
        Self::Ninety,
        Self::NinetyFive,
        Self::NinetySix,
        Self::NinetySeven,
        Self::NinetyEight,
        Self::NinetyNine,
    ];

    /// The word of files and results.
    pub fn word(self) -> &'static str {
        match self {
            Self::Ninety => "90 %",
            Self::NinetyFive => "95 %",
            Self::NinetySix => "96 %",
            Self::NinetySeven => "97 %",
            Self::NinetyEight => "98 %",
            Self::NinetyNine => "99 %",
        }
    }

    /// Factor a1 on the rating life.
    ///
    /// Source: ISO 281:2007, life adjustment for reliability (from memory).
    pub fn factor(self) -> f64 {
        match self {
            Self::Ninety => 1.0,
            Self::NinetyFive => 0.64,
            Self::NinetySix => 0.55,
            Self::NinetySeven => 0.47,
            Self::NinetyEight => 0.37,
            Self::NinetyNine => 0.25,
        }
    }
}
