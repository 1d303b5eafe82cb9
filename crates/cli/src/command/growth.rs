//! `axlebow growth`.

use axlebow_axle::{GrowthOptions, HeldSpeed, Warning, growth};
use axlebow_model::Model;
use axlebow_report::plot::growth_figure;
use axlebow_report::{AxleGrowth, InventedInput, csv, json, table};
use axlebow_units::Kind;

use super::flex::chosen;
use crate::args::Growth;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Growth) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let mut models = vec![input::model(&arguments.model)?];
    for path in &arguments.others {
        models.push(input::plain_model(path)?);
    }
    let mut card = input::card(&models[0], &arguments.model);
    card.add_input(InventedInput::OtherAxle, models[1..].iter().any(|model| model.invented));
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.model.page])?;
    let grown = |model: &Model| -> Result<AxleGrowth, Failure> {
        let outcome = growth(&model.axle, &options(arguments, model)?)?;
        Ok(AxleGrowth { name: model.name.clone(), outcome })
    };
    let axles: Vec<AxleGrowth> = models.iter().map(grown).collect::<Result<_, _>>()?;
    let warnings: Vec<Warning> = axles.iter().flat_map(|axle| axle.outcome.warnings.clone()).collect();
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(growth_figure(&axles, &card)?.with_warnings(&warnings))
    })?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &warnings);
        output::write_file(path, (head + &csv::growth(&axles)).as_bytes())?;
    }
    let page = || table::growth(&axles, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::growth_document(&axles, &card))?;
    Ok(Exit::Done)
}

fn options(arguments: &Growth, model: &Model) -> Result<GrowthOptions, Failure> {
    let own = model.axle.running.held;
    let speed = |option: &str, text: &Option<String>, own: f64| match text {
        Some(text) => input::quantity(option, text, Kind::Speed).map(|(value, _)| value),
        None => Ok(own),
    };
    Ok(GrowthOptions {
        case: chosen(model, std::slice::from_ref(&arguments.case))?.swap_remove(0),
        speeds: speeds(&arguments.speeds)?,
        steps: arguments.steps.into(),
        counts: counts(&arguments.counts)?,
        held: HeldSpeed {
            mean: speed("--held", &arguments.held, own.mean)?,
            deviation: speed("--spread", &arguments.spread, own.deviation)?,
        },
        heights: arguments.in_time.as_deref().map_or(Ok(Vec::new()), heights)?,
    })
}

/// Two speeds, such as "60..110 km/h" or "40 mph..70 mph": the first may leave its unit to the second.
fn speeds(text: &str) -> Result<[f64; 2], Failure> {
    let (from, to) = ends("--speeds", text, "two speeds, such as \"60..110 km/h\"")?;
    let speed = |text: &str| input::quantity("--speeds", text, Kind::Speed).map(|(value, _)| value);
    Ok([speed(&in_unit_of(from, to))?, speed(to)?])
}

/// Heights, such as "0.1,1,3 mm": the last may leave its unit to the others.
fn heights(text: &str) -> Result<Vec<f64>, Failure> {
    let each: Vec<&str> = text.split(',').map(str::trim).collect();
    let last = each.last().copied().unwrap_or_default();
    let height = |one: &&str| input::quantity("--in-time", &in_unit_of(one, last), Kind::Length);
    each.iter().map(|one| height(one).map(|(value, _)| value)).collect()
}

/// A quantity with the unit of another where it has none of its own.
fn in_unit_of(text: &str, other: &str) -> String {
    let unit: String = other.chars().skip_while(|letter| !letter.is_alphabetic()).collect();
    if text.chars().any(char::is_alphabetic) { text.to_owned() } else { format!("{text} {unit}") }
}

fn counts(text: &str) -> Result<[u16; 2], Failure> {
    let accepted = "two whole numbers, such as 1..30";
    let (from, to) = ends("--counts", text, accepted)?;
    let count = |one: &str| one.parse().map_err(|_| refused("--counts", text, accepted));
    Ok([count(from)?, count(to)?])
}

fn ends<'a>(option: &str, text: &'a str, accepted: &str) -> Result<(&'a str, &'a str), Failure> {
    let (from, to) = text.split_once("..").ok_or_else(|| refused(option, text, accepted))?;
    Ok((from.trim(), to.trim()))
}

fn refused(option: &str, text: &str, accepted: &str) -> Failure {
    Failure::Input(format!("{option} {text}: {accepted} are accepted"))
}
