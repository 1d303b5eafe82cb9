//! What about an axle decides how its tires wear, and how far it is from usual on a sound one.

use axlebow_axle::{Axle, Side, TireSlot};

/// Mean of the endplay that TMC RP 618 accepts, 0.025 to 0.127 mm, m.
const USUAL_ENDPLAY: f64 = 0.076e-3;
/// Radial runout of a sound tire and wheel, m (common practice, no source).
const USUAL_RUNOUT: f64 = 0.7e-3;
/// Mean load of a sound axle over its rating: it runs empty at times (invented).
const USUAL_LOAD: f64 = 0.75;

/// What about an axle decides how its tires wear; each is how far it is from the axle's file unless said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Parameter {
    /// Logarithm of the mean load over the rated one.
    Load,
    /// Logarithm of the side forces that driving asks for over those of the duty.
    SideForces,
    /// Logarithm of the forces along the road over those of the duty.
    ForwardForces,
    /// Crown of the tread, m.
    Crown,
    /// Share of the load that sidewalls carry.
    SidewallShare,
    /// Logarithm of the tread's shear modulus over that of the file.
    ShearModulus,
    /// Share of the lateral compliance that is tilt.
    TiltShare,
    /// Logarithm of the seats' rotational stiffness over that of the file.
    SeatStiffness,
    /// Logarithm of the wall over that of the file.
    Wall,
    /// Outset of the wheels, m.
    Outset,
    /// Skew of the axle, rad.
    Skew,
    /// Logarithm of the inflation of all tires over that of the file.
    Inflation,
    /// Camber as made, rad.
    Camber(Side),
    /// Toe as set, rad.
    Toe(Side),
    /// Endplay itself, m.
    Endplay(Side),
    /// Radial runout itself, m.
    Runout(Side),
    /// Radius of the outer tire of a dual less that of the inner one, m.
    OuterLessInner(Side),
    /// Logarithm of one tire's inflation over that of all.
    TireInflation(Side, TireSlot),
}

impl Parameter {
    /// The parameters of an axle.
    pub fn of(axle: &Axle) -> Vec<Parameter> {
        use Parameter::*;
        let mut all = vec![
            Load,
            SideForces,
            ForwardForces,
            Crown,
            SidewallShare,
            ShearModulus,
            TiltShare,
            SeatStiffness,
            Wall,
            Outset,
            Skew,
            Inflation,
        ];
        for side in Side::BOTH {
            all.extend([Camber(side), Toe(side), Endplay(side), Runout(side)]);
            let tires: Vec<TireSlot> = axle.wheels.of(side).tires().map(|place| place.slot).collect();
            if tires.len() == 2 {
                all.push(OuterLessInner(side));
            }
            all.extend(tires.into_iter().map(|slot| TireInflation(side, slot)));
        }
        all
    }

    /// Its value on a sound axle.
    pub fn usual(self, axle: &Axle) -> f64 {
        match self {
            Parameter::Load => USUAL_LOAD.ln(),
            Parameter::Endplay(side) => axle.wheel_ends.of(side).endplay.max(USUAL_ENDPLAY),
            Parameter::Runout(_) => USUAL_RUNOUT,
            _ => 0.0,
        }
    }

    /// Standard deviation of that value over sound axles and over tires that the file does not know well: judgments without a
    /// source but for the endplay, whose accepted range is two standard deviations to each side.
    pub fn spread(self) -> f64 {
        match self {
            Parameter::Load => 0.2,
            Parameter::SideForces | Parameter::ForwardForces => 0.4,
            Parameter::Crown => 0.7e-3,
            Parameter::SidewallShare => 0.05,
            Parameter::ShearModulus => 0.25,
            Parameter::TiltShare => 0.2,
            Parameter::SeatStiffness => 0.3,
            Parameter::Wall => 0.04,
            Parameter::Outset => 2e-3,
            Parameter::Skew => 0.05_f64.to_radians(),
            Parameter::Inflation => 0.04,
            Parameter::Camber(_) => 0.1_f64.to_radians(),
            Parameter::Toe(_) => 0.05_f64.to_radians(),
            Parameter::Endplay(_) => 0.026e-3,
            Parameter::Runout(_) => 0.3e-3,
            Parameter::OuterLessInner(_) => 1e-3,
            Parameter::TireInflation(..) => 0.03,
        }
    }
}
