//! Life of the wheel bearings from what they carry.

use axlebow_strength::{BearingPair, StrengthError, TaperedRoller, bearing_life_check};

use crate::checks::not_made::NotMade;
use crate::checks::placed_check::{CheckedPart, PlacedCheck};
use crate::checks::strength_options::StrengthOptions;
use crate::outcome::CaseOutcome;
use crate::parts::bearing_place::BearingPlace;
use crate::{Axle, AxleError, LoadCase, Side, flex};

/// What the bearings of a side carry in a case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct BearingLoads {
    /// Radial load of the inner and the outer bearing, N.
    pub radial: [f64; 2],
    /// Axial load, N.
    pub axial: [f64; 2],
    /// Equivalent load (ISO 281), N.
    pub equivalent: [f64; 2],
}

impl BearingLoads {
    /// Radial loads by the static run, thrust by that of each other and the side force of the road.
    ///
    /// # Errors
    /// A cup angle of no tapered bearing.
    pub(crate) fn of(axle: &Axle, case: &CaseOutcome, side: Side) -> Result<Self, StrengthError> {
        // Loads depend on the angle of the cups alone, not on the rating.
        let end = axle.wheel_ends.of(side);
        let roller = TaperedRoller::new(1.0, end.cup_angle)?;
        let pair = BearingPair { inner: roller, outer: roller, preload: end.preload };
        let radial = BearingPlace::BOTH.map(|place| {
            let own = case.bearings.iter().find(|own| own.side == side && own.place == place.word());
            own.map_or(0.0, |own| own.radial)
        });
        let outboard = side.sign() * case.wheels.of(side).lateral_load;
        Ok(BearingLoads {
            radial,
            axial: pair.axial_loads(radial, outboard),
            equivalent: pair.equivalent_loads(radial, outboard),
        })
    }
}

/// Name of a bearing's station.
pub(crate) fn bearing_name(side: Side, place: BearingPlace) -> String {
    format!("{}-{}-bearing", side.word(), place.word())
}

/// The life of every bearing with a rating, running straight under the rated load, and those that cannot be checked.
///
/// Arguments: `solved`, load cases with what came of them, among which running straight need not be solved again.
///
/// # Errors
/// As [`flex`].
pub(crate) fn bearing_checks(
    axle: &Axle,
    ask: StrengthOptions,
    solved: (&[LoadCase], &[CaseOutcome]),
) -> Result<(Vec<PlacedCheck>, Vec<NotMade>), AxleError> {
    let (mut checks, mut not_made) = (Vec::new(), Vec::new());
    let (Some(wanted), Some(case)) = (ask.bearing_distance, running_straight(axle)) else {
        not_made.push(NotMade {
            place: "wheel bearings".to_owned(),
            what: "bearing life".to_owned(),
            reason: "no distance is stated that they must reach".to_owned(),
            advice: "give `bearing_distance` of `[strength]`".to_owned(),
        });
        return Ok((checks, not_made));
    };
    let found = solved.0.iter().position(|own| *own == case);
    let straight = match found {
        Some(number) => solved.1[number].clone(),
        None => flex(axle, &[case])?.cases.remove(0),
    };
    for side in Side::BOTH {
        for (number, place) in BearingPlace::BOTH.into_iter().enumerate() {
            let name = bearing_name(side, place);
            match rating(axle, side, place) {
                Err(missing) => not_made.push(missing),
                Ok(rating) => {
                    let end = axle.wheel_ends.of(side);
                    let loads = BearingLoads::of(axle, &straight, side)?;
                    let roller = TaperedRoller::new(rating, end.cup_angle)?;
                    let radius = axle.wheels.of(side).tire().loaded_radius;
                    let distance = roller.rating_distance(loads.equivalent[number], radius);
                    let check = bearing_life_check(distance, wanted, ask.bearing_reliability);
                    checks.push(PlacedCheck {
                        part: CheckedPart::Bearing,
                        place: name,
                        y: Some(side.sign() * end.bearing_at(place)),
                        check,
                    });
                }
            }
        }
    }
    Ok((checks, not_made))
}

/// Rating of a bearing whose life can be worked out, N; why it cannot.
pub(crate) fn rating(axle: &Axle, side: Side, place: BearingPlace) -> Result<f64, NotMade> {
    let end = axle.wheel_ends.of(side);
    let refused = |reason: String, advice: String| NotMade {
        place: bearing_name(side, place),
        what: "bearing life".to_owned(),
        reason,
        advice,
    };
    let Some(rating) = end.rating(place) else {
        let key =
            format!("give `{}_bearing_rating` of the `wheel_end`, from the bearing's catalog", place.word());
        return Err(refused("its load rating is not given".to_owned(), key));
    };
    let roller = TaperedRoller::new(rating, end.cup_angle);
    let refuse = |error: StrengthError| refused(error.to_string(), "check `bearing_cup_angle`".to_owned());
    roller.map(|_| rating).map_err(refuse)
}

/// The rated load on the road as it is, without a dynamic factor.
fn running_straight(axle: &Axle) -> Option<LoadCase> {
    let case = LoadCase::standard(axle, "rated-load")?;
    Some(LoadCase { dynamic_factor: 1.0, ..case })
}
