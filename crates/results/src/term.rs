//! The name of a result, with its unit and meaning.

use axlebow_units::Kind;

/// Unit of a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// The SI unit of a kind of quantity, which readers may see in units of their own.
    Of(Kind),
    /// An SI unit that no file and no table uses, such as `rad2/Hz`.
    Si(&'static str),
    /// No unit: a word, a count, a flag, a record.
    None,
}

impl Unit {
    /// The SI unit; empty where there is none.
    pub const fn si(self) -> &'static str {
        match self {
            Unit::Of(kind) => kind.si(),
            Unit::Si(unit) => unit,
            Unit::None => "",
        }
    }
}

/// What a result is, whoever gives it: the same name and unit in JSON, CSV, studies, tables and pictures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Term {
    /// Name in study files, such as `camber-peak-to-peak`.
    pub name: &'static str,
    /// Unit.
    pub unit: Unit,
    /// What it means: a sentence without its unit.
    pub meaning: &'static str,
}

impl Term {
    /// The name with its SI unit, as JSON and CSV use it, such as `camber_peak_to_peak_rad`.
    pub fn key(&self) -> String {
        key(self.name, self.unit.si())
    }

    /// The meaning with the SI unit.
    pub fn description(&self) -> String {
        match self.unit.si() {
            "" => self.meaning.to_owned(),
            unit => format!("{}, {unit}.", self.meaning.trim_end_matches('.')),
        }
    }
}

/// A sentence as it goes on within another one: its first letter small.
///
/// ```
/// # use axlebow_results::within_a_sentence;
/// assert_eq!(within_a_sentence("Bending of the beam."), "bending of the beam.");
/// ```
pub fn within_a_sentence(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// A name and its SI unit as a key of JSON and CSV: products stand together, quotients get `per`, so that N m is `_nm`
/// and N/m is `_n_per_m`.
///
/// ```
/// # use axlebow_results::key;
/// assert_eq!(key("wall-flexibility", "rad/(N m)"), "wall_flexibility_rad_per_nm");
/// assert_eq!(key("warnings", ""), "warnings");
/// ```
pub fn key(name: &str, unit: &str) -> String {
    let unit = unit.to_lowercase().replace(['(', ')', ' '], "").replace('/', "_per_");
    format!("{}_{unit}", name.replace('-', "_")).trim_end_matches('_').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_units_look_alike_in_a_key() {
        let mut seen: Vec<(String, &str)> = Vec::new();
        for kind in Kind::ALL {
            let (written, unit) = (key("x", kind.si()), kind.si());
            let other = seen.iter().find(|(known, _)| *known == written);
            assert!(other.is_none_or(|(_, known)| *known == unit), "{unit} and {other:?}");
            seen.push((written, unit));
        }
    }

    #[test]
    fn keys_hold_the_unit_and_meanings_too() {
        let moment =
            Term { name: "moment-x", unit: Unit::Of(Kind::Moment), meaning: "Bending moment about X." };
        assert_eq!(
            (moment.key().as_str(), moment.description().as_str()),
            ("moment_x_nm", "Bending moment about X, N m.")
        );
        assert_eq!(key("rate", Kind::Stiffness.si()), "rate_n_per_m");
        assert_eq!(key("density", "rad2/Hz"), "density_rad2_per_hz");
        let flag = Term { name: "off-road", unit: Unit::None, meaning: "True." };
        assert_eq!((flag.key().as_str(), flag.description().as_str()), ("off_road", "True."));
    }
}
