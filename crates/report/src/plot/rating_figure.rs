//! The rating over the wheels' offset.

use axlebow_study::{RatingOutcome, RatingPoint};
use axlebow_units::Kind;

use crate::answer::offset_words;
use crate::number::{Numbers, Shown};
use crate::panels::{Axis, Chart, Link, Series, charts};
use crate::{ModelCard, ReportError, Svg};

/// Draws the load at which the first check of each part binds over the offset; the lowest line is the rating.
///
/// # Errors
/// A rating without any load, or a value that is not finite.
pub fn rating_figure(outcome: &RatingOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let n = Numbers { system: card.system };
    let at =
        |point: &RatingPoint, load: f64| (n.scaled(point.offset, Shown::Place), n.scaled(load, Kind::Force));
    let parts = outcome.parts().into_iter().map(|part| Series {
        label: part.word().to_owned(),
        points: outcome.points.iter().filter_map(|point| Some(at(point, point.load_of(part)?))).collect(),
    });
    let ends = [outcome.points.first(), outcome.points.last()];
    let stated = ends.into_iter().flatten().map(|point| at(point, outcome.stated_load));
    let chart = Chart {
        title: "load at which the first check of each part binds".to_owned(),
        x: Axis { label: n.heading("offset of the tires, outset positive", Shown::Place) },
        y: Axis { label: n.heading("axle load", Kind::Force) },
        series: parts.collect(),
        links: vec![Link { label: "stated".to_owned(), points: stated.collect() }],
        footnote: card.invented_note().unwrap_or_default(),
    };
    let rated = outcome.own().and_then(|own| Some((own.load?, own.offset)));
    let title = rated.map_or("No rating".to_owned(), |(load, offset)| {
        format!("Rated {}, wheels {}", n.full(load, Kind::Force), offset_words(offset, n))
    });
    let figure = charts(&title, &[chart])?;
    Ok(figure.with_warnings(&outcome.warnings))
}
