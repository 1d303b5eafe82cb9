//! What a file says, as a tree in SI.

use axlebow_units::{Kind, UnitSystem};

use crate::declare::TableSpec;
use crate::faults::Span;

/// What a key was given.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Value {
    /// A quantity.
    Quantity {
        /// Value, SI.
        value: f64,
        /// What it measures.
        kind: Kind,
        /// System of the unit as written, if it belongs to one.
        system: Option<UnitSystem>,
    },
    /// An amount of money, or one for each SI unit of something.
    Price {
        /// The amount.
        amount: f64,
        /// The currency as written.
        currency: String,
    },
    /// A plain number.
    Number(f64),
    /// A whole number.
    Count(u32),
    /// `true` or `false`.
    Flag(bool),
    /// Text.
    Text(String),
    /// A word of a choice.
    Word(&'static str),
    /// A table.
    Table(Table),
    /// Tables of a list.
    Tables(Vec<Table>),
    /// Numbers under free keys, in file order.
    Factors(Vec<(String, f64)>),
    /// Texts of a list.
    Texts(Vec<Written>),
    /// Plain numbers of a list.
    Numbers(Vec<f64>),
    /// Paths with what is to stand there, in file order.
    Changes(Vec<(Written, Written)>),
    /// Corners (x, z) of an outline, m.
    Corners(Vec<[f64; 2]>),
}

/// Text and where the file has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The text, without quotes.
    pub text: String,
    /// Its bytes.
    pub span: Span,
}

/// A key with its value.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The key.
    pub key: &'static str,
    /// The value.
    pub value: Value,
    /// Bytes of the value; those of the table's head if the value is a default.
    pub span: Span,
    /// Whether a default was used.
    pub assumed: bool,
    /// How it was read, where that is not plain from the file.
    pub note: Option<EntryNote>,
}

/// How an entry was read, where that is not plain from the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum EntryNote {
    /// The text and what it was read as, such as "20000 lb read as weight, 88.964 kN".
    ReadAs(String),
    /// The value has no say, and why.
    Unused(&'static str),
}

impl Entry {
    /// Whether the value has no say.
    pub fn is_unused(&self) -> bool {
        matches!(self.note, Some(EntryNote::Unused(_)))
    }
}

/// A table of a file: its keys in file order, then the defaults.
///
/// Accessors without `optional_` are for keys that the [`TableSpec`] declares with that content and as
/// required or with a default; the reader of the file has then made sure of them.
///
/// # Panics
/// Those accessors panic on a key that is not so declared, which no file can bring about.
#[derive(Debug, Clone)]
pub struct Table {
    pub(crate) spec: &'static TableSpec,
    pub(crate) span: Span,
    pub(crate) entries: Vec<Entry>,
    /// Keys that the file gives and that cannot be read; none in a file that is found good.
    pub(crate) faulty: Vec<&'static str>,
}

impl PartialEq for Table {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self.spec, other.spec) && self.span == other.span && self.entries == other.entries
    }
}

impl Table {
    /// The declaration of this table.
    pub fn spec(&self) -> &'static TableSpec {
        self.spec
    }

    /// Bytes of the table's head.
    pub fn span(&self) -> Span {
        self.span.clone()
    }

    /// The entries, in file order, then the defaults.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The entry of a key, if it is there.
    pub fn entry(&self, key: &str) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.key == key)
    }

    /// Whether a key is in the file, or was set in it.
    pub(crate) fn is_written(&self, key: &str) -> bool {
        self.entry(key).is_some_and(|entry| !entry.assumed)
    }

    /// The value of a key, if it is there.
    pub fn value(&self, key: &str) -> Option<&Value> {
        self.entry(key).map(|entry| &entry.value)
    }

    /// Bytes of a key's value, or of the table's head if it is not there.
    pub fn span_of(&self, key: &str) -> Span {
        self.entry(key).map_or(self.span(), |entry| entry.span.clone())
    }

    /// A quantity (SI), number or count.
    pub fn number(&self, key: &str) -> f64 {
        self.declared(key, self.optional_number(key))
    }

    /// A quantity (SI), number, price or count, if it is there.
    pub fn optional_number(&self, key: &str) -> Option<f64> {
        match self.value(key)? {
            Value::Price { amount, .. } => Some(*amount),
            Value::Quantity { value, .. } | Value::Number(value) => Some(*value),
            Value::Count(count) => Some(f64::from(*count)),
            _ => None,
        }
    }

    /// A whole number.
    pub fn count(&self, key: &str) -> u32 {
        self.declared(key, self.optional_count(key))
    }

    /// A whole number, if it is there.
    pub fn optional_count(&self, key: &str) -> Option<u32> {
        if let Value::Count(count) = self.value(key)? { Some(*count) } else { None }
    }

    /// `true` or `false`.
    pub fn flag(&self, key: &str) -> bool {
        let flag =
            self.value(key).and_then(|value| if let Value::Flag(flag) = value { Some(*flag) } else { None });
        self.declared(key, flag)
    }

    /// Text.
    pub fn text(&self, key: &str) -> &str {
        self.declared(key, self.optional_text(key))
    }

    /// Text, if it is there.
    pub fn optional_text(&self, key: &str) -> Option<&str> {
        if let Value::Text(text) = self.value(key)? { Some(text) } else { None }
    }

    /// A word of a choice.
    pub fn word(&self, key: &str) -> &'static str {
        self.declared(key, self.optional_word(key))
    }

    /// A word of a choice, if it is there.
    pub fn optional_word(&self, key: &str) -> Option<&'static str> {
        if let Value::Word(word) = self.value(key)? { Some(word) } else { None }
    }

    /// A table.
    pub fn table(&self, key: &str) -> &Self {
        self.declared(key, self.optional_table(key))
    }

    /// A table, if it is there.
    pub fn optional_table(&self, key: &str) -> Option<&Self> {
        if let Value::Table(table) = self.value(key)? { Some(table) } else { None }
    }

    /// The tables of a list; none if the key is not there.
    pub fn tables(&self, key: &str) -> &[Self] {
        if let Some(Value::Tables(tables)) = self.value(key) { tables } else { &[] }
    }

    /// Numbers under free keys, in file order; none if the key is not there.
    pub fn factors(&self, key: &str) -> &[(String, f64)] {
        if let Some(Value::Factors(factors)) = self.value(key) { factors } else { &[] }
    }

    /// The texts of a list; none if the key is not there.
    pub fn texts(&self, key: &str) -> &[Written] {
        if let Some(Value::Texts(texts)) = self.value(key) { texts } else { &[] }
    }

    /// The plain numbers of a list; none if the key is not there.
    pub fn numbers(&self, key: &str) -> &[f64] {
        if let Some(Value::Numbers(numbers)) = self.value(key) { numbers } else { &[] }
    }

    /// Paths with what is to stand there, in file order; none if the key is not there.
    pub fn changes(&self, key: &str) -> &[(Written, Written)] {
        if let Some(Value::Changes(changes)) = self.value(key) { changes } else { &[] }
    }

    /// Corners (x, z) of an outline, m, if they are there.
    pub fn optional_corners(&self, key: &str) -> Option<&[[f64; 2]]> {
        if let Value::Corners(corners) = self.value(key)? { Some(corners) } else { None }
    }

    fn declared<T>(&self, key: &str, found: Option<T>) -> T {
        let table = self.spec.name;
        found.unwrap_or_else(|| {
            panic!("`{key}` of {table} is not declared as required with what is asked of it")
        })
    }
}
