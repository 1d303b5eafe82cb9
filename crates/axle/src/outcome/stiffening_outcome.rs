//! What stiffeners do, in the trade's words; SI inside.

use crate::Side;

/// What all stiffeners of an axle do in one case: as their welds tie them (tied), which is the answer, and with full
/// composite action (composite), one section with the axle over their length, which is the upper bound.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffeningOutcome {
    /// The wheel whose camber changes more without stiffeners.
    pub side: Side,
    /// Mass of all stiffeners, kg.
    pub mass: f64,
    /// Camber change of that wheel without stiffeners, rad.
    pub without: f64,
    /// The same with full composite action, the upper bound of what the stiffeners do, rad.
    pub composite: f64,
    /// The same with stiffeners as their welds tie them: that of the wheel's own outcome, rad.
    pub tied: f64,
    /// Why the tied stiffeners help less than composite ones; none where the help differs by less than 5 %.
    pub why: Option<String>,
    /// Each stiffener, in the order of the axle.
    pub stiffeners: Vec<StiffenerOutcome>,
}

impl StiffeningOutcome {
    /// Share of the camber change without stiffeners that is gone at another camber change (rad).
    pub fn removed(&self, camber_change: f64) -> f64 {
        if self.without == 0.0 { 0.0 } else { 1.0 - camber_change / self.without }
    }

    /// Camber change that the tied stiffeners take away for each kilogram of them, rad/kg.
    pub fn removed_per_mass(&self) -> f64 {
        (self.without.abs() - self.tied.abs()) / self.mass
    }

    /// Share of the composite's help that the tied stiffeners do not give.
    pub fn help_lost(&self) -> f64 {
        let help = self.without - self.composite;
        if help.abs() < LEAST_HELP { 0.0 } else { 1.0 - (self.without - self.tied) / help }
    }
}

/// Help below which its losses say nothing, rad.
const LEAST_HELP: f64 = 1e-7;

/// One stiffener and its weld, tied.
#[derive(Debug, Clone, PartialEq)]
pub struct StiffenerOutcome {
    /// Its name.
    pub name: String,
    /// What it is, such as `angle, toes down`.
    pub called: String,
    /// Right and left end, m.
    pub reach: [f64; 2],
    /// Mass, kg.
    pub mass: f64,
    /// Force along its weld, from right to left, the rear foot before the front one.
    pub weld: Vec<WeldForce>,
    /// The greatest of those.
    pub peak: WeldForce,
    /// Its axial force, from right to left.
    pub axial: Vec<AxialForce>,
    /// Length over which its axial force is at least 95 % of the composite's, m.
    pub working_length: f64,
    /// Its fiber stress of largest magnitude.
    pub peak_stress: PlacedStress,
}

/// Stress at a place, tension positive.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlacedStress {
    /// Position, m.
    pub y: f64,
    /// Pa.
    pub stress: f64,
}

impl StiffenerOutcome {
    /// Length, m.
    pub fn length(&self) -> f64 {
        self.reach[1] - self.reach[0]
    }

    /// Stretches in which it works in full, as of [`Self::working_length`], from right to left, m.
    pub fn working_stretches(&self) -> Vec<[f64; 2]> {
        working_stretches(&self.axial)
    }
}

/// Foot of a stiffener, with a weld of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Foot {
    /// The rear one, of a stiffener on top of the axle.
    #[default]
    Rear,
    /// The front one.
    Front,
}

impl Foot {
    /// Both, the rear one first.
    pub const BOTH: [Foot; 2] = [Foot::Rear, Foot::Front];

    /// The trade's word.
    pub fn word(self) -> &'static str {
        match self {
            Foot::Rear => "rear",
            Foot::Front => "front",
        }
    }
}

/// Force of the stiffener on the axle through the weld at one place, per length of weld.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WeldForce {
    /// Position, m.
    pub y: f64,
    /// Length of weld that it is the mean of, m.
    pub length: f64,
    /// Which of the stiffener's welds it is.
    pub foot: Foot,
    /// Along the axle, to the left, N/m.
    pub along: f64,
    /// Across the wall, forward on top of the axle, N/m.
    pub across: f64,
    /// Away from the axle, N/m.
    pub outward: f64,
}

impl WeldForce {
    /// Magnitude, N/m.
    pub fn magnitude(&self) -> f64 {
        self.along.hypot(self.across).hypot(self.outward)
    }
}

/// Axial force of a stiffener at one place, tension positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AxialForce {
    /// Position, m.
    pub y: f64,
    /// As its weld ties it, N.
    pub tied: f64,
    /// As one section with the axle, N.
    pub composite: f64,
}

/// Share of the composite's axial force from which on a stiffener works in full.
const WORKING_SHARE: f64 = 0.95;

/// Stretches over which the tied force is at least [`WORKING_SHARE`] of the composite's, from right to left, m.
fn working_stretches(axial: &[AxialForce]) -> Vec<[f64; 2]> {
    let works = |at: &AxialForce| at.composite != 0.0 && at.tied / at.composite >= WORKING_SHARE;
    let runs = axial.chunk_by(|a, b| works(a) == works(b)).filter(|run| works(&run[0]));
    runs.map(|run| [run[0].y, run[run.len() - 1].y]).collect()
}

/// Length of [`working_stretches`].
pub(crate) fn working_length(axial: &[AxialForce]) -> f64 {
    working_stretches(axial).into_iter().map(|[from, to]| to - from).sum()
}
