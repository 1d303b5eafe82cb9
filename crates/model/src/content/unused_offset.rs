//! The offset of a wheel that is zeroset.

use super::entry::{EntryNote, Table, Value};

/// Why the offset has no say.
const ZEROSET: &str = "the wheel is zeroset";

/// Marks the offset of a wheel as unused where the wheel is zeroset, and as used where it is not.
///
/// A wheel that is made zeroset may so keep its offset, to be set out again.
pub(super) fn mark_unused_offset(wheel: &mut Table) {
    let is_zeroset = wheel.optional_word("position") == Some("zeroset");
    let is_zero = wheel.optional_number("offset") == Some(0.0);
    if let Some(offset) = wheel.entries.iter_mut().find(|entry| entry.key == "offset") {
        offset.note = (is_zeroset && !is_zero).then_some(EntryNote::Unused(ZEROSET));
    }
}

/// The same for every wheel of a file.
pub(super) fn mark_unused_offsets(root: &mut Table) {
    let wheels = root.entries.iter_mut().find(|entry| entry.key == "wheel");
    if let Some(Value::Tables(wheels)) = wheels.map(|entry| &mut entry.value) {
        wheels.iter_mut().for_each(mark_unused_offset);
    }
}
