//! A study with what the user asks of it.

use std::path::Path;

use axlebow_model::given_file;
use axlebow_study::Study as StudyFile;

use crate::args::StudyInput;
use crate::failure::Failure;
use crate::input;

/// Reads the study file and the files that it points to.
pub fn study(arguments: &StudyInput) -> Result<StudyFile, Failure> {
    let path = given_file(&arguments.study, "toml");
    let bytes = input::read_file(&path)?;
    let folder = path.parent().unwrap_or(Path::new(""));
    let study = StudyFile::from_bytes(&bytes, &path.display().to_string(), folder)
        .map_err(|problems| input::misread(problems, &bytes, input::FileKind::Study))?;
    study.files.iter().for_each(|path| input::remember_read(path));
    input::say_notes(study.notes.iter().cloned());
    chosen(study, arguments)
}

/// The study with the results and as many values as the user asks for.
fn chosen(mut study: StudyFile, arguments: &StudyInput) -> Result<StudyFile, Failure> {
    if let Some(most) = arguments.coarse {
        study = study.coarse(most.into());
    }
    if !arguments.show.is_empty() {
        let named = arguments.show.iter().map(|name| result(name, &study));
        study.shown = named.collect::<Result<_, _>>()?;
    }
    Ok(study)
}

/// The name of a result, if the study has it.
fn result(name: &str, study: &StudyFile) -> Result<String, Failure> {
    study.result_named(name).map_err(|none| {
        let likely = none.likely.map_or(String::new(), |near| format!("; did you mean {near}?"));
        Failure::Input(format!("--show {name}: {}; accepted: {}{likely}", none.why, none.accepted))
    })
}
