//! What many commands take: a model, a road, units.

use std::path::PathBuf;

use axlebow_units::UnitSystem;
use clap::{Args, ValueEnum};

/// The road input, and how it is driven.
#[derive(Debug, Args)]
pub struct Drive {
    /// Road that is driven over: a road file such as models/roads/pothole.toml, a CSV file of a measured profile, or an
    /// event by its name: half-sine-bump, haversine-bump, ramp, step, pothole, washboard, random-road
    #[arg(long, value_name = "ROAD")]
    pub over: Option<PathBuf>,
    /// Use another value for a key of the road, such as height="30 mm"; may be given more than once
    #[arg(long = "road", value_name = "KEY=VALUE", requires = "over")]
    pub road_changes: Vec<String>,
    /// Speed, such as "80 km/h" [default: that of the road file]
    #[arg(long, requires = "over")]
    pub speed: Option<String>,
    /// Carry the unladen load over the road instead of the rated one
    #[arg(long, requires = "over")]
    pub unladen: bool,
}

/// A model file and how to show its results.
#[derive(Debug, Args)]
pub struct ModelInput {
    /// Model file, with or without its .toml
    pub model: PathBuf,
    /// Use another value for a key, such as tube.wall="9 mm" or wheel.position=zeroset; a zero needs no unit; may be given
    /// more than once
    #[arg(long = "set", value_name = "KEY=VALUE")]
    pub changes: Vec<String>,
    /// Units of tables and pictures [default: those of the file]
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the whole result as one JSON document (SI units)
    #[arg(long)]
    pub json: bool,
    /// Write the result as a page that a browser shows and prints, pictures included
    #[arg(long, value_name = "FILE.html|pdf")]
    pub page: Option<PathBuf>,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Units {
    /// mm, kN, MPa, kg
    Si,
    /// in, lbf, ksi, lb
    Us,
}

impl From<Units> for UnitSystem {
    fn from(units: Units) -> Self {
        match units {
            Units::Si => UnitSystem::Si,
            Units::Us => UnitSystem::Us,
        }
    }
}
