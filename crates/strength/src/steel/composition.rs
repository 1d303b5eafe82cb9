//! Chemical composition of a steel.

/// Chemical composition of a steel, mass in per cent, as on a mill certificate; what is left out is 0.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Composition {
    /// C.
    pub carbon: f64,
    /// Mn.
    pub manganese: f64,
    /// Cr.
    pub chromium: f64,
    /// Mo.
    pub molybdenum: f64,
    /// V.
    pub vanadium: f64,
    /// Ni.
    pub nickel: f64,
    /// Cu.
    pub copper: f64,
}

impl Composition {
    /// Carbon equivalent, CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15 (per cent).
    ///
    /// Validity: carbon and carbon-manganese steels, C above about 0.18 per cent.
    ///
    /// Source: International Institute of Welding, Doc. IX-535-67, as in EN 1011-2:2001, Annex C (from memory).
    pub fn carbon_equivalent(&self) -> f64 {
        self.carbon
            + self.manganese / 6.0
            + (self.chromium + self.molybdenum + self.vanadium) / 5.0
            + (self.nickel + self.copper) / 15.0
    }

    /// Carbon equivalent of cold cracking, CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40 (per cent).
    ///
    /// Validity: C 0.05 to 0.32, Mn 0.5 to 1.9 per cent and low alloys, unalloyed to high-strength steels.
    ///
    /// Source: EN 1011-2:2001, Annex C.3, method B (from memory).
    pub fn cold_cracking_equivalent(&self) -> f64 {
        self.carbon
            + (self.manganese + self.molybdenum) / 10.0
            + (self.chromium + self.copper) / 20.0
            + self.nickel / 40.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_element_counts_by_its_divisor() {
        let unit = Composition::default();
        assert_eq!(unit.carbon_equivalent(), 0.0);
        assert_eq!(Composition { carbon: 0.3, ..unit }.carbon_equivalent(), 0.3);
        assert_eq!(Composition { manganese: 6.0, ..unit }.carbon_equivalent(), 1.0);
        assert_eq!(
            Composition { chromium: 5.0, molybdenum: 5.0, vanadium: 5.0, ..unit }.carbon_equivalent(),
            3.0
        );
        assert_eq!(Composition { nickel: 15.0, copper: 15.0, ..unit }.carbon_equivalent(), 2.0);
    }

    #[test]
    fn each_element_counts_by_its_divisor_in_cold_cracking() {
        let each = |own: Composition| own.cold_cracking_equivalent();
        let unit = Composition::default();
        assert_eq!(each(Composition { carbon: 0.3, vanadium: 9.0, ..unit }), 0.3);
        assert_eq!(each(Composition { manganese: 10.0, ..unit }), 1.0);
        assert_eq!(each(Composition { molybdenum: 20.0, ..unit }), 2.0);
        assert_eq!(each(Composition { chromium: 20.0, ..unit }), 1.0);
        assert_eq!(each(Composition { copper: 40.0, ..unit }), 2.0);
        assert_eq!(each(Composition { nickel: 40.0, ..unit }), 1.0);
    }
}
