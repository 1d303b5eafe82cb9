//! Section, weld, fatigue and bearing checks from plain forces and histories; does not know finite elements, axles or
//! files.
//!
//! Every check is a [`Check`]: what, value, limit, unit, source and what to do. A number is SI and held in the unit
//! that its [`Kind`] says.
//!
//! Numbers here can lead somebody to weld on an axle: whoever shows them shows [`WELDING_CAUTIONS`] too.
//!
//! # Example
//! The weld of an angle under a shear flow, two runs, by ANSI/AISC 360-22:
//! ```
//! use axlebow_strength::*;
//! let flow = shear_flow(45e3, 1.4e-4, 1.6e-5)?;
//! let weld = AiscWeld::new(482.6e6, AiscBasis::WorkingLoads)?;
//! let check = weld.check(&Fillet::with_leg(0.006)?, &WeldLoad::of_shear_flow(flow, 2));
//! assert_eq!(check.verdict(), Verdict::Passes);
//! assert!((0.3..0.4).contains(&check.utilization()));
//! # Ok::<(), StrengthError>(())
//! ```

mod bearing;
mod cautions;
mod check;
mod error;
mod fatigue;
mod section;
mod steel;
mod weld;

pub use axlebow_units::Kind;
pub use bearing::{BearingPair, Reliability, TaperedRoller, bearing_life_check, bearing_split, mean_load};
pub use cautions::{CLAMPING_CAUTIONS, WELDING_CAUTIONS};
pub use check::{Bound, Check, Verdict, Weight, governing, worst_verdict};
pub use error::StrengthError;
pub use fatigue::{
    AiscCategory, Cracked, Cycle, DETAILS, Detail, DetailRules, DetailStress, LifeCurve, LifeScatter,
    MeanStress, RainflowCounter, RangeCounts, RangeDistribution, SpectralMoments, StressSpectrum, damage,
    damage_check, rainflow, repeats_to_crack,
};
pub use section::{
    AiscClass, AllowableStress, EnClass, SectionForces, SectionStresses, ShoulderFillet, Wall, WallPart,
    aisc_limits, aisc_round_reach, aisc_wall_check, en_limits, en_wall_check, stress_checks, walls,
    yield_checks,
};
pub use steel::{
    Composition, HeatAffectedZone, PREHEAT_METHOD, PreheatNeed, WeldHeat, preheat, preheat_check,
    preheat_temperature,
};
pub use weld::{
    AiscBasis, AiscWeld, BaseMetal, EnWeld, Fillet, StitchedPart, Stitches, WeldLoad, WeldRun,
    aisc_effective_length, correlation_factor, en_long_lap_factor, greatest_edge_leg, least_aisc_leg,
    shear_flow,
};
