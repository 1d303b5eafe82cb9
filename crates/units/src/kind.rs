//! What a quantity measures.

use crate::Dimension;

/// What a quantity measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Length, m.
    Length,
    /// Area, m².
    Area,
    /// Second moment of area, m⁴.
    SecondMoment,
    /// Section modulus, m³.
    SectionModulus,
    /// Mass, kg.
    Mass,
    /// Mass per length, kg/m.
    MassPerLength,
    /// Density, kg/m³.
    Density,
    /// Force, N.
    Force,
    /// Moment, N m.
    Moment,
    /// Stress or modulus of elasticity, Pa.
    Stress,
    /// Stiffness, N/m.
    Stiffness,
    /// Rotational stiffness, N m/rad.
    RotationalStiffness,
    /// Rotational flexibility, rad/(N m).
    RotationalFlexibility,
    /// Damping, N s/m.
    Damping,
    /// Rotational damping, N m s/rad.
    RotationalDamping,
    /// Plane angle, rad.
    Angle,
    /// Angle per mass, rad/kg.
    AnglePerMass,
    /// Volume worn off by energy, m³/(N m).
    Abrasion,
    /// Speed, m/s.
    Speed,
    /// Acceleration, m/s².
    Acceleration,
    /// Frequency, Hz.
    Frequency,
    /// Time, s.
    Time,
    /// Plain number, 1.
    Ratio,
}

impl Kind {
    /// Every kind, in the order of declaration.
    pub const ALL: [Self; 23] = [
        Self::Length,
        Self::Area,
        Self::SecondMoment,
        Self::SectionModulus,
        Self::Mass,
        Self::MassPerLength,
        Self::Density,
        Self::Force,
        Self::Moment,
        Self::Stress,
        Self::Stiffness,
        Self::RotationalStiffness,
        Self::RotationalFlexibility,
        Self::Damping,
        Self::RotationalDamping,
        Self::Angle,
        Self::AnglePerMass,
        Self::Abrasion,
        Self::Speed,
        Self::Acceleration,
        Self::Frequency,
        Self::Time,
        Self::Ratio,
    ];

    /// The name in lower case, as in "length is wanted".
    pub const fn name(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Area => "area",
            Self::SecondMoment => "second moment of area",
            Self::SectionModulus => "section modulus",
            Self::Mass => "mass",
            Self::MassPerLength => "mass per length",
            Self::Density => "density",
            Self::Force => "force",
            Self::Moment => "moment",
            Self::Stress => "stress",
            Self::Stiffness => "stiffness",
            Self::RotationalStiffness => "rotational stiffness",
            Self::RotationalFlexibility => "rotational flexibility",
            Self::Damping => "damping",
            Self::RotationalDamping => "rotational damping",
            Self::Angle => "angle",
            Self::AnglePerMass => "angle per mass",
            Self::Abrasion => "abrasion",
            Self::Speed => "speed",
            Self::Acceleration => "acceleration",
            Self::Frequency => "frequency",
            Self::Time => "time",
            Self::Ratio => "plain number",
        }
    }

    /// Example units, most usual first; any expression of the same dimension is accepted too.
    pub const fn accepted(self) -> &'static [&'static str] {
        match self {
            Self::Length => &["mm", "m", "in", "ft"],
            Self::Area => &["mm2", "m2", "in2"],
            Self::SecondMoment => &["mm4", "cm4", "in4"],
            Self::SectionModulus => &["mm3", "cm3", "in3"],
            Self::Mass => &["kg", "t", "lb"],
            Self::MassPerLength => &["kg/m", "lb/ft", "lb/in"],
            Self::Density => &["kg/m3", "lb/in3"],
            Self::Force => &["kN", "N", "lbf", "kip"],
            Self::Moment => &["kN m", "N m", "lbf ft", "lbf in"],
            Self::Stress => &["MPa", "GPa", "ksi", "psi"],
            Self::Stiffness => &["N/mm", "kN/m", "lbf/in"],
            Self::RotationalStiffness => &["kN m/rad", "N m/rad", "lbf ft/deg", "lbf in/rad"],
            Self::RotationalFlexibility => &["rad/(kN m)", "mrad/(kN m)", "deg/(lbf ft)"],
            Self::Damping => &["N s/m", "kN s/m", "lbf s/in"],
            Self::RotationalDamping => &["kN m s/rad", "N m s/rad", "lbf ft s/deg"],
            Self::Angle => &["deg", "mrad", "rad"],
            Self::AnglePerMass => &["deg/kg", "mrad/kg", "deg/lb"],
            Self::Abrasion => &["mm3/(N m)", "in3/(lbf ft)"],
            Self::Speed => &["km/h", "m/s", "mph", "ft/s"],
            Self::Acceleration => &["m/s2", "gn", "ft/s2"],
            Self::Frequency => &["Hz", "kHz"],
            Self::Time => &["s", "ms", "min", "h"],
            Self::Ratio => &["%"],
        }
    }

    /// The coherent SI unit, in which values are kept; empty for a plain number.
    pub const fn si(self) -> &'static str {
        match self {
            Self::Length => "m",
            Self::Area => "m2",
            Self::SecondMoment => "m4",
            Self::SectionModulus => "m3",
            Self::Mass => "kg",
            Self::MassPerLength => "kg/m",
            Self::Density => "kg/m3",
            Self::Force => "N",
            Self::Moment => "N m",
            Self::Stress => "Pa",
            Self::Stiffness => "N/m",
            Self::RotationalStiffness => "N m/rad",
            Self::RotationalFlexibility => "rad/(N m)",
            Self::Damping => "N s/m",
            Self::RotationalDamping => "N m s/rad",
            Self::Angle => "rad",
            Self::AnglePerMass => "rad/kg",
            Self::Abrasion => "m3/(N m)",
            Self::Speed => "m/s",
            Self::Acceleration => "m/s2",
            Self::Frequency => "Hz",
            Self::Time => "s",
            Self::Ratio => "",
        }
    }

    /// Exponents of length, mass, time and angle.
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Length => Dimension::new(1, 0, 0, 0),
            Self::Area => Dimension::new(2, 0, 0, 0),
            Self::SecondMoment => Dimension::new(4, 0, 0, 0),
            Self::SectionModulus => Dimension::new(3, 0, 0, 0),
            Self::Mass => Dimension::new(0, 1, 0, 0),
            Self::MassPerLength => Dimension::new(-1, 1, 0, 0),
            Self::Density => Dimension::new(-3, 1, 0, 0),
            Self::Force => Dimension::new(1, 1, -2, 0),
            Self::Moment => Dimension::new(2, 1, -2, 0),
            Self::Stress => Dimension::new(-1, 1, -2, 0),
            Self::Stiffness => Dimension::new(0, 1, -2, 0),
            Self::RotationalStiffness => Dimension::new(2, 1, -2, -1),
            Self::RotationalFlexibility => Dimension::new(-2, -1, 2, 1),
            Self::Damping => Dimension::new(0, 1, -1, 0),
            Self::RotationalDamping => Dimension::new(2, 1, -1, -1),
            Self::Angle => Dimension::new(0, 0, 0, 1),
            Self::AnglePerMass => Dimension::new(0, -1, 0, 1),
            Self::Abrasion => Dimension::new(1, -1, 2, 0),
            Self::Speed => Dimension::new(1, 0, -1, 0),
            Self::Acceleration => Dimension::new(1, 0, -2, 0),
            Self::Frequency => Dimension::new(0, 0, -1, 0),
            Self::Time => Dimension::new(0, 0, 1, 0),
            Self::Ratio => Dimension::NONE,
        }
    }

    /// The kind that has a given dimension, if there is one; no two kinds share a dimension.
    pub fn of(dimension: Dimension) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.dimension() == dimension)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coherent_unit_is_one() {
        for kind in Kind::ALL {
            assert_eq!(crate::parse(&format!("1 {}", kind.si()), kind).unwrap().value, 1.0);
        }
    }

    #[test]
    fn no_two_kinds_share_a_dimension() {
        for kind in Kind::ALL {
            assert_eq!(Kind::of(kind.dimension()), Some(kind));
        }
    }
}
