//! Further results by expressions.

use axlebow_numerics::Expression;
use axlebow_units::Kind;

use super::named::Named;

/// A further result of every design, by an expression of others and of the varied keys.
#[derive(Debug, Clone, PartialEq)]
pub struct Derived {
    /// What it is called, such as `camber-per-mass`.
    pub name: String,
    /// What it measures.
    pub kind: Kind,
    /// Its value, SI.
    pub expression: Expression,
    /// What the names in the expression stand for: the place of each among the expression's names.
    pub(crate) uses: Vec<(usize, Named)>,
}

impl Derived {
    /// Its value, SI; NaN where it has none.
    ///
    /// Arguments: `numbers` of what it uses, in that order.
    pub(crate) fn value(&self, numbers: impl Iterator<Item = f64>) -> f64 {
        let width = self.uses.last().map_or(0, |(place, _)| place + 1);
        let mut values = vec![f64::NAN; width];
        for ((place, _), number) in self.uses.iter().zip(numbers) {
            values[*place] = number;
        }
        let value = self.expression.value(&values);
        if value.is_finite() { value } else { f64::NAN }
    }
}
