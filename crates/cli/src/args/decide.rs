//! Causes, remedies and the report.

use std::path::PathBuf;

use axlebow_study::RankBy;
use clap::{Args, ValueEnum};

use super::{Drive, ModelInput, Units};

#[derive(Debug, Args)]
pub struct Causes {
    #[command(flatten)]
    pub model: ModelInput,
    /// The load case that is looked at
    #[arg(long, value_name = "NAME", default_value = "rated-load")]
    pub case: String,
    #[command(flatten)]
    pub drive: Drive,
    /// Write a picture: how the causes add up to camber and toe
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Remedies {
    #[command(flatten)]
    pub model: ModelInput,
    /// The load case in which the tires stand; strength is checked in all of the model
    #[arg(long, value_name = "NAME", default_value = "rated-load")]
    pub case: String,
    #[command(flatten)]
    pub drive: Drive,
    /// A file of remedies of your own, tried beside the standard ones
    #[arg(long, value_name = "FILE")]
    pub remedies: Option<PathBuf>,
    /// A payback study whose fleet, tires and prices say what each remedy may cost
    #[arg(long, value_name = "STUDY")]
    pub prices: Option<PathBuf>,
    /// By what remedies are ranked, after how the checks stand with them; money needs --prices
    #[arg(long, value_enum, default_value = "wear")]
    pub rank: Rank,
    /// Write a picture: the wear that each remedy leaves
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

/// By what remedies are ranked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Rank {
    /// Wear of the shoulder that wears most
    Wear,
    /// Growth of the cups that grow fastest
    Cups,
    /// Camber under load
    Camber,
    /// Axle mass
    Mass,
    /// What they are worth
    Money,
}

impl From<Rank> for RankBy {
    fn from(rank: Rank) -> Self {
        match rank {
            Rank::Wear => RankBy::Wear,
            Rank::Cups => RankBy::Cups,
            Rank::Camber => RankBy::Camber,
            Rank::Mass => RankBy::Mass,
            Rank::Money => RankBy::Money,
        }
    }
}

#[derive(Debug, Args)]
pub struct Explain {
    /// Case sheet, with or without its .toml; `axlebow start --case` writes one to fill in
    pub sheet: PathBuf,
    /// Units of tables and pictures [default: those of the sheet]
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the whole result as one JSON document (SI units)
    #[arg(long)]
    pub json: bool,
    /// Write the result as a page that a browser shows and prints, picture included
    #[arg(long, value_name = "FILE.html|pdf")]
    pub page: Option<PathBuf>,
    /// Write a picture: how probable each cause is, and ribs as seen and predicted
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
    /// Write every cause as a row of a CSV file
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
}

#[derive(Debug, Args)]
pub struct Report {
    /// Model file or study file, with or without its .toml
    pub file: PathBuf,
    /// Who reads it: what comes first, and how much of it
    #[arg(long = "for", value_enum, default_value = "fleet")]
    pub audience: Audience,
    /// The page [default: NAME-report.html here]; the documents of its parts go beside it, as NAME-report.flex.json and so on
    #[arg(short = 'o', long = "out", value_name = "FILE.html|pdf")]
    pub out: Option<PathBuf>,
    /// Write the page alone, without the numbers of its parts beside it
    #[arg(long)]
    pub alone: bool,
    /// Use another value for a key of the model; may be given more than once
    #[arg(long = "set", value_name = "KEY=VALUE")]
    pub changes: Vec<String>,
    /// Units of tables and pictures [default: those of the file]
    #[arg(long)]
    pub units: Option<Units>,
    #[command(flatten)]
    pub drive: Drive,
}

/// Who reads a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Audience {
    /// Whoever pays: wear, remedies and what they take first
    Fleet,
    /// Whoever welds: strength, sections and cautions first
    Shop,
    /// Whoever checks: flex, modes and sections in full first
    Research,
}

impl From<Audience> for axlebow_report::table::Audience {
    fn from(audience: Audience) -> Self {
        match audience {
            Audience::Fleet => Self::Fleet,
            Audience::Shop => Self::Shop,
            Audience::Research => Self::Research,
        }
    }
}
