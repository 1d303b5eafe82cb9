//! Words of causes that tables and pictures share.

use axlebow_axle::Warning;
use axlebow_study::{CausesOutcome, Contribution, Subject, WheelCauses};
use axlebow_units::{Kind, show};

use crate::number::Numbers;

/// Angle below which nothing is said of its causes, rad: five thousandths of a degree.
const NOTHING: f64 = 8.7e-5;

/// Why these shares are not the parts that a static result has of the same camber change.
pub(crate) const UNLIKE_FLEX: &str = "Shares differ from the parts that flex and ride print of the same camber change: a part \
    there is what its own deflection turns the wheel by, while a cause here is taken away as a whole, so that a seat that no longer \
    lets the axle slope also spares the beam some of its bending.";

/// What was looked at, as a heading.
pub(crate) fn subject(outcome: &CausesOutcome, n: Numbers) -> String {
    match &outcome.subject {
        Subject::Standing { case, description } => format!("{case}: {description}"),
        Subject::Ride { name, speed } => {
            format!("over {name}, {}: peak to peak", show(*speed, Kind::Speed, n.system))
        }
    }
}

/// Warnings of all subjects, each once.
pub(crate) fn warnings(outcomes: &[CausesOutcome]) -> Vec<Warning> {
    let mut all: Vec<Warning> = Vec::new();
    for own in outcomes.iter().flat_map(|outcome| &outcome.warnings) {
        if !all.contains(own) {
            all.push(own.clone());
        }
    }
    all
}

/// A wheel, or both where they read the same.
pub(crate) struct Wheels<'a> {
    /// Such as "left wheel".
    pub words: &'static str,
    /// Its causes.
    pub causes: &'a WheelCauses,
    /// The axle's rigid roll at it, rad.
    pub rigid_roll: f64,
}

/// The wheels, one for both where they read the same.
pub(crate) fn wheels(outcome: &CausesOutcome, n: Numbers) -> Vec<Wheels<'_>> {
    let (left, right) = (&outcome.wheels.left, &outcome.wheels.right);
    let reads = |one: &Contribution| -> Vec<String> {
        let shares = one.shares.iter().flat_map(|share| [share.share, share.removing]);
        shares.chain([one.total]).map(|angle| n.bare(angle, Kind::Angle)).collect()
    };
    let alike = reads(&left.camber) == reads(&right.camber) && reads(&left.toe) == reads(&right.toe);
    let alike = alike && (!rolls(outcome) || outcome.rigid_roll.left == outcome.rigid_roll.right);
    let roll = &outcome.rigid_roll;
    let left = |words| Wheels { words, causes: left, rigid_roll: roll.left };
    match alike {
        true => vec![left("both wheels")],
        false => {
            vec![left("left wheel"), Wheels { words: "right wheel", causes: right, rigid_roll: roll.right }]
        }
    }
}

/// The angles of a wheel with their names; none that is nothing.
pub(crate) fn angles(wheel: &WheelCauses) -> impl Iterator<Item = (&'static str, &Contribution)> {
    let both = [("camber", &wheel.camber), ("toe", &wheel.toe)];
    both.into_iter().filter(|(name, angle)| *name == "camber" || is_something(angle))
}

fn is_something(angle: &Contribution) -> bool {
    angle.shares.iter().map(|share| share.share).chain([angle.total]).any(|part| part.abs() > NOTHING)
}

/// Whether the axle rolls as a whole by anything that shows.
pub(crate) fn rolls(outcome: &CausesOutcome) -> bool {
    outcome.rigid_roll.left.abs() > NOTHING
}
