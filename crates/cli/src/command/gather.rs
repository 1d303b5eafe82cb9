//! `axlebow gather`.

use axlebow_study::{Part, Results, ResultsFile, StoreError};
use std::ffi::OsStr;
use std::path::Path;

use super::study_saving::quoted;
use super::{study_input, study_output};
use crate::args::Gather;
use crate::failure::{Exit, Failure};
use crate::{input, output};

/// Commands that are named at most.
const NAMED: usize = 8;

pub fn run(arguments: &Gather) -> Result<Exit, Failure> {
    study_output::check(&arguments.output)?;
    let study = study_input::study(&arguments.input)?.ready();
    arguments.parts.iter().for_each(|part| input::remember_read(part));
    study_output::check_places(&arguments.output)?;
    let head = study.head(Part::WHOLE);
    let opened = arguments.parts.iter().map(|path| ResultsFile::read(path, &head));
    let results = opened.collect::<Result<Vec<_>, _>>().and_then(Results::of);
    let results = results.map_err(|error| what_to_do(error, arguments))?;
    let written = study_output::write(&study, &results, &arguments.output)?;
    output::print(&written.text)?;
    written.picture?;
    Ok(Exit::Done)
}

/// Adds the commands that make what is missing.
fn what_to_do(error: StoreError, arguments: &Gather) -> Failure {
    let then = match &error {
        StoreError::Missing { parts, .. } => {
            let commands = parts.iter().take(NAMED).map(|part| format!("\n  {}", making(part, arguments)));
            let more = parts.len().saturating_sub(NAMED);
            let more = if more > 0 { format!("\n  and {more} parts more") } else { String::new() };
            format!("; make them by{}{more}", commands.collect::<String>())
        }
        StoreError::Foreign { .. } => {
            "; gather what belongs together, with the --show and --coarse that the parts were made with"
                .to_owned()
        }
        StoreError::Damaged { .. } => "; run this part again, with --restart".to_owned(),
        StoreError::Busy { .. } => "; wait for it".to_owned(),
        _ => String::new(),
    };
    Failure::Input(format!("{error}{then}"))
}

/// The command that makes a part, or what it lacks.
fn making(part: &Part, Gather { input, parts, .. }: &Gather) -> String {
    let own = |path: &Path| Some(path.to_str()?.rsplit_once(".part-")?.0.to_owned());
    let out = parts.first().and_then(|path| own(path)).unwrap_or_else(|| "OUT.csv".to_owned());
    let kind = if out.ends_with(".parquet") { "--parquet" } else { "--csv" };
    let coarse = input.coarse.map_or(String::new(), |values| format!(" --coarse {values}"));
    let show: String = input.show.iter().map(|name| format!(" --show {name}")).collect();
    let (study, out) = (quoted(input.study.as_os_str()), quoted(OsStr::new(&out)));
    format!("axlebow study {study}{coarse}{show} {kind} {out} --part {part} --resume")
}
