//! Starter files: a commented model that runs as it is, and a sheet for readings.

mod guided;
mod guided_answer;
mod guided_file;
mod question;
mod tire_size;
mod typical_keys;

pub use guided::GuidedStart;
pub use question::GuidedQuestion;

/// Kinds of axle that have a starter, as `kind` in a model file says them.
pub const KINDS: [&str; 2] = ["trailer-tube", "drive-housing"];

const TRAILER_TUBE: &str = include_str!("../starters/trailer-tube.toml");
const DRIVE_HOUSING: &str = include_str!("../starters/drive-housing.toml");

/// The commented starter file of a kind, with the axle called `name`; `None` for a kind not in [`KINDS`].
pub fn starter(kind: &str, name: &str) -> Option<String> {
    let template = match kind {
        "trailer-tube" => TRAILER_TUBE,
        "drive-housing" => DRIVE_HOUSING,
        _ => return None,
    };
    Some(template.replace("@NAME@", &quoted(name)))
}

/// A common axle to begin from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TypicalAxle {
    /// What it is called in `axlebow start --like`.
    pub name: &'static str,
    /// What it is, a sentence.
    pub about: &'static str,
    text: &'static str,
}

macro_rules! typical {
    ($name:literal, $about:literal) => {
        TypicalAxle {
            name: $name,
            about: $about,
            text: include_str!(concat!("../../../models/typical/", $name, ".toml")),
        }
    };
}

/// Common axles: their dimensions are common practice, no source, and marked as typical until each is confirmed.
pub const TYPICAL: [TypicalAxle; 6] = [
    typical!("trailer-5-inch-duals", "Trailer tube of 5 in with a 5/8 in wall, clamped seats, duals."),
    typical!("trailer-5-inch-wide-base-outset", "The same on wide-base tires with 2 in outset."),
    typical!(
        "trailer-5-3-4-inch-duals",
        "Trailer tube of 5-3/4 in with a 7/16 in wall, welded seats, duals."
    ),
    typical!("trailer-5-3-4-inch-wide-base-outset", "The same on wide-base tires with 2 in outset."),
    typical!("drive-duals", "Drive housing of 3/8 in wall on leaf springs, duals."),
    typical!("drive-wide-base-outset", "The same on wide-base tires with 2 in outset."),
];

impl TypicalAxle {
    /// Its model file, under its own name.
    pub fn text(&self) -> &'static str {
        self.text
    }

    /// The model file of an axle like this one that is called `name`.
    pub fn called(&self, name: &str) -> String {
        let rest =
            self.text.split_once("\nname = ").and_then(|(head, rest)| Some((head, rest.split_once('\n')?.1)));
        // Every file of the list has its name; the tests look.
        rest.map_or(self.text.to_owned(), |(head, rest)| {
            format!("{head}\nname = \"{}\"\n{rest}", quoted(name))
        })
    }
}

/// A name within the quotes of TOML: a quotation mark or a backslash in it must not end them.
fn quoted(name: &str) -> String {
    name.chars().filter(|c| !c.is_control()).flat_map(escaped).collect()
}

/// The sheet that shop readings are written into, a CSV file with a word on how to take each; `name` stands at its top.
pub fn reading_sheet(name: &str) -> String {
    let plain: String = name.chars().filter(|c| !c.is_control()).collect();
    include_str!("../starters/readings.csv").replace("@NAME@", &plain)
}

/// The commented case sheet to fill in at a worn axle; `name` stands at its top.
pub fn case_starter(name: &str) -> String {
    include_str!("../starters/case.toml").replace("@NAME@", &quoted(name))
}

fn escaped(c: char) -> impl Iterator<Item = char> {
    let slash = matches!(c, '"' | '\\').then_some('\\');
    slash.into_iter().chain(std::iter::once(c))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{MODEL, Model, TableSpec};

    #[test]
    fn every_starter_runs_as_it_is() {
        for kind in KINDS {
            let text = starter(kind, "a \"quoted\" \\ name").unwrap();
            let model = Model::from_bytes(text.as_bytes(), kind).unwrap_or_else(|p| panic!("{}", p.render()));
            assert_eq!(model.kind, kind);
            assert_eq!(model.name, "a \"quoted\" \\ name");
            axlebow_axle::flex(&model.axle, &model.cases).unwrap();
        }
        assert!(starter("bogie", "x").is_none());
    }

    #[test]
    fn every_typical_axle_runs_is_called_as_asked_and_says_what_nobody_has_measured() {
        for typical in TYPICAL {
            let text = typical.called("a \"quoted\" name");
            let model =
                Model::from_bytes(text.as_bytes(), typical.name).unwrap_or_else(|p| panic!("{}", p.render()));
            assert_eq!(model.name, "a \"quoted\" name");
            assert!(model.typical.len() >= 6 && !model.invented, "{}", typical.name);
            axlebow_axle::flex(&model.axle, &model.cases).unwrap();
        }
        let wrong = TYPICAL[0].called("x").replace("\"spindle\"", "\"spindel\"");
        let problems = Model::from_bytes(wrong.as_bytes(), "x").unwrap_err().render();
        assert!(
            problems.contains("the model has no `spindel`") && problems.contains("spindle"),
            "{problems}"
        );
    }

    #[test]
    fn a_reading_sheet_is_read_once_it_is_filled_in() {
        let model = starter(KINDS[0], "x").unwrap();
        let model = Model::from_bytes(model.as_bytes(), "x").unwrap_or_else(|p| panic!("{}", p.render()));
        let sheet = reading_sheet("trailer 12\n, left bay");
        let empty = crate::readings(sheet.as_bytes(), "sheet.csv", &model).unwrap_err();
        assert!(empty.render().contains("none of the 7 readings is filled in"), "{}", empty.render());
        let filled =
            sheet.replace("rolling,,0.05 deg", "rolling,-0.2 deg,0.05 deg").replace(",,0.3", ",-1.5 mm,0.3");
        let readings = crate::readings(filled.as_bytes(), "sheet.csv", &model);
        assert_eq!(readings.unwrap_or_else(|p| panic!("{}", p.render())).len(), 7);
    }

    /// Lines that only comment a default out are good TOML with the default's own value.
    #[test]
    fn defaults_that_a_starter_shows_are_the_real_ones() {
        for kind in KINDS {
            let text = starter(kind, "x").unwrap();
            let plain = Model::from_bytes(text.as_bytes(), kind).unwrap();
            let shown: Vec<&str> = plain.assumed.iter().map(|assumed| assumed.text.as_str()).collect();
            for line in text.lines().filter_map(|line| line.strip_prefix("# ")) {
                let Some((key, value)) = line.split_once(" = ") else { continue };
                let value = value.split("  #").next().unwrap_or(value).trim().trim_matches('"');
                // `name` is a key of several tables, and only that of the material has a default.
                let default = plain.assumed.iter().find(|own| key != "name" && last_key(&own.path) == key);
                if let Some(assumed) = default {
                    assert_eq!(assumed.text.trim_matches('"'), value, "{kind} {key} of {shown:?}");
                }
            }
        }
    }

    #[test]
    fn starters_name_only_keys_that_exist() {
        for kind in KINDS {
            for line in starter(kind, "x").unwrap().lines() {
                let line = line.strip_prefix("# ").unwrap_or(line);
                let Some((key, _)) = line.split_once(" = ") else { continue };
                assert!(has_key(&MODEL, key), "{kind}: {key}");
            }
        }
    }

    fn last_key(path: &str) -> &str {
        path.rsplit('.').next().unwrap_or(path)
    }

    fn has_key(spec: &TableSpec, key: &str) -> bool {
        use crate::Holds::{Table, Tables};
        spec.keys.iter().any(|own| {
            own.key == key || matches!(own.holds, Table(inner) | Tables(inner) if has_key(inner, key))
        })
    }
}
