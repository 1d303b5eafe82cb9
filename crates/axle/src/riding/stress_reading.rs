//! Stress at a place as a linear reading of the motion: that of the fiber that is stressed most at rest.

use axlebow_fe::{Direction, MotionReader};

use crate::AxleError;
use crate::dynamics::vibration::VibrationModel;
use crate::mesh::stressed_section::StressedMember;
use crate::mesh::stretch::Stretch;

/// Stresses that differ by less than this share are equal, so that the left one of a pair is taken.
const EQUAL: f64 = 1e-6;

/// Stress of one fiber.
#[derive(Debug, Clone)]
pub(crate) struct StressReading {
    pub name: String,
    /// Position, m.
    pub y: f64,
    /// Stress at rest, Pa.
    pub at_rest: f64,
    pub direction: Direction,
}

/// The stress at each of the named stations; where none is named, at the one that is stressed most at rest.
pub(crate) fn stress_readings(
    model: &VibrationModel,
    reader: &MotionReader,
    rest: &[f64],
    stations: &[String],
) -> Result<Vec<StressReading>, AxleError> {
    let at = |number: usize, name: &str| reading(model, reader, rest, (number, name));
    let places = &model.frame.places;
    if stations.is_empty() {
        let all = (0..places.len()).rev().filter(|number| places[*number].is_station());
        let all = all.map(|number| at(number, places[number].name()));
        let most = all.reduce(|a, b| if b.at_rest.abs() > a.at_rest.abs() * (1.0 + EQUAL) { b } else { a });
        return Ok(most.into_iter().collect());
    }
    let found = stations.iter().map(|name| {
        let number =
            places.iter().position(|place| place.is_station() && place.names().any(|own| own == name));
        number.map(|number| at(number, name)).ok_or_else(|| unknown(model, name))
    });
    found.collect()
}

/// The stress of the axle itself, without its stiffeners, at each of the named stations.
///
/// # Errors
/// [`AxleError::UnknownStation`].
pub(crate) fn axle_readings(
    model: &VibrationModel,
    reader: &MotionReader,
    rest: &[f64],
    stations: &[&str],
) -> Result<Vec<StressReading>, AxleError> {
    let places = &model.frame.places;
    let found = stations.iter().map(|name| {
        let number =
            places.iter().position(|place| place.is_station() && place.names().any(|own| own == name));
        let number = number.ok_or_else(|| unknown(model, name))?;
        Ok(reading_of(model, (reader, rest), (number, name), 1))
    });
    found.collect()
}

fn unknown(model: &VibrationModel, name: &str) -> AxleError {
    let stations = model.frame.places.iter().rev().filter(|place| place.is_station());
    let names = stations.flat_map(|place| place.names());
    let known = names.map(|name| name.to_string()).collect::<Vec<_>>().join(", ");
    AxleError::UnknownStation { name: name.to_owned(), known }
}

/// The stress at a place, on the side of it and in the part, axle or stiffener, where that is larger at rest.
fn reading(
    model: &VibrationModel,
    reader: &MotionReader,
    rest: &[f64],
    place: (usize, &str),
) -> StressReading {
    reading_of(model, (reader, rest), place, usize::MAX)
}

/// The same of so many members of a stretch, the axle first.
fn reading_of(
    model: &VibrationModel,
    (reader, rest): (&MotionReader, &[f64]),
    (number, name): (usize, &str),
    most_members: usize,
) -> StressReading {
    let stretches = &model.frame.stretches;
    let sides = [number.checked_sub(1), Some(number)].into_iter().flatten();
    let y = model.frame.places[number].y;
    let members = |stretch| {
        StressedMember::each(model.axle, stretch, y).take(most_members).map(move |member| (stretch, member))
    };
    let beside = sides.filter_map(|i| stretches.get(i)).flat_map(members);
    let terms = |(stretch, member): &(&Stretch, StressedMember), u: &[f64]| {
        member.terms(&reader.beam_forces(u, member.line.beam).at(y - stretch.start_y))
    };
    let at_rest = |one: &(&Stretch, StressedMember)| one.1.section.extreme_stress(terms(one, rest)).abs();
    let larger = |a, b| if at_rest(&b) > at_rest(&a) * (1.0 + EQUAL) { b } else { a };
    let most = beside.reduce(larger).expect("a place has a stretch beside it");
    let still = terms(&most, rest);
    let fiber = most.1.section.extreme_fiber(still);
    let direction = reader.direction(|u| fiber.stress(terms(&most, u)));
    StressReading { name: name.to_owned(), y, at_rest: fiber.stress(still), direction }
}
