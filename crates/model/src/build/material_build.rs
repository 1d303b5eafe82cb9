//! Materials of a file.

use axlebow_sections::Material;
use axlebow_strength::Composition;

use super::builder::Builder;
use crate::content::Table;

impl Builder<'_> {
    pub(crate) fn material(&mut self, table: &Table) -> Option<Material> {
        let made = Material::new(
            table.text("name"),
            table.number("elastic_modulus"),
            table.number("poisson_ratio"),
            table.number("density"),
        );
        let mut material = self.kept(table.span(), made)?;
        let loss_factor = table.number("loss_factor");
        material = self.kept(table.span_of("loss_factor"), material.with_loss_factor(loss_factor))?;
        if let Some(strength) = table.optional_number("yield_strength") {
            material = self.kept(table.span_of("yield_strength"), material.with_yield(strength))?;
        }
        if let Some(strength) = table.optional_number("ultimate_strength") {
            self.above_yield(table, strength);
            material = self.kept(table.span_of("ultimate_strength"), material.with_ultimate(strength))?;
        }
        if let Some((key, equivalent)) = self.carbon_equivalent(table) {
            material = self.kept(table.span_of(key), material.with_carbon_equivalent(equivalent))?;
        }
        if let Some(elements) = table.optional_table("composition").map(composition) {
            let span = table.span_of("composition");
            let cet = elements.cold_cracking_equivalent();
            material = self.kept(span, material.with_cold_cracking_equivalent(cet))?;
        }
        Some(material)
    }

    /// A problem where an ultimate strength is below the yield strength.
    fn above_yield(&mut self, table: &Table, ultimate: f64) {
        let Some(yielding) = table.optional_number("yield_strength").filter(|own| *own > ultimate) else {
            return;
        };
        let message = format!(
            "the ultimate strength, {:.0} MPa, is {:.0} MPa below the yield strength, {:.0} MPa",
            ultimate / 1e6,
            (yielding - ultimate) / 1e6,
            yielding / 1e6
        );
        let accepted = format!("at least {:.0} MPa", yielding / 1e6);
        self.problems.push(table.span_of("ultimate_strength"), message, Some(accepted));
    }

    /// The carbon equivalent in per cent, and the key that says it.
    fn carbon_equivalent(&mut self, table: &Table) -> Option<(&'static str, f64)> {
        let direct = table.optional_number("carbon_equivalent");
        let of_elements = table.optional_table("composition").map(|own| composition(own).carbon_equivalent());
        if direct.is_some() && of_elements.is_some() {
            let message = "both `carbon_equivalent` and `composition` are given";
            let accepted = "one of the two; the first follows from the second";
            self.problems.push(table.span_of("carbon_equivalent"), message, Some(accepted.to_owned()));
        }
        let direct = direct.map(|share| ("carbon_equivalent", 100.0 * share));
        direct.or(of_elements.map(|equivalent| ("composition", equivalent)))
    }
}

fn composition(table: &Table) -> Composition {
    let percent = |key| 100.0 * table.number(key);
    Composition {
        carbon: percent("carbon"),
        manganese: percent("manganese"),
        chromium: percent("chromium"),
        molybdenum: percent("molybdenum"),
        vanadium: percent("vanadium"),
        nickel: percent("nickel"),
        copper: percent("copper"),
    }
}
