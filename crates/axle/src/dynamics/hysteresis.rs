//! What hysteresis of steel, bushes and leaves takes from the motion.
//!
//! Of each cycle a part of the stored energy turns into heat, whatever its frequency; η says how much of it. A force that
//! does so has no law in time, but a natural mode has one frequency, so that each mode gets the viscous damper which
//! takes as much from it:
//!
//! ```text
//! ηᵢ = Σ ηₚ Uₚ/U        C = Σ ηᵢ ωᵢ (Mφᵢ)(Mφᵢ)ᵀ,  φᵢᵀMφᵢ = 1        ζᵢ = ηᵢ/2
//! ```
//!
//! with the strain energy Uₚ of each part in mode i. The same dampers act in rides and in frequency responses; modes above
//! the frequency asked for have none.
//!
//! Source: E. E. Ungar, E. M. Kerwin, Loss factors of viscoelastic systems in terms of energy concepts, J. Acoust. Soc.
//! Am. 34 (1962) 954-957; E. L. Wilson, J. Penzien, Evaluation of orthogonal damping matrices, Int. J. Numer. Methods
//! Eng. 4 (1972) 5-10; both from memory.

use std::f64::consts::TAU;

use axlebow_fe::{DynamicSystem, LinearDamper, natural_modes_up_to};

use crate::dynamics::loss_factor::loss_factor;
use crate::dynamics::mode_name::ModeNames;
use crate::dynamics::mode_outcome::ModeOutcome;
use crate::dynamics::standing::Standing;
use crate::{Axle, AxleError};

/// Adds the hysteresis of all modes up to a frequency (Hz) to an axle's equations; returns these modes.
pub(crate) fn add_hysteresis(
    system: &mut DynamicSystem,
    (axle, axle_load): (&Axle, f64),
    up_to: f64,
) -> Result<Vec<ModeOutcome>, AxleError> {
    let axle = axle.rolling();
    let standing = Standing::of(&axle, axle_load, f64::INFINITY)?;
    let structure = &standing.model.frame.structure;
    let found = natural_modes_up_to(structure, up_to)?;
    for mode in &found {
        let damping = loss_factor(&standing.model, mode) * TAU * mode.frequency;
        system.add_damper(LinearDamper { direction: mode.momentum(structure), damping })?;
    }
    let mut names = ModeNames::default();
    Ok(found.iter().map(|mode| standing.outcome(mode, &mut names)).collect())
}
