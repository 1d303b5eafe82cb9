//! The `axlebow` command line: parse, call, print, exit code.

// Both panic where nobody listens; `output::print` and `output::say` do not.
#![deny(clippy::print_stderr, clippy::print_stdout)]

mod args;
mod command;
mod destination;
mod failure;
mod input;
mod output;
mod road_input;

use std::process::ExitCode;

use clap::Parser;

use args::{Arguments, Command};
use failure::Failure;

fn main() -> ExitCode {
    match run(&Arguments::parse()) {
        Ok(code) => code,
        Err(failure) => failure.report(),
    }
}

fn run(arguments: &Arguments) -> Result<ExitCode, Failure> {
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
        Command::Textbook(textbook) => command::textbook::run(textbook),
        Command::Schema(schema) => command::schema::run(schema),
        Command::Completions(completions) => command::completions::run(completions),
    }
}
