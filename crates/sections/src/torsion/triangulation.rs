//! Outlines cut into curved six-node triangles.

use std::collections::HashMap;
use std::f64::consts::PI;

use spade::{AngleLimit, ConstrainedDelaunayTriangulation, Point2, RefinementParameters, Triangulation as _};

use crate::outline::edge::{Edge, Place, difference, length};
use crate::outline::overlap::pieces;
use crate::{Outline, SectionError};

/// Least number of triangles over a section.
const LEAST_TRIANGLES: f64 = 200.0;
/// Arcs are cut at least this often: chords of 22.5 degrees.
const ARC_CHORD: f64 = PI / 8.0;
/// Share of the largest triangle that is no triangle.
const SLIVER: f64 = 1e-6;
/// Angle that refinement aims at (degrees).
const LEAST_ANGLE: f64 = 25.0;

/// Outlines cut into six-node triangles whose sides on arcs are curved.
#[derive(Debug, Clone)]
pub(crate) struct Triangulation {
    /// Corner and side nodes (m).
    pub nodes: Vec<Place>,
    /// Three corners counter-clockwise, then the middles of sides 1-2, 2-3 and 3-1.
    pub triangles: Vec<[usize; 6]>,
    /// Which outline each triangle belongs to.
    pub parts: Vec<usize>,
}

impl Triangulation {
    /// Triangles over outlines that touch or stay clear of each other.
    ///
    /// A triangle is about as long as the section's mean wall, 2 A over the length of its edges.
    ///
    /// - `outlines`: which share nodes where their edges meet
    /// - `fineness`: 1 for the size above, 2 for half the length
    ///
    /// Errors: [`SectionError::EdgesCross`].
    pub fn of(outlines: &[&Outline], fineness: f64) -> Result<Self, SectionError> {
        let area: f64 = outlines.iter().map(|outline| outline.moments(outline.outside().pole()).area).sum();
        let round: f64 = outlines.iter().flat_map(|outline| outline.edges()).map(|edge| edge.length()).sum();
        let wall = 2.0 * area / round;
        let largest = (0.5 * wall * wall).min(area / LEAST_TRIANGLES) / (fineness * fineness);
        let mut mesh = bounded(outlines, wall / fineness)?;
        let limits = RefinementParameters::new()
            .with_max_allowed_area(largest)
            .with_angle_limit(AngleLimit::from_deg(LEAST_ANGLE))
            .with_max_additional_vertices((40.0 * area / largest) as usize + 1000)
            .exclude_outer_faces(outlines.len() == 1);
        mesh.refine(limits);
        Ok(Self::within(&mesh, outlines, SLIVER * largest))
    }

    /// The triangles whose middle lies in an outline, with the middles of their sides.
    ///
    /// Places along a slanted edge lie on it but for rounding: triangles between them, of no more than `sliver`
    /// (m²), are none.
    fn within(
        mesh: &ConstrainedDelaunayTriangulation<Point2<f64>>,
        outlines: &[&Outline],
        sliver: f64,
    ) -> Self {
        let mut made = Self { nodes: Vec::new(), triangles: Vec::new(), parts: Vec::new() };
        let (mut corners, mut middles) = (HashMap::new(), HashMap::new());
        let edges: Vec<Edge> = outlines.iter().flat_map(|outline| outline.edges()).collect();
        for face in mesh.inner_faces().filter(|face| face.area() > sliver) {
            let middle = face.center();
            let Some(part) = outlines.iter().position(|outline| outline.contains([middle.x, middle.y]))
            else {
                continue;
            };
            let sides = face.adjacent_edges();
            let ends = sides.map(|side| {
                let (vertex, on_edge) =
                    (side.from(), side.from().out_edges().any(|out| out.is_constraint_edge()));
                *corners.entry(vertex.index()).or_insert_with(|| {
                    let place = [vertex.position().x, vertex.position().y];
                    made.nodes.push(if on_edge { onto(&edges, place) } else { place });
                    made.nodes.len() - 1
                })
            });
            let between = [0, 1, 2].map(|i| {
                let (a, b) = (ends[i], ends[(i + 1) % 3]);
                let (on_edge, nodes) = (sides[i].is_constraint_edge(), &mut made.nodes);
                *middles.entry((a.min(b), a.max(b))).or_insert_with(|| {
                    let place = [0, 1].map(|axis| 0.5 * (nodes[a][axis] + nodes[b][axis]));
                    nodes.push(if on_edge { onto(&edges, place) } else { place });
                    nodes.len() - 1
                })
            });
            made.triangles.push([ends[0], ends[1], ends[2], between[0], between[1], between[2]]);
            made.parts.push(part);
        }
        made
    }
}

/// The triangulation of the outlines' corners, with their edges kept, arcs as chords.
fn bounded(
    outlines: &[&Outline],
    chord: f64,
) -> Result<ConstrainedDelaunayTriangulation<Point2<f64>>, SectionError> {
    let (mut places, mut sides): (Vec<Place>, Vec<[usize; 2]>) = (Vec::new(), Vec::new());
    let same = outlines.iter().map(|outline| outline.same_place()).fold(0.0, f64::max);
    let mut index_of = |place: Place| {
        let known = places.iter().position(|&other| length(difference(place, other)) <= 2.0 * same);
        known.unwrap_or_else(|| {
            places.push(place);
            places.len() - 1
        })
    };
    for edge in cut_edges(outlines) {
        let chords = (edge.turn.abs() / ARC_CHORD).max(edge.turn.signum().abs() * edge.length() / chord);
        let chords = if edge.turn == 0.0 { 1.0 } else { (chords - 1e-9).ceil().max(1.0) };
        for i in 0..chords as usize {
            let piece = edge.piece(i as f64 / chords, (i + 1) as f64 / chords);
            sides.push([index_of(piece.start), index_of(piece.end)]);
        }
    }
    let vertices = places.iter().map(|&[x, z]| Point2::new(x, z)).collect();
    let mut crossing = None;
    let mesh = ConstrainedDelaunayTriangulation::try_bulk_load_cdt(vertices, sides, |side| {
        crossing = crossing.or(Some(side[0]));
    });
    match (mesh, crossing) {
        (Ok(mesh), None) => Ok(mesh),
        (_, at) => Err(SectionError::EdgesCross { place: places[at.unwrap_or(0)] }),
    }
}

/// The edges of all outlines, cut where they meet, so that what two share is cut alike.
fn cut_edges(outlines: &[&Outline]) -> Vec<Edge> {
    let others = |i: usize| [&outlines[..i], &outlines[i + 1..]].concat();
    outlines.iter().enumerate().flat_map(|(i, outline)| pieces(outline, &others(i))).collect()
}

/// The place on the nearest edge.
fn onto(edges: &[Edge], place: Place) -> Place {
    let near = |edge: &Edge| edge.at(edge.nearest_share(place));
    let away = |edge: &&Edge| length(difference(place, near(edge)));
    edges.iter().min_by(|a, b| away(a).total_cmp(&away(b))).map_or(place, near)
}
