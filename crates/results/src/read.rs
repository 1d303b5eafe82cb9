//! How an outcome gives a result.

use serde_json::Value;

use crate::Shape;

/// A way to a result of a `T`.
pub trait Read<T>: Sync {
    /// The result as JSON.
    fn json(&self, of: &T) -> Value;

    /// The JSON Schema of such results.
    fn schema(&self) -> Value;

    /// The result as one number; none of a word, a list, a record, or where there is none.
    fn number(&self, of: &T) -> Option<f64>;
}

/// A result that is made when it is asked for.
pub struct Own<T, S>(pub fn(&T) -> S);

/// A result that is a part of the outcome.
pub struct Part<T, S>(pub for<'t> fn(&'t T) -> &'t S);

/// A word or sentence of the outcome.
pub struct Text<T>(pub for<'t> fn(&'t T) -> &'t str);

impl<T, S: Shape> Read<T> for Own<T, S> {
    fn json(&self, of: &T) -> Value {
        (self.0)(of).json()
    }

    fn schema(&self) -> Value {
        S::schema()
    }

    fn number(&self, of: &T) -> Option<f64> {
        (self.0)(of).number()
    }
}

impl<T, S: Shape> Read<T> for Part<T, S> {
    fn json(&self, of: &T) -> Value {
        (self.0)(of).json()
    }

    fn schema(&self) -> Value {
        S::schema()
    }

    fn number(&self, of: &T) -> Option<f64> {
        (self.0)(of).number()
    }
}

impl<T> Read<T> for Text<T> {
    fn json(&self, of: &T) -> Value {
        (self.0)(of).into()
    }

    fn schema(&self) -> Value {
        String::schema()
    }

    fn number(&self, _: &T) -> Option<f64> {
        None
    }
}
