//! What the road does under the two wheels.

use crate::Sides;

/// What the road does under the two wheels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Input {
    /// Both rise alike.
    Both,
    /// Only the left one rises.
    Left,
    /// Only the right one rises.
    Right,
    /// The left one rises as far as the right one falls.
    Opposed,
}

impl Input {
    /// How far the road rises under each wheel.
    pub(crate) fn rise(self) -> Sides<f64> {
        let (left, right) = match self {
            Input::Both => (1.0, 1.0),
            Input::Left => (1.0, 0.0),
            Input::Right => (0.0, 1.0),
            Input::Opposed => (1.0, -1.0),
        };
        Sides { left, right }
    }
}
