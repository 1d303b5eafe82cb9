//! What may have worn a tire as it is.

/// What may have worn a tire as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WearCause {
    /// Nothing but the miles.
    Normal,
    /// The axle bows under loads near its rating.
    AxleBow,
    /// The axle carries more than its rating.
    Overload,
    /// The wall of tube or housing is thinner than its file says.
    ThinWall,
    /// The axle's seats hold it with less than their rotational stiffness.
    LooseSeat,
    /// Wheel bearings with more endplay than is accepted.
    LooseBearings,
    /// Wheels that sit farther outboard than the axle's file says.
    Outset,
    /// Toe set wrong at one or both wheels.
    Toe,
    /// The axle stands out of square.
    Skew,
    /// Camber built or bent into one or both spindles.
    BuiltInCamber,
    /// Tires run at low pressure, all of them or one.
    LowInflation,
    /// Tires run at high pressure.
    HighInflation,
    /// Duals of unequal radius.
    UnequalDuals,
    /// Dampers that no longer damp.
    WornDamper,
    /// Wheels or tires out of round or out of balance.
    Runout,
}

impl WearCause {
    /// All causes.
    pub const ALL: [WearCause; 15] = [
        WearCause::Normal,
        WearCause::AxleBow,
        WearCause::Overload,
        WearCause::ThinWall,
        WearCause::LooseSeat,
        WearCause::LooseBearings,
        WearCause::Outset,
        WearCause::Toe,
        WearCause::Skew,
        WearCause::BuiltInCamber,
        WearCause::LowInflation,
        WearCause::HighInflation,
        WearCause::UnequalDuals,
        WearCause::WornDamper,
        WearCause::Runout,
    ];

    /// Its word in sheets and documents.
    pub fn word(self) -> &'static str {
        match self {
            WearCause::Normal => "normal",
            WearCause::AxleBow => "axle-bow",
            WearCause::Overload => "overload",
            WearCause::ThinWall => "thin-wall",
            WearCause::LooseSeat => "loose-seat",
            WearCause::LooseBearings => "loose-bearings",
            WearCause::Outset => "outset",
            WearCause::Toe => "toe",
            WearCause::Skew => "skew",
            WearCause::BuiltInCamber => "built-in-camber",
            WearCause::LowInflation => "low-inflation",
            WearCause::HighInflation => "high-inflation",
            WearCause::UnequalDuals => "unequal-duals",
            WearCause::WornDamper => "worn-damper",
            WearCause::Runout => "runout",
        }
    }

    /// The words of all causes, as a sheet's `priors` may name them.
    pub fn words() -> Vec<&'static str> {
        WearCause::ALL.map(WearCause::word).to_vec()
    }

    /// Weight before anything is seen: how often a worn axle that comes to a shop has it, against the others (invented).
    pub fn usual_weight(self) -> f64 {
        match self {
            WearCause::Normal => 3.0,
            WearCause::AxleBow | WearCause::LooseBearings | WearCause::Toe | WearCause::LowInflation => 2.0,
            WearCause::Skew | WearCause::UnequalDuals | WearCause::WornDamper => 1.5,
            WearCause::Overload | WearCause::Outset | WearCause::Runout => 1.0,
            WearCause::BuiltInCamber | WearCause::HighInflation => 0.7,
            WearCause::LooseSeat => 0.5,
            WearCause::ThinWall => 0.3,
        }
    }

    /// Shares of worn axles with this cause on which no cups, one to three, and more show round the worst tire (invented; that
    /// loose bearings and weak dampers cup, and that what is out of round cups once to three times, is common practice, no
    /// source).
    pub fn cup_shares(self) -> [f64; 3] {
        match self {
            WearCause::Normal | WearCause::HighInflation => [0.90, 0.05, 0.05],
            WearCause::Toe | WearCause::Skew => [0.84, 0.06, 0.10],
            WearCause::AxleBow
            | WearCause::Overload
            | WearCause::ThinWall
            | WearCause::LooseSeat
            | WearCause::Outset
            | WearCause::BuiltInCamber
            | WearCause::LowInflation
            | WearCause::UnequalDuals => [0.77, 0.06, 0.17],
            WearCause::LooseBearings => [0.45, 0.10, 0.45],
            WearCause::WornDamper => [0.25, 0.12, 0.63],
            WearCause::Runout => [0.35, 0.50, 0.15],
        }
    }

    /// Shares in which the dampers look good, leak and are dead (invented).
    pub fn damper_shares(self) -> [f64; 3] {
        match self {
            WearCause::WornDamper => [0.10, 0.40, 0.50],
            _ => [0.85, 0.12, 0.03],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_differ_and_shares_sum_to_one() {
        for (place, cause) in WearCause::ALL.into_iter().enumerate() {
            assert!(!WearCause::words()[..place].contains(&cause.word()));
            for shares in [cause.cup_shares(), cause.damper_shares()] {
                assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{cause:?}");
            }
        }
    }
}
