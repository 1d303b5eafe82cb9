//! Named places along the axle, from right to left as the chain of nodes runs.

use std::borrow::Cow;
use std::collections::VecDeque;
use std::ops::RangeInclusive;

use crate::assembly::axle::SMALLEST_STEP;
use crate::assembly::station_names::{
    CENTER, INNER_BEARING, OUTER_BEARING, SEAT, SEAT_INNER_EDGE, SEAT_OUTER_EDGE, SECTION_CHANGE,
    SPINDLE_END, TUBE_END,
};
use crate::{Axle, Side, Stiffener};

/// A place on the axle line; several names may share it. One that only divides elements or holds a weld is no station.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Place {
    pub y: f64,
    name: Cow<'static, str>,
    further_names: Vec<Cow<'static, str>>,
    is_station: bool,
}

impl Place {
    fn station(y: f64, name: Cow<'static, str>) -> Self {
        Place { y, name, further_names: Vec::new(), is_station: true }
    }

    fn between_stations(y: f64) -> Self {
        Place { y, name: "between stations".into(), further_names: Vec::new(), is_station: false }
    }

    /// Whether results are given there.
    pub(crate) fn is_station(&self) -> bool {
        self.is_station
    }

    /// The name that comes first.
    pub(crate) fn name(&self) -> &Cow<'static, str> {
        &self.name
    }

    /// All names.
    pub(crate) fn names(&self) -> impl Iterator<Item = &Cow<'static, str>> {
        std::iter::once(&self.name).chain(&self.further_names)
    }
}

/// Number of the place nearest to `y` among places in order of rising `y`.
pub(crate) fn nearest(places: &[Place], y: f64) -> usize {
    nearest_by(places, y, |place| place.y)
}

/// Number of the position nearest to `y` among positions in rising order.
pub(crate) fn nearest_of(positions: &[f64], y: f64) -> usize {
    nearest_by(positions, y, |position| *position)
}

fn nearest_by<T>(places: &[T], y: f64, at: impl Fn(&T) -> f64) -> usize {
    let above = places.partition_point(|place| at(place) < y);
    let below = above.saturating_sub(1);
    match places.get(above) {
        Some(place) if at(place) - y < (y - at(&places[below])).abs() => above,
        _ => below,
    }
}

/// All places on the axle line in order of rising `y` (right to left); one that is closer than [`SMALLEST_STEP`] to the
/// next one inboard is one with it, so that both sides of an axle have the same places.
pub(crate) fn places(axle: &Axle) -> Vec<Place> {
    merged(named(axle))
}

/// All places on the axle line, and further ones between them, evenly apart, so that no two neighbors are more than
/// `longest` (m) apart.
pub(crate) fn fine_places(axle: &Axle, longest: f64) -> Vec<Place> {
    let coarse = places(axle);
    let mut fine = Vec::with_capacity(coarse.len());
    for pair in coarse.windows(2) {
        let length = pair[1].y - pair[0].y;
        // An element as long as the longest must not be cut by rounding.
        let parts = (length / longest - 1e-9).ceil().max(1.0);
        fine.push(pair[0].clone());
        let between = |part: usize| pair[0].y + length * part as f64 / parts;
        fine.extend((1..parts as usize).map(|part| Place::between_stations(between(part))));
    }
    fine.extend(coarse.last().cloned());
    fine
}

/// Some places, and further ones where a weld is held away from any of them.
pub(crate) fn places_with_welds(mut places: Vec<Place>, welds: impl Iterator<Item = f64>) -> Vec<Place> {
    let own = places.len();
    for y in welds {
        let near = &places[nearest(&places[..own], y)];
        if (near.y - y).abs() >= SMALLEST_STEP {
            places.push(Place::between_stations(y));
        }
    }
    places[own..].sort_by(|a, b| a.y.total_cmp(&b.y));
    // Welds of two stiffeners may be held at one place.
    let mut held = places.split_off(own);
    held.dedup_by(|b, a| b.y - a.y < SMALLEST_STEP);
    places.extend(held);
    places.sort_by(|a, b| a.y.total_cmp(&b.y));
    places
}

/// Numbers of the places along a stiffener, its ends among them.
pub(crate) fn reach(places: &[Place], stiffener: &Stiffener) -> RangeInclusive<usize> {
    nearest(places, stiffener.from)..=nearest(places, stiffener.to)
}

fn named(axle: &Axle) -> Vec<(f64, Cow<'static, str>)> {
    let mut named: Vec<(f64, Cow<'static, str>)> = Vec::new();
    each_place(axle, |y, name| named.push((y, name())));
    named
}

/// Places on the axle line in order of rising `y`, without their names; none where two of them are closer than
/// [`SMALLEST_STEP`] and yet not one.
pub(crate) fn clear_places(axle: &Axle) -> Option<Vec<f64>> {
    let mut places = Vec::with_capacity(32);
    each_place(axle, |y, _| places.push(y));
    places.sort_unstable_by(f64::total_cmp);
    places.dedup();
    places.windows(2).all(|pair| pair[1] - pair[0] >= SMALLEST_STEP).then_some(places)
}

/// Tells each place on the axle line with the way to its name.
fn each_place(axle: &Axle, mut tell: impl FnMut(f64, &dyn Fn() -> Cow<'static, str>)) {
    tell(0.0, &|| CENTER.into());
    for side in Side::BOTH {
        let end = axle.wheel_ends.of(side);
        let seat = axle.seats.of(side);
        for (distance, pair) in [
            (axle.body.spindle_end(), SPINDLE_END),
            (end.outer_bearing, OUTER_BEARING),
            (end.inner_bearing, INNER_BEARING),
            (axle.body.tube_end(), TUBE_END),
            (seat.outer_edge(), SEAT_OUTER_EDGE),
            (seat.at, SEAT),
            (seat.inner_edge(), SEAT_INNER_EDGE),
        ] {
            tell(side.sign() * distance, &|| (*pair.of(side)).into());
        }
        let changes = axle.body.pieces().iter().map(|piece| piece.to);
        let inside = changes.filter(|to| *to != axle.body.tube_end() && *to != axle.body.spindle_end());
        for (number, to) in inside.enumerate() {
            tell(side.sign() * to, &|| format!("{}-{}", SECTION_CHANGE.of(side), number + 1).into());
        }
    }
    for stiffener in &axle.stiffeners {
        tell_stiffener(stiffener, &mut tell);
    }
    for station in &axle.stations {
        tell(station.y, &|| station.name.clone().into());
    }
}

fn tell_stiffener(stiffener: &Stiffener, tell: &mut impl FnMut(f64, &dyn Fn() -> Cow<'static, str>)) {
    let run_out = stiffener.end.length();
    let named = |what: &str| format!("{}-{what}", stiffener.name).into();
    tell(stiffener.from, &|| named("right-end"));
    tell(stiffener.to, &|| named("left-end"));
    if run_out > 0.0 {
        tell(stiffener.from + run_out, &|| named("right-run-out"));
        tell(stiffener.to - run_out, &|| named("left-run-out"));
    }
}

/// Positions in rising order, those that are one place once.
pub(crate) fn merged_positions(positions: impl Iterator<Item = f64>) -> Vec<f64> {
    let nameless = positions.map(|y| (y, Cow::Borrowed("")));
    merged(nameless.collect()).into_iter().map(|place| place.y).collect()
}

fn merged(mut named: Vec<(f64, Cow<'static, str>)>) -> Vec<Place> {
    named.sort_by(|a, b| a.0.abs().total_cmp(&b.0.abs()));
    let mut places: VecDeque<Place> = VecDeque::with_capacity(named.len());
    for (y, name) in named {
        let inboard = if y < 0.0 { places.front_mut() } else { places.back_mut() };
        match inboard {
            Some(place) if (y - place.y).abs() < SMALLEST_STEP => place.further_names.push(name),
            _ if y < 0.0 => places.push_front(Place::station(y, name)),
            _ => places.push_back(Place::station(y, name)),
        }
    }
    places.into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fine_places_keep_the_stations_and_are_as_near_as_asked() {
        let axle = crate::example::axle();
        let (coarse, fine) = (places(&axle), fine_places(&axle, 0.05));
        assert!(coarse.iter().all(|place| fine.contains(place)) && fine.len() > coarse.len());
        assert!(fine.windows(2).all(|pair| pair[0].y < pair[1].y && pair[1].y - pair[0].y <= 0.05 + 1e-9));
        assert_eq!(fine_places(&axle, f64::INFINITY), coarse);
    }

    #[test]
    fn crowded_places_merge_alike_on_both_sides() {
        let step = 0.6 * SMALLEST_STEP;
        let crowded =
            [0.0, step, -step, 1.0, 1.0 + step, 1.0 + 2.0 * step, -1.0, -1.0 - step, -1.0 - 2.0 * step];
        let places = merged(crowded.map(|y| (y, "place".into())).to_vec());
        let at: Vec<f64> = places.iter().map(|place| place.y).collect();
        assert_eq!(at, [-1.0 - 2.0 * step, -1.0, 0.0, 1.0, 1.0 + 2.0 * step]);
        assert_eq!(places[2].names().count(), 3);
    }

    #[test]
    fn the_nearest_place_is_found_from_both_sides_and_past_the_ends() {
        let places =
            merged([-1.0, 0.0, 0.4, 0.4 + 0.5 * SMALLEST_STEP].map(|y| (y, "place".into())).to_vec());
        assert_eq!(places.len(), 3);
        assert_eq!(places[2].names().count(), 2);
        for (y, number) in
            [(-9.0, 0), (-1.0, 0), (-0.51, 0), (-0.49, 1), (0.0, 1), (0.19, 1), (0.21, 2), (7.0, 2)]
        {
            assert_eq!(nearest(&places, y), number, "{y}");
        }
    }
}
