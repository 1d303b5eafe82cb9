//! What a ride answers.

use axlebow_axle::{RideOutcome, RideWheel, Side};
use axlebow_study::DrawnRides;
use axlebow_units::{Kind, show};

use super::first;
use super::flex::share_of;
use super::phrases::{angle, is_nothing, percent, plain, reads_alike, times, way};
use crate::number::{Numbers, fixed};
use crate::{BesideRide, ModelCard};

/// How far the tops lean over the road and what makes most of it, how the load swings, and the cups that it would print, or
/// the mean over several roads.
pub fn ride_answer(outcome: &RideOutcome, beside: BesideRide, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let side = leaning_side(outcome);
    let wheel = outcome.wheels.of(side);
    first([
        partial(outcome),
        Some(lean(outcome, side, n)),
        Some(load(outcome)),
        beside.draws.map(|draws| mean(draws, side, n)),
        cups(wheel),
    ])
}

/// The side whose camber peaks higher; the left one of two alike.
fn leaning_side(outcome: &RideOutcome) -> Side {
    let [left, right] = Side::BOTH.map(|side| outcome.wheels.of(side).camber_peak.abs());
    if right > left * (1.0 + 1e-9) { Side::Right } else { Side::Left }
}

fn partial(outcome: &RideOutcome) -> Option<String> {
    let time = outcome.history.time.last().copied().unwrap_or(0.0);
    let text = "The ride ended early: everything below is of its first";
    outcome.partial.as_ref().map(|_| format!("{text} {} s only.", fixed(time, 3)))
}

fn lean(outcome: &RideOutcome, side: Side, n: Numbers) -> String {
    let wheel = outcome.wheels.of(side);
    let over = format!("Over {} at {}", plain(&outcome.name), show(outcome.speed, Kind::Speed, n.system));
    if is_nothing(wheel.camber_peak) {
        return format!("{over} neither wheel leans.");
    }
    let [left, right] = Side::BOTH.map(|side| outcome.wheels.of(side).camber_peak);
    let tops = match reads_alike(left, right, n) {
        true => "tops lean".to_owned(),
        false => format!("the {} wheel's top leans", side.word()),
    };
    format!(
        "{over} {tops} {} up to {}{}, {}.",
        way(wheel.camber_peak),
        angle(wheel.camber_peak, n),
        against_rest(wheel),
        share_of(&wheel.camber_peak_split, wheel.camber_peak, "of it")
    )
}

/// The peak against what the axle leans at rest.
fn against_rest(wheel: &RideWheel) -> String {
    let ratio = wheel.camber_peak / wheel.camber_at_rest;
    match !is_nothing(wheel.camber_at_rest) && ratio > 0.0 {
        true => format!(", {} the lean at rest", times(ratio)),
        false => String::new(),
    }
}

/// The larger dynamic load factor, and the longer time off the road.
fn load(outcome: &RideOutcome) -> String {
    let wheel = |side| outcome.wheels.of(side);
    let [left, right] = Side::BOTH.map(|side| wheel(side).dynamic_load_factor);
    let side = if right > left { Side::Right } else { Side::Left };
    let off = Side::BOTH.map(|side| wheel(side).time_off_road).into_iter().fold(0.0, f64::max);
    let road = match 1e3 * off {
        none if none < 0.5 => "no tire leaves the road".to_owned(),
        time => format!("a tire is off the road for {} ms", fixed(time, 0)),
    };
    let whose = if fixed(left, 2) == fixed(right, 2) { "Wheel load".to_owned() } else { of_wheel(side) };
    format!("{whose} peaks at {} the load at rest, and {road}.", times(left.max(right)))
}

fn of_wheel(side: Side) -> String {
    format!("The {} wheel's load", side.word())
}

/// The swing of camber over several roads.
fn mean(draws: &DrawnRides, side: Side, n: Numbers) -> String {
    let swing = draws.wheels.of(side).camber_peak_to_peak;
    let interval = swing.interval.map_or(String::new(), |[low, high]| {
        let sure = percent(draws.confidence);
        format!(" ({} to {}, {sure} confidence)", n.bare(low, Kind::Angle), n.full(high, Kind::Angle))
    });
    format!(
        "Over {} such roads camber of the {} wheel swings {} from peak to peak in the mean{interval}.",
        draws.count,
        side.word(),
        n.full(swing.value, Kind::Angle)
    )
}

fn cups(wheel: &RideWheel) -> Option<String> {
    let (frequency, cups) = (wheel.dominant_frequency?, wheel.cups_per_turn?);
    Some(format!(
        "Camber swings mostly at {} Hz, which would print {} cups per turn if it came back.",
        fixed(frequency, 1),
        fixed(cups, 1)
    ))
}
