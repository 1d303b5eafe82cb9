//! Stiffness and mass matrices of a whole structure.

use crate::element::beam_mass::BeamMass;
use crate::element::shell::{ShellStiffness, geometric_stiffness, shell_mass};
use crate::linalg::SymmetricMatrix;
use crate::model::numbering::Numbering;
use crate::model::state::State;
use crate::model::structure::Structure;

/// Stiffness matrix K over the free freedoms, in the order of the nodes.
///
/// Returns forces (N, N m) per motion (m, rad).
pub fn assemble_stiffness(structure: &Structure) -> SymmetricMatrix {
    stiffness_matrix(structure, &Numbering::of(structure))
}

/// Mass matrix M over the free freedoms, in the order of the nodes and with the storage of the stiffness.
///
/// Beams and shells have the consistent mass of their theories with rotary inertia, other masses are rigid bodies
/// on the arms of their nodes; the mass of any rigid motion is exact.
///
/// Returns inertia forces (N, N m) per acceleration (m/s², rad/s²): kg, kg m, kg m².
pub fn assemble_mass(structure: &Structure) -> SymmetricMatrix {
    mass_matrix(structure, &Numbering::of(structure))
}

pub(crate) fn stiffness_matrix(structure: &Structure, numbering: &Numbering) -> SymmetricMatrix {
    let mut matrix = numbering.empty_matrix(structure);
    add_stiffness(&mut matrix, structure, numbering);
    matrix
}

/// Adds the stiffness of all members to a matrix.
pub(crate) fn add_stiffness(matrix: &mut SymmetricMatrix, structure: &Structure, numbering: &Numbering) {
    for coupling in structure.couplings() {
        numbering.add_coupling(matrix, coupling);
    }
    for shell in &structure.shells {
        numbering.add_shell(matrix, &shell.nodes, &ShellStiffness::of(shell).matrix);
    }
}

pub(crate) fn mass_matrix(structure: &Structure, numbering: &Numbering) -> SymmetricMatrix {
    let mut matrix = numbering.empty_matrix(structure);
    for beam in &structure.beams {
        if beam.mass_per_length == 0.0 && beam.inertia_per_length == [0.0; 3] {
            continue;
        }
        let mass = BeamMass::of(beam);
        let (start, end) = (beam.coupling.near, beam.coupling.far.unwrap_or(beam.coupling.near));
        numbering.add_block(&mut matrix, (start, start), &mass.start);
        numbering.add_block(&mut matrix, (end, end), &mass.end);
        if start > end {
            numbering.add_block(&mut matrix, (start, end), &mass.cross);
        } else {
            numbering.add_block(&mut matrix, (end, start), &mass.cross.transpose());
        }
    }
    for shell in structure.shells.iter().filter(|shell| shell.wall.density > 0.0) {
        numbering.add_shell(&mut matrix, &shell.nodes, &shell_mass(shell));
    }
    for body in &structure.masses {
        numbering.add_block(&mut matrix, (body.place.node, body.place.node), &body.matrix());
    }
    matrix
}

/// Geometric stiffness of the shells of a stressed structure.
pub(crate) fn geometric_matrix(state: &State, numbering: &Numbering) -> SymmetricMatrix {
    let mut matrix = numbering.empty_matrix(state.structure);
    for shell in &state.structure.shells {
        let motion = shell.gathered(|node| state.motions[node.0]);
        numbering.add_shell(&mut matrix, &shell.nodes, &geometric_stiffness(shell, &motion));
    }
    matrix
}
