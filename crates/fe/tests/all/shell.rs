//! Patch tests and properties of the shell.

use approx::assert_relative_eq;
use axlebow_fe::{
    Attachment, DRILLING, Displacements, Face, FeError, Freedom, Loads, NodeId, ShellId, StaticSystem,
    Structure, Wall, WallForces, assemble_mass, assemble_stiffness, natural_modes,
};
use nalgebra::{DMatrix, Matrix3, Rotation3, Vector3};
use proptest::prelude::*;

/// The patch of R. H. MacNeal & R. L. Harder, Finite Elem. Anal. Des. 1 (1985) 3-20 (from memory): a rectangle of
/// 0.24 × 0.12 of five quadrilaterals; the last four places are inside it.
const PATCH: [[f64; 2]; 8] = [
    [0.0, 0.0],
    [0.24, 0.0],
    [0.24, 0.12],
    [0.0, 0.12],
    [0.04, 0.02],
    [0.18, 0.03],
    [0.16, 0.08],
    [0.08, 0.08],
];
const QUADS: [[usize; 4]; 5] = [[0, 1, 5, 4], [1, 2, 6, 5], [2, 3, 7, 6], [3, 0, 4, 7], [4, 5, 6, 7]];
const INSIDE: usize = 4;
/// Thickness, and the part of the largest value by which rounding may miss it: bending is (t/h)² of stretching, and
/// a turned patch mixes both in every freedom.
const THICKNESSES: [(f64, f64); 3] = [(0.02, 1e-10), (0.01, 1e-10), (0.001, 1e-8)];
/// Strain or curvature of the fields, and so the size of their rotations.
const SIZE: f64 = 1e-3;
const E: f64 = 1e6;
const NU: f64 = 0.25;

/// The patch, turned in space and held at its first place.
struct Patch {
    structure: Structure,
    nodes: Vec<NodeId>,
    shells: Vec<ShellId>,
    turn: Rotation3<f64>,
}

impl Patch {
    fn of(thickness: f64) -> Self {
        let turn = Rotation3::from_euler_angles(0.4, -0.9, 1.3);
        let mut structure = Structure::new();
        let place = |[x, y]: [f64; 2]| -> [f64; 3] { (turn * Vector3::new(x, y, 0.0)).into() };
        let nodes: Vec<_> = PATCH.iter().map(|at| structure.add_node("place", place(*at))).collect();
        let quads = QUADS.map(|quad| quad.map(|i| nodes[i]));
        let shells = structure.add_surface(&quads, &Wall::new(thickness, E, NU)).unwrap();
        structure.hold(nodes[0], &Freedom::ALL);
        Patch { structure, nodes, shells, turn }
    }

    /// Motions of the nodes, turned, one after the other.
    fn motions(&self, field: impl Fn(f64, f64) -> [f64; 6]) -> Vec<f64> {
        let turned = |[x, y]: &[f64; 2]| {
            let [a, b, c, d, e, f] = field(*x, *y);
            let (moved, rotated) = (self.turn * Vector3::new(a, b, c), self.turn * Vector3::new(d, e, f));
            [moved, rotated]
        };
        PATCH.iter().flat_map(turned).flat_map(<[f64; 3]>::from).collect()
    }

    /// Forces on all nodes that hold the patch in a motion.
    fn forces(&self, motions: &[f64]) -> Vec<f64> {
        let stiffness = full_stiffness(&self.structure, &self.nodes, &self.shells);
        (stiffness * nalgebra::DVector::from_column_slice(motions)).as_slice().to_vec()
    }

    /// Solves with the forces of a motion on the outer nodes and none on the inner ones.
    fn solved(&self, forces: &[f64]) -> Displacements {
        let mut loads = Loads::new(&self.structure, 1);
        for (i, node) in self.nodes[..INSIDE].iter().enumerate() {
            let six = &forces[6 * i..6 * i + 6];
            loads.add_force(0, &Attachment::at(*node), [six[0], six[1], six[2]]);
            loads.add_moment(0, &Attachment::at(*node), [six[3], six[4], six[5]]);
        }
        let mut system = StaticSystem::new();
        system.prepare(&self.structure).unwrap();
        system.solve(&self.structure, loads).unwrap()
    }

    /// Greatest component of a force in the wall's own axes over the points of all shells, less an expected tensor.
    fn departure(
        &self,
        of: impl Fn(&WallForces) -> [f64; 3],
        expected: [f64; 3],
        solved: &Displacements,
    ) -> f64 {
        let state = solved.state(&self.structure, 0);
        let points = self.shells.iter().flat_map(|shell| {
            let corners = state.wall_forces_at_corners(*shell);
            state.wall_forces(*shell).into_iter().chain(corners)
        });
        points
            .map(|at| (in_patch_axes(&at, of(&at), &self.turn) - tensor(expected)).amax())
            .fold(0.0, f64::max)
    }
}

/// The stiffness as if nothing were held.
fn full_stiffness(structure: &Structure, nodes: &[NodeId], shells: &[ShellId]) -> DMatrix<f64> {
    let mut free = Structure::new();
    for node in nodes {
        free.add_node("place", structure.position(*node));
    }
    let quads: Vec<_> = shells.iter().map(|shell| structure.shell_nodes(*shell)).collect();
    free.add_surface(&quads, &structure.wall(shells[0])).unwrap();
    dense(&assemble_stiffness(&free))
}

fn dense(matrix: &axlebow_fe::linalg::SymmetricMatrix) -> DMatrix<f64> {
    let order = matrix.order();
    let mut full = DMatrix::zeros(order, order);
    for column in 0..order {
        let (mut unit, mut product) = (vec![0.0; order], vec![0.0; order]);
        unit[column] = 1.0;
        matrix.multiply(&unit, &mut product);
        full.column_mut(column).copy_from_slice(&product);
    }
    full
}

fn tensor([a, b, c]: [f64; 3]) -> Matrix3<f64> {
    Matrix3::new(a, c, 0.0, c, b, 0.0, 0.0, 0.0, 0.0)
}

fn in_patch_axes(at: &WallForces, local: [f64; 3], turn: &Rotation3<f64>) -> Matrix3<f64> {
    let axes = turn.inverse().matrix() * Matrix3::from_columns(&at.axes.map(Vector3::from));
    axes * tensor(local) * axes.transpose()
}

#[test]
fn a_distorted_patch_takes_a_constant_membrane_strain() {
    let field = |x: f64, y: f64| [1e-3 * (x + 0.5 * y), 1e-3 * (y - 0.25 * x), 0.0, 0.0, 0.0, -0.375e-3];
    for (thickness, rounding) in THICKNESSES {
        let patch = Patch::of(thickness);
        let (motions, strain) = (patch.motions(|x, y| held_at_origin(&field, x, y)), [1e-3, 1e-3, 0.25e-3]);
        let solved = patch.solved(&patch.forces(&motions));
        assert_matches_field(&patch, &solved, (&motions, rounding));
        let rate = E * thickness / (1.0 - NU * NU);
        let [a, b, c] = strain;
        let expected = [rate * (a + NU * b), rate * (b + NU * a), rate * 0.5 * (1.0 - NU) * c];
        let departure = patch.departure(|at| at.membrane, expected, &solved);
        assert!(departure < rounding * expected[0], "{thickness}: {departure:e} of {expected:?}");
    }
}

#[test]
fn a_distorted_patch_takes_a_constant_curvature() {
    for (thickness, rounding) in THICKNESSES {
        let patch = Patch::of(thickness);
        let motions = patch.motions(|x, y| {
            let w = 0.5e-3 * (x * x + x * y + y * y);
            [0.0, 0.0, w, 1e-3 * (y + 0.5 * x), -1e-3 * (x + 0.5 * y), 0.0]
        });
        let solved = patch.solved(&patch.forces(&motions));
        assert_matches_field(&patch, &solved, (&motions, rounding));
        // A fiber above the middle shortens where w curves upward: κ = −w''.
        let rate = -E * thickness.powi(3) / (12.0 * (1.0 - NU * NU)) * 1e-3;
        let expected = [rate * (1.0 + NU), rate * (1.0 + NU), rate * 0.5 * (1.0 - NU)];
        let departure = patch.departure(|at| at.bending, expected, &solved);
        assert!(departure < rounding * expected[0].abs(), "{thickness}: {departure:e} of {expected:?}");
    }
}

#[test]
fn a_distorted_patch_takes_a_constant_transverse_shear() {
    let patch = Patch::of(0.02);
    let motions = patch.motions(|x, y| [0.0, 0.0, 1e-3 * (x - 2.0 * y), 0.0, 0.0, 0.0]);
    let forces = patch.forces(&motions);
    // Moments on the inner nodes keep the wall from bending; forces must vanish there.
    let largest = forces.iter().fold(0.0_f64, |a, f| a.max(f.abs()));
    for inner in INSIDE..8 {
        let push = Vector3::from_column_slice(&forces[6 * inner..6 * inner + 3]);
        assert!(push.norm() < 1e-10 * largest, "{push}");
    }
}

/// A field less its rigid motion at the origin, so that nothing moves where the patch is held.
fn held_at_origin(field: &dyn Fn(f64, f64) -> [f64; 6], x: f64, y: f64) -> [f64; 6] {
    let (mut here, origin) = (field(x, y), field(0.0, 0.0));
    here[0] += origin[5] * y;
    here[1] -= origin[5] * x;
    here[5] -= origin[5];
    here
}

fn assert_matches_field(patch: &Patch, solved: &Displacements, (motions, rounding): (&[f64], f64)) {
    for (i, node) in patch.nodes.iter().enumerate() {
        for (found, expected) in solved.of(*node, 0).iter().zip(&motions[6 * i..]) {
            assert!((found - expected).abs() < rounding * SIZE, "{i}: {found} and {expected}");
        }
    }
}

/// One free shell on the given corners.
fn lone(corners: &[[f64; 3]; 4], wall: &Wall) -> (Structure, ShellId) {
    let mut structure = Structure::new();
    let nodes = corners.map(|at| structure.add_node("corner", at));
    let shells = structure.add_surface(&[nodes], wall).unwrap();
    (structure, shells[0])
}

fn quadrilaterals() -> impl Strategy<Value = [[f64; 3]; 4]> {
    prop::array::uniform4(prop::array::uniform3(-0.2..0.2_f64)).prop_map(|shift| {
        let square = [[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 1.0, 0.0], [0.0, 1.0, 0.0]];
        std::array::from_fn(|i| std::array::from_fn(|k| square[i][k] + shift[i][k]))
    })
}

#[test]
fn a_flat_and_a_warped_shell_have_six_free_motions_and_no_more() {
    for lift in [0.0, 0.05, 0.3] {
        let corners = [[0.0, 0.0, lift], [1.0, 0.1, 0.0], [1.2, 0.9, lift], [-0.1, 1.0, 0.0]];
        let (structure, _) = lone(&corners, &Wall::new(0.02, 200e9, 0.3));
        let mut values: Vec<_> =
            dense(&assemble_stiffness(&structure)).symmetric_eigenvalues().iter().copied().collect();
        values.sort_by(f64::total_cmp);
        let largest = values[23];
        assert!(values[..6].iter().all(|value| value.abs() < 1e-13 * largest), "{lift}: {values:?}");
        // The softest strained motion is bending, (t/h)² of stretching, or the rotation about the normal.
        assert!(values[6] > 0.01 * DRILLING * 0.02_f64.powi(2) * largest, "{lift}: {values:?}");
    }
}

proptest! {
    #[test]
    fn a_rigid_motion_strains_no_shell(
        corners in quadrilaterals(),
        shift in prop::array::uniform3(-1.0..1.0_f64),
        spin in prop::array::uniform3(-1.0..1.0_f64),
    ) {
        let (structure, shell) = lone(&corners, &Wall::new(0.03, 200e9, 0.3));
        let stiffness = dense(&assemble_stiffness(&structure));
        let motion = corners.iter().flat_map(|at| {
            let moved = Vector3::from(shift) + Vector3::from(spin).cross(&Vector3::from(*at));
            [moved[0], moved[1], moved[2], spin[0], spin[1], spin[2]]
        });
        let motion = nalgebra::DVector::from_iterator(24, motion);
        prop_assert!((&stiffness * &motion).amax() < 1e-13 * stiffness.amax() * motion.amax());
        prop_assert_eq!(structure.shell_nodes(shell).len(), 4);
    }

    #[test]
    fn a_shell_is_the_same_from_whichever_corner_it_is_counted(corners in quadrilaterals()) {
        let wall = Wall::new(0.05, 200e9, 0.3);
        let first = dense(&assemble_stiffness(&lone(&corners, &wall).0));
        let next = dense(&assemble_stiffness(&lone(&std::array::from_fn(|i| corners[(i + 1) % 4]), &wall).0));
        let moved = DMatrix::from_fn(24, 24, |i, j| first[((i + 6) % 24, (j + 6) % 24)]);
        prop_assert!((next - moved).amax() < 1e-11 * first.amax());
    }

    #[test]
    fn a_turned_shell_is_as_stiff(corners in quadrilaterals(), angles in prop::array::uniform3(-3.0..3.0_f64)) {
        let wall = Wall::new(0.05, 200e9, 0.3);
        let turn = Rotation3::from_euler_angles(angles[0], angles[1], angles[2]);
        let turned = corners.map(|at| (turn * Vector3::from(at)).into());
        let (plain, moved) =
            (dense(&assemble_stiffness(&lone(&corners, &wall).0)), dense(&assemble_stiffness(&lone(&turned, &wall).0)));
        let mut all = DMatrix::zeros(24, 24);
        (0..8).for_each(|i| all.view_mut((3 * i, 3 * i), (3, 3)).copy_from(turn.matrix()));
        prop_assert!((&all * &plain * all.transpose() - &moved).amax() < 1e-11 * plain.amax());
    }

    #[test]
    fn every_motion_but_a_rigid_one_takes_work_and_mass_is_that_of_the_wall(corners in quadrilaterals()) {
        let (structure, _) = lone(&corners, &Wall::new(0.05, 200e9, 0.3).with_density(7850.0));
        let energies = dense(&assemble_stiffness(&structure)).symmetric_eigenvalues();
        prop_assert!(energies.min() > -1e-13 * energies.max());
        let mass = dense(&assemble_mass(&structure));
        for axis in 0..3 {
            let unit = nalgebra::DVector::from_fn(24, |i, _| if i % 6 == axis { 1.0 } else { 0.0 });
            let along = unit.dot(&(&mass * &unit));
            // Upper and lower halves of a curved wall differ by (t/R)².
            prop_assert!((along / structure.mass() - 1.0).abs() < 1e-2, "{} and {}", along, structure.mass());
        }
    }
}

#[test]
fn a_flat_wall_turns_with_its_exact_inertia() {
    let corners = [[-1.0, -0.5, 0.0], [1.0, -0.5, 0.0], [1.0, 0.5, 0.0], [-1.0, 0.5, 0.0]];
    let wall = Wall::new(0.1, 200e9, 0.3).with_density(1000.0);
    let mass = dense(&assemble_mass(&lone(&corners, &wall).0));
    let about = |axis: Vector3<f64>| {
        let motion = corners.iter().flat_map(|at| {
            let moved = axis.cross(&Vector3::from(*at));
            [moved[0], moved[1], moved[2], axis[0], axis[1], axis[2]]
        });
        let motion = nalgebra::DVector::from_iterator(24, motion);
        motion.dot(&(&mass * &motion))
    };
    // A block of 2 × 1 × 0.1 of 200 kg: m·(b² + t²)/12 and so on.
    assert_relative_eq!(about(Vector3::x()), 200.0 * (1.0 + 0.01) / 12.0, max_relative = 1e-12);
    assert_relative_eq!(about(Vector3::y()), 200.0 * (4.0 + 0.01) / 12.0, max_relative = 1e-12);
    assert_relative_eq!(about(Vector3::z()), 200.0 * (4.0 + 1.0) / 12.0, max_relative = 1e-12);
}

/// A square plate of side 1 in the XY plane on simple supports.
fn plate(parts: usize, wall: &Wall) -> (Structure, Vec<ShellId>) {
    let mut structure = Structure::new();
    let wide = parts + 1;
    let nodes: Vec<_> = (0..wide * wide)
        .map(|k| {
            let at = |i: usize| i as f64 / parts as f64;
            structure.add_node("plate", [at(k % wide), at(k / wide), 0.0])
        })
        .collect();
    for (k, node) in nodes.iter().enumerate() {
        let (i, j) = (k % wide, k / wide);
        let mut held = vec![Freedom::Ux, Freedom::Uy, Freedom::Rz];
        if i == 0 || i == parts {
            held.extend([Freedom::Uz, Freedom::Rx]);
        }
        if j == 0 || j == parts {
            held.extend([Freedom::Uz, Freedom::Ry]);
        }
        structure.hold(*node, &held);
    }
    let quads: Vec<_> = (0..parts * parts)
        .map(|k| {
            let first = k / parts * wide + k % parts;
            [first, first + 1, first + wide + 1, first + wide].map(|i| nodes[i])
        })
        .collect();
    let shells = structure.add_surface(&quads, wall).unwrap();
    (structure, shells)
}

#[test]
fn a_supported_plate_sounds_as_the_closed_form_says() {
    // ω = π²·(m² + n²)·√(D/ρt), thin: A. W. Leissa, Vibration of Plates, NASA SP-160, 1969, sec. 4.1 (from memory).
    // Shear and rotary inertia take (π·t)²·(m² + n²)·(1/12 + 1/(5·(1 − ν))) off, 1e-4 here.
    let wall = Wall::new(0.01, 200e9, 0.3).with_density(7850.0);
    let (structure, _) = plate(24, &wall);
    let modes = natural_modes(&structure, 3).unwrap();
    let rigidity = 200e9 * 1e-6 / (12.0 * (1.0 - 0.09));
    let frequency = |sum: f64| std::f64::consts::PI / 2.0 * sum * (rigidity / (7850.0 * 0.01_f64)).sqrt();
    assert_relative_eq!(modes.modes[0].frequency, frequency(2.0), max_relative = 5e-3);
    assert_relative_eq!(modes.modes[1].frequency, frequency(5.0), max_relative = 1.5e-2);
    assert!(modes.is_complete());
}

#[test]
fn loads_on_a_wall_add_up_and_are_carried_to_the_supports() {
    let (structure, shells) = plate(6, &Wall::new(0.01, 200e9, 0.3).with_density(7850.0));
    let mut loads = Loads::new(&structure, 3);
    for shell in &shells {
        loads.add_pressure(&structure, 0, *shell, 1000.0);
        loads.add_area_load(&structure, 1, *shell, [0.0, 0.0, 1000.0]);
    }
    loads.add_gravity(&structure, 2, [0.0, 0.0, -9.81]);
    let mut system = StaticSystem::new();
    system.prepare(&structure).unwrap();
    let solved = system.solve(&structure, loads).unwrap();
    for (column, total) in [(0, 1000.0), (1, 1000.0), (2, -9.81 * 78.5)] {
        let state = solved.state(&structure, column);
        let reaction: f64 = structure.nodes().map(|node| state.reaction(node)[2]).sum();
        assert_relative_eq!(reaction, -total, max_relative = 1e-9);
        assert!(state.equilibrium_residual() < 1e-8);
    }
}

#[test]
fn stresses_on_the_faces_of_a_bent_wall_are_opposite() {
    let forces = WallForces {
        axes: [[0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0]],
        membrane: [0.0; 3],
        bending: [1.0, 0.0, 0.0],
        shear: [0.0; 2],
        thickness: 0.1,
    };
    assert_relative_eq!(forces.stress(Face::Upper)[0], 600.0, max_relative = 1e-12);
    assert_relative_eq!(forces.stress_tensor(Face::Lower)[1][1], -600.0, max_relative = 1e-12);
    assert_relative_eq!(forces.von_mises(Face::Lower), 600.0, max_relative = 1e-12);
    assert_relative_eq!(forces.principal(Face::Lower)[1], -600.0, max_relative = 1e-12);
}

#[test]
fn impossible_walls_and_quadrilaterals_are_refused() {
    let mut structure = Structure::new();
    let square = [[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 1.0, 0.0], [0.0, 1.0, 0.0]];
    let nodes = square.map(|at| structure.add_node("seat edge", at));
    let dent = structure.add_node("dent", [0.2, 0.2, 0.0]);
    for (wall, what) in [
        (Wall::new(0.0, 1.0, 0.3), "thickness of the wall is 0"),
        (Wall::new(f64::NAN, 1.0, 0.3), "thickness of the wall is NaN"),
        (Wall::new(1.0, -1.0, 0.3), "elastic modulus of the wall is -1"),
        (Wall::new(1.0, 1.0, 0.5), "Poisson's ratio of the wall is 0.5"),
        (Wall::new(1.0, 1.0, 0.3).with_density(-1.0), "density of the wall is -1"),
    ] {
        let message = structure.add_surface(&[nodes], &wall).unwrap_err().to_string();
        assert!(message.starts_with(what), "{message}");
    }
    let wall = Wall::new(0.1, 1.0, 0.3);
    let dented = [nodes[0], nodes[1], dent, nodes[3]];
    let refused = structure.add_surface(&[dented], &wall).unwrap_err();
    assert!(matches!(&refused, FeError::ImpossibleQuadrilateral { .. }), "{refused}");
    let far = [[2.0, 0.0, 0.0], [2.0, 1.0, 0.0]].map(|at| structure.add_node("far", at));
    let reversed = [nodes[1], nodes[2], far[1], far[0]];
    let refused = structure.add_surface(&[nodes, reversed], &wall).unwrap_err().to_string();
    assert!(refused.contains("the other way round"), "{refused}");
}
