//! Vibration and rides.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::{Drive, ModelInput};

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
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
    /// Write the shapes as a VTK XML grid, a field of displacement for each mode
    #[arg(long, value_name = "FILE.vtu")]
    pub vtu: Option<PathBuf>,
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
    /// Drive again by half and by a quarter of the time step, and say what the step leaves of the results' error
    #[arg(long)]
    pub refine: bool,
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
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub plot: Option<PathBuf>,
    /// Draw what was measured over that picture: a CSV file whose first column is time_s or distance_m, then any of
    /// left_load_kn, right_camber_change_deg, left_road_mm, stress_mpa and the like
    #[arg(long, value_name = "FILE.csv")]
    pub overlay: Option<PathBuf>,
    /// Write a picture of the camber's spectrum, its peaks named by the modes
    #[arg(long, value_name = "FILE.svg|png|pdf")]
    pub spectrum: Option<PathBuf>,
    /// Write a page on which the axle moves over the road
    #[arg(long, value_name = "FILE.html|pdf")]
    pub animate: Option<PathBuf>,
    /// Write moments of the ride as a collection of VTK XML grids, which lie beside it
    #[arg(long, value_name = "FILE.pvd")]
    pub pvd: Option<PathBuf>,
    /// Let another axle move under this one on that page: same road, same moment, same scale
    #[arg(long, value_name = "MODEL", requires = "animate")]
    pub against: Option<PathBuf>,
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
    #[arg(long, value_name = "FILE.svg|png|pdf")]
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
