//! Exponents of the base quantities.

/// Exponents of length, mass, time and angle; all zero for a plain number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Dimension {
    /// Exponent of length, m.
    pub length: i32,
    /// Exponent of mass, kg.
    pub mass: i32,
    /// Exponent of time, s.
    pub time: i32,
    /// Exponent of plane angle, rad.
    pub angle: i32,
}

impl Dimension {
    /// The dimension of a plain number.
    pub const NONE: Self = Self::new(0, 0, 0, 0);

    /// The dimension with the given exponents of length, mass, time and angle.
    pub const fn new(length: i32, mass: i32, time: i32, angle: i32) -> Self {
        Self { length, mass, time, angle }
    }

    /// The dimension of `self · other^power`; exponents saturate.
    pub const fn times(self, other: Self, power: i32) -> Self {
        Self {
            length: self.length.saturating_add(other.length.saturating_mul(power)),
            mass: self.mass.saturating_add(other.mass.saturating_mul(power)),
            time: self.time.saturating_add(other.time.saturating_mul(power)),
            angle: self.angle.saturating_add(other.angle.saturating_mul(power)),
        }
    }
}
