//! Loads: forces, or the masses that weigh so much.

use crate::error::{Fault, UnitError};
use crate::parse::{Parsed, parse};
use crate::unit::STANDARD_GRAVITY;
use crate::{Kind, UnitSystem, show};

/// A load read from text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ParsedLoad {
    /// The force, N, and the unit system.
    pub force: Parsed,
    /// Whether a mass was written and its weight is meant.
    pub is_weight: bool,
}

impl ParsedLoad {
    /// How the text was read, such as "20000 lb read as weight, 20000 lbf (88.964 kN)"; none for a force.
    ///
    /// Arguments: `text`, that the load was read from.
    pub fn reading(&self, text: &str) -> Option<String> {
        let shown = |system| show(self.force.value, Kind::Force, system);
        let force = match self.force.system {
            Some(UnitSystem::Us) => format!("{} ({})", shown(UnitSystem::Us), shown(UnitSystem::Si)),
            _ => shown(UnitSystem::Si),
        };
        self.is_weight.then(|| format!("{} read as weight, {force}", text.trim()))
    }
}

/// Reads a load such as `89 kN`, or a mass such as `20000 lb` or `9 t`, whose weight under standard gravity is meant.
///
/// # Errors
/// Those of [`parse`] with [`Kind::Force`], for a text that is neither a force nor a mass.
///
/// ```
/// use axlebow_units::parse_load;
/// assert!(parse_load("89 kN").is_ok_and(|load| !load.is_weight));
/// assert!((parse_load("9000 kg")?.force.value - 9000.0 * 9.80665).abs() < 1e-9);
/// # Ok::<(), axlebow_units::UnitError>(())
/// ```
pub fn parse_load(text: &str) -> Result<ParsedLoad, UnitError> {
    match parse(text, Kind::Force) {
        Ok(force) => Ok(ParsedLoad { force, is_weight: false }),
        Err(error) => match weight(text, &error) {
            Some(force) => Ok(ParsedLoad { force, is_weight: true }),
            None => Err(error),
        },
    }
}

/// What is accepted as a load, in words.
pub fn accepted_loads() -> String {
    let units = |kind: Kind| kind.accepted().join(", ");
    format!("a force in {}, or the mass that weighs so much, in {}", units(Kind::Force), units(Kind::Mass))
}

/// The weight of the mass that was written in place of a force, if it is one.
fn weight(text: &str, refusal: &UnitError) -> Option<Parsed> {
    let is_mass = matches!(refusal.fault, Fault::WrongKind { measures: Some(Kind::Mass), .. });
    let mass = parse(text, Kind::Mass).ok().filter(|_| is_mass)?;
    let value = mass.value * STANDARD_GRAVITY;
    value.is_finite().then_some(Parsed { value, ..mass })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mass_is_its_weight_and_says_so() {
        let load = parse_load(" 20000 lb").unwrap();
        assert!((load.force.value - 88_964.432_305_21).abs() < 1e-6);
        let read = load.reading(" 20000 lb").unwrap();
        assert_eq!(read, "20000 lb read as weight, 20000 lbf (88.964 kN)");
        assert_eq!(parse_load("9 t").unwrap().reading("9 t").unwrap(), "9 t read as weight, 88.26 kN");
        assert_eq!(parse_load("89 kN").unwrap().reading("89 kN"), None);
    }

    #[test]
    fn what_is_neither_force_nor_mass_is_refused() {
        for text in ["9 mm", "9", "9 lbs", "1e308 t", "inf kg"] {
            assert_eq!(parse_load(text), parse(text, Kind::Force).map(|_| unreachable!()), "{text}");
        }
    }
}
