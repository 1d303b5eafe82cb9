//! How an outline comes to rest on another one below it.

use crate::Outline;
use crate::edge::{Edge, Place};

/// Steps of a golden-section search: the height of a smooth contact is then known to rounding.
const SEARCH_STEPS: usize = 48;

/// 1/φ, the share that a golden-section search keeps.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

impl Outline {
    /// Rise along Z (m) that brings this outline to rest on a support below it; negative where it must sink.
    ///
    /// None where the two lie beside each other, so that it would pass the support by.
    ///
    /// The greatest of support top less own bottom over all x; between corners of either outline that height
    /// is smooth with one peak at most, wherever the support is hollow nowhere.
    pub fn rise_to_rest_on(&self, support: &Outline) -> Option<f64> {
        let reach = [self.reach()[0], support.reach()[0]];
        let (from, to) = (reach[0][0].max(reach[1][0]), reach[0][1].min(reach[1][1]));
        if from > to {
            return None;
        }
        let mut breaks: Vec<f64> = self.edges().chain(support.edges()).flat_map(ends).collect();
        breaks.retain(|x| (from..to).contains(x));
        breaks.extend([from, to]);
        breaks.sort_by(f64::total_cmp);
        let rises = breaks.windows(2).flat_map(|pair| {
            let (a, b) = (pair[0], pair[1]);
            // Between two breaks an edge lies over every x or over none.
            let (own, under) = (self.edges_over(0.5 * (a + b)), support.edges_over(0.5 * (a + b)));
            let height = |x: f64| Some(top_at(&under, x)? - bottom_at(&own, x)?);
            [height(a), peak(a, b, &height), height(b)]
        });
        rises.flatten().reduce(f64::max)
    }

    /// Distance of a place from the nearest edge (m), within the material or outside it.
    pub fn distance_from_edge(&self, place: [f64; 2]) -> f64 {
        self.edges().map(|edge| edge.distance(place)).fold(f64::INFINITY, f64::min)
    }

    /// The outside edges that lie over x.
    fn edges_over(&self, x: f64) -> Vec<Edge> {
        self.outside().edges().filter(|edge| heights(edge, x) != [None; 2]).collect()
    }
}

fn top_at(edges: &[Edge], x: f64) -> Option<f64> {
    edges.iter().flat_map(|edge| heights(edge, x)).flatten().reduce(f64::max)
}

fn bottom_at(edges: &[Edge], x: f64) -> Option<f64> {
    edges.iter().flat_map(|edge| heights(edge, x)).flatten().reduce(f64::min)
}

/// Greatest value of a function with one peak between two places.
fn peak(mut a: f64, mut b: f64, height: &impl Fn(f64) -> Option<f64>) -> Option<f64> {
    let mut best = f64::NEG_INFINITY;
    for _ in 0..SEARCH_STEPS {
        let (low, high) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
        let (at_low, at_high) = (height(low)?, height(high)?);
        best = best.max(at_low).max(at_high);
        if at_low < at_high { a = low } else { b = high }
    }
    Some(best)
}

/// Where an edge begins, ends, and where an arc stands upright.
fn ends(edge: Edge) -> Vec<f64> {
    let mut ends = vec![edge.start[0], edge.end[0]];
    if let Some(([x, _], radius)) = edge.circle() {
        ends.extend([x - radius, x + radius]);
    }
    ends
}

/// Heights at which an edge passes x.
fn heights(edge: &Edge, x: f64) -> [Option<f64>; 2] {
    let on = |z: f64| {
        let place: Place = [x, z];
        let near = 1e-12 * (edge.length() + x.abs() + z.abs());
        (edge.distance(place) <= near).then_some(z)
    };
    if let Some((centre, radius)) = edge.circle() {
        let across = x - centre[0];
        let square = (radius - across) * (radius + across);
        // Rounding leaves the uprights of an arc a little outside it.
        let reach =
            if square >= -1e-12 * radius * radius { square.max(0.0).sqrt() } else { return [None; 2] };
        return [on(centre[1] + reach), on(centre[1] - reach)];
    }
    let ([x0, z0], [x1, z1]) = (edge.start, edge.end);
    if x0 == x1 {
        return if x == x0 { [Some(z0), Some(z1)] } else { [None; 2] };
    }
    let share = (x - x0) / (x1 - x0);
    [(0.0..=1.0).contains(&share).then_some(z0 + share * (z1 - z0)), None]
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
    fn a_bar_rests_on_a_bar_where_their_centres_are_above_each_other() {
        let bar = tube(0.02).placed(&Placement { x: 0.03, ..Placement::default() });
        let expected = (0.09_f64.powi(2) - 0.03_f64.powi(2)).sqrt();
        assert_relative_eq!(bar.rise_to_rest_on(&tube(0.07)).unwrap(), expected, max_relative = 1e-12);
    }
}
