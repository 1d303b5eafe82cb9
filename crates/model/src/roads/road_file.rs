//! From a road file to a ride.

use std::path::{Path, PathBuf};

use axlebow_axle::{AxleError, RandomRide, RecordOptions, Ride, RideBasis, Scheme};
use axlebow_road::{FeltSpectrum, RandomRoad, Road};

use super::road_ground::Ground;
use super::road_kind::RoadKind;
use super::road_name::described;
use crate::content::{Assumed, Document, Table};
use crate::faults::{ModelError, Problems};
use crate::keys::ROAD;
use crate::read::{named_path, read, read_bytes_partly};

/// A road with the way in which it is driven.
#[derive(Debug, Clone)]
pub struct RoadFile {
    /// What it is called.
    pub name: String,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// The road.
    pub road: Road,
    /// Speed, m/s.
    pub speed: f64,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    /// The measured profile that it reads, if it reads one.
    pub profile: Option<PathBuf>,
    kind: &'static str,
    random: Option<RandomRoad>,
    contact_length: f64,
    run_up: f64,
    run_out: f64,
    time_step: f64,
    scheme: Scheme,
}

impl RoadFile {
    /// Reads a road file.
    ///
    /// Arguments: `folder`, that the name of a profile starts from.
    ///
    /// # Errors
    /// Every problem at once: those of any file, keys that the kind of road needs or has no use for, shapes
    /// that are impossible; or the problems of the profile that it names.
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<RoadFile, Problems> {
        let read = read_bytes_partly(bytes, file_name, &ROAD);
        let document = read.map_err(|unread| unread.with(|partial| check_keys(partial).err()))?;
        RoadFile::of(&document, folder)
    }

    /// What a road file would say of an event that is known by its name: its usual sizes, listed as assumed.
    ///
    /// Returns `None` for a name that is not one of [`road_events`](crate::road_events).
    pub fn event(name: &str) -> Option<Document> {
        let kind = RoadKind::of(name).filter(|kind| !kind.usual.is_empty())?;
        let text = format!("kind = \"{name}\"\n{}", kind.usual);
        let mut document = read(&text, &format!("{name} (built in)"), &ROAD).ok()?;
        let sizes = document.root().entries().iter().filter(|entry| !entry.assumed && entry.key != "kind");
        let sizes: Vec<_> = sizes
            .filter_map(|entry| {
                let text = text.get(entry.span.clone())?.trim_matches('"').to_owned();
                Some(Assumed { path: entry.key.to_owned(), text, meaning: ROAD.key(entry.key)?.meaning })
            })
            .collect();
        document.assume(sizes);
        Some(document)
    }

    /// What a road file would say of a measured profile alone.
    ///
    /// # Errors
    /// A path without a name.
    pub fn measured(profile: &Path) -> Result<Document, ModelError> {
        let path = profile.to_string_lossy();
        let text = "kind = \"measured-profile\"\nprofile = \"profile.csv\"\n";
        let mut document =
            read(text, &path, &ROAD).map_err(|_| ModelError::BadPath { path: path.to_string() })?;
        document.set("profile", &path)?;
        document.set("name", &profile.file_stem().unwrap_or_default().to_string_lossy())?;
        Ok(document)
    }

    /// Builds the road that a document describes; see [`from_bytes`](RoadFile::from_bytes).
    ///
    /// # Errors
    /// As [`RoadFile::from_bytes`].
    pub fn of(document: &Document, folder: &Path) -> Result<RoadFile, Problems> {
        check_keys(document)?;
        let Ground { road, idle, uneven, random } = Ground::of(document, folder)?;
        let root = document.root();
        let kind = RoadKind::of(root.word("kind"));
        let used = |key: &str| kind.is_none_or(|kind| kind.uses(key)) && !idle.contains(&key);
        let in_use = document.assumed().iter().filter(|assumed| used(&assumed.path));
        Ok(RoadFile {
            name: root.optional_text("name").map_or_else(|| described(document), str::to_owned),
            invented: root.flag("invented"),
            road,
            speed: root.number("speed"),
            assumed: in_use.cloned().chain(uneven).collect(),
            profile: root.optional_text("profile").map(|named| named_path(("profile", named), folder)),
            kind: root.word("kind"),
            random,
            contact_length: root.number("contact_length"),
            run_up: root.number("run_up"),
            run_out: root.number("run_out"),
            time_step: root.number("time_step"),
            scheme: scheme(root),
        })
    }

    /// What kind of road it is, such as `pothole`.
    pub fn kind(&self) -> &'static str {
        self.kind
    }

    /// This random road at a speed (m/s), for its spectrum; none for a road of another kind, which has none.
    ///
    /// # Errors
    /// A speed or contact length out of range.
    pub fn random_ride(&self, speed: f64) -> Result<Option<RandomRide>, AxleError> {
        let Some(random) = self.random else { return Ok(None) };
        let road = FeltSpectrum::new(&random, speed, self.contact_length)?;
        Ok(Some(RandomRide { name: self.name.clone(), road }))
    }

    /// Another draw of this random road: the one with a number so much higher; none for a road of another kind, of which
    /// there is only one.
    ///
    /// # Errors
    /// A road that cannot be drawn.
    pub fn redrawn(&self, further: u64) -> Result<Option<RoadFile>, AxleError> {
        let Some(random) = self.random else { return Ok(None) };
        let random = RandomRoad { seed: random.seed + further, ..random };
        Ok(Some(RoadFile { road: random.road()?, random: Some(random), ..self.clone() }))
    }

    /// The ride over this road with a load of the axle (N) at a speed (m/s).
    pub fn ride(&self, axle_load: f64, speed: f64) -> Ride {
        Ride {
            name: self.name.clone(),
            road: self.road.clone(),
            repeats: self.random.is_some(),
            speed,
            contact_length: self.contact_length,
            from: self.road.start() - self.run_up,
            to: self.road.end() + self.run_out * speed,
            step: self.time_step,
            axle_load,
            basis: RideBasis::Full,
            scheme: self.scheme,
            keep: RecordOptions::default(),
        }
    }
}

fn scheme(root: &Table) -> Scheme {
    match root.word("scheme") {
        "average-acceleration" => Scheme::AverageAcceleration,
        _ => Scheme::GeneralizedAlpha { spectral_radius: root.number("spectral_radius") },
    }
}

/// Refuses a file that lacks keys which its kind of road needs, or has some that it has no use for.
fn check_keys(document: &Document) -> Result<(), Problems> {
    let (root, mut problems) = (document.root(), document.problems());
    let Some(kind) = root.optional_word("kind").and_then(RoadKind::of) else { return Ok(()) };
    let is_open = |key: &&&str| root.value(key).is_none() && !root.faulty.contains(*key);
    for key in kind.needs.iter().filter(is_open) {
        problems.push(root.span_of("kind"), format!("a {} needs its `{key}`", kind.word), None);
    }
    let own: Vec<_> = kind.own_keys().map(|key| format!("`{key}`")).collect();
    for entry in root.entries().iter().filter(|entry| !entry.assumed && !kind.uses(entry.key)) {
        let message = format!("`{}` does nothing for a {}", entry.key, kind.word);
        let accepted = format!("{}, and the keys of every road", own.join(", "));
        problems.push(entry.span.clone(), message, Some(accepted));
    }
    if problems.is_empty() { Ok(()) } else { Err(problems) }
}
