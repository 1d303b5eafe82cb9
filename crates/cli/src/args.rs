//! The command line: one definition for parsing, help, man page and completions.

mod beam;
mod checks;
mod decide;
mod drawing;
mod motion;
mod schema;
mod serve;
mod shared;
mod study;
mod tires;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};

pub use beam::Beam;
pub use checks::{Life, Rating, Strength};
pub use decide::{Audience, Causes, Explain, Rank, Remedies, Report};
pub use drawing::Drawing;
pub use motion::{Modes, MovedWheels, Response, Ride, TimeScheme};
pub use schema::{CompletionKind, Completions, Schema, SchemaOf, Textbook};
pub use serve::Serve;
pub use shared::{Drive, ModelInput, Units};
pub use study::{Gather, Study, StudyInput, StudyOutput};
pub use tires::{Cups, Growth, Tire};

/// How far a heavy-truck axle flexes, what that does at the tire face, and what a remedy buys.
#[derive(Debug, Parser)]
#[command(name = "axlebow", version, long_version = LONG_VERSION, max_term_width = 100, after_help = AFTER_HELP)]
pub struct Arguments {
    #[command(subcommand)]
    pub command: Command,
}

/// The version with what it was built from; `-V` prints the version alone.
const LONG_VERSION: &str = concat!(
    env!("CARGO_PKG_VERSION"),
    "\ncommit ",
    env!("AXLEBOW_COMMIT"),
    "\nfeatures ",
    env!("AXLEBOW_FEATURES"),
    "\nlibraries ",
    env!("AXLEBOW_LIBRARIES")
);

const AFTER_HELP: &str = "Exit codes: 0 done, 1 done and a check fails, 2 bad input or usage, 3 no solution.\n\
    Results go to standard output, messages to standard error.\n\n\
    These numbers support, and do not replace, the judgment of a licensed engineer.";

#[derive(Debug, Subcommand)]
pub enum Command {
    /// Write a commented model file to begin from
    Start(Start),
    /// Static flex: bow, camber and toe change at each tire face, moment and stress along the axle
    Flex(Flex),
    /// Natural frequencies and shapes, named by what moves
    Modes(Modes),
    /// Time history over a bump, a pothole, washboard, a random road or a measured profile
    Ride(Ride),
    /// Frequency response to the road: camber, wheel load and stress; rms over a random road
    Response(Response),
    /// Cup count round the tire to a frequency, compared with the axle's modes
    Cups(Cups),
    /// Cups that grow: which count, at which speed, how fast, and what the axle's motion adds
    Growth(Growth),
    /// Every cross-section: area, inertias, shear and torsion constants, mass
    Section(Section),
    /// The axle and its stiffeners as a shop makes them: dimensions, weld symbols, preheat, questions to the axle's maker
    Drawing(Drawing),
    /// Every station against yield and the section class of every wall: value, limit, source, verdict
    Strength(Strength),
    /// Years to a crack at each detail and of each wheel bearing under a duty
    Life(Life),
    /// The axle load at which the first check binds, over wheel offset, with the limiter named
    Rating(Rating),
    /// How much each cause contributes to camber and toe at the tire face, and what would remove it
    Causes(Causes),
    /// Every standard remedy tried on this axle and ranked: wear, camber, mass, what each needs and risks
    Remedies(Remedies),
    /// From what was seen on a worn tire to its likely causes, and the check that would settle it
    Explain(Explain),
    /// One page of everything that is known of an axle, or of a study, to read in a browser, print and hand on
    Report(Report),
    /// A live page on this machine: move a slider, see the axle bow, the tire face tilt and the wear change
    Serve(Serve),
    /// Fit unknowns of a model, such as its wall and seat stiffness, to shop readings, with confidence
    Fit(Fit),
    /// What the camber does at the tread: rib loads, dual split, scuff, relative wear
    Tire(Tire),
    /// Run a study file: a sweep of designs, variants side by side, an uncertainty or a search
    Study(Study),
    /// Join the parts of a study that was run by `axlebow study --part`
    Gather(Gather),
    /// A straight beam of one's own: deflection, moment, reactions, modes; closed form, errors over the elements
    Beam(Beam),
    /// Every textbook case that axlebow is checked against: computed, reference, error, source
    Textbook(Textbook),
    /// JSON Schema of model files, study files and results, for editors
    Schema(Schema),
    /// Shell completions, or the manual page
    Completions(Completions),
}

#[derive(Debug, Args)]
pub struct Start {
    /// Name of the axle; the file is NAME.toml, or NAME.csv for a reading sheet; without it, what there is to begin from
    pub name: Option<String>,
    /// What the axle is: a commented file with placeholders
    #[arg(long, value_parser = axlebow_model::KINDS, requires = "name")]
    pub kind: Option<String>,
    /// A common axle that yours is like: a file with typical values, marked so until each is confirmed
    #[arg(long, value_name = "TYPICAL", conflicts_with = "kind", requires = "name", value_parser = axlebow_model::TYPICAL.map(|own| own.name))]
    pub like: Option<String>,
    /// Ask eight questions that a tape measure answers, on standard input, and write the model file from the answers; what
    /// nobody has measured is marked typical
    #[arg(long, conflicts_with_all = ["kind", "like", "readings", "case"])]
    pub guided: bool,
    /// Where the model file of --guided is written [default: NAME.toml, or my-axle.toml]
    #[arg(short, long, value_name = "FILE.toml", requires = "guided", conflicts_with = "name")]
    pub output: Option<PathBuf>,
    /// Write a reading sheet to fill in the shop, for `axlebow fit`, in place of a model file
    #[arg(long, conflicts_with_all = ["kind", "like"], requires = "name")]
    pub readings: bool,
    /// Write a case sheet to fill in at a worn axle, for `axlebow explain`, in place of a model file
    #[arg(long, conflicts_with_all = ["kind", "like", "readings"], requires = "name")]
    pub case: bool,
    /// Write the case sheet as a page to print as well
    #[arg(long, value_name = "FILE.html", requires = "case")]
    pub page: Option<PathBuf>,
    /// Write over a file that exists
    #[arg(long)]
    pub force: bool,
}

#[derive(Debug, Args)]
pub struct Flex {
    #[command(flatten)]
    pub model: ModelInput,
    /// Set another model's first case beside it in one table, and with --plot in one drawing; may be given more than once
    #[arg(long, value_name = "MODEL", conflicts_with = "detail")]
    pub against: Vec<PathBuf>,
    /// Only this load case; may be given more than once
    #[arg(long = "case", value_name = "NAME")]
    pub cases: Vec<String>,
    /// What each number of the file does to camber, bow, peak stress and mass, largest effect first [default case:
    /// rated-load]; --plot then draws it
    #[arg(long, conflicts_with_all = ["against", "detail", "vtu"])]
    pub sensitivities: bool,
    /// Everything about each case: split, bearings, seats and stations
    #[arg(long)]
    pub detail: bool,
    /// Write a picture of the first case: the axle from the rear with moment and stress under it; with --against all axles one
    /// over another
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
    /// Write the first case as a VTK XML grid (.vtu): the lines of the axle and its stiffeners with moment, shear and stress,
    /// and the shells of its seats where the model asks for them
    #[arg(long, value_name = "FILE")]
    pub vtu: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Section {
    #[command(flatten)]
    pub model: ModelInput,
    /// Load case whose stress is shown in stiffened sections, where they are bent most
    #[arg(long, value_name = "NAME")]
    pub case: Option<String>,
    /// Write a picture of the sections
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Fit {
    /// Model file; its values are the initial value
    pub model: PathBuf,
    /// Readings, a CSV file such as models/readings/trailer-152-thin.csv; `axlebow start --readings` writes a sheet for it
    #[arg(long, value_name = "FILE.csv", required_unless_present = "removals")]
    pub readings: Option<PathBuf>,
    /// Tires that came off with the depth of each rib and how far they ran, a CSV file such as
    /// models/removals/trailer-152-thin.csv: wear then has a depth
    #[arg(long, value_name = "FILE.csv")]
    pub removals: Option<PathBuf>,
    /// Key that may change, such as tube.wall; may be given more than once [default: of readings the wall, the rotational
    /// stiffness of each seat, and manufactured camber and toe where camber and toe are read; of removals running.severity
    /// and running.abrasion]
    #[arg(long = "unknown", value_name = "KEY")]
    pub unknowns: Vec<String>,
    /// Where the fitted model is written [default: NAME-fitted.toml beside the model, never over a file that exists]
    #[arg(short, long, value_name = "FILE.toml")]
    pub output: Option<PathBuf>,
    /// Write the fitted model even where the search did not converge or the readings contradict the model
    #[arg(long)]
    pub doubtful: bool,
    /// Units of tables and pictures [default: those of the model file]
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the whole result as one JSON document (SI units)
    #[arg(long)]
    pub json: bool,
    /// Write a picture of the readings beside the model
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
}
