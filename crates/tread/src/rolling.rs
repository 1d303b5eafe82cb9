//! Ribs that roll on radii of their own at one speed, and what they scuff.

use crate::duty::DutyPart;
use crate::face::FittedTire;
use crate::travel::rolling_radius;
use crate::{Brush, Face, Pose, TreadError};

/// Share of its deflection by which a tire's rolling radius is below the unloaded one: R_e = R − δ/3.
///
/// Source: R. N. Jazar, Vehicle Dynamics: Theory and Application, 2008, sec. 3.2 (from memory).
pub const ROLLING_SHARE: f64 = 1.0 / 3.0;

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

/// A rib ready to roll: a [`Brush`] on a radius of its own.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct RollingRib {
    /// R, m.
    radius: f64,
    /// μF, N; zero off the road.
    limit: f64,
    /// C/R, N/m.
    shear: f64,
    /// C/(3 μF R), 1/m: ψ by the sliding speed times the travel.
    sliding: f64,
}

/// A part of the duty to one side, as the face rolls in it.
#[derive(Debug, Clone, Default)]
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
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Asked {
    pub side: f64,
    pub forward_force: f64,
}

/// A hub on its tires, before driving asks anything of them.
struct Stance<'a> {
    face: &'a Face,
    tires: &'a [FittedTire],
    pose: Pose,
    /// Side slip by toe.
    toe_slip: f64,
    /// Load of each tire, N.
    loads: Vec<f64>,
}

impl RollingRib {
    pub(crate) fn new(radius: f64, brush: Brush) -> Self {
        let Brush { stiffness, limit } = brush;
        if limit <= 0.0 {
            return RollingRib { radius, ..RollingRib::default() };
        }
        let shear = stiffness / radius;
        RollingRib { radius, limit, shear, sliding: shear / (3.0 * limit) }
    }

    pub(crate) fn radius(&self) -> f64 {
        self.radius
    }

    pub(crate) fn is_on_road(&self) -> bool {
        self.limit > 0.0
    }

    /// C/R and C, which say how fast the rib rolls under small slip.
    pub(crate) fn small_slip(&self) -> [f64; 2] {
        [self.shear, self.shear * self.radius]
    }

    /// Sliding speed forward over the travelling speed where the face travels `radius` for each radian.
    fn forward(&self, radius: f64) -> f64 {
        (self.radius - radius) / radius
    }

    /// Energy for each meter traveled, N: shear force by sliding speed.
    pub(crate) fn energy(&self, radius: f64, side: f64) -> f64 {
        let sliding = sliding(self.forward(radius), side);
        let psi = self.sliding * radius * sliding;
        if psi < 1.0 {
            self.shear * radius * (1.0 - psi * (1.0 - psi / 3.0)) * sliding * sliding
        } else {
            self.limit * sliding
        }
    }

    /// Forward force X (N) and how it changes with the travel R_e (N/m).
    ///
    /// With the sliding speed forward f = R/R_e − 1, that sideways s and σ = √(f² + s²), the slip against the rib's own speed
    /// of rolling is σ R_e/R, so that the [`Brush`] has ψ = C σ R_e/(3 μF R) and
    /// `X = C (R_e/R) (1 − ψ + ψ²/3) f` up to ψ = 1, `X = μF f/σ` from there on. It changes by
    /// `∂f/∂R_e = −(1 + f)/R_e` and `∂σ/∂R_e = (f/σ) ∂f/∂R_e`.
    #[inline]
    pub(crate) fn forward_force(&self, travel: f64, side: f64) -> [f64; 2] {
        let per_travel = travel.recip();
        let forward = (self.radius - travel) * per_travel;
        let sliding = sliding(forward, side);
        if sliding == 0.0 {
            return [0.0, -self.shear];
        }
        let psi = self.sliding * travel * sliding;
        let (falls, along) = (-(1.0 + forward) * per_travel, forward / sliding);
        if psi >= 1.0 {
            return [self.limit * along, self.limit * falls * (1.0 - along * along) / sliding];
        }
        let sticking = 1.0 - psi * (1.0 - psi / 3.0);
        let psi_changes = self.sliding * (sliding + travel * along * falls);
        let by_psi = (2.0 / 3.0 * psi - 1.0) * psi_changes;
        [self.shear * travel * sticking * forward, self.shear * (travel * forward * by_psi - sticking)]
    }
}

/// √(f² + s²): slips are far from where their squares would be lost.
fn sliding(forward: f64, side: f64) -> f64 {
    (forward * forward + side * side).sqrt()
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
        let stance = Stance::of(self, &self.tires, pose);
        let toe = stance.toe_slip;
        let (free_ribs, load): (Vec<_>, Vec<_>) = stance.ribs(toe).unzip();
        let radius = rolling_radius(&free_ribs, Asked { side: toe, forward_force: 0.0 });
        let scuff = |rib: &RollingRib| RibScuff {
            slip_forward: rib.forward(radius),
            slip_side: toe,
            ..RibScuff::default()
        };
        let mut ribs: Vec<RibScuff> = free_ribs.iter().map(scuff).collect();
        let mut state = DrivenState::default();
        for (part, direction) in self.driven_parts() {
            stance.drive(part, direction, &mut state);
            state.scuff(&mut ribs);
        }
        Ok(Rolling { radius, load, ribs })
    }

    /// Scuff energy of each rib over the duty on tires as they are meant to run, upright and straight, J/m.
    ///
    /// Such tires share a load alike, and a tread pushed to one side is the mirror image of one pushed to the other: one tire
    /// pushed to one side tells all.
    pub(crate) fn upright_energy(&self, load: f64) -> Vec<f64> {
        let tire = [self.rated_tire()];
        let stance =
            Stance::of(self, &tire, Pose { load: load / self.tires.len() as f64, ..Pose::default() });
        let mut pushed = vec![RibScuff::default(); self.ribs.len()];
        let mut state = DrivenState::default();
        for part in 0..self.duty_slips.len() {
            stance.drive(part, 1.0, &mut state);
            state.scuff(&mut pushed);
        }
        let both = pushed.iter().zip(pushed.iter().rev()).map(|(rib, mirrored)| rib.energy + mirrored.energy);
        both.collect::<Vec<f64>>().repeat(self.tires.len())
    }

    /// The states in which the face rolls over its duty.
    pub(crate) fn driven_states(&self, pose: Pose) -> Vec<DrivenState> {
        let stance = Stance::of(self, &self.tires, pose);
        let driven = |(part, direction)| {
            let mut state = DrivenState::default();
            stance.drive(part, direction, &mut state);
            state
        };
        self.driven_parts().map(driven).collect()
    }

    /// Every part of the duty by its number, half of it to each side.
    fn driven_parts(&self) -> impl Iterator<Item = (usize, f64)> + use<> {
        (0..self.duty_slips.len()).flat_map(|part| [(part, -1.0), (part, 1.0)])
    }

    /// Side slip at which these tires together give a side force over load: the brush turned round, `3 μ/c (1 − (1 −
    /// q/μ)^⅓)` with the stiffness c for each newton of load, so that a stiff tread slips less for it.
    pub(crate) fn slip_for(&self, side_force: f64) -> f64 {
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

impl<'a> Stance<'a> {
    fn of(face: &'a Face, tires: &'a [FittedTire], pose: Pose) -> Self {
        Stance { face, tires, pose, toe_slip: pose.toe.tan(), loads: face.tire_loads(tires, pose) }
    }

    /// All ribs under a side slip, and their loads.
    fn ribs(&self, side: f64) -> impl Iterator<Item = (RollingRib, f64)> {
        self.tires.iter().zip(&self.loads).flat_map(move |(tire, load)| {
            let face = self.face;
            let push = face.side_force(*load, self.pose.camber, side);
            let pressed = face.press(tire, *load, self.pose.camber + face.tilt_per_side_force * push);
            face.ribs.iter().map(move |rib| {
                let (radius, load) = (tire.radius - rib.crown, pressed.load(rib));
                let rolling = radius - ROLLING_SHARE * pressed.deflection(rib);
                (RollingRib::new(rolling, face.brush(load)), load)
            })
        })
    }

    /// Rolls in a part of the duty with its push to one side; `state` is made anew.
    fn drive(&self, part: usize, direction: f64, state: &mut DrivenState) {
        let DutyPart { share, forward, .. } = self.face.duty.parts()[part];
        let forward = if self.face.driven { forward } else { forward.min(0.0) };
        let side = self.toe_slip + direction * self.face.duty_slips[part];
        state.share = 0.5 * share;
        state.asked = Asked { side, forward_force: forward * self.loads.iter().sum::<f64>() };
        state.ribs.clear();
        state.loads.clear();
        for (rib, load) in self.ribs(side) {
            state.ribs.push(rib);
            state.loads.push(load);
        }
        state.travel = rolling_radius(&state.ribs, state.asked);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Carcass, Duty, DutyName, Tread};

    /// Both tires pushed to either side, one after the other, are the check of one tire pushed to one.
    #[test]
    fn upright_tires_wear_as_one_pushed_to_one_side() {
        let carcass = Carcass { radius: 0.51, stiffness: 0.9e6, rated_load: 20e3 };
        let tread = Tread::usual(0.22).unwrap();
        for (places, load) in
            [(&[0.15, -0.15][..], 40e3), (&[0.02], 21e3), (&[0.15, -0.15], 2e3), (&[0.0], 0.0)]
        {
            let duty = Duty::usual(DutyName::City).unwrap();
            let face = Face::new(tread, carcass, places).unwrap().with_duty(duty, true).unwrap();
            let face = face.with_tilt_per_side_force(1e-6).unwrap();
            let states = face.driven_states(Pose { load, ..Pose::default() });
            let mut all = vec![RibScuff::default(); places.len() * face.ribs.len()];
            states.iter().for_each(|state| state.scuff(&mut all));
            let total: f64 = all.iter().map(|rib| rib.energy).sum();
            let found = face.upright_energy(load);
            assert_eq!((found.len(), total > 0.0), (all.len(), load > 0.0));
            for (rib, found) in all.iter().zip(found) {
                assert!((rib.energy - found).abs() <= 1e-12 * total, "{load}: {rib:?} {found}");
            }
        }
    }
}
