//! What a result may be: a number, a word, a flag, a list, a record, or nothing.

use serde_json::{Value, json as value};

/// What a result may be.
pub trait Shape {
    /// The result as JSON; a number that is not finite is null.
    fn json(&self) -> Value;

    /// Its JSON Schema.
    fn schema() -> Value;

    /// The result as one number; none of a word, a list, a record, or where there is none.
    fn number(&self) -> Option<f64> {
        None
    }
}

impl Shape for f64 {
    fn json(&self) -> Value {
        (*self).into()
    }

    fn schema() -> Value {
        value!({ "type": "number" })
    }

    fn number(&self) -> Option<f64> {
        Some(*self)
    }
}

impl Shape for usize {
    fn json(&self) -> Value {
        (*self).into()
    }

    fn schema() -> Value {
        value!({ "type": "integer", "minimum": 0 })
    }

    fn number(&self) -> Option<f64> {
        Some(*self as f64)
    }
}

impl Shape for bool {
    fn json(&self) -> Value {
        (*self).into()
    }

    fn schema() -> Value {
        value!({ "type": "boolean" })
    }
}

impl Shape for &'static str {
    fn json(&self) -> Value {
        (*self).into()
    }

    fn schema() -> Value {
        String::schema()
    }
}

impl Shape for String {
    fn json(&self) -> Value {
        self.as_str().into()
    }

    fn schema() -> Value {
        value!({ "type": "string" })
    }
}

/// Null where there is none.
impl<S: Shape> Shape for Option<S> {
    fn json(&self) -> Value {
        self.as_ref().map_or(Value::Null, Shape::json)
    }

    fn schema() -> Value {
        value!({ "anyOf": [S::schema(), { "type": "null" }] })
    }

    fn number(&self) -> Option<f64> {
        self.as_ref().and_then(Shape::number)
    }
}

impl<S: Shape> Shape for Vec<S> {
    fn json(&self) -> Value {
        self.iter().map(Shape::json).collect()
    }

    fn schema() -> Value {
        value!({ "type": "array", "items": S::schema() })
    }
}

impl<S: Shape, const N: usize> Shape for [S; N] {
    fn json(&self) -> Value {
        self.iter().map(Shape::json).collect()
    }

    fn schema() -> Value {
        value!({ "type": "array", "items": S::schema(), "minItems": N, "maxItems": N })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_there_is_null() {
        assert_eq!(f64::NAN.json(), Value::Null);
        assert_eq!(f64::INFINITY.json(), Value::Null);
        assert_eq!(None::<f64>.json(), Value::Null);
        assert_eq!(vec![Some(1.5), None].json().to_string(), "[1.5,null]");
    }

    #[test]
    fn numbers_are_numbers_and_nothing_else_is() {
        assert_eq!([2.5.number(), Some(2.5).number(), 3_usize.number()], [Some(2.5), Some(2.5), Some(3.0)]);
        assert_eq!([None::<f64>.number(), true.number(), "2.5".number(), vec![2.5].number()], [None; 4]);
    }

    #[test]
    fn shapes_say_what_they_are() {
        assert_eq!(<[f64; 6]>::schema()["maxItems"], 6);
        assert_eq!(Vec::<usize>::schema()["items"]["type"], "integer");
        assert_eq!(Option::<String>::schema()["anyOf"][1]["type"], "null");
        assert_eq!(bool::schema()["type"], "boolean");
    }
}
