//! Shop drawings.

use std::path::PathBuf;

use axlebow_report::{Paper, WeldSymbols};
use clap::{Args, ValueEnum};

use super::ModelInput;

#[derive(Debug, Args)]
pub struct Drawing {
    #[command(flatten)]
    pub model: ModelInput,
    /// The drawing: .dxf for a CAD program (millimeters, the elevation at full size), .pdf, .svg or .png to look at
    #[arg(short = 'o', long = "out", value_name = "FILE.dxf|svg|pdf|png")]
    pub out: Option<PathBuf>,
    /// Paper [default: a4, or letter for a file in inches]
    #[arg(long, value_enum)]
    pub sheet: Option<SheetSize>,
    /// Standard of the weld symbols [default: aws, or iso where the file's strength rules are `en`]
    #[arg(long, value_enum)]
    pub symbols: Option<Symbols>,
    /// Revision in the title block
    #[arg(long, default_value = "0", value_name = "TEXT")]
    pub revision: String,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SheetSize {
    /// 297 by 210 mm
    A4,
    /// 420 by 297 mm
    A3,
    /// 11 by 8 1/2 in
    Letter,
}

impl From<SheetSize> for Paper {
    fn from(size: SheetSize) -> Self {
        match size {
            SheetSize::A4 => Paper::A4,
            SheetSize::A3 => Paper::A3,
            SheetSize::Letter => Paper::Letter,
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Symbols {
    /// ISO 2553, system A; first-angle projection
    Iso,
    /// AWS A2.4; third-angle projection
    Aws,
}

impl From<Symbols> for WeldSymbols {
    fn from(symbols: Symbols) -> Self {
        match symbols {
            Symbols::Iso => WeldSymbols::Iso,
            Symbols::Aws => WeldSymbols::Aws,
        }
    }
}
