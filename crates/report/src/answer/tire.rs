//! What the tire faces answer.

use axlebow_axle::tread::{TireWear, Worn};
use axlebow_axle::{PrintedWave, Side, Sides, TireCase, TireOutcome, TireRideOutcome, TireSlot};
use axlebow_units::{Kind, show};

use super::first;
use super::phrases::{percent, plain, tops};
use crate::ModelCard;
use crate::number::{Numbers, fixed};

/// How much faster than upright a shoulder wears in the first case, where the camber is; how a dual shares its load or which
/// case is the worst; and what a ride would print.
pub fn tire_answer(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let Some(case) = outcome.cases.first() else { return Vec::new() };
    first([Some(wear(case, n)), ride.map(|ride| wave(ride, n)), worst(outcome), shares(case)])
}

/// A shoulder: of which wheel and tire, inner or outer, and its wear over that upright.
struct Shoulder {
    side: Side,
    tire: TireSlot,
    name: &'static str,
    wear: f64,
}

impl Shoulder {
    /// In words, such as "the inner shoulder of the left outer tire".
    fn words(&self) -> String {
        format!("the {} shoulder of the {}", self.name, self.tire.of_side(self.side.word()))
    }

    /// How fast against upright.
    fn pace(&self) -> String {
        match self.wear {
            same if (same - 1.0).abs() < 5e-3 => "as fast as upright".to_owned(),
            more if more >= 3.0 => format!("{} times as fast as upright", fixed(more, 1)),
            more if more > 1.0 => format!("{} faster than upright", percent(more - 1.0)),
            less => format!("{} slower than upright", percent(1.0 - less)),
        }
    }
}

/// The shoulder that wears fastest against upright; none where none wears upright.
fn fastest(wheels: &Sides<&Worn>) -> Option<Shoulder> {
    let shoulders = Side::BOTH.into_iter().flat_map(|side| {
        let tires = &wheels.of(side).tires;
        tires.iter().enumerate().flat_map(move |(number, worn)| {
            let tire = TireSlot::of(number, tires.len());
            each(worn).map(move |(shoulder, wear)| Shoulder { side, tire, name: shoulder, wear })
        })
    });
    // Of two alike the first: the left wheel, the inner shoulder.
    shoulders.fold(None, |most: Option<Shoulder>, own| match most {
        Some(most) if own.wear <= most.wear * (1.0 + 1e-9) => Some(most),
        _ => Some(own),
    })
}

fn each(tire: &TireWear) -> impl Iterator<Item = (&'static str, f64)> {
    let both = [("inner", tire.inner_shoulder()), ("outer", tire.outer_shoulder())];
    both.into_iter().filter_map(|(name, rib)| Some((name, rib.against_upright?)))
}

fn worn(case: &TireCase) -> Sides<&Worn> {
    Sides { left: &case.wheels.left.worn, right: &case.wheels.right.worn }
}

fn wear(case: &TireCase, n: Numbers) -> String {
    let tops = tops(&Sides::each(|side| case.wheels.of(side).pose.camber), n);
    let camber = format!("{tops} in case {}", case.name);
    match fastest(&worn(case)) {
        Some(own) => format!("{camber}, and {} wears {}.", own.words(), own.pace()),
        None => format!("{camber}; no tire wears upright and straight, so that wear cannot be compared."),
    }
}

/// The case in which a shoulder wears fastest, if it is not the first.
fn worst(outcome: &TireOutcome) -> Option<String> {
    let all = outcome.cases.iter().filter_map(|case| Some((case, fastest(&worn(case))?)));
    let (case, own) = all.reduce(|most, own| if own.1.wear > most.1.wear { own } else { most })?;
    let is_first = outcome.cases.first().is_some_and(|first| std::ptr::eq(first, case));
    let of = outcome.cases.len();
    (!is_first)
        .then(|| format!("Of {of} cases {} is the worst: {} wears {}.", case.name, own.words(), own.pace()))
}

/// How the duals of the wheel that shares less evenly share its load.
fn shares(case: &TireCase) -> Option<String> {
    let share = |side: Side| {
        let tires = &case.wheels.of(side).worn.tires;
        (tires.len() == 2).then(|| (side, tires[1].share))
    };
    let uneven = |own: &(Side, f64)| (own.1 - 0.5).abs();
    let shares = Side::BOTH.into_iter().filter_map(share);
    let (side, inner) = shares.reduce(|most, own| if uneven(&own) > uneven(&most) { own } else { most })?;
    let (name, share) = if inner >= 0.5 { ("inner", inner) } else { ("outer", 1.0 - inner) };
    Some(format!(
        "The {name} tire of the {} dual carries {} of the wheel's load.",
        side.word(),
        percent(share)
    ))
}

/// The stronger wave round the tires of a wheel.
fn wave(ride: &TireRideOutcome, n: Numbers) -> String {
    let over = format!("Over {} at {}", plain(&ride.name), show(ride.speed, Kind::Speed, n.system));
    let waves = Side::BOTH.into_iter().filter_map(|side| ride.wheels.of(side).wave.as_ref());
    let Some(own) = waves.reduce(|most, own| if own.amplitude > most.amplitude { own } else { most }) else {
        return format!("{over} no tire makes a whole turn, so that no wave is seen.");
    };
    let PrintedWave { amplitude, visible, cups, .. } = own;
    let shows = match (*visible, ride.comes_back) {
        (true, true) => "which would show as cups",
        (true, false) => "which would show as cups if its cause came back",
        (false, _) => "too little to be seen as cups",
    };
    let amplitude = percent(*amplitude);
    format!(
        "{over} wear varies by {amplitude} in a wave that goes {} times round a tire, {shows}.",
        cups.count
    )
}
