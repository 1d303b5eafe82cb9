//! Stress ranges of a ride, counted as it goes: no history is kept.

use axlebow_strength::{RainflowCounter, RangeCounts};

use crate::life::crack_sites::CrackSite;
use crate::{AxleError, Ride, RidingAxle, Side, Sides};

/// Exponent of the life of roller bearings: ISO 281:2007.
const BEARING_EXPONENT: f64 = 10.0 / 3.0;

/// What a ride does to sites and bearings.
#[derive(Debug, Clone)]
pub(crate) struct RideCounts {
    /// Stress ranges of each site.
    pub sites: Vec<RangeCounts>,
    /// Steady load of each wheel that uses its bearings up as fast, over the load at rest.
    pub load_factor: Sides<f64>,
}

/// Drives over a road and counts the stress ranges of the sites by ASTM E1049.
///
/// # Errors
/// As [`crate::ride()`]; [`AxleError::BrokenOff`] for a ride that does not reach its end.
pub(crate) fn ride_counts(
    riding: &RidingAxle,
    ride: &Ride,
    sites: &[CrackSite],
) -> Result<RideCounts, AxleError> {
    let stations: Vec<&str> = sites.iter().map(|site| site.station.as_str()).collect();
    let mut counters: Vec<(RainflowCounter, RangeCounts)> = vec![Default::default(); sites.len()];
    let mut refused = None;
    let (mut samples, mut powers) = (0.0, Sides::<f64>::default());
    riding.watch(ride, &stations, |stresses, over_rest| {
        samples += 1.0;
        for side in Side::BOTH {
            *powers.of_mut(side) += over_rest.of(side).max(0.0).powf(BEARING_EXPONENT);
        }
        for (((counter, counts), stress), site) in counters.iter_mut().zip(stresses).zip(sites) {
            let counted = counter
                .push(site.factor * stress, |cycle| counts.add(cycle.with_compression(site.compression)));
            refused = refused.take().or(counted.err());
        }
    })?;
    if let Some(error) = refused {
        return Err(error.into());
    }
    let finish = |((counter, mut counts), site): ((RainflowCounter, RangeCounts), &CrackSite)| {
        counter.finish(|cycle| counts.add(cycle.with_compression(site.compression)));
        counts
    };
    Ok(RideCounts {
        sites: counters.into_iter().zip(sites).map(finish).collect(),
        load_factor: Sides::each(|side| (powers.of(side) / samples).powf(1.0 / BEARING_EXPONENT)),
    })
}
