//! A ride that moves: one page that needs nothing beside it.

mod axle_scene;
mod frames;
mod picture;
mod scene;

use axlebow_axle::RideOutcome;

use crate::number::{Numbers, fixed, significant, typographic};
use crate::plot::Drawing;
use crate::plot::ride_figure::{RideFigure, drawable};
use crate::svg::escaped;
use crate::words::warning::sentence;
use crate::{ModelCard, ReportError};
use frames::Frames;
use picture::{Drawn, Picture, Units};
use scene::Scene;

pub use axle_scene::axle_scene;

/// The page, with a name between double braces for each part that is filled in.
const PAGE: &str = include_str!("animation/page.html");

/// A page that shows the axle from the rear as it rides, over the histories of road, wheel load and camber change:
/// HTML with its picture, style and script inside, so that it opens anywhere and calls nothing.
///
/// Bend and camber change are drawn larger than they are by one factor, which the reader may change; heights of
/// road, wheels and body against those at rest by another. Both are stated. Who asked the system for less motion
/// starts it by hand; keys and the sliders do everything that the pointer does.
///
/// - `outcome`: a ride that kept shapes, one for each frame
/// - `drawing`: sizes of the axle
///
/// # Errors
/// A ride without samples or shapes, or a value that is not finite.
pub fn ride_animation(
    outcome: &RideOutcome,
    drawing: &Drawing,
    card: &ModelCard,
) -> Result<String, ReportError> {
    animation((outcome, drawing), None, card)
}

/// A ride of another axle under the one that a page is about.
#[derive(Debug, Clone, Copy)]
pub struct OtherRide<'a> {
    /// What the axle is called.
    pub name: &'a str,
    /// Its ride over the same road at the same speed, with as many shapes.
    pub outcome: &'a RideOutcome,
    /// Sizes of the axle.
    pub drawing: &'a Drawing,
}

/// The page of [`ride_animation`] with the ride of another axle under it, at the same moment, the same scale and the same
/// factors; the histories are those of the first.
///
/// # Errors
/// As [`ride_animation`], of either ride.
pub fn rides_animation(
    own: (&RideOutcome, &Drawing),
    other: OtherRide<'_>,
    card: &ModelCard,
) -> Result<String, ReportError> {
    animation(own, Some(other), card)
}

fn animation(
    (outcome, drawing): (&RideOutcome, &Drawing),
    other: Option<OtherRide<'_>>,
    card: &ModelCard,
) -> Result<String, ReportError> {
    let (figure, frames, mut scene) = prepared(outcome, drawing, card)?;
    let mut under = None;
    if let Some(other) = other {
        let (_, frames, own) = prepared(other.outcome, other.drawing, card)?;
        let [first, second] = scene.alike(own);
        scene = first;
        under = Some((other.name, frames, second));
    }
    let picture = Picture { figure: &figure, scene: &scene, has_other: under.is_some() }.drawn()?;
    let other = under.as_ref().map(|(name, frames, scene)| {
        let frames = frames.in_units_of(&figure);
        serde_json::json!({ "above": card.name, "name": name, "scene": scene, "frames": frames })
    });
    let document = document(&figure, (&scene, &frames), &picture, other);
    let title = format!("{}: {} at {}", card.name, outcome.name, figure.speed());
    let name = under.as_ref().map_or(card.name.clone(), |(other, ..)| format!("{} over {other}", card.name));
    Ok(filled(PAGE, |part| match part {
        "title" => escaped(&title),
        "name" => escaped(&name),
        "driven" => escaped(&driven(&figure, under.is_some())),
        "marks" => marks(outcome, card),
        "scale" => escaped(&scale(outcome, &scene)),
        "picture" => picture.svg.text().to_owned(),
        "document" => document.clone(),
        _ => String::new(),
    }))
}

/// What the page's script draws from.
fn document(
    figure: &RideFigure,
    (scene, frames): (&Scene, &Frames),
    picture: &Drawn,
    other: Option<serde_json::Value>,
) -> String {
    let mut document = serde_json::json!({
        "scene": scene,
        "frames": frames.in_units_of(figure),
        "cursor": picture.cursor,
        "units": picture.units,
    });
    if let Some(other) = other {
        document["other"] = other;
    }
    // `<` would end the element that holds the document.
    document.to_string().replace('<', "\\u003c")
}

/// What is driven over and how fast.
fn driven(figure: &RideFigure, has_other: bool) -> String {
    let both = if has_other {
        " Two axles at the same moment and scale, one under the other; the histories are those of the upper one."
    } else {
        ""
    };
    format!("Road: {}. Speed: {}.{both}", figure.outcome.name, figure.speed())
}

/// What a live page draws a ride from: scene, frames and units of the page of [`ride_animation`], as JSON.
///
/// # Errors
/// As [`ride_animation`].
pub fn ride_frames(
    outcome: &RideOutcome,
    drawing: &Drawing,
    card: &ModelCard,
) -> Result<String, ReportError> {
    let (figure, frames, scene) = prepared(outcome, drawing, card)?;
    let document = serde_json::json!({
        "scene": scene,
        "frames": frames.in_units_of(&figure),
        "units": Units::of(&figure),
    });
    Ok(document.to_string())
}

fn prepared<'a>(
    outcome: &'a RideOutcome,
    drawing: &'a Drawing,
    card: &'a ModelCard,
) -> Result<(RideFigure<'a>, Frames<'a>, Scene), ReportError> {
    drawable(outcome)?;
    let frames = Frames::of(outcome, drawing)?;
    let figure = RideFigure { outcome, card, numbers: Numbers { system: card.system }, measured: None };
    let scene = Scene::of(&frames, drawing);
    Ok((figure, frames, scene))
}

/// What the reader must know before anything else: made-up data, a ride that ended early, warnings.
fn marks(outcome: &RideOutcome, card: &ModelCard) -> String {
    let invented = card.invented_note();
    let partial = outcome.partial.as_ref().map(|why| format!("Partial ride: {why}."));
    let mark = |text: String| format!(r#"<p class="mark">{}</p>"#, escaped(&text));
    let warnings = outcome.warnings.iter().map(|own| format!("Warning: {}", sentence(own)));
    invented.into_iter().chain(partial).chain(warnings).map(mark).collect()
}

fn scale(outcome: &RideOutcome, scene: &Scene) -> String {
    let (shapes, times) = (&outcome.history.shapes, &outcome.history.time);
    let lasts = times.last().unwrap_or(&0.0) - times.first().unwrap_or(&0.0);
    let between = lasts / shapes.len().saturating_sub(1).max(1) as f64;
    let text = format!(
        "Heights of road, wheels and body against those at rest are drawn {} times as large as they are. {} frames, \
         one every {} ms.",
        fixed(scene.height_factor, 0),
        shapes.len(),
        significant(1e3 * between, 3)
    );
    typographic(&text)
}

/// A text with the parts whose names stand between double braces filled in, each once from the start, so that what
/// is filled in is not searched.
fn filled(page: &str, part: impl Fn(&str) -> String) -> String {
    let mut pieces = page.split("{{");
    let mut text = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (name, rest) = piece.split_once("}}").unwrap_or((piece, ""));
        text.push_str(&part(name));
        text.push_str(rest);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::filled;

    #[test]
    fn what_is_filled_in_is_not_searched() {
        let text = filled("a {{one}} b {{two}}{{none}}", |name| match name {
            "one" => "{{two}}".to_owned(),
            "two" => "2".to_owned(),
            _ => String::new(),
        });
        assert_eq!(text, "a {{two}} b 2");
    }
}
