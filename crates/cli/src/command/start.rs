//! `axlebow start`.

use axlebow_model::TYPICAL;
use std::path::{Path, PathBuf};

use crate::args::Start;
use crate::failure::{Exit, Failure};
use crate::output;

pub fn run(arguments: &Start) -> Result<Exit, Failure> {
    if arguments.guided {
        return super::guided::run(arguments);
    }
    let Some(name) = &arguments.name else {
        output::print(&choices())?;
        return Ok(Exit::Done);
    };
    let ending = if arguments.readings { "csv" } else { "toml" };
    let path = new_file(name, ending, arguments.force)?;
    let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    output::check_kind("--page", arguments.page.as_deref(), "html")?;
    output::write_file(&path, text(arguments, &name)?.as_bytes())?;
    if let Some(page) = &arguments.page {
        output::write_file(page, axlebow_report::table::case_page(&name).as_bytes())?;
    }
    let path = path.display();
    if arguments.case {
        output::say(&format!("fill it in at the axle, then run: axlebow explain {path}"));
        return Ok(Exit::Done);
    }
    output::say(&match (arguments.readings, &arguments.like) {
        (true, _) => format!("print it, fill it in, then run: axlebow fit MODEL --readings {path}"),
        (false, Some(_)) => format!(
            "it runs as it is: axlebow flex {path}; measure yours, put each number in, and take its key out of `typical`"
        ),
        (false, None) => format!("put your numbers in, then run: axlebow flex {path}"),
    });
    Ok(Exit::Done)
}

/// What is written.
fn text(arguments: &Start, name: &str) -> Result<String, Failure> {
    if arguments.readings {
        return Ok(axlebow_model::reading_sheet(name));
    }
    if arguments.case {
        return Ok(axlebow_model::case_starter(name));
    }
    let like = |wanted: &String| TYPICAL.iter().find(|own| own.name == *wanted).map(|own| own.called(name));
    let kind = |kind: &String| axlebow_model::starter(kind, name);
    let text = arguments.like.as_ref().and_then(like).or(arguments.kind.as_ref().and_then(kind));
    // clap has accepted both words from the same lists.
    text.ok_or_else(|| Failure::Input(format!("what is {name} like? Give --like or --kind\n\n{}", choices())))
}

/// What there is to begin from, and what to do next.
fn choices() -> String {
    let width = TYPICAL.iter().map(|own| own.name.len()).max().unwrap_or_default();
    let lines: String = TYPICAL.iter().map(|own| format!("  {:width$}  {}\n", own.name, own.about)).collect();
    format!(
        "Answer eight questions that a tape measure answers, and have the file of your axle:\n\n\
         $ axlebow start my-axle --guided\n\n\
         Or begin from the common axle that yours is most like; its values are typical until you confirm them:\n\n\
         $ axlebow start my-axle --like {}\n\n{lines}\n\
         Or from a commented file with placeholders: axlebow start my-axle --kind {}\n\
         Then: axlebow flex my-axle, axlebow remedies my-axle, axlebow report my-axle\n",
        TYPICAL[0].name,
        axlebow_model::KINDS.join("|")
    )
}

/// The file of a name with its ending, where none is there that must stay.
pub(super) fn new_file(name: &str, ending: &str, force: bool) -> Result<PathBuf, Failure> {
    let path = file_of(name, ending)?;
    if path.exists() && !force {
        let path = path.display();
        return Err(Failure::Input(format!("{path} exists; give another name, or --force to write over it")));
    }
    Ok(path)
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
