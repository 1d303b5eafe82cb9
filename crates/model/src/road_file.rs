//! From a road file to a ride.

use axlebow_axle::{Ride, RideBasis, Scheme};
use axlebow_road::{
    Coherence, Event, HalfSineBump, HaversineBump, Pothole, Ramp, RandomRoad, Road, RoadError,
    RoughnessClass, Step, Washboard, WaveBand, Wheels, iso_8608_spectrum,
};

use crate::road_keys::ROAD;
use crate::{Assumed, Document, Problems, Table, read_bytes};

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
    contact_length: f64,
    run_up: f64,
    run_out: f64,
    time_step: f64,
    scheme: Scheme,
}

impl RoadFile {
    /// Reads a road file.
    ///
    /// # Errors
    /// Every problem at once: those of any file, keys that the kind of road needs, and shapes that are
    /// impossible.
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<RoadFile, Problems> {
        RoadFile::of(&read_bytes(bytes, file_name, &ROAD)?)
    }

    /// Builds the road that a document describes.
    ///
    /// # Errors
    /// As [`RoadFile::from_bytes`].
    pub fn of(document: &Document) -> Result<RoadFile, Problems> {
        let root = document.root();
        let mut problems = document.problems();
        let road = road(root, &mut problems);
        let (Some(road), true) = (road, problems.is_empty()) else { return Err(problems) };
        Ok(RoadFile {
            name: root.text("name").to_owned(),
            invented: root.flag("invented"),
            road,
            speed: root.number("speed"),
            assumed: document.assumed().to_vec(),
            contact_length: root.number("contact_length"),
            run_up: root.number("run_up"),
            run_out: root.number("run_out"),
            time_step: root.number("time_step"),
            scheme: scheme(root),
        })
    }

    /// The ride over this road with a load of the axle (N) at a speed (m/s).
    pub fn ride(&self, axle_load: f64, speed: f64) -> Ride {
        Ride {
            name: self.name.clone(),
            road: self.road.clone(),
            speed,
            contact_length: self.contact_length,
            from: self.road.start() - self.run_up,
            to: self.road.end() + self.run_out * speed,
            step: self.time_step,
            axle_load,
            basis: RideBasis::Full,
            scheme: self.scheme,
        }
    }
}

fn scheme(root: &Table) -> Scheme {
    match root.word("scheme") {
        "average-acceleration" => Scheme::AverageAcceleration,
        _ => Scheme::GeneralizedAlpha { spectral_radius: root.number("spectral_radius") },
    }
}

fn road(root: &Table, problems: &mut Problems) -> Option<Road> {
    let kind = root.word("kind");
    let mut need = |key: &'static str| {
        let value = root.optional_number(key);
        if value.is_none() {
            problems.push(root.span_of("kind"), format!("a {kind} needs its `{key}`"), None);
        }
        value
    };
    let made: Result<Road, RoadError> = match kind {
        "half-sine-bump" => {
            let (height, length) = (need("height"), need("length"));
            HalfSineBump::new(height?, length?).and_then(|bump| on_wheels(root, bump.into()))
        }
        "haversine-bump" => {
            let (height, length) = (need("height"), need("length"));
            HaversineBump::new(height?, length?).and_then(|bump| on_wheels(root, bump.into()))
        }
        "ramp" => {
            let (height, length) = (need("height"), need("length"));
            Ramp::new(height?, length?).and_then(|ramp| on_wheels(root, ramp.into()))
        }
        "step" => Step::new(need("height")?).and_then(|step| on_wheels(root, step.into())),
        "pothole" => {
            let (depth, length) = (need("depth"), need("length"));
            let slope = root.number("edge_slope");
            Pothole::new(depth?, length?, slope).and_then(|hole| on_wheels(root, hole.into()))
        }
        "washboard" => {
            let (wavelength, amplitude, count) = (need("wavelength"), need("amplitude"), need("count"));
            Washboard::new(wavelength?, amplitude?, count? as usize)
                .and_then(|waves| on_wheels(root, waves.into()))
        }
        _ => {
            let length = need("length");
            if root.optional_word("class").is_none() {
                problems.push(root.span_of("kind"), format!("a {kind} needs its `class`"), None);
            }
            random_road(root, length?, root.optional_word("class")?)
        }
    };
    made.map_err(|error| problems.push(root.span_of("kind"), error.to_string(), None)).ok()
}

fn on_wheels(root: &Table, event: Event) -> Result<Road, RoadError> {
    let wheels = match root.word("wheels") {
        "left" => Wheels::Left,
        "right" => Wheels::Right,
        _ => Wheels::Both { lag: root.number("lag") },
    };
    Road::new(event, wheels)
}

fn random_road(root: &Table, length: f64, class: &str) -> Result<Road, RoadError> {
    let place = b"ABCDEFGH".iter().position(|letter| class.as_bytes() == [*letter]).unwrap_or(0);
    let road = RandomRoad {
        spectrum: iso_8608_spectrum(RoughnessClass::ALL[place]),
        coherence: Coherence::isotropic(root.number("track_width"))?,
        band: WaveBand::default(),
        length,
        spacing: root.number("spacing"),
        seed: root.number("draw") as u64,
    };
    road.road()
}
