//! Two tapered roller bearings set against each other, as in a wheel hub.

use super::TaperedRoller;

/// Two tapered roller bearings of a hub on its spindle, their small ends toward each other: the radial load of the inner
/// one pushes the hub outboard, that of the outer one inboard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BearingPair {
    /// Next to the tube.
    pub inner: TaperedRoller,
    /// Next to the spindle's end.
    pub outer: TaperedRoller,
    /// F_0, force that presses both together when nothing else acts, N; 0 where they are set with endplay.
    pub preload: f64,
}

impl BearingPair {
    /// Axial load of the inner and the outer bearing (N): the one that is pressed together carries what the other induces
    /// and the side force, the other one what it induces itself:
    ///
    /// F_a,outer = max(S_outer, S_inner + K), F_a,inner = max(S_inner, S_outer − K), S = 0.5 F_r/Y.
    ///
    /// A preload adds to the bearing that is pressed less, F_a = ∛(F_a³ + max(F_0 − |K|/2, 0)³), and the other carries |K|
    /// more: of two springs alike each takes half of K until one is free, and far from F_0 = S the greater of the two decides.
    ///
    /// - `radial`: F_r of the inner and the outer bearing (N), 0 or more
    /// - `outboard`: K (N), force along the axle on the wheel, outboard positive
    ///
    /// Validity: with endplay, the load zone of the bearing that is not pressed is half of its rollers. With preload, axial
    /// loads lie within -4 and +9 % of two rows of rollers in line contact at a fixed distance (tested); the cube is ours.
    ///
    /// Source: without preload R. G. Budynas & J. K. Nisbett, *Shigley's Mechanical Engineering Design*, 11th ed., sec. 11-9, eqs. (11-19)
    /// and (11-20), which induces 0.47 F_r/K.
    pub fn axial_loads(&self, radial: [f64; 2], outboard: f64) -> [f64; 2] {
        let induced = [self.inner.induced_thrust(radial[0]), self.outer.induced_thrust(radial[1])];
        shared_thrust(induced, outboard, self.preload)
    }

    /// Equivalent loads P of the inner and the outer bearing (N); arguments as for [`Self::axial_loads`].
    pub fn equivalent_loads(&self, radial: [f64; 2], outboard: f64) -> [f64; 2] {
        let axial = self.axial_loads(radial, outboard);
        [self.inner.equivalent_load(radial[0], axial[0]), self.outer.equivalent_load(radial[1], axial[1])]
    }
}

/// Axial loads of the inner and the outer bearing from what each induces, an outboard force and the preload, N.
fn shared_thrust([inner, outer]: [f64; 2], outboard: f64, preload: f64) -> [f64; 2] {
    let loads = [inner.max(outer - outboard), outer.max(inner + outboard)];
    let least = loads[0].min(loads[1]);
    let left = (preload - 0.5 * outboard.abs()).max(0.0);
    let added = (least.powi(3) + left.powi(3)).cbrt() - least;
    loads.map(|load| load + added)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn pair() -> BearingPair {
        let bearing = |rating| TaperedRoller::with_axial_factor(rating, 1.5).unwrap();
        BearingPair { inner: bearing(156e3), outer: bearing(120e3), preload: 0.0 }
    }

    /// Budynas & Nisbett, 10th ed., problem 11-44, as a worked solution in public prints it (lbf): A with F_r = 875 is pressed
    /// by an axial load of 250; B with 625 induces 203 at K = 1.45, A 274 at K = 1.5. P_A = 0.4 (875) + 1.5 (203 + 250) =
    /// 1030, P_B = 625; it rounds 202.6 to 203 and 1029.5 to 1030. A is our outer bearing, as an outboard force presses it.
    #[test]
    fn loads_match_budynas_nisbett_problem_11_44() {
        let induced = |radial: f64, k: f64| 0.47 * radial / k;
        let [b, a] = shared_thrust([induced(625.0, 1.45), induced(875.0, 1.5)], 250.0, 0.0);
        assert_relative_eq!(a, 203.0 + 250.0, max_relative = 0.5 / 453.0);
        let bearing = |k| TaperedRoller::with_axial_factor(1570.0, k).unwrap();
        assert_relative_eq!(bearing(1.5).equivalent_load(875.0, a), 1030.0, max_relative = 1.3 / 1030.0);
        assert_eq!(bearing(1.45).equivalent_load(625.0, b), 625.0);
    }

    /// By hand with Y = 1.5: 30 kN induces 10 kN, 12 kN induces 4 kN.
    #[test]
    fn the_pressed_bearing_carries_the_others_thrust_and_the_side_force() {
        let same = |radial, force, expected: [f64; 2]| {
            let axial = pair().axial_loads(radial, force);
            assert!((axial[0] - expected[0]).abs() + (axial[1] - expected[1]).abs() < 1e-6, "{axial:?}");
        };
        same([30e3, 12e3], 0.0, [10e3, 10e3]);
        same([12e3, 30e3], 0.0, [10e3, 10e3]);
        same([30e3, 12e3], 5e3, [10e3, 15e3]);
        same([30e3, 12e3], -5e3, [10e3, 5e3]);
        same([30e3, 12e3], -9e3, [13e3, 4e3]);
    }

    #[test]
    fn axial_loads_balance_the_side_force() {
        for (force, preload) in [(-20e3, 0.0), (-1e3, 4e3), (0.0, 0.0), (3e3, 9e3), (40e3, 1e3)] {
            let [inner, outer] = BearingPair { preload, ..pair() }.axial_loads([21e3, 8e3], force);
            assert_relative_eq!(outer - inner, force, epsilon = 1e-9);
        }
    }

    /// Two rows of rollers back to back, cups of 15 degrees, Q ~ closure^(10/9), held at the distance of the preload; their
    /// axial load over the preload, by SciPy (`brentq` on the sums over 3600 rollers). First: greater induced thrust over
    /// preload; last: with equal radial loads, and with the lesser 0.4 of the greater.
    #[test]
    fn a_preload_does_what_rollers_at_a_fixed_distance_do() {
        let rollers = [
            (0.25, 1.0041, 1.0024),
            (0.5, 1.0173, 1.0100),
            (0.75, 1.0593, 1.0372),
            (1.0, 1.2251, 1.1675),
            (1.25, 1.4421, 1.3594),
            (1.5, 1.6762, 1.5741),
            (2.0, 2.1624, 2.0268),
        ];
        for (induced, equal, unequal) in rollers {
            for (lesser, expected) in [(induced, equal), (0.4 * induced, unequal)] {
                let [inner, _] = shared_thrust([induced, lesser], 0.0, 1.0);
                assert!(
                    (0.96..=1.09).contains(&(inner / expected)),
                    "{induced} {lesser}: {inner} {expected}"
                );
            }
        }
    }

    #[test]
    fn a_preload_shares_a_side_force_until_one_bearing_is_free() {
        assert_eq!(shared_thrust([0.0, 0.0], 4.0, 10.0), [8.0, 12.0]);
        assert_eq!(shared_thrust([0.0, 0.0], -4.0, 10.0), [12.0, 8.0]);
        assert_eq!(shared_thrust([0.0, 0.0], 30.0, 10.0), [0.0, 30.0]);
        assert_eq!(shared_thrust([2.0, 1.0], 30.0, 10.0), [2.0, 32.0]);
    }
}
