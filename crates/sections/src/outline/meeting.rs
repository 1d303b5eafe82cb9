//! Where two edges meet.

use crate::outline::edge::{Edge, Place, cross, difference, length, scaled};

/// Places where two edges cross or touch, in no order; of a stretch that they share, its ends.
///
/// - `tolerance`: what counts as the same place (m)
pub(crate) fn meeting_places(one: &Edge, other: &Edge, tolerance: f64) -> Vec<Place> {
    if apart(one, other, tolerance) {
        return Vec::new();
    }
    let near = |edge: &Edge, place: Place| edge.distance(place) <= tolerance;
    let mut places: Vec<Place> = Vec::new();
    places.extend([one.start, one.end].into_iter().filter(|&end| near(other, end)));
    places.extend([other.start, other.end].into_iter().filter(|&end| near(one, end)));
    let crossings = match (one.circle(), other.circle()) {
        (None, None) => lines(one, other),
        (None, Some(circle)) => line_and_circle(one, circle),
        (Some(circle), None) => line_and_circle(other, circle),
        (Some(a), Some(b)) => circles(a, b),
    };
    places.extend(crossings.into_iter().filter(|&place| near(one, place) && near(other, place)));
    places
}

/// Whether the boxes round two edges stay clear of each other.
fn apart(one: &Edge, other: &Edge, tolerance: f64) -> bool {
    let clear = |[a, b]: [f64; 2], [c, d]: [f64; 2]| b + tolerance < c || d + tolerance < a;
    let ([x, z], [other_x, other_z]) = (one.reach(), other.reach());
    clear(x, other_x) || clear(z, other_z)
}

fn lines(one: &Edge, other: &Edge) -> Vec<Place> {
    let (a, b) = (difference(one.end, one.start), difference(other.end, other.start));
    let sine = cross(a, b);
    if sine.abs() <= 1e-12 * length(a) * length(b) {
        return Vec::new();
    }
    let share = cross(difference(other.start, one.start), b) / sine;
    vec![one.at(share.clamp(0.0, 1.0))]
}

fn line_and_circle(line: &Edge, (center, radius): (Place, f64)) -> Vec<Place> {
    let along = line.direction(0.0);
    let reach = difference(center, line.start);
    let foot = along[0] * reach[0] + along[1] * reach[1];
    let off = cross(along, reach);
    if off.abs() > radius {
        return Vec::new();
    }
    let half = (radius * radius - off * off).sqrt();
    let place = |run: f64| [line.start[0] + run * along[0], line.start[1] + run * along[1]];
    vec![place(foot - half), place(foot + half)]
}

fn circles((a, r): (Place, f64), (b, s): (Place, f64)) -> Vec<Place> {
    let reach = difference(b, a);
    let distance = length(reach);
    if distance <= 1e-12 * (r + s) || distance > r + s || distance < (r - s).abs() {
        return Vec::new();
    }
    let along = scaled(reach, 1.0 / distance);
    let foot = 0.5 * (distance + (r - s) * (r + s) / distance);
    let half = (r * r - foot * foot).max(0.0).sqrt();
    let place =
        |side: f64| [a[0] + foot * along[0] - side * along[1], a[1] + foot * along[1] + side * along[0]];
    vec![place(-half), place(half)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{FRAC_PI_2, PI};

    const LINE: Edge = Edge { start: [-2.0, 0.6], end: [2.0, 0.6], turn: 0.0 };
    const UPPER: Edge = Edge { start: [1.0, 0.0], end: [-1.0, 0.0], turn: PI };

    fn close(place: Place, expected: Place) -> bool {
        length(difference(place, expected)) < 1e-14
    }

    #[test]
    fn a_line_crosses_a_half_circle_twice() {
        let places = meeting_places(&LINE, &UPPER, 1e-9);
        assert_eq!(places.len(), 2);
        assert!(close(places[0], [-0.8, 0.6]) && close(places[1], [0.8, 0.6]));
    }

    #[test]
    fn edges_on_one_line_meet_at_the_ends_of_what_they_share() {
        let other = Edge { start: [1.0, 0.6], end: [3.0, 0.6], turn: 0.0 };
        let places = meeting_places(&LINE, &other, 1e-9);
        assert!(places.iter().all(|&p| close(p, [1.0, 0.6]) || close(p, [2.0, 0.6])));
        assert_eq!(places.len(), 2);
    }

    #[test]
    fn arcs_of_two_circles_meet_only_where_both_reach() {
        let right = Edge { start: [1.0, -1.0], end: [1.0, 1.0], turn: PI };
        assert!(meeting_places(&UPPER, &right, 1e-9).is_empty());
        let left = right.reversed();
        let back = Edge { start: left.start, end: left.end, turn: PI };
        assert_eq!(meeting_places(&UPPER, &back, 1e-9).len(), 1);
        let quarter = Edge { start: [1.0, 0.0], end: [0.0, 1.0], turn: FRAC_PI_2 };
        assert_eq!(meeting_places(&UPPER, &quarter, 1e-9).len(), 3);
    }
}
