//! Tires and their cups.

use std::path::PathBuf;

use axlebow_axle::tread::DutyName;
use clap::Args;

use super::{Drive, ModelInput};

#[derive(Debug, Args)]
pub struct Growth {
    #[command(flatten)]
    pub model: ModelInput,
    /// More model files, to be set beside it
    pub others: Vec<PathBuf>,
    /// Speeds of the map, from..to
    #[arg(long, value_name = "FROM..TO", default_value = "60..110 km/h")]
    pub speeds: String,
    /// Number of speeds, evenly apart
    #[arg(long, value_name = "COUNT", default_value_t = 40)]
    pub steps: u16,
    /// Cups round the tire, from..to
    #[arg(long, value_name = "FROM..TO", default_value = "1..30")]
    pub counts: String,
    /// Mean of the speeds that the fleet holds [default: the model's own, or 100 km/h]
    #[arg(long, value_name = "SPEED")]
    pub held: Option<String>,
    /// Their standard deviation [default: the model's own, or 4 km/h]
    #[arg(long, value_name = "SPEED")]
    pub spread: Option<String>,
    /// Follow the wave that wins in time from crests of these heights, such as "0.1,1,3 mm": with tires that leave the road,
    /// bearings with play and bump stops
    #[arg(long, value_name = "HEIGHT,...")]
    pub in_time: Option<String>,
    /// The load case in which the axle stands
    #[arg(long, value_name = "NAME", default_value = "rated-load")]
    pub case: String,
    /// Write the map, a row for each speed and count, as a CSV file
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture: growth over speed and count with the axle's modes drawn in
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Cups {
    /// Model file, to hold the frequency against its modes
    pub model: Option<PathBuf>,
    /// Cups counted once round the tire
    #[arg(long, value_parser = clap::value_parser!(u16).range(1..=500))]
    pub count: u16,
    /// Speed at which the tire mostly ran, such as "100 km/h" or "62 mph"
    #[arg(long)]
    pub speed: String,
    /// Road that the tire mostly ran on, such as models/roads/washboard.toml: what comes back on it may print cups
    #[arg(long, value_name = "ROAD")]
    pub over: Option<PathBuf>,
    /// Rolling radius of the tire, such as "490 mm" [default: the model's loaded radius]
    #[arg(long)]
    pub tire_radius: Option<String>,
    /// Print the whole result as one JSON document (SI units)
    #[arg(long)]
    pub json: bool,
}

/// The usual duty of a word.
fn duty(word: &str) -> Result<DutyName, String> {
    let found = DutyName::USUAL.into_iter().find(|name| name.word() == word);
    found.ok_or_else(|| format!("accepted: {}", DutyName::USUAL.map(DutyName::word).join(", ")))
}

#[derive(Debug, Args)]
pub struct Tire {
    #[command(flatten)]
    pub model: ModelInput,
    /// More model files: a table of which tire forgives which axle
    pub others: Vec<PathBuf>,
    /// Tire file, such as models/tires/deep-treaded.toml, to put on the wheels; several make a table [default: the
    /// model's own tread]
    #[arg(long = "tire", value_name = "TIRE")]
    pub tires: Vec<PathBuf>,
    /// Offset of the wheels for the table, such as "51 mm" of outset, zeroset or "-25 mm" of inset; may be given more than
    /// once
    /// [default: the models' own]
    #[arg(long = "offset", value_name = "LENGTH", allow_hyphen_values = true)]
    pub offsets: Vec<String>,
    /// What driving asks of the tires: line-haul, regional or city [default: the model's own, or line-haul]
    #[arg(long, value_name = "DUTY", value_parser = duty)]
    pub duty: Option<DutyName>,
    /// Only this load case; may be given more than once
    #[arg(long = "case", value_name = "NAME")]
    pub cases: Vec<String>,
    #[command(flatten)]
    pub drive: Drive,
    /// Write a picture of the first case: rib loads and wear of every tire, with a road also a map round the tires
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}
