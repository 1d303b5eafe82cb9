//! What sensitivities say; SI inside.

use axlebow_axle::CaseReadings;
use axlebow_axle::outcome::Warning;
use axlebow_model::{Bounds, NumberKey};
use axlebow_units::{Kind, UnitSystem, parse};

/// Result of [`sensitivities`](super::sensitivities) for one load case.
#[derive(Debug, Clone, PartialEq)]
pub struct SensitivityOutcome {
    /// Name of the load case.
    pub case: String,
    /// What the axle reads as it is.
    pub own: CaseReadings,
    /// Place of the peak stress, m.
    pub peak_stress_y: f64,
    /// Every number of the file that anything depends on, largest effect on camber first, as steps in SI go.
    pub keys: Vec<KeySensitivity>,
    /// Paths of the numbers that nothing here depends on.
    pub without_effect: Vec<String>,
    /// Numbers that have no derivative, each with the reason.
    pub refused: Vec<(String, String)>,
    /// Doubts about the load case itself.
    pub warnings: Vec<Warning>,
}

/// Step of a length in US units.
const SIXTEENTH: &str = "1/16 in";

/// Length up to which a step of a millimeter is too much, m.
const MOST_PLAY: f64 = 0.01;

/// What a number of the file does.
#[derive(Debug, Clone, PartialEq)]
pub struct KeySensitivity {
    /// The number.
    pub key: NumberKey,
    /// Change of each reading per unit (SI) of it.
    pub slope: CaseReadings,
    /// How that was found.
    pub by: SlopeBy,
}

/// How a derivative was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SlopeBy {
    /// From the adjoint of the solved case.
    Adjoint,
    /// Finite differences of full solutions to both sides, or to the one side to which the number can go.
    Solutions,
}

impl SlopeBy {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            SlopeBy::Adjoint => "adjoint",
            SlopeBy::Solutions => "solutions",
        }
    }
}

impl SensitivityOutcome {
    /// The keys, those first whose step does most to the camber of the wheel that leans most.
    pub fn most_telling(&self, system: UnitSystem) -> Vec<&KeySensitivity> {
        let side = self.own.leaning_side();
        let telling = |key: &&KeySensitivity| key.change(system).camber_change.of(side).abs();
        let mut keys: Vec<&KeySensitivity> = self.keys.iter().collect();
        keys.sort_by(|one, other| telling(other).total_cmp(&telling(one)));
        keys
    }
}

impl KeySensitivity {
    /// A step that one can picture, in words: a millimeter, a hundredth of a stiffness; in US units a sixteenth of an inch.
    pub fn step_in_words(&self, system: UnitSystem) -> &'static str {
        match (self.key.kind, system) {
            (Kind::Length, UnitSystem::Si) if self.is_play() => "0.1 mm",
            (Kind::Length, UnitSystem::Us) if self.is_play() => "0.005 in",
            (Kind::Length, UnitSystem::Si) => "1 mm",
            (Kind::Length, UnitSystem::Us) => SIXTEENTH,
            (Kind::Force, UnitSystem::Si) => "1 kN",
            (Kind::Force, UnitSystem::Us) => "100 lbf",
            (Kind::Mass, UnitSystem::Si) => "1 kg",
            (Kind::Mass, UnitSystem::Us) => "1 lb",
            (Kind::Angle, _) => "0.1 deg",
            (Kind::Ratio, _) => "0.01",
            (Kind::RotationalFlexibility, _) if self.key.value == 0.0 => "0.001 rad/(kN m)",
            (Kind::Stiffness, _) if self.key.value == 0.0 => "1 N/mm",
            (Kind::RotationalStiffness, _) if self.key.value == 0.0 => "1 kN m/rad",
            _ => "1 %",
        }
    }

    /// Whether the number cannot be more than a few millimeters.
    fn is_play(&self) -> bool {
        matches!(self.key.bounds, Bounds::Between(_, most) if most <= MOST_PLAY)
    }

    /// That step, SI.
    pub fn step(&self, system: UnitSystem) -> f64 {
        match self.step_in_words(system) {
            "1 %" => 0.01 * self.key.value.abs(),
            SIXTEENTH => 0.0254 / 16.0,
            words => parse(words, self.key.kind).map_or(0.0, |parsed| parsed.value),
        }
    }

    /// Change of each reading for that step, to first order.
    pub fn change(&self, system: UnitSystem) -> CaseReadings {
        self.slope.times(self.step(system))
    }

    /// Camber change of the wheel that leans most, per mass that is added, rad/kg; none where the mass stays.
    pub fn camber_per_mass(&self, own: &CaseReadings) -> Option<f64> {
        let camber = *self.slope.camber_change.of(own.leaning_side());
        (self.slope.axle_mass != 0.0).then(|| camber / self.slope.axle_mass)
    }
}
