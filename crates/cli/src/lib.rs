//! The `axlebow` command line: parse, call, print, exit code; does not know physics.
//!
//! [`main`] is the program. [`run`] is the same inside another program: it keeps what would be printed.
//!
//! ```
//! let run = axlebow_cli::run(["schema", "model"]);
//! assert_eq!(run.code, 0);
//! assert!(run.out.contains("wheel_end"));
//! ```

// Both panic where nobody listens; `output::print` and `output::say` do not.
#![deny(clippy::print_stderr, clippy::print_stdout)]

mod args;
mod command;
mod destination;
mod failure;
mod input;
mod output;
mod paper;
mod road_input;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser;

use args::{Arguments, Command};
use failure::{Exit, Failure};

/// What a run inside another program came to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Run {
    /// The exit code that the program would end with: 0 for an answer, 1 where a check fails, 2 for what is wrong with the
    /// input, 3 for a model without a solution.
    pub code: u8,
    /// What it would print on standard output.
    pub out: String,
    /// Its messages.
    pub err: String,
    /// What is wrong with the input, one entry for each problem.
    pub faults: Vec<Fault>,
}

/// Something wrong with the input.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// What is wrong.
    pub message: String,
    /// File, line and character, both from 1; none for what stands in no file.
    pub place: Option<(String, usize, usize)>,
    /// What is accepted instead, or was likely meant.
    pub hint: Option<String>,
}

/// The program.
pub fn main() -> ExitCode {
    ExitCode::from(finished(&Arguments::parse()).code())
}

/// Runs the program's arguments, without its name, and keeps what it prints. Outputs that are files are written as ever.
///
/// It belongs to the thread that calls it: other threads may run others meanwhile.
pub fn run<A: Into<OsString>>(arguments: impl IntoIterator<Item = A>) -> Run {
    let words = std::iter::once("axlebow".into()).chain(arguments.into_iter().map(Into::into));
    let words: Vec<OsString> = words.collect();
    output::kept(|| match Arguments::try_parse_from(words) {
        Ok(arguments) => finished(&arguments).code(),
        Err(told) => {
            let text = told.render().to_string();
            if !told.use_stderr() {
                return output::print(&text).map_or(Exit::BadInput, |()| Exit::Done).code();
            }
            Failure::Input(text.trim_start_matches("error: ").trim_end().to_owned()).report().code()
        }
    })
}

fn finished(arguments: &Arguments) -> Exit {
    command(arguments).unwrap_or_else(|failure| failure.report())
}

fn command(arguments: &Arguments) -> Result<Exit, Failure> {
    match &arguments.command {
        Command::Start(start) => command::start::run(start),
        Command::Flex(flex) => command::flex::run(flex),
        Command::Modes(modes) => command::modes::run(modes),
        Command::Ride(ride) => command::ride::run(ride),
        Command::Response(response) => command::response::run(response),
        Command::Cups(cups) => command::cups::run(cups),
        Command::Growth(growth) => command::growth::run(growth),
        Command::Section(section) => command::section::run(section),
        Command::Drawing(drawing) => command::drawing::run(drawing),
        Command::Strength(strength) => command::strength::run(strength),
        Command::Life(life) => command::life::run(life),
        Command::Rating(rating) => command::rating::run(rating),
        Command::Causes(causes) => command::causes::run(causes),
        Command::Remedies(remedies) => command::remedies::run(remedies),
        Command::Explain(explain) => command::explain::run(explain),
        Command::Report(report) => command::report::run(report),
        Command::Serve(serve) => command::serve::run(serve),
        Command::Fit(fit) => command::fit::run(fit),
        Command::Tire(tire) => command::tire::run(tire),
        Command::Study(study) => command::study::run(study),
        Command::Gather(gather) => command::gather::run(gather),
        Command::Beam(beam) => command::beam::run(beam),
        Command::Textbook(textbook) => command::textbook::run(textbook),
        Command::Schema(schema) => command::schema::run(schema),
        Command::Completions(completions) => command::completions::run(completions),
    }
}
