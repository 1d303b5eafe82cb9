//! `axlebow completions`.

use clap::CommandFactory;
use clap_complete::{Shell, generate};

use crate::args::{Arguments, CompletionKind, Completions};
use crate::failure::{Exit, Failure};
use crate::output;

pub fn run(arguments: &Completions) -> Result<Exit, Failure> {
    let mut command = Arguments::command();
    let mut bytes = Vec::new();
    let mut shell = |shell: Shell| generate(shell, &mut command, "axlebow", &mut bytes);
    match arguments.kind {
        CompletionKind::Bash => shell(Shell::Bash),
        CompletionKind::Fish => shell(Shell::Fish),
        CompletionKind::Zsh => shell(Shell::Zsh),
        CompletionKind::Man => clap_mangen::Man::new(command)
            .render(&mut bytes)
            .map_err(|error| Failure::Input(format!("cannot make the manual page: {error}")))?,
    }
    output::print(&String::from_utf8_lossy(&bytes))?;
    Ok(Exit::Done)
}
