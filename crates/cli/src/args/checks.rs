//! Strength, life and rating.

use std::path::PathBuf;

use axlebow_axle::StrengthRules;
use clap::{Args, ValueEnum};

use super::ModelInput;

#[derive(Debug, Args)]
pub struct Strength {
    #[command(flatten)]
    pub model: ModelInput,
    /// Only this load case; may be given more than once
    #[arg(long = "case", value_name = "NAME")]
    pub cases: Vec<String>,
    /// Yield strength over allowed stress, 1 to 20; that of the model's `[strength]` if left out
    #[arg(long, value_name = "FACTOR")]
    pub safety_factor: Option<f64>,
    /// Whose limits are used where codes differ; those of the model's `[strength]` if left out
    #[arg(long, value_enum)]
    pub rules: Option<Rules>,
    /// Every check, not just those that use most of their limit
    #[arg(long)]
    pub all: bool,
    /// Write a picture of how much of its limit each check uses
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Life {
    #[command(flatten)]
    pub model: ModelInput,
    /// Duty file: what the axle goes through in a year, such as models/duties/line-haul.toml
    #[arg(long, value_name = "DUTY")]
    pub duty: PathBuf,
    /// Write details and bearings as CSV
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture of the years to a crack at each detail
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Rating {
    #[command(flatten)]
    pub model: ModelInput,
    /// Innermost offset of the tires from the mounting face, inset negative
    #[arg(long, value_name = "OFFSET", default_value = "-51 mm", allow_hyphen_values = true)]
    pub from: String,
    /// Outermost offset
    #[arg(long, value_name = "OFFSET", default_value = "51 mm", allow_hyphen_values = true)]
    pub to: String,
    /// Offsets, evenly apart; the model's own is added
    #[arg(long, default_value_t = 7, value_parser = clap::value_parser!(u16).range(2..=200))]
    pub points: u16,
    /// Only this load case; may be given more than once [default: all]
    #[arg(long = "case", value_name = "NAME")]
    pub cases: Vec<String>,
    /// Duty file under which no detail may crack within --years; each load then drives its roads
    #[arg(long, value_name = "DUTY", requires = "years")]
    pub duty: Option<PathBuf>,
    /// Years until 5 % of the details that crack first may have a crack
    #[arg(long, requires = "duty")]
    pub years: Option<f64>,
    /// Write the loads as CSV
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture of the loads over the offset
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Rules {
    /// ANSI/AISC 360-22
    Aisc,
    /// EN 1993
    En,
}

impl From<Rules> for StrengthRules {
    fn from(rules: Rules) -> Self {
        match rules {
            Rules::Aisc => StrengthRules::Aisc,
            Rules::En => StrengthRules::En,
        }
    }
}
