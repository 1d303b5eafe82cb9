//! Mass and natural modes: rigid motions, textbook roots, convergence, agreement of the two methods and
//! what holds for every structure.

use std::f64::consts::TAU;

use crate::chain::{Built, Chain, chains};
use axlebow_fe::linalg::{EigenMethod, SymmetricMatrix};
use axlebow_fe::{
    Attachment, Beam, FeError, Flexibility, Freedom, LumpedMass, Modes, NodeId, RigidBody, Rigidity, Spring,
    Structure, assemble_mass, natural_modes, natural_modes_by,
};
use nalgebra::{DMatrix, Matrix3, Rotation3, Vector3};
use proptest::prelude::*;

const RIGID: f64 = f64::INFINITY;
/// A tube of 127 by 12.7 mm of an invented steel.
const TUBE: Rigidity = Rigidity {
    axial: 9.120_734_62e8,
    torsion: 1.159_892_6e6,
    bending_2: 1.507_860_37e6,
    bending_3: 1.507_860_37e6,
    shear_2: 1.898_116e8,
    shear_3: 1.898_116e8,
};
const MASS: f64 = 35.8;
const INERTIA: [f64; 3] = [0.118_4, 0.059_2, 0.059_2];

/// Equal elements along Y.
fn line(
    elements: usize,
    length: f64,
    element: impl Fn(NodeId, NodeId, f64) -> Beam,
) -> (Structure, Vec<NodeId>) {
    let mut structure = Structure::new();
    let l = length / elements as f64;
    let place = |i: usize| [0.0, i as f64 * l, 0.0];
    let nodes: Vec<_> = (0..=elements).map(|i| structure.add_node(format!("{i}"), place(i))).collect();
    for pair in nodes.windows(2) {
        structure.add_beam(element(pair[0], pair[1], l)).unwrap();
    }
    (structure, nodes)
}

fn tube(elements: usize) -> (Structure, Vec<NodeId>) {
    line(elements, 1.8, |start, end, l| {
        let beam = Beam::between(start, end, [0.0, 0.0, 1.0], Flexibility::uniform(l, &TUBE));
        beam.with_mass(MASS).with_inertia(INERTIA)
    })
}

fn slender(start: NodeId, end: NodeId, l: f64) -> Beam {
    let rigidity = Rigidity { shear_2: RIGID, shear_3: RIGID, bending_2: 4.0 * TUBE.bending_2, ..TUBE };
    Beam::between(start, end, [0.0, 0.0, 1.0], Flexibility::uniform(l, &rigidity)).with_mass(MASS)
}

/// An axle with wheels, seats and tires, its left side not its right.
fn axle(elements: usize) -> Structure {
    let (mut structure, nodes) = tube(elements);
    let end = elements;
    for (node, mass, arm) in [(0, 190.0, [0.0, -0.1, 0.0]), (end, 140.0, [0.02, 0.08, 0.0])] {
        let wheel = Attachment::on_arm(nodes[node], arm);
        structure.add_mass(RigidBody::with_moments(wheel, mass, [8.0, 14.0, 8.0]));
        let tire = [2e5, 3e5, 1.6e6, 0.0, 0.0, 0.0];
        structure
            .add_spring(Spring::to_ground(Attachment::on_arm(nodes[node], [0.0, 0.0, -0.5]), tire))
            .unwrap();
    }
    for (node, share) in [(end / 4, 1.0), (3 * end / 4, 0.8)] {
        let seat = [3e6, 2e6, 9e5, 4e4, 2e4, 3e4].map(|rate| share * rate);
        structure
            .add_spring(Spring::to_ground(Attachment::on_arm(nodes[node], [0.0, 0.0, 0.1]), seat))
            .unwrap();
    }
    structure
}

fn full(matrix: &SymmetricMatrix) -> DMatrix<f64> {
    let n = matrix.order();
    let mut full = DMatrix::zeros(n, n);
    for column in 0..n {
        let mut unit = vec![0.0; n];
        unit[column] = 1.0;
        let mut product = vec![0.0; n];
        matrix.multiply(&unit, &mut product);
        full.set_column(column, &nalgebra::DVector::from_vec(product));
    }
    full
}

/// Columns: the six rigid motions about the origin.
fn rigid_motions(structure: &Structure) -> DMatrix<f64> {
    let mut motions = DMatrix::zeros(6 * structure.node_count(), 6);
    for (node, id) in structure.nodes().enumerate() {
        let place = Vector3::from(structure.position(id));
        for axis in 0..3 {
            let direction = Vector3::ith(axis, 1.0);
            motions[(6 * node + axis, axis)] = 1.0;
            motions[(6 * node + 3 + axis, 3 + axis)] = 1.0;
            motions.view_mut((6 * node, 3 + axis), (3, 1)).copy_from(&direction.cross(&place));
        }
    }
    motions
}

/// Mass, mass times the place of its center, and inertia about the origin.
struct Body {
    mass: f64,
    first: Vector3<f64>,
    inertia: Matrix3<f64>,
}

impl Body {
    fn add(&mut self, mass: f64, place: Vector3<f64>, own: Matrix3<f64>) {
        self.mass += mass;
        self.first += mass * place;
        self.inertia += own + mass * (Matrix3::identity() * place.norm_squared() - place * place.transpose());
    }

    /// What its six momenta are under the six rigid motions.
    fn matrix(&self) -> DMatrix<f64> {
        let mut matrix = DMatrix::zeros(6, 6);
        let moment = self.first.cross_matrix();
        matrix.view_mut((0, 0), (3, 3)).copy_from(&(Matrix3::identity() * self.mass));
        matrix.view_mut((0, 3), (3, 3)).copy_from(&-moment);
        matrix.view_mut((3, 0), (3, 3)).copy_from(&moment);
        matrix.view_mut((3, 3), (3, 3)).copy_from(&self.inertia);
        matrix
    }
}

/// A chain whose beams have rotary inertia, with the rigid body that it makes.
fn heavy(chain: &Chain) -> (Structure, Body) {
    let (mut structure, nodes) = (Structure::new(), chain.built(&Rotation3::identity()));
    let ids: Vec<_> =
        nodes.nodes.iter().map(|id| structure.add_node("place", nodes.structure.position(*id))).collect();
    let mut body = Body { mass: 0.0, first: Vector3::zeros(), inertia: Matrix3::zeros() };
    for (number, piece) in chain.pieces.iter().enumerate() {
        let rotary = [0.004, 0.001, 0.003].map(|share| share * piece.mass_per_length);
        let flexibility = Flexibility::uniform(piece.length(), &piece.rigidity);
        let mut beam = Beam::between(ids[number], ids[number + 1], piece.up, flexibility);
        (beam.start.arm, beam.end.arm) = (piece.start_arm, piece.end_arm);
        structure.add_beam(beam.with_mass(piece.mass_per_length).with_inertia(rotary)).unwrap();
        let (along, start) =
            (Vector3::from(piece.along), nodes.position(number) + Vector3::from(piece.start_arm));
        let first = along.normalize();
        let up = Vector3::from(piece.up);
        let second = (up - first * first.dot(&up)).normalize();
        let axes = Matrix3::from_columns(&[first, second, first.cross(&second)]);
        let mass = piece.mass_per_length * piece.length();
        let slender =
            (Matrix3::identity() - first * first.transpose()) * mass * piece.length().powi(2) / 12.0;
        let own = axes * Matrix3::from_diagonal(&Vector3::from(rotary)) * axes.transpose() * piece.length();
        body.add(mass, start + 0.5 * along, slender + own);
        let inertia =
            [[3.0, -0.4, 0.2], [-0.4, 2.0, 0.1], [0.2, 0.1, 4.0]].map(|row| row.map(|j| j * piece.lump));
        let place = Attachment::on_arm(ids[number + 1], piece.start_arm);
        structure.add_mass(RigidBody { place, mass: piece.lump, inertia });
        let center = nodes.position(number + 1) + Vector3::from(piece.start_arm);
        body.add(piece.lump, center, Matrix3::from_fn(|i, j| inertia[i][j]));
    }
    (structure, body)
}

fn assert_relative(ours: f64, expected: f64, share: f64) {
    assert!((ours - expected).abs() <= share * expected.abs(), "ours {ours:e}, expected {expected:e}");
}

/// `βL = √(ω L² √(m/(E I)))` of bending about axis 3 alone.
fn root(structure: &mut Structure, nodes: &[NodeId], mode: usize) -> f64 {
    for node in nodes {
        structure.hold(*node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
    }
    let modes = natural_modes(structure, mode + 1).unwrap();
    assert!(modes.is_complete());
    let l = 2.0_f64;
    (TAU * modes.modes[mode].frequency * l * l * (MASS / TUBE.bending_3).sqrt()).sqrt()
}

/// R. D. Blevins 2016, Table 4.2; from memory, recomputed.
#[test]
fn roots_of_beams_are_met_to_1e_6_by_a_hundred_elements() {
    let cantilever = [1.875_104_07, 4.694_091_13, 7.854_757_44, 10.995_540_73, 14.137_168_39];
    let free = [4.730_040_74, 7.853_204_62, 10.995_607_84, 14.137_165_49, 17.278_759_66];
    for mode in 0..5 {
        let (mut structure, nodes) = line(100, 2.0, slender);
        assert_relative(root(&mut structure, &nodes, mode + 2), free[mode], 1e-6);
        structure.hold(nodes[0], &Freedom::ALL);
        assert_relative(root(&mut structure, &nodes, mode), cantilever[mode], 1e-6);
    }
}

/// Errors of the third supported frequency on meshes each twice as fine as the last, and the orders between.
fn observed_orders(rigidity: Rigidity, rotary: f64, exact: f64) -> Vec<f64> {
    let error = |elements: usize| {
        let (mut structure, nodes) = line(elements, 1.2, |start, end, l| {
            let beam = Beam::between(start, end, [0.0, 0.0, 1.0], Flexibility::uniform(l, &rigidity));
            beam.with_mass(MASS).with_inertia([2.0 * rotary, rotary, rotary])
        });
        for node in &nodes {
            structure.hold(*node, &[Freedom::Ux, Freedom::Uy, Freedom::Ry, Freedom::Rz]);
        }
        structure.hold(nodes[0], &[Freedom::Uz]);
        structure.hold(nodes[elements], &[Freedom::Uz]);
        natural_modes(&structure, 3).unwrap().modes[2].frequency / exact - 1.0
    };
    let errors: Vec<f64> = [8, 16, 32, 64].map(error).into();
    errors.windows(2).map(|pair| (pair[0] / pair[1]).log2()).collect()
}

/// Without shear the error is (βh)⁴/1440, of order 4. With shear, which is constant in an element, that part of
/// the energy converges with order 2, as linear elements of a shear beam do.
#[test]
fn frequencies_converge_with_order_four_without_and_two_with_shear() {
    let (k, ei) = (3.0 * std::f64::consts::PI / 1.2, TUBE.bending_3);
    let slender = Rigidity { shear_2: RIGID, shear_3: RIGID, ..TUBE };
    let orders = observed_orders(slender, 0.0, k * k * (ei / MASS).sqrt() / TAU);
    assert!(orders.iter().all(|order| (order - 4.0).abs() < 0.1), "{orders:?}");
    // Timoshenko, Young & Weaver 1974, art. 5.12: ρA·ρI/κGA ω⁴ − (ρA + (ρI + ρA·EI/κGA)k²) ω² + EI k⁴ = 0.
    let (a, rotary) = (TUBE.shear_2, INERTIA[2]);
    let (quadratic, linear) = (MASS * rotary / a, MASS + (rotary + MASS * ei / a) * k * k);
    let square =
        2.0 * ei * k.powi(4) / (linear + (linear * linear - 4.0 * quadratic * ei * k.powi(4)).sqrt());
    let orders = observed_orders(TUBE, rotary, square.sqrt() / TAU);
    assert!(orders.iter().all(|order| (order - 2.0).abs() < 0.1), "{orders:?}");
}

#[test]
fn a_free_structure_has_exactly_six_modes_of_frequency_zero() {
    for elements in [3, 60] {
        let (structure, _) = tube(elements);
        let modes = natural_modes(&structure, 10).unwrap();
        let frequencies = modes.frequencies();
        assert!(modes.is_complete());
        assert!(frequencies[..6].iter().all(|f| *f == 0.0), "{frequencies:?}");
        assert!(frequencies[6] > 100.0, "{frequencies:?}");
        // The round tube bends alike in both planes.
        assert_relative(frequencies[7], frequencies[6], 1e-9);
    }
}

#[test]
fn lanczos_and_the_dense_solution_agree() {
    let (free, _) = tube(24);
    for structure in [axle(24), free] {
        let lanczos = natural_modes_by(&structure, 14, EigenMethod::Lanczos).unwrap();
        let dense = natural_modes_by(&structure, 14, EigenMethod::Dense).unwrap();
        assert!(lanczos.is_complete() && dense.is_complete());
        for (a, b) in lanczos.modes.iter().zip(&dense.modes) {
            assert!(
                (a.frequency - b.frequency).abs() <= 1e-8 * b.frequency,
                "{} {}",
                a.frequency,
                b.frequency
            );
            assert!(a.residual < 1e-8 && b.residual < 1e-8, "{} {} {}", a.frequency, a.residual, b.residual);
        }
    }
}

#[test]
fn shapes_have_unit_mass_and_are_orthogonal() {
    let structure = axle(30);
    let modes = natural_modes(&structure, 10).unwrap();
    let mass = full(&assemble_mass(&structure));
    let shape = |i: usize| {
        let motions: Vec<f64> = structure.nodes().flat_map(|node| modes.modes[i].motion(node)).collect();
        nalgebra::DVector::from_vec(motions)
    };
    for i in 0..10 {
        for j in 0..=i {
            let expected = f64::from(u8::from(i == j));
            assert!((shape(i).dot(&(&mass * shape(j))) - expected).abs() < 1e-8, "{i} {j}");
        }
    }
}

#[test]
fn energies_of_members_and_of_nodes_make_the_whole() {
    let mut structure = Structure::new();
    let places = [[0.0, 0.0, 0.0], [0.0, 0.7, 0.0], [0.3, 1.1, 0.1], [0.0, 1.6, 0.0]];
    let nodes = places.map(|place| structure.add_node("place", place));
    let beams = [(0, 1), (1, 2), (2, 3)].map(|(start, end)| {
        let length = (Vector3::from(places[end]) - Vector3::from(places[start])).norm();
        let flexibility = Flexibility::uniform(length, &TUBE);
        let beam = Beam::between(nodes[start], nodes[end], [0.0, 0.0, 1.0], flexibility);
        structure.add_beam(beam.with_mass(MASS).with_inertia(INERTIA)).unwrap()
    });
    structure.hold(nodes[0], &Freedom::ALL);
    let spring = structure.add_spring(Spring::to_ground(Attachment::at(nodes[3]), [1e6; 6])).unwrap();
    let modes = natural_modes(&structure, 8).unwrap();
    for mode in &modes.modes {
        let kinetic: f64 = nodes.iter().flat_map(|node| mode.kinetic_share(*node)).sum();
        assert_relative(kinetic, 1.0, 1e-9);
        let strain: f64 = beams.iter().map(|beam| mode.strain_share_of_beam(&structure, *beam)).sum();
        assert_relative(strain + mode.strain_share_of_spring(&structure, spring), 1.0, 1e-8);
        assert!(mode.modal_mass() > 0.0 && mode.residual < 1e-8);
    }
}

/// A wheel of 40 kg on a spring of 1 MN/m beside five meters of nothing: the kinetic energy is all the wheel's.
#[test]
fn a_wheel_on_its_spring_has_all_the_energy_and_its_own_mass() {
    let mut structure = Structure::new();
    let wheel = structure.add_node("wheel", [0.0; 3]);
    let rates = [2e6, 3e6, 1e6, 1e4, 1e4, 1e4];
    let spring = structure.add_spring(Spring::to_ground(Attachment::at(wheel), rates)).unwrap();
    structure.add_mass(RigidBody::with_moments(Attachment::at(wheel), 40.0, [0.1; 3]));
    let modes = natural_modes(&structure, 1).unwrap();
    let mode = &modes.modes[0];
    assert_relative(mode.frequency, (1e6_f64 / 40.0).sqrt() / TAU, 1e-12);
    assert_relative(mode.kinetic_share(wheel)[2], 1.0, 1e-12);
    assert_relative(mode.strain_share_of_spring(&structure, spring), 1.0, 1e-12);
    assert_relative(mode.modal_mass(), 40.0, 1e-12);
}

#[test]
fn freedoms_without_mass_take_part_but_have_no_mode_of_their_own() {
    let mut structure = Structure::new();
    let (root, tip) = (structure.add_node("root", [0.0; 3]), structure.add_node("tip", [0.0, 1.0, 0.0]));
    let beam = Beam::between(root, tip, [0.0, 0.0, 1.0], Flexibility::uniform(1.0, &TUBE));
    structure.add_beam(beam).unwrap();
    structure.hold(root, &Freedom::ALL);
    structure.add_mass(LumpedMass { place: Attachment::at(tip), mass: 25.0 });
    let modes = natural_modes(&structure, 6).unwrap();
    assert_eq!(modes.modes.len(), 3);
    assert!(modes.is_complete());
    let rate = 1.0 / (1.0 / (3.0 * TUBE.bending_3) + 1.0 / TUBE.shear_2);
    assert_relative(modes.modes[0].frequency, (rate / 25.0).sqrt() / TAU, 1e-10);
    assert_relative(modes.modes[2].frequency, (TUBE.axial / 25.0).sqrt() / TAU, 1e-10);
}

#[test]
fn nothing_to_shake_has_no_modes() {
    assert!(natural_modes(&Structure::new(), 4).unwrap().modes.is_empty());
    let (mut structure, nodes) = tube(3);
    assert!(natural_modes(&structure, 0).unwrap().modes.is_empty());
    nodes.iter().for_each(|node| structure.hold(*node, &Freedom::ALL));
    assert!(natural_modes(&structure, 4).unwrap().modes.is_empty());
}

#[test]
fn a_motion_without_stiffness_and_mass_is_refused_by_name() {
    let (mut structure, nodes) = tube(3);
    let hub = structure.add_node("hub", [0.0, 2.0, 0.0]);
    let spring =
        Spring::between(Attachment::at(hub), Attachment::at(nodes[3]), [1e6, 1e6, 1e6, 1e5, 0.0, 1e5]);
    structure.add_spring(spring).unwrap();
    let error = natural_modes(&structure, 4).unwrap_err();
    assert_eq!(error, FeError::Unsupported { station: "hub".into(), freedom: Freedom::Ry });
}

#[test]
fn impossible_masses_are_refused_by_name() {
    for (mass, moments) in
        [(-1.0, [0.0; 3]), (f64::NAN, [0.0; 3]), (1.0, [1.0, -0.5, 1.0]), (1.0, [f64::INFINITY, 1.0, 1.0])]
    {
        let (mut structure, nodes) = tube(3);
        structure.add_mass(RigidBody::with_moments(Attachment::at(nodes[2]), mass, moments));
        let error = natural_modes(&structure, 4).unwrap_err();
        assert!(matches!(&error, FeError::ImpossibleMass { station, .. } if station == "2"), "{error}");
    }
}

/// Springs from every node to a far one make the band too wide for the band kernel.
#[test]
fn a_structure_without_a_narrow_band_has_the_same_modes() {
    let [narrow, wide] = [0.0, 1e-30].map(|rate| {
        let mut structure = axle(30);
        let nodes: Vec<_> = structure.nodes().collect();
        if rate > 0.0 {
            let spring = Spring::between(Attachment::at(nodes[0]), Attachment::at(nodes[28]), [rate; 6]);
            structure.add_spring(spring).unwrap();
        }
        natural_modes(&structure, 10).unwrap()
    });
    assert!(wide.is_complete());
    for (a, b) in narrow.frequencies().iter().zip(wide.frequencies()) {
        assert_relative(b, *a, 1e-9);
    }
}

/// A node of the one is that of the other, counted from the other end and mirrored in the X-Z plane.
#[test]
fn a_mirrored_structure_has_mirrored_shapes() {
    let [given, mirrored] = [1.0, -1.0].map(|side| {
        let mut structure = Structure::new();
        let place = |i: usize| [0.0, side * 0.15 * i as f64, 0.0];
        let nodes: Vec<_> = (0..12).map(|i| structure.add_node("place", place(i))).collect();
        for (i, pair) in nodes.windows(2).enumerate() {
            let stiffer = 1.0 + 0.2 * i as f64;
            let rigidity = Rigidity { bending_2: stiffer * TUBE.bending_2, ..TUBE };
            let beam =
                Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], Flexibility::uniform(0.15, &rigidity));
            structure.add_beam(beam.with_mass(MASS).with_inertia(INERTIA)).unwrap();
        }
        let wheel = Attachment::on_arm(nodes[11], [0.05, side * 0.1, 0.02]);
        structure.add_mass(LumpedMass { place: wheel, mass: 60.0 });
        structure.hold(nodes[0], &Freedom::ALL);
        (natural_modes(&structure, 8).unwrap(), nodes)
    });
    for (a, b) in given.0.modes.iter().zip(&mirrored.0.modes) {
        assert_relative(b.frequency, a.frequency, 1e-9);
        let reflect = |node: usize| {
            let [x, y, z, rx, ry, rz] = b.motion(mirrored.1[node]);
            [x, -y, z, -rx, ry, -rz]
        };
        let pairs: Vec<(f64, f64)> =
            (0..12).flat_map(|i| a.motion(given.1[i]).into_iter().zip(reflect(i))).collect();
        let (along, own) = pairs.iter().fold((0.0, 0.0), |(s, t), (a, b)| (s + a * b, t + a * a));
        let sign = f64::signum(along);
        assert!(pairs.iter().all(|(a, b)| (a - sign * b).abs() < 1e-6 * f64::sqrt(own)), "{}", a.frequency);
    }
}

/// The chain on its first node, and its modes.
fn held_modes(chain: &Chain, turn: &Rotation3<f64>, change: impl Fn(&mut Built)) -> Modes {
    let mut built = chain.built(turn);
    built.hold(0);
    change(&mut built);
    let tip = built.nodes[built.nodes.len() - 1];
    built.structure.add_mass(LumpedMass { place: Attachment::at(tip), mass: 1.0 });
    let modes = natural_modes(&built.structure, 6).unwrap();
    assert!(modes.is_complete());
    modes
}

fn turns() -> impl Strategy<Value = Rotation3<f64>> {
    prop::array::uniform3(-3.0..3.0_f64).prop_map(|axis| Rotation3::new(Vector3::from(axis)))
}

/// Part of a frequency that rounding may disturb: stiffnesses span up to five decades and λ is a square.
const ROUNDING: f64 = 1e-7;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Total mass, first and second moments of mass: the mass of the six rigid motions is that of the body.
    #[test]
    fn rigid_motions_have_the_mass_of_the_rigid_body(chain in chains()) {
        let (structure, body) = heavy(&chain);
        let motions = rigid_motions(&structure);
        let mass = motions.transpose() * full(&assemble_mass(&structure)) * motions;
        let expected = body.matrix();
        prop_assert!((&mass - &expected).amax() <= 1e-12 * expected.amax(), "{mass} {expected}");
    }

    /// Also where Lanczos runs out of vectors, and where nothing but some springs holds the chain.
    #[test]
    fn both_methods_agree_on_every_chain(chain in chains(), held in any::<bool>(), count in 1..16_usize) {
        let mut built = chain.built(&Rotation3::identity());
        if held {
            built.hold(0);
        }
        let tip = built.nodes[built.nodes.len() - 1];
        built.structure.add_mass(RigidBody::with_moments(Attachment::at(tip), 1.0, [0.1; 3]));
        let [lanczos, dense] = [EigenMethod::Lanczos, EigenMethod::Dense]
            .map(|method| natural_modes_by(&built.structure, count, method).unwrap());
        prop_assert!(lanczos.is_complete() && dense.is_complete());
        // Asked for every mode of few freedoms, one method may take the stiffest for a motion without mass:
        // its 1/ω² is then at the rounding of the softest one's.
        let order = 6 * (built.structure.node_count() - usize::from(held));
        let spare = usize::from(count >= order - 1);
        prop_assert!(lanczos.modes.len().abs_diff(dense.modes.len()) <= spare);
        // An ω² is known to the rounding of the greatest one, some hundred operations of 2.2e-16 each (a
        // thousand are allowed), so that a rigid motion may come out with √(1000·2.2e-16) of the highest
        // frequency.
        let all = natural_modes_by(&built.structure, order, EigenMethod::Dense).unwrap();
        let floor = (1000.0 * f64::EPSILON).sqrt() * all.frequencies().last().unwrap();
        for (a, b) in lanczos.modes.iter().zip(&dense.modes) {
            let allowed = ROUNDING * b.frequency + floor;
            prop_assert!((a.frequency - b.frequency).abs() <= allowed, "{} {}", a.frequency, b.frequency);
            prop_assert!(a.residual < 1e-5, "{} {}", a.frequency, a.residual);
        }
    }

    #[test]
    fn frequencies_do_not_change_when_everything_turns(chain in chains(), turn in turns()) {
        let still = held_modes(&chain, &Rotation3::identity(), |_| {});
        let turned = held_modes(&chain, &turn, |_| {});
        for (a, b) in still.frequencies().iter().zip(turned.frequencies()) {
            prop_assert!((a - b).abs() <= ROUNDING * a);
        }
    }

    /// Rayleigh's theorem (Lord Rayleigh, The Theory of Sound, 1877, § 88; from memory).
    #[test]
    fn stiffness_raises_and_mass_lowers_every_frequency(
        chain in chains(), pick in 0.0..1.0_f64, rates in prop::array::uniform6(0.0..1e7_f64),
    ) {
        let node = |built: &Built| 1 + (pick * (built.nodes.len() - 1) as f64) as usize;
        let still = Rotation3::identity();
        let given = held_modes(&chain, &still, |_| {}).frequencies();
        let stiffer = held_modes(&chain, &still, |built| built.add_ground(node(built), rates)).frequencies();
        let heavier = held_modes(&chain, &still, |built| {
            let place = Attachment::on_arm(built.nodes[node(built)], [0.1, 0.0, 0.2]);
            built.structure.add_mass(LumpedMass { place, mass: 30.0 });
        });
        for (i, (given, heavier)) in given.iter().zip(heavier.frequencies()).enumerate() {
            prop_assert!(stiffer[i] >= given * (1.0 - ROUNDING));
            prop_assert!(heavier <= given * (1.0 + ROUNDING));
        }
    }

    /// One spring in one direction moves no frequency past the next (Courant & Hilbert, Methods of Mathematical
    /// Physics, vol. 1, 1953, ch. I § 4; from memory).
    #[test]
    fn one_spring_moves_no_frequency_past_the_next(chain in chains(), rate in 1e3..1e8_f64, axis in 0..6_usize) {
        let still = Rotation3::identity();
        let given = held_modes(&chain, &still, |_| {}).frequencies();
        let mut rates = [0.0; 6];
        rates[axis] = rate;
        let stiffer = held_modes(&chain, &still, |built| built.add_ground(1, rates)).frequencies();
        for i in 1..given.len().min(stiffer.len()) {
            prop_assert!(stiffer[i - 1] <= given[i] * (1.0 + ROUNDING));
        }
    }
}
