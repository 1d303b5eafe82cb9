//! Shapes that are welded to an axle.

mod angle;
mod channel;
mod flat;
mod half_pipe;
mod midlines;
mod tee;

pub use angle::Angle;
pub use channel::Channel;
pub use flat::Flat;
pub use half_pipe::HalfPipe;
pub use midlines::Midlines;
pub use tee::Tee;

use crate::error::accepted_length;
use crate::{Outline, SectionError};

/// A shape that may be welded to an axle; where its origin lies is said with each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// A flat bar.
    Flat(Flat),
    /// An angle.
    Angle(Angle),
    /// A channel.
    Channel(Channel),
    /// A tee.
    Tee(Tee),
    /// Half of a round tube.
    HalfPipe(HalfPipe),
}

impl Shape {
    /// What the shape is called in messages.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Flat(_) => "flat",
            Self::Angle(_) => "angle",
            Self::Channel(_) => "channel",
            Self::Tee(_) => "tee",
            Self::HalfPipe(_) => "half pipe",
        }
    }

    /// Its edges.
    ///
    /// Errors: as the shape's own `outline`.
    pub fn outline(&self) -> Result<Outline, SectionError> {
        match self {
            Self::Flat(flat) => flat.outline(),
            Self::Angle(angle) => angle.outline(),
            Self::Channel(channel) => channel.outline(),
            Self::Tee(tee) => tee.outline(),
            Self::HalfPipe(pipe) => pipe.outline(),
        }
    }
}

/// Passes a thickness through if it is a length that leaves room.
fn accepted_thickness(
    thing: &'static str,
    value: f64,
    limit: f64,
    limited_by: &'static str,
) -> Result<f64, SectionError> {
    let value = accepted_length(thing, value)?;
    if value < limit {
        Ok(value)
    } else {
        Err(SectionError::ShapeThickness { thing, value, limit, limited_by })
    }
}
