//! Ribs that roll on radii of their own at one speed, and what they scuff.

use crate::duty::DutyPart;
use crate::face::FittedTire;
use crate::{Brush, Face, Pose, TreadError};

/// Share of its deflection by which a tire's rolling radius is below the unloaded one: R_e = R − δ/3.
///
/// Source: R. N. Jazar, Vehicle Dynamics: Theory and Application, 2008, sec. 3.2 (from memory).
pub const ROLLING_SHARE: f64 = 1.0 / 3.0;

/// Rounds within which the speed is found; some ten do.
const ROUNDS: usize = 60;
/// Share of the bracket within which it is found.
const TOLERANCE: f64 = 1e-13;
/// Share of the radii by which the bracket is widened until the force asked for lies in it, and how often it is doubled.
const WIDENING: f64 = 0.01;
/// Most doublings of the bracket.
const DOUBLINGS: usize = 12;

/// What one rib does as it rolls.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RibScuff {
    /// How fast it slides forward over the travelling speed, positive where it drives; what driving asks for not counted.
    pub slip_forward: f64,
    /// How fast it slides sideways over the travelling speed, by toe alone.
    pub slip_side: f64,
    /// Energy of scuff for each meter traveled, the mean over the duty, J/m.
    pub energy: f64,
    /// Part of it while the road drags the rubber inboard less that while it drags it outboard, J/m.
    pub inboard_less_outboard: f64,
}

impl RibScuff {
    /// Share of the scuff, −1 to 1, by which the rubber is dragged inboard more than outboard: a positive one leaves the
    /// sharp edges of a feathered rib pointing inboard, as toe-in does (common practice, no source).
    pub fn feathering(&self) -> f64 {
        if self.energy > 0.0 { self.inboard_less_outboard / self.energy } else { 0.0 }
    }

    /// Adds another by a weight.
    pub(crate) fn add(&mut self, other: &RibScuff, weight: f64) {
        self.slip_forward += weight * other.slip_forward;
        self.slip_side += weight * other.slip_side;
        self.energy += weight * other.energy;
        self.inboard_less_outboard += weight * other.inboard_less_outboard;
    }
}

/// A face that rolls.
#[derive(Debug, Clone, PartialEq)]
pub struct Rolling {
    /// Distance traveled over the angle turned, free of drive and brake, m.
    pub radius: f64,
    /// Load of each rib, N: toe has moved it.
    pub load: Vec<f64>,
    /// Each rib.
    pub ribs: Vec<RibScuff>,
}

/// A rib ready to roll.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RollingRib {
    pub radius: f64,
    pub brush: Brush,
}

/// A part of the duty to one side, as the face rolls in it.
#[derive(Debug, Clone)]
pub(crate) struct DrivenState {
    /// Share of the distance.
    pub share: f64,
    /// What is asked of the face.
    pub asked: Asked,
    /// Distance traveled over the angle turned, m.
    pub travel: f64,
    /// The ribs.
    pub ribs: Vec<RollingRib>,
    /// Their loads, N.
    pub loads: Vec<f64>,
}

/// What is asked of a face that rolls: a slip sideways, positive as by toe-in, and a force along the road, N.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked {
    pub side: f64,
    forward_force: f64,
}

/// A hub on its tires, before driving asks anything of them.
struct Stance<'a> {
    face: &'a Face,
    tires: &'a [FittedTire],
    pose: Pose,
    /// Load of each tire, N.
    loads: Vec<f64>,
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

    pub(crate) fn energy(&self, radius: f64, side: f64) -> f64 {
        let (ratio, sliding) = self.shear(radius, side);
        ratio * sliding * sliding
    }
}

impl Face {
    /// Slip, shear and scuff energy of each rib over the duty.
    ///
    /// A rib's radius is `R − crown − δ/3`. Toe slides all ribs sideways by `tan(toe)`, each part of the duty by what its
    /// side force takes of these tires, to either side in turn. The side force of a tire tilts its tread, and with it the
    /// load of its ribs. The face turns at the speed at which the forward forces of its ribs, limited by friction ([`Brush`]),
    /// sum to what the duty asks for: brake of all tires, drive of driven ones. The energy of a rib for each meter traveled
    /// is its shear force by its sliding speed over the travelling speed.
    ///
    /// # Errors
    /// As [`Face::pressed`]; [`TreadError::Value`] for a toe beyond ±0.2 rad.
    pub fn rolling(&self, pose: Pose) -> Result<Rolling, TreadError> {
        pose.check()?;
        Ok(self.rolled(&self.tires, pose))
    }

    pub(crate) fn rolled(&self, tires: &[FittedTire], pose: Pose) -> Rolling {
        let stance = Stance { face: self, tires, pose, loads: self.tire_loads(tires, pose) };
        let toe = pose.toe.tan();
        let (free_ribs, load) = stance.ribs(toe);
        let radius = rolling_radius(&free_ribs, Asked { side: toe, forward_force: 0.0 });
        let scuff = |rib: &RollingRib| RibScuff {
            slip_forward: rib.forward(radius),
            slip_side: toe,
            ..RibScuff::default()
        };
        let mut ribs: Vec<RibScuff> = free_ribs.iter().map(scuff).collect();
        stance.driven().for_each(|state| state.scuff(&mut ribs));
        Rolling { radius, load, ribs }
    }

    /// The states in which the face rolls over its duty.
    pub(crate) fn driven_states(&self, pose: Pose) -> Vec<DrivenState> {
        let stance =
            Stance { face: self, tires: &self.tires, pose, loads: self.tire_loads(&self.tires, pose) };
        stance.driven().collect()
    }

    /// Side slip at which these tires together give a side force over load: the brush turned round, `3 μ/c (1 − (1 −
    /// q/μ)^⅓)` with the stiffness c for each newton of load, so that a stiff tread slips less for it.
    fn slip_for(&self, side_force: f64) -> f64 {
        let friction = self.tread.friction;
        let left = 1.0 - (side_force / friction).min(1.0);
        3.0 * friction / self.shear_stiffness_per_load() * (1.0 - left.cbrt())
    }

    pub(crate) fn brush(&self, load: f64) -> Brush {
        Brush { stiffness: self.shear_stiffness_per_load() * load, limit: self.tread.friction * load }
    }

    /// Side force of the road on a tire, N, positive inboard.
    ///
    /// Toe-in and what the duty asks for push by the brush; a lean pushes to the side to which the top leans, by `C l γ/(6 R)`
    /// with the contact's length l, as a brush that would run on a circle (Pacejka, sec. 3.2.4, without the carcass's
    /// share; from memory).
    fn side_force(&self, load: f64, camber: f64, side: f64) -> f64 {
        let brush = self.brush(load);
        let thrust = brush.stiffness * self.contact_length(load) / (6.0 * self.carcass.radius) * camber;
        brush.force(side.abs()).copysign(side) - thrust
    }
}

impl Stance<'_> {
    /// All ribs under a side slip, and their loads.
    fn ribs(&self, side: f64) -> (Vec<RollingRib>, Vec<f64>) {
        let face = self.face;
        let (mut deflections, mut loads) = (Vec::new(), Vec::new());
        let mut radii = Vec::new();
        for (tire, load) in self.tires.iter().zip(&self.loads) {
            let push = face.side_force(*load, self.pose.camber, side);
            let lean = self.pose.camber + face.tilt_per_side_force * push;
            face.press(tire, *load, lean, [&mut deflections, &mut loads]);
            radii.extend(face.ribs.iter().map(|rib| tire.radius - rib.crown));
        }
        let each = radii.iter().zip(&deflections).zip(&loads);
        let ribs = each.map(|((radius, deflection), load)| RollingRib {
            radius: radius - ROLLING_SHARE * deflection,
            brush: face.brush(*load),
        });
        (ribs.collect(), loads)
    }

    /// Every part of the duty, half of it to each side.
    fn driven(&self) -> impl Iterator<Item = DrivenState> {
        let parts = self.face.duty.parts().iter();
        parts.flat_map(|part| [-1.0, 1.0].map(|direction| self.state(part, direction)))
    }

    fn state(&self, part: &DutyPart, direction: f64) -> DrivenState {
        let forward = if self.face.driven { part.forward } else { part.forward.min(0.0) };
        let asked = Asked {
            side: self.pose.toe.tan() + direction * self.face.slip_for(part.side),
            forward_force: forward * self.loads.iter().sum::<f64>(),
        };
        let (ribs, loads) = self.ribs(asked.side);
        let travel = rolling_radius(&ribs, asked);
        DrivenState { share: 0.5 * part.share, asked, travel, ribs, loads }
    }
}

impl DrivenState {
    /// Adds the scuff of this state.
    fn scuff(&self, sums: &mut [RibScuff]) {
        let side = self.asked.side;
        for (sum, rib) in sums.iter_mut().zip(&self.ribs) {
            let energy = self.share * rib.energy(self.travel, side);
            sum.energy += energy;
            sum.inboard_less_outboard += if side == 0.0 { 0.0 } else { energy.copysign(side) };
        }
    }
}

/// Radius at which the forward forces of the ribs sum to what is asked: they fall as it grows, from all driving at the
/// least radius of a rib on the road to all braking at the largest, and further beyond.
pub(crate) fn rolling_radius(ribs: &[RollingRib], asked: Asked) -> f64 {
    let on_road = || ribs.iter().filter(|rib| rib.brush.limit > 0.0).map(|rib| rib.radius);
    let (least, largest) = (on_road().fold(f64::INFINITY, f64::min), on_road().fold(0.0, f64::max));
    if largest == 0.0 {
        return ribs.iter().map(|rib| rib.radius).fold(0.0, f64::max);
    }
    let excess = |radius: f64| surplus(ribs, asked, radius);
    let (mut low, mut high) = (least, largest);
    for doubling in 0..DOUBLINGS {
        let step = WIDENING * largest * f64::from(1_u16 << doubling);
        match (excess(low) < 0.0, excess(high) > 0.0) {
            (true, _) if low > step => low -= step,
            (_, true) => high += step,
            _ => break,
        }
    }
    root_between(excess, [low, high])
}

/// Forward force of the ribs beyond what is asked, N, where the face travels `radius` for each radian.
pub(crate) fn surplus(ribs: &[RollingRib], asked: Asked, radius: f64) -> f64 {
    ribs.iter().map(|rib| rib.forward_force(radius, asked.side)).sum::<f64>() - asked.forward_force
}

/// Where a falling function is zero between two places: regula falsi that halves the value at an end which stays (Illinois;
/// M. Dowell, P. Jarratt, BIT 11 (1971) 168-174, from memory).
fn root_between(excess: impl Fn(f64) -> f64, [mut low, mut high]: [f64; 2]) -> f64 {
    let width = high - low;
    let (mut over, mut under) = (excess(low), excess(high));
    if over <= 0.0 || under >= 0.0 {
        return if over <= 0.0 { low } else { high };
    }
    let (mut last, mut middle) = (0.0, low);
    for _ in 0..ROUNDS {
        let before = middle;
        middle = low + over / (over - under) * (high - low);
        let value = excess(middle);
        if value == 0.0 || (middle - before).abs() <= TOLERANCE * width {
            break;
        }
        let stays = value * last > 0.0;
        if value > 0.0 {
            (low, over) = (middle, value);
            under *= if stays { 0.5 } else { 1.0 };
        } else {
            (high, under) = (middle, value);
            over *= if stays { 0.5 } else { 1.0 };
        }
        last = value;
    }
    middle
}
