//! What is asked of a beam, and all that comes out.

pub(crate) mod asked;
pub(crate) mod outcome;
