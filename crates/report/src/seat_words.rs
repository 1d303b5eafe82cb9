//! What a study says about seats and the walls under them, in words made from its numbers.

use axlebow_study::{Design, Row, StudyKind, StudyOutcome};

use crate::number::{Shown, fixed};
use crate::study_words::StudyWords;

/// Part of a camber change below which it turns no verdict.
const SMALL: f64 = 0.05;

/// Two paragraphs on variants side by side where a study shows the wall's part: what tells the variants apart that lean
/// most and least, and what the wall under the seats has to do with it, standing and over the rides.
pub(crate) fn seat_findings(words: &StudyWords<'_>) -> Vec<String> {
    let outcome = words.outcome;
    let shows_wall = outcome.shown.iter().any(|measure| measure.quantity.name.ends_with("-wall"));
    if !shows_wall || !matches!(outcome.kind, StudyKind::SideBySide { .. }) {
        return Vec::new();
    }
    let designs: Vec<(&Row, &Design)> =
        outcome.rows.iter().filter_map(|row| Some((row, row.result.as_ref().ok()?))).collect();
    [apart(words, &designs), walls(words, &designs)].into_iter().flatten().collect()
}

/// Camber change of the left wheel, magnitude.
fn lean(design: &Design) -> f64 {
    design.camber_change.left.abs()
}

/// What tells the variants apart that lean most and least, and how far seats alone move an axle.
fn apart(words: &StudyWords<'_>, designs: &[(&Row, &Design)]) -> Option<String> {
    let by_lean = |a: &&(&Row, &Design), b: &&(&Row, &Design)| lean(a.1).total_cmp(&lean(b.1));
    let (least, most) = (designs.iter().min_by(by_lean)?, designs.iter().max_by(by_lean)?);
    let between = lean(most.1) - lean(least.1);
    if between <= 0.0 {
        return None;
    }
    let angle = |value: f64| words.numbers.full(value, Shown::Angle);
    let part = |of: fn(&Design) -> f64| 100.0 * (of(most.1).abs() - of(least.1).abs()) / between;
    let beam = part(|d| d.split.left.bending + d.split.left.shear);
    let (seat, wall) = (part(|d| d.split.left.seat), part(|d| d.split.left.wall));
    let moved = seats_alone(words, designs);
    Some(format!(
        "{} leans most, {}, and {} least, {}. Of the difference {} % is bending and shear of the axle, which takes in how far each seat shortens the flexing length, {} % is the seats with arms and bushes, of it the wall {} %.{}",
        name(words.outcome, most.0),
        angle(most.1.camber_change.left),
        name(words.outcome, least.0),
        angle(least.1.camber_change.left),
        fixed(beam, 0),
        fixed(seat, 0),
        fixed(wall, 1),
        moved.map_or(String::new(), |moved| format!(" {moved}")),
    ))
}

/// How far the seats alone move the camber change of axles of one mass.
fn seats_alone(words: &StudyWords<'_>, designs: &[(&Row, &Design)]) -> Option<String> {
    let mut masses: Vec<f64> = Vec::new();
    for (_, design) in designs {
        if !masses.iter().any(|mass| (mass - design.axle_mass).abs() < 1e-6 * mass) {
            masses.push(design.axle_mass);
        }
    }
    let ranges = masses.iter().filter_map(|mass| {
        let alike = || designs.iter().filter(|(_, own)| (own.axle_mass - mass).abs() < 1e-6 * mass);
        let leans = || alike().map(|(_, design)| lean(design));
        let (least, most) = (leans().fold(f64::INFINITY, f64::min), leans().fold(0.0, f64::max));
        (alike().count() > 1 && least > 0.0).then(|| {
            let more = fixed(100.0 * (most / least - 1.0), 0);
            format!("{more} % for the axle of {}", words.numbers.full(*mass, Shown::Mass))
        })
    });
    let ranges: Vec<String> = ranges.collect();
    (!ranges.is_empty())
        .then(|| format!("From its best seat to its worst an axle leans more by {}.", ranges.join(", by ")))
}

/// What the wall has to do with it.
fn walls(words: &StudyWords<'_>, designs: &[(&Row, &Design)]) -> Option<String> {
    let share = |design: &Design| design.split.left.wall / design.camber_change.left;
    let by_share = |a: &&(&Row, &Design), b: &&(&Row, &Design)| share(a.1).total_cmp(&share(b.1));
    let most = designs.iter().max_by(by_share)?;
    let verdict = if share(most.1) < SMALL {
        "too little to turn round what the axle's bending says"
    } else {
        "enough to turn round what the axle's bending says"
    };
    let order = rides(words, designs).map_or(String::new(), |order| format!(" {order}"));
    Some(format!(
        "The wall that gives way under a seat has at most {} of a camber change, {} %, in {}: {verdict}. That is the wall while it is elastic: whether it stands the clamp of its U-bolts, and the stress at a bracket's toe, are questions of strength.{order}",
        words.numbers.full(most.1.split.left.wall, Shown::Angle),
        fixed(100.0 * share(most.1), 1),
        name(words.outcome, most.0),
    ))
}

/// Whether the variants keep their order over the rides, and how far their camber peaks.
fn rides(words: &StudyWords<'_>, designs: &[(&Row, &Design)]) -> Option<String> {
    let peak =
        |design: &Design, ride: usize| design.rides.get(ride).map(|own| own.wheels.left.camber_peak.abs());
    let sentence = |ride: usize| {
        let peaks: Vec<f64> = designs.iter().map(|(_, design)| peak(design, ride)).collect::<Option<_>>()?;
        let over = || peaks.iter().zip(designs).map(|(peak, (_, design))| peak / lean(design));
        let (least, most) = (over().fold(f64::INFINITY, f64::min), over().fold(0.0, f64::max));
        let standing: Vec<f64> = designs.iter().map(|(_, design)| lean(design)).collect();
        let same = if order(&peaks) == order(&standing) { "the same order as" } else { "another order than" };
        Some(format!(
            "Over the {} the variants come in {same} standing, with peaks {} to {} times the standing change; of the largest, {}.",
            words.ride(ride),
            fixed(least, 2),
            fixed(most, 2),
            parts(designs, ride)?
        ))
    };
    let sentences: Vec<String> = (0..words.outcome.rides.len()).filter_map(sentence).collect();
    (!sentences.is_empty()).then(|| sentences.join(" "))
}

/// What the largest camber peak of a ride consists of.
fn parts(designs: &[(&Row, &Design)], ride: usize) -> Option<String> {
    let wheels = designs.iter().filter_map(|(_, design)| Some(design.rides.get(ride)?.wheels.left));
    let worst = wheels.max_by(|a, b| a.camber_peak.abs().total_cmp(&b.camber_peak.abs()))?;
    let split = worst.camber_peak_split;
    let share = |part: f64| fixed(100.0 * part / worst.camber_peak, 1);
    Some(format!(
        "{} % is bending and shear and {} % the seats, of it the wall {} %",
        share(split.bending + split.shear),
        share(split.seat),
        share(split.wall)
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
