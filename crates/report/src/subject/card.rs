//! What a report says about the model itself.

use axlebow_model::Model;
use axlebow_units::UnitSystem;

/// The program and its version, as every output names them.
pub const PROGRAM: &str = concat!("axlebow ", env!("CARGO_PKG_VERSION"));

/// What a report says about the model itself.
#[derive(Debug, Clone, PartialEq)]
pub struct ModelCard {
    /// Name of the model; any text.
    pub name: String,
    /// Hash of the model file.
    pub hash: String,
    /// What the command line changed or added, in its words: `set tube.wall=9 mm`, `over pothole.toml`.
    pub settings: Vec<String>,
    /// Defaults that stand for what the file does not say.
    pub assumed: Vec<Assumed>,
    /// Units of tables and plots.
    pub system: UnitSystem,
    /// True when the model is a made-up demonstration.
    pub invented: bool,
    /// Keys whose values are typical of such axles and not measured on this one.
    pub typical: Vec<String>,
    /// What of all that the model was run with is a made-up demonstration.
    pub invented_inputs: Vec<InventedInput>,
}

/// Something beside the model itself that is a made-up demonstration.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InventedInput {
    /// A road.
    Road,
    /// A tire.
    Tire,
    /// A duty.
    Duty,
    /// Another axle that stands beside the model.
    OtherAxle,
}

impl InventedInput {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            InventedInput::Road => "road",
            InventedInput::Tire => "tire",
            InventedInput::Duty => "duty",
            InventedInput::OtherAxle => "other axle",
        }
    }
}

impl ModelCard {
    /// What results say about a model, in the units that the reader asks for or else in those of its file.
    pub fn of(model: &Model, system: Option<UnitSystem>) -> Self {
        let assumed = |used: &axlebow_model::Assumed| Assumed {
            path: used.path.clone(),
            value: used.text.clone(),
            meaning: used.meaning.to_owned(),
        };
        ModelCard {
            name: model.name.clone(),
            hash: model.hash.clone(),
            settings: model.notes.clone(),
            assumed: model.assumed.iter().map(assumed).collect(),
            system: system.unwrap_or(model.system),
            invented: model.invented,
            typical: model.typical.clone(),
            invented_inputs: Vec::new(),
        }
    }

    /// Adds an input, once, if it is made up.
    pub fn add_input(&mut self, input: InventedInput, invented: bool) {
        if invented && !self.invented_inputs.contains(&input) {
            self.invented_inputs.push(input);
        }
    }

    /// What the result was made from, a line each, so that it can be made again.
    pub(crate) fn provenance(&self) -> Vec<String> {
        let defaults = self.assumed.iter().map(|used| format!("default: {} = {}", used.path, used.value));
        self.made_from().into_iter().chain(defaults).collect()
    }

    /// Program, model, units and settings, which decide the defaults too, a line each.
    pub(crate) fn made_from(&self) -> Vec<String> {
        let units = match self.system {
            UnitSystem::Si => "SI",
            UnitSystem::Us => "US",
        };
        let model = [
            format!("made by {PROGRAM}"),
            format!("model: {}", self.name),
            format!("model hash: {}", self.hash),
            format!("units: {units}"),
        ];
        let settings = self.settings.iter().map(|setting| format!("setting: {setting}"));
        model.into_iter().chain(settings).collect()
    }

    /// What is not this axle's own, as a sentence: what is made up, or what nobody has measured; none where nothing is.
    pub(crate) fn invented_note(&self) -> Option<String> {
        if self.invented {
            return Some("Demonstration data, invented.".to_owned());
        }
        if !self.typical.is_empty() {
            let keys = in_groups(&self.typical);
            return Some(format!(
                "Typical values, not measured on this axle: {keys}. Confirm them before relying on this."
            ));
        }
        let words: Vec<&str> = self.invented_inputs.iter().map(|input| input.word()).collect();
        let are = if words.len() > 1 { "are" } else { "is" };
        (!words.is_empty())
            .then(|| format!("The {} {are} demonstration data, invented.", words.join(" and the ")))
    }
}

/// The tables that paths are of, those of which all is meant first: "spindle, mass; in part: tube, wheel".
fn in_groups(paths: &[String]) -> String {
    let (mut whole, mut part): (Vec<&str>, Vec<&str>) = Default::default();
    for path in paths {
        let (table, is_part) =
            path.split_once(['.', '[']).map_or((path.as_str(), false), |(table, _)| (table, true));
        let group = if is_part { &mut part } else { &mut whole };
        if !group.contains(&table) {
            group.push(table);
        }
    }
    let part = if part.is_empty() { String::new() } else { format!("in part: {}", part.join(", ")) };
    [whole.join(", "), part].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join("; ")
}

/// A default that was used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumed {
    /// Path of the key, such as `seat.bush.rate`.
    pub path: String,
    /// Value as a model file would say it, such as `2.5 kN/mm`.
    pub value: String,
    /// What the key means.
    pub meaning: String,
}

#[cfg(test)]
mod tests {
    use super::in_groups;

    #[test]
    fn typical_keys_are_named_by_their_table() {
        let paths = ["tube.wall", "tube.length", "spindle", "housing.profile[0]"].map(str::to_owned);
        assert_eq!(in_groups(&paths), "spindle; in part: tube, housing");
        assert_eq!(in_groups(&paths[..2]), "in part: tube");
    }
}
