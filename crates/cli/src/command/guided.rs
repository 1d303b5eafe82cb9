//! `axlebow start --guided`.

use std::io::BufRead;
use std::path::Path;

use axlebow_model::{GuidedQuestion, GuidedStart};
use axlebow_report::guided_words;

use super::start::new_file;
use crate::args::Start;
use crate::failure::{Exit, Failure};
use crate::output;

/// The file's name where none is given.
const NAME: &str = "my-axle";

pub fn run(arguments: &Start) -> Result<Exit, Failure> {
    let output = arguments.output.as_ref().map(|path| path.to_string_lossy().into_owned());
    let name = arguments.name.clone().or(output).unwrap_or_else(|| NAME.to_owned());
    let path = new_file(&name, "toml", arguments.force)?;
    // Inside another program nobody answers.
    let asked =
        if output::is_kept() { ask(&mut std::io::empty()) } else { ask(&mut std::io::stdin().lock()) };
    let (guided, open) = asked?;
    let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    let text = guided.file(&name).map_err(Failure::Input)?;
    output::write_file(&path, text.as_bytes())?;
    output::say(&next(&guided, &open, &path));
    Ok(Exit::Done)
}

/// Asks every question; what stays typical by its name. Once the input ends, so do all that are left.
fn ask(input: &mut impl BufRead) -> Result<(GuidedStart, Vec<&'static str>), Failure> {
    output::say(
        "Enter takes the typical value in brackets and leaves it marked typical; ? says how to measure.\n\
         Sizes as 5-3/4 in, 5.75\" or 146 mm; the load as 20000 lb, 9 t or 89 kN.",
    );
    let (mut guided, mut open) = (GuidedStart::default(), Vec::new());
    for (number, question) in GuidedQuestion::ALL.into_iter().enumerate() {
        let words = guided_words(question, guided.is_drive());
        let count = GuidedQuestion::ALL.len();
        output::say(&format!(
            "\n{} of {count}. {} [{}]",
            number + 1,
            words.prompt,
            guided.typical_answer(question)
        ));
        if !answered(input, &mut guided, question)? {
            open.push(words.name);
        }
    }
    Ok((guided, open))
}

/// Reads lines until one answers the question; false where it stays typical.
fn answered(
    input: &mut impl BufRead,
    guided: &mut GuidedStart,
    question: GuidedQuestion,
) -> Result<bool, Failure> {
    loop {
        let mut line = String::new();
        let failed = |error| Failure::Input(format!("cannot read standard input: {error}"));
        input.read_line(&mut line).map_err(failed)?;
        match line.trim() {
            "" => return Ok(false),
            "?" => output::say(guided_words(question, guided.is_drive()).how),
            text => match guided.answer(question, text) {
                Ok(note) => {
                    note.iter().for_each(|note| output::say(&format!("note: {note}")));
                    return Ok(true);
                }
                Err(refusal) => output::say(&format!("{refusal}; try again, ? says how to measure")),
            },
        }
    }
}

/// What is typical and what to do next.
fn next(guided: &GuidedStart, open: &[&str], path: &Path) -> String {
    let typical = guided.typical_axle().name;
    let open = match open {
        [] => String::new(),
        open => format!("\nstill typical of your answers: {}", open.join(", ")),
    };
    let units = if guided.in_us_units() { " --units us" } else { "" };
    let path = path.display();
    format!(
        "begun from {typical}; all that was not asked is typical too{open}\nnext: axlebow flex {path}{units}"
    )
}
