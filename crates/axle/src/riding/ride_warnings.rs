//! Doubts about a ride that follow from its road, its speed and its time step.

use axlebow_road::{Event, MeasuredProfile};

use crate::outcome::Warning;
use crate::riding::tracks::track;
use crate::statics::warnings::SMALL_ROTATION;
use crate::{Axle, Ride, Side};

/// Steps in one contact length below which the ground as the tire feels it is passed too coarsely: the mean over
/// the contact holds hardly a wave shorter than the contact, and a wave takes four steps (common practice, no
/// source).
const STEPS_PER_CONTACT: f64 = 4.0;

/// Lack of energy balance over the greatest energy from which on a ride is doubted.
const DOUBTFUL_DRIFT: f64 = 0.01;

/// Everything worth a warning in what is driven over, and how.
pub(crate) fn ride_warnings(axle: &Axle, ride: &Ride) -> Vec<Warning> {
    let mut warnings = Vec::new();
    warnings.extend(beyond_the_ride(ride));
    for side in Side::BOTH {
        let event = track(&ride.road, side).event();
        warnings.extend(short_obstacle(ride, event));
        warnings.extend(coarse_samples(ride, event));
    }
    warnings.dedup();
    warnings.extend(coarse_step(ride));
    warnings.extend(lean_at_the_start(axle, ride));
    warnings
}

/// A ride whose energy does not balance.
pub(crate) fn energy_drift(drift: f64) -> Option<Warning> {
    (drift > DOUBTFUL_DRIFT).then(|| Warning {
        text: format!("the energy of the ride balances only within {:.1} % of its greatest", 100.0 * drift),
        advice: "take a shorter time_step until it balances within 1 %".to_owned(),
    })
}

/// A road that the ride drives only a part of.
fn beyond_the_ride(ride: &Ride) -> Option<Warning> {
    let (start, end) = (ride.road.start(), ride.road.end());
    (ride.from > start || ride.to < end).then(|| Warning {
        text: format!(
            "the ride goes from {:.3} m to {:.3} m, but the road has its bumps from {start:.3} m to {end:.3} m",
            ride.from, ride.to
        ),
        advice: "drive the whole of it, or take the results as those of a part".to_owned(),
    })
}

/// An obstacle that the tire's contact is longer than.
fn short_obstacle(ride: &Ride, event: &Event) -> Option<Warning> {
    let (thing, length) = match event {
        Event::HalfSineBump(bump) => ("bump", bump.length()),
        Event::HaversineBump(bump) => ("bump", bump.length()),
        Event::Pothole(hole) => ("pothole", hole.length()),
        Event::Washboard(waves) => ("washboard wave", waves.wavelength()),
        _ => return None,
    };
    let contact = ride.contact_length;
    (length < contact).then(|| Warning {
        text: format!(
            "the {thing} is {:.0} mm long, shorter than the tire's contact of {:.0} mm, whose mean height hides much of it",
            length * 1e3,
            contact * 1e3
        ),
        advice: "a real tire bridges or wraps round such a thing: take the results as a rough guide, or give a \
                 longer one or a measured contact_length"
            .to_owned(),
    })
}

/// Samples further apart than the tire's contact is long.
fn coarse_samples(ride: &Ride, event: &Event) -> Option<Warning> {
    let Event::Profile(profile) = event else { return None };
    let (widest, contact) = (widest_spacing(profile), ride.contact_length);
    (widest > contact).then(|| Warning {
        text: format!(
            "samples of the road lie up to {:.0} mm apart, further than the tire's contact of {:.0} mm: bumps between them are not in it",
            widest * 1e3,
            contact * 1e3
        ),
        advice: "measure at closer distances, or take the loads as the least that this road brings".to_owned(),
    })
}

fn widest_spacing(profile: &MeasuredProfile) -> f64 {
    profile.distances().windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max)
}

/// A time step in which the axle passes too much of the road.
fn coarse_step(ride: &Ride) -> Option<Warning> {
    let (passed, contact) = (ride.speed * ride.step, ride.contact_length);
    (passed * STEPS_PER_CONTACT > contact).then(|| Warning {
        text: format!(
            "a time step passes {:.0} mm of road, more than a quarter of the tire's contact of {:.0} mm: bumps may fall between steps",
            passed * 1e3,
            contact * 1e3
        ),
        advice: format!(
            "give a time_step of {:.2} ms or less at this speed",
            contact / (STEPS_PER_CONTACT * ride.speed) * 1e3
        ),
    })
}

/// Tracks that begin at heights too unlike for one road.
fn lean_at_the_start(axle: &Axle, ride: &Ride) -> Option<Warning> {
    let [left, right] = Side::BOTH.map(|side| track(&ride.road, side).height(ride.from));
    let apart = (left - right).abs();
    (apart > SMALL_ROTATION * axle.hub_distance()).then(|| Warning {
        text: format!(
            "the left and the right track begin {:.0} mm apart in height: the ride starts at rest on that lean",
            apart * 1e3
        ),
        advice: "check that both tracks count their heights from one level".to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drift_of_over_a_hundredth_is_doubted() {
        assert_eq!(energy_drift(0.01), None);
        let text = energy_drift(0.0123).map(|warning| warning.text);
        assert_eq!(
            text.as_deref(),
            Some("the energy of the ride balances only within 1.2 % of its greatest")
        );
    }
}
