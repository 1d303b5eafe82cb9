//! What explains a worn axle.

use axlebow_axle::{Side, TireSlot};

use super::likelihood::Discrepancy;
use super::next_check::NextCheck;
use super::observed::Evidence;
use super::pairs::RankedPair;
use super::variant::{SizeOf, Whereabouts};
use super::wear_cause::WearCause;

/// Probability from which a cause is said to lead (a judgment, no source).
pub const LEADS: f64 = 0.6;
/// Probability of readings so far from every cause below which none is said to fit.
pub const FITS: f64 = 0.001;

/// Result of [`super::explain`].
#[derive(Debug, Clone, PartialEq)]
pub struct ExplainOutcome {
    /// What the case is called.
    pub case: String,
    /// Where the axle is in the vehicle.
    pub position: Option<String>,
    /// The causes, the most probable first.
    pub causes: Vec<RankedCause>,
    /// Two causes at once, the most probable first.
    pub pairs: Vec<RankedPair>,
    /// What can be told.
    pub verdict: Verdict,
    /// Ribs that were measured, with what the most probable cause predicts.
    pub ribs: Vec<SeenRib>,
    /// What to check next, what tells most first.
    pub checks: Vec<NextCheck>,
    /// Entropy of the causes after the readings, nats.
    pub entropy: f64,
    /// What the tire face leaves out.
    pub discrepancy: Discrepancy,
}

/// What can be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// One cause leads.
    Leads,
    /// No cause is probable enough.
    CannotTell,
    /// The readings lie far from what every cause predicts.
    NothingFits,
}

/// A cause with how well it explains the readings.
#[derive(Debug, Clone, PartialEq)]
pub struct RankedCause {
    /// The cause.
    pub cause: WearCause,
    /// Probability before the readings.
    pub prior: f64,
    /// Probability after them.
    pub posterior: f64,
    /// Logarithm of the likelihood less that of the likeliest cause.
    pub log_likelihood: f64,
    /// Probability that readings lie as far from where it predicts them as these, at its best size.
    pub fit: f64,
    /// Where it would be.
    pub place: Whereabouts,
    /// How large it would be there.
    pub size: Size,
    /// What each kind of reading says of it.
    pub evidence: Vec<EvidenceWeight>,
}

/// How large a cause would be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// What it measures.
    pub of: SizeOf,
    /// Its mean after the readings.
    pub mean: f64,
    /// Its standard deviation after them.
    pub deviation: f64,
}

/// What a kind of reading says of a cause.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvidenceWeight {
    /// The readings.
    pub evidence: Evidence,
    /// Logarithm of how probable they are with the cause over how probable without, all other readings known.
    pub log_ratio: f64,
}

/// A rib that was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeenRib {
    /// Side of the vehicle.
    pub side: Side,
    /// Tire of the wheel end.
    pub slot: TireSlot,
    /// Its number from the inner shoulder, from 1.
    pub rib: usize,
    /// Depth that was measured, m.
    pub seen: f64,
    /// Depth that the most probable cause predicts, m.
    pub predicted: f64,
}

impl ExplainOutcome {
    /// The most probable cause.
    pub fn leader(&self) -> &RankedCause {
        &self.causes[0]
    }

    /// Two causes at once that explain the readings better than any one: their probability among single causes and pairs is
    /// above a half, and they fit.
    pub fn two_at_once(&self) -> Option<&RankedPair> {
        self.pairs.first().filter(|pair| pair.posterior > 0.5 && pair.fit >= FITS)
    }

    /// Causes that together have as much probability as one needs to lead, the most probable first.
    pub fn leaders(&self) -> &[RankedCause] {
        let mut sum = 0.0;
        let enough = |cause: &RankedCause| {
            sum += cause.posterior;
            sum >= LEADS
        };
        let last = self.causes.iter().position(enough).unwrap_or(self.causes.len() - 1);
        &self.causes[..=last]
    }
}
