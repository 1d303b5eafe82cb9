//! What the tire faces answer.

use axlebow_axle::tread::{DutyName, Feather, TireWear, Worn};
use axlebow_axle::{
    PrintedWave, RibPlace, Side, Sides, TireCase, TireDuty, TireOutcome, TireRideOutcome, TireSlot,
};
use axlebow_units::{Kind, show};

use super::first;
use super::phrases::{percent, plain, tops};
use crate::ModelCard;
use crate::number::{Numbers, fixed};
use crate::words::growth::rib_words;
use crate::words::tire::{duty_words, far, worn_words};

/// How much faster than upright a part of a tread wears in the first case, over the duties, and where the camber is; what a
/// ride would print; which ribs feather; which case is the worst or how a dual shares its load.
pub fn tire_answer(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let Some(case) = outcome.cases.first() else { return Vec::new() };
    let wear = Some(wear(case, outcome.duty, n));
    let ride = ride.map(|ride| wave(ride, n));
    first([wear, depth(case, n), ride, feathers(case), worst(outcome), shares(case)])
}

/// A part of a tread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Zone {
    Inner,
    Outer,
    /// Both shoulders, which wear alike.
    Both,
    Center,
}

/// A part of a tread: of which wheel and tire, and its wear over that upright.
#[derive(Debug, Clone, Copy)]
struct ZoneWear {
    side: Side,
    /// Number of its tire, the outermost 0.
    tire: usize,
    /// Tires of its wheel.
    tires: usize,
    zone: Zone,
    wear: f64,
}

/// Difference of wear over that upright below which two parts wear alike.
const ALIKE: f64 = 5e-3;

impl Zone {
    /// Wear of the part over that upright; none where a rib of it does not wear upright.
    fn wear(self, tire: &TireWear) -> Option<f64> {
        match self {
            Zone::Inner | Zone::Both => tire.inner_shoulder().against_upright,
            Zone::Outer => tire.outer_shoulder().against_upright,
            Zone::Center => tire.ribs[tire.ribs.len() / 2].against_upright,
        }
    }

    /// The parts of a tread worth a word.
    fn of(tire: &TireWear) -> &'static [Zone] {
        let alike = Zone::Inner.wear(tire).zip(Zone::Outer.wear(tire));
        match alike.is_some_and(|(inner, outer)| (inner - outer).abs() < ALIKE) {
            true => &[Zone::Both, Zone::Center],
            false => &[Zone::Inner, Zone::Outer, Zone::Center],
        }
    }
}

impl ZoneWear {
    /// In words, such as "the inner shoulder of the left outer tire wears 14 % faster than upright".
    fn words(&self) -> String {
        let tire = TireSlot::of(self.tire, self.tires).of_side(self.side.word());
        let (zone, wears) = match self.zone {
            Zone::Inner => ("the inner shoulder", "wears"),
            Zone::Outer => ("the outer shoulder", "wears"),
            Zone::Both => ("both shoulders", "wear"),
            Zone::Center => ("the center", "wears"),
        };
        format!("{zone} of the {tire} {wears} {}", self.pace())
    }

    /// How fast against upright.
    fn pace(&self) -> String {
        match self.wear {
            same if (same - 1.0).abs() < ALIKE => "as fast as upright".to_owned(),
            more if more >= 3.0 => format!("{} times as fast as upright", fixed(more, 1)),
            more if more > 1.0 => format!("{} faster than upright", percent(more - 1.0)),
            less => format!("{} slower than upright", percent(1.0 - less)),
        }
    }

    /// The same part in other duties, such as " (8 to 30 % over the usual duties)".
    fn range(&self, case: &TireCase) -> String {
        let of = |own: &TireDuty| self.zone.wear(&own.wheels.of(self.side).worn.tires[self.tire]);
        let all = || case.duties.iter().filter_map(of).chain([self.wear]);
        let (least, most) = (all().fold(f64::INFINITY, f64::min), all().fold(0.0, f64::max));
        if most >= 3.0 {
            return format!(" ({} to {} times over the usual duties)", fixed(least, 1), fixed(most, 1));
        }
        let [least, most] = [least, most].map(|wear| fixed(100.0 * (wear - 1.0), 0));
        if least == most { String::new() } else { format!(" ({least} to {most} % over the usual duties)") }
    }
}

/// The part of a tread that wears fastest against upright; none where none wears upright.
fn fastest(wheels: &Sides<&Worn>) -> Option<ZoneWear> {
    let zones = Side::BOTH.into_iter().flat_map(|side| {
        let tires = &wheels.of(side).tires;
        tires.iter().enumerate().flat_map(move |(tire, own)| {
            let each = Zone::of(own).iter();
            each.filter_map(move |zone| {
                Some(ZoneWear { side, tire, tires: tires.len(), zone: *zone, wear: zone.wear(own)? })
            })
        })
    });
    // Of two alike the first: the left wheel, the inner shoulder.
    zones.fold(None, |most: Option<ZoneWear>, own| match most {
        Some(most) if own.wear <= most.wear * (1.0 + 1e-9) => Some(most),
        _ => Some(own),
    })
}

fn worn(case: &TireCase) -> Sides<&Worn> {
    Sides { left: &case.wheels.left.worn, right: &case.wheels.right.worn }
}

fn wear(case: &TireCase, duty: DutyName, n: Numbers) -> String {
    let tops = tops(&Sides::each(|side| case.wheels.of(side).pose.camber), n);
    let camber = format!("{tops} in case {}", case.name);
    match fastest(&worn(case)) {
        Some(own) => format!("{camber}, and {} {}{}.", own.words(), duty_words(duty), own.range(case)),
        None => format!("{camber}; no tire wears upright and straight, so that wear cannot be compared."),
    }
}

/// What the rib that wears most loses over a distance; none where removals have not calibrated it.
fn depth(case: &TireCase, n: Numbers) -> Option<String> {
    let of = |side: Side| {
        let worn = &case.wheels.of(side).worn;
        let (tire, rib) = worn.most_worn();
        let rate = worn.tires[tire].ribs[rib].worn_per_distance?;
        Some((rate, side, tire, RibPlace { tire, rib, of: worn.tires[tire].ribs.len() }, worn.tires.len()))
    };
    let faster = |most: (f64, _, _, _, _), own: (f64, _, _, _, _)| {
        if own.0 > most.0 * (1.0 + 1e-9) { own } else { most }
    };
    let (rate, side, tire, rib, tires) = Side::BOTH.into_iter().filter_map(of).reduce(faster)?;
    let tire = TireSlot::of(tire, tires).of_side(side.word());
    Some(format!(
        "In {} the {} of the {tire} loses {}, more than any other rib.",
        far(n),
        rib_words(rib, 1),
        worn_words(rate, n)
    ))
}

/// Which ribs feather, and which way; none where none does.
fn feathers(case: &TireCase) -> Option<String> {
    let of = |side: Side| case.wheels.of(side).worn.tires.iter().find_map(TireWear::feather);
    let points = |feather: Feather| match feather {
        Feather::Inboard => "inboard, as by toe-in",
        Feather::Outboard => "outboard, as by toe-out",
    };
    match (of(Side::Left), of(Side::Right)) {
        (None, None) => None,
        (Some(left), Some(right)) if left == right => {
            Some(format!("Ribs feather on both wheels, with their sharp edges {}.", points(left)))
        }
        (left, right) => {
            let each = [(Side::Left, left), (Side::Right, right)];
            let each = each.into_iter().filter_map(|(side, feather)| {
                Some(format!("{} on the {} wheel", points(feather?), side.word()))
            });
            Some(format!("Ribs feather, with their sharp edges {}.", each.collect::<Vec<_>>().join(" and ")))
        }
    }
}

/// The case in which a part of a tread wears fastest, if it is not the first.
fn worst(outcome: &TireOutcome) -> Option<String> {
    let all = outcome.cases.iter().filter_map(|case| Some((case, fastest(&worn(case))?)));
    let (case, own) = all.reduce(|most, own| if own.1.wear > most.1.wear { own } else { most })?;
    let is_first = outcome.cases.first().is_some_and(|first| std::ptr::eq(first, case));
    let of = outcome.cases.len();
    (!is_first).then(|| format!("Of {of} cases {} is the worst: {}.", case.name, own.words()))
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
