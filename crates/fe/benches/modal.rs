//! Ten natural modes of an axle of sixty elements with hubs, tires and seats.

use std::hint::black_box;

use axlebow_fe::{
    Attachment, Beam, Flexibility, LumpedMass, NodeId, RigidBody, Rigidity, Spring, Structure, assemble_mass,
    assemble_stiffness, natural_modes,
};
use criterion::{Criterion, criterion_group, criterion_main};

const ELEMENTS: usize = 60;
const LENGTH: f64 = 1.9;
const TUBE: Rigidity = Rigidity {
    axial: 9.1e8,
    torsion: 1.2e6,
    bending_2: 1.5e6,
    bending_3: 1.5e6,
    shear_2: 1.9e8,
    shear_3: 1.9e8,
};

fn add_line(structure: &mut Structure) -> Result<Vec<NodeId>, axlebow_fe::FeError> {
    let length = LENGTH / ELEMENTS as f64;
    let nodes: Vec<_> = (0..=ELEMENTS)
        .map(|node| structure.add_node(format!("{node}"), [0.0, node as f64 * length - 0.5 * LENGTH, 0.0]))
        .collect();
    for pair in nodes.windows(2) {
        let beam = Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], Flexibility::uniform(length, &TUBE));
        structure.add_beam(beam.with_mass(36.0).with_inertia([0.12, 0.06, 0.06]))?;
    }
    Ok(nodes)
}

/// The hub hangs on two bearings three and six nodes from the end of the line, so that the band is as wide as
/// that of an axle; the wheel stands on its tire.
fn add_wheel(structure: &mut Structure, line: &[NodeId; 3], hub: NodeId) -> Result<(), axlebow_fe::FeError> {
    let at = |node: NodeId, structure: &Structure| structure.position(node)[1] - structure.position(hub)[1];
    for node in [line[0], line[1]] {
        let near = Attachment::on_arm(hub, [0.0, at(node, structure), 0.0]);
        structure.add_spring(Spring::between(near, Attachment::at(node), [9e8, 3e8, 9e8, 0.0, 0.0, 0.0]))?;
    }
    let brake = [0.0, 0.0, 0.0, 0.0, 1e7, 0.0];
    structure.add_spring(Spring::between(Attachment::at(hub), Attachment::at(line[1]), brake))?;
    structure.add_spring(Spring::to_ground(
        Attachment::on_arm(hub, [0.0, 0.0, -0.5]),
        [1e4, 2e5, 1.6e6, 0.0, 0.0, 0.0],
    ))?;
    structure.add_mass(RigidBody::with_moments(Attachment::at(hub), 180.0, [9.0, 15.0, 9.0]));
    structure.add_mass(LumpedMass { place: Attachment::on_arm(line[2], [0.1, 0.0, 0.1]), mass: 20.0 });
    Ok(())
}

fn axle() -> Result<Structure, axlebow_fe::FeError> {
    let mut structure = Structure::new();
    let right = structure.add_node("right hub", [0.0, -0.9, 0.0]);
    let line = add_line(&mut structure)?;
    let left = structure.add_node("left hub", [0.0, 0.9, 0.0]);
    let end = ELEMENTS;
    add_wheel(&mut structure, &[line[0], line[1], line[8]], right)?;
    add_wheel(&mut structure, &[line[end], line[end - 1], line[end - 8]], left)?;
    for node in [line[18], line[end - 18]] {
        structure.add_spring(Spring::to_ground(Attachment::at(node), [2e6, 2e6, 1e6, 3e4, 2e4, 3e4]))?;
    }
    Ok(structure)
}

fn modes(criterion: &mut Criterion) {
    let structure = axle().expect("every member has a length and a stiffness");
    let mut group = criterion.benchmark_group("60 elements");
    group.bench_function("stiffness and mass", |bencher| {
        bencher.iter(|| (assemble_stiffness(black_box(&structure)), assemble_mass(black_box(&structure))));
    });
    for count in [6, 10, 20] {
        group.bench_function(format!("{count} modes"), |bencher| {
            bencher.iter(|| natural_modes(black_box(&structure), count));
        });
    }
}

criterion_group!(benches, modes);
criterion_main!(benches);
