//! An axle at rest, for a page that draws it itself.

use axlebow_axle::{Axle, CaseOutcome, Side};
use axlebow_sections::Outline;
use serde::Serialize;

use super::frames::{OutlinePoint, outline};
use crate::plot::Drawing;
use crate::plot::bend::Bend;

/// Sizes and bend of an axle, SI.
#[derive(Debug, Clone, PartialEq, Serialize)]
struct AxleScene {
    /// The outline of the axle from left to right.
    outline: Vec<OutlinePoint>,
    /// Height of each of its points over the line through the hubs.
    bend: Vec<f64>,
    /// Position, fiber stress and bending moment along the axle, from left to right.
    along: Vec<[f64; 3]>,
    /// Positions of the hubs.
    hubs: [f64; 2],
    /// Position and width of each seat.
    seats: [[f64; 2]; 2],
    /// Position, width and loaded radius of the tires of each side.
    tires: [Vec<[f64; 3]>; 2],
    /// Left end, right end, lower and upper edge of each stiffener.
    stiffeners: Vec<[f64; 4]>,
    /// The section at the seats, its edges seen along the axle, forward to the right: the axle, then its stiffeners.
    section: Vec<SectionPart>,
    /// The round factor by which bow and tilt are easily seen.
    factor: f64,
}

/// Edges of a part of a section: the outer one, then those of its holes.
type SectionPart = Vec<Vec<[f64; 2]>>;

/// Chords that stand for a quarter of a circle.
const CHORDS: usize = 10;

/// The section at the left seat; a stiffener that does not reach it is drawn as it sits there.
fn section(axle: &Axle) -> Vec<SectionPart> {
    let place = axle.seats.left.at;
    let Some(piece) = axle.body.pieces().iter().find(|piece| place <= piece.to) else { return Vec::new() };
    let profile = piece.profile_at(place);
    let edges = |outline: &Outline| {
        let contours = std::iter::once(outline.outside()).chain(outline.holes());
        contours.map(|contour| contour.polygon(CHORDS)).collect()
    };
    let seated = axle.stiffeners.iter().filter_map(|own| own.on(&profile).ok());
    std::iter::once(profile.outline()).chain(seated.map(|own| own.outline)).map(|own| edges(&own)).collect()
}

/// What a live page draws an axle under a load case from, as JSON in SI: outline, bend over the line through the hubs, stress
/// and moment along it, seats, tires, stiffeners, and the factor by which the bend is easily seen.
pub fn axle_scene(case: &CaseOutcome, axle: &Axle) -> String {
    let drawing = &Drawing::of(axle);
    let bend = Bend::new(case, drawing.hubs);
    let outline = outline(drawing);
    let section = section(axle);
    let tires =
        |side: Side| drawing.tires.of(side).iter().map(|tire| [tire.y, tire.width, tire.radius]).collect();
    let scene = AxleScene {
        bend: outline.iter().map(|point| bend.height(point.y)).collect(),
        outline,
        along: case.diagram.iter().map(|at| [at.y, at.stress, at.resultants.moment_x]).collect(),
        hubs: Side::BOTH.map(|side| *drawing.hubs.of(side)),
        seats: Side::BOTH.map(|side| [case.seats.of(side).y, *drawing.seats.of(side)]),
        tires: Side::BOTH.map(tires),
        stiffeners: drawing
            .stiffeners
            .iter()
            .map(|own| [own.own.to, own.own.from, own.low, own.high])
            .collect(),
        section,
        factor: bend.exaggeration(),
    };
    // Numbers and lists of them are always JSON.
    serde_json::to_string(&scene).unwrap_or_default()
}
