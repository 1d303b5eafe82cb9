//! How far the outside edge of a section reaches, and the stress there.

use crate::Profile;
use crate::profile::EQUAL_STRESSES;

/// How far the outside edge of a section reaches: a rectangle with rounded corners, a circle without straight
/// parts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeReach {
    /// Half the straight part along X (m).
    pub straight_x: f64,
    /// Half the straight part along Z (m).
    pub straight_z: f64,
    /// Radius of the corners (m).
    pub radius: f64,
}

impl EdgeReach {
    /// Normal stress of greatest magnitude (Pa, tension positive), as [`Profile::fiber_stress`] finds it:
    ///
    /// s = m ± (a |g_x| + b |g_z| + r √(g_x² + g_z²))
    ///
    /// - `mean`: m = N/A (Pa)
    /// - `gradients`: g_x = M_z/I_z along X and g_z = -M_x/I_x along Z (Pa/m)
    #[inline]
    pub fn extreme_stress(&self, mean: f64, gradients: [f64; 2]) -> f64 {
        let [x, z] = gradients;
        self.extreme_of(mean, gradients, length(x, z))
    }

    /// The same from the length of the gradient too.
    #[inline]
    fn extreme_of(&self, mean: f64, [x, z]: [f64; 2], length: f64) -> f64 {
        let bending = self.straight_x * x.abs() + self.straight_z * z.abs() + self.radius * length;
        if bending - mean > (bending + mean) * (1.0 + EQUAL_STRESSES) {
            mean - bending
        } else {
            mean + bending
        }
    }
}

impl EdgeReach {
    /// [`extreme_stress`](Self::extreme_stress) of many means and gradients side by side, in lists of one length (Pa and Pa/m).
    pub fn extreme_stresses(&self, means: &[f64], [x, z]: [&[f64]; 2], stresses: &mut [f64]) {
        let terms = stresses.iter_mut().zip(means.iter().zip(x.iter().zip(z)));
        if x.iter().all(|x| *x == 0.0) {
            // Bending in one plane needs no root.
            terms.for_each(|(stress, (mean, (_, z)))| *stress = self.extreme_of(*mean, [0.0, *z], z.abs()));
        } else {
            terms.for_each(|(stress, (mean, (x, z)))| *stress = self.extreme_stress(*mean, [*x, *z]));
        }
    }

    /// The place on the edge that lies farthest along a direction (x, z), m.
    pub fn farthest_place(&self, [x, z]: [f64; 2]) -> [f64; 2] {
        let size = length(x, z);
        let round = |part: f64| if size == 0.0 { 0.0 } else { self.radius * part / size };
        [self.straight_x.copysign(x) + round(x), self.straight_z.copysign(z) + round(z)]
    }
}

/// √(x² + z²) of numbers whose squares stay finite.
#[inline]
fn length(x: f64, z: f64) -> f64 {
    if x == 0.0 { z.abs() } else { (x * x + z * z).sqrt() }
}

impl Profile {
    /// How far the outside edge reaches.
    pub fn edge_reach(&self) -> EdgeReach {
        let outside = self.outside();
        EdgeReach {
            straight_x: 0.5 * outside.width - outside.radius,
            straight_z: 0.5 * outside.height - outside.radius,
            radius: outside.radius,
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::{Profile, RectangularTube, RoundTube};

    #[test]
    fn the_extreme_stress_is_that_of_the_fibers() {
        let profiles: [Profile; 2] = [
            RoundTube::new(0.127, 0.0127).unwrap().into(),
            RectangularTube::new(0.12, 0.16, 0.01, 0.03).unwrap().into(),
        ];
        let cases = [
            (0.0, 2e4, 0.0),
            (0.0, -2e4, 0.0),
            (1e5, 0.0, 0.0),
            (-1e5, 2e4, 0.0),
            (3e4, -2e4, 9e3),
            (-3e4, 2e3, -9e3),
            (0.0, 0.0, 0.0),
        ];
        for profile in profiles {
            let properties = profile.properties(0.3);
            for (axial, moment_x, moment_z) in cases {
                let gradients =
                    [moment_z / properties.second_moment_z, -moment_x / properties.second_moment_x];
                let found = profile.edge_reach().extreme_stress(axial / properties.area, gradients);
                let expected = profile.fiber_stress(&properties, axial, moment_x, moment_z).0;
                let close = (found - expected).abs() <= 1e-12 * expected.abs();
                assert!(close, "{profile:?} {axial} {moment_x} {moment_z}: {found} {expected}");
            }
        }
    }

    #[test]
    fn stresses_side_by_side_are_those_one_by_one() {
        let reach = Profile::from(RectangularTube::new(0.12, 0.16, 0.01, 0.03).unwrap()).edge_reach();
        let means: Vec<f64> = (0..11).map(|i| 1e7 * (f64::from(i) - 4.0)).collect();
        let z: Vec<f64> = (0..11).map(|i| 1e9 * f64::from(i * i % 7) - 2e9).collect();
        for x in [vec![0.0; 11], (0..11).map(|i| 3e8 * f64::from(i % 3)).collect()] {
            let mut stresses = [f64::NAN; 11];
            reach.extreme_stresses(&means, [&x, &z], &mut stresses);
            let expected: Vec<f64> = (0..11).map(|i| reach.extreme_stress(means[i], [x[i], z[i]])).collect();
            assert_eq!(stresses.as_slice(), expected);
        }
    }
}
