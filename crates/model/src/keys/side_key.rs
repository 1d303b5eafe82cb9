//! The key that says which end of an axle a table describes.

use crate::declare::{Holds, KeySpec, Presence, Word, key};

use Presence::Required;

const SIDES: Holds = Holds::Choice(&[
    Word { word: "both", meaning: "both ends alike" },
    Word { word: "left", meaning: "the left end only" },
    Word { word: "right", meaning: "the right end only" },
]);

/// Which end of the axle a table describes.
pub(crate) const SIDE: KeySpec = key("side", "Which end of the axle this describes.", SIDES, Required);
