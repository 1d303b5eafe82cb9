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

/// A result of a record by its name, for whoever gives the same result elsewhere; looked up while the program is
/// compiled, as a constant, so that a name that no row has does not compile.
///
/// ```
/// # use axlebow_results::{Field, Own, Record, field, number};
/// # use axlebow_units::Kind;
/// # struct Wheel(f64);
/// # impl Record for Wheel {
/// #     const FIELDS: &'static [Field<Self>] = &[number("camber", Kind::Angle, "Camber.", &Own(|w: &Self| w.0))];
/// # }
/// let camber = const { field::<Wheel>("camber") };
/// assert_eq!(camber.read.number(&Wheel(-0.01)), Some(-0.01));
/// ```
///
/// # Panics
/// If no result has the name.
pub const fn field<T: Record>(name: &str) -> &'static Field<T> {
    let mut place = 0;
    while place < T::FIELDS.len() {
        if alike(T::FIELDS[place].term.name.as_bytes(), name.as_bytes()) {
            return &T::FIELDS[place];
        }
        place += 1;
    }
    panic!("the record has no result of this name")
}

/// Whether two words are one; the comparison of the standard library does not run while compiling.
const fn alike(a: &[u8], b: &[u8]) -> bool {
    let mut place = 0;
    while place < a.len() && place < b.len() && a[place] == b[place] {
        place += 1;
    }
    place == a.len() && place == b.len()
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
