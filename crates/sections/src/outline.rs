//! Any section by its edges.

pub(crate) mod area_moments;
pub(crate) mod area_properties;
pub(crate) mod contour;
pub(crate) mod edge;
pub(crate) mod meeting;
pub(crate) mod overlap;
pub(crate) mod placement;
pub(crate) mod stress_field;

use std::f64::consts::TAU;

use crate::outline::area_moments::AreaMoments;
use crate::outline::contour::{Contour, SAME_PLACE};
use crate::outline::edge::{Edge, Place};
use crate::outline::meeting::meeting_places;
use crate::outline::overlap::overlap;
use crate::{AreaProperties, Placement, SectionError};

/// Any section by its edges: an outside contour and holes in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    outside: Contour,
    holes: Vec<Contour>,
}

impl Outline {
    /// A solid section.
    pub fn solid(outside: Contour) -> Self {
        Self { outside, holes: Vec::new() }
    }

    /// A section with holes; each hole runs counter-clockwise too.
    ///
    /// Errors: [`SectionError::HoleOutside`], [`SectionError::HolesOverlap`]. A hole may not touch the
    /// outside edge nor another hole.
    pub fn with_holes(outside: Contour, holes: Vec<Contour>) -> Result<Self, SectionError> {
        let whole = Self::solid(outside);
        for (i, hole) in holes.iter().enumerate() {
            let alone = Self::solid(hole.clone());
            let shared = overlap(&alone, &whole);
            let lost = alone.moments(hole.pole()).area - shared.area;
            if let Some(place) = whole.touch(&alone) {
                return Err(SectionError::HoleOutside { hole: i + 1, place, area: lost.max(0.0) });
            }
            if !whole.contains(hole.pole()) {
                return Err(SectionError::HoleOutside { hole: i + 1, place: hole.pole(), area: lost });
            }
            for (j, other) in holes[..i].iter().enumerate() {
                let other = Self::solid(other.clone());
                let shared = overlap(&alone, &other);
                let place = alone.touch(&other).or((shared.area > 0.0).then_some(shared.centroid));
                if let Some(place) = place {
                    return Err(SectionError::HolesOverlap {
                        first: j + 1,
                        second: i + 1,
                        place,
                        area: shared.area,
                    });
                }
            }
        }
        Ok(Self { holes, ..whole })
    }

    /// A section that is known to be sound.
    pub(crate) fn trusted(outside: Contour, holes: Vec<Contour>) -> Self {
        Self { outside, holes }
    }

    /// The outside edge.
    pub fn outside(&self) -> &Contour {
        &self.outside
    }

    /// The holes.
    pub fn holes(&self) -> &[Contour] {
        &self.holes
    }

    /// The same section moved and turned.
    pub fn placed(&self, placement: &Placement) -> Self {
        let holes = self.holes.iter().map(|hole| hole.placed(placement)).collect();
        Self { outside: self.outside.placed(placement), holes }
    }

    /// Area, centroid and second moments, exact for arcs too.
    ///
    /// ∫ f dA = ∮ f (x dz - z dx)/(n + 2) for f of degree n (Green's theorem).
    pub fn area_properties(&self) -> AreaProperties {
        let pole = self.outside.pole();
        AreaProperties::from_moments(&self.moments(pole), pole)
    }

    /// Whether a place (x, z) lies within the material; on an edge either answer may come.
    pub fn contains(&self, place: [f64; 2]) -> bool {
        let turns = self.edges().map(|edge| edge.view_angle(place)).sum::<f64>() / TAU;
        turns.round() != 0.0
    }

    /// The corners (x, z) of all contours, where stress is asked for.
    pub fn corner_places(&self) -> Vec<[f64; 2]> {
        let contours = std::iter::once(&self.outside).chain(&self.holes);
        contours.flat_map(|contour| contour.corners()).map(|corner| [corner.x, corner.z]).collect()
    }

    /// The place that lies farthest along a direction (x, z), on arcs too: an extreme fiber.
    pub fn farthest_place(&self, direction: [f64; 2]) -> [f64; 2] {
        let along = |place: Place| place[0] * direction[0] + place[1] * direction[1];
        let farther = |best: Place, place: Place| if along(place) > along(best) { place } else { best };
        self.outside.edges().map(|edge| edge.farthest(direction)).fold(self.outside.pole(), farther)
    }

    /// Lowest and highest X, then lowest and highest Z (m).
    pub fn reach(&self) -> [[f64; 2]; 2] {
        let end = |direction: [f64; 2], axis: usize| self.farthest_place(direction)[axis];
        [[end([-1.0, 0.0], 0), end([1.0, 0.0], 0)], [end([0.0, -1.0], 1), end([0.0, 1.0], 1)]]
    }

    /// The edges of all contours, material on their left.
    pub(crate) fn edges(&self) -> impl Iterator<Item = Edge> + '_ {
        let holes = self.holes.iter().flat_map(|hole| hole.edges().map(|edge| edge.reversed()));
        self.outside.edges().chain(holes)
    }

    pub(crate) fn moments(&self, pole: Place) -> AreaMoments {
        self.edges().fold(AreaMoments::default(), |sum, edge| sum.plus(&edge.moments(pole)))
    }

    /// What counts as one place on this outline (m).
    pub(crate) fn same_place(&self) -> f64 {
        SAME_PLACE * self.outside.size()
    }

    /// A place where the edges of two outlines meet.
    fn touch(&self, other: &Self) -> Option<Place> {
        let same = self.same_place().max(other.same_place());
        self.edges().find_map(|a| other.edges().find_map(|b| meeting_places(&a, &b, same).first().copied()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Corner;

    fn square(side: f64, x: f64, z: f64) -> Contour {
        let corner = |a: f64, b: f64| Corner { x: x + a * side, z: z + b * side, turn: 0.0 };
        Contour::new(vec![corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)]).unwrap()
    }

    #[test]
    fn a_hole_takes_its_area_and_its_place_away() {
        let frame = Outline::with_holes(square(0.1, 0.0, 0.0), vec![square(0.05, 0.025, 0.025)]).unwrap();
        assert!((frame.area_properties().area - 0.0075).abs() < 1e-15);
        assert!(!frame.contains([0.05, 0.05]));
        assert!(frame.contains([0.01, 0.05]));
        assert!(!frame.contains([0.11, 0.05]));
    }

    #[test]
    fn holes_that_reach_out_or_overlap_are_refused_with_place_and_area() {
        let refused = |holes| Outline::with_holes(square(0.1, 0.0, 0.0), holes).unwrap_err().to_string();
        assert_eq!(
            refused(vec![square(0.05, 0.075, 0.025)]),
            "hole 1 reaches the outside edge at (100, 25) mm and 1250 mm² of it lie outside; accepted is a hole \
             within the outside edge"
        );
        assert!(refused(vec![square(0.05, 0.2, 0.2)]).contains("2500 mm²"));
        assert!(
            refused(vec![square(0.05, 0.01, 0.01), square(0.03, 0.04, 0.04)])
                .contains("holes 1 and 2 overlap")
        );
        assert!(refused(vec![square(0.05, 0.01, 0.01), square(0.01, 0.02, 0.02)]).contains("100 mm²"));
    }

    #[test]
    fn the_ends_of_a_tube_are_found_on_its_arcs() {
        let circle =
            Outline::solid(Contour::circle(0.5).unwrap()).placed(&Placement { turn: 0.3, x: 1.0, z: 0.0 });
        let [[left, right], [low, high]] = circle.reach();
        for (found, expected) in [(left, 0.5), (right, 1.5), (low, -0.5), (high, 0.5)] {
            assert!((found - expected).abs() < 1e-15, "{found} {expected}");
        }
    }
}
