//! How warm a steel must be before it is welded, in words.

use axlebow_axle::Preheat;
use axlebow_strength::{PREHEAT_METHOD, WeldHeat};
use axlebow_units::{Kind, UnitSystem};

use crate::number::{Numbers, fixed};

/// A temperature (°C) in the unit of a reader, rounded up to five degrees.
pub(crate) fn degrees(celsius: f64, system: UnitSystem) -> String {
    let up = |value: f64| fixed(5.0 * (value / 5.0 - 1e-9).ceil(), 0);
    match system {
        UnitSystem::Si => format!("{} \u{b0}C", up(celsius)),
        UnitSystem::Us => format!("{} \u{b0}F", up(1.8 * celsius + 32.0)),
    }
}

/// What the method asks for, to follow other words; nothing where the composition is not known.
pub(crate) fn temperature(steel: &Preheat, system: UnitSystem) -> String {
    let Some(cet) = steel.cold_cracking_equivalent else { return String::new() };
    let cet = fixed(cet, 2);
    let Some(celsius) = steel.temperature else {
        return format!("; CET {cet} % is beyond {PREHEAT_METHOD}");
    };
    let thickness = Numbers { system }.short(steel.thickness, Kind::Length);
    let WeldHeat { hydrogen, heat_input } = WeldHeat::USUAL;
    format!(
        "; at least {} for CET {cet} %, {thickness}, hydrogen {} ml in 100 g and {} kJ/mm by {PREHEAT_METHOD}",
        degrees(celsius, system),
        fixed(hydrogen, 0),
        fixed(1e-6 * heat_input, 1),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_are_rounded_up_in_both_units() {
        assert_eq!(degrees(40.9, UnitSystem::Si), "45 \u{b0}C");
        assert_eq!(degrees(45.0, UnitSystem::Si), "45 \u{b0}C");
        assert_eq!(degrees(40.9, UnitSystem::Us), "110 \u{b0}F");
    }
}
