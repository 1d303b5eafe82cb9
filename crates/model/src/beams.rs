//! Straight beams of one's own: from what a beam file says to a beam with what is asked of it.

mod beam_checks;
mod beam_file;
mod beam_parts;
mod beam_section;
mod kind_keys;

pub use beam_file::BeamFile;
