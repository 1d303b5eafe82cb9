//! Natural modes: frequencies and shapes of free vibration.

mod mode;

pub use mode::Mode;

use crate::FeError;
use crate::linalg::{EigenFailure, EigenMethod, EigenPairs, Pencil};
use crate::model::assembly::{mass_matrix, stiffness_matrix};
use crate::model::numbering::Numbering;
use crate::model::structure::Structure;

/// The lowest natural modes of a structure.
#[derive(Debug, Clone)]
pub struct Modes {
    /// By rising frequency.
    pub modes: Vec<Mode>,
    /// Frequency just above the last mode and those that crowd with it, Hz.
    pub limit: f64,
    /// Number of modes found below the limit; more than `modes` where several crowd at their end.
    pub found_below: usize,
    /// Number of modes below the limit by Sturm's count, which misses none.
    pub counted_below: usize,
}

impl Modes {
    /// Natural frequencies, Hz.
    pub fn frequencies(&self) -> Vec<f64> {
        self.modes.iter().map(|mode| mode.frequency).collect()
    }

    /// Whether the count confirms that no mode was missed.
    pub fn is_complete(&self) -> bool {
        self.found_below == self.counted_below
    }
}

/// The lowest `count` natural modes, fewer when fewer freedoms have mass.
///
/// `K·φ = ω²·M·φ`, by block Lanczos, or densely for few freedoms; rigid motions of a structure that is not held
/// are modes of frequency zero.
///
/// # Errors
/// [`FeError::ImpossibleMass`] when a mass is negative or not finite; [`FeError::Unsupported`] names the freedom
/// of a motion that has neither stiffness nor mass, or less than no stiffness; [`FeError::NoModes`] when the
/// solution does not converge.
///
/// A cantilever whose tip of 3 kg on 3 EI/L³ = 3000 N/m is all its mass, f = √(k/m)/2π:
/// ```
/// use axlebow_fe::{Attachment, Beam, Flexibility, Freedom, LumpedMass, Rigidity, Structure, natural_modes};
/// let mut structure = Structure::new();
/// let root = structure.add_node("root", [0.0, 0.0, 0.0]);
/// let tip = structure.add_node("tip", [0.0, 1.0, 0.0]);
/// let (ei, rigid) = (1000.0, f64::INFINITY);
/// let rigidity =
///     Rigidity { axial: 1e9, torsion: 1e6, bending_2: 4.0 * ei, bending_3: ei, shear_2: rigid, shear_3: rigid };
/// structure.add_beam(Beam::between(root, tip, [0.0, 0.0, 1.0], Flexibility::uniform(1.0, &rigidity)))?;
/// structure.add_mass(LumpedMass { place: Attachment::at(tip), mass: 3.0 });
/// structure.hold(root, &Freedom::ALL);
/// let modes = natural_modes(&structure, 2)?;
/// let expected = 1000.0_f64.sqrt() / (2.0 * std::f64::consts::PI);
/// assert!((modes.modes[0].frequency - expected).abs() < 1e-9 * expected);
/// assert!((modes.modes[1].frequency - 2.0 * expected).abs() < 1e-9 * expected);
/// assert!(modes.is_complete());
/// # Ok::<(), axlebow_fe::FeError>(())
/// ```
pub fn natural_modes(structure: &Structure, count: usize) -> Result<Modes, FeError> {
    modes_from(structure, |pencil| pencil.lowest(count))
}

/// The natural modes up to a frequency (Hz), as [`natural_modes`].
///
/// # Errors
/// As [`natural_modes`].
pub fn natural_modes_up_to(structure: &Structure, frequency: f64) -> Result<Vec<Mode>, FeError> {
    let limit = (std::f64::consts::TAU * frequency).powi(2);
    let found = modes_from(structure, |pencil| {
        pencil.lowest(pencil.count_below(limit).unwrap_or(pencil.stiffness.order()))
    })?;
    Ok(found.modes.into_iter().filter(|mode| mode.frequency <= frequency).collect())
}

/// As [`natural_modes`], by a given method.
///
/// # Errors
/// As [`natural_modes`].
pub fn natural_modes_by(structure: &Structure, count: usize, method: EigenMethod) -> Result<Modes, FeError> {
    modes_from(structure, |pencil| pencil.lowest_by(count, method))
}

fn modes_from(
    structure: &Structure,
    lowest: impl Fn(Pencil) -> Result<EigenPairs, EigenFailure>,
) -> Result<Modes, FeError> {
    structure.check_masses()?;
    let numbering = Numbering::of(structure);
    let stiffness = stiffness_matrix(structure, &numbering);
    let mass = mass_matrix(structure, &numbering);
    let pairs = lowest(Pencil { stiffness: &stiffness, mass: &mass }).map_err(|failure| match failure {
        EigenFailure::Unheld(failure) => numbering.unsupported(structure, &failure),
        EigenFailure::NoConvergence => FeError::NoModes { freedoms: numbering.order() },
    })?;
    let momenta = mass.multiply_columns(&pairs.vectors);
    let spread = |columns, mode| numbering.by_node(columns, mode);
    let mode = |i: usize| Mode {
        frequency: hertz(pairs.values[i]),
        residual: pairs.residuals[i],
        motions: spread(&pairs.vectors, i),
        momenta: spread(&momenta, i),
    };
    Ok(Modes {
        modes: (0..pairs.values.len()).map(mode).collect(),
        limit: hertz(pairs.limit),
        found_below: pairs.found_below,
        counted_below: pairs.counted_below,
    })
}

/// Frequency (Hz) of an ω².
fn hertz(value: f64) -> f64 {
    value.sqrt() / std::f64::consts::TAU
}
