//! What a study says about seats and the walls under them, in words made from its numbers.

use axlebow_study::{Row, StudyKind, StudyOutcome, name};
use axlebow_units::Kind;

use crate::number::fixed;
use crate::words::study::StudyWords;

/// Part of a camber change below which it turns no verdict.
const SMALL: f64 = 0.05;

/// What a study shows of variants side by side where it shows the wall's part, a sentence each, the answer first: what tells
/// the variants apart that lean most and least, and what the wall under the seats has to do with it, standing and over the
/// rides.
pub(crate) fn seat_findings(words: &StudyWords<'_>) -> Vec<String> {
    let outcome = words.outcome;
    let shows_wall = outcome.shown.iter().any(|measure| measure.name.ends_with("-wall"));
    if !shows_wall || !matches!(outcome.kind, StudyKind::SideBySide { .. }) {
        return Vec::new();
    }
    let designs: Vec<&Row> = words.solved().collect();
    let parts = apart(words, &designs).into_iter().flatten();
    let wall = walls(words, &designs);
    let elastic = wall.as_ref().map(|_| ELASTIC.to_owned());
    let seats = seats_alone(words, &designs);
    parts.chain(wall).chain(seats).chain(elastic).chain(rides(words, &designs)).collect()
}

/// What the wall's part leaves out.
const ELASTIC: &str = "That is the wall while it is elastic: whether it yields under the clamp of its U-bolts, and the stress at a \
                       bracket's toe, `axlebow strength` says.";

/// Camber change of the left wheel, magnitude.
fn lean(words: &StudyWords<'_>, row: &Row) -> f64 {
    words.standing(row, name::LEFT_CAMBER_CHANGE).abs()
}

/// What tells the variants apart that lean most and least.
fn apart(words: &StudyWords<'_>, designs: &[&Row]) -> Option<[String; 2]> {
    let by_lean = |a: &&&Row, b: &&&Row| lean(words, a).total_cmp(&lean(words, b));
    let (least, most) = (*designs.iter().min_by(by_lean)?, *designs.iter().max_by(by_lean)?);
    let between = lean(words, most) - lean(words, least);
    if between <= 0.0 {
        return None;
    }
    let sum =
        |row: &Row, names: &[&str]| names.iter().map(|name| words.standing(row, name)).sum::<f64>().abs();
    let part = |names: &[&str]| 100.0 * (sum(most, names) - sum(least, names)) / between;
    let beam = part(&[name::LEFT_BENDING, name::LEFT_SHEAR]);
    let (seat, wall) = (part(&[name::LEFT_SEAT]), part(&[name::LEFT_WALL]));
    let who = format!(
        "{} leans most, {}, and {} least, {}.",
        name(words.outcome, most),
        words.lean(words.standing(most, name::LEFT_CAMBER_CHANGE)),
        name(words.outcome, least),
        words.lean(words.standing(least, name::LEFT_CAMBER_CHANGE)),
    );
    let why = format!(
        "Of the difference {} % is bending and shear of the axle, which takes in how far each seat shortens the flexing length, {} % is the seats with arms and bushes, of it the wall {} %.",
        fixed(beam, 0),
        fixed(seat, 0),
        fixed(wall, 1),
    );
    Some([who, why])
}

/// How far the seats alone move the camber change of axles of one mass.
fn seats_alone(words: &StudyWords<'_>, designs: &[&Row]) -> Option<String> {
    let axle_mass = |row: &Row| words.standing(row, name::AXLE_MASS);
    let mut masses: Vec<f64> = Vec::new();
    for row in designs {
        if !masses.iter().any(|mass| (mass - axle_mass(row)).abs() < 1e-6 * mass) {
            masses.push(axle_mass(row));
        }
    }
    let ranges = masses.iter().filter_map(|mass| {
        let alike = || designs.iter().filter(|row| (axle_mass(row) - mass).abs() < 1e-6 * mass);
        let leans = || alike().map(|row| lean(words, row));
        let (least, most) = (leans().fold(f64::INFINITY, f64::min), leans().fold(0.0, f64::max));
        (alike().count() > 1 && least > 0.0).then(|| {
            let more = fixed(100.0 * (most / least - 1.0), 0);
            format!("{more} % for the axle of {}", words.numbers.full(*mass, Kind::Mass))
        })
    });
    let ranges: Vec<String> = ranges.collect();
    (!ranges.is_empty())
        .then(|| format!("From its best seat to its worst an axle leans more by {}.", ranges.join(", by ")))
}

/// What the wall has to do with it.
fn walls(words: &StudyWords<'_>, designs: &[&Row]) -> Option<String> {
    let share =
        |row: &Row| words.standing(row, name::LEFT_WALL) / words.standing(row, name::LEFT_CAMBER_CHANGE);
    let by_share = |a: &&&Row, b: &&&Row| share(a).total_cmp(&share(b));
    let most = *designs.iter().max_by(by_share)?;
    let verdict = if share(most) < SMALL {
        "too little to turn round what the axle's bending says"
    } else {
        "enough to turn round what the axle's bending says"
    };
    Some(format!(
        "Local wall deflection under a seat is at most {} of a camber change, {} %, in {}: {verdict}.",
        words.numbers.full(words.standing(most, name::LEFT_WALL).abs(), Kind::Angle),
        fixed(100.0 * share(most), 1),
        name(words.outcome, most),
    ))
}

/// Whether the variants keep their order over the rides, and how far their camber peaks.
fn rides(words: &StudyWords<'_>, designs: &[&Row]) -> Vec<String> {
    let sentence = |ride: usize| {
        let peak = words.outcome.riding(ride, name::CAMBER_PEAK)?;
        let peaks: Vec<f64> =
            designs.iter().map(|row| row.value(peak).map(f64::abs)).collect::<Option<_>>()?;
        let over = || peaks.iter().zip(designs).map(|(peak, row)| peak / lean(words, row));
        let (least, most) = (over().fold(f64::INFINITY, f64::min), over().fold(0.0, f64::max));
        let standing: Vec<f64> = designs.iter().map(|row| lean(words, row)).collect();
        let same = if order(&peaks) == order(&standing) { "the same order as" } else { "another order than" };
        Some(format!(
            "Over the {} the variants come in {same} standing, with peaks {} to {} times the standing change; of the largest, {}.",
            words.ride(ride),
            fixed(least, 2),
            fixed(most, 2),
            parts(words, designs, ride)?
        ))
    };
    (0..words.outcome.rides.len()).filter_map(sentence).collect()
}

/// What the largest camber peak of a ride consists of.
fn parts(words: &StudyWords<'_>, designs: &[&Row], ride: usize) -> Option<String> {
    let value = |row: &Row, name: &str| words.outcome.riding(ride, name).and_then(|own| row.value(own));
    let peak = |row: &&&Row| value(row, name::CAMBER_PEAK).map_or(0.0, f64::abs);
    let worst = designs.iter().max_by(|a, b| peak(a).total_cmp(&peak(b)))?;
    let whole = value(worst, name::CAMBER_PEAK)?;
    let share = |name: &str| Some(100.0 * value(worst, name)? / whole);
    Some(format!(
        "{} % is bending and shear and {} % the seats, of it the wall {} %",
        fixed(share(name::CAMBER_PEAK_BENDING)? + share(name::CAMBER_PEAK_SHEAR)?, 1),
        fixed(share(name::CAMBER_PEAK_SEAT)?, 1),
        fixed(share(name::CAMBER_PEAK_WALL)?, 1)
    ))
}

/// Places of values by rising value.
fn order(values: &[f64]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..values.len()).collect();
    places.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    places
}

fn name(outcome: &StudyOutcome, row: &Row) -> String {
    outcome.variants[row.variant].replace(char::is_control, "\u{fffd}")
}
