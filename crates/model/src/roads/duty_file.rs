//! From a duty file to what an axle goes through in a year.

use axlebow_axle::{Actions, Axle, Duty, DutyBump, DutyEvent, DutyRoad, Ride, RideBasis};

use super::road_file::RoadFile;
use crate::content::{Assumed, Document, Table};
use crate::faults::{ModelError, Problems};
use crate::keys::DUTY;
use crate::read::read_bytes;

/// How far the shares of the roads may be from one: what is lost by writing thirds with three digits.
const ROUNDING: f64 = 2e-3;

/// A duty as a file gives it, for any axle.
#[derive(Debug, Clone)]
pub struct DutyFile {
    /// What it is called.
    pub name: String,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    root: Table,
}

impl DutyFile {
    /// Reads a duty file.
    ///
    /// # Errors
    /// Every problem at once: those of any file, shares that do not sum to one, events that last longer than the road.
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<DutyFile, Problems> {
        DutyFile::of(&read_bytes(bytes, file_name, &DUTY)?)
    }

    /// The duty of a document; see [`from_bytes`](Self::from_bytes).
    ///
    /// # Errors
    /// As there.
    pub fn of(document: &Document) -> Result<DutyFile, Problems> {
        let (root, mut problems) = (document.root(), document.problems());
        let roads = root.tables("road");
        let sum: f64 = roads.iter().map(|road| road.number("share")).sum();
        if (sum - 1.0).abs() > ROUNDING {
            let message = format!("the shares of the roads sum to {:.4}", sum);
            let span = roads.last().map_or(0..0, |road| road.span_of("share"));
            problems.push(span, message, Some("shares that sum to 1".to_owned()));
        }
        let lasting = |event: &Table| event.number("per_km") * event.number("length") / 1e3;
        let events = root.tables("event");
        let lasts: f64 = events.iter().map(lasting).sum();
        if lasts > 1.0 {
            let message = format!("braking and turns last {lasts:.2} times as long as the road");
            let span = events.last().map_or(0..0, |event| event.span_of("length"));
            problems.push(span, message, Some("events that last at most as long as the road".to_owned()));
        }
        for bump in root.tables("bump").iter().filter(|bump| bump.number("height") == 0.0) {
            let accepted = Some("a height above 0, or below 0 for a hole".to_owned());
            problems.push(bump.span_of("height"), "a bump of no height does nothing", accepted);
        }
        if !problems.is_empty() {
            return Err(problems);
        }
        Ok(DutyFile {
            name: root.text("name").to_owned(),
            invented: root.flag("invented"),
            assumed: document.assumed().to_vec(),
            root: root.clone(),
        })
    }

    /// What this duty is for an axle.
    ///
    /// # Errors
    /// A road that cannot be made, such as a sample shorter than its longest wave or a bump of no length.
    pub fn duty(&self, axle: &Axle) -> Result<Duty, ModelError> {
        let root = &self.root;
        let sum: f64 = root.tables("road").iter().map(|road| road.number("share")).sum();
        let roads = root.tables("road").iter().enumerate();
        let roads = roads.map(|(number, road)| self.road(axle, (number, road), sum));
        Ok(Duty {
            name: self.name.clone(),
            distance: root.number("distance_per_year"),
            roads: roads.collect::<Result<_, _>>()?,
            bumps: root.tables("bump").iter().map(|bump| bump_of(axle, bump)).collect::<Result<_, _>>()?,
            events: root.tables("event").iter().map(|event| event_of(axle, event)).collect(),
            loadings: root.number("loadings_per_year"),
        })
    }

    fn road(&self, axle: &Axle, (number, road): (usize, &Table), sum: f64) -> Result<DutyRoad, ModelError> {
        let speed = road.number("speed");
        let seed = self.root.count("seed") as usize + number;
        let length = format!("{:?} m", self.root.number("sample"));
        let keys = [("class", road.word("class")), ("length", &length), ("seed", &seed.to_string())];
        let run = [("run_up", "0 m"), ("run_out", "0 s")];
        let file = event_road("random-road", keys.into_iter().chain(run))?;
        let name = format!("class {}, {:.0} km/h, {}", road.word("class"), 3.6 * speed, road.word("load"));
        let spectrum = file.random_ride(speed).map_err(refused)?.ok_or_else(no_spectrum)?;
        let ride = Ride { name: name.clone(), ..reduced(file.ride(load(axle, road), speed)) };
        Ok(DutyRoad { name, share: road.number("share") / sum, ride, spectrum })
    }
}

fn bump_of(axle: &Axle, bump: &Table) -> Result<DutyBump, ModelError> {
    let [height, length] = ["height", "length"].map(|key| format!("{:?} m", bump.number(key)));
    let keys = [("height", height.as_str()), ("length", &length), ("wheels", bump.word("wheels"))];
    let file = event_road("haversine-bump", keys.into_iter())?;
    let name = format!("bump {:.0} mm high, {} m long", 1e3 * bump.number("height"), bump.number("length"));
    let ride = reduced(file.ride(load(axle, bump), bump.number("speed")));
    Ok(DutyBump {
        per_distance: bump.number("per_km") / 1e3,
        ride: Ride { name: name.clone(), ..ride },
        name,
    })
}

fn event_of(axle: &Axle, event: &Table) -> DutyEvent {
    let (kind, axle_load) = (event.word("kind"), load(axle, event));
    let force = event.number("force_ratio") * axle_load;
    let still = Actions { axle_load, gravity: 1.0, ..Actions::default() };
    let actions = match kind {
        "braking" => Actions { braking_force: force, ..still },
        "turn-left" => Actions { side_force: force, ..still },
        _ => Actions { side_force: -force, ..still },
    };
    DutyEvent {
        name: format!("{} with {} of the axle load", kind.replace('-', " "), event.number("force_ratio")),
        actions,
        per_distance: event.number("per_km") / 1e3,
        length: event.number("length"),
    }
}

/// A road known by its name with some keys set.
fn event_road<'a>(
    kind: &str,
    keys: impl Iterator<Item = (&'a str, &'a str)>,
) -> Result<RoadFile, ModelError> {
    let mut document = RoadFile::event(kind).ok_or_else(no_spectrum)?;
    for (key, value) in keys {
        document.set(key, value)?;
    }
    RoadFile::of(&document, std::path::Path::new(""))
        .map_err(|problems| ModelError::Duty { reason: problems.render() })
}

/// A ride in the few motions that matter, as a duty has many of them.
fn reduced(ride: Ride) -> Ride {
    Ride { basis: RideBasis::Reduced, ..ride }
}

fn load(axle: &Axle, table: &Table) -> f64 {
    if table.word("load") == "unladen" { axle.loading.unladen_load } else { axle.loading.rated_load }
}

fn refused(error: axlebow_axle::AxleError) -> ModelError {
    ModelError::Duty { reason: error.to_string() }
}

fn no_spectrum() -> ModelError {
    ModelError::Duty { reason: "a random road has a spectrum".to_owned() }
}
