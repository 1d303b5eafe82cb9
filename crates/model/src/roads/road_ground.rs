//! The ground that a road file describes.

use std::path::Path;

use axlebow_road::{
    Coherence, Event, HalfSineBump, HaversineBump, MeasuredProfile, Pothole, Ramp, RandomRoad, Road,
    RoadError, RoughnessClass, Step, Track, Washboard, WaveBand, Wheels, iso_8608_spectrum,
};
use axlebow_units::{Kind, show};

use super::profile_file::{LONGEST_PROFILE, ProfileFile};
use crate::content::{Assumed, Document, Table};
use crate::faults::Problems;
use crate::read::{named_file, named_path};

/// Distances from row to row that differ by more than this share are called uneven: below it they may be
/// even ones, rounded.
const UNEVEN: f64 = 0.01;

/// The ground that a road file describes.
pub(crate) struct Ground {
    /// The road.
    pub road: Road,
    /// Keys that have no say here, though other roads of the kind have a use for them.
    pub idle: &'static [&'static str],
    /// How the rows of an uneven profile are joined.
    pub uneven: Option<Assumed>,
    /// What a random road was drawn from.
    pub random: Option<RandomRoad>,
}

impl Ground {
    /// Builds the ground of a document whose kind has the keys that it needs.
    pub fn of(document: &Document, folder: &Path) -> Result<Self, Problems> {
        let root = document.root();
        let refused = |error: RoadError| {
            let mut problems = document.problems();
            problems.push(root.span_of("kind"), error.to_string(), None);
            problems
        };
        match root.word("kind") {
            "measured-profile" => {
                let bytes = named_file(document, (root, "profile"), folder, LONGEST_PROFILE)?;
                let named = named_path(("profile", root.text("profile")), folder).display().to_string();
                let profile = ProfileFile::from_bytes(&bytes, &named, root.number("widest_gap"))?;
                let idle = check_sides(document, profile.tracks.len() == 2)?;
                let road = measured(root, &profile.tracks).map_err(refused)?;
                Ok(Self { road, idle, uneven: uneven(&profile), random: None })
            }
            "random-road" => {
                let random = random_road(root).map_err(refused)?;
                let road = random.road().map_err(refused)?;
                Ok(Self { road, idle: &[], uneven: None, random: Some(random) })
            }
            _ => {
                let idle = check_sides(document, false)?;
                let road = shape(root).and_then(|event| on_wheels(root, event)).map_err(refused)?;
                Ok(Self { road, idle, uneven: None, random: None })
            }
        }
    }
}

/// Keys that say nothing about who meets what, or the refusal of a file that gives them.
fn check_sides(document: &Document, both_tracks: bool) -> Result<&'static [&'static str], Problems> {
    let root = document.root();
    let (idle, why): (&[&str], _) = match root.word("wheels") {
        _ if both_tracks => (&["wheels", "lag"], "the profile has a column for each side"),
        "both" => (&[], ""),
        _ => (&["lag"], "the wheels of one side only meet the road's event"),
    };
    let mut problems = document.problems();
    for entry in root.entries().iter().filter(|entry| !entry.assumed && idle.contains(&entry.key)) {
        problems.push(entry.span.clone(), format!("`{}` does nothing: {why}", entry.key), None);
    }
    if problems.is_empty() { Ok(idle) } else { Err(problems) }
}

fn measured(root: &Table, tracks: &[MeasuredProfile]) -> Result<Road, RoadError> {
    match tracks {
        [left, right] => Ok(Road { left: Track::new(left.clone()), right: Track::new(right.clone()) }),
        tracks => on_wheels(root, tracks[0].clone().into()),
    }
}

fn uneven(profile: &ProfileFile) -> Option<Assumed> {
    let [least, most] = profile.spacing;
    let shown = |length| show(length, Kind::Length, profile.system);
    (most > (1.0 + UNEVEN) * least).then(|| Assumed {
        path: "profile".to_owned(),
        text: format!("straight between rows that lie {} to {} apart", shown(least), shown(most)),
        meaning: "The ground between the rows of an uneven profile.",
    })
}

fn shape(root: &Table) -> Result<Event, RoadError> {
    let number = |key| root.number(key);
    Ok(match root.word("kind") {
        "half-sine-bump" => HalfSineBump::new(number("height"), number("length"))?.into(),
        "haversine-bump" => HaversineBump::new(number("height"), number("length"))?.into(),
        "ramp" => Ramp::new(number("height"), number("length"))?.into(),
        "step" => Step::new(number("height"))?.into(),
        "pothole" => Pothole::new(number("depth"), number("length"), number("edge_slope"))?.into(),
        _ => {
            let count = number("count") as usize;
            Washboard::new(number("wavelength"), number("amplitude"), count)?.into()
        }
    })
}

fn on_wheels(root: &Table, event: Event) -> Result<Road, RoadError> {
    let wheels = match root.word("wheels") {
        "left" => Wheels::Left,
        "right" => Wheels::Right,
        _ => Wheels::Both { lag: root.number("lag") },
    };
    Road::new(event, wheels)
}

fn random_road(root: &Table) -> Result<RandomRoad, RoadError> {
    let class = root.word("class");
    let place = b"ABCDEFGH".iter().position(|letter| class.as_bytes() == [*letter]).unwrap_or(0);
    Ok(RandomRoad {
        spectrum: iso_8608_spectrum(RoughnessClass::ALL[place]),
        coherence: Coherence::isotropic(root.number("track_width"))?,
        band: WaveBand::default(),
        length: root.number("length"),
        spacing: root.number("spacing"),
        seed: root.number("seed") as u64,
    })
}
