//! Model files with the user's changes.

use axlebow_model::{
    Document, DutyFile, LARGEST, Model, Problems, TireFile, given_file, read_model, road_kinds, why_missing,
};
use axlebow_report::{Assumed, InventedInput, ModelCard};
use axlebow_units::{Kind, UnitSystem, parse_or_zero};
use std::cell::Cell;
use std::collections::BTreeSet;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use crate::args::{ModelInput, Units};
use crate::failure::Failure;
use crate::output;

/// Plain files that this run has read, symbolic links followed: no output may replace one of them.
static READ: Mutex<BTreeSet<PathBuf>> = Mutex::new(BTreeSet::new());

thread_local! {
    /// Unit system of the first model of this run.
    static SYSTEM: Cell<Option<UnitSystem>> = const { Cell::new(None) };
}

/// The unit system that refusals are in: that of the first model of this run.
pub fn system() -> UnitSystem {
    SYSTEM.get().unwrap_or(UnitSystem::Si)
}

/// A duty file, with its defaults and its name on the card.
pub fn duty(path: &Path, card: &mut ModelCard) -> Result<DutyFile, Failure> {
    let path = given_file(path, "toml");
    let file =
        DutyFile::from_bytes(&read_file(&path)?, &path.display().to_string()).map_err(Failure::File)?;
    card.assumed.extend(file.assumed.iter().map(|own| assumed("duty.", own)));
    card.settings.push(format!("duty {}", path.display()));
    card.add_input(InventedInput::Duty, file.invented);
    Ok(file)
}

/// Forgets what runs before this one have read.
pub fn forget_read() {
    READ.lock().unwrap_or_else(PoisonError::into_inner).clear();
    SYSTEM.set(None);
}

/// Remembers that this run reads a file.
pub fn remember_read(path: &Path) {
    if let Ok(path) = path.canonicalize() {
        READ.lock().unwrap_or_else(PoisonError::into_inner).insert(path);
    }
}

/// Whether this run has read the file at a path.
pub fn has_read(path: &Path) -> bool {
    path.canonicalize().is_ok_and(|path| READ.lock().unwrap_or_else(PoisonError::into_inner).contains(&path))
}

/// Reads a file, stopping just past the longest that is accepted.
pub fn read_file(path: &Path) -> Result<Vec<u8>, Failure> {
    read_up_to(path, LARGEST)
}

/// Reads a file, stopping just past a length.
pub fn read_up_to(path: &Path, longest: usize) -> Result<Vec<u8>, Failure> {
    let failed = |error: &std::io::Error| match error.kind() {
        ErrorKind::NotFound => {
            Failure::Input(format!("cannot read {}: {}", path.display(), why_missing(path)))
        }
        _ => Failure::on_file("read", path, error),
    };
    let file = std::fs::File::open(path).map_err(|error| failed(&error))?;
    remember_read(path);
    let mut bytes = Vec::new();
    file.take(longest as u64 + 1).read_to_end(&mut bytes).map_err(|error| failed(&error))?;
    Ok(bytes)
}

/// A model file as it is.
pub fn plain_model(path: &Path) -> Result<Model, Failure> {
    let path = given_file(path, "toml");
    let bytes = read_file(&path)?;
    let document = read_model(&bytes, &path.display().to_string());
    let model = document
        .and_then(|document| Model::of(&document))
        .map_err(|problems| misread(problems, &bytes, FileKind::Model))?;
    say_notes(model.notes.iter().map(|note| format!("{}: {note}", path.display())));
    Ok(model)
}

/// Says how input was read, where that is not plain from it.
pub fn say_notes(notes: impl IntoIterator<Item = String>) {
    notes.into_iter().for_each(|note| output::say(&format!("note: {note}")));
}

/// A tire file as it is.
pub fn tire(path: &Path) -> Result<TireFile, Failure> {
    let path = given_file(path, "toml");
    let bytes = read_file(&path)?;
    TireFile::from_bytes(&bytes, &path.display().to_string())
        .map_err(|problems| misread(problems, &bytes, FileKind::Tire))
}

/// The model of a command, changes made.
pub fn model(input: &ModelInput) -> Result<Model, Failure> {
    built(&document(input)?, input)
}

/// The axle that a command's model file with its changes describes.
pub fn built(document: &Document, input: &ModelInput) -> Result<Model, Failure> {
    let model = Model::of(document).map_err(|problems| changed(problems, "--set", &input.changes))?;
    say_notes(model.notes.iter().cloned());
    SYSTEM.set(SYSTEM.get().or(Some(model.system)));
    Ok(model)
}

/// The model file of a command, changes made.
pub fn document(input: &ModelInput) -> Result<Document, Failure> {
    let mut document = plain_document(&input.model)?;
    for change in &input.changes {
        set(&mut document, "--set", change)?;
    }
    Ok(document)
}

/// A model file as it is.
pub fn plain_document(path: &Path) -> Result<Document, Failure> {
    let path = given_file(path, "toml");
    let bytes = read_file(&path)?;
    read_model(&bytes, &path.display().to_string())
        .map_err(|problems| misread(problems, &bytes, FileKind::Model))
}

/// Problems with a note of the changes that the file was read with.
pub fn changed(problems: Problems, option: &str, changes: &[String]) -> Failure {
    if changes.is_empty() {
        return Failure::File(problems);
    }
    let changes = changes.join(", ");
    let note =
        format!("the file was read with {option} {changes}; what is underlined may be what it replaces");
    Failure::Noted(problems, note)
}

/// Problems of a file with a note where it is one of another kind.
pub fn misread(problems: Problems, bytes: &[u8], wanted: FileKind) -> Failure {
    let text = String::from_utf8_lossy(bytes);
    let has = |line: &str| text.lines().any(|own| own.trim() == line);
    let found = if has("[[vary]]") || has("[[variant]]") {
        FileKind::Study
    } else if has("[[span]]") {
        FileKind::Beam
    } else if has("[[tire]]") {
        FileKind::Case
    } else if has("[loads]") || has("[[wheel_end]]") {
        FileKind::Model
    } else if road_kinds().any(|kind| has(&format!("kind = \"{kind}\""))) {
        FileKind::Road
    } else if has("[[remedy]]") {
        FileKind::Remedies
    } else if has("[tread]") {
        FileKind::Tire
    } else {
        return Failure::File(problems);
    };
    if found == wanted {
        return Failure::File(problems);
    }
    let note = match found {
        FileKind::Study => "this looks like a study file; `axlebow study` runs it",
        FileKind::Model => "this looks like a model file; `axlebow flex` runs it",
        FileKind::Road => "this looks like a road file; `axlebow ride MODEL --over` takes it",
        FileKind::Remedies => {
            "this looks like a file of remedies; `axlebow remedies MODEL --remedies` takes it"
        }
        FileKind::Beam => "this looks like a beam file; `axlebow beam` runs it",
        FileKind::Case => "this looks like a case sheet; `axlebow explain` takes it",
        FileKind::Tire => "this looks like a tire file; `axlebow tire MODEL --tire` takes it",
    };
    Failure::Noted(problems, note.to_owned())
}

/// What a file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileKind {
    Model,
    Study,
    Road,
    Remedies,
    Tire,
    Case,
    Beam,
}

/// Makes the change that an option asks for, as KEY=VALUE.
pub fn set(document: &mut Document, option: &str, change: &str) -> Result<(), Failure> {
    let wrong = |text: String| Failure::Input(format!("{option} {change}: {text}"));
    let example = if option == "--road" { "height=\"30 mm\"" } else { "tube.wall=\"9 mm\"" };
    let parts = change.split_once('=');
    let (path, value) = parts.ok_or_else(|| wrong(format!("KEY=VALUE is accepted, such as {example}")))?;
    // Quotes as in the file are welcome, though the shell needs none.
    let value = value.trim();
    let bare = value.strip_prefix('"').and_then(|rest| rest.strip_suffix('"')).unwrap_or(value);
    document.set(path.trim(), bare).map_err(|error| wrong(error.to_string()))
}

/// What results say about the model, in the units that the user asks for or else in those of the file.
pub fn card(model: &Model, input: &ModelInput) -> ModelCard {
    let mut card = card_of(model, input.units);
    card.settings.splice(..0, input.changes.iter().map(|change| format!("set {change}")));
    card
}

/// As [`card`], for a model that is not a command's own.
pub fn card_of(model: &Model, units: Option<Units>) -> ModelCard {
    ModelCard::of(model, units.map(Into::into))
}

/// A default in use, its path under `prefix`.
pub fn assumed(prefix: &str, used: &axlebow_model::Assumed) -> Assumed {
    Assumed {
        path: format!("{prefix}{}", used.path),
        value: used.text.clone(),
        meaning: used.meaning.to_owned(),
    }
}

/// A quantity given as an option: its SI value and the unit system of its unit; a zero needs no unit.
pub fn quantity(option: &str, text: &str, kind: Kind) -> Result<(f64, Option<UnitSystem>), Failure> {
    let parsed = parse_or_zero(text, kind).map_err(|error| {
        Failure::Input(format!("{option} {text}: {}; accepted: {}", error.message(), error.accepted()))
    })?;
    Ok((parsed.value, parsed.system))
}
