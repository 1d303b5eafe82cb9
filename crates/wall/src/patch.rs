//! A patch of wall that is welded to, or pressed by, something stiff.

use crate::WallError;
use crate::mid_line::MidLine;

/// A rectangle on the developed wall: so broad round it, so long along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// What lies on it, for messages.
    pub name: &'static str,
    /// Clock position of its middle, from the top toward the front, as a share of the way round.
    pub clock: f64,
    /// Breadth round the middle line of the wall, m.
    pub breadth: f64,
    /// From and to along the axle, from the seat's center, m.
    pub along: [f64; 2],
}

impl Patch {
    /// Edges round the middle line, m from the middle of the top; the second may lie past the whole length.
    pub(crate) fn edges(&self, line: &MidLine) -> [f64; 2] {
        let first = (self.clock * line.length() - 0.5 * self.breadth).rem_euclid(line.length());
        [first, first + self.breadth]
    }

    /// Whether a point of the wall lies on it.
    pub(crate) fn holds(&self, line: &MidLine, round: f64, along: f64) -> bool {
        let near = 1e-9 * line.length();
        let past = (round - self.edges(line)[0] + near).rem_euclid(line.length());
        past <= self.breadth + 2.0 * near && (self.along[0] - near..=self.along[1] + near).contains(&along)
    }

    /// What is wrong with it on a piece of tube of the given half-length.
    pub(crate) fn check(&self, line: &MidLine, half_length: f64) -> Result<(), WallError> {
        crate::error::positive("breadth of a patch of the wall", self.breadth, "m")?;
        crate::error::positive("length of a patch of the wall", self.along[1] - self.along[0], "m")?;
        if self.breadth > line.length() {
            let (breadth, room) = (self.breadth, line.length());
            return Err(WallError::PatchTooBroad { patch: self.name, breadth, room });
        }
        let reach = self.along[1].max(-self.along[0]);
        if reach >= half_length {
            return Err(WallError::PatchTooLong { patch: self.name, reach, room: half_length });
        }
        Ok(())
    }

    /// Refuses patches that overlap.
    pub(crate) fn check_apart(&self, other: &Patch, line: &MidLine) -> Result<(), WallError> {
        if self.along[0] >= other.along[1] || other.along[0] >= self.along[1] {
            return Ok(());
        }
        let between = ((self.clock - other.clock).rem_euclid(1.0) - 0.5).abs();
        let middles = (0.5 - between) * line.length();
        let by = 0.5 * (self.breadth + other.breadth) - middles;
        if by > 0.0 {
            return Err(WallError::PatchesOverlap { one: self.name, other: other.name, by });
        }
        Ok(())
    }
}
