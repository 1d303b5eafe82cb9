//! The declaration of a file: its keys, what each holds and what is used where one is left out.

use axlebow_units::{Kind, UnitSystem, accepted_loads};

use super::bounds::Bounds;

/// A word of a choice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Word {
    /// The word as written in the file.
    pub word: &'static str,
    /// What it means, one sentence.
    pub meaning: &'static str,
}

/// What a key holds.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// Text with a unit, such as `"152.4 mm"`; a [`Kind::Ratio`] may also be a plain number.
    Quantity {
        /// What is measured.
        kind: Kind,
        /// Accepted values, SI.
        bounds: Bounds,
    },
    /// A force that the axle carries: text with a unit of force, or the mass that weighs so much, such as `"20000 lb"`.
    Load {
        /// Accepted values, N.
        bounds: Bounds,
    },
    /// A quantity, or one of some words.
    QuantityOr {
        /// What is measured.
        kind: Kind,
        /// Accepted values, SI.
        bounds: Bounds,
        /// Accepted words.
        words: &'static [Word],
    },
    /// Text in per cent, such as `"0.20 %"`, kept as a share; a bare number is refused, because it could mean either.
    Percent {
        /// Most that is accepted, per cent.
        most: f64,
    },
    /// An amount with its currency, such as `"850 USD"`, or for each unit of something, such as `"95 USD/h"`; kept for each
    /// SI unit of it.
    Price {
        /// What it is the price of a unit of; none for a plain amount.
        per: Option<Kind>,
    },
    /// A plain number.
    Number {
        /// Accepted values.
        bounds: Bounds,
    },
    /// A whole number.
    Count {
        /// Least accepted.
        min: u32,
        /// Most accepted.
        max: u32,
    },
    /// `true` or `false`.
    Flag,
    /// Text that is not empty.
    Text,
    /// One of some words.
    Choice(&'static [Word]),
    /// A table, `[key]`.
    Table(&'static TableSpec),
    /// Any number of tables, `[[key]]`; at least one if required.
    Tables(&'static TableSpec),
    /// A table of plain numbers under keys of the writer's choice.
    Factors,
    /// A list of texts, none of them empty; at least one.
    Texts,
    /// A list of plain numbers; at least one.
    Numbers {
        /// Accepted values.
        bounds: Bounds,
    },
    /// A list of what may stand at a key of another file: texts, plain numbers, `true` and `false`; at least one.
    Values,
    /// A table of the same under paths of another file, as in `{ "tube.wall" = "8 mm" }`.
    Changes,
    /// The corners of an outline, a list of pairs of lengths, as in `[["0 mm", "0 mm"], ["60 mm", "0 mm"]]`.
    Corners,
}

/// Whether a key may be left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Presence {
    /// The key must be there.
    Required,
    /// This TOML value is used and listed as assumed; `{}` for a table whose keys all have defaults.
    Default(&'static str),
    /// Nothing is used.
    Optional,
}

/// A key of a table.
#[derive(Debug, Clone, Copy)]
pub struct KeySpec {
    /// The key as written in the file.
    pub key: &'static str,
    /// What it means, one sentence.
    pub meaning: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// Whether it may be left out.
    pub presence: Presence,
}

/// A key that holds a quantity with a unit, within bounds (SI).
pub const fn quantity(
    key: &'static str,
    meaning: &'static str,
    (kind, bounds): (Kind, Bounds),
    presence: Presence,
) -> KeySpec {
    KeySpec { key, meaning, holds: Holds::Quantity { kind, bounds }, presence }
}

/// A key that holds anything else.
pub const fn key(key: &'static str, meaning: &'static str, holds: Holds, presence: Presence) -> KeySpec {
    KeySpec { key, meaning, holds, presence }
}

/// A table of a file, or a whole file.
#[derive(Debug)]
pub struct TableSpec {
    /// Name for messages, such as "tube" or "model file".
    pub name: &'static str,
    /// What it describes, one sentence.
    pub meaning: &'static str,
    /// Its keys, in the order of a starter file.
    pub keys: &'static [KeySpec],
}

impl TableSpec {
    /// The declaration of a key.
    pub fn key(&self, key: &str) -> Option<&'static KeySpec> {
        self.keys.iter().find(|spec| spec.key == key)
    }

    /// The keys in words, as in "`od`, `wall`".
    pub(crate) fn key_list(&self) -> String {
        list(self.keys.iter().map(|spec| spec.key))
    }
}

impl Holds {
    /// What is accepted, in words.
    pub fn accepted(&self) -> String {
        match self {
            Self::Quantity { kind, bounds } => quantity_in_words(*kind, *bounds),
            Self::Load { bounds } => {
                with_bounds(format!("{}, in quotes", accepted_loads()), Kind::Force, *bounds)
            }
            Self::QuantityOr { kind, bounds, words } => {
                let words = list(words.iter().map(|word| word.word));
                format!("{words}, or {}", quantity_in_words(*kind, *bounds))
            }
            Self::Percent { most } => format!("per cent in quotes, such as \"0.20 %\"; from 0 % to {most} %"),
            Self::Price { per: None } => {
                "an amount with its currency in quotes, such as \"850 USD\"; 0 or more".to_owned()
            }
            Self::Price { per: Some(kind) } => {
                let unit = kind.accepted().last().copied().unwrap_or_default();
                let units = kind.accepted().join(", ");
                format!(
                    "an amount with its currency for each of {units}, such as \"95 USD/{unit}\"; 0 or more"
                )
            }
            Self::Number { bounds } => with_bounds("a number".to_owned(), Kind::Ratio, *bounds),
            Self::Count { min, max } => format!("a whole number from {min} to {max}"),
            Self::Flag => "true or false".to_owned(),
            Self::Text => "text in quotes".to_owned(),
            Self::Choice(words) => list(words.iter().map(|word| word.word)),
            Self::Table(spec) => format!("a table with {}", spec.key_list()),
            Self::Tables(spec) => format!("one or more tables, each with {}", spec.key_list()),
            Self::Factors => "a table of numbers, such as { gravity = 1.35 }".to_owned(),
            Self::Texts => r#"a list of texts in quotes, such as ["6 mm", "8 mm"]"#.to_owned(),
            Self::Numbers { bounds } => {
                with_bounds("a list of numbers, such as [5, 50, 95]".to_owned(), Kind::Ratio, *bounds)
            }
            Self::Values => {
                r#"a list of values as a file has them, such as ["6 mm", "8 mm"] or [true, false]"#.to_owned()
            }
            Self::Changes => {
                r#"a table of paths and values, such as { "tube.wall" = "8 mm", "wheel.reversed" = true }"#
                    .to_owned()
            }
            Self::Corners => {
                r#"a list of corners, each of two lengths, such as [["0 mm", "0 mm"], ["60 mm", "0 mm"]]"#
                    .to_owned()
            }
        }
    }
}

fn quantity_in_words(kind: Kind, bounds: Bounds) -> String {
    let units = kind.accepted().join(", ");
    match kind {
        Kind::Ratio => with_bounds("a number, or a percentage in quotes".to_owned(), kind, bounds),
        kind => with_bounds(format!("{} in quotes, in {units}", kind.name()), kind, bounds),
    }
}

fn with_bounds(words: String, kind: Kind, bounds: Bounds) -> String {
    match bounds.words(kind, UnitSystem::Si) {
        Some(limits) => format!("{words}; {limits}"),
        None => words,
    }
}

fn list<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words.map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
}
