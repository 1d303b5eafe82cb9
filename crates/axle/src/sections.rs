//! Cross sections of the axle with its stiffeners, and what acts on them.

pub(crate) mod recent;
pub(crate) mod resultants;
pub(crate) mod seated_section;
pub(crate) mod stiffened;
pub(crate) mod stiffener_torsion;
