//! A file that was read and found good.

use axlebow_units::{Kind, UnitSystem};

use super::entry::{Entry, Table, Value};
use super::named_path::by_place;
use super::path::{Step, steps};
use super::unused_offset::{mark_unused_offset, mark_unused_offsets};
use crate::declare::{Holds, KeySpec};
use crate::faults::{ModelError, Problems, likely};

/// A default that was used because the file does not give the key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumed {
    /// Path of the key, such as `tube.material`.
    pub path: String,
    /// The value as a file would write it, without quotes.
    pub text: String,
    /// What the key means.
    pub meaning: &'static str,
}

/// A file that was read and found good.
#[derive(Debug, Clone)]
pub struct Document {
    problems: Problems,
    root: Table,
    assumed: Vec<Assumed>,
    system: UnitSystem,
}

impl Document {
    pub(crate) fn new(problems: Problems, root: Table, assumed: Vec<Assumed>) -> Self {
        let mut root = root;
        mark_unused_offsets(&mut root);
        let system = if balance(&root) < 0 { UnitSystem::Us } else { UnitSystem::Si };
        Self { problems, root, assumed, system }
    }

    /// The whole file as a table.
    pub fn root(&self) -> &Table {
        &self.root
    }

    pub(crate) fn root_mut(&mut self) -> &mut Table {
        &mut self.root
    }

    /// BLAKE3 of every path and value, defaults included: layout, comments and the choice of unit do not matter. The
    /// first 16 hexadecimal digits.
    pub fn hash(&self) -> String {
        super::hash::of(&self.root)
    }

    /// The defaults that are in use.
    pub fn assumed(&self) -> &[Assumed] {
        &self.assumed
    }

    /// Lists what nobody has written as assumed.
    pub(crate) fn assume(&mut self, assumed: Vec<Assumed>) {
        self.assumed.splice(..0, assumed);
    }

    /// The system that most units of the file belong to; SI if neither leads.
    pub fn system(&self) -> UnitSystem {
        self.system
    }

    /// An empty report on this file, for problems that the reader cannot know of.
    pub fn problems(&self) -> Problems {
        self.problems.clone()
    }

    /// The value at a path such as `seat[0].width` or `stiffener[top angle].length`.
    ///
    /// # Errors
    /// A path that is malformed, leads nowhere, leads to what the file does not have, or ends at one table of
    /// a list or one factor, for which see [`number`](Self::number).
    pub fn value(&self, path: &str) -> Result<&Value, ModelError> {
        let path = &*by_place(&self.root, path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(&self.root, path, &steps)?;
        let [Step { key, index: None, .. }] = rest else { return Err(several(path)) };
        key_spec(table, path, key)?;
        table.value(key).ok_or_else(|| ModelError::Absent { path: path.to_owned() })
    }

    /// The quantity (SI), number, count or factor at a path.
    ///
    /// # Errors
    /// Those of [`value`](Self::value), and a value that is not a number.
    pub fn number(&self, path: &str) -> Result<f64, ModelError> {
        let path = &*by_place(&self.root, path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(&self.root, path, &steps)?;
        if let [list, name] = rest {
            let found = table.factors(list.key).iter().find(|(key, _)| key == name.key);
            return found
                .map(|(_, factor)| *factor)
                .ok_or_else(|| ModelError::Absent { path: path.to_owned() });
        }
        self.value(path)?;
        table.optional_number(rest[0].key).ok_or_else(|| no_number(path, None))
    }

    /// What the key at a path holds; of a factor, the list that it is of.
    ///
    /// # Errors
    /// A path that is malformed or leads nowhere.
    pub fn holds(&self, path: &str) -> Result<Holds, ModelError> {
        let path = &*by_place(&self.root, path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(&self.root, path, &steps)?;
        Ok(key_spec(table, path, rest[0].key)?.holds)
    }

    /// What the number at a path measures; a count, factor or plain number is a ratio.
    ///
    /// # Errors
    /// A path that is malformed or leads nowhere, and a key that holds no number.
    pub fn kind(&self, path: &str) -> Result<Kind, ModelError> {
        let path = &*by_place(&self.root, path)?;
        let steps = steps(path)?;
        let (table, rest) = owner(&self.root, path, &steps)?;
        match (key_spec(table, path, rest[0].key)?.holds, rest) {
            (Holds::Quantity { kind, .. } | Holds::QuantityOr { kind, .. }, [Step { index: None, .. }]) => {
                Ok(kind)
            }
            (Holds::Load { .. }, [Step { index: None, .. }]) => Ok(Kind::Force),
            (
                Holds::Percent { .. } | Holds::Price { .. } | Holds::Number { .. } | Holds::Count { .. },
                [Step { index: None, .. }],
            ) => Ok(Kind::Ratio),
            (Holds::Factors, [_, _]) => Ok(Kind::Ratio),
            _ => Err(no_number(path, Some("a key that holds a number, such as `tube.wall`".to_owned()))),
        }
    }

    /// Puts an entry into the table at the end of steps that [`owner`] has been through; the key at the path is no longer
    /// assumed.
    pub(crate) fn put(&mut self, path: &str, table: &[Step<'_>], entry: Entry) {
        if let Some(table) = owner_mut(&mut self.root, table) {
            let is_position = entry.key == "position";
            replace(table, entry);
            if is_position {
                mark_unused_offset(table);
            }
        }
        self.assumed.retain(|assumed| assumed.path != path);
    }
}

/// SI units written less US units written, defaults not counted.
fn balance(table: &Table) -> i64 {
    let weight = |entry: &Entry| match &entry.value {
        Value::Quantity { system: Some(UnitSystem::Si), .. } => 1,
        Value::Quantity { system: Some(UnitSystem::Us), .. } => -1,
        Value::Table(inner) => balance(inner),
        Value::Tables(list) => list.iter().map(balance).sum(),
        _ => 0,
    };
    table.entries.iter().filter(|entry| !entry.assumed).map(weight).sum()
}

/// The table that the end of a path is a key of, and that end: a key, or a list of factors and a name.
pub(crate) fn owner<'t, 's, 'p>(
    root: &'t Table,
    path: &str,
    steps: &'s [Step<'p>],
) -> Result<(&'t Table, &'s [Step<'p>]), ModelError> {
    let (mut table, mut rest) = (root, steps);
    while let [step, inner @ ..] = rest {
        let holds = key_spec(table, path, step.key)?.holds;
        let at_factor = matches!(holds, Holds::Factors) && step.index.is_none() && inner.len() == 1;
        if inner.is_empty() || at_factor {
            break;
        }
        table = child(table, path, step)?;
        rest = inner;
    }
    Ok((table, rest))
}

fn child<'t>(table: &'t Table, path: &str, step: &Step<'_>) -> Result<&'t Table, ModelError> {
    let here = path[..step.end].to_owned();
    match (table.value(step.key), step.index) {
        (Some(Value::Table(inner)), None) => Ok(inner),
        (Some(Value::Tables(list)), Some(n)) => list.get(n).ok_or(ModelError::Absent { path: here }),
        (Some(Value::Tables(_)), None) => Err(several(&here)),
        (Some(_), _) => Err(ModelError::BadPath { path: path.to_owned() }),
        (None, _) => Err(ModelError::Absent { path: here }),
    }
}

/// The table at the end of steps that [`owner`] has been through.
fn owner_mut<'t>(root: &'t mut Table, steps: &[Step<'_>]) -> Option<&'t mut Table> {
    let mut table = root;
    for step in steps {
        let entry = table.entries.iter_mut().find(|entry| entry.key == step.key)?;
        table = match &mut entry.value {
            Value::Table(inner) => inner,
            Value::Tables(list) => list.get_mut(step.index?)?,
            _ => return None,
        };
    }
    Some(table)
}

fn replace(table: &mut Table, entry: Entry) {
    match table.entries.iter_mut().find(|old| old.key == entry.key) {
        Some(old) => *old = entry,
        None => table.entries.push(entry),
    }
}

pub(crate) fn key_spec(table: &Table, path: &str, key: &str) -> Result<&'static KeySpec, ModelError> {
    table.spec.key(key).ok_or_else(|| ModelError::UnknownKey {
        path: path.to_owned(),
        name: table.spec.name.to_owned(),
        key: key.to_owned(),
        accepted: table.spec.key_list(),
        likely: likely(key, table.spec.keys.iter().map(|spec| spec.key)),
    })
}

pub(crate) fn several(path: &str) -> ModelError {
    ModelError::NotOneValue { path: path.to_owned() }
}

pub(crate) fn no_number(path: &str, accepted: Option<String>) -> ModelError {
    ModelError::Refused {
        path: path.to_owned(),
        message: format!("`{path}` is not a number"),
        accepted,
        likely: None,
    }
}
