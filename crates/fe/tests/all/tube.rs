//! A long tube of shells beside the Timoshenko beam of the same tube, and shells with other members.

use std::f64::consts::{PI, TAU};

use approx::assert_relative_eq;
use axlebow_fe::{
    Attachment, Beam, Face, Flexibility, Freedom, Loads, NodeId, Rigidity, ShellId, Spring, StaticSystem,
    Structure, Wall, natural_modes,
};

const E: f64 = 205e9;
const NU: f64 = 0.29;
const LENGTH: f64 = 2.4;
const FORCE: f64 = 1000.0;

/// A round tube along Y, clamped at its start.
struct Tube {
    structure: Structure,
    /// Nodes of each ring.
    rings: Vec<Vec<NodeId>>,
    shells: Vec<ShellId>,
    radius: f64,
}

impl Tube {
    fn new(outer_diameter: f64, thickness: f64, (round, along): (usize, usize)) -> Self {
        let (mut structure, radius) = (Structure::new(), 0.5 * (outer_diameter - thickness));
        let radial = |i: usize| {
            let angle = TAU * i as f64 / round as f64;
            [angle.sin(), 0.0, angle.cos()]
        };
        let ring = |j: usize, structure: &mut Structure| -> Vec<NodeId> {
            let y = LENGTH * j as f64 / along as f64;
            let place = |i: usize| [radius * radial(i)[0], y, radius * radial(i)[2]];
            (0..round).map(|i| structure.add_node(format!("ring {j}"), place(i))).collect()
        };
        let rings: Vec<_> = (0..=along).map(|j| ring(j, &mut structure)).collect();
        let quad = |k: usize| {
            let (i, j) = (k % round, k / round);
            let next = (i + 1) % round;
            [rings[j][i], rings[j][next], rings[j + 1][next], rings[j + 1][i]]
        };
        let quads: Vec<_> = (0..round * along).map(quad).collect();
        let wall = Wall::new(thickness, E, NU).with_density(7850.0);
        let shells =
            structure.add_surface_facing(&quads, &wall, |node| radial(node.index() % round)).unwrap();
        rings[0].iter().for_each(|node| structure.hold(*node, &Freedom::ALL));
        Tube { structure, rings, shells, radius }
    }

    /// Deflection and slope of a ring along and in the plane of Z: mean of uz, and uy on z.
    fn section_motion(&self, ring: usize, motion: impl Fn(NodeId) -> [f64; 6]) -> [f64; 2] {
        let nodes = &self.rings[ring];
        let count = nodes.len() as f64;
        let deflection = nodes.iter().map(|node| motion(*node)[2]).sum::<f64>() / count;
        let turned =
            nodes.iter().map(|node| self.structure.position(*node)[2] * motion(*node)[1]).sum::<f64>();
        [deflection, -turned / (0.5 * count * self.radius * self.radius)]
    }
}

/// Area, second moment and Cowper's shear coefficient (J. Appl. Mech. 33 (1966) 335-340) of a round tube.
fn section(outer: f64, thickness: f64) -> (f64, f64, f64) {
    let inner = outer - 2.0 * thickness;
    let m2 = (inner / outer).powi(2);
    let square = (1.0 + m2).powi(2);
    let coefficient = 6.0 * (1.0 + NU) * square / ((7.0 + 6.0 * NU) * square + (20.0 + 12.0 * NU) * m2);
    let area = 0.25 * PI * (outer.powi(2) - inner.powi(2));
    (area, PI / 64.0 * (outer.powi(4) - inner.powi(4)), coefficient)
}

#[test]
fn a_long_tube_of_shells_bends_as_a_timoshenko_beam() {
    for (outer, thickness) in [(0.127, 0.0127), (0.1524, 0.009), (0.127, 0.003)] {
        let tube = Tube::new(outer, thickness, (40, 32));
        let last = tube.rings.len() - 1;
        let mut loads = Loads::new(&tube.structure, 1);
        let share = FORCE / tube.rings[last].len() as f64;
        for node in &tube.rings[last] {
            // Shear flows as z² grows round the tube: 2·sin² of the clock position from the top.
            let sin = tube.structure.position(*node)[0] / tube.radius;
            loads.add_force(0, &Attachment::at(*node), [0.0, 0.0, 2.0 * share * sin * sin]);
        }
        let mut system = StaticSystem::new();
        system.prepare(&tube.structure).unwrap();
        let solved = system.solve(&tube.structure, loads).unwrap();
        let (area, second_moment, coefficient) = section(outer, thickness);
        let (ei, kga) = (E * second_moment, coefficient * E / (2.0 * (1.0 + NU)) * area);
        let beam = |y: f64| {
            let bending = FORCE * y * y * (3.0 * LENGTH - y) / (6.0 * ei);
            [bending + FORCE * y / kga, FORCE * y * (2.0 * LENGTH - y) / (2.0 * ei)]
        };
        let shells = |ring: usize| tube.section_motion(ring, |node| solved.of(node, 0));
        let (first, second) = (last / 4, 3 * last / 4);
        let y = |ring: usize| LENGTH * ring as f64 / last as f64;
        let found = shells(second)[1] - shells(first)[1];
        let expected = beam(y(second))[1] - beam(y(first))[1];
        println!(
            "{outer} × {thickness}: slope {:.5}, tip {:.5}",
            found / expected,
            shells(last)[0] / beam(LENGTH)[0]
        );
        assert_relative_eq!(found, expected, max_relative = 0.01);
        assert_relative_eq!(shells(last)[0], beam(LENGTH)[0], max_relative = 0.01);
        // Fiber stress half-way, on the outer face of the top.
        let state = solved.state(&tube.structure, 0);
        let stress = state.face_stress(&tube.shells, Face::Upper)[&tube.rings[last / 2][0]][1][1];
        let fiber = -FORCE * 0.5 * LENGTH * 0.5 * outer / second_moment;
        assert_relative_eq!(stress, fiber, max_relative = 0.02);
    }
}

#[test]
fn a_tube_of_shells_twists_and_weighs_as_a_tube() {
    let tube = Tube::new(0.127, 0.0127, (40, 24));
    let last = tube.rings.len() - 1;
    let mut loads = Loads::new(&tube.structure, 1);
    let share = 1000.0 / (tube.rings[last].len() as f64 * tube.radius);
    for node in &tube.rings[last] {
        let [x, _, z] = tube.structure.position(*node);
        loads.add_force(0, &Attachment::at(*node), [share * z / tube.radius, 0.0, -share * x / tube.radius]);
    }
    let mut system = StaticSystem::new();
    system.prepare(&tube.structure).unwrap();
    let solved = system.solve(&tube.structure, loads).unwrap();
    let twist = |ring: usize| solved.of(tube.rings[ring][0], 0)[0] / tube.radius;
    let (area, second_moment, _) = section(0.127, 0.0127);
    let rate = 1000.0 / (E / (2.0 * (1.0 + NU)) * 2.0 * second_moment);
    assert_relative_eq!(twist(18) - twist(6), rate * 0.5 * LENGTH, max_relative = 0.01);
    // A polygon of 40 sides lacks 0.1 % of the length of its circle.
    assert_relative_eq!(tube.structure.mass(), 7850.0 * area * LENGTH, max_relative = 2e-3);
}

#[test]
fn shells_beams_springs_and_rigid_arms_share_a_structure() {
    // Half of a cantilever is a flat bar of shells, the other half a beam on a rigid arm that reaches its middle.
    let (width, thickness, half) = (0.02, 0.01, 0.5);
    let mut structure = Structure::new();
    let parts = 20;
    let node = |structure: &mut Structure, i: usize, j: usize| {
        let at = [(i as f64 - 0.5) * width, half * j as f64 / parts as f64, 0.0];
        structure.add_node("bar", at)
    };
    let rows: Vec<[NodeId; 2]> =
        (0..=parts).map(|j| [node(&mut structure, 0, j), node(&mut structure, 1, j)]).collect();
    let quads: Vec<_> =
        rows.windows(2).map(|pair| [pair[0][0], pair[0][1], pair[1][1], pair[1][0]]).collect();
    structure.add_surface(&quads, &Wall::new(thickness, E, 0.0)).unwrap();
    rows[0].iter().for_each(|node| structure.hold(*node, &Freedom::ALL));
    let (joint, tip) = (rows[parts][0], structure.add_node("tip", [0.0, 2.0 * half, 0.0]));
    let (i, j) = (width * thickness.powi(3) / 12.0, thickness * width.powi(3) / 12.0);
    let g = 0.5 * E;
    let shear = 5.0 / 6.0 * g * width * thickness;
    let rigidity = Rigidity {
        axial: E * width * thickness,
        torsion: g * (i + j),
        bending_2: E * j,
        bending_3: E * i,
        shear_2: shear,
        shear_3: shear,
    };
    let mut beam = Beam::between(joint, tip, [0.0, 0.0, 1.0], Flexibility::uniform(half, &rigidity));
    beam.start = Attachment::on_arm(joint, [0.5 * width, 0.0, 0.0]);
    structure.add_beam(beam).unwrap();
    let rates = [1e12; 6];
    let far = Attachment::on_arm(joint, [0.5 * width, 0.0, 0.0]);
    let near = Attachment::on_arm(rows[parts][1], [-0.5 * width, 0.0, 0.0]);
    structure.add_spring(Spring::between(near, far, rates)).unwrap();
    let mut loads = Loads::new(&structure, 1);
    loads.add_force(0, &Attachment::at(tip), [0.0, 0.0, 10.0]);
    let mut system = StaticSystem::new();
    system.prepare(&structure).unwrap();
    let solved = system.solve(&structure, loads).unwrap();
    let expected = 10.0 * (2.0 * half).powi(3) / (3.0 * E * i) + 10.0 * 2.0 * half / shear;
    // Each shell bends along a parabola, which leaves (h/L)²/4 of the deflection out.
    assert_relative_eq!(solved.of(tip, 0)[2], expected, max_relative = 1e-3);
    assert!(solved.state(&structure, 0).equilibrium_residual() < 1e-6);
}

#[test]
fn a_free_tube_of_shells_floats_and_bows() {
    let mut tube = Tube::new(0.127, 0.003, (16, 8));
    let free = Structure::new();
    let held = std::mem::replace(&mut tube.structure, free);
    for node in held.nodes() {
        tube.structure.add_node("free", held.position(node));
    }
    let quads: Vec<_> = tube.shells.iter().map(|shell| held.shell_nodes(*shell)).collect();
    tube.structure.add_surface(&quads, &held.wall(tube.shells[0])).unwrap();
    let modes = natural_modes(&tube.structure, 8).unwrap();
    let frequencies = modes.frequencies();
    assert!(frequencies[..6].iter().all(|frequency| *frequency < 1e-3 * frequencies[6]), "{frequencies:?}");
    // The first strained modes are a bow in two planes, (β·L)² = 22.3733 of a free beam (R. D. Blevins, Formulas for
    // Dynamics, Acoustics and Vibration, 2016, Table 4.2, from memory); shear and rotary inertia take 1 % off, the
    // polygon of 16 sides 1.5 %.
    let (area, second_moment, _) = section(0.127, 0.003);
    let bow = 22.3733 / (TAU * LENGTH * LENGTH) * (E * second_moment / (7850.0 * area)).sqrt();
    assert_relative_eq!(frequencies[6], bow, max_relative = 0.025);
    assert_relative_eq!(frequencies[7], frequencies[6], max_relative = 1e-6);
    assert!(modes.is_complete());
}
