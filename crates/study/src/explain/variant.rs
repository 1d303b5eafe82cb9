//! Ways in which an axle can have a cause: which side, which way, and how much.

use axlebow_axle::{Axle, Side, TireSlot};

use super::parameter::Parameter;
use super::wear_cause::WearCause;
use super::worn_axle::WornAxle;

/// What the size of a cause measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SizeOf {
    /// An angle, rad.
    Angle,
    /// A length, m.
    Length,
    /// Logarithm of a value over that of the axle's file or rating.
    LogRatio,
    /// Nothing that the tread shows.
    Nothing,
}

/// Where a cause is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whereabouts {
    /// The axle as a whole.
    Axle,
    /// One wheel end.
    Side(Side),
    /// Both wheel ends alike.
    BothSides,
    /// One tire.
    Tire(Side, TireSlot),
    /// All tires alike.
    AllTires,
}

impl Whereabouts {
    /// Where, such as "left wheel end".
    pub fn words(self) -> String {
        match self {
            Whereabouts::Axle => "the axle".to_owned(),
            Whereabouts::Side(side) => format!("the {} wheel end", side.word()),
            Whereabouts::BothSides => "both wheel ends".to_owned(),
            Whereabouts::Tire(side, slot) => format!("the {}", slot.of_side(side.word())),
            Whereabouts::AllTires => "all tires".to_owned(),
        }
    }
}

/// One way in which an axle can have a cause: its sizes, spread evenly between two, move parameters in proportion.
#[derive(Debug, Clone, PartialEq)]
pub struct Variant {
    /// The cause.
    pub cause: WearCause,
    /// Where.
    pub place: Whereabouts,
    /// Share of the cause's probability.
    pub share: f64,
    /// Least and largest size.
    pub sizes: [f64; 2],
    /// What the size measures.
    pub size_of: SizeOf,
    /// Parameters that it moves: each is set to `factor × size` on top of its usual value, or in its place.
    pub moves: Vec<Move>,
}

/// A parameter that a cause moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// The parameter.
    pub parameter: Parameter,
    /// What a unit of size adds to it.
    pub factor: f64,
    /// Whether the size stands in place of the usual value.
    pub in_place: bool,
}

/// Sizes that causes have, judgments without a source: from where a shop would act to where the vehicle would not be driven.
mod sizes {
    /// Mean load over the rated one.
    pub const LIGHT: [f64; 2] = [0.45, 0.80];
    pub const NEAR_RATED: [f64; 2] = [0.80, 1.10];
    pub const OVER: [f64; 2] = [1.10, 1.50];
    /// Over that of the file.
    pub const WALL: [f64; 2] = [0.93, 0.70];
    pub const SEAT: [f64; 2] = [0.5, 0.05];
    pub const LOW_INFLATION: [f64; 2] = [0.88, 0.50];
    pub const HIGH_INFLATION: [f64; 2] = [1.10, 1.35];
    /// m.
    pub const ENDPLAY: [f64; 2] = [0.2e-3, 1.5e-3];
    pub const OUTSET: [f64; 2] = [15e-3, 65e-3];
    pub const OUTER_LESS_INNER: [f64; 2] = [3e-3, 15e-3];
    pub const RUNOUT: [f64; 2] = [1.5e-3, 5e-3];
    /// deg.
    pub const TOE: [f64; 2] = [0.12, 0.9];
    pub const SKEW: [f64; 2] = [0.12, 0.7];
    pub const CAMBER: [f64; 2] = [0.25, 1.2];
}

fn logs(ratios: [f64; 2]) -> [f64; 2] {
    ratios.map(f64::ln)
}

fn angles(degrees: [f64; 2]) -> [f64; 2] {
    degrees.map(f64::to_radians)
}

/// One way of many, before its share is known.
struct Way {
    place: Whereabouts,
    weight: f64,
    sizes: [f64; 2],
    moves: Vec<Move>,
}

fn adds(parameter: Parameter, factor: f64) -> Move {
    Move { parameter, factor, in_place: false }
}

fn stands(parameter: Parameter) -> Move {
    Move { parameter, factor: 1.0, in_place: true }
}

/// The axle as a whole, one way.
fn whole(sizes: [f64; 2], moved: Move) -> Vec<Way> {
    vec![Way { place: Whereabouts::Axle, weight: 1.0, sizes, moves: vec![moved] }]
}

/// Left, right or both alike.
fn ends(sizes: [f64; 2], moved: impl Fn(Side) -> Move) -> Vec<Way> {
    let one = |side| Way { place: Whereabouts::Side(side), weight: 1.0, sizes, moves: vec![moved(side)] };
    let both = Side::BOTH.map(&moved).to_vec();
    let both = Way { place: Whereabouts::BothSides, weight: 1.0, sizes, moves: both };
    Side::BOTH.map(one).into_iter().chain([both]).collect()
}

/// The same the other way as well.
fn either_way(ways: Vec<Way>) -> Vec<Way> {
    let turned = |way: &Way| Way {
        moves: way.moves.clone(),
        sizes: way.sizes.map(|size| 0.0 - size),
        place: way.place,
        weight: way.weight,
    };
    let other: Vec<Way> = ways.iter().map(turned).collect();
    ways.into_iter().chain(other).collect()
}

fn duals(axle: &Axle) -> bool {
    axle.wheels.left.tires().count() == 2
}

/// Low pressure of all tires, or of one of them.
fn low_inflation(axle: &Axle) -> Vec<Way> {
    let sizes = logs(sizes::LOW_INFLATION);
    let tires = Side::BOTH
        .into_iter()
        .flat_map(|side| axle.wheels.of(side).tires().map(move |tire| (side, tire.slot)));
    let one = |(side, slot)| Way {
        place: Whereabouts::Tire(side, slot),
        weight: 0.5,
        sizes,
        moves: vec![adds(Parameter::TireInflation(side, slot), 1.0)],
    };
    std::iter::once(all_tires(sizes)).chain(tires.map(one)).collect()
}

fn all_tires(sizes: [f64; 2]) -> Way {
    let moves = vec![adds(Parameter::Inflation, 1.0)];
    Way { place: Whereabouts::AllTires, weight: 1.0, sizes, moves }
}

fn unequal_duals() -> Vec<Way> {
    let one = |side| Way {
        place: Whereabouts::Side(side),
        weight: 1.0,
        sizes: sizes::OUTER_LESS_INNER,
        moves: vec![adds(Parameter::OuterLessInner(side), 1.0)],
    };
    either_way(Side::BOTH.map(one).into_iter().collect())
}

impl Variant {
    /// The variants of a cause on an axle; none where it cannot have it.
    pub fn of(cause: WearCause, axle: &Axle) -> Vec<Variant> {
        let load = |sizes: [f64; 2]| (SizeOf::LogRatio, whole(logs(sizes), stands(Parameter::Load)));
        let (size_of, ways) = match cause {
            WearCause::Normal => load(sizes::LIGHT),
            WearCause::AxleBow => load(sizes::NEAR_RATED),
            WearCause::Overload => load(sizes::OVER),
            WearCause::ThinWall => (SizeOf::LogRatio, whole(logs(sizes::WALL), adds(Parameter::Wall, 1.0))),
            WearCause::LooseSeat => {
                (SizeOf::LogRatio, whole(logs(sizes::SEAT), adds(Parameter::SeatStiffness, 1.0)))
            }
            WearCause::LooseBearings => {
                (SizeOf::Length, ends(sizes::ENDPLAY, |side| stands(Parameter::Endplay(side))))
            }
            WearCause::Outset => (SizeOf::Length, whole(sizes::OUTSET, adds(Parameter::Outset, 1.0))),
            WearCause::Toe => {
                (SizeOf::Angle, either_way(ends(angles(sizes::TOE), |side| adds(Parameter::Toe(side), 1.0))))
            }
            WearCause::Skew => {
                (SizeOf::Angle, either_way(whole(angles(sizes::SKEW), adds(Parameter::Skew, 1.0))))
            }
            WearCause::BuiltInCamber => (
                SizeOf::Angle,
                either_way(ends(angles(sizes::CAMBER), |side| adds(Parameter::Camber(side), 1.0))),
            ),
            WearCause::LowInflation => (SizeOf::LogRatio, low_inflation(axle)),
            WearCause::HighInflation => (SizeOf::LogRatio, vec![all_tires(logs(sizes::HIGH_INFLATION))]),
            WearCause::UnequalDuals if duals(axle) => (SizeOf::Length, unequal_duals()),
            WearCause::UnequalDuals => (SizeOf::Length, Vec::new()),
            WearCause::WornDamper => (
                SizeOf::Nothing,
                vec![Way { place: Whereabouts::Axle, weight: 1.0, sizes: [0.0, 1.0], moves: Vec::new() }],
            ),
            WearCause::Runout => {
                (SizeOf::Length, ends(sizes::RUNOUT, |side| stands(Parameter::Runout(side))))
            }
        };
        let total: f64 = ways.iter().map(|way| way.weight).sum();
        let variant = |way: Way| Variant {
            cause,
            place: way.place,
            share: way.weight / total,
            sizes: way.sizes,
            size_of,
            moves: way.moves,
        };
        ways.into_iter().map(variant).collect()
    }

    /// The state of a sound axle with this cause of a size.
    pub fn state(&self, worn: &WornAxle<'_>, size: f64) -> Vec<f64> {
        let mut state = worn.usual();
        for own in &self.moves {
            if let Some(place) = worn.place(own.parameter) {
                let base = if own.in_place { 0.0 } else { state[place] };
                state[place] = base + own.factor * size;
            }
        }
        state
    }

    /// Whether it drags tires sideways or against each other, so that all else adds to their wear otherwise than on a sound axle.
    pub fn drags(&self) -> bool {
        matches!(self.cause, WearCause::Toe | WearCause::Skew | WearCause::UnequalDuals)
    }

    /// Whether another moves a parameter that this one moves.
    pub fn meets(&self, other: &Variant) -> bool {
        self.moves.iter().any(|own| other.moves.iter().any(|its| its.parameter == own.parameter))
    }

    /// What a unit of size adds to a parameter.
    pub fn factor(&self, parameter: Parameter) -> f64 {
        self.moves.iter().filter(|own| own.parameter == parameter).map(|own| own.factor).sum()
    }

    /// Whether its size stands in place of a parameter's usual spread.
    pub fn replaces(&self, parameter: Parameter) -> bool {
        self.moves.iter().any(|own| own.in_place && own.parameter == parameter)
    }
}
