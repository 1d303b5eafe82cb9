//! An angle along the top of a tube, as a model file writes it.

use axlebow_model::{Document, Table};

/// An angle as a tent on top of a tube.
#[derive(Debug, Clone, Copy)]
pub struct TopAngle<'a> {
    /// Its standard size, such as `L75x75x8`.
    pub size: &'a str,
    /// Its length, with its unit.
    pub length: &'a str,
    /// Leg of its fillet welds, mm.
    pub weld_leg: u32,
}

impl TopAngle<'_> {
    /// Its table of a model file.
    pub fn table(&self) -> String {
        let TopAngle { size, length, weld_leg } = self;
        format!(
            "[[stiffener]]\nname = \"angle along the top\"\nshape = \"angle\"\nsize = \"{size}\"\norientation = \"toes-down\"\n\
             length = \"{length}\"\ncenter = \"0 mm\"\nend = \"tapered\"\nend_length = \"60 mm\"\nweld_leg = \"{weld_leg} mm\"\n"
        )
    }

    /// The longest that the keep-outs at both seats let it be, m.
    pub fn longest(document: &Document) -> f64 {
        let reach =
            |seat: &Table| seat.number("at") - 0.5 * seat.number("width") - seat.number("weld_keep_out");
        2.0 * document.root().tables("seat").iter().map(reach).fold(f64::INFINITY, f64::min)
    }
}
