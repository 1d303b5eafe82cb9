//! What went wrong, in words and as an exit code: the one place that prints errors.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use axlebow_axle::AxleError;
use axlebow_model::Problems;

use crate::output;

/// Exit code when a check fails.
pub const CHECK_FAILS: u8 = 1;
/// Exit code of a run that Ctrl-C stops, as shells have it: 128 and the number of the signal.
pub const STOPPED: u8 = 130;
const BAD_INPUT: u8 = 2;
const NO_SOLUTION: u8 = 3;

/// Why a command did not finish.
#[derive(Debug)]
pub enum Failure {
    /// Something that the user gave is wrong.
    Input(String),
    /// A file has problems, already laid out line by line.
    File(Problems),
    /// A file has problems, and a note tells more than their list.
    Noted(Problems, String),
    /// The model has no solution.
    NoSolution(String),
    /// A pipe was closed by its reader, as `head` does: not an error.
    Closed,
}

/// Whether problems are shown in colors: on a terminal, unless what they quote could steer it.
fn colored(problems: &Problems) -> bool {
    std::io::IsTerminal::is_terminal(&std::io::stderr()) && !problems.render().contains(output::is_control)
}

impl Failure {
    /// A file that could not be read or written.
    pub fn on_file(what: &str, path: &Path, error: &std::io::Error) -> Failure {
        if error.kind() == std::io::ErrorKind::BrokenPipe {
            return Failure::Closed;
        }
        Failure::Input(format!("cannot {what} {}: {error}", path.display()))
    }

    /// What went wrong, in words without colors.
    pub fn text(&self) -> String {
        match self {
            Failure::Input(text) => format!("error: {text}"),
            Failure::Noted(problems, note) => {
                format!("{}\nnote: {note}", problems.render().trim_end_matches('\n'))
            }
            Failure::File(problems) => problems.render(),
            Failure::NoSolution(text) => format!("error: no solution: {text}"),
            Failure::Closed => String::new(),
        }
    }

    /// Prints the failure on standard error and gives its exit code.
    pub fn report(&self) -> ExitCode {
        let text = match self {
            Failure::File(problems) if colored(problems) => {
                output::say_styled(problems.render_colored().trim_end_matches('\n'));
                return ExitCode::from(BAD_INPUT);
            }
            Failure::Closed => return ExitCode::SUCCESS,
            other => other.text(),
        };
        output::say(text.trim_end_matches('\n'));
        ExitCode::from(if matches!(self, Failure::NoSolution(_)) { NO_SOLUTION } else { BAD_INPUT })
    }
}

impl From<Problems> for Failure {
    fn from(problems: Problems) -> Self {
        Failure::File(problems)
    }
}

impl From<AxleError> for Failure {
    fn from(error: AxleError) -> Self {
        match error {
            AxleError::NoEquilibrium { .. } | AxleError::Fe(_) => Failure::NoSolution(error.to_string()),
            _ => Failure::Input(error.to_string()),
        }
    }
}

impl From<axlebow_study::StoreError> for Failure {
    fn from(error: axlebow_study::StoreError) -> Self {
        Failure::Input(error.to_string())
    }
}

impl From<axlebow_report::ReportError> for Failure {
    fn from(error: axlebow_report::ReportError) -> Self {
        Failure::Input(error.to_string())
    }
}

/// A picture whose file name does not say which kind it is.
pub fn unknown_picture(path: &Path) -> Failure {
    let path: PathBuf = path.to_owned();
    Failure::Input(format!(
        "{} is neither .svg nor .png; a picture's file name ends in one of them",
        path.display()
    ))
}
