//! A beam of one's own.

use std::path::PathBuf;

use axlebow_beam::Element;
use clap::{Args, ValueEnum};

use super::Units;

#[derive(Debug, Args)]
pub struct Beam {
    /// Beam file, with or without its .toml, such as studies/textbook/cantilever-end-force.toml
    pub file: PathBuf,
    /// Use another value for a key, such as theory=euler-bernoulli; may be given more than once
    #[arg(long = "set", value_name = "KEY=VALUE")]
    pub changes: Vec<String>,
    /// Kind of the elements
    #[arg(long, value_enum, default_value_t = ElementKind::Flexibility)]
    pub element: ElementKind,
    /// Set results of meshes with so many elements in each piece beside each other, with their error and observed order
    #[arg(long, value_name = "N,N,...", value_delimiter = ',', value_parser = clap::value_parser!(u16).range(1..=1000))]
    pub elements: Vec<u16>,
    /// Units of tables and pictures [default: those of the file]
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the whole result as one JSON document (SI units)
    #[arg(long)]
    pub json: bool,
    /// Write the values along the beam as CSV
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture of the beam, its deflection, shear and moment
    #[arg(short = 'o', long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
    /// Write a picture of what a moving and a shaking force of the file do: deflection over time, amplitude over frequency
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub response_plot: Option<PathBuf>,
    /// Write a picture of the errors over the number of elements
    #[arg(long, value_name = "FILE.svg|png|pdf", requires = "elements")]
    pub error_plot: Option<PathBuf>,
    /// Write the result as a page that a browser shows and prints, pictures included
    #[arg(long, value_name = "FILE.html|pdf")]
    pub page: Option<PathBuf>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ElementKind {
    /// Exact in statics, whatever the section does
    Flexibility,
    /// Cubic deflections
    Hermite,
    /// Linear deflections and slopes, with shear
    TwoNode,
}

impl From<ElementKind> for Element {
    fn from(kind: ElementKind) -> Self {
        match kind {
            ElementKind::Flexibility => Element::Flexibility,
            ElementKind::Hermite => Element::Hermite,
            ElementKind::TwoNode => Element::TwoNode,
        }
    }
}
