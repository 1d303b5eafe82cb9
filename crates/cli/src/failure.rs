//! What went wrong, in words and as an exit code: the one place that prints errors.

use axlebow_axle::AxleError;
use axlebow_model::Problems;
use std::path::{Path, PathBuf};

use crate::{Fault, input, output};

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// With an answer.
    Done,
    /// With an answer, a check of which fails.
    CheckFails,
    /// Something that the user gave is wrong.
    BadInput,
    /// The model has no solution.
    NoSolution,
    /// By Ctrl-C.
    Stopped,
}

impl Exit {
    /// The exit code; that of a run that Ctrl-C stops is as shells have it, 128 and the number of the signal.
    pub fn code(self) -> u8 {
        match self {
            Exit::Done => 0,
            Exit::CheckFails => 1,
            Exit::BadInput => 2,
            Exit::NoSolution => 3,
            Exit::Stopped => 130,
        }
    }
}

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
    output::on_terminal() && !problems.render().contains(output::is_control)
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

    /// Each thing that is wrong.
    fn faults(&self) -> Vec<Fault> {
        match self {
            Failure::File(problems) | Failure::Noted(problems, _) => problems
                .iter()
                .map(|problem| Fault {
                    message: problem.message.clone(),
                    place: Some((problems.file_name().to_owned(), problem.line, problem.column)),
                    hint: problem.likely.clone().or_else(|| problem.accepted.clone()),
                })
                .collect(),
            Failure::Input(text) | Failure::NoSolution(text) => {
                vec![Fault { message: text.clone(), place: None, hint: None }]
            }
            Failure::Closed => Vec::new(),
        }
    }

    /// Prints the failure on standard error and gives its exit code.
    pub fn report(&self) -> Exit {
        output::keep_faults(self.faults());
        let text = match self {
            Failure::File(problems) if colored(problems) => {
                output::say_styled(problems.render_colored().trim_end_matches('\n'));
                return Exit::BadInput;
            }
            Failure::Closed => return Exit::Done,
            other => other.text(),
        };
        output::say(text.trim_end_matches('\n'));
        if matches!(self, Failure::NoSolution(_)) { Exit::NoSolution } else { Exit::BadInput }
    }
}

impl From<Problems> for Failure {
    fn from(problems: Problems) -> Self {
        Failure::File(problems)
    }
}

impl From<AxleError> for Failure {
    fn from(error: AxleError) -> Self {
        let text = axlebow_model::refusal_in_units(&error, input::system());
        match error {
            AxleError::NoEquilibrium { .. } | AxleError::Fe(_) => Failure::NoSolution(text),
            _ => Failure::Input(text),
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
        "{} is none of .svg, .png and .pdf; a picture's file name ends in one of them",
        path.display()
    ))
}
