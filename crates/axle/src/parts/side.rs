//! Left and right of the vehicle.

/// A side of the vehicle, seen in the direction of travel; left is +Y (ISO 8855).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// +Y.
    Left,
    /// −Y.
    Right,
}

impl Side {
    /// Both sides, left first.
    pub const BOTH: [Side; 2] = [Side::Left, Side::Right];

    /// The trade's word: `left` or `right`.
    pub fn word(self) -> &'static str {
        match self {
            Side::Left => "left",
            Side::Right => "right",
        }
    }

    /// +1 on the left, −1 on the right: turns "outboard" into the sign of Y.
    pub fn sign(self) -> f64 {
        match self {
            Side::Left => 1.0,
            Side::Right => -1.0,
        }
    }
}

/// One value for each side.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sides<T> {
    /// Value of the left side.
    pub left: T,
    /// Value of the right side.
    pub right: T,
}

impl Sides<f64> {
    /// The value of larger magnitude; of two alike the left one.
    ///
    /// ```
    /// # use axlebow_axle::Sides;
    /// assert_eq!(Sides { left: 0.2, right: -0.3 }.of_larger_magnitude(), -0.3);
    /// assert_eq!(Sides { left: -0.3, right: 0.3 }.of_larger_magnitude(), -0.3);
    /// ```
    pub fn of_larger_magnitude(&self) -> f64 {
        if self.right.abs() > self.left.abs() { self.right } else { self.left }
    }
}

impl<T> Sides<T> {
    /// Makes each side's value in turn.
    pub fn each(mut make: impl FnMut(Side) -> T) -> Self {
        Sides { left: make(Side::Left), right: make(Side::Right) }
    }

    /// The value of one side.
    pub fn of(&self, side: Side) -> &T {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// The value of one side, to change.
    pub fn of_mut(&mut self, side: Side) -> &mut T {
        match side {
            Side::Left => &mut self.left,
            Side::Right => &mut self.right,
        }
    }
}
