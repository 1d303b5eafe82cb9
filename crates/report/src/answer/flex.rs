//! What a static run answers.

use axlebow_axle::{CamberSplit, CaseOutcome, FlexOutcome, Side, Sides, WheelOutcome};
use axlebow_results::within_a_sentence;
use axlebow_units::Kind;

use super::first;
use super::phrases::{angle, is_nothing, leans, percent, reads_alike, size, tops};
use super::typical::{LargestPart, estimate};
use crate::ModelCard;
use crate::number::{Numbers, Shown};

/// Toe change that is not worth a word, rad: five thousandths of a degree.
const LITTLE_TOE: f64 = 8.7e-5;

/// Bow that is none, m.
const LEVEL: f64 = 1e-6;

/// How the tops lean in the first case and what makes most of it; bow, toe and stress; what stiffeners take off, the case that
/// leans most, or the camber with the manufactured setting.
pub fn flex_answer(outcome: &FlexOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let Some(case) = outcome.cases.first() else { return Vec::new() };
    first([
        Some(lean(case, n, card)),
        Some(bow(case, n)),
        stiffened(case, n),
        worst(outcome, n),
        setting(case, n),
    ])
}

/// The wheel whose camber changes more; the left one of two alike.
fn leaning(case: &CaseOutcome) -> (Side, &WheelOutcome) {
    let wheel = |side| case.wheels.of(side);
    let more = wheel(Side::Right).camber_change.abs() > wheel(Side::Left).camber_change.abs() * (1.0 + 1e-9);
    let side = if more { Side::Right } else { Side::Left };
    (side, wheel(side))
}

fn changes(case: &CaseOutcome) -> Sides<f64> {
    Sides::each(|side| case.wheels.of(side).camber_change)
}

fn lean(case: &CaseOutcome, n: Numbers, card: &ModelCard) -> String {
    let changes = changes(case);
    let part = part(case, n).map_or(String::new(), |part| format!(", {part}"));
    let ((of, _), _) = largest_part(&leaning(case).1.split);
    let estimate = estimate(of, card).map_or(String::new(), |words| format!(": {words}"));
    format!("{} in case {}{part}{estimate}.", tops(&changes, n), case.name)
}

/// The largest part of the lean of the wheel that leans more.
fn part(case: &CaseOutcome, n: Numbers) -> Option<String> {
    let (side, wheel) = leaning(case);
    if is_nothing(wheel.camber_change) {
        return None;
    }
    let changes = changes(case);
    let of_it = match reads_alike(changes.left, changes.right, n) {
        true => "of it".to_owned(),
        false => format!("of the {} wheel's lean", side.word()),
    };
    Some(share_of(&wheel.split, wheel.camber_change, &of_it))
}

/// What the largest part makes of a camber, such as "95 % of it bending of the axle".
pub(super) fn share_of(split: &CamberSplit, whole: f64, of_it: &str) -> String {
    let ((_, words), own) = largest_part(split);
    let taken_back = if own / whole > 1.005 { ", some of which other parts take back" } else { "" };
    format!("{} {of_it} {words}{taken_back}", percent(own / whole))
}

/// The part that is largest, and its words.
fn largest_part(split: &CamberSplit) -> ((LargestPart, &'static str), f64) {
    let parts = [
        ((LargestPart::Axle, "bending of the axle"), split.bending),
        ((LargestPart::Axle, "shear of the axle"), split.shear),
        ((LargestPart::Seats, "rotation of the seats"), split.seat),
        ((LargestPart::WheelEnds, "bearing deflection"), split.bearing),
        ((LargestPart::WheelEnds, "deflection of wheel disc and hub flange"), split.disc),
        ((LargestPart::WheelEnds, "bearing clearance"), split.clearance),
    ];
    parts.into_iter().fold(parts[0], |most, part| if part.1.abs() > most.1.abs() { part } else { most })
}

fn bow(case: &CaseOutcome, n: Numbers) -> String {
    let moves = match case.bow {
        level if level.abs() < LEVEL => "stays level with the hubs".to_owned(),
        sags if sags < 0.0 => format!("sags {} against the hubs", size(sags, Shown::Deflection, n)),
        rises => format!("rises {} against the hubs", size(rises, Shown::Deflection, n)),
    };
    let stress = size(case.peak_stress, Kind::Stress, n);
    let toe = toe(case, n).map_or(String::new(), |toe| format!(", {toe},"));
    format!("The axle's center {moves}{toe} and bending stress peaks at {stress}.")
}

/// The larger toe change; none where neither wheel has one.
fn toe(case: &CaseOutcome, n: Numbers) -> Option<String> {
    let [left, right] = Side::BOTH.map(|side| case.wheels.of(side).toe_change);
    let (side, toe) = if right.abs() > left.abs() { (Side::Right, right) } else { (Side::Left, left) };
    let whose = match reads_alike(left, right, n) {
        true => "the wheels turn".to_owned(),
        false => format!("the {} wheel turns", side.word()),
    };
    let toward = if toe > 0.0 { "toe-in" } else { "toe-out" };
    (toe.abs() >= LITTLE_TOE).then(|| format!("{whose} {} toward {toward}", angle(toe, n)))
}

fn stiffened(case: &CaseOutcome, n: Numbers) -> Option<String> {
    let of = case.stiffening.as_ref()?;
    let removed = of.removed(of.tied);
    let does = if removed < 0.0 { "add" } else { "take off" };
    Some(format!(
        "Stiffeners of {} {does} {} of the lean that the {} wheel would have without them, {}.",
        size(of.mass, Kind::Mass, n),
        percent(removed.abs()),
        of.side.word(),
        angle(of.without, n)
    ))
}

/// The case that leans most, if it is not the first.
fn worst(outcome: &FlexOutcome, n: Numbers) -> Option<String> {
    let lean = |case: &CaseOutcome| leaning(case).1.camber_change;
    let own = outcome.cases.first()?;
    let worst = outcome
        .cases
        .iter()
        .fold(own, |most, case| if lean(case).abs() > lean(most).abs() * (1.0 + 1e-9) { case } else { most });
    let (side, wheel) = leaning(worst);
    let differs = !std::ptr::eq(worst, own) && !is_nothing(wheel.camber_change);
    let of = outcome.cases.len();
    differs.then(|| {
        let leans = leans(wheel.camber_change, n);
        format!("Of {of} cases {} is the worst: the {} wheel's top {leans}.", worst.name, side.word())
    })
}

/// Camber with the manufactured setting, if there is one.
fn setting(case: &CaseOutcome, n: Numbers) -> Option<String> {
    let set = |side| case.wheels.of(side).camber - case.wheels.of(side).camber_change;
    let camber = Sides::each(|side| case.wheels.of(side).camber);
    let has_setting = Side::BOTH.iter().any(|side| !is_nothing(set(*side)));
    has_setting
        .then(|| format!("Counting the manufactured setting, {}.", within_a_sentence(&tops(&camber, n))))
}
