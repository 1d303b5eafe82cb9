//! What each input does to the net present value, and where it would make it zero.

use axlebow_numerics::nearest_zero;

use super::study::{PaybackRange, PaybackStudy};
use super::terms::PaybackInput;
use super::wear::AxleChange;

/// Shares of a range between which an input swings.
const ENDS: [f64; 2] = [0.05, 0.95];
/// How far an input swings that has no range.
const TENTH: f64 = 0.1;

/// The value of an input at which nothing is gained or lost, the others as they are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BreakEven {
    /// The input.
    pub input: PaybackInput,
    /// Its value in the file.
    pub value: f64,
    /// Where the net present value is zero, the nearest; none where no value of it does that.
    pub at: Option<f64>,
}

/// What the low and the high value of an input do, the others as they are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swing {
    /// The input.
    pub input: PaybackInput,
    /// Its low and its high value: between them 90 % of its range, or a tenth to each side where it has none.
    pub ends: [f64; 2],
    /// The net present value with each.
    pub worth: [f64; 2],
    /// Whether the file gives it a range.
    pub has_range: bool,
}

impl Swing {
    /// How far the net present value moves.
    pub fn width(&self) -> f64 {
        (self.worth[1] - self.worth[0]).abs()
    }
}

impl PaybackStudy {
    /// The break-even of every input that the file gives.
    pub(crate) fn break_even(&self, change: &AxleChange) -> Vec<BreakEven> {
        let one = |input: &PaybackInput| {
            let value = self.terms.value(*input);
            let worth = |value: f64| self.terms.with(*input, value).net_present_value(change);
            BreakEven { input: *input, value, at: nearest_zero(worth, value, input.reach(value)) }
        };
        self.inputs.iter().map(one).collect()
    }

    /// The swing of every input that the file gives, those with a range first, the widest of each first.
    pub(crate) fn swings(&self, change: &AxleChange) -> Vec<Swing> {
        let one = |input: &PaybackInput| {
            let (value, range) = (self.terms.value(*input), self.range(*input));
            let ends = match range {
                Some(range) => ENDS.map(|share| range.distribution.quantile(share)),
                None => [value * (1.0 - TENTH), input.reach(value)[1].min(value * (1.0 + TENTH))],
            };
            let worth = ends.map(|end| self.terms.with(*input, end).net_present_value(change));
            Swing { input: *input, ends, worth, has_range: range.is_some() }
        };
        let mut swings: Vec<Swing> = self.inputs.iter().map(one).collect();
        swings.sort_by(|one, other| {
            other.has_range.cmp(&one.has_range).then(other.width().total_cmp(&one.width()))
        });
        swings
    }

    fn range(&self, input: PaybackInput) -> Option<&PaybackRange> {
        self.ranges.iter().find(|range| range.input == input)
    }
}
