//! What a duty leaves of an axle.

use axlebow_strength::{Detail, MeanStress, Reliability};

use crate::checks::not_made::NotMade;
use crate::outcome::Warning;

/// Result of [`crate::life`].
#[derive(Debug, Clone, PartialEq)]
pub struct LifeOutcome {
    /// Name of the duty.
    pub duty: String,
    /// Distance of a year, m.
    pub distance: f64,
    /// Standard deviation of log10 of the lives of one detail.
    pub scatter: f64,
    /// Where compression counted less.
    pub mean_stress: MeanStress,
    /// Details that can crack, the first to crack first.
    pub details: Vec<DetailLife>,
    /// Wheel bearings, the shortest life first.
    pub bearings: Vec<BearingLife>,
    /// Share of bearings that reach their life.
    pub reliability: Reliability,
    /// What has no rating, no category or no size.
    pub not_made: Vec<NotMade>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// Years to a crack at a detail.
#[derive(Debug, Clone, PartialEq)]
pub struct DetailLife {
    /// What it is and where.
    pub name: String,
    /// Position, m.
    pub y: f64,
    /// Its category.
    pub detail: &'static Detail,
    /// What of its geometry chose it.
    pub geometry: String,
    /// Greatest stress range in a year, Pa.
    pub greatest_range: f64,
    /// Years until 5 %, half and 95 % of such details have cracked; infinite where no range does damage.
    pub years: [f64; 3],
    /// Shares of the damage of half of such details: random roads, bumps, braking and turns, loading; zero where none is.
    pub shares: DamageShares,
    /// Damage of the random roads by their spectra over that by counted cycles, for half of such details; none where the
    /// counted cycles do none, or compression counts less, which a spectrum does not know.
    pub spectral_ratio: Option<f64>,
}

/// Where damage comes from.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DamageShares {
    /// Random roads.
    pub roads: f64,
    /// Bumps and holes.
    pub bumps: f64,
    /// Braking and turns.
    pub events: f64,
    /// Loading and unloading.
    pub loadings: f64,
}

/// Life of a wheel bearing.
#[derive(Debug, Clone, PartialEq)]
pub struct BearingLife {
    /// Name of its station.
    pub place: String,
    /// Position, m.
    pub y: f64,
    /// Steady equivalent load of the same life, N.
    pub mean_load: f64,
    /// Distance in its life, m.
    pub distance: f64,
    /// Years in its life.
    pub years: f64,
}

impl LifeOutcome {
    /// The detail that cracks first; none where nothing is known of any, or none cracks.
    pub fn first_to_crack(&self) -> Option<&DetailLife> {
        self.details.first().filter(|own| own.years[1].is_finite())
    }
}
