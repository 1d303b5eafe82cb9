//! Forces that depend on one place of the structure: tires, stops, dampers, bearing gaps.

use std::fmt;
use std::sync::Arc;

use crate::model::direction::Direction;

/// Displacement and velocity of a base at a time.
type BaseMotion = Arc<dyn Fn(f64) -> [f64; 2] + Send + Sync>;

/// How the force of a law depends on its compression δ and the rate of it, δ̇; pressing is positive.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum ForceLaw {
    /// `k δ + c δ̇`.
    Spring {
        /// k, N/m.
        stiffness: f64,
        /// c, N s/m.
        damping: f64,
    },
    /// `max(0, k (δ − clearance) + c δ̇)` while δ is beyond the clearance, else nothing: a tire on the road or
    /// a bump stop.
    Contact {
        /// k, N/m.
        stiffness: f64,
        /// c, N s/m.
        damping: f64,
        /// Compression at which the parts touch, m; negative when they are pressed on at rest.
        clearance: f64,
    },
    /// `c δ̇` with one c for compression and another for extension.
    Damper {
        /// c while δ̇ > 0, N s/m.
        compression: f64,
        /// c while δ̇ < 0, N s/m.
        extension: f64,
    },
}

/// A force between the structure and a base, which may move.
///
/// With the direction b and the base motion z(t), the compression is `δ = z − bᵀu`, and the force f(δ, δ̇)
/// acts on the structure as `b·f`.
#[derive(Clone)]
pub struct LocalLaw {
    kind: Kind,
    pub(super) directions: Vec<Direction>,
    base: Option<BaseMotion>,
}

#[derive(Debug, Clone, Copy)]
enum Kind {
    Along(ForceLaw),
    PlaneGap { stiffness: f64, clearance: f64 },
}

/// Most directions of one law.
pub(super) const MOST: usize = 2;

/// Force of a law and how it changes, one number for each direction.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Response {
    pub force: [f64; MOST],
    /// ∂f/∂δ.
    pub stiffness: [[f64; MOST]; MOST],
    /// ∂f/∂δ̇ of the first direction; plane gaps have none.
    pub damping: f64,
}

impl LocalLaw {
    /// A force along one direction.
    pub fn along(direction: Direction, force: ForceLaw) -> Self {
        LocalLaw { kind: Kind::Along(force), directions: vec![direction], base: None }
    }

    /// A gap that is closed where two motions square to each other together exceed the clearance (m): the
    /// force `k (|d| − clearance)` pushes back along d, as in a bearing.
    pub fn plane_gap(directions: [Direction; 2], stiffness: f64, clearance: f64) -> Self {
        let kind = Kind::PlaneGap { stiffness, clearance };
        LocalLaw { kind, directions: directions.into(), base: None }
    }

    /// The same law on a base that moves along its first direction: `motion` gives its displacement (m) and
    /// velocity (m/s) at a time (s).
    pub fn on_base(self, motion: impl Fn(f64) -> [f64; 2] + Send + Sync + 'static) -> Self {
        LocalLaw { base: Some(Arc::new(motion)), ..self }
    }

    /// The same law on the base of another, which is then asked for its motion once for both.
    pub fn on_base_of(self, other: &LocalLaw) -> Self {
        LocalLaw { base: other.base.clone(), ..self }
    }

    /// Whether both stand on one base.
    pub(super) fn shares_base_with(&self, other: &LocalLaw) -> bool {
        matches!((&self.base, &other.base), (Some(a), Some(b)) if Arc::ptr_eq(a, b))
    }

    /// The same law along other directions.
    pub(super) fn with_directions(&self, directions: Vec<Direction>) -> Self {
        LocalLaw { directions, ..self.clone() }
    }

    /// Displacement and velocity of the base.
    pub(super) fn base_at(&self, time: f64) -> [f64; 2] {
        self.base.as_ref().map_or([0.0; 2], |motion| motion(time))
    }

    /// Numbers of the law, to be checked.
    pub(super) fn numbers(&self) -> Vec<(&'static str, f64)> {
        match self.kind {
            Kind::Along(ForceLaw::Spring { stiffness, damping }) => {
                vec![("stiffness", stiffness), ("damping", damping)]
            }
            Kind::Along(ForceLaw::Contact { stiffness, damping, .. }) => {
                vec![("stiffness", stiffness), ("damping", damping)]
            }
            Kind::Along(ForceLaw::Damper { compression, extension }) => {
                vec![("damping of compression", compression), ("damping of extension", extension)]
            }
            Kind::PlaneGap { stiffness, clearance } => {
                vec![("stiffness", stiffness), ("clearance", clearance)]
            }
        }
    }

    /// Clearance, which may have either sign.
    pub(super) fn clearance(&self) -> f64 {
        match self.kind {
            Kind::Along(ForceLaw::Contact { clearance, .. }) | Kind::PlaneGap { clearance, .. } => clearance,
            Kind::Along(_) => 0.0,
        }
    }

    /// Stiffness where it presses.
    pub(super) fn full_stiffness(&self) -> f64 {
        match self.kind {
            Kind::Along(ForceLaw::Spring { stiffness, .. } | ForceLaw::Contact { stiffness, .. })
            | Kind::PlaneGap { stiffness, .. } => stiffness,
            Kind::Along(ForceLaw::Damper { .. }) => 0.0,
        }
    }

    /// Force on top of the full stiffness when the parts are pressed along a compression: a gap is closed by so
    /// much of the motion.
    pub(super) fn pressed_offset(&self, delta: [f64; MOST]) -> [f64; MOST] {
        match self.kind {
            Kind::PlaneGap { stiffness, clearance } => {
                let r = delta[0].hypot(delta[1]);
                delta.map(|part| if r > 0.0 { -stiffness * clearance * part / r } else { 0.0 })
            }
            Kind::Along(_) => [0.0; MOST],
        }
    }

    /// Whether the parts touch; always so for laws that never part.
    #[inline]
    pub(super) fn touches(&self, delta: [f64; MOST]) -> bool {
        match self.kind {
            Kind::Along(ForceLaw::Contact { clearance, .. }) => delta[0] > clearance,
            Kind::PlaneGap { clearance, .. } => delta[0].hypot(delta[1]) > clearance,
            Kind::Along(_) => true,
        }
    }

    /// Force and its changes, for parts that are touching or not.
    ///
    /// A damped contact has a jump of its force at the first touch, so `touching` is what the beginning of the
    /// step says; all else is continuous and decides for itself.
    #[inline]
    pub(super) fn response(&self, delta: [f64; MOST], rate: f64, touching: bool) -> Response {
        match self.kind {
            Kind::Along(law) => law.response(delta[0], rate, touching),
            Kind::PlaneGap { stiffness, clearance } => plane_gap(delta, stiffness, clearance),
        }
    }

    /// Directions with the stiffness and damping that the law has in small motions about a compression.
    pub(super) fn tangents(&self, delta: [f64; MOST]) -> Vec<(Direction, [f64; 2])> {
        match self.kind {
            Kind::PlaneGap { stiffness, clearance } => {
                let r = delta[0].hypot(delta[1]);
                if r <= clearance {
                    return Vec::new();
                }
                let [x, y] = delta.map(|part| part / r);
                let turned = |x: f64, y: f64| {
                    let of = |i: usize, share: f64| {
                        self.directions[i].parts().iter().map(move |(freedom, part)| (*freedom, share * part))
                    };
                    Direction::new(of(0, x).chain(of(1, y)))
                };
                let across = stiffness * (1.0 - clearance / r);
                vec![(turned(x, y), [stiffness, 0.0]), (turned(-y, x), [across, 0.0])]
            }
            Kind::Along(law) => {
                let found = match law {
                    ForceLaw::Damper { compression, extension } => [0.0, 0.5 * (compression + extension)],
                    law => {
                        let response = law.response(delta[0], 0.0, self.touches(delta));
                        [response.stiffness[0][0], response.damping]
                    }
                };
                vec![(self.directions[0].clone(), found)]
            }
        }
    }

    /// The part of the force that stores energy.
    #[inline]
    pub(super) fn elastic_force(&self, delta: [f64; MOST]) -> [f64; MOST] {
        match self.kind {
            Kind::Along(ForceLaw::Spring { stiffness, .. }) => [stiffness * delta[0], 0.0],
            Kind::Along(ForceLaw::Contact { stiffness, clearance, .. }) => {
                [stiffness * (delta[0] - clearance).max(0.0), 0.0]
            }
            Kind::Along(ForceLaw::Damper { .. }) => [0.0; 2],
            Kind::PlaneGap { stiffness, clearance } => plane_gap(delta, stiffness, clearance).force,
        }
    }

    /// Energy stored.
    pub(super) fn potential(&self, delta: [f64; MOST]) -> f64 {
        match self.kind {
            Kind::Along(ForceLaw::Spring { stiffness, .. }) => 0.5 * stiffness * delta[0] * delta[0],
            Kind::Along(ForceLaw::Contact { stiffness, clearance, .. }) => {
                0.5 * stiffness * (delta[0] - clearance).max(0.0).powi(2)
            }
            Kind::Along(ForceLaw::Damper { .. }) => 0.0,
            Kind::PlaneGap { stiffness, clearance } => {
                0.5 * stiffness * (delta[0].hypot(delta[1]) - clearance).max(0.0).powi(2)
            }
        }
    }
}

impl ForceLaw {
    #[inline]
    fn response(&self, delta: f64, rate: f64, touching: bool) -> Response {
        match *self {
            ForceLaw::Spring { stiffness: k, damping: c } => Response::along(k * delta + c * rate, k, c),
            ForceLaw::Contact { stiffness: k, damping: c, clearance } => {
                let force = k * (delta - clearance) + c * rate;
                let presses = force > 0.0 && (touching || (c == 0.0 && delta > clearance));
                if presses { Response::along(force, k, c) } else { Response::default() }
            }
            ForceLaw::Damper { compression, extension } => {
                let c = if rate > 0.0 { compression } else { extension };
                Response::along(c * rate, 0.0, c)
            }
        }
    }
}

impl Response {
    #[inline]
    fn along(force: f64, stiffness: f64, damping: f64) -> Self {
        Response { force: [force, 0.0], stiffness: [[stiffness, 0.0], [0.0; 2]], damping }
    }
}

/// `k (r − clearance)` along n = δ/r, with ∂f/∂δ = k [n nᵀ + (1 − clearance/r)(1 − n nᵀ)].
fn plane_gap(delta: [f64; 2], k: f64, clearance: f64) -> Response {
    let r = delta[0].hypot(delta[1]);
    if r <= clearance {
        return Response::default();
    }
    let n = delta.map(|part| part / r);
    let across = 1.0 - clearance / r;
    let entry = |i: usize, j: usize| {
        let both = n[i] * n[j];
        k * (both + across * (f64::from(u8::from(i == j)) - both))
    };
    Response {
        force: n.map(|part| k * (r - clearance) * part),
        stiffness: [[entry(0, 0), entry(0, 1)], [entry(1, 0), entry(1, 1)]],
        damping: 0.0,
    }
}

impl fmt::Debug for LocalLaw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let LocalLaw { kind, directions, base } = self;
        f.debug_struct("LocalLaw")
            .field("kind", kind)
            .field("directions", directions)
            .field("moves", &base.is_some())
            .finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Central differences of the force against its stated changes.
    #[test]
    fn changes_of_the_force_agree_with_differences() {
        let [a, b] = [Direction::along(0), Direction::along(1)];
        let contact = ForceLaw::Contact { stiffness: 3.0, damping: 0.5, clearance: 0.1 };
        let laws = [
            LocalLaw::along(a.clone(), ForceLaw::Spring { stiffness: 3.0, damping: 0.5 }),
            LocalLaw::along(a.clone(), contact),
            LocalLaw::along(a.clone(), ForceLaw::Damper { compression: 2.0, extension: 5.0 }),
            LocalLaw::plane_gap([a, b], 4.0, 0.2),
        ];
        let h = 1e-6;
        for law in laws {
            for (delta, rate) in
                [([0.3, 0.2], 0.4), ([0.3, -0.7], -0.4), ([-0.5, 0.1], -2.0), ([0.05, 0.02], 1.0)]
            {
                let touching = law.touches(delta);
                let at = |delta, rate| law.response(delta, rate, touching);
                let found = at(delta, rate);
                for j in 0..law.directions.len() {
                    let moved = |by: f64| {
                        let mut moved = delta;
                        moved[j] += by;
                        at(moved, rate).force
                    };
                    for i in 0..2 {
                        let slope = (moved(h)[i] - moved(-h)[i]) / (2.0 * h);
                        assert!((slope - found.stiffness[i][j]).abs() < 1e-8, "{law:?} {delta:?} {i} {j}");
                    }
                }
                let slope = (at(delta, rate + h).force[0] - at(delta, rate - h).force[0]) / (2.0 * h);
                assert!((slope - found.damping).abs() < 1e-8, "{law:?}");
            }
        }
    }
}
