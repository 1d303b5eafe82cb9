//! What nothing holds is named by station and freedom.

use axlebow_fe::{
    Attachment, Beam, FeError, Flexibility, Freedom, NodeId, Rigidity, Spring, StaticSystem, Structure,
};

/// Four places a meter apart along Y, joined by beams.
fn chain() -> (Structure, [NodeId; 4]) {
    let mut structure = Structure::new();
    let names = ["right end", "right seat", "left seat", "left end"];
    let nodes = std::array::from_fn(|i| structure.add_node(names[i], [0.0, i as f64, 0.0]));
    let rigidity =
        Rigidity { axial: 1e9, torsion: 1e6, bending_2: 2e6, bending_3: 2e6, shear_2: 1e8, shear_3: 1e8 };
    for pair in nodes.windows(2) {
        let flexibility = Flexibility::uniform(1.0, &rigidity);
        structure.add_beam(Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility)).unwrap();
    }
    (structure, nodes)
}

fn ground(structure: &mut Structure, node: NodeId, rates: [f64; 6]) {
    structure.add_spring(Spring::to_ground(Attachment::at(node), rates)).unwrap();
}

/// The station and freedom that the refusal names: where the free motion is largest, in meters or radians.
fn refused(structure: &Structure) -> (&str, Freedom) {
    let named =
        |station: String| structure.nodes().map(|node| structure.station(node)).find(|own| *own == station);
    match StaticSystem::new().prepare(structure) {
        Err(FeError::Unsupported { station, freedom }) => (named(station).unwrap(), freedom),
        other => panic!("{other:?} where something should be free"),
    }
}

#[test]
fn a_free_chain() {
    let (structure, _) = chain();
    assert_eq!(refused(&structure), ("left end", Freedom::Ux));
}

#[test]
fn a_chain_on_one_pin_turns_about_it() {
    let (mut structure, nodes) = chain();
    structure.hold(nodes[0], &[Freedom::Ux, Freedom::Uy, Freedom::Uz, Freedom::Ry, Freedom::Rz]);
    assert_eq!(refused(&structure), ("left end", Freedom::Uz));
    let (mut structure, nodes) = chain();
    structure.hold(nodes[0], &[Freedom::Ux, Freedom::Uy, Freedom::Uz]);
    assert_eq!(refused(&structure), ("left end", Freedom::Uz));
}

#[test]
fn a_chain_without_lateral_support_slides_along() {
    let (mut structure, nodes) = chain();
    for seat in [nodes[1], nodes[2]] {
        ground(&mut structure, seat, [8e6, 0.0, 1.5e6, 200e3, 60e3, 80e3]);
    }
    assert_eq!(refused(&structure), ("left end", Freedom::Uy));
}

#[test]
fn a_chain_on_seats_that_do_not_hold_its_twist_spins() {
    let (mut structure, nodes) = chain();
    for seat in [nodes[1], nodes[2]] {
        ground(&mut structure, seat, [8e6, 4e6, 1.5e6, 0.0, 0.0, 0.0]);
    }
    assert_eq!(refused(&structure), ("left end", Freedom::Ry));
}

#[test]
fn a_hub_without_a_brake_spins_on_its_bearings() {
    let (mut structure, nodes) = chain();
    structure.hold(nodes[0], &Freedom::ALL);
    let hub = structure.add_node("left hub", [0.0, 2.9, 0.0]);
    for (place, at) in [(nodes[2], 2.0), (nodes[3], 3.0)] {
        let near = Attachment::on_arm(hub, [0.0, at - 2.9, 0.0]);
        let rates = [1e9, 4e8, 1e9, 0.0, 0.0, 0.0];
        structure.add_spring(Spring::between(near, Attachment::at(place), rates)).unwrap();
    }
    assert_eq!(refused(&structure), ("left hub", Freedom::Ry));
}

#[test]
fn a_lone_node_that_may_rise() {
    let mut structure = Structure::new();
    let node = structure.add_node("alone", [0.0; 3]);
    structure.hold(node, &[Freedom::Ux, Freedom::Uy, Freedom::Rx, Freedom::Ry, Freedom::Rz]);
    assert_eq!(refused(&structure), ("alone", Freedom::Uz));
}

#[test]
fn the_message_says_what_moves_and_what_to_do() {
    let (mut structure, nodes) = chain();
    ground(&mut structure, nodes[1], [8e6, 0.0, 1.5e6, 200e3, 60e3, 80e3]);
    let message = StaticSystem::new().prepare(&structure).unwrap_err().to_string();
    assert_eq!(
        message,
        "nothing holds the displacement along Y at left end: the structure can move there without any force; \
         add a support, a spring or a member that resists it"
    );
}

/// The weakest support that counts: the rounding in an energy beside stiffnesses of 1e9 is 2e-5 (fe::linalg).
#[test]
fn a_weak_support_is_a_support() {
    let (mut structure, nodes) = chain();
    ground(&mut structure, nodes[1], [8e6, 1.0, 1.5e6, 200e3, 60e3, 80e3]);
    assert!(StaticSystem::new().prepare(&structure).is_ok());
}
