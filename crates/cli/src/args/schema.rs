//! What the program says of itself.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

#[derive(Debug, Args)]
pub struct Textbook {
    /// Only cases whose name or topic has this text in it
    pub filter: Option<String>,
    /// Cases of your own in place of these: a beam file with its checks, or a folder of such files
    #[arg(long, value_name = "FILE|FOLDER")]
    pub cases: Option<PathBuf>,
    /// Show the formula and the inputs of each case
    #[arg(long)]
    pub formulas: bool,
    /// Write every case as a row of a CSV file
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Print the whole result as one JSON document
    #[arg(long)]
    pub json: bool,
    /// Write a page to cite: equations, elements, integrators, error control, limits, and these cases
    #[arg(long, value_name = "FILE.html|pdf")]
    pub page: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Schema {
    /// Which document
    #[arg(value_enum, default_value_t = SchemaOf::Model)]
    pub of: SchemaOf,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum SchemaOf {
    /// Model files
    Model,
    /// Study files
    Study,
    /// The result of `flex --json`
    Flex,
    /// The result of `flex --against OTHER --json`
    FlexAgainst,
    /// Road files
    Road,
    /// The result of `flex --sensitivities --json`
    Sensitivities,
    /// The result of `modes --json`
    Modes,
    /// The result of `ride --json`
    Ride,
    /// The result of `response --json`
    Response,
    /// The result of `growth --json`
    Growth,
    /// The result of `strength --json`
    Strength,
    /// Duty files
    Duty,
    /// The result of `life --json`
    Life,
    /// The result of `rating --json`
    Rating,
    /// Tire files
    Tire,
    /// The result of `tire --json`
    TireResult,
    /// The result of `tire --json` of several models, tires or offsets
    TireTable,
    /// Case sheets
    Case,
    /// The result of `explain --json`
    Explain,
    /// The result of `causes --json`
    Causes,
    /// The result of `remedies --json`
    Remedies,
    /// Files of remedies of one's own
    RemediesFile,
    /// The result of `fit --json`
    Fit,
    /// The result of `study --json` of a search
    Search,
    /// Study files that ask whether a remedy pays
    Payback,
    /// The result of `study --json` of a payback
    PaybackResult,
    /// The result of `study --json`
    StudyResult,
    /// The result of `section --json`
    Section,
    /// The result of `drawing --json`
    Drawing,
    /// The result of `cups --json`
    Cups,
    /// Beam files
    BeamFile,
    /// The result of `beam --json`
    Beam,
    /// The result of `textbook --json`
    Textbook,
}

#[derive(Debug, Args)]
pub struct Completions {
    /// Shell to complete in, or `man` for the manual page
    #[arg(value_enum)]
    pub kind: CompletionKind,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum CompletionKind {
    Bash,
    Fish,
    Zsh,
    Man,
}
