//! Fatigue: counted cycles, life curves, details and random stress.

mod aisc_category;
mod catalogue;
mod damage;
mod detail;
mod life_curve;
mod life_scatter;
mod mean_stress;
mod rainflow;
mod range_counts;
mod range_distribution;
mod stress_spectrum;

pub use aisc_category::AiscCategory;
pub use catalogue::DETAILS;
pub use damage::{damage, damage_check, repeats_to_crack};
pub use detail::{Detail, DetailRules, DetailStress};
pub use life_curve::LifeCurve;
pub use life_scatter::{Cracked, LifeScatter};
pub use mean_stress::MeanStress;
pub use rainflow::{Cycle, RainflowCounter, rainflow};
pub use range_counts::RangeCounts;
pub use range_distribution::RangeDistribution;
pub use stress_spectrum::{SpectralMoments, StressSpectrum};
