//! What is driven over: a road file, a measured profile or an event by its name, with the user's changes.

use std::path::{Path, PathBuf};

use axlebow_axle::{Axle, Ride, RideBasis};
use axlebow_model::{Document, ROAD, RoadFile, given_file, likely, read_bytes, road_events, why_missing};
use axlebow_report::{InventedInput, ModelCard};
use axlebow_units::Kind;

use crate::args::Drive;
use crate::failure::Failure;
use crate::input::{self, FileKind};

/// The road of a command, changes made.
pub fn road(over: &Path, changes: &[String]) -> Result<RoadFile, Failure> {
    let over = &named_road(over);
    let mut document = document(over)?;
    for change in changes {
        input::set(&mut document, "--road", change)?;
    }
    // A profile that is given itself is named from here, one that a road file names from that file's folder.
    let folder = if is_profile(over) { None } else { over.parent() };
    let mut road = RoadFile::of(&document, folder.unwrap_or(Path::new("")))
        .map_err(|problems| input::changed(problems, "--road", changes))?;
    road.profile.iter().for_each(|profile| input::remember_read(profile));
    if document.root().value("name").is_some() && !changes.is_empty() {
        road.name += &format!(", with {}", changes.join(", "));
    }
    Ok(road)
}

/// The ride of an axle that was asked for, if one was; the card lists what the road assumes.
pub fn ride(drive: &Drive, axle: &Axle, card: &mut ModelCard) -> Result<Option<Ride>, Failure> {
    Ok(driven(drive, axle, card)?.map(|(_, ride)| ride))
}

/// As [`ride`], solved by modal reduction: for commands that drive many axles over it.
pub fn quick_ride(drive: &Drive, axle: &Axle, card: &mut ModelCard) -> Result<Option<Ride>, Failure> {
    Ok(ride(drive, axle, card)?.map(|ride| Ride { basis: RideBasis::Reduced, ..ride }))
}

/// The road that was asked for with its ride, as [`ride`].
pub fn driven(drive: &Drive, axle: &Axle, card: &mut ModelCard) -> Result<Option<(RoadFile, Ride)>, Failure> {
    let Some(over) = &drive.over else { return Ok(None) };
    let road = road(over, &drive.road_changes)?;
    let speed = match &drive.speed {
        Some(text) => input::quantity("--speed", text, Kind::Speed)?.0,
        None => road.speed,
    };
    let load = if drive.unladen { axle.loading.unladen_load } else { axle.loading.rated_load };
    card.assumed.extend(road.assumed.iter().map(|assumed| input::assumed("road.", assumed)));
    card.settings.push(format!("over {}", over.display()));
    card.settings.extend(drive.road_changes.iter().map(|change| format!("road {change}")));
    card.settings.extend(drive.speed.iter().map(|speed| format!("speed {speed}")));
    card.settings.extend(drive.unladen.then(|| "unladen".to_owned()));
    card.add_input(InventedInput::Road, road.invented);
    let ride = road.ride(load, speed);
    Ok(Some((road, ride)))
}

/// The event, or the file that a name leads to: with the ending of a road file or a profile where only that is there.
fn named_road(over: &Path) -> PathBuf {
    match over.to_str().and_then(RoadFile::event) {
        Some(_) => over.to_owned(),
        None => given_file(&given_file(over, "toml"), "csv"),
    }
}

fn document(over: &Path) -> Result<Document, Failure> {
    if let Some(event) = over.to_str().and_then(RoadFile::event) {
        let file = given_file(over, "toml");
        if file != over {
            let (event, file) = (over.display(), file.display());
            let note = format!("{event} is the built-in event; the file here is given as {file}");
            input::say_notes([note]);
        }
        return Ok(event);
    }
    if !over.exists() {
        return Err(Failure::Input(unknown(over)));
    }
    if is_profile(over) {
        let refused = |error: axlebow_model::ModelError| Failure::Input(error.to_string());
        return RoadFile::measured(over).map_err(refused);
    }
    let bytes = input::read_file(over)?;
    read_bytes(&bytes, &over.display().to_string(), &ROAD)
        .map_err(|problems| input::misread(problems, &bytes, FileKind::Road))
}

fn is_profile(over: &Path) -> bool {
    over.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("csv"))
}

/// A name that is neither a file nor an event.
fn unknown(over: &Path) -> String {
    let missing = why_missing(over);
    let over = over.display().to_string();
    let events: Vec<_> = road_events().map(|event| format!("`{event}`")).collect();
    let likely =
        likely(&over, road_events()).map_or(String::new(), |event| format!("; did you mean `{event}`?"));
    format!(
        "--over {over}: {missing}; and no event has that name; accepted: a road file, a CSV file of a \
         measured profile, or one of the events {}{likely}",
        events.join(", ")
    )
}
