//! The command line: one definition for parsing, help, man page and completions.

use std::path::PathBuf;

use axlebow_axle::StrengthRules;
use axlebow_axle::tread::DutyName;
use axlebow_units::UnitSystem;
use clap::{Args, Parser, Subcommand, ValueEnum};

/// How far a heavy-truck axle flexes, what that does at the tire face, and what a remedy buys.
#[derive(Debug, Parser)]
#[command(name = "axlebow", version, max_term_width = 100, after_help = AFTER_HELP)]
pub struct Arguments {
    #[command(subcommand)]
    pub command: Command,
}

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
    /// One page of everything that is known of an axle, or of a study, to read in a browser, print and hand on
    Report(Report),
    /// Fit unknowns of a model, such as its wall and seat stiffness, to shop readings, with confidence
    Fit(Fit),
    /// What the camber does at the tread: rib loads, dual split, scuff, relative wear
    Tire(Tire),
    /// Run a study file: a sweep of designs, variants side by side, an uncertainty or a search
    Study(Study),
    /// Join the parts of a study that was run by `axlebow study --part`
    Gather(Gather),
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
    /// Write a reading sheet to fill in the shop, for `axlebow fit`, in place of a model file
    #[arg(long, conflicts_with_all = ["kind", "like"], requires = "name")]
    pub readings: bool,
    /// Write over a file that exists
    #[arg(long)]
    pub force: bool,
}

#[derive(Debug, Args)]
pub struct Flex {
    #[command(flatten)]
    pub model: ModelInput,
    /// Set another model's first case beside it in one table; may be given more than once
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
    /// Write a picture of the first case: the axle from the rear with moment and stress under it
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
    /// Write the first case as a VTK XML grid (.vtu): the axle's line, and the shells of its seats where the model asks
    /// for them
    #[arg(long, value_name = "FILE")]
    pub vtu: Option<PathBuf>,
}

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
    /// Write the loads as CSV
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture of the loads over the offset
    #[arg(long, value_name = "FILE.svg|png")]
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

#[derive(Debug, Args)]
pub struct Modes {
    #[command(flatten)]
    pub model: ModelInput,
    /// How many modes
    #[arg(long, default_value_t = 12, value_parser = clap::value_parser!(u16).range(1..=100))]
    pub count: u16,
    /// Carry the unladen load instead of the rated one
    #[arg(long)]
    pub unladen: bool,
    /// Write a picture of the shapes
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
}

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

#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("road input").arg("over").required(true))]
#[command(group = clap::ArgGroup::new("samples").multiple(true))]
pub struct Ride {
    #[command(flatten)]
    pub model: ModelInput,
    #[command(flatten)]
    pub drive: Drive,
    /// Random roads of one kind that are driven over, for means with their 95 % interval [default: 8; 1 for one alone]
    #[arg(long, value_name = "COUNT", value_parser = clap::value_parser!(u16).range(1..=1000))]
    pub draws: Option<u16>,
    /// Solve all degrees of freedom [default]
    #[arg(long)]
    pub full: bool,
    /// Solve by modal reduction: quick; with --full both, and how far they differ
    #[arg(long)]
    pub reduced: bool,
    /// Time integration scheme [default: that of the road file]
    #[arg(long, value_enum)]
    pub scheme: Option<TimeScheme>,
    /// Spectral radius at infinity: 0, most numerical dissipation, to 1, none
    #[arg(long, value_name = "SHARE")]
    pub spectral_radius: Option<f64>,
    /// Write every sample as a row of a CSV file
    #[arg(long, value_name = "FILE.csv", group = "samples")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write the same columns as a Parquet file (a build with the feature `parquet` only)
    #[arg(long, value_name = "FILE.parquet", group = "samples")]
    pub parquet: Option<PathBuf>,
    /// Add the fiber stress of every station to the samples
    #[arg(long, requires = "samples")]
    pub stations: bool,
    /// Write a picture of road, wheel load, camber and stress against distance
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
    /// Write a picture of the camber's spectrum, its peaks named by the modes
    #[arg(long, value_name = "FILE.svg|png")]
    pub spectrum: Option<PathBuf>,
    /// Write a page on which the axle moves over the road
    #[arg(long, value_name = "FILE.html")]
    pub animate: Option<PathBuf>,
    /// Moments of the ride that the page shows
    #[arg(long, default_value_t = 600, value_parser = clap::value_parser!(u16).range(2..=1500), requires = "animate")]
    pub frames: u16,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum TimeScheme {
    /// Generalized-alpha: numerical dissipation of motions far faster than the step
    GeneralizedAlpha,
    /// Newmark's average acceleration: no numerical damping
    AverageAcceleration,
}

#[derive(Debug, Args)]
pub struct Response {
    #[command(flatten)]
    pub model: ModelInput,
    /// Road file of a random road, such as models/roads/class-c-road.toml: its rms and spectra too
    #[arg(long, value_name = "ROAD")]
    pub over: Option<PathBuf>,
    /// Speed over the road, such as "80 km/h" [default: that of the road file]
    #[arg(long, requires = "over")]
    pub speed: Option<String>,
    /// Lowest frequency, Hz
    #[arg(long, value_name = "HZ", default_value_t = 0.5)]
    pub from: f64,
    /// Highest frequency, Hz
    #[arg(long, value_name = "HZ", default_value_t = 60.0)]
    pub to: f64,
    /// Frequencies, evenly apart on a logarithmic scale; more are added where modes resonate
    #[arg(long, default_value_t = 200)]
    pub points: u16,
    /// Which wheels the road moves
    #[arg(long, value_enum, default_value_t = MovedWheels::Both)]
    pub wheels: MovedWheels,
    /// Stress at this place of the axle, such as left-seat; may be given more than once [default: where it
    /// is stressed most at rest]
    #[arg(long = "station", value_name = "NAME")]
    pub stations: Vec<String>,
    /// Carry the unladen load instead of the rated one
    #[arg(long)]
    pub unladen: bool,
    /// Write the transfer functions, a row for each frequency, as a CSV file
    #[arg(long, value_name = "FILE.csv")]
    pub csv: Option<PathBuf>,
    /// Leave out the lines at the head of the CSV file, after #, that say what it was made from
    #[arg(long, requires = "csv")]
    pub plain_csv: bool,
    /// Write a picture of the transfer functions
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum MovedWheels {
    /// Both alike
    Both,
    /// The left only
    Left,
    /// The right only
    Right,
    /// Antisymmetric: the left up, the right down by as much
    Opposed,
}

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
    /// Mean of the speeds that the fleet holds
    #[arg(long, value_name = "SPEED", default_value = "100 km/h")]
    pub held: String,
    /// Their standard deviation
    #[arg(long, value_name = "SPEED", default_value = "4 km/h")]
    pub spread: String,
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
    #[arg(long, value_name = "FILE.svg|png")]
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

#[derive(Debug, Args)]
pub struct Section {
    #[command(flatten)]
    pub model: ModelInput,
    /// Load case whose stress is shown in stiffened sections, where they are bent most
    #[arg(long, value_name = "NAME")]
    pub case: Option<String>,
    /// Write a picture of the sections
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Fit {
    /// Model file; its values are the initial value
    pub model: PathBuf,
    /// Readings, a CSV file such as models/readings/trailer-152-thin.csv; `axlebow start --readings` writes a sheet for it
    #[arg(long, value_name = "FILE.csv")]
    pub readings: PathBuf,
    /// Key that may change, such as tube.wall; may be given more than once [default: the wall, the rotational stiffness of
    /// each seat, and manufactured camber and toe where camber and toe are read]
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
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
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
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
}

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
    #[arg(long, value_name = "FILE.svg|png")]
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
    /// Write a picture: the wear that each remedy leaves
    #[arg(long, value_name = "FILE.svg|png")]
    pub plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub struct Report {
    /// Model file or study file, with or without its .toml
    pub file: PathBuf,
    /// Who reads it: what comes first, and how much of it
    #[arg(long = "for", value_enum, default_value = "fleet")]
    pub audience: Audience,
    /// The page [default: NAME-report.html here]; the documents of its parts go beside it, as NAME-report.flex.json and so on
    #[arg(short = 'o', long = "out", value_name = "FILE.html")]
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
#[derive(Debug, Clone, Copy, ValueEnum)]
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
    #[arg(long, value_name = "FILE.html")]
    pub page: Option<PathBuf>,
    /// Write the same columns as a Parquet file (a build with the feature `parquet` only)
    #[arg(long, value_name = "FILE.parquet", group = "saved")]
    pub parquet: Option<PathBuf>,
    /// Write a picture of the study
    #[arg(long, value_name = "FILE.svg|png")]
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

#[derive(Debug, Args)]
pub struct Textbook {
    /// Only cases whose name or topic has this text in it
    pub filter: Option<String>,
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
    /// The result of `cups --json`
    Cups,
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
    #[arg(long, value_name = "FILE.html")]
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
