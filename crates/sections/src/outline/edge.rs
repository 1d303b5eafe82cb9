//! A straight or circular edge between two corners.

use std::f64::consts::{FRAC_PI_2, TAU};

use crate::outline::area_moments::AreaMoments;

/// A place in the section, (x, z) in meters.
pub(crate) type Place = [f64; 2];

/// Half the Gauss points on a quarter turn, (place from the middle, weight) on -1 to 1; with their mirror
/// images ten, which leaves the fourth harmonic an error below 1e-14.
///
/// Source: M. Abramowitz & I. Stegun, *Handbook of Mathematical Functions* 1964, Table 25.4; from memory,
/// checked by the exact area and moments of a circle.
const GAUSS: [(f64, f64); 5] = [
    (0.148_874_338_981_631_2, 0.295_524_224_714_752_9),
    (0.433_395_394_129_247_2, 0.269_266_719_309_996_3),
    (0.679_409_568_299_024_4, 0.219_086_362_515_982),
    (0.865_063_366_688_984_5, 0.149_451_349_150_580_6),
    (0.973_906_528_517_171_7, 0.066_671_344_308_688_1),
];

/// A straight or circular edge; what it bounds lies on its left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Edge {
    pub start: Place,
    pub end: Place,
    /// Angle through which it turns (rad), counter-clockwise positive; 0 for a straight one.
    pub turn: f64,
}

impl Edge {
    /// The place at a share of its length, 0 (start) to 1 (end).
    ///
    /// P = a + sin(s/2)/sin(θ/2) R((s - θ)/2) (b - a) for s = share θ: no center, so that a shallow arc
    /// loses no digits.
    pub fn at(&self, share: f64) -> Place {
        let chord = difference(self.end, self.start);
        let along = if self.turn == 0.0 {
            scaled(chord, share)
        } else {
            let (half, passed) = (0.5 * self.turn, 0.5 * share * self.turn);
            scaled(rotated(chord, passed - half), passed.sin() / half.sin())
        };
        [self.start[0] + along[0], self.start[1] + along[1]]
    }

    /// The piece between two shares of its length.
    pub fn piece(&self, from: f64, to: f64) -> Self {
        let place = |share: f64| match share {
            0.0 => self.start,
            1.0 => self.end,
            share => self.at(share),
        };
        Self { start: place(from), end: place(to), turn: self.turn * (to - from) }
    }

    /// The same edge run the other way.
    pub fn reversed(&self) -> Self {
        Self { start: self.end, end: self.start, turn: -self.turn }
    }

    /// Unit direction at a share of its length.
    pub fn direction(&self, share: f64) -> Place {
        let chord = difference(self.end, self.start);
        scaled(rotated(chord, self.turn * (share - 0.5)), 1.0 / length(chord))
    }

    /// Length along the edge (m).
    pub fn length(&self) -> f64 {
        let chord = length(difference(self.end, self.start));
        if self.turn == 0.0 { chord } else { chord * 0.5 * self.turn / (0.5 * self.turn).sin() }
    }

    /// Center and radius of an arc; none for a straight edge.
    pub fn circle(&self) -> Option<(Place, f64)> {
        if self.turn == 0.0 {
            return None;
        }
        let chord = difference(self.end, self.start);
        let radius = 0.5 * length(chord) / (0.5 * self.turn).sin().abs();
        let rise = 0.5 / (0.5 * self.turn).tan();
        let center = [
            0.5 * (self.start[0] + self.end[0]) - rise * chord[1],
            0.5 * (self.start[1] + self.end[1]) + rise * chord[0],
        ];
        Some((center, radius))
    }

    /// Its share of the boundary integrals about a pole, ∫ f dA = ∮ f (x dz - z dx)/(n + 2) for f of degree n.
    pub fn moments(&self, pole: Place) -> AreaMoments {
        let (a, b) = (difference(self.start, pole), difference(self.end, pole));
        let mut moments = AreaMoments::default();
        if self.turn == 0.0 {
            let swept = cross(a, b) / 6.0;
            let middle = scaled([a[0] + b[0], a[1] + b[1]], 0.5);
            moments.add_sector(a, swept);
            moments.add_sector(middle, 4.0 * swept);
            moments.add_sector(b, swept);
            return moments;
        }
        let pieces = (self.turn.abs() / FRAC_PI_2).ceil();
        for piece in 0..pieces as usize {
            let ends = [piece, piece + 1].map(|end| end as f64 / pieces);
            self.piece(ends[0], ends[1]).add_arc_moments(pole, &mut moments);
        }
        moments
    }

    /// Places for integrals along the edge: share of its length and weight; the weights sum to 1.
    pub fn gauss(&self) -> Vec<(f64, f64)> {
        let pieces = (self.turn.abs() / FRAC_PI_2).ceil().max(1.0);
        let point = |piece: usize, offset: f64, weight: f64| {
            ((piece as f64 + 0.5 + 0.5 * offset) / pieces, 0.5 * weight / pieces)
        };
        (0..pieces as usize)
            .flat_map(|piece| GAUSS.map(|(x, w)| [point(piece, -x, w), point(piece, x, w)]).concat())
            .collect()
    }

    fn add_arc_moments(&self, pole: Place, moments: &mut AreaMoments) {
        let (start, chord) = (difference(self.start, pole), difference(self.end, self.start));
        let (sine, cosine) = (0.5 * self.turn).sin_cos();
        let stretch = 0.5 * self.turn / sine;
        for (offset, weight) in GAUSS {
            let (side, forth) = (0.25 * self.turn * offset).sin_cos();
            let (quarter_sine, quarter_cosine) = (0.25 * self.turn).sin_cos();
            for side in [side, -side] {
                // Half of the angle passed is a quarter of the turn more or less the offset.
                let passed_sine = quarter_sine * forth + quarter_cosine * side;
                let passed_cosine = quarter_cosine * forth - quarter_sine * side;
                let lag = [
                    passed_cosine * cosine + passed_sine * sine,
                    passed_sine * cosine - passed_cosine * sine,
                ];
                let along = scaled(turned(chord, lag), passed_sine / sine);
                let place = [start[0] + along[0], start[1] + along[1]];
                let step = scaled(turned(turned(chord, lag), [passed_cosine, passed_sine]), stretch);
                moments.add_sector(place, 0.5 * weight * cross(place, step));
            }
        }
    }

    /// Angle under which the edge is seen from a place off it, counter-clockwise positive (rad).
    pub fn view_angle(&self, from: Place) -> f64 {
        let (a, b) = (difference(self.start, from), difference(self.end, from));
        let chord_angle = cross(a, b).atan2(a[0] * b[0] + a[1] * b[1]);
        // Seen from between chord and arc, the arc passes on the far side.
        let between = self.circle().is_some_and(|(center, radius)| {
            length(difference(from, center)) < radius && cross(a, b) * self.turn < 0.0
        });
        if between { chord_angle + TAU.copysign(self.turn) } else { chord_angle }
    }

    /// Share of the length nearest to a place, 0 to 1.
    pub fn nearest_share(&self, place: Place) -> f64 {
        let Some((center, _)) = self.circle() else {
            let chord = difference(self.end, self.start);
            let reach = difference(place, self.start);
            let share =
                (reach[0] * chord[0] + reach[1] * chord[1]) / (chord[0] * chord[0] + chord[1] * chord[1]);
            return share.clamp(0.0, 1.0);
        };
        let (from, to) = (difference(self.start, center), difference(place, center));
        let angle = cross(from, to).atan2(from[0] * to[0] + from[1] * to[1]) * self.turn.signum();
        let share = angle.rem_euclid(TAU) / self.turn.abs();
        if share <= 1.0 {
            return share;
        }
        let far = |end: Place| length(difference(place, end));
        if far(self.start) <= far(self.end) { 0.0 } else { 1.0 }
    }

    /// Distance of a place from the edge (m).
    pub fn distance(&self, place: Place) -> f64 {
        length(difference(place, self.at(self.nearest_share(place))))
    }

    /// Lowest and highest X, then lowest and highest Z (m).
    pub fn reach(&self) -> [[f64; 2]; 2] {
        let mut reach = [0, 1].map(|axis| {
            let (a, b) = (self.start[axis], self.end[axis]);
            [a.min(b), a.max(b)]
        });
        let Some((center, radius)) = self.circle() else { return reach };
        let begin = (self.start[1] - center[1]).atan2(self.start[0] - center[0]) / FRAC_PI_2;
        let end = begin + self.turn / FRAC_PI_2;
        // The quarters that it passes: 0 and 2 are its ends along X, 1 and 3 those along Z.
        for quarter in begin.min(end).ceil() as i32..=begin.max(end).floor() as i32 {
            let (axis, up) = (quarter.rem_euclid(2) as usize, quarter.rem_euclid(4) < 2);
            let [low, high] = &mut reach[axis];
            if up { *high = center[axis] + radius } else { *low = center[axis] - radius }
        }
        reach
    }

    /// The place that lies farthest along a direction.
    pub fn farthest(&self, direction: Place) -> Place {
        let along = |p: Place| p[0] * direction[0] + p[1] * direction[1];
        let mut best = if along(self.end) > along(self.start) { self.end } else { self.start };
        if let Some((center, radius)) = self.circle() {
            let top = scaled(direction, radius / length(direction));
            let top = [center[0] + top[0], center[1] + top[1]];
            let reached = self.at(self.nearest_share(top));
            if along(reached) > along(best) {
                best = reached;
            }
        }
        best
    }
}

pub(crate) fn difference(a: Place, b: Place) -> Place {
    [a[0] - b[0], a[1] - b[1]]
}

pub(crate) fn scaled(a: Place, factor: f64) -> Place {
    [a[0] * factor, a[1] * factor]
}

pub(crate) fn cross(a: Place, b: Place) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

pub(crate) fn length(a: Place) -> f64 {
    a[0].hypot(a[1])
}

/// A vector turned counter-clockwise by an angle (rad).
pub(crate) fn rotated(a: Place, angle: f64) -> Place {
    turned(a, [angle.cos(), angle.sin()])
}

/// A vector turned by the angle of a unit vector.
fn turned(a: Place, unit: Place) -> Place {
    [a[0] * unit[0] - a[1] * unit[1], a[0] * unit[1] + a[1] * unit[0]]
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use std::f64::consts::{FRAC_PI_3, PI};

    const QUARTER: Edge = Edge { start: [2.0, 0.0], end: [0.0, 2.0], turn: FRAC_PI_2 };

    #[test]
    fn an_arc_lies_on_its_circle() {
        let (center, radius) = QUARTER.circle().unwrap();
        assert!(length(center) < 1e-15);
        assert_relative_eq!(radius, 2.0, max_relative = 1e-15);
        let third = QUARTER.at(2.0 / 3.0);
        assert_relative_eq!(third[0], 2.0 * FRAC_PI_3.cos(), max_relative = 1e-14);
        assert_relative_eq!(QUARTER.length(), PI, max_relative = 1e-15);
    }

    #[test]
    fn an_arc_reaches_the_quarters_that_it_passes() {
        let arc = Edge { start: [0.0, -2.0], end: [-2.0, 0.0], turn: 3.0 * FRAC_PI_2 };
        for edge in [arc, arc.reversed()] {
            let expected = [[-2.0, 2.0], [-2.0, 2.0]];
            for (found, expected) in edge.reach().as_flattened().iter().zip(expected.as_flattened()) {
                assert_relative_eq!(found, expected, max_relative = 1e-15);
            }
        }
        let shallow = Edge { start: [1.0, 1.0], end: [-1.0, 1.0], turn: FRAC_PI_2 };
        assert_relative_eq!(shallow.reach()[1][1], 2.0_f64.sqrt(), max_relative = 1e-15);
        assert_eq!(shallow.reach()[1][0], 1.0);
        let line = Edge { start: [1.0, 0.2], end: [0.3, 0.9], turn: 0.0 };
        assert_eq!(line.reach(), [[0.3, 1.0], [0.2, 0.9]]);
    }

    #[test]
    fn two_half_circles_have_the_moments_of_a_disc() {
        let half = |from: f64| Edge { start: [from, 0.0], end: [-from, 0.0], turn: PI };
        let disc = half(1.0).moments([0.3, 0.4]).plus(&half(-1.0).moments([0.3, 0.4]));
        assert_relative_eq!(disc.area, PI, max_relative = 1e-14);
        assert_relative_eq!(disc.first_x, -0.3 * PI, max_relative = 1e-14);
        assert_relative_eq!(disc.second_z, PI / 4.0 + 0.09 * PI, max_relative = 1e-14);
        assert_relative_eq!(disc.product, 0.12 * PI, max_relative = 1e-13);
    }

    #[test]
    fn a_shallow_arc_nears_the_straight_edge() {
        let straight = Edge { start: [1.0, 0.2], end: [0.3, 0.9], turn: 0.0 };
        let shallow = Edge { turn: 1e-9, ..straight };
        let (one, other) = (straight.moments([0.0; 2]), shallow.moments([0.0; 2]));
        assert_relative_eq!(one.second_x, other.second_x, max_relative = 1e-8);
        assert_relative_eq!(one.area, other.area, max_relative = 1e-8);
    }

    #[test]
    fn a_whole_turn_is_seen_from_within_an_arc() {
        let back = Edge { start: QUARTER.end, end: QUARTER.start, turn: 0.0 };
        let seen = |place| QUARTER.view_angle(place) + back.view_angle(place);
        assert_relative_eq!(seen([1.3, 1.3]), TAU, max_relative = 1e-14);
        assert!(seen([0.5, 0.5]).abs() < 1e-14);
        assert!(seen([1.5, 1.5]).abs() < 1e-14);
    }
}
