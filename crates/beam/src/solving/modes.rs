//! Natural frequencies and shapes.

use std::f64::consts::TAU;

use axlebow_fe::linalg::{EigenFailure, EigenPairs, Pencil, SymmetricMatrix};

use crate::elements::element::FiniteElement;
use crate::elements::mesh::Mesh;
use crate::error::BeamError;
use crate::parts::line::Line;
use crate::solving::system::System;

/// Stations of a shape, at least.
const STATIONS: usize = 120;

/// Frequencies below this part of the highest are those of rigid motions.
const RIGID: f64 = 1e-6;

/// A natural mode.
#[derive(Debug, Clone, PartialEq)]
pub struct Mode {
    /// Natural frequency (Hz), zero of a rigid motion.
    pub frequency: f64,
    /// Places (m) and deflections, the largest of which is 1.
    pub shape: Vec<[f64; 2]>,
}

/// The lowest natural modes, by rising frequency.
#[derive(Debug, Clone, PartialEq)]
pub struct Modes {
    /// They.
    pub modes: Vec<Mode>,
    /// Whether Sturm's count of the modes below the next one agrees, so that none is missing.
    pub complete: bool,
}

impl Modes {
    /// How many of the first ones are rigid motions of a beam that is not held.
    pub fn rigid(&self) -> usize {
        let highest = self.modes.last().map_or(0.0, |mode| mode.frequency);
        self.modes.iter().filter(|mode| mode.frequency <= RIGID * highest).count()
    }
}

/// The lowest `count` natural modes, undamped, about the unloaded beam; rigid motions come first, with frequency zero.
/// Stops are taken as open, and loads play no part.
///
/// Consistent mass, point masses with their inertia; rotary inertia of the sections in Timoshenko theory only.
///
/// # Errors
/// [`BeamError::NoArea`] of a section without mass and as [`crate::solve`], but a beam that nothing holds has modes.
pub fn modes(line: &Line, mesh: &Mesh, count: usize) -> Result<Modes, BeamError> {
    line.check_areas("mass")?;
    let system = System::new(line, mesh, &open_stops(line))?;
    let pairs = pencil(&system.stiffness(), &mass_matrix(line, &system), count)?;
    let mode = |(column, value): (usize, &f64)| {
        let free: Vec<f64> = pairs.vectors.column(column).collect();
        Mode { frequency: value.max(0.0).sqrt() / TAU, shape: shape(&system, &free) }
    };
    let found = pairs.values.iter().enumerate().map(mode).collect();
    Ok(Modes { modes: found, complete: pairs.found_below == pairs.counted_below })
}

/// Of each support, whether it holds where stops do not.
pub(crate) fn open_stops(line: &Line) -> Vec<bool> {
    line.supports().iter().map(|support| !support.kind.is_stop()).collect()
}

/// Consistent mass and what is mounted, over the free freedoms.
pub(crate) fn mass_matrix(line: &Line, system: &System) -> SymmetricMatrix {
    let mut mounted = vec![0.0; system.holds.len()];
    for mass in line.masses() {
        let node = system.node(mass.at);
        mounted[2 * node] += mass.mass;
        mounted[2 * node + 1] += mass.inertia;
    }
    system.assembled(FiniteElement::mass, &mounted)
}

/// The lowest eigenvalues with their M-orthonormal vectors.
pub(crate) fn pencil(
    stiffness: &SymmetricMatrix,
    mass: &SymmetricMatrix,
    count: usize,
) -> Result<EigenPairs, BeamError> {
    Pencil { stiffness, mass }.lowest(count).map_err(|failure| {
        let reason = match failure {
            EigenFailure::Unheld(pivot) => pivot.to_string(),
            EigenFailure::NoConvergence => "the eigenvalues do not converge".to_owned(),
        };
        BeamError::Unsolvable { reason }
    })
}

fn shape(system: &System, free: &[f64]) -> Vec<[f64; 2]> {
    let mut all = vec![0.0; system.holds.len()];
    system.spread(free, &mut all);
    let each = STATIONS.div_ceil(system.elements.len()).max(2);
    let mut points = Vec::new();
    for (node, element) in system.elements.iter().enumerate() {
        let ends = system.ends(node, &all);
        for i in usize::from(node > 0)..=each {
            let s = element.member.length * i as f64 / each as f64;
            points.push([system.nodes[node] + s, element.field(s, &ends, false).deflection]);
        }
    }
    let largest =
        points.iter().fold(0.0_f64, |a, p| if p[1].abs() > a.abs() * (1.0 + 1e-9) { p[1] } else { a });
    if largest != 0.0 {
        points.iter_mut().for_each(|point| point[1] /= largest);
    }
    points
}
