//! Where results of a study are saved while it runs, and what is said when it stops.

use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use axlebow_study::{Earlier, Head, Part, ResultsFile, StoreError, Study as StudyFile};

use super::progress::Progress;
use crate::args::{Study, StudyOutput};
use crate::destination::is_stream;
use crate::failure::{Exit, Failure};
use crate::{input, output};

/// Runs a study, or a part of it, into a file of results beside its output; into one without a name where there is none.
pub fn saved(study: &StudyFile, arguments: &Study) -> Result<ResultsFile, Failure> {
    let head = study.head(arguments.part.unwrap_or(Part::WHOLE));
    let earlier = match (arguments.resume, arguments.restart) {
        (true, _) => Earlier::Kept,
        (_, true) => Earlier::Dropped,
        _ => Earlier::Refused,
    };
    let path = path(&arguments.output, arguments.part);
    let file = match &path {
        Some(path) => begun(path, head, earlier)?,
        None => nameless(head, arguments)?,
    };
    let done = Arc::new(AtomicUsize::new(file.designs()));
    if file.designs() > 0 {
        let (designs, path) = (file.designs(), file.path().display());
        output::say(&format!("going on from {designs} designs that are saved in {path}"));
    }
    if let Some(path) = &path {
        say_when_stopped(path, &done);
    }
    let progress = Progress::over(study.count());
    study.save(&file, &|own, of| {
        done.fetch_max(own, Ordering::Relaxed);
        progress.at_of(done.load(Ordering::Relaxed), of);
    })?;
    progress.end();
    Ok(file)
}

/// Begins or goes on with the file in which results are saved.
fn begun(path: &Path, head: Head, earlier: Earlier) -> Result<ResultsFile, Failure> {
    if input::has_read(path) {
        let path = path.display();
        return Err(Failure::Input(format!(
            "cannot save results in {path}: this run reads it; give another file"
        )));
    }
    ResultsFile::begin(path, head, earlier).map_err(what_to_do)
}

/// A file of results that nobody can go on with.
fn nameless(head: Head, arguments: &Study) -> Result<ResultsFile, Failure> {
    let asked = [
        ("--resume", arguments.resume),
        ("--restart", arguments.restart),
        ("--part", arguments.part.is_some()),
    ];
    match asked.iter().find(|(_, is_asked)| *is_asked) {
        Some((option, _)) => Err(Failure::Input(format!(
            "{option}: results are saved beside a file, and a pipe or device has none; give --csv a file"
        ))),
        None => Ok(ResultsFile::nameless(head)?),
    }
}

/// Where results are saved: beside the first file that is written; nowhere where there is none.
pub fn path(output: &StudyOutput, part: Option<Part>) -> Option<PathBuf> {
    let files = [&output.csv, &output.parquet].into_iter().flatten();
    let mut path = OsString::from(files.into_iter().find(|path| !is_stream(path))?);
    path.push(".");
    path.push(part.map_or_else(|| "work".to_owned(), |part| part.suffix()));
    Some(PathBuf::from(path))
}

/// Has Ctrl-C say how many designs are saved and how to go on.
fn say_when_stopped(path: &Path, done: &Arc<AtomicUsize>) {
    let (path, done) = (path.display().to_string(), Arc::clone(done));
    // Without a handler Ctrl-C ends the run all the same.
    let _ = ctrlc::set_handler(move || {
        let designs = done.load(Ordering::Relaxed);
        output::say(&format!("\nstopped: {designs} designs are saved in {path}; `{}` goes on", resuming()));
        std::process::exit(Exit::Stopped.code().into());
    });
}

/// The command that goes on with this one.
fn resuming() -> String {
    let own = std::env::args_os().filter(|word| word != "--restart" && word != "--resume");
    let words: Vec<String> = own.map(|word| quoted(&word)).collect();
    format!("{} --resume", words.join(" "))
}

/// A word as a shell takes it.
pub fn quoted(word: &OsStr) -> String {
    let is_plain = |letter: char| letter.is_alphanumeric() || "-_./=:,+@%".contains(letter);
    let Some(word) = word.to_str().filter(|word| !word.contains(char::is_control)) else {
        return format!("$'{}'", word.as_encoded_bytes().escape_ascii());
    };
    if !word.is_empty() && word.chars().all(is_plain) {
        word.to_owned()
    } else {
        format!("'{}'", word.replace('\'', "'\\''"))
    }
}

/// Adds what to do about results that are in the way.
fn what_to_do(error: StoreError) -> Failure {
    let then = match &error {
        StoreError::Unfinished { .. } => {
            format!("; `{}` goes on with them, --restart throws them away", resuming())
        }
        StoreError::Foreign { .. } | StoreError::Damaged { .. } | StoreError::NoResults { .. } => {
            "; move it away, or --restart throws it away".to_owned()
        }
        StoreError::Busy { .. } => "; wait for it, or stop it".to_owned(),
        _ => String::new(),
    };
    Failure::Input(format!("{error}{then}"))
}
