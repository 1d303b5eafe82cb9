//! The greatest equivalent stress of a section, normal and shear stress taken at one and the same point.
//!
//! Normal stress is greatest at the outside edge, and there the search runs all round it. Shear stress is the mean through
//! the wall, along the edge: that of the shear forces by the first moment of what lies beyond a cut square to the wall
//! (Jourawski's formula), that of the torque by the torsion modulus. All of them keep their signs, so that they add on one
//! side of a section and take from each other on the other.
//!
//! Source: J. M. Gere & B. J. Goodno, *Mechanics of Materials*, 8th ed. 2013, ch. 5 and 6 (shear of tubes and of thin
//! walls, cut square to the wall); R. von Mises 1913.

use std::f64::consts::FRAC_PI_2;

use crate::{Profile, RectangularTube, SectionProperties, StressField, von_mises};

/// Forces that a section carries by shear, on the face whose outward normal is +Y.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ShearForces {
    /// V along X (N).
    pub shear_x: f64,
    /// V along Z (N).
    pub shear_z: f64,
    /// T about Y (N m).
    pub torsion: f64,
}

/// A point of the outside edge.
struct EdgePoint {
    /// (x, z) from the centroid, m.
    place: [f64; 2],
    /// Shear stress from the top toward the front, Pa.
    shear: f64,
}

/// Parts into which a stretch of the edge is cut before the best of them is searched.
const PARTS: usize = 8;

impl Profile {
    /// Greatest equivalent stress on the outside edge, √(s² + 3 tau²) with s and tau of the same point (Pa).
    ///
    /// - `properties`: of this section
    /// - `normal`: s, in the axes of this section
    /// - `shear`: what causes tau
    ///
    /// Exact for thin walls; at the edge of a solid bar tau of a shear force is 8 % high (nu = 0.3; S. P. Timoshenko &
    /// J. N. Goodier, *Theory of Elasticity*, 3rd ed. 1970, art. 122, from memory). In the corner of a rectangular tube
    /// the first moment runs from one wall's to the other's as the sine of the angle, exact where the sides are half circles.
    pub fn equivalent_stress(
        &self,
        properties: &SectionProperties,
        normal: &StressField,
        shear: &ShearForces,
    ) -> f64 {
        let at = |along: f64| match self {
            Self::RectangularTube(tube) => tube.edge_point(properties, shear, along),
            Self::RoundTube(_) | Self::RoundBar(_) => self.round_edge_point(properties, shear, along),
        };
        let stretches = if matches!(self, Self::RectangularTube(_)) { 12 } else { 4 };
        greatest(stretches, |along| {
            let point = at(along);
            von_mises(normal.at(point.place), point.shear)
        })
    }

    /// The point of a circle at so many quarters of the way round from the top toward the front.
    ///
    /// A cut along the radius gives tau = V sin(a)/V times its peak, a from the direction of the force.
    fn round_edge_point(&self, properties: &SectionProperties, shear: &ShearForces, along: f64) -> EdgePoint {
        let (sine, cosine) = (along * FRAC_PI_2).sin_cos();
        let radius = 0.5 * properties.height;
        let across = shear.shear_x * cosine - shear.shear_z * sine;
        EdgePoint {
            place: [radius * sine, radius * cosine],
            shear: self.transverse_shear_peak(across, 0.0).copysign(across)
                + shear.torsion / properties.torsion_modulus,
        }
    }
}

impl RectangularTube {
    /// The point of the edge at so many stretches from the middle of the top toward the front: three to a quarter, its half of
    /// the top or bottom, its corner, its half of the side.
    fn edge_point(&self, properties: &SectionProperties, shear: &ShearForces, along: f64) -> EdgePoint {
        // In the second and fourth quarter the way runs from the side to the bottom or top.
        let along = along.rem_euclid(12.0);
        let within = along.rem_euclid(3.0);
        let (within, front, up) = match along {
            ..3.0 => (within, 1.0, 1.0),
            ..6.0 => (3.0 - within, 1.0, -1.0),
            ..9.0 => (within, -1.0, -1.0),
            _ => (3.0 - within, -1.0, 1.0),
        };
        let ([x, z], [first_x, first_z]) = self.quarter_point(within);
        let flow = |force: f64, first: f64, second: f64| force * first / (second * self.wall());
        EdgePoint {
            place: [front * x, up * z],
            shear: up * flow(shear.shear_x, first_z, properties.second_moment_z)
                - front * flow(shear.shear_z, first_x, properties.second_moment_x)
                + shear.torsion / properties.torsion_modulus,
        }
    }

    /// Place (x, z) in the first quarter, and the first moments about X and about Z of the wall between a cut there and the
    /// axis of symmetry on which the shear of a force along Z, or along X, is none (m³).
    fn quarter_point(&self, within: f64) -> ([f64; 2], [f64; 2]) {
        let (t, half_b, half_h, r) =
            (self.wall(), 0.5 * self.width(), 0.5 * self.height(), self.corner_radius());
        let corner = r.max(t);
        let (straight_x, straight_z) = (half_b - corner, half_h - corner);
        let [half_x, half_z] = self.first_moments().map(|first| 0.5 * first);
        // Of the top wall up to x, and of the side wall up to z.
        let top = |x: f64| [t * x * (half_h - 0.5 * t), half_z - 0.5 * t * x * x];
        let side = |z: f64| [half_x - 0.5 * t * z * z, t * z * (half_b - 0.5 * t)];
        if within <= 1.0 {
            let x = within * straight_x;
            return ([x, half_h], top(x));
        }
        if within >= 2.0 {
            let z = (3.0 - within) * straight_z;
            return ([half_b, z], side(z));
        }
        let (sine, cosine) = ((within - 1.0) * FRAC_PI_2).sin_cos();
        let (before, after) = (top(straight_x), side(straight_z));
        let first_x = before[0] + sine * (after[0] - before[0]);
        let first_z = after[1] + cosine * (before[1] - after[1]);
        ([half_b - r + r * sine, half_h - r + r * cosine], [first_x, first_z])
    }
}

/// The greatest value of a function on so many stretches of unit length, smooth on each.
fn greatest(stretches: usize, value: impl Fn(f64) -> f64) -> f64 {
    let step = 1.0 / PARTS as f64;
    let samples = (0..=stretches * PARTS).map(|number| number as f64 * step);
    let best = samples.map(|at| (value(at), at)).reduce(|a, b| if b.0 > a.0 { b } else { a });
    let Some((sampled, at)) = best else { return 0.0 };
    // A kink lies at an end of a stretch, so that both neighbors of a sample are searched apart.
    let beside = [[at - step, at], [at, at + step]].map(|[from, to]| greatest_between(from, to, &value));
    beside.into_iter().fold(sampled, f64::max)
}

/// The greatest value between two places by golden sections, where there is one maximum.
fn greatest_between(mut from: f64, mut to: f64, value: impl Fn(f64) -> f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_8;
    // The square of what is left, 1e-5 of the interval, is rounding.
    const SECTIONS: usize = 24;
    let inner = |from: f64, to: f64| [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
    let [mut low, mut high] = inner(from, to).map(|at| (at, value(at)));
    for _ in 0..SECTIONS {
        if low.1 < high.1 {
            from = low.0;
            low = high;
            let at = inner(from, to)[1];
            high = (at, value(at));
        } else {
            to = high.0;
            high = low;
            let at = inner(from, to)[0];
            low = (at, value(at));
        }
    }
    low.1.max(high.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{RoundBar, RoundTube};

    fn stress(profile: &Profile, moments: [f64; 2], shear: ShearForces) -> f64 {
        let properties = profile.properties(0.3);
        let normal = properties.stress_field(0.0, moments[0], moments[1]);
        profile.equivalent_stress(&properties, &normal, &shear)
    }

    /// 4 in by 0.25 in of wall under M = 20 kN m up, V = 60 kN up and T = 9 kN m, searched in steps of 1e-6 of a turn by
    /// a loop in Python: s = M R cos(a)/I, tau = T/W - V Q sin(a)/(2 I t), Q = 2 (R³ - r³)/3.
    #[test]
    fn a_tube_that_is_bent_sheared_and_twisted_has_the_stress_of_its_worst_point() {
        let tube: Profile = RoundTube::new(0.1016, 0.00635).unwrap().into();
        let shear = ShearForces { shear_x: 0.0, shear_z: 60e3, torsion: 9e3 };
        let found = stress(&tube, [20e3, 0.0], shear);
        assert!((found / 505.672788e6 - 1.0).abs() < 1e-9, "{found}");
    }

    #[test]
    fn shear_where_nothing_bends_and_bending_where_nothing_shears_do_not_add() {
        let tube: Profile = RoundTube::new(0.12, 0.003).unwrap().into();
        let bend = stress(&tube, [10e3, 0.0], ShearForces::default());
        let upright = ShearForces { shear_z: 20e3, ..ShearForces::default() };
        let shear = stress(&tube, [0.0; 2], upright);
        // Of a = (s, 0) at the top and (0, tau) at the front the larger one is the greatest of all.
        assert!((stress(&tube, [10e3, 0.0], upright) / bend.max(shear) - 1.0).abs() < 1e-9);
        // A force along X shears the top most.
        let across = ShearForces { shear_x: 20e3, ..ShearForces::default() };
        assert!((stress(&tube, [10e3, 0.0], across) / bend.hypot(shear) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn shear_of_a_force_and_of_a_torque_add_on_one_side_only() {
        let sizes: [Profile; 2] = [
            RoundBar::new(0.08).unwrap().into(),
            RectangularTube::new(0.12, 0.15, 0.01, 0.02).unwrap().into(),
        ];
        for profile in sizes {
            let tau = |shear_z: f64, torsion: f64| {
                stress(&profile, [0.0; 2], ShearForces { shear_x: 0.0, shear_z, torsion }) / 3.0_f64.sqrt()
            };
            let (force, torque) = (tau(50e3, 0.0), tau(0.0, 2e3));
            assert!((tau(50e3, 2e3) / (force + torque) - 1.0).abs() < 1e-9);
            assert!((force / profile.transverse_shear_peak(0.0, 50e3) - 1.0).abs() < 1e-9);
            // Bent about Z as well, one side is worse than the other, and which one goes by the signs.
            let at = |moment: f64, torsion: f64| {
                stress(&profile, [0.0, moment], ShearForces { shear_x: 0.0, shear_z: 50e3, torsion })
            };
            // T > 0 runs down at the front, against V; at the rear both run up.
            assert!((at(4e3, 2e3) / at(-4e3, 2e3) - 1.0).abs() < 1e-9);
            let pulled = |axial: f64, moment: f64| {
                let properties = profile.properties(0.3);
                let normal = properties.stress_field(axial, 0.0, moment);
                let shear = ShearForces { shear_x: 0.0, shear_z: 50e3, torsion: 2e3 };
                profile.equivalent_stress(&properties, &normal, &shear)
            };
            assert!(pulled(2e5, -4e3) > 1.02 * pulled(2e5, 4e3));
        }
    }

    #[test]
    fn a_box_of_full_corners_is_stressed_as_a_tube() {
        let round: Profile = RoundTube::new(0.12, 0.01).unwrap().into();
        let cornered: Profile = RectangularTube::new(0.12, 0.12, 0.01, 0.06).unwrap().into();
        for (moments, shear_x, shear_z) in
            [([9e3, 0.0], 4e4, 0.0), ([9e3, -5e3], 4e4, -9e4), ([-2e3, -6e3], 1e5, 7e4)]
        {
            let shear = ShearForces { shear_x, shear_z, torsion: 0.0 };
            let (one, other) = (stress(&round, moments, shear), stress(&cornered, moments, shear));
            assert!((one / other - 1.0).abs() < 1e-9, "{one} {other}");
        }
    }

    /// The shear stress of a force adds up to it over walls that are thin.
    #[test]
    fn the_walls_of_a_thin_box_carry_the_force() {
        let (b, h, t) = (0.12, 0.16, 1e-5);
        let tube = RectangularTube::new(b, h, t, 0.0).unwrap();
        let properties = Profile::from(tube).properties(0.3);
        let shear = ShearForces { shear_x: 3e3, shear_z: 5e3, torsion: 0.0 };
        let (mut along_x, mut along_z, many) = (0.0, 0.0, 4000);
        for number in 0..many {
            let at = 12.0 * (f64::from(number) + 0.5) / f64::from(many);
            let point = tube.edge_point(&properties, &shear, at);
            let [x, z] = point.place;
            let on_top = (z.abs() - 0.5 * h).abs() < 1e-9;
            let (size, sign) = if on_top { (0.5 * b, z.signum()) } else { (0.5 * h, -x.signum()) };
            // A stretch of unit length is half of a side; corners have no length.
            let corner = (1.0..2.0).contains(&at.rem_euclid(3.0));
            let force = if corner { 0.0 } else { point.shear * t * size * 12.0 / f64::from(many) };
            *(if on_top { &mut along_x } else { &mut along_z }) += sign * force;
        }
        assert!(
            (along_x / 3e3 - 1.0).abs() < 1e-3 && (along_z / 5e3 - 1.0).abs() < 1e-3,
            "{along_x} {along_z}"
        );
    }
}
