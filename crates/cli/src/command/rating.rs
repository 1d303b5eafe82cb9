//! `axlebow rating`.

use axlebow_report::plot::rating_figure;
use axlebow_report::{ModelCard, csv, json, table};
use axlebow_study::{Lasting, RatingOptions};
use axlebow_units::Kind;

use super::flex::chosen;
use crate::args::Rating;
use crate::failure::{Exit, Failure};
use crate::output::Shown;
use crate::{input, output};

pub fn run(arguments: &Rating) -> Result<Exit, Failure> {
    output::check_shown(&arguments.plot, &arguments.model.page)?;
    let document = input::document(&arguments.model)?;
    let model = input::built(&document, &arguments.model)?;
    chosen(&model, &arguments.cases)?;
    let mut card = input::card(&model, &arguments.model);
    let ask = RatingOptions {
        offsets: offsets(arguments)?,
        cases: arguments.cases.clone(),
        lasting: lasting(arguments, &mut card)?,
    };
    output::check_places(&[&arguments.csv, &arguments.plot, &arguments.model.page])?;
    let outcome = axlebow_study::rating(&document, &ask).map_err(Failure::NoSolution)?;
    let picture = output::picture(&arguments.plot, &arguments.model.page, &card, || {
        Ok(rating_figure(&outcome, &card)?)
    })?;
    if let Some(path) = &arguments.csv {
        let head = output::csv_head(arguments.plain_csv, Some(&card), &outcome.warnings);
        output::write_file(path, (head + &csv::rating(&outcome)).as_bytes())?;
    }
    let page = || table::rating(&outcome, &card).with_figures(picture);
    Shown::from(&arguments.model).print(&card, page, || json::rating_document(&outcome, &card))?;
    let carried = outcome.own().and_then(|own| own.load).is_some_and(|load| load >= outcome.stated_load);
    Ok(if carried { Exit::Done } else { Exit::CheckFails })
}

/// How long the axle must last, if that was asked.
fn lasting(arguments: &Rating, card: &mut ModelCard) -> Result<Option<Lasting>, Failure> {
    let (Some(path), Some(years)) = (&arguments.duty, arguments.years) else { return Ok(None) };
    if !(years.is_finite() && years > 0.0) {
        return Err(Failure::Input(format!("--years {years}: years above zero are accepted")));
    }
    Ok(Some(Lasting { duty: input::duty(path, card)?, years }))
}

/// Offsets evenly apart, m.
fn offsets(arguments: &Rating) -> Result<Vec<f64>, Failure> {
    let from = input::quantity("--from", &arguments.from, Kind::Length)?.0;
    let to = input::quantity("--to", &arguments.to, Kind::Length)?.0;
    if from >= to {
        let (from, to) = (&arguments.from, &arguments.to);
        return Err(Failure::Input(format!(
            "--from {from} must lie inboard of --to {to}; inset is negative"
        )));
    }
    let last = f64::from(arguments.points - 1);
    Ok((0..arguments.points).map(|number| from + (to - from) * f64::from(number) / last).collect())
}
