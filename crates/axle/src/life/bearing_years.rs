//! Years of the wheel bearings along a duty.

use axlebow_strength::{TaperedRoller, mean_load};

use crate::checks::bearing_lives::{BearingLoads, bearing_name, rating};
use crate::checks::not_made::NotMade;
use crate::life::life_outcome::BearingLife;
use crate::outcome::CaseOutcome;
use crate::parts::bearing_place::BearingPlace;
use crate::{Axle, AxleError, Side, Sides};

/// A stretch of the year that loads the bearings alike.
pub(crate) struct BearingShare<'a> {
    /// What acts.
    pub case: &'a CaseOutcome,
    /// Steady load of each wheel that uses its bearings up as fast, over its load in the case.
    pub load_factor: Sides<f64>,
    /// Share of the distance.
    pub share: f64,
}

/// The life of every bearing with a rating, the shortest first, and those without.
///
/// # Errors
/// [`AxleError::Strength`] for an impossible bearing.
pub(crate) fn bearing_years(
    axle: &Axle,
    shares: &[BearingShare],
    (distance, a1): (f64, f64),
) -> Result<(Vec<BearingLife>, Vec<NotMade>), AxleError> {
    let (mut lives, mut not_made) = (Vec::new(), Vec::new());
    for side in Side::BOTH {
        let loads: Vec<BearingLoads> =
            shares.iter().map(|own| BearingLoads::of(axle, own.case, side)).collect::<Result<_, _>>()?;
        for (number, place) in BearingPlace::BOTH.into_iter().enumerate() {
            let rating = match rating(axle, side, place) {
                Ok(rating) => rating,
                Err(missing) => {
                    not_made.push(missing);
                    continue;
                }
            };
            let end = axle.wheel_ends.of(side);
            let carried: Vec<(f64, f64)> = shares
                .iter()
                .zip(&loads)
                .map(|(own, load)| (own.load_factor.of(side) * load.equivalent[number], own.share))
                .collect();
            let mean = mean_load(&carried);
            let roller = TaperedRoller::new(rating, end.cup_angle)?;
            let reached = a1 * roller.rating_distance(mean, axle.wheels.of(side).tire().loaded_radius);
            lives.push(BearingLife {
                place: bearing_name(side, place),
                y: side.sign() * end.bearing_at(place),
                mean_load: mean,
                distance: reached,
                years: reached / distance,
            });
        }
    }
    lives.sort_by(|a, b| a.years.total_cmp(&b.years));
    Ok((lives, not_made))
}
