//! The files that a study points to.

use std::path::{Path, PathBuf};

use axlebow_model::{Document, LARGEST, MODEL, Problems, ROAD, Table, TableSpec, named_file, read_bytes};

/// The model and road files that a study points to.
pub(crate) struct Files {
    /// The model of the study, if it names one.
    pub model: Option<Document>,
    /// The model of each variant that names its own.
    pub of_variants: Vec<Option<Document>>,
    /// The road of each ride, and the folder that it is in.
    pub roads: Vec<(Document, PathBuf)>,
    /// Where all of them are.
    pub paths: Vec<PathBuf>,
}

impl Files {
    /// Reads the files that a study names, from the study's folder.
    ///
    /// # Errors
    /// A file that cannot be read, as a problem of the study; else the problems of the first file that has any.
    pub fn read(study: &Document, folder: &Path) -> Result<Files, Problems> {
        let reading = Reading { study, folder };
        let root = study.root();
        let of_variant = |table| reading.file((table, "model"), &MODEL);
        let road = |table: &Table| {
            let file = reading.file((table, "road"), &ROAD)?;
            let path = folder.join(table.text("road"));
            Ok(file.map(|file| (file, path.parent().unwrap_or(folder).to_owned())))
        };
        let named = |(table, key): (&Table, &str)| Some(folder.join(table.optional_text(key)?));
        let variants = root.tables("variant").iter().map(|table| (table, "model"));
        let rides = root.tables("ride").iter().map(|table| (table, "road"));
        Ok(Files {
            paths: std::iter::once((root, "model")).chain(variants).chain(rides).filter_map(named).collect(),
            model: reading.file((root, "model"), &MODEL)?,
            of_variants: root.tables("variant").iter().map(of_variant).collect::<Result<_, _>>()?,
            roads: root
                .tables("ride")
                .iter()
                .filter_map(|table| road(table).transpose())
                .collect::<Result<_, _>>()?,
        })
    }
}

struct Reading<'d> {
    study: &'d Document,
    folder: &'d Path,
}

impl Reading<'_> {
    /// The file that a key names, if the key is there.
    fn file(
        &self,
        (table, key): (&Table, &str),
        spec: &'static TableSpec,
    ) -> Result<Option<Document>, Problems> {
        let Some(named) = table.optional_text(key) else { return Ok(None) };
        let bytes = named_file(self.study, (table, key), self.folder, LARGEST)?;
        read_bytes(&bytes, named, spec).map(Some)
    }
}
