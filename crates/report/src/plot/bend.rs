//! The bend of the axle relative to the line through its hubs.

use axlebow_axle::{CaseOutcome, DiagramPoint, Side, Sides};

use crate::panels::round_down;

/// Tilt of a tire that is easily seen, rad.
pub(crate) const CLEAR_TILT: f64 = 0.14;
/// Bow, over the distance between the hubs, that is easily seen.
pub(crate) const CLEAR_BOW: f64 = 0.06;
/// Bends below these are round-off, rad and share of the distance between the hubs.
const NOTHING: f64 = 1e-9;

/// The bend of the axle relative to the line through its hubs.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bend<'a> {
    case: &'a CaseOutcome,
    hubs: Sides<f64>,
    hub_heights: Sides<f64>,
}

impl<'a> Bend<'a> {
    /// The bend of a case whose diagram runs from left to right.
    pub fn new(case: &'a CaseOutcome, hubs: Sides<f64>) -> Self {
        let hub_heights = Sides::each(|side| level(&case.diagram, *hubs.of(side)));
        Self { case, hubs, hub_heights }
    }

    /// Height of the axle line above the line through the hubs, m.
    pub fn height(&self, y: f64) -> f64 {
        let Sides { left, right } = self.hub_heights;
        let span = self.hubs.left - self.hubs.right;
        let share = if span == 0.0 { 0.0 } else { (self.hubs.left - y) / span };
        level(&self.case.diagram, y) - (left + share * (right - left))
    }

    /// The round number (1, 2 or 5 times a power of ten, at least 1) by which bow and tilt are easy to see.
    pub fn exaggeration(&self) -> f64 {
        let span = (self.hubs.left - self.hubs.right).abs();
        let tilts = Side::BOTH.map(|side| self.case.wheels.of(side).camber_change.abs());
        let tilt = tilts[0].max(tilts[1]);
        let bow = self.case.diagram.iter().map(|point| self.height(point.y).abs()).fold(0.0, f64::max);
        let tilt_factor = if tilt > NOTHING { CLEAR_TILT / tilt } else { f64::INFINITY };
        let bow_factor = if bow > NOTHING * span { CLEAR_BOW * span / bow } else { f64::INFINITY };
        let factor = tilt_factor.min(bow_factor);
        if factor.is_finite() { round_down(factor).max(1.0) } else { 1.0 }
    }
}

/// Height of the drawn line at a place, between its points; that of the end beyond the ends.
fn level(diagram: &[DiagramPoint], y: f64) -> f64 {
    let after = diagram.partition_point(|point| point.y > y);
    let (Some(next), Some(last)) =
        (diagram.get(after).or(diagram.last()), diagram.get(after.saturating_sub(1)))
    else {
        return 0.0;
    };
    let run = last.y - next.y;
    if run > 0.0 { last.uz + (last.y - y) / run * (next.uz - last.uz) } else { next.uz }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn levels_are_interpolated_and_held_beyond_the_ends() {
        let point = |y, uz| DiagramPoint { y, uz, ..DiagramPoint::default() };
        let line = [point(1.0, 2.0), point(0.0, 4.0), point(0.0, 4.0), point(-1.0, 0.0)];
        for (y, expected) in
            [(2.0, 2.0), (1.0, 2.0), (0.5, 3.0), (0.0, 4.0), (-0.5, 2.0), (-1.0, 0.0), (-3.0, 0.0)]
        {
            assert_eq!(level(&line, y), expected, "at {y}");
        }
        assert_eq!(level(&[], 0.0), 0.0);
    }
}
