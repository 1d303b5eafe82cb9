//! A closed line of straight and circular edges.

use std::f64::consts::{FRAC_PI_2, TAU};

use crate::error::accepted_length;
use crate::outline::area_moments::AreaMoments;
use crate::outline::edge::{Edge, Place, cross, difference, length};
use crate::outline::meeting::meeting_places;
use crate::{Placement, SectionError};

/// Places nearer than this share of the contour's size are one place.
pub(crate) const SAME_PLACE: f64 = 1e-9;

/// A corner of a contour and how the edge to the next corner runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Corner {
    /// Forward (m).
    pub x: f64,
    /// Up (m).
    pub z: f64,
    /// Angle through which the edge to the next corner turns (rad): 0 for a straight edge, π for a half
    /// circle; positive where it bulges outwards, counter-clockwise about its own center.
    pub turn: f64,
}

/// A closed line of straight and circular edges, counter-clockwise in (x, z), that does not cross itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Contour {
    corners: Vec<Corner>,
}

impl Contour {
    /// A contour of corners joined in turn, the last to the first.
    ///
    /// - `corners`: counter-clockwise; at least three, or two where an arc joins them
    ///
    /// Errors: [`SectionError::CornerNumber`], [`SectionError::TooFewCorners`], [`SectionError::ArcTurn`],
    /// [`SectionError::CornersCoincide`], [`SectionError::CrossesItself`], [`SectionError::Clockwise`],
    /// [`SectionError::NoArea`].
    pub fn new(corners: Vec<Corner>) -> Result<Self, SectionError> {
        let contour = Self { corners };
        contour.check_corners()?;
        contour.check_crossings()?;
        contour.check_sense()?;
        Ok(contour)
    }

    /// A polygon of corners (x, z), each rounded to a radius; 0 leaves it sharp.
    ///
    /// Inner corners become fillets, outer ones are rounded off.
    ///
    /// Errors: [`SectionError::FilletTooLarge`] where the roundings of an edge's ends need more than the
    /// edge; else as [`Contour::new`].
    pub fn rounded(corners: &[([f64; 2], f64)]) -> Result<Self, SectionError> {
        check_roundings(corners)?;
        let count = corners.len();
        let mut made: Vec<Corner> = Vec::with_capacity(2 * count);
        for (i, &(place, radius)) in corners.iter().enumerate() {
            let (into, out) = neighbors(corners, i);
            let turn = cross(into, out).atan2(into[0] * out[0] + into[1] * out[1]);
            let cut = if radius == 0.0 { 0.0 } else { radius * (0.5 * turn).tan().abs() };
            let at = |along: Place, run: f64| [place[0] + run * along[0], place[1] + run * along[1]];
            let ([x, z], [next_x, next_z]) = (at(into, -cut), at(out, cut));
            if cut > 0.0 {
                made.push(Corner { x, z, turn });
            }
            made.push(Corner { x: next_x, z: next_z, turn: 0.0 });
        }
        Self::new(without_empty_edges(made))
    }

    /// A circle about the origin.
    ///
    /// Errors: [`SectionError::Length`].
    pub fn circle(radius: f64) -> Result<Self, SectionError> {
        let r = accepted_length("radius", radius)?;
        let corner = |x, z| Corner { x, z, turn: FRAC_PI_2 };
        Ok(Self { corners: vec![corner(r, 0.0), corner(0.0, r), corner(-r, 0.0), corner(0.0, -r)] })
    }

    /// A contour that is known to be sound.
    pub(crate) fn trusted(corners: Vec<Corner>) -> Self {
        Self { corners: without_empty_edges(corners) }
    }

    /// The corners, counter-clockwise.
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }

    /// The same contour moved and turned.
    pub fn placed(&self, placement: &Placement) -> Self {
        let corners = self.corners.iter().map(|corner| {
            let [x, z] = placement.of([corner.x, corner.z]);
            Corner { x, z, turn: corner.turn }
        });
        Self { corners: corners.collect() }
    }

    /// The contour with its arcs as chords, first point not repeated, for drawing.
    ///
    /// - `chords`: to a quarter of a circle
    pub fn polygon(&self, chords: usize) -> Vec<[f64; 2]> {
        let mut points = Vec::new();
        for edge in self.edges() {
            let steps = (edge.turn.abs() / FRAC_PI_2 * chords as f64 - 1e-9).ceil().max(1.0);
            points.extend((0..steps as usize).map(|step| edge.at(step as f64 / steps)));
        }
        points
    }

    /// The edges, what is within on their left.
    pub(crate) fn edges(&self) -> impl Iterator<Item = Edge> + '_ {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|(a, b)| Edge { start: [a.x, a.z], end: [b.x, b.z], turn: a.turn })
    }

    pub(crate) fn moments(&self, pole: Place) -> AreaMoments {
        self.edges().fold(AreaMoments::default(), |sum, edge| sum.plus(&edge.moments(pole)))
    }

    /// The first corner, a pole near enough to keep digits.
    pub(crate) fn pole(&self) -> Place {
        [self.corners[0].x, self.corners[0].z]
    }

    /// Greatest distance of a corner from the first one (m).
    pub(crate) fn size(&self) -> f64 {
        let away = |corner: &Corner| length(difference([corner.x, corner.z], self.pole()));
        self.corners.iter().map(away).fold(0.0, f64::max)
    }

    fn check_corners(&self) -> Result<(), SectionError> {
        for (corner, &Corner { x, z, turn }) in self.corners.iter().enumerate() {
            if let Some(value) = [x, z, turn].into_iter().find(|value| !value.is_finite()) {
                return Err(SectionError::CornerNumber { corner: corner + 1, value });
            }
            if turn.abs() >= TAU {
                return Err(SectionError::ArcTurn { corner: corner + 1, turn });
            }
        }
        let (count, arcs) = (self.corners.len(), self.corners.iter().any(|corner| corner.turn != 0.0));
        if count < 2 || (count == 2 && !arcs) {
            return Err(SectionError::TooFewCorners { count });
        }
        let same = SAME_PLACE * self.size();
        match self.edges().position(|edge| length(difference(edge.end, edge.start)) <= same) {
            Some(edge) => Err(SectionError::CornersCoincide {
                first: edge + 1,
                second: (edge + 1) % count + 1,
                place: [self.corners[edge].x, self.corners[edge].z],
            }),
            None => Ok(()),
        }
    }

    fn check_crossings(&self) -> Result<(), SectionError> {
        let edges: Vec<Edge> = self.edges().collect();
        let (count, same) = (edges.len(), SAME_PLACE * self.size());
        for i in 0..count {
            for j in i + 1..count {
                let shared = |place: Place| {
                    let at = |corner: Place| length(difference(place, corner)) <= 2.0 * same;
                    (j == i + 1 && at(edges[j].start)) || ((j + 1) % count == i && at(edges[i].start))
                };
                let places = meeting_places(&edges[i], &edges[j], same);
                if let Some(place) = places.into_iter().find(|&place| !shared(place)) {
                    let cut_off = cut_off_area(&edges[i..=j], place).abs();
                    let rest = (self.moments(place).area.abs() - cut_off).abs();
                    return Err(SectionError::CrossesItself { place, area: cut_off.min(rest) });
                }
            }
        }
        Ok(())
    }

    fn check_sense(&self) -> Result<(), SectionError> {
        let (area, size) = (self.moments(self.pole()).area, self.size());
        if area.abs() <= SAME_PLACE * size * size {
            return Err(SectionError::NoArea { area, size });
        }
        if area < 0.0 { Err(SectionError::Clockwise { area }) } else { Ok(()) }
    }
}

/// Area of the loop that runs from a place on the first edge to the same place on the last one.
fn cut_off_area(edges: &[Edge], place: Place) -> f64 {
    let (first, last) = (edges[0], edges[edges.len() - 1]);
    let from = first.piece(first.nearest_share(place), 1.0).moments(place).area;
    let to = last.piece(0.0, last.nearest_share(place)).moments(place).area;
    from + to + edges[1..edges.len() - 1].iter().map(|edge| edge.moments(place).area).sum::<f64>()
}

/// Unit directions of the edges into and out of a corner.
fn neighbors(corners: &[([f64; 2], f64)], i: usize) -> (Place, Place) {
    let (before, after) =
        (corners[(i + corners.len() - 1) % corners.len()].0, corners[(i + 1) % corners.len()].0);
    let unit = |start, end| Edge { start, end, turn: 0.0 }.direction(0.0);
    (unit(before, corners[i].0), unit(corners[i].0, after))
}

/// Each edge must be as long as the tangents of the roundings at its two ends.
fn check_roundings(corners: &[([f64; 2], f64)]) -> Result<(), SectionError> {
    let tangent = |i: usize| {
        let (into, out) = neighbors(corners, i);
        let turn = cross(into, out).atan2(into[0] * out[0] + into[1] * out[1]);
        (0.5 * turn).tan().abs()
    };
    let refusal = |i: usize, limit: f64| {
        let (place, radius) = corners[i];
        SectionError::FilletTooLarge { corner: i + 1, place, radius, limit: limit.max(0.0) }
    };
    for start in 0..corners.len() {
        let end = (start + 1) % corners.len();
        let room = length(difference(corners[end].0, corners[start].0));
        let cuts = [start, end].map(|i| corners[i].1 * tangent(i));
        if !(cuts[0] + cuts[1] <= room * (1.0 + SAME_PLACE) && corners[start].1 >= 0.0) {
            let larger = if cuts[1] > cuts[0] { [end, start] } else { [start, end] };
            let left = room - corners[larger[1]].1 * tangent(larger[1]);
            return Err(refusal(larger[0], left / tangent(larger[0])));
        }
    }
    Ok(())
}

/// Roundings that meet leave an edge of no length between them.
fn without_empty_edges(corners: Vec<Corner>) -> Vec<Corner> {
    let size = corners.iter().map(|corner| corner.x.abs().max(corner.z.abs())).fold(0.0, f64::max);
    let same = |a: &Corner, b: &Corner| (a.x - b.x).hypot(a.z - b.z) <= SAME_PLACE * size;
    let count = corners.len();
    let keep = |i: usize| !(corners[i].turn == 0.0 && same(&corners[i], &corners[(i + 1) % count]));
    (0..count).filter(|&i| keep(i)).map(|i| corners[i]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use std::f64::consts::PI;

    fn polygon(places: &[[f64; 2]]) -> Result<Contour, SectionError> {
        Contour::new(places.iter().map(|&[x, z]| Corner { x, z, turn: 0.0 }).collect())
    }

    #[test]
    fn faults_say_where_and_by_how_much() {
        let said = |places: &[[f64; 2]]| polygon(places).unwrap_err().to_string();
        assert_eq!(
            said(&[[0.0, 0.0], [0.1, 0.1], [0.1, 0.0], [0.0, 0.1]]),
            "outline crosses or touches itself at (50, 50) mm, cutting off 2500 mm²; \
             accepted is an edge that meets itself nowhere"
        );
        assert_eq!(
            said(&[[0.0, 0.0], [0.0, 0.1], [0.1, 0.0]]),
            "outline runs clockwise round 5000 mm²; accepted is counter-clockwise, forward to the right and up up"
        );
        assert_eq!(
            said(&[[0.0, 0.0], [0.1, 0.0], [0.1, 0.0], [0.0, 0.1]]),
            "corners 2 and 3 of the outline both lie at (100, 0) mm; accepted is corners apart from each other"
        );
        assert!(said(&[[0.0, 0.0], [0.1, 0.0]]).contains("2 corners"));
        assert!(said(&[[0.0, 0.0], [0.1, f64::NAN], [0.0, 0.1]]).contains("corner 2"));
    }

    #[test]
    fn an_edge_back_along_itself_is_refused() {
        assert!(polygon(&[[0.0, 0.0], [1.0, 0.0], [0.5, 0.0], [0.5, 1.0]]).is_err());
    }

    #[test]
    fn rounding_all_corners_of_a_square_makes_a_circle() {
        let corners = [[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]].map(|place| (place, 1.0));
        let circle = Contour::rounded(&corners).unwrap();
        assert_eq!(circle.corners().len(), 4);
        assert_relative_eq!(circle.moments([0.0; 2]).area, PI, max_relative = 1e-14);
        let too_large = corners.map(|(place, _)| (place, 1.01));
        assert!(Contour::rounded(&too_large).unwrap_err().to_string().contains("accepted is 0 mm to 990 mm"));
    }

    #[test]
    fn two_corners_with_an_arc_enclose_a_half_disc() {
        let half =
            Contour::new(vec![Corner { x: 1.0, z: 0.0, turn: PI }, Corner { x: -1.0, z: 0.0, turn: 0.0 }]);
        assert_relative_eq!(half.unwrap().moments([0.0; 2]).area, 0.5 * PI, max_relative = 1e-14);
    }
}
