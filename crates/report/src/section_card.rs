//! A stretch of the axle with one section.

use axlebow_sections::{Profile, SectionProperties};

/// A stretch of the axle with one section, for tables and drawings.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionCard {
    /// Name of the stretch, such as `tube`.
    pub name: String,
    /// Where it starts and ends, m; the larger (left) first.
    pub reach: [f64; 2],
    /// The section.
    pub profile: Profile,
    /// Its properties.
    pub properties: SectionProperties,
    /// Mass per length, kg/m.
    pub mass_per_length: f64,
}
