//! How forward force and scuff of a rib change with its load, its radius and the speed at which its wheel turns.

use crate::Brush;

/// A rib as it rolls.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct RollingState {
    /// Load, N.
    pub load: f64,
    /// Rolling radius of the rib, m.
    pub radius: f64,
    /// Distance that the wheel travels over the angle that it turns, m.
    pub travel: f64,
    /// Sliding speed sideways over the traveling speed.
    pub side: f64,
    /// Shear stiffness for each newton of load.
    pub stiffness_per_load: f64,
    /// Friction.
    pub friction: f64,
}

/// A value by the load (1/N), the radius of the rib (1/m) and the travel (1/m).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Slopes {
    pub load: f64,
    pub radius: f64,
    pub travel: f64,
}

impl Slopes {
    pub(crate) fn scaled(self, factor: f64) -> Self {
        let Slopes { load, radius, travel } = self;
        Slopes { load: factor * load, radius: factor * radius, travel: factor * travel }
    }

    pub(crate) fn plus(self, other: Self) -> Self {
        Slopes {
            load: self.load + other.load,
            radius: self.radius + other.radius,
            travel: self.travel + other.travel,
        }
    }
}

/// Slopes of a rib's forward force (N) and of its scuff for each meter traveled (J/m).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct ScuffSlopes {
    pub forward: Slopes,
    pub energy: Slopes,
}

impl RollingState {
    /// Slopes of `E = F φ(s) v` and `X = F φ(s) f/v` with forward sliding `f = (R_r − R)/R`, sliding `v = √(f² + side²)`, slip
    /// `s = v R/R_r` and the brush's force over load φ.
    pub(crate) fn slopes(&self) -> ScuffSlopes {
        let (own, wheel) = (self.radius, self.travel);
        let forward = (own - wheel) / wheel;
        let sliding = f64::hypot(forward, self.side);
        let brush = Brush { stiffness: self.stiffness_per_load, limit: self.friction };
        let slip = sliding * wheel / own;
        let (force, force_by_slip) = (brush.force(slip), brush.slope(slip));
        // Force over sliding, which has a limit where nothing slides.
        let ratio = if sliding > 0.0 { force / sliding } else { self.stiffness_per_load };
        let along = |forward_by: f64, slip_by_radii: f64| {
            let sliding_by = if sliding > 0.0 { forward / sliding * forward_by } else { 0.0 };
            let force_by = force_by_slip * (sliding_by * wheel / own + slip_by_radii);
            let ratio_by = if sliding > 0.0 { (force_by - ratio * sliding_by) / sliding } else { 0.0 };
            let energy = force_by * sliding + force * sliding_by;
            [self.load * (ratio * forward_by + ratio_by * forward), self.load * energy]
        };
        let by_radius = along(1.0 / wheel, -slip / own);
        let by_travel = along(-own / (wheel * wheel), sliding / own);
        ScuffSlopes {
            forward: Slopes { load: ratio * forward, radius: by_radius[0], travel: by_travel[0] },
            energy: Slopes { load: force * sliding, radius: by_radius[1], travel: by_travel[1] },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Forward force and scuff of a rib.
    fn values(state: RollingState) -> [f64; 2] {
        let forward = state.radius / state.travel - 1.0;
        let sliding = f64::hypot(forward, state.side);
        let brush =
            Brush { stiffness: state.stiffness_per_load * state.load, limit: state.friction * state.load };
        let force = brush.force(sliding * state.travel / state.radius);
        [force * forward / sliding, force * sliding]
    }

    /// Against central differences from free rolling to sliding, braking and driving.
    #[test]
    fn slopes_are_those_of_force_and_scuff() {
        for radius in [0.44, 0.489, 0.4899, 0.491, 0.53] {
            for side in [0.0, 0.004, -0.05] {
                let state = RollingState {
                    load: 4e3,
                    radius,
                    travel: 0.49,
                    side,
                    stiffness_per_load: 6.5,
                    friction: 0.8,
                };
                let slopes = state.slopes();
                let near = |change: &dyn Fn(&mut RollingState, f64), step: f64| {
                    let at = |step: f64| {
                        let mut moved = state;
                        change(&mut moved, step);
                        values(moved)
                    };
                    let (up, down) = (at(step), at(-step));
                    [0, 1].map(|i| (up[i] - down[i]) / (2.0 * step))
                };
                let by_load = near(&|state, step| state.load += step, 1.0);
                let by_radius = near(&|state, step| state.radius += step, 1e-8);
                let by_travel = near(&|state, step| state.travel += step, 1e-8);
                let of = |slopes: Slopes| [slopes.load, slopes.radius, slopes.travel];
                for (ours, i) in [(slopes.forward, 0), (slopes.energy, 1)] {
                    for (ours, found) in of(ours).into_iter().zip([by_load[i], by_radius[i], by_travel[i]]) {
                        assert!(
                            (ours - found).abs() < 1e-5 * found.abs().max(1.0),
                            "{radius} {side}: {ours} {found}"
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn a_rib_that_rolls_freely_gains_force_by_its_stiffness_and_does_not_scuff() {
        let state = RollingState {
            load: 4e3,
            radius: 0.49,
            travel: 0.49,
            side: 0.0,
            stiffness_per_load: 6.5,
            friction: 0.8,
        };
        let slopes = state.slopes();
        assert!((slopes.forward.radius - 4e3 * 6.5 / 0.49).abs() < 1e-9);
        assert_eq!(slopes.energy, Slopes::default());
    }
}
