//! Cups that grow on an axle: what is asked and what comes out.

use axlebow_tread::{CriticalCamber, DutyName, GrowingWave, Pose};

use crate::outcome::Warning;
use crate::{HeldSpeed, LoadCase, ModeOutcome, Side, Sides};

/// Share of a growth by which that of the other wheel end must be larger to be worse.
const ALIKE: f64 = 1e-6;

/// What is asked about waves of wear.
#[derive(Debug, Clone, PartialEq)]
pub struct GrowthOptions {
    /// How the axle stands and is loaded.
    pub case: LoadCase,
    /// Lowest and highest speed of the map, m/s, above zero.
    pub speeds: [f64; 2],
    /// Number of speeds, evenly apart.
    pub steps: usize,
    /// Least and most cups round the tire.
    pub counts: [u16; 2],
    /// Speeds that the fleet holds.
    pub held: HeldSpeed,
    /// Heights (m) at which the wave that wins is followed in time; empty for none.
    pub heights: Vec<f64>,
}

/// Result of [`growth`](crate::growth).
#[derive(Debug, Clone, PartialEq)]
pub struct GrowthOutcome {
    /// Name of the load case.
    pub case: String,
    /// The duty in which the tires run.
    pub duty: DutyName,
    /// Speeds that the fleet holds.
    pub held: HeldSpeed,
    /// Speeds of the maps, m/s, rising.
    pub speeds: Vec<f64>,
    /// Cups round the tire, rising.
    pub counts: Vec<u16>,
    /// Each wheel end.
    pub wheels: Sides<WheelGrowth>,
    /// Damping at each seat, alike in bump and rebound, from which on no wave grows over the speeds held, N s/m; none where
    /// a tire grows waves by itself, or where no damping up to 1 MN s/m ends it.
    pub threshold_damping: Option<f64>,
    /// The wave that wins at the mean speed, in time; none where no height was asked.
    pub in_time: Option<GrowthInTime>,
    /// Modes whose frequencies the maps reach.
    pub modes: Vec<ModeOutcome>,
    /// Doubts, each with what to do.
    pub warnings: Vec<Warning>,
}

/// Waves of wear on the tires of one wheel end.
#[derive(Debug, Clone, PartialEq)]
pub struct WheelGrowth {
    /// Load, camber against the road, and toe.
    pub pose: Pose,
    /// Distance traveled over the angle turned, m.
    pub rolling_radius: f64,
    /// Number of tires on the hub.
    pub tires: usize,
    /// Depth of tread lost in the mean for each distance traveled, where removals have calibrated it.
    pub worn_per_distance: Option<f64>,
    /// For each count, growth at each speed, 1/m of mean tread worn; below zero the wave is leveled.
    pub map: Vec<Vec<f64>>,
    /// For each count, the wave that grows fastest over the speeds that the fleet holds.
    pub held: Vec<HeldWave>,
    /// Cambers from which a shoulder feeds on itself.
    pub critical: CriticalCamber,
}

/// The wave of one count that grows fastest over the speeds that a fleet holds.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldWave {
    /// Cups round the tire.
    pub count: u16,
    /// Frequency at the mean speed, Hz.
    pub frequency: f64,
    /// Growth and ribs.
    pub wave: GrowingWave,
    /// Growth were the hub immovable, 1/m of mean tread worn: what the tire does by itself.
    pub hub_held: f64,
    /// Growth at the mean speed were both wheels to turn in step, 1/m of mean tread worn.
    pub in_step: f64,
}

/// A wave of one wheel end in time: its worn profile is fed back as the road of the next turn, and wear is accelerated until a
/// turn shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct GrowthInTime {
    /// The wheel end whose wave wins.
    pub side: Side,
    /// Cups round the tire.
    pub count: u16,
    /// Growth at the mean speed in motions that are small, by eigenvalue, 1/m of mean tread worn.
    pub small: f64,
    /// Mean tread worn in each turn, m.
    pub worn_per_turn: f64,
    /// The wave at each height.
    pub waves: Vec<WaveInTime>,
}

/// What a wave of a height does in time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaveInTime {
    /// Height of its crests over the mean of the rib that takes part most, as it begins, m.
    pub height: f64,
    /// Growth, 1/m of mean tread worn.
    pub rate: f64,
    /// Share of the time in which a tire of the end is off the road.
    pub off_road: f64,
    /// Share of the time in which the bearing with play does not press; none without play.
    pub bearing_loose: Option<f64>,
    /// How far the hub rises and falls about its middle, m.
    pub hub_rise: f64,
}

/// How much a rib takes part in a wave.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShareOfRib {
    /// Amplitude over that of the rib which takes part most.
    pub amplitude: f64,
    /// Phase against that rib, rad.
    pub phase: f64,
}

impl HeldWave {
    /// Each rib of each tire, outermost tire and inner shoulder first.
    pub fn shares(&self) -> Vec<ShareOfRib> {
        let share = |rib: &nalgebra::Complex<f64>| ShareOfRib { amplitude: rib.norm(), phase: rib.arg() };
        self.wave.ribs.iter().map(share).collect()
    }
}

/// A rib of a wheel end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RibPlace {
    /// Number of its tire, the outermost 0.
    pub tire: usize,
    /// Its number on the tire, the inner shoulder 0.
    pub rib: usize,
    /// Ribs of a tire.
    pub of: usize,
}

impl WheelGrowth {
    /// The rib that takes part most in a wave.
    pub fn leading_rib(&self, held: &HeldWave) -> RibPlace {
        let shares = held.shares();
        let larger = |a: usize, b: usize| if shares[b].amplitude > shares[a].amplitude { b } else { a };
        let most = (0..shares.len()).reduce(larger).unwrap_or(0);
        let of = shares.len() / self.tires;
        RibPlace { tire: most / of, rib: most % of, of }
    }

    /// How far the crests of a wave go along the tread for each length of mean tread worn; above zero with the tire's turning.
    pub fn crest_shift(&self, held: &HeldWave) -> f64 {
        held.wave.turning * self.rolling_radius / f64::from(held.count)
    }

    /// Distance in which a wave grows e-fold, m; none where it does not grow or wear has no known depth.
    pub fn distance_for_e_fold(&self, held: &HeldWave) -> Option<f64> {
        Some(held.wave.worn_for_e_fold()? / self.worn_per_distance?)
    }

    /// The wave that wins over the speeds that the fleet holds.
    ///
    /// # Panics
    /// Without a count, which [`growth`](crate::growth) does not give.
    pub fn winner(&self) -> &HeldWave {
        let faster = |a, b| if rate(b) > rate(a) { b } else { a };
        self.held.iter().reduce(faster).expect("there is a count")
    }

    /// The camber from which a shoulder feeds on itself on the side to which the wheel leans, rad.
    pub fn critical_camber(&self) -> Option<f64> {
        if self.pose.camber < 0.0 { self.critical.inner } else { self.critical.outer }
    }

    /// How far the standing camber is from the nearer critical one, rad; below zero where a shoulder feeds on itself.
    pub fn camber_margin(&self) -> Option<f64> {
        self.critical.margin(self.pose.camber)
    }
}

fn rate(held: &HeldWave) -> f64 {
    held.wave.rate
}

impl GrowthOptions {
    /// What grows over the speeds that a fleet holds, the map no more than their mean.
    pub fn over(held: HeldSpeed, case: LoadCase, counts: [u16; 2]) -> Self {
        GrowthOptions { case, speeds: [held.mean; 2], steps: 1, counts, held, heights: Vec::new() }
    }
}

impl GrowthOutcome {
    /// The wheel end whose wave wins, the left one where both are alike.
    pub fn worst(&self) -> Side {
        worse_end(&self.wheels)
    }
}

/// The wheel end whose wave wins, the left one where both are alike.
pub fn worse_end(wheels: &Sides<WheelGrowth>) -> Side {
    let [left, right] = [&wheels.left, &wheels.right].map(|wheel| rate(wheel.winner()));
    if right > left + ALIKE * left.abs() { Side::Right } else { Side::Left }
}
