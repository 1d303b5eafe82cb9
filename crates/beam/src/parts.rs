//! What a beam is made of: sections, spans, supports, loads.

pub(crate) mod line;
pub(crate) mod load;
pub(crate) mod section;
pub(crate) mod span;
pub(crate) mod support;
