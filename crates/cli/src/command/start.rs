//! `axlebow start`.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::args::Start;
use crate::failure::Failure;
use crate::output;

pub fn run(arguments: &Start) -> Result<ExitCode, Failure> {
    let path = file_of(&arguments.name)?;
    if path.exists() && !arguments.force {
        let path = path.display();
        return Err(Failure::Input(format!("{path} exists; give another name, or --force to write over it")));
    }
    let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    // clap has accepted the kind from the same list.
    let text = axlebow_model::starter(&arguments.kind, &name)
        .ok_or_else(|| Failure::Input(format!("there is no starter for the kind {}", arguments.kind)))?;
    output::write_file(&path, text.as_bytes())?;
    let path = path.display();
    eprintln!("wrote {path}; put your numbers in, then run: axlebow flex {path}");
    Ok(ExitCode::SUCCESS)
}

fn file_of(name: &str) -> Result<PathBuf, Failure> {
    let path = Path::new(name);
    if name.trim().is_empty() || path.file_name().is_none() {
        return Err(Failure::Input(format!(
            "`{name}` is not a name for a file; a name such as my-axle is accepted"
        )));
    }
    match path.extension() {
        Some(extension) if extension == "toml" => Ok(path.to_owned()),
        _ => Ok(PathBuf::from(format!("{name}.toml"))),
    }
}
