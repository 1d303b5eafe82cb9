//! Outcomes that declare their results.

use axlebow_units::Kind;
use serde_json::{Map, Value, json as value};

use crate::{Read, Shape, Term, Unit};

/// One result of a `T`.
pub struct Field<T: 'static> {
    /// What it is.
    pub term: Term,
    /// How a `T` gives it.
    pub read: &'static dyn Read<T>,
}

/// An outcome that declares its results, in the order in which documents give them.
pub trait Record: Sized + 'static {
    /// The results.
    const FIELDS: &'static [Field<Self>];
}

/// A result that has a unit of its kind: a number, or numbers of one kind.
pub const fn number<T>(
    name: &'static str,
    kind: Kind,
    meaning: &'static str,
    read: &'static dyn Read<T>,
) -> Field<T> {
    Field { term: Term { name, unit: Unit::Of(kind), meaning }, read }
}

/// A result in an SI unit that no file and no table uses, such as `rad2/Hz`.
pub const fn in_unit<T>(
    name: &'static str,
    si: &'static str,
    meaning: &'static str,
    read: &'static dyn Read<T>,
) -> Field<T> {
    Field { term: Term { name, unit: Unit::Si(si), meaning }, read }
}

/// A result without a unit: a share, a count, a flag, a word, a record.
pub const fn part<T>(name: &'static str, meaning: &'static str, read: &'static dyn Read<T>) -> Field<T> {
    Field { term: Term { name, unit: Unit::None, meaning }, read }
}

/// The results of a record as a JSON object.
pub fn json<T: Record>(of: &T) -> Value {
    let pair = |field: &Field<T>| (field.term.key(), field.read.json(of));
    Value::Object(T::FIELDS.iter().map(pair).collect())
}

/// The JSON Schema of [`json`]: every result is there, none else.
pub fn schema<T: Record>() -> Value {
    let property = |field: &Field<T>| {
        let mut schema = field.read.schema();
        schema["description"] = field.term.description().into();
        (field.term.key(), schema)
    };
    let required: Vec<String> = T::FIELDS.iter().map(|field| field.term.key()).collect();
    let properties: Map<String, Value> = T::FIELDS.iter().map(property).collect();
    value!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

impl<T: Record> Shape for T {
    fn json(&self) -> Value {
        json(self)
    }

    fn schema() -> Value {
        schema::<T>()
    }
}
