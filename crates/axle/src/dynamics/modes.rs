//! Natural modes of the axle on its tires and suspension, named by what moves.

use axlebow_fe::{Modes, natural_modes};

use crate::dynamics::mode_name::ModeNames;
use crate::dynamics::mode_outcome::ModeOutcome;
use crate::dynamics::standing::Standing;
use crate::{Axle, AxleError};

/// Result of [`modes`].
#[derive(Debug, Clone, PartialEq)]
pub struct ModesOutcome {
    /// Mass of the vehicle body that this axle carries, kg.
    pub sprung_mass: f64,
    /// The lowest modes, by rising frequency.
    pub modes: Vec<ModeOutcome>,
    /// Frequency below which modes were counted, Hz.
    pub limit: f64,
    /// Modes found below the limit.
    pub found_below: usize,
    /// Modes below the limit by Sturm's count, which misses none.
    pub counted_below: usize,
    /// The elements that they were found on.
    pub mesh: ModeMesh,
}

/// How fine the elements of modes are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModeMesh {
    /// Length of the longest element, m.
    pub longest_element: f64,
    /// Greatest change of a frequency, as a share of it, when the elements were last halved.
    pub change: f64,
}

impl ModeMesh {
    /// Whether the last halving moved no frequency by more than 0.1 %.
    pub fn is_settled(&self) -> bool {
        self.change <= SETTLED
    }
}

/// Change of a frequency, as a share of it, below which elements are short enough.
const SETTLED: f64 = 1e-3;

/// Most halvings: a stretch of a meter is then cut into pieces of 16 mm.
const MOST_HALVINGS: usize = 6;

/// The lowest natural modes of an axle that carries `axle_load` (N) on the road.
///
/// Tires that touch the road at rest stand on it without leaving it, the body heaves and rolls and the rest of the vehicle
/// resists its roll, wheels roll freely.
///
/// # Errors
/// [`AxleError::LoadBelowWeight`] when the load does not reach the weight of what is between road and
/// suspension; [`AxleError::Fe`] when nothing holds the axle somewhere.
pub fn modes(axle: &Axle, axle_load: f64, count: usize) -> Result<ModesOutcome, AxleError> {
    let Settled { standing, found, mesh } = Settled::of(axle, axle_load, count)?;
    let mut names = ModeNames::default();
    let modes = found.modes.iter().map(|mode| standing.outcome(mode, &mut names)).collect();
    Ok(ModesOutcome {
        sprung_mass: standing.model.sprung_mass,
        modes,
        limit: found.limit,
        found_below: found.found_below,
        counted_below: found.counted_below,
        mesh,
    })
}

/// The modes of an axle on elements that are short enough for them.
struct Settled<'a> {
    standing: Standing<'a>,
    found: Modes,
    mesh: ModeMesh,
}

impl<'a> Settled<'a> {
    /// Halves the elements until no frequency moves by more than [`SETTLED`]. Their errors fall with the fourth power of
    /// the length (`crates/fe/tests/convergence.rs`), so that what is left then is a fifteenth of that.
    fn of(axle: &'a Axle, axle_load: f64, count: usize) -> Result<Self, AxleError> {
        let mut standing = Standing::of(axle, axle_load, f64::INFINITY)?;
        let mut found = natural_modes(&standing.model.frame.structure, count)?;
        let mut mesh = ModeMesh { longest_element: standing.longest_element(), change: f64::INFINITY };
        for _ in 0..MOST_HALVINGS {
            let finer = Standing::of(axle, axle_load, 0.5 * mesh.longest_element)?;
            let again = natural_modes(&finer.model.frame.structure, count)?;
            mesh = ModeMesh {
                longest_element: finer.longest_element(),
                change: greatest_change(&found, &again),
            };
            (standing, found) = (finer, again);
            if mesh.is_settled() {
                break;
            }
        }
        Ok(Settled { standing, found, mesh })
    }
}

/// Greatest change of a frequency as a share of it; infinite where there are more modes than before.
fn greatest_change(before: &Modes, now: &Modes) -> f64 {
    if before.modes.len() != now.modes.len() {
        return f64::INFINITY;
    }
    let pairs = before.modes.iter().zip(&now.modes).filter(|(_, now)| now.frequency > 0.0);
    pairs.map(|(before, now)| (before.frequency / now.frequency - 1.0).abs()).fold(0.0, f64::max)
}
