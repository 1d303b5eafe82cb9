//! What is asked of a structure: displacements, stresses, modes, buckling, harmonic answers.

pub(crate) mod buckling;
pub(crate) mod harmonic;
pub(crate) mod modal;
pub(crate) mod motion_reader;
mod recovery;
pub(crate) mod statics;
mod unbalanced;
