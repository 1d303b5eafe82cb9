//! `axlebow ride`.

use axlebow_axle::{
    BasisComparison, RecordOptions, Ride as Driven, RideBasis, RideOutcome, RidingAxle, Scheme,
};
use axlebow_model::{LARGEST_SERIES, MeasuredRide, Model, RoadFile};
use axlebow_report::plot::{Drawing, Overlay, ride_figure, spectrum_figure};
use axlebow_report::{
    BesideRide, InventedInput, ModelCard, OtherRide, Svg, collection, csv, json, ride_animation,
    ride_moments, rides_animation, table,
};
use axlebow_study::{DrawnRide, DrawnRides};
use std::io::Write;

use crate::args::{Ride, TimeScheme};
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output, road_input};

/// Random roads that are driven over where it is not said how many: the mean of a rms is then known within some 5 %.
const DRAWS: u64 = 8;

/// The kind of road of which there are many.
const RANDOM_ROAD: &str = "random-road";

/// Moments that are written where no animation asks for another number of them.
const MOMENTS: usize = 200;

/// Modes that may name peaks of a spectrum.
const MODES: usize = 16;

pub fn run(arguments: &Ride) -> Result<Exit, Failure> {
    check_files(arguments)?;
    let model = input::model(&arguments.model)?;
    let mut card = input::card(&model, &arguments.model);
    let driven = road_input::driven(&arguments.drive, &model.axle, &mut card)?;
    let (road, ride) = driven.ok_or_else(|| Failure::Input("ride needs --over ROAD".to_owned()))?;
    check_places(arguments)?;
    let draws = draws(arguments, &road)?;
    let asked = asked(arguments, ride)?;
    let load = asked.axle_load;
    let axle = RidingAxle::of(&model.axle, load)?;
    let outcome = axle.ride(&asked)?;
    let picture = write_pictures(arguments, &outcome, (&model, load), &card)?;
    animate(arguments, (&outcome, &model), &asked, &card)?;
    write_moments(arguments, &outcome, &card)?;
    write_samples(arguments, &outcome, &card)?;
    let drawn = drawn_rides((&axle, &asked), (&road, draws), &outcome)?;
    let comparison = comparison(arguments, (&axle, &asked), &outcome)?;
    let refinement = arguments.refine.then(|| axle.refined(&asked, &outcome)).transpose()?;
    let beside = BesideRide {
        draws: drawn.as_ref(),
        comparison: comparison.as_ref(),
        refinement: refinement.as_ref(),
    };
    let page = || table::ride(&outcome, beside, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::ride_document(&outcome, beside, &card))?;
    Ok(verdict(&outcome))
}

/// Number of random roads to drive over.
fn draws(arguments: &Ride, road: &RoadFile) -> Result<u64, Failure> {
    let random = road.kind() == RANDOM_ROAD;
    match arguments.draws {
        Some(draws) if draws > 1 && !random => Err(Failure::Input(format!(
            "--draws {draws}: the road \"{}\" is a {}, of which there is only one; --draws belongs to a {RANDOM_ROAD}",
            road.name,
            road.kind()
        ))),
        Some(draws) => Ok(draws.into()),
        None => Ok(if random { DRAWS } else { 1 }),
    }
}

/// Means over so many draws of a random road, the first of which has been driven over.
fn drawn_rides(
    (axle, asked): (&RidingAxle, &Driven),
    (road, draws): (&RoadFile, u64),
    first: &RideOutcome,
) -> Result<Option<DrawnRides>, Failure> {
    let mut rides = vec![DrawnRide::from(first)];
    for further in 1..draws {
        let Some(redrawn) = road.redrawn(further)? else { break };
        let outcome =
            axle.ride(&Driven { road: redrawn.road, keep: RecordOptions::default(), ..asked.clone() })?;
        if let Some(why) = &outcome.partial {
            let draw = further + 1;
            output::say(&format!("warning: draw {draw} of the road is left out of the means: {why}"));
            continue;
        }
        rides.push(DrawnRide::from(&outcome));
    }
    Ok(DrawnRides::of(&rides))
}

/// The ride with the basis and the scheme that were asked for.
fn asked(arguments: &Ride, ride: Driven) -> Result<Driven, Failure> {
    let scheme = match (arguments.scheme, arguments.spectral_radius, ride.scheme) {
        (Some(TimeScheme::AverageAcceleration), Some(_), _)
        | (None, Some(_), Scheme::AverageAcceleration) => {
            return Err(Failure::Input(
                "--spectral-radius belongs to --scheme generalized-alpha; average acceleration has none"
                    .into(),
            ));
        }
        (Some(TimeScheme::AverageAcceleration), None, _) => Scheme::AverageAcceleration,
        (_, Some(spectral_radius), _) => Scheme::GeneralizedAlpha { spectral_radius },
        (Some(TimeScheme::GeneralizedAlpha), None, Scheme::AverageAcceleration) => axlebow_axle::USUAL_SCHEME,
        (_, None, scheme) => scheme,
    };
    let alone = arguments.reduced && !arguments.full;
    let basis = if alone { RideBasis::Reduced } else { RideBasis::Full };
    Ok(Driven { basis, scheme, keep: keep(arguments), ..ride })
}

/// How far the two bases differ, where both were asked for.
fn comparison(
    arguments: &Ride,
    (axle, asked): (&RidingAxle, &Driven),
    outcome: &RideOutcome,
) -> Result<Option<BasisComparison>, Failure> {
    if !(arguments.full && arguments.reduced) {
        return Ok(None);
    }
    let reduced = axle.ride(&Driven { basis: RideBasis::Reduced, ..asked.clone() })?;
    Ok(Some(BasisComparison::of(outcome, &reduced)))
}

/// The exit code of a ride; says why it is that of a failed check.
fn verdict(outcome: &RideOutcome) -> Exit {
    match &outcome.partial {
        Some(why) => {
            output::say(&format!("warning: the ride is partial: {why}"));
            Exit::CheckFails
        }
        None => Exit::Done,
    }
}

/// Refuses file names before any work is done.
fn check_files(arguments: &Ride) -> Result<(), Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    output::check_picture(arguments.spectrum.as_deref())?;
    output::check_kind("--animate", arguments.animate.as_deref(), "html")?;
    output::check_kind("--pvd", arguments.pvd.as_deref(), "pvd")?;
    output::check_parquet(arguments.parquet.as_deref())
}

/// Refuses places that cannot be written before any work is done.
fn check_places(
    Ride { csv, parquet, plot, spectrum, animate, pvd, model, .. }: &Ride,
) -> Result<(), Failure> {
    output::check_places(&[csv, parquet, plot, spectrum, animate, pvd, &model.page])
}

/// What the ride must keep for the files asked for.
fn keep(arguments: &Ride) -> RecordOptions {
    let shapes = match (&arguments.animate, &arguments.pvd) {
        (Some(_), _) => arguments.frames.into(),
        (None, Some(_)) => MOMENTS,
        (None, None) => 0,
    };
    RecordOptions { stresses: arguments.stations, shapes }
}

fn write_pictures(
    arguments: &Ride,
    outcome: &RideOutcome,
    (model, load): (&Model, f64),
    card: &ModelCard,
) -> Result<Option<Svg>, Failure> {
    let measured = measured(arguments)?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, card, || {
        Ok(ride_figure(outcome, measured.as_ref(), card)?.with_warnings(&outcome.warnings))
    })?;
    if let Some(path) = &arguments.spectrum {
        let modes = axlebow_axle::modes(&model.axle, load, MODES)?;
        let figure = spectrum_figure(outcome, &modes, card)?;
        output::write_picture(path, figure.with_warnings(&outcome.warnings), card)?;
    }
    Ok(picture)
}

/// Writes a collection of moments, and each of them beside it.
fn write_moments(arguments: &Ride, outcome: &RideOutcome, card: &ModelCard) -> Result<(), Failure> {
    let Some(path) = &arguments.pvd else { return Ok(()) };
    let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let mut files = Vec::new();
    for (number, moment) in ride_moments(outcome, card).into_iter().enumerate() {
        let name = format!("{stem}-{number:04}.vtu");
        output::write_quietly(&path.with_file_name(&name), moment.vtu.as_bytes())?;
        files.push((moment.time, name));
    }
    output::write_file(path, collection(&files).as_bytes())
}

/// What was measured along the ride.
fn measured(arguments: &Ride) -> Result<Option<Overlay>, Failure> {
    let Some(path) = &arguments.overlay else { return Ok(None) };
    if arguments.plot.is_none() && arguments.model.page.is_none() {
        let text = "--overlay draws over the picture of --plot or --page; give one of them";
        return Err(Failure::Input(text.to_owned()));
    }
    let bytes = input::read_up_to(path, LARGEST_SERIES)?;
    let ride = MeasuredRide::from_bytes(&bytes, &path.display().to_string())?;
    let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
    Ok(Some(Overlay { name, ride }))
}

/// Writes the page on which the axle moves, and another axle under it over the same road, loaded by the same rule.
fn animate(
    arguments: &Ride,
    (outcome, model): (&RideOutcome, &Model),
    asked: &Driven,
    card: &ModelCard,
) -> Result<(), Failure> {
    let Some(path) = &arguments.animate else { return Ok(()) };
    let drawing = Drawing::of(&model.axle);
    let page = match &arguments.against {
        None => ride_animation(outcome, &drawing, card)?,
        Some(against) => {
            let other = input::plain_model(against)?;
            let loading = &other.axle.loading;
            let load = if arguments.drive.unladen { loading.unladen_load } else { loading.rated_load };
            let ride =
                RidingAxle::of(&other.axle, load)?.ride(&Driven { axle_load: load, ..asked.clone() })?;
            let (name, drawing_of_other) = (other.name.as_str(), Drawing::of(&other.axle));
            let under = OtherRide { name, outcome: &ride, drawing: &drawing_of_other };
            let mut card = card.clone();
            card.add_input(InventedInput::OtherAxle, other.invented);
            rides_animation((outcome, &drawing), under, &card)?
        }
    };
    output::write_file(path, page.as_bytes())
}

fn write_samples(arguments: &Ride, outcome: &RideOutcome, card: &ModelCard) -> Result<(), Failure> {
    if let Some(path) = &arguments.csv {
        let failed = |error: std::io::Error| Failure::on_file("write", path, &error);
        let head = output::csv_head(arguments.plain_csv, Some(card), &outcome.warnings);
        output::stream_file(path, |file| {
            file.write_all(head.as_bytes()).and_then(|()| csv::write_ride(outcome, file)).map_err(failed)
        })?;
    }
    if let Some(path) = &arguments.parquet {
        output::write_file(path, &parquet(outcome, card)?)?;
    }
    Ok(())
}

#[cfg(feature = "parquet")]
fn parquet(outcome: &RideOutcome, card: &ModelCard) -> Result<Vec<u8>, Failure> {
    Ok(axlebow_report::parquet::ride(outcome, card)?)
}

/// Never called: [`check_files`] refuses first.
#[cfg(not(feature = "parquet"))]
fn parquet(_: &RideOutcome, _: &ModelCard) -> Result<Vec<u8>, Failure> {
    Ok(Vec::new())
}
