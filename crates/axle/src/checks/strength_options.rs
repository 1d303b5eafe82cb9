//! What strength is asked for.

use axlebow_strength::{HeatAffectedZone, MeanStress, Reliability};

use crate::AxleError;

/// Whose limits are used where codes differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StrengthRules {
    /// ANSI/AISC 360-22.
    Aisc,
    /// EN 1993.
    En,
}

impl StrengthRules {
    /// The word of files, options and results.
    pub fn word(self) -> &'static str {
        match self {
            StrengthRules::Aisc => "aisc",
            StrengthRules::En => "en",
        }
    }

    /// The code and its edition.
    pub fn title(self) -> &'static str {
        match self {
            StrengthRules::Aisc => "ANSI/AISC 360-22",
            StrengthRules::En => "EN 1993",
        }
    }
}

/// What strength is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrengthOptions {
    /// What every strength is divided by: yield strength, weld and steel beside it, clamp crush, local buckling. Limits
    /// of size and the classes of walls know none.
    ///
    /// Loads are working loads. Strengths are the design strengths of the rules: φ R_n by AISC, whose 1.5 brings the
    /// Ω = 1.5/φ of working loads, and f/γ_M by EN.
    pub safety_factor: f64,
    /// Whose limits are used where codes differ.
    pub rules: StrengthRules,
    /// Tensile strength of the weld metal, F_EXX, Pa.
    pub electrode_strength: f64,
    /// HAZ strength factor, strength beside a weld over that of the steel; assumed from its yield strength where none
    /// is given.
    pub haz_strength_factor: Option<f64>,
    /// Distance that a wheel bearing must reach at the rated load, m; its life is not checked without it.
    pub bearing_distance: Option<f64>,
    /// Share of bearings that must reach it.
    pub bearing_reliability: Reliability,
    /// Where compression counts less for fatigue.
    pub mean_stress: MeanStress,
    /// By which stress the weld of a seat is held against fatigue.
    pub seat_stress: SeatStress,
}

/// By which stress the weld of a seat is held against fatigue.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SeatStress {
    /// Nominal stress of the axle at the edges of the bracket, category by the bracket's length.
    #[default]
    Nominal,
    /// Hot spot of the wall's shells at the bracket's toe.
    HotSpot,
}

impl SeatStress {
    /// Both.
    pub const ALL: [SeatStress; 2] = [SeatStress::Nominal, SeatStress::HotSpot];

    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            SeatStress::Nominal => "nominal",
            SeatStress::HotSpot => "hot-spot",
        }
    }
}

impl StrengthOptions {
    /// The steel beside a weld, of a steel with a yield strength (Pa).
    pub(crate) fn beside_weld(&self, yield_strength: f64) -> Result<HeatAffectedZone, AxleError> {
        Ok(match self.haz_strength_factor {
            Some(factor) => HeatAffectedZone::stated(factor)?,
            None => HeatAffectedZone::assumed(yield_strength),
        })
    }
}
