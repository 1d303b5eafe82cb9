//! Which keys go with the kind of a thing.

use crate::content::Table;
use crate::faults::Problems;

/// A kind of a thing: its word, the keys that it needs and those that it may have.
pub(super) type KindKeys = (&'static str, &'static [&'static str], &'static [&'static str]);

/// Whether a table has all keys that its kind needs, and none that only other kinds have.
///
/// - `named_by`: the key that says its kind
/// - `kinds`: every kind
pub(super) fn check_keys(table: &Table, named_by: &str, kinds: &[KindKeys], problems: &mut Problems) -> bool {
    let word = table.word(named_by);
    let Some((_, needed, allowed)) = kinds.iter().find(|(own, ..)| *own == word) else { return true };
    let list = |keys: &[&str]| match keys {
        [] => "no further key".to_owned(),
        keys => keys.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(", "),
    };
    let mut sound = true;
    for key in needed.iter().filter(|key| table.entry(key).is_none()) {
        let message = format!("{} `{word}` needs its `{key}`", table.spec().name);
        problems.push(table.span_of(named_by), message, Some(list(needed)));
        sound = false;
    }
    let of_kinds =
        |key: &str| kinds.iter().any(|(_, needed, allowed)| needed.contains(&key) || allowed.contains(&key));
    let strange = |key: &&str| of_kinds(key) && !needed.contains(key) && !allowed.contains(key);
    for entry in table.entries().iter().filter(|entry| !entry.assumed && strange(&entry.key)) {
        let message = format!("{} `{word}` has no `{}`", table.spec().name, entry.key);
        problems.push(entry.span.clone(), message, Some(list(&[*needed, *allowed].concat())));
        sound = false;
    }
    sound
}
