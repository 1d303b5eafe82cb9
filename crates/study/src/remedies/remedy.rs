//! What may be done about an axle whose tires wear.

use super::own::OwnRemedy;

/// A remedy that every shop knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standard {
    /// The wheel bearings set within the endplay that TMC RP 618 accepts.
    SetBearings,
    /// Wheels with an outset turned round on their hubs.
    ReverseWheels,
    /// Wheels without an outset.
    ZerosetWheels,
    /// Toe set straight.
    CorrectToe,
    /// Every tire at its rated inflation.
    SetInflation,
    /// Duals of one radius.
    MatchDuals,
    /// The axle set square in the vehicle.
    SquareAxle,
    /// Camber built into the spindles that the load takes out again.
    BuiltInCamber,
    /// A tire with more tread.
    DeeperTread,
    /// Dampers half as strong again; over a road only.
    StrongerDampers,
    /// A heavier wall of tube or housing.
    HeavierWall,
    /// A larger tube of the same wall.
    LargerTube,
    /// An angle along the top, from seat to seat.
    TopAngle(StockAngle),
}

/// A stock angle, mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StockAngle {
    /// 50 × 50 × 5.
    Light,
    /// 75 × 75 × 8.
    Middle,
    /// 100 × 100 × 10.
    Heavy,
}

impl StockAngle {
    /// Its standard size.
    pub fn size(self) -> &'static str {
        match self {
            StockAngle::Light => "L50x50x5",
            StockAngle::Middle => "L75x75x8",
            StockAngle::Heavy => "L100x100x10",
        }
    }

    /// Leg of its fillet welds, mm: under the thickness of its legs (a judgment, no source).
    pub(super) fn weld_leg(self) -> u32 {
        match self {
            StockAngle::Light => 4,
            StockAngle::Middle => 6,
            StockAngle::Heavy => 8,
        }
    }
}

impl Standard {
    /// All of them.
    pub const ALL: [Standard; 15] = [
        Standard::SetBearings,
        Standard::ReverseWheels,
        Standard::ZerosetWheels,
        Standard::CorrectToe,
        Standard::SetInflation,
        Standard::MatchDuals,
        Standard::SquareAxle,
        Standard::BuiltInCamber,
        Standard::DeeperTread,
        Standard::StrongerDampers,
        Standard::HeavierWall,
        Standard::LargerTube,
        Standard::TopAngle(StockAngle::Light),
        Standard::TopAngle(StockAngle::Middle),
        Standard::TopAngle(StockAngle::Heavy),
    ];

    /// Whether both cannot be done to one axle, or change the same thing twice.
    fn excludes(self, other: Standard) -> bool {
        let of_wheels = |own| matches!(own, Standard::ReverseWheels | Standard::ZerosetWheels);
        let of_axle =
            |own| matches!(own, Standard::HeavierWall | Standard::LargerTube | Standard::TopAngle(_));
        self == other || (of_wheels(self) && of_wheels(other)) || (of_axle(self) && of_axle(other))
    }
}

/// What is done to an axle.
#[derive(Debug, Clone, PartialEq)]
pub enum Remedy {
    /// A remedy that every shop knows.
    Standard(Standard),
    /// One of the user's own.
    Own(OwnRemedy),
    /// Two together.
    Pair(Box<[Remedy; 2]>),
}

/// Who does a remedy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DoneBy {
    /// A shop, on the axle as it is.
    Shop,
    /// Other wheels or tires on the axle as it is.
    Wheels,
    /// A welder.
    Welding,
    /// The axle's maker: another axle.
    AnotherAxle,
    /// As the user says.
    Own,
}

impl Standard {
    fn done_by(self) -> DoneBy {
        match self {
            Standard::SetInflation | Standard::SquareAxle => DoneBy::Shop,
            Standard::SetBearings
            | Standard::CorrectToe
            | Standard::StrongerDampers
            | Standard::ReverseWheels => DoneBy::Shop,
            Standard::ZerosetWheels | Standard::MatchDuals | Standard::DeeperTread => DoneBy::Wheels,
            Standard::TopAngle(_) => DoneBy::Welding,
            Standard::BuiltInCamber | Standard::HeavierWall | Standard::LargerTube => DoneBy::AnotherAxle,
        }
    }
}

impl Remedy {
    /// Who does it; of a pair the one who has more to do.
    pub fn done_by(&self) -> DoneBy {
        match self {
            Remedy::Standard(own) => own.done_by(),
            Remedy::Own(_) => DoneBy::Own,
            Remedy::Pair(both) => both[0].done_by().max(both[1].done_by()),
        }
    }

    /// Its parts: itself, or the two of a pair.
    pub fn parts(&self) -> &[Remedy] {
        match self {
            Remedy::Pair(both) => &**both,
            one => std::slice::from_ref(one),
        }
    }

    /// Whether other tires come with it, whose price no one has said.
    pub(super) fn is_another_tire(&self) -> bool {
        self.parts().contains(&Remedy::Standard(Standard::DeeperTread))
    }

    /// Whether both together make sense.
    pub(super) fn goes_with(&self, other: &Remedy) -> bool {
        match (self, other) {
            (Remedy::Standard(own), Remedy::Standard(other)) => !own.excludes(*other),
            (own, other) => own != other,
        }
    }
}
