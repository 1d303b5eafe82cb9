//! Studies.

use std::path::PathBuf;

use clap::Args;

use super::Units;

/// A study and what is asked of it.
#[derive(Debug, Args)]
pub struct StudyInput {
    /// Study file, with or without its .toml
    pub study: PathBuf,
    /// Results to show, such as camber-peak-to-peak, in place of those of the file; may be given more than once
    #[arg(long, value_name = "RESULT")]
    pub show: Vec<String>,
    /// A quick look: at most so many values of each varied key
    #[arg(long, value_name = "VALUES", value_parser = clap::value_parser!(u16).range(2..))]
    pub coarse: Option<u16>,
}

/// What becomes of the results of a study.
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("saved").multiple(true))]
pub struct StudyOutput {
    /// Units of tables and pictures [default: those of the model file]
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the whole result as one JSON document; of a study of more than 5000 designs, a summary
    #[arg(long)]
    pub json: bool,
    /// Write every design as a row of a CSV file; results are saved beside it, in FILE.csv.work, as they come
    #[arg(long, value_name = "FILE.csv", group = "saved")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write what is said of the results as a page that a browser shows and prints, pictures included
    #[arg(long, value_name = "FILE.html|pdf")]
    pub page: Option<PathBuf>,
    /// Write the same columns as a Parquet file (a build with the feature `parquet` only)
    #[arg(long, value_name = "FILE.parquet", group = "saved")]
    pub parquet: Option<PathBuf>,
    /// Write a picture of the study
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Study {
    #[command(flatten)]
    pub input: StudyInput,
    #[command(flatten)]
    pub output: StudyOutput,
    /// Go on with results that an earlier run has saved; without any, begin
    #[arg(long, requires = "saved")]
    pub resume: bool,
    /// Throw away results that an earlier run has saved
    #[arg(long, requires = "saved", conflicts_with = "resume")]
    pub restart: bool,
    /// Run part K of N, each in a process or on a machine of its own, into FILE.csv.part-K-of-N; `axlebow gather` joins
    /// them
    #[arg(long, value_name = "K/N", requires = "saved", conflicts_with_all = ["plot", "json"])]
    pub part: Option<axlebow_study::Part>,
    /// Only tell how many designs there are, about how long they take and how much they write
    #[arg(long, conflicts_with_all = ["json", "saved", "plot"])]
    pub dry_run: bool,
    /// Run more than ten million designs
    #[arg(long)]
    pub large: bool,
}

#[derive(Debug, Args)]
pub struct Gather {
    #[command(flatten)]
    pub input: StudyInput,
    /// Files that `axlebow study --part` wrote, in any order
    #[arg(required = true, value_name = "PART")]
    pub parts: Vec<PathBuf>,
    #[command(flatten)]
    pub output: StudyOutput,
}
