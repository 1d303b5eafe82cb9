//! How an outline comes to rest on another one below it.

use std::f64::consts::PI;

use crate::Outline;
use crate::outline::edge::{Edge, Place};

impl Outline {
    /// Rise along Z (m) that brings this outline to rest on a support below it; negative where it must sink.
    ///
    /// None where the two lie beside each other, so that it would pass the support by.
    ///
    /// The greatest height of the support over this outline at any x, sought for each branch of the one over each
    /// branch of the other: at the ends of what they share of X, and where they run level with each other.
    pub fn rise_to_rest_on(&self, support: &Outline) -> Option<f64> {
        let [own, under] = [self, support].map(branches);
        let pairs = own.iter().flat_map(|own| under.iter().map(move |under| (own, under)));
        pairs.filter_map(|(own, under)| under.greatest_height_over(own)).reduce(f64::max)
    }

    /// Distance of a place from the nearest edge (m), within the material or outside it.
    pub fn distance_from_edge(&self, place: [f64; 2]) -> f64 {
        self.edges().map(|edge| edge.distance(place)).fold(f64::INFINITY, f64::min)
    }
}

/// A stretch of an edge that passes each x once.
#[derive(Debug, Clone, Copy)]
struct Branch {
    from: f64,
    to: f64,
    run: Run,
}

#[derive(Debug, Clone, Copy)]
enum Run {
    Line {
        start: Place,
        slope: f64,
    },
    /// The upper half of a circle (`up` = 1) or its lower one (-1).
    Arc {
        center: Place,
        radius: f64,
        up: f64,
    },
}

impl Branch {
    fn between(a: f64, b: f64, run: Run) -> Self {
        Branch { from: a.min(b), to: a.max(b), run }
    }

    fn height(&self, x: f64) -> f64 {
        match self.run {
            Run::Line { start, slope } => start[1] + slope * (x - start[0]),
            Run::Arc { center, radius, up } => {
                let across = x - center[0];
                // Rounding leaves the uprights of an arc a little outside it.
                center[1] + up * ((radius - across) * (radius + across)).max(0.0).sqrt()
            }
        }
    }

    /// Greatest height of this branch over another one; none where they share no x.
    fn greatest_height_over(&self, other: &Branch) -> Option<f64> {
        let (from, to) = (self.from.max(other.from), self.to.min(other.to));
        if from > to {
            return None;
        }
        let level = level_place(&self.run, &other.run).filter(|x| (from..to).contains(x));
        let places = [Some(from), level, Some(to)].into_iter().flatten();
        places.map(|x| self.height(x) - other.height(x)).reduce(f64::max)
    }
}

/// X at which two runs have the same slope.
///
/// An arc at x = c + r s has slope -u s/√(1 - s²), u = 1 for its upper half and -1 for its lower one.
fn level_place(one: &Run, other: &Run) -> Option<f64> {
    match (one, other) {
        (Run::Line { .. }, Run::Line { .. }) => None,
        (Run::Arc { center, radius, up }, Run::Line { slope, .. })
        | (Run::Line { slope, .. }, Run::Arc { center, radius, up }) => {
            Some(center[0] - radius * up * slope / slope.hypot(1.0))
        }
        (Run::Arc { center: a, radius: r, up }, Run::Arc { center: b, radius: s, up: other_up }) => {
            let sine = (b[0] - a[0]) / (r - up * other_up * s);
            sine.is_finite().then_some(a[0] + r * sine)
        }
    }
}

/// The branches of the outside edge; upright lines are left out, because their ends are their neighbors' too.
fn branches(outline: &Outline) -> Vec<Branch> {
    let mut branches = Vec::new();
    for edge in outline.outside().edges() {
        match edge.circle() {
            Some((center, radius)) => add_arc(&edge, (center, radius), &mut branches),
            None if edge.start[0] != edge.end[0] => {
                let slope = (edge.end[1] - edge.start[1]) / (edge.end[0] - edge.start[0]);
                let run = Run::Line { start: edge.start, slope };
                branches.push(Branch::between(edge.start[0], edge.end[0], run));
            }
            None => {}
        }
    }
    branches
}

/// Cuts an arc where it stands upright.
fn add_arc(edge: &Edge, (center, radius): (Place, f64), branches: &mut Vec<Branch>) {
    let begin = (edge.start[1] - center[1]).atan2(edge.start[0] - center[0]);
    let (low, high) = (begin.min(begin + edge.turn), begin.max(begin + edge.turn));
    let uprights = (low / PI).floor() as i32 + 1..=(high / PI).ceil() as i32 - 1;
    let x_of = |upright: i32| center[0] + if upright % 2 == 0 { radius } else { -radius };
    let [first, last] = if edge.turn > 0.0 { [edge.start, edge.end] } else { [edge.end, edge.start] };
    let mut places = vec![(low, first[0])];
    places.extend(uprights.map(|upright| (f64::from(upright) * PI, x_of(upright))));
    places.push((high, last[0]));
    branches.extend(places.windows(2).map(|pair| {
        let up = (0.5 * (pair[0].0 + pair[1].0)).sin().signum();
        Branch::between(pair[0].1, pair[1].1, Run::Arc { center, radius, up })
    }));
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use crate::shape::{Angle, Flat};
    use crate::{Contour, Outline, Placement};

    fn tube(radius: f64) -> Outline {
        Outline::solid(Contour::circle(radius).unwrap())
    }

    #[test]
    fn a_flat_rests_on_the_crown_of_a_tube() {
        let flat = Flat { width: 0.05, thickness: 0.01 }.outline().unwrap();
        assert_relative_eq!(flat.rise_to_rest_on(&tube(0.07)).unwrap(), 0.075, max_relative = 1e-12);
        // Standing to one side, its near corner touches.
        let beside = flat.placed(&Placement { x: 0.055, ..Placement::default() });
        let expected = (0.07_f64.powi(2) - 0.03_f64.powi(2)).sqrt() + 0.005;
        assert_relative_eq!(beside.rise_to_rest_on(&tube(0.07)).unwrap(), expected, max_relative = 1e-12);
        let past = flat.placed(&Placement { x: 0.2, ..Placement::default() });
        assert_eq!(past.rise_to_rest_on(&tube(0.07)), None);
    }

    /// The inner corners of the toes touch: at (b - t)/√2 across and (b + t)/√2 below the heel.
    #[test]
    fn a_tent_of_an_angle_stands_on_its_toes() {
        let (b, t, r) = (0.0762_f64, 0.009525, 0.0762_f64);
        let angle = Angle { height: b, width: b, thickness: t, root_radius: 0.0, toe_radius: 0.0 };
        let turn = -0.75 * std::f64::consts::PI;
        let tent = angle.outline().unwrap().placed(&Placement { turn, x: 0.0, z: 0.0 });
        let half = std::f64::consts::FRAC_1_SQRT_2;
        let touch = |across: f64, below: f64| (r * r - (across * half).powi(2)).sqrt() + below * half;
        let expected = touch(b - t, b + t).max(touch(b, b));
        assert_relative_eq!(tent.rise_to_rest_on(&tube(r)).unwrap(), expected, max_relative = 1e-12);
    }

    #[test]
    fn a_bar_rests_on_a_bar_where_their_centers_are_above_each_other() {
        let bar = tube(0.02).placed(&Placement { x: 0.03, ..Placement::default() });
        let expected = (0.09_f64.powi(2) - 0.03_f64.powi(2)).sqrt();
        assert_relative_eq!(bar.rise_to_rest_on(&tube(0.07)).unwrap(), expected, max_relative = 1e-12);
    }
}
