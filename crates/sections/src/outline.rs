//! The edges of a section, for drawing.

/// The edges of a section as closed polygons of (x, z) in metres, first point not repeated.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// The outside edge, counter-clockwise.
    pub outside: Vec<[f64; 2]>,
    /// The bore, counter-clockwise; none for a solid section.
    pub inside: Option<Vec<[f64; 2]>>,
}
