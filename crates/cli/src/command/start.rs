//! `axlebow start`.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::args::Start;
use crate::failure::Failure;
use crate::output;

pub fn run(arguments: &Start) -> Result<ExitCode, Failure> {
    let ending = if arguments.readings { "csv" } else { "toml" };
    let path = file_of(&arguments.name, ending)?;
    if path.exists() && !arguments.force {
        let path = path.display();
        return Err(Failure::Input(format!("{path} exists; give another name, or --force to write over it")));
    }
    let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    let text = match &arguments.kind {
        None => axlebow_model::reading_sheet(&name),
        // clap has accepted the kind from the same list.
        Some(kind) => axlebow_model::starter(kind, &name)
            .ok_or_else(|| Failure::Input(format!("there is no starter for the kind {kind}")))?,
    };
    output::write_file(&path, text.as_bytes())?;
    let path = path.display();
    output::say(&match arguments.readings {
        true => format!("print it, fill it in, then run: axlebow fit MODEL --readings {path}"),
        false => format!("put your numbers in, then run: axlebow flex {path}"),
    });
    Ok(ExitCode::SUCCESS)
}

fn file_of(name: &str, ending: &str) -> Result<PathBuf, Failure> {
    let path = Path::new(name);
    if name.trim().is_empty() || path.file_name().is_none() {
        return Err(Failure::Input(format!(
            "`{name}` is not a name for a file; a name such as my-axle is accepted"
        )));
    }
    match path.extension() {
        Some(extension) if extension == ending => Ok(path.to_owned()),
        _ => Ok(PathBuf::from(format!("{name}.{ending}"))),
    }
}
