//! Nodes tied rigidly to a hub.

use approx::assert_relative_eq;
use axlebow_fe::{
    Attachment, Beam, Flexibility, Freedom, Loads, NodeId, Rigidity, Spring, StaticSystem, Structure, Wall,
    natural_modes,
};

const RIGIDITY: Rigidity =
    Rigidity { axial: 1e9, torsion: 1e6, bending_2: 2e6, bending_3: 3e6, shear_2: 1e8, shear_3: 1e8 };
const ARM: [f64; 3] = [0.3, 0.2, -0.4];

fn solved(structure: &Structure, at: &Attachment) -> axlebow_fe::Displacements {
    let mut loads = Loads::new(structure, 1);
    loads.add_force(0, at, [100.0, -200.0, 300.0]);
    loads.add_moment(0, at, [10.0, 40.0, -20.0]);
    let mut system = StaticSystem::new();
    system.prepare(structure).unwrap();
    system.solve(structure, loads).unwrap()
}

#[test]
fn a_tied_node_is_the_end_of_a_rigid_arm() {
    let chain = |tied: bool| {
        let mut structure = Structure::new();
        let root = structure.add_node("root", [0.0; 3]);
        let hub = structure.add_node("hub", [0.0, 1.0, 0.0]);
        let on_arm = Attachment::on_arm(hub, ARM);
        let place = if tied {
            let node = structure.add_node("tied", [ARM[0], 1.0 + ARM[1], ARM[2]]);
            structure.tie(&[node], hub).unwrap();
            Attachment::at(node)
        } else {
            on_arm
        };
        let up = [0.0, 0.0, 1.0];
        structure.add_beam(Beam::between(root, hub, up, Flexibility::uniform(1.0, &RIGIDITY))).unwrap();
        let far = structure.add_node("far", [2.0, 1.2, -0.4]);
        let mut second = Beam::between(hub, far, up, Flexibility::uniform(1.7, &RIGIDITY));
        second.start = place;
        structure.add_beam(second).unwrap();
        structure.add_spring(Spring::to_ground(place, [1e6, 2e6, 3e6, 1e4, 2e4, 3e4])).unwrap();
        structure.hold(root, &Freedom::ALL);
        let answer = solved(&structure, &place);
        assert!(answer.state(&structure, 0).equilibrium_residual() < 1e-9);
        [hub, far].map(|node| answer.of(node, 0))
    };
    for (tied, armed) in chain(true).iter().flatten().zip(chain(false).iter().flatten()) {
        assert_relative_eq!(tied, armed, max_relative = 1e-9);
    }
}

/// A strip of shells of 1 m × 0.2 m, its first row of nodes first.
fn strip() -> (Structure, Vec<NodeId>) {
    let mut structure = Structure::new();
    let place = |k: usize| [0.25 * (k / 3) as f64, 0.1 * (k % 3) as f64, 0.0];
    let nodes: Vec<NodeId> = (0..15).map(|k| structure.add_node("strip", place(k))).collect();
    let quad =
        |i: usize, j: usize| [3 * i + j, 3 * i + 3 + j, 3 * i + 4 + j, 3 * i + 1 + j].map(|k| nodes[k]);
    let quads: Vec<_> = (0..8).map(|k| quad(k / 2, k % 2)).collect();
    structure.add_surface(&quads, &Wall::new(0.01, 200e9, 0.3).with_density(7850.0)).unwrap();
    (structure, nodes)
}

#[test]
fn shells_tied_to_a_held_hub_answer_as_shells_held() {
    let (mut held, nodes) = strip();
    nodes[..6].iter().for_each(|node| held.hold(*node, &Freedom::ALL));
    let (mut tied, _) = strip();
    let hub = tied.add_node("hub", [-0.3, 0.4, 0.5]);
    tied.tie(&nodes[..6], hub).unwrap();
    tied.hold(hub, &Freedom::ALL);
    let tip = Attachment::at(nodes[14]);
    let (one, other) = (solved(&held, &tip), solved(&tied, &tip));
    for node in &nodes {
        for i in 0..6 {
            assert_relative_eq!(
                one.of(*node, 0)[i],
                other.of(*node, 0)[i],
                epsilon = 1e-12,
                max_relative = 1e-9
            );
        }
    }
    let state = other.state(&tied, 0);
    assert!(state.equilibrium_residual() < 1e-9);
    // The hub holds against the load, moments about itself included.
    let reaction = state.reaction(hub);
    for (found, expected) in reaction[..3].iter().zip([-100.0, 200.0, -300.0]) {
        assert_relative_eq!(*found, expected, max_relative = 1e-6);
    }
}

#[test]
fn tied_shells_float_freely_with_their_hub() {
    let (mut structure, nodes) = strip();
    let hub = structure.add_node("hub", [0.1, 0.1, 0.2]);
    structure.tie(&nodes[..6], hub).unwrap();
    let modes = natural_modes(&structure, 7).unwrap();
    let frequencies = modes.frequencies();
    assert!(frequencies[..6].iter().all(|frequency| *frequency < 1e-3 * frequencies[6]), "{frequencies:?}");
}

#[test]
fn what_cannot_be_tied_is_refused_by_name() {
    let (mut structure, nodes) = strip();
    let hub = structure.add_node("hub", [0.0; 3]);
    structure.tie(&nodes[..2], hub).unwrap();
    structure.hold(nodes[14], &Freedom::ALL);
    for (node, to, why) in [
        (hub, hub, "the hub itself"),
        (nodes[0], hub, "tied already"),
        (nodes[5], nodes[0], "its hub is tied"),
        (nodes[14], hub, "held"),
        (hub, nodes[5], "the hub of other nodes"),
    ] {
        let refused = structure.tie(&[node], to).unwrap_err().to_string();
        assert!(refused.contains(why), "{refused}");
    }
}
