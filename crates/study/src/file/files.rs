//! The files that a study points to.

use std::path::{Path, PathBuf};

use axlebow_model::{
    DUTY, Document, LARGEST, Problems, ROAD, RoadFile, Table, TableSpec, likely, named_file, named_path,
    read_bytes, read_model, road_events,
};

/// The model and road files that a study points to.
pub(crate) struct Files {
    /// The model of the study, if it names one.
    pub model: Option<Document>,
    /// The model of each variant that names its own.
    pub of_variants: Vec<Option<Document>>,
    /// The duty of the study, if it names one.
    pub duty: Option<Document>,
    /// The road of each ride, and the folder that it is in.
    pub roads: Vec<(Document, PathBuf)>,
    /// Where all of them are.
    pub paths: Vec<PathBuf>,
}

impl Files {
    /// The refusal of the files that a study names and that are not there; none where all are.
    pub fn missing(study: &Document, folder: &Path) -> Option<Problems> {
        Reading { study, folder }.check_all().err()
    }

    /// Reads the files that a study names, from the study's folder.
    ///
    /// # Errors
    /// Files that cannot be read, as problems of the study; else the problems of the first file that has any.
    pub fn read(study: &Document, folder: &Path) -> Result<Files, Problems> {
        let reading = Reading { study, folder };
        let root = study.root();
        reading.check_all()?;
        let of_variant = |table| reading.model(table);
        let named = |(table, key): (&Table, &str)| {
            let text = table.optional_text(key).filter(|text| key != "road" || !is_event(text))?;
            Some(named_path((key, text), folder))
        };
        Ok(Files {
            paths: places(root).filter_map(named).collect(),
            model: reading.model(root)?,
            duty: reading.file((root, "duty"), &DUTY)?,
            of_variants: root.tables("variant").iter().map(of_variant).collect::<Result<_, _>>()?,
            roads: root
                .tables("ride")
                .iter()
                .filter_map(|table| reading.road(table).transpose())
                .collect::<Result<_, _>>()?,
        })
    }
}

/// The keys that name files.
fn places(root: &Table) -> impl Iterator<Item = (&Table, &'static str)> {
    let variants = root.tables("variant").iter().map(|table| (table, "model"));
    let rides = root.tables("ride").iter().map(|table| (table, "road"));
    [(root, "model"), (root, "duty")].into_iter().chain(variants).chain(rides)
}

/// Whether a road is named that needs no file.
fn is_event(named: &str) -> bool {
    road_events().any(|event| event == named)
}

struct Reading<'d> {
    study: &'d Document,
    folder: &'d Path,
}

impl Reading<'_> {
    /// Refuses all files at once that are not there.
    fn check_all(&self) -> Result<(), Problems> {
        let mut problems = self.study.problems();
        for (table, key) in places(self.study.root()) {
            let Some(named) = table.optional_text(key) else { continue };
            if (key != "road" || !is_event(named))
                && let Err(missing) = named_file(self.study, (table, key), self.folder, 0)
            {
                match key {
                    "road" => problems.absorb(&self.missing_road(named, table, &missing)),
                    _ => problems.absorb(&missing),
                }
            }
        }
        if problems.is_empty() { Ok(()) } else { Err(problems) }
    }

    /// The refusal of a road that is neither a file nor an event.
    fn missing_road(&self, named: &str, table: &Table, missing: &Problems) -> Problems {
        let Some(event) = likely(named, road_events()) else { return missing.clone() };
        let events: Vec<String> = road_events().map(|event| format!("`{event}`")).collect();
        let accepted =
            format!("a road file, named from the study's folder, or one of the events {}", events.join(", "));
        let message = format!("`road` names {named:?}, which is neither a file nor an event");
        let mut problems = self.study.problems();
        problems.push_likely(table.span_of("road"), message, (Some(accepted), Some(event)));
        problems
    }

    /// The road of a ride and the folder that it is in: an event by its name, or a file.
    fn road(&self, table: &Table) -> Result<Option<(Document, PathBuf)>, Problems> {
        if let Some(event) = RoadFile::event(table.text("road")) {
            return Ok(Some((event, self.folder.to_owned())));
        }
        let file = self.file((table, "road"), &ROAD)?;
        let path = named_path(("road", table.text("road")), self.folder);
        Ok(file.map(|file| (file, path.parent().unwrap_or(self.folder).to_owned())))
    }

    /// The model that a table names, if it names one.
    fn model(&self, table: &Table) -> Result<Option<Document>, Problems> {
        let Some(named) = table.optional_text("model") else { return Ok(None) };
        let bytes = named_file(self.study, (table, "model"), self.folder, LARGEST)?;
        read_model(&bytes, named).map(Some)
    }

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
