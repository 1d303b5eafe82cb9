//! Ribs that roll on radii of their own at one speed, and what they scuff.

use crate::pressed::Pressed;
use crate::{Brush, Face, Pose, TreadError};

/// Share of its deflection by which a tire's rolling radius is below the unloaded one: R_e = R − δ/3.
///
/// Source: R. N. Jazar, Vehicle Dynamics: Theory and Application, 2008, sec. 3.2 (from memory).
pub const ROLLING_SHARE: f64 = 1.0 / 3.0;

/// Rounds within which the free speed is found: each halves its bracket at least.
const ROUNDS: usize = 60;
/// Share of the bracket within which it is found.
const TOLERANCE: f64 = 1e-13;

/// What one rib does as it rolls.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RibScuff {
    /// How fast it slides forward over the travelling speed, positive where it drives; what driving asks for not counted.
    pub slip_forward: f64,
    /// How fast it slides sideways over the travelling speed, by toe alone.
    pub slip_side: f64,
    /// Energy of scuff for each meter traveled, the mean over driving to either side, J/m.
    pub energy: f64,
}

/// A face that rolls.
#[derive(Debug, Clone, PartialEq)]
pub struct Rolling {
    /// Distance traveled over the angle turned, m.
    pub radius: f64,
    /// Each rib.
    pub ribs: Vec<RibScuff>,
}

/// A rib ready to roll.
#[derive(Debug, Clone, Copy)]
struct RollingRib {
    radius: f64,
    brush: Brush,
}

impl RollingRib {
    /// Sliding speed forward over the travelling speed where the face travels `radius` for each radian.
    fn forward(&self, radius: f64) -> f64 {
        (self.radius - radius) / radius
    }

    /// Shear force for each unit of sliding speed, N, and that sliding speed.
    fn shear(&self, radius: f64, side: f64) -> (f64, f64) {
        let sliding = f64::hypot(self.forward(radius), side);
        // Slip counts against the speed at which the rib itself rolls.
        let slip = sliding * radius / self.radius;
        if sliding == 0.0 { (self.brush.stiffness, 0.0) } else { (self.brush.force(slip) / sliding, sliding) }
    }

    fn forward_force(&self, radius: f64, side: f64) -> f64 {
        self.shear(radius, side).0 * self.forward(radius)
    }

    fn energy(&self, radius: f64, side: f64) -> f64 {
        let (ratio, sliding) = self.shear(radius, side);
        ratio * sliding * sliding
    }
}

impl Face {
    /// Slip, shear and scuff energy of each rib, free of drive and brake.
    ///
    /// A rib's radius is `R − crown − δ/3`. Toe slides all ribs sideways by `tan(toe)`, driving by what its usual
    /// side force takes, to either side in turn. The face turns at the speed at which the forward forces of its ribs, limited by friction
    /// ([`Brush`]), sum to zero; the energy of a rib for each meter traveled is its shear force by its sliding speed
    /// over the travelling speed.
    ///
    /// # Errors
    /// As [`Face::pressed`]; [`TreadError::Value`] for a toe beyond ±0.2 rad.
    pub fn rolling(&self, pose: Pose) -> Result<Rolling, TreadError> {
        Ok(self.rolled(&self.pressed(pose)?, pose.toe.tan()))
    }

    pub(crate) fn rolled(&self, pressed: &Pressed, side: f64) -> Rolling {
        let ribs = self.rolling_ribs(pressed);
        let usual = self.usual_slip(&ribs);
        let slips = [side - usual, side + usual];
        let radii = slips.map(|slip| free_radius(&ribs, slip));
        let radius = 0.5 * (radii[0] + radii[1]);
        let scuff = |rib: &RollingRib| RibScuff {
            slip_forward: rib.forward(radius),
            slip_side: side,
            energy: 0.5 * (rib.energy(radii[0], slips[0]) + rib.energy(radii[1], slips[1])),
        };
        Rolling { radius, ribs: ribs.iter().map(scuff).collect() }
    }

    /// Side slip that takes the side force which driving asks for, to first order: that force over the stiffness of all
    /// ribs, so that a stiff tread slips less for it.
    fn usual_slip(&self, ribs: &[RollingRib]) -> f64 {
        let [stiffness, limit] =
            ribs.iter().fold([0.0; 2], |sum, rib| [sum[0] + rib.brush.stiffness, sum[1] + rib.brush.limit]);
        let asked = self.tread.usual_side_force * limit / self.tread.friction;
        if stiffness > 0.0 { asked / stiffness } else { 0.0 }
    }

    fn rolling_ribs(&self, pressed: &Pressed) -> Vec<RollingRib> {
        let (per_load, friction) = (self.shear_stiffness_per_load(), self.tread.friction);
        let each = self.ribs.iter().zip(&pressed.deflection).zip(&pressed.load);
        each.map(|((rib, deflection), load)| RollingRib {
            radius: self.carcass.radius - rib.crown - ROLLING_SHARE * deflection,
            brush: Brush { stiffness: per_load * load, limit: friction * load },
        })
        .collect()
    }
}

/// Radius at which the forward forces of the ribs sum to zero: they fall as it grows, from all driving at the least
/// radius of a rib on the road to all braking at the largest. Regula falsi, with bisection where it stalls.
fn free_radius(ribs: &[RollingRib], side: f64) -> f64 {
    let on_road = || ribs.iter().filter(|rib| rib.brush.limit > 0.0).map(|rib| rib.radius);
    let (mut low, mut high) = (on_road().fold(f64::INFINITY, f64::min), on_road().fold(0.0, f64::max));
    if high <= low {
        return if high > 0.0 { high } else { ribs.iter().map(|rib| rib.radius).fold(0.0, f64::max) };
    }
    let width = high - low;
    let force = |radius: f64| ribs.iter().map(|rib| rib.forward_force(radius, side)).sum::<f64>();
    let (mut over, mut under) = (force(low), force(high));
    for round in 0..ROUNDS {
        let share = if round % 3 == 2 { 0.5 } else { over / (over - under) };
        let middle = low + share * (high - low);
        let sum = force(middle);
        if sum >= 0.0 {
            (low, over) = (middle, sum);
        } else {
            (high, under) = (middle, sum);
        }
        if high - low <= TOLERANCE * width || over == 0.0 {
            break;
        }
    }
    if over == 0.0 { low } else { 0.5 * (low + high) }
}
