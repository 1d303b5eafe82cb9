//! The questions of a guided start.

/// What a guided start asks, in this order: what the axle is, then what a tape measure gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum GuidedQuestion {
    /// Trailer or drive axle.
    AxleKind,
    /// Dual, wide-base or single tires, or the size on the sidewall.
    Tires,
    /// How far the middle of the wheel's tires lies outboard of its mounting face.
    WheelOffset,
    /// Distance between the middles of the left and the right tires.
    TireMiddles,
    /// Distance between the middles of the spring seats.
    SpringSeats,
    /// Outside size of tube or housing.
    OutsideSize,
    /// Wall thickness.
    Wall,
    /// Load on the axle.
    AxleLoad,
}

impl GuidedQuestion {
    /// All of them, in the order in which they are asked.
    pub const ALL: [GuidedQuestion; 8] = [
        GuidedQuestion::AxleKind,
        GuidedQuestion::Tires,
        GuidedQuestion::WheelOffset,
        GuidedQuestion::TireMiddles,
        GuidedQuestion::SpringSeats,
        GuidedQuestion::OutsideSize,
        GuidedQuestion::Wall,
        GuidedQuestion::AxleLoad,
    ];
}
