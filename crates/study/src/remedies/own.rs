//! Remedies of the user's own, from a file.

use axlebow_model::{Document, Holds, Presence, Problems, TableSpec, key, read_bytes};

use super::change::Change;

/// A remedy of the user's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnRemedy {
    /// What it is called.
    pub name: String,
    /// What it needs.
    pub needs: Option<String>,
    /// What it risks.
    pub risks: Option<String>,
    /// What it changes.
    pub changes: Vec<Change>,
}

/// A file of remedies.
pub static REMEDIES: TableSpec = TableSpec {
    name: "remedies file",
    meaning: "Remedies of one's own, to be tried beside the standard ones.",
    keys: &[key("remedy", "A remedy.", Holds::Tables(&REMEDY), Presence::Required)],
};

static REMEDY: TableSpec = TableSpec {
    name: "remedy",
    meaning: "A remedy: what it changes in a model.",
    keys: &[
        key("name", "What it is called in results.", Holds::Text, Presence::Required),
        key("change", "Paths in the model with what is to stand there.", Holds::Changes, Presence::Required),
        key("needs", "Parts, approval, downtime: what it needs.", Holds::Text, Presence::Optional),
        key("risks", "What it risks.", Holds::Text, Presence::Optional),
    ],
};

/// The remedies of a file, tried on a model.
///
/// # Errors
/// Every problem of the file at once, with its place: unknown keys, paths that the model does not have, values that may not
/// stand there, two remedies of one name.
pub fn own_remedies(bytes: &[u8], file_name: &str, model: &Document) -> Result<Vec<OwnRemedy>, Problems> {
    let document = read_bytes(bytes, file_name, &REMEDIES)?;
    let mut problems = document.problems();
    let mut all: Vec<OwnRemedy> = Vec::new();
    for table in document.root().tables("remedy") {
        let name = table.text("name").to_owned();
        if all.iter().any(|own| own.name == name) {
            problems.push(table.span_of("name"), format!("two remedies are named {name:?}"), None);
        }
        let mut tried = model.clone();
        for (path, text) in table.changes("change") {
            if let Err(refusal) = tried.set(&path.text, &text.text) {
                problems.push(path.span.clone(), format!("the remedy {name:?}: {refusal}"), None);
            }
        }
        let change = |(path, text): &(axlebow_model::Written, axlebow_model::Written)| Change::Key {
            path: path.text.clone(),
            text: text.text.clone(),
        };
        let text = |key: &str| table.optional_text(key).map(str::to_owned);
        let changes = table.changes("change").iter().map(change).collect();
        all.push(OwnRemedy { name, needs: text("needs"), risks: text("risks"), changes });
    }
    if problems.is_empty() { Ok(all) } else { Err(problems) }
}
