//! The live page.

use std::path::PathBuf;

use clap::Args;

use super::Units;

#[derive(Debug, Args)]
pub struct Serve {
    /// Model file to begin with, with or without its .toml; without it, a typical axle
    pub model: Option<PathBuf>,
    /// Port on this machine [default: one that is free]
    #[arg(long, default_value_t = 0, hide_default_value = true)]
    pub port: u16,
    /// Print the address only, and open no browser
    #[arg(long)]
    pub no_browser: bool,
    /// Payback study whose prices say what changes bring
    #[arg(long, value_name = "STUDY")]
    pub prices: Option<PathBuf>,
    /// Units of the page [default: those of the file]
    #[arg(long)]
    pub units: Option<Units>,
}
