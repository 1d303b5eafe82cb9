//! The middle line of a hollow section: where its wall lies, and which way it faces.

use std::f64::consts::{FRAC_PI_2, TAU};

use axlebow_sections::Profile;

use crate::WallError;

/// The closed middle line of a round tube or a rounded box, run from the middle of its top toward the front (+X).
///
/// A rounded rectangle of half sizes a along X and b along Z with corners of radius r; a circle has a = b = r.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MidLine {
    half_width: f64,
    half_height: f64,
    radius: f64,
    /// Thickness of the wall, m.
    pub thickness: f64,
}

/// A point of a middle line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MidPoint {
    /// (x, z), m.
    pub place: [f64; 2],
    /// Outward unit normal (x, z).
    pub normal: [f64; 2],
}

impl MidLine {
    /// The middle line of a section.
    ///
    /// # Errors
    /// [`WallError::Solid`] for a bar.
    pub(crate) fn of(profile: &Profile) -> Result<Self, WallError> {
        match profile {
            Profile::RoundTube(tube) => {
                let radius = 0.5 * (tube.outside_diameter() - tube.wall());
                Ok(MidLine { half_width: radius, half_height: radius, radius, thickness: tube.wall() })
            }
            Profile::RectangularTube(tube) => {
                let t = tube.wall();
                let (a, b) = (0.5 * (tube.width() - t), 0.5 * (tube.height() - t));
                // A sharp inner corner has no middle arc; half the wall is the least that a bent wall can have.
                let radius = (tube.corner_radius() - 0.5 * t).max(0.5 * t).min(a.min(b));
                Ok(MidLine { half_width: a, half_height: b, radius, thickness: t })
            }
            Profile::RoundBar(_) => Err(WallError::Solid),
        }
    }

    /// Length round the line, m.
    pub(crate) fn length(&self) -> f64 {
        4.0 * (self.half_width + self.half_height - 2.0 * self.radius) + TAU * self.radius
    }

    /// Smallest radius of its arcs, m.
    pub(crate) fn radius(&self) -> f64 {
        self.radius
    }

    /// Larger outside size, m.
    pub(crate) fn outside(&self) -> f64 {
        2.0 * self.half_width.max(self.half_height) + self.thickness
    }

    /// The point at a distance round from the middle of the top, m.
    pub(crate) fn at(&self, round: f64) -> MidPoint {
        let (flat_x, flat_z) = (self.half_width - self.radius, self.half_height - self.radius);
        let arc = FRAC_PI_2 * self.radius;
        // Each piece: how long, the angle of its normal from the top where it starts, whether it bends, where it starts.
        let pieces = [
            (flat_x, 0.0, false, [0.0, self.half_height]),
            (arc, 0.0, true, [flat_x, flat_z]),
            (2.0 * flat_z, 1.0, false, [self.half_width, flat_z]),
            (arc, 1.0, true, [flat_x, -flat_z]),
            (2.0 * flat_x, 2.0, false, [flat_x, -self.half_height]),
            (arc, 2.0, true, [-flat_x, -flat_z]),
            (2.0 * flat_z, 3.0, false, [-self.half_width, -flat_z]),
            (arc, 3.0, true, [-flat_x, flat_z]),
            (flat_x, 4.0, false, [-flat_x, self.half_height]),
        ];
        let mut left = round.rem_euclid(self.length());
        let last = pieces.len() - 1;
        for (number, (length, quarter, bends, start)) in pieces.into_iter().enumerate() {
            if left <= length || number == last {
                return self.on_piece(left, quarter * FRAC_PI_2, bends, start);
            }
            left -= length;
        }
        unreachable!("the last piece takes what is left")
    }

    /// Angle by which the line turns between two distances round, less than half a turn apart, rad.
    ///
    /// Unlike the curvature of a point it is continuous where a flat side meets an arc, wherever rounding puts the point.
    pub(crate) fn turn(&self, from: f64, to: f64) -> f64 {
        let [[x, z], [next_x, next_z]] = [from, to].map(|round| self.at(round).normal);
        (next_x * z - next_z * x).atan2(x * next_x + z * next_z)
    }

    fn on_piece(&self, along: f64, first: f64, bends: bool, start: [f64; 2]) -> MidPoint {
        let angle = if bends { first + along / self.radius } else { first };
        let (sine, cosine) = angle.sin_cos();
        let normal = [sine, cosine];
        let place = if bends {
            [start[0] + self.radius * sine, start[1] + self.radius * cosine]
        } else {
            [start[0] + along * cosine, start[1] - along * sine]
        };
        MidPoint { place, normal }
    }
}

/// Length round the middle line of a hollow section's wall, m.
///
/// # Errors
/// [`WallError::Solid`] for a bar.
pub fn length_round(profile: &Profile) -> Result<f64, WallError> {
    MidLine::of(profile).map(|line| line.length())
}

#[cfg(test)]
mod tests {
    use super::*;
    use axlebow_sections::{RectangularTube, RoundTube};

    #[test]
    fn a_round_tube_is_run_from_the_top_to_the_front() {
        let line = MidLine::of(&RoundTube::new(0.12, 0.02).unwrap().into()).unwrap();
        assert!((line.length() - TAU * 0.05).abs() < 1e-15);
        for (share, place) in
            [(0.0, [0.0, 0.05]), (0.25, [0.05, 0.0]), (0.5, [0.0, -0.05]), (0.75, [-0.05, 0.0])]
        {
            let point = line.at(share * line.length());
            for i in 0..2 {
                assert!(
                    (point.place[i] - place[i]).abs() < 1e-15
                        && (point.normal[i] - place[i] / 0.05).abs() < 1e-13
                );
            }
        }
    }

    #[test]
    fn a_box_is_closed_and_smooth() {
        let line = MidLine::of(&RectangularTube::new(0.1, 0.14, 0.01, 0.02).unwrap().into()).unwrap();
        let steps = 100_000;
        let step = line.length() / f64::from(steps);
        let mut length = 0.0;
        for k in 0..steps {
            let (one, next) = (line.at(f64::from(k) * step), line.at(f64::from(k + 1) * step));
            let chord = (next.place[0] - one.place[0]).hypot(next.place[1] - one.place[1]);
            assert!(chord < 1.000_001 * step && chord > 0.99 * step);
            assert!(one.normal[0] * next.normal[0] + one.normal[1] * next.normal[1] > 0.999);
            length += chord;
        }
        assert!((length - line.length()).abs() < 1e-6);
        assert!((line.at(0.0).place[1] - 0.065).abs() < 1e-15);
    }
}
