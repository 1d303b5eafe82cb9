//! A stiffener put onto a model that was read already.

use super::text::read;
use crate::content::{Document, Entry, Table, Value};
use crate::declare::{Holds, Presence, TableSpec, key};
use crate::faults::Problems;
use crate::keys::STIFFENER;

/// A text that holds nothing but stiffeners.
static STIFFENERS: TableSpec = TableSpec {
    name: "stiffener",
    meaning: "Stiffeners to be put onto a model.",
    keys: &[key(
        "stiffener",
        "A shape welded along the axle.",
        Holds::Tables(&STIFFENER),
        Presence::Required,
    )],
};

impl Document {
    /// The same model with further stiffeners.
    ///
    /// Arguments: `text`, `[[stiffener]]` tables as a model file writes them.
    ///
    /// # Errors
    /// What is wrong with the text; whether the stiffener fits the axle shows when the model is built.
    pub fn with_stiffener(&self, text: &str) -> Result<Document, Problems> {
        let added = read(text, "stiffener", &STIFFENERS)?;
        let mut tables: Vec<Table> = self.root().tables("stiffener").to_vec();
        tables.extend(added.root().tables("stiffener").iter().cloned());
        let entry = Entry {
            key: "stiffener",
            value: Value::Tables(tables),
            span: self.root().span_of("stiffener"),
            assumed: false,
            note: None,
        };
        let mut document = self.clone();
        document.put("stiffener", &[], entry);
        Ok(document)
    }
}

#[cfg(test)]
mod tests {
    use crate::{Model, read_bytes};

    const ANGLE: &str = "[[stiffener]]\nname = \"top angle\"\nshape = \"angle\"\nsize = \"L75x75x8\"\n\
        orientation = \"toes-down\"\nlength = \"830 mm\"\ncenter = \"0 mm\"\nend = \"tapered\"\n\
        end_length = \"60 mm\"\nweld_leg = \"6 mm\"\n";

    fn demo(name: &str) -> crate::Document {
        let path = format!("{}/../../models/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        read_bytes(&std::fs::read(path).unwrap(), name, &crate::MODEL).unwrap()
    }

    #[test]
    fn a_stiffener_put_on_is_the_one_of_a_file_that_has_it() {
        let put_on = Model::of(&demo("trailer-152-thin-dual").with_stiffener(ANGLE).unwrap()).unwrap();
        let written = Model::of(&demo("trailer-152-thin-dual-angle")).unwrap();
        assert_eq!(put_on.axle.stiffeners, written.axle.stiffeners);
    }

    #[test]
    fn a_stiffener_that_is_none_is_refused() {
        let problems =
            demo("trailer-152-thin-dual").with_stiffener(&ANGLE.replace("6 mm", "6 kg")).unwrap_err();
        assert!(problems.to_string().contains("weld_leg"), "{problems}");
        assert!(demo("trailer-152-thin-dual").with_stiffener("").is_err());
    }
}
