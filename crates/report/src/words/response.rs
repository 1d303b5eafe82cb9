//! Units and words of answers in the frequency domain, shared by table and picture.

use axlebow_axle::{Input, RandomAnswer, ResponseOutcome, TransferFunction};
use axlebow_units::Kind;

use crate::number::{Numbers, Shown};

/// Answers that differ by less than this share of the largest are the same on paper.
const ALIKE: f64 = 1e-5;

/// One result with its transfer function.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Answered<'a> {
    /// What it is.
    pub what: &'static str,
    /// Whose it is, such as `left wheel`, or the name of a place.
    pub whose: &'a str,
    /// What it is shown as.
    pub shown: Shown,
    /// Its transfer function.
    pub transfer: &'a TransferFunction,
    /// Its answer to the random road.
    pub random: Option<&'a RandomAnswer>,
}

/// Every result, the two wheels as one where they are alike.
pub(crate) fn answered(outcome: &ResponseOutcome) -> Vec<Answered<'_>> {
    let random = outcome.random.as_ref();
    let pairs = [
        ("camber change", Shown::Usual(Kind::Angle), &outcome.camber, random.map(|random| &random.camber)),
        ("wheel load", Shown::Usual(Kind::Force), &outcome.load, random.map(|random| &random.load)),
    ];
    let mut list = Vec::new();
    for (what, shown, sides, random) in pairs {
        let left = Answered {
            what,
            whose: "left wheel",
            shown,
            transfer: &sides.left,
            random: random.map(|r| &r.left),
        };
        let right = Answered {
            whose: "right wheel",
            transfer: &sides.right,
            random: random.map(|r| &r.right),
            ..left
        };
        if alike(&left, &right) {
            list.push(Answered { whose: "each wheel", ..left });
        } else {
            list.extend([left, right]);
        }
    }
    list.extend(outcome.stress.iter().enumerate().map(|(i, station)| Answered {
        what: "fiber stress",
        whose: &station.name,
        shown: Shown::Usual(Kind::Stress),
        transfer: &station.transfer,
        random: random.and_then(|random| random.stress.get(i)),
    }));
    list
}

fn alike(a: &Answered, b: &Answered) -> bool {
    let same = |a: &[f64], b: &[f64]| {
        let largest = a.iter().chain(b).copied().fold(0.0, f64::max);
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() <= ALIKE * largest)
    };
    let density = |answer: &Answered| answer.random.map_or(Vec::new(), |random| random.density.clone());
    same(&a.transfer.gains(), &b.transfer.gains()) && same(&density(a), &density(b))
}

/// A result per road height in the reader's units.
pub(crate) fn per_height(n: Numbers, value: f64, shown: impl Into<Shown>) -> f64 {
    n.scaled(value, shown) / n.scaled(1.0, Shown::Deflection)
}

/// Unit of a result per road height.
pub(crate) fn height_unit(n: Numbers, shown: impl Into<Shown>) -> String {
    format!("{}/{}", n.unit(shown), n.unit(Shown::Deflection))
}

/// What the road does.
pub(crate) fn road_words(input: Input) -> &'static str {
    match input {
        Input::Both => "the road rises under both wheels alike",
        Input::Left => "the road rises under the left wheel only",
        Input::Right => "the road rises under the right wheel only",
        Input::Opposed => "the road rises under the left wheel as far as it falls under the right one",
    }
}
