//! What can make a wheel lean or steer, and an axle without it.

use axlebow_axle::{Axle, AxleError, BearingStiffness, Flexing, Seat, Side, Sides, Wheel, WheelEnd};

/// Factor on the flexibility of what is made rigid: small enough to leave nothing that shows, large enough to solve.
const RIGID: f64 = 1e-4;
/// The same for bearings, whose small span makes them stiff already.
const RIGID_BEARING: f64 = 1e-3;

/// What can make a wheel lean or steer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cause {
    /// Camber and toe as made, unloaded.
    Setting,
    /// Clearance of the wheel bearings.
    Endplay,
    /// Deflection of the wheel bearings, of the hub's flange and of the wheel's disc under load.
    Bearings,
    /// Bending of tube or housing and spindles.
    Bending,
    /// Transverse shear of the same.
    Shear,
    /// Arms, spring packs and bushes that let the axle slope at its seats, against the line through both.
    Seat,
    /// The axle's wall that gives under its seats.
    Wall,
    /// Wheels whose center is not at the hub's mounting face.
    Outset,
}

impl Cause {
    /// All causes, from the wheel inward.
    pub const ALL: [Cause; 8] = [
        Cause::Setting,
        Cause::Endplay,
        Cause::Bearings,
        Cause::Bending,
        Cause::Shear,
        Cause::Seat,
        Cause::Wall,
        Cause::Outset,
    ];

    /// The trade's words.
    pub fn words(self) -> &'static str {
        match self {
            Cause::Setting => "manufactured setting",
            Cause::Endplay => "bearing endplay",
            Cause::Bearings => "wheel-end deflection",
            Cause::Bending => "beam bending",
            Cause::Shear => "beam shear",
            Cause::Seat => "seat",
            Cause::Wall => "wall under the seat",
            Cause::Outset => "wheel outset",
        }
    }

    /// What would remove it.
    pub fn remedy(self) -> &'static str {
        match self {
            Cause::Setting => {
                "have the axle maker or an alignment shop correct the spindle; never bend it with heat"
            }
            Cause::Endplay => {
                "set the bearings by the maker's torque procedure and check 0.025 to 0.127 mm with a dial indicator"
            }
            Cause::Bearings => "larger bearings, a wider span between them, or wheels with a stiffer disc",
            Cause::Bending => {
                "a thicker wall, a larger tube or housing, or a stiffener with the axle maker's approval"
            }
            Cause::Shear => "a thicker wall",
            Cause::Seat => "stiffer arms, spring packs or bushes, or seats nearer to the wheels",
            Cause::Wall => "a wider saddle or bracket, or a thicker wall under it",
            Cause::Outset => "zeroset or inset wheels, or the wheels reversed where the maker allows it",
        }
    }

    /// How well its input is known, which [`varied`](Self::varied) moves it by; judgments without a source but where
    /// one is named.
    pub fn tolerance(self) -> &'static str {
        match self {
            Cause::Setting => "0.1 deg of an alignment reading",
            Cause::Endplay => "0.025 mm of a dial indicator",
            Cause::Bearings => "30 % of the stiffness of bearings and disc",
            Cause::Bending => "10 % of the wall (mill tolerance of welded tube, ASTM A500, from memory)",
            Cause::Shear => "10 % of the wall",
            Cause::Seat => "30 % of the rotational stiffness",
            Cause::Wall => "50 % of the wall's flexibility",
            Cause::Outset => "1 mm of the offset",
        }
    }

    /// Whether an axle has it at all.
    pub fn is_in(self, axle: &Axle) -> bool {
        let any = |of: &dyn Fn(Side) -> bool| Side::BOTH.into_iter().any(of);
        match self {
            Cause::Setting => any(&|side| {
                let end = axle.wheel_ends.of(side);
                end.camber != 0.0 || end.toe != 0.0
            }),
            Cause::Endplay => any(&|side| axle.wheel_ends.of(side).radial_play() > 0.0),
            Cause::Wall => any(&|side| axle.seats.of(side).wall_flexibility > 0.0),
            Cause::Outset => any(&|side| axle.wheels.of(side).outset() != 0.0),
            Cause::Bearings | Cause::Bending | Cause::Shear | Cause::Seat => true,
        }
    }

    /// The axle without it.
    ///
    /// # Errors
    /// Those of a wheel that cannot be.
    pub fn removed(self, axle: &Axle) -> Result<Axle, AxleError> {
        Ok(match self {
            Cause::Setting => ends(axle, |end| WheelEnd { camber: 0.0, toe: 0.0, ..end }),
            Cause::Endplay => ends(axle, |end| WheelEnd { endplay: 0.0, ..end }),
            Cause::Bearings => stiffer_wheel_ends(axle, RIGID_BEARING.recip())?,
            Cause::Bending => flexing(axle, |own| Flexing { bending: own.bending * RIGID, ..own }),
            Cause::Shear => flexing(axle, |own| Flexing { shear: own.shear * RIGID, ..own }),
            Cause::Seat => flexing(axle, |own| Flexing { straight_between_seats: true, ..own }),
            Cause::Wall => seats(axle, |seat| Seat { wall_flexibility: 0.0, ..seat }),
            Cause::Outset => outset(axle, |_| 0.0)?,
        })
    }

    /// The axle with its input off by its tolerance, up or down.
    ///
    /// # Errors
    /// Those of a wheel that cannot be.
    pub fn varied(self, axle: &Axle, up: bool) -> Result<Axle, AxleError> {
        let sign = if up { 1.0 } else { -1.0 };
        let factor = |share: f64| 1.0 + sign * share;
        Ok(match self {
            Cause::Setting => {
                let off = sign * 0.1_f64.to_radians();
                ends(axle, |end| WheelEnd { camber: end.camber + off, toe: end.toe + off, ..end })
            }
            Cause::Endplay => ends(axle, |end| WheelEnd {
                endplay: (end.endplay + sign * 0.025e-3).max(0.0),
                preload: 0.0,
                ..end
            }),
            Cause::Bearings => stiffer_wheel_ends(axle, factor(0.3))?,
            Cause::Bending => flexing(axle, |own| Flexing { bending: own.bending / factor(0.1), ..own }),
            Cause::Shear => flexing(axle, |own| Flexing { shear: own.shear / factor(0.1), ..own }),
            Cause::Seat => seats(axle, |seat| Seat {
                rotational_stiffness: seat.rotational_stiffness * factor(0.3),
                ..seat
            }),
            Cause::Wall => {
                seats(axle, |seat| Seat { wall_flexibility: seat.wall_flexibility * factor(0.5), ..seat })
            }
            Cause::Outset => outset(axle, |own| own + sign * 1e-3)?,
        })
    }
}

/// Bearings, discs and flanges stiffer by a factor.
fn stiffer_wheel_ends(axle: &Axle, factor: f64) -> Result<Axle, AxleError> {
    let stiffer =
        |own: BearingStiffness| BearingStiffness { radial: own.radial * factor, axial: own.axial * factor };
    let axle = ends(axle, |end| WheelEnd {
        inner_stiffness: stiffer(end.inner_stiffness),
        outer_stiffness: stiffer(end.outer_stiffness),
        ..end
    });
    wheels(&axle, |wheel| wheel.with_disc_flexibility(wheel.disc_flexibility() / factor))
}

fn ends(axle: &Axle, change: impl Fn(WheelEnd) -> WheelEnd) -> Axle {
    let wheel_ends = Sides::each(|side| change(*axle.wheel_ends.of(side)));
    Axle { wheel_ends, ..axle.clone() }
}

fn seats(axle: &Axle, change: impl Fn(Seat) -> Seat) -> Axle {
    Axle { seats: Sides::each(|side| change(*axle.seats.of(side))), ..axle.clone() }
}

fn flexing(axle: &Axle, change: impl Fn(Flexing) -> Flexing) -> Axle {
    let own = axle.body.flexing();
    Axle { body: axle.body.clone().with_flexing(change(own)), ..axle.clone() }
}

fn outset(axle: &Axle, change: impl Fn(f64) -> f64) -> Result<Axle, AxleError> {
    wheels(axle, |wheel| wheel.with_outset(change(wheel.outset())))
}

fn wheels(axle: &Axle, change: impl Fn(Wheel) -> Result<Wheel, AxleError>) -> Result<Axle, AxleError> {
    let (left, right) = (change(axle.wheels.left)?, change(axle.wheels.right)?);
    Ok(Axle { wheels: Sides { left, right }, ..axle.clone() })
}
