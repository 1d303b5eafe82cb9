//! What two outlines have in common.

use crate::Outline;
use crate::outline::area_moments::AreaMoments;
use crate::outline::edge::Edge;
use crate::outline::meeting::meeting_places;

/// What two outlines have in common.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overlap {
    /// Area (m²); 0 where they only touch.
    pub area: f64,
    /// Its centroid (x, z) (m); of no meaning without area.
    pub centroid: [f64; 2],
}

/// Area and centroid of what two outlines have in common, exact for arcs too.
///
/// The edge of the common part is each outline's edge within the other; a stretch that both share counts
/// once where the material lies on the same side, and not at all where they touch back to back.
pub fn overlap(one: &Outline, other: &Outline) -> Overlap {
    let pole = one.outside().pole();
    let mut moments = AreaMoments::default();
    for (outline, within, counts_shared) in [(one, other, true), (other, one, false)] {
        for piece in pieces(outline, &[within]) {
            if counts(&piece, within, counts_shared) {
                moments = moments.plus(&piece.moments(pole));
            }
        }
    }
    let area = moments.area.max(0.0);
    if area <= 0.0 {
        return Overlap { area: 0.0, centroid: pole };
    }
    Overlap { area, centroid: [pole[0] + moments.first_x / area, pole[1] + moments.first_z / area] }
}

/// The edges of an outline, cut wherever they meet others.
pub(crate) fn pieces(outline: &Outline, others: &[&Outline]) -> Vec<Edge> {
    let same = others.iter().map(|other| other.same_place()).fold(outline.same_place(), f64::max);
    let mut pieces = Vec::new();
    for edge in outline.edges() {
        let met = others.iter().flat_map(|other| other.edges());
        let places = met.flat_map(|other| meeting_places(&edge, &other, same));
        let least = same / edge.length();
        let shares = places.map(|place| edge.nearest_share(place));
        let mut cuts: Vec<f64> = shares.filter(|&share| share > least && share < 1.0 - least).collect();
        cuts.extend([0.0, 1.0]);
        cuts.sort_by(f64::total_cmp);
        cuts.dedup_by(|next, kept| *next - *kept <= least);
        pieces.extend(cuts.windows(2).map(|cut| edge.piece(cut[0], cut[1])));
    }
    pieces
}

fn counts(piece: &Edge, within: &Outline, counts_shared: bool) -> bool {
    let (middle, same) = (piece.at(0.5), within.same_place());
    let Some(shared) = within.edges().find(|edge| edge.distance(middle) <= same) else {
        return within.contains(middle);
    };
    let (a, b) = (piece.direction(0.5), shared.direction(shared.nearest_share(middle)));
    counts_shared && a[0] * b[0] + a[1] * b[1] > 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Contour, Corner, Placement};
    use approx::assert_relative_eq;
    use std::f64::consts::PI;

    fn square(x: f64, z: f64) -> Outline {
        let corner = |a: f64, b: f64| Corner { x: x + a, z: z + b, turn: 0.0 };
        let corners = vec![corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)];
        Outline::solid(Contour::new(corners).unwrap())
    }

    #[test]
    fn squares_share_their_common_rectangle() {
        let shared = overlap(&square(0.0, 0.0), &square(0.75, 0.5));
        assert_relative_eq!(shared.area, 0.125, max_relative = 1e-14);
        assert_relative_eq!(shared.centroid[0], 0.875, max_relative = 1e-14);
        assert_relative_eq!(overlap(&square(0.0, 0.0), &square(0.0, 0.0)).area, 1.0, max_relative = 1e-14);
    }

    #[test]
    fn squares_back_to_back_and_apart_share_nothing() {
        for (x, z) in [(1.0, 0.0), (1.0, 0.25), (1.0, 1.0), (2.0, 0.0)] {
            assert_eq!(overlap(&square(0.0, 0.0), &square(x, z)).area, 0.0, "{x} {z}");
        }
    }

    /// Lens of two unit circles a distance d apart: 2 acos(d/2) - d/2 √(4 - d²).
    #[test]
    fn circles_share_a_lens() {
        let circle = Outline::solid(Contour::circle(1.0).unwrap());
        for distance in [0.1_f64, 1.0, 1.9] {
            let moved = circle.placed(&Placement { x: distance, ..Placement::default() });
            let lens = 2.0 * (0.5 * distance).acos() - 0.5 * distance * (4.0 - distance * distance).sqrt();
            assert_relative_eq!(overlap(&circle, &moved).area, lens, max_relative = 1e-9);
        }
        let within = Outline::solid(Contour::circle(0.5).unwrap());
        assert_relative_eq!(overlap(&circle, &within).area, 0.25 * PI, max_relative = 1e-14);
    }
}
