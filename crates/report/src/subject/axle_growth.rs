//! Cups that grow on one of several axles.

use axlebow_axle::{GrowthOutcome, HeldWave, Side, WheelGrowth};
use axlebow_results::{Field, Part, Record, Text, part};

/// Cups that grow on one of several axles.
#[derive(Debug, Clone, PartialEq)]
pub struct AxleGrowth {
    /// Name of the axle.
    pub name: String,
    /// What grows on it.
    pub outcome: GrowthOutcome,
}

impl AxleGrowth {
    /// The wheel end whose wave wins, and that wave.
    pub(crate) fn worst(&self) -> (Side, &WheelGrowth, &HeldWave) {
        let side = self.outcome.worst();
        let wheel = self.outcome.wheels.of(side);
        (side, wheel, wheel.winner())
    }
}

impl Record for AxleGrowth {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Name of the axle.", &Text(|own: &Self| &own.name)),
        part("growth", "What grows on it.", &Part(|own: &Self| &own.outcome)),
    ];
}
